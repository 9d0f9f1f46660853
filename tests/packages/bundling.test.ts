/** What a program that bundles the library gets of it: what it uses, and no more. */
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { describe, expect, test } from "vitest";

/** A minified bundle of a program, and the packages that have a part in it. */
async function bundle(program: string, external: readonly string[] = []) {
  const { outputFiles, metafile } = await build({
    stdin: { contents: program, resolveDir: fileURLToPath(new URL("../", import.meta.url)) },
    bundle: true,
    minify: true,
    write: false,
    metafile: true,
    platform: "browser",
    format: "esm",
    external: [...external],
    logLevel: "error",
  });
  const packages = Object.values(metafile.outputs)
    .flatMap(({ inputs }) => Object.entries(inputs))
    .filter(([, { bytesInOutput }]) => bytesInOutput > 0)
    .flatMap(([path]) => /.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[1] ?? []);
  return { bytes: outputFiles[0]?.contents.length ?? Number.NaN, packages: new Set(packages) };
}

describe.each([
  ["swrFromReflectionMagnitude", "swrFromReflectionMagnitude(0.5)"],
  ["impedanceFromReflection", "impedanceFromReflection({ real: 0.5, imaginary: 0 }, 50)"],
  ["mismatchLossDb", "mismatchLossDb(0.5)"],
])("one function, %s", (name, call) => {
  const program = `import { ${name} } from "@feedpoint/core"; console.log(${call});`;

  test.each([
    ["its dependencies bundled", []],
    ["its dependencies left out", ["papaparse", "simple-statistics", "fastest-levenshtein", "zod"]],
  ])("costs less than 2 kB, %s", async (_, external) => {
    const { bytes, packages } = await bundle(program, external);
    expect(bytes).toBeLessThan(2000);
    expect(packages).toEqual(new Set());
  });
});

test("all of the main entry goes without zod, which the other brings", async () => {
  expect((await bundle(`export * from "@feedpoint/core";`)).packages).not.toContain("zod");
  expect((await bundle(`export * from "@feedpoint/core/schema";`)).packages).toContain("zod");
});
