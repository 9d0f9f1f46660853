import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const fromHere = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    testTimeout: 60_000,
    // One less by default: on two processors that would be one.
    maxWorkers: "100%",
    // What the command runs is built; only what the tests import themselves is seen here.
    coverage: { provider: "v8", include: ["packages/core/src/**"], reporter: ["text"] },
  },
  resolve: {
    alias: {
      "@feedpoint/core/schema": fromHere("./packages/core/src/schema.ts"),
      "@feedpoint/core": fromHere("./packages/core/src/index.ts"),
    },
  },
});
