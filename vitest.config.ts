import { defineConfig } from "vitest/config";
import { LIBRARY_ENTRIES } from "./build/library-entries.mjs";

/** Files with modules of their own: those that share a module which makes a folder, and one that replaces a module. */
const APART = ["tests/cli/{grading,grading-many,logs}.test.ts", "tests/reading/two-lanes.test.ts"];

/**
 * What computes much runs on the library as it is built, in one module, which is twice as fast as its source in many; other
 * tests, and all that count coverage, run on the source.
 */
const ON_WHAT_IS_BUILT = [
  "tests/{accuracy,bands,diff,findings,fuzz,golden,jobs,property,reading,reference,season,trim}/**/*.test.ts",
];
const countsCoverage = process.argv.includes("--coverage");

/** Ends what hangs, and nothing else: how fast a machine is must not decide a test. */
const LONGEST_MS = 15 * 60_000;

const SHARED = {
  testTimeout: LONGEST_MS,
  hookTimeout: LONGEST_MS,
  teardownTimeout: LONGEST_MS,
  // How wide the terminal is from which the tests are run must not matter to the commands that they run.
  env: { COLUMNS: "" },
};

export default defineConfig({
  test: {
    projects: [
      // Modules loaded once for all files: loading them for each takes a quarter of the whole run.
      {
        test: { ...SHARED, name: "built", include: ON_WHAT_IS_BUILT, exclude: APART, isolate: false },
        resolve: countsCoverage ? { alias: LIBRARY_ENTRIES } : {},
      },
      {
        test: {
          ...SHARED,
          name: "source",
          include: ["tests/**/*.test.ts"],
          exclude: [...APART, ...ON_WHAT_IS_BUILT],
          isolate: false,
        },
        resolve: { alias: LIBRARY_ENTRIES },
      },
      { test: { ...SHARED, name: "apart", include: APART }, resolve: { alias: LIBRARY_ENTRIES } },
    ],
    // One less by default: on two processors that would be one.
    maxWorkers: "100%",
    // What the command runs is built; only what the tests import themselves is seen here.
    coverage: { provider: "v8", include: ["packages/core/src/**"], reporter: ["text"] },
  },
});
