import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const fromHere = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  test: { include: ["tests/**/*.test.ts"], testTimeout: 60_000 },
  resolve: {
    alias: {
      "@feedpoint/core/schema": fromHere("./packages/core/src/schema.ts"),
      "@feedpoint/core": fromHere("./packages/core/src/index.ts"),
    },
  },
});
