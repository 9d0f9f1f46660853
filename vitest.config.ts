import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const fromHere = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Files with modules of their own: those that work in one folder, and one that replaces a module. */
const APART = ["tests/cli/**/*.test.ts", "tests/reading/two-lanes.test.ts"];

export default defineConfig({
  test: {
    projects: [
      // Modules loaded once for all files: loading them for each takes a quarter of the whole run.
      { extends: true, test: { name: "together", include: ["tests/**/*.test.ts"], exclude: APART, isolate: false } },
      { extends: true, test: { name: "apart", include: APART } },
    ],
    testTimeout: 60_000,
    // One less by default: on two processors that would be one.
    maxWorkers: "100%",
    // What the command runs is built; only what the tests import themselves is seen here.
    coverage: { provider: "v8", include: ["packages/core/src/**"], reporter: ["text"] },
  },
  resolve: {
    alias: {
      "@feedpoint/core/schema": fromHere("./packages/core/src/schema.ts"),
      "@feedpoint/core/for-command": fromHere("./packages/core/src/for-command.ts"),
      "@feedpoint/core": fromHere("./packages/core/src/index.ts"),
    },
  },
});
