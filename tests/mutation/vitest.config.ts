import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

const fromHere = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** Tests of whole jobs, each of which takes as long as dozens of the others. */
const SLOW = /\/tests\/(jobs\/(check|diff)|diff\/(explained|references|repeats|same-terms)|station\/.*)\.test\.ts$/;

/** The quick ones first: the first test that fails ends the run of a mutant. */
class QuickFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const isSlow = ({ moduleId }: TestSpecification) => Number(SLOW.test(moduleId));
    return files.toSorted((a, b) => isSlow(a) - isSlow(b));
  }
}

/** The library's own tests of bands and jobs that take no more than a moment; nothing that looks at recorded output. */
export default defineConfig({
  test: {
    root: fromHere("."),
    include: [
      "tests/{bands,jobs}/**/*.test.ts",
      "tests/diff/{band-change,evidence,explained,line,line-causes,reason,references,repeats,same-terms,samples,verdict}.test.ts",
      "tests/season/{drift,groups,log,ranking,trend-by-hand}.test.ts",
      "tests/station/{dials,power}.test.ts",
      "tests/reference/measured-line.test.ts",
    ],
    isolate: false,
    sequence: { sequencer: QuickFirst },
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
