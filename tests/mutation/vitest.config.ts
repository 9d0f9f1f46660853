import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const fromHere = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** The library's own tests of bands and jobs that take no more than a moment; nothing that looks at recorded output. */
export default defineConfig({
  test: {
    root: fromHere("."),
    include: [
      "tests/{bands,jobs}/**/*.test.ts",
      "tests/diff/{band-change,evidence,explained,line,line-causes,references,repeats,same-terms,samples,verdict}.test.ts",
      "tests/season/{drift,groups,log,ranking,trend-by-hand}.test.ts",
      "tests/station/{dials,power}.test.ts",
      "tests/reference/measured-line.test.ts",
    ],
    isolate: false,
    // Stryker ends what takes too long.
    testTimeout: 60_000,
    // Node loads the compiled modules itself: the same through Vite, for each mutant again, takes longer than the tests.
    server: { deps: { external: [/\/packages\/core\/mutated\//] } },
  },
  resolve: {
    alias: [
      { find: /^@feedpoint\/core\/schema$/, replacement: fromHere("packages/core/mutated/schema.js") },
      { find: /^@feedpoint\/core$/, replacement: fromHere("packages/core/mutated/index.js") },
      { find: /^(\.\.\/)+packages\/core\/src\//, replacement: fromHere("packages/core/mutated/") },
    ],
  },
});
