/** The examples of the docstrings and of the library's README: each must compile as it stands, and give what it says. */
import { execFileSync } from "node:child_process";
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import * as core from "@feedpoint/core";
import * as schema from "@feedpoint/core/schema";
import { transformSync } from "esbuild";
import { describe, expect, test } from "vitest";

const root = fileURLToPath(new URL("../../", import.meta.url));
const source = join(root, "packages/core/src");
const MODULES: Readonly<Record<string, object>> = { "@feedpoint/core": core, "@feedpoint/core/schema": schema };

interface Example {
  readonly name: string;
  readonly code: string;
}

const sourceFiles = readdirSync(source, { recursive: true, encoding: "utf8" }).filter((file) => /\.ts$/.test(file));

/** The blocks of code that stand under @example in the docstrings of a file. */
function examplesIn(file: string): readonly Example[] {
  const docstrings = readFileSync(join(source, file), "utf8").matchAll(/^ *\/\*\*(?:(?!\*\/)[\s\S])*\*\/\n(.*)$/gm);
  return [...docstrings].flatMap(([docstring, declared = ""]) => {
    const text = docstring.replace(/^ *\* ?/gm, "");
    const name = /\b(?:function|const|class|interface) (\w+)/.exec(declared)?.[1] ?? declared;
    return [...text.matchAll(/^@example\n```ts\n(.*?)^```$/gms)].map(([, code = ""]) => ({ name, code }));
  });
}

const README = readFileSync(join(root, "packages/core/README.md"), "utf8");
const EXAMPLES: readonly Example[] = [
  ...sourceFiles.flatMap(examplesIn),
  ...[...README.matchAll(/^```ts\n(.*?)^```$/gms)].map(([, code = ""], i) => ({ name: `README ${i + 1}`, code })),
];

/** A line that says what it gives: an expression, and after the arrow its value. */
const PROMISE = /^(\S.*); \/\/ → (.+)$/gm;

/** Runs an example. @returns what its lines gave, and what they say that they give, as it is written */
function run(code: string): readonly (readonly [unknown, string])[] {
  const told: [unknown, string][] = [];
  const telling = code.replace(PROMISE, (_, expression, value) => `tell(${expression}, ${JSON.stringify(value)});`);
  const script = transformSync(telling, { loader: "ts", format: "cjs" }).code;
  const tell = (given: unknown, value: string) => told.push([given, value]);
  new Function("require", "tell", "module", "exports", script)((name: string) => MODULES[name], tell, {}, {});
  return told;
}

/** A number is held to the digits that are written, everything else to the letter. */
function expectPromised(given: unknown, written: string): void {
  const decimals = /^-?\d+\.(\d+)$/.exec(written)?.[1]?.length;
  if (decimals !== undefined && typeof given === "number") expect(given.toFixed(decimals)).toBe(written);
  else expect(given).toEqual(new Function(`return (${written});`)());
}

test.each(EXAMPLES)("the example of $name gives what it says", ({ code }) => {
  const told = run(code);
  expect(told).not.toEqual([]);
  for (const [given, written] of told) expectPromised(given, written);
});

describe("examples", () => {
  test("are all in blocks of code, so that none goes unread", () => {
    const tags = sourceFiles.flatMap((file) => readFileSync(join(source, file), "utf8").match(/@example/g) ?? []);
    expect(EXAMPLES.filter(({ name }) => !name.startsWith("README"))).toHaveLength(tags.length);
  });

  test("stand beside each job", () => {
    const jobs = ["readSweeps", "check", "diff", "gradeSweep", "trim", "measureLine"];
    const season = ["groupGrades", "driftsOf", "readDeploymentLog"];
    const writers = ["delimitedText", "touchstoneText"];
    expect(EXAMPLES.map(({ name }) => name)).toEqual(expect.arrayContaining([...jobs, ...season, ...writers]));
  });

  test("compile under strict rules against the declarations of the built package", () => {
    const folder = join(root, "node_modules/.cache/examples");
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    const files = EXAMPLES.map(({ name, code }, i) => {
      const file = join(folder, `${i}-${name.replace(/\W/g, "-")}.ts`);
      writeFileSync(file, code);
      return file;
    });
    const config = join(folder, "tsconfig.json");
    const compilerOptions = {
      ...JSON.parse(readFileSync(join(root, "tsconfig.base.json"), "utf8")).compilerOptions,
      composite: false,
      declaration: false,
      emitDeclarationOnly: false,
      noEmit: true,
    };
    writeFileSync(config, JSON.stringify({ compilerOptions, files: files.map((file) => relative(folder, file)) }));
    expect(typeErrors(config)).toBe("");
  });
});

/** What the compiler says of a project; nothing where all is well. */
function typeErrors(config: string): string {
  try {
    return execFileSync(process.execPath, [join(root, "node_modules/typescript/bin/tsc"), "--project", config], {
      encoding: "utf8",
    });
  } catch (error) {
    return (error as { stdout: string }).stdout;
  }
}
