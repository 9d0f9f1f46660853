import { defineConfig } from "vitest/config";
import { LIBRARY_ENTRIES } from "./build/library-entries.mjs";

/** Files with modules of their own: those that share a module which makes a folder, and one that replaces a module. */
const APART = ["tests/cli/{grading,grading-many,logs}.test.ts", "tests/reading/two-lanes.test.ts"];

/** Ends what hangs, and nothing else: how fast a machine is must not decide a test. */
const LONGEST_MS = 15 * 60_000;

export default defineConfig({
  test: {
    projects: [
      // Modules loaded once for all files: loading them for each takes a quarter of the whole run.
      { extends: true, test: { name: "together", include: ["tests/**/*.test.ts"], exclude: APART, isolate: false } },
      { extends: true, test: { name: "apart", include: APART } },
    ],
    testTimeout: LONGEST_MS,
    hookTimeout: LONGEST_MS,
    teardownTimeout: LONGEST_MS,
    // How wide the terminal is from which the tests are run must not matter to the commands that they run.
    env: { COLUMNS: "" },
    // One less by default: on two processors that would be one.
    maxWorkers: "100%",
    // What the command runs is built; only what the tests import themselves is seen here.
    coverage: { provider: "v8", include: ["packages/core/src/**"], reporter: ["text"] },
  },
  resolve: { alias: LIBRARY_ENTRIES },
});
