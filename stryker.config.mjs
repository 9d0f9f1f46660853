/** Mutation testing of what judges: small faults put into bands and jobs one by one, which the library's tests must see. */
export default {
  packageManager: "pnpm",
  testRunner: "vitest",
  plugins: ["@stryker-mutator/vitest-runner"],
  vitest: { configFile: "tests/mutation/vitest.config.ts", related: false },
  mutate: ["packages/core/src/{bands,jobs}/**/*.ts"],
  // The words of messages are free to change; codes, numbers, verdicts and severities are what tests hold.
  mutator: { excludedMutations: ["StringLiteral"] },
  // The tests run on what this makes (see the configuration of vitest).
  buildCommand:
    "esbuild packages/core/src/**/*.ts packages/core/src/**/*.json --loader:.json=copy --outdir=packages/core/mutated --outbase=packages/core/src --format=esm --target=esnext --log-level=error",
  coverageAnalysis: "perTest",
  // Constants of modules: a mutant of one needs all modules and all tests again.
  ignoreStatic: true,
  concurrency: 2,
  reporters: ["clear-text", "json"],
  clearTextReporter: { allowColor: false, logTests: false },
  jsonReporter: { fileName: "coverage/mutation.json" },
  // What the copy of the project that is mutated does without.
  ignorePatterns: ["/tests/cli", "/tests/browser", "dist", "coverage"],
  // No file: Stryker would rewrite tsconfig.json by an interface that TypeScript 7 no longer has.
  tsconfigFile: "none",
};
