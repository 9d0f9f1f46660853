/** What the packed library and the packed command hold, and what they do not. */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

const root = new URL("../../", import.meta.url);
const text = (path: string) => readFileSync(new URL(path, root), "utf8");

interface Manifest {
  readonly exports: Readonly<Record<string, { readonly types: string; readonly default: string }>>;
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
}
const manifestOf = (name: string) => JSON.parse(text(`packages/${name}/package.json`)) as Manifest;

/** The files of a tarball, without the build that comes before packing: other tests run what was built. */
function packed(name: string): readonly string[] {
  const told = execFileSync("npm", ["pack", "--dry-run", "--json", "--ignore-scripts"], {
    cwd: fileURLToPath(new URL(`packages/${name}`, root)),
    encoding: "utf8",
  });
  const [tarball] = JSON.parse(told) as readonly { readonly files: readonly { readonly path: string }[] }[];
  return tarball?.files.map(({ path }) => path) ?? [];
}

const core = packed("core");
const cli = packed("cli");

describe.each([
  ["core", core],
  ["cli", cli],
])("the tarball of %s", (name, files) => {
  test("holds README and licence, which is that of the project", () => {
    expect(files).toEqual(expect.arrayContaining(["README.md", "LICENSE", "package.json"]));
    expect(text(`packages/${name}/LICENSE`)).toBe(text("LICENSE"));
  });

  test("holds nothing that only this checkout has a use for", () => {
    expect(files.filter((path) => /\.tsbuildinfo$|\.compiled$|^(src|node_modules)\//.test(path))).toEqual([]);
  });
});

test("the library has all that it exports, and code for each declaration", () => {
  for (const { types, default: code } of Object.values(manifestOf("core").exports)) {
    expect(core).toEqual(expect.arrayContaining([types.slice(2), code.slice(2)]));
  }
  const declared = core.filter((path) => path.endsWith(".d.ts")).map((path) => path.replace(/\.d\.ts$/, ".js"));
  expect(core).toEqual(expect.arrayContaining(declared));
});

test("the command has what runs, the guide, and the licences of all that is bundled", () => {
  expect(cli.filter((path) => !path.startsWith("guide/"))).toMatchInlineSnapshot(`
    [
      "LICENSE",
      "README.md",
      "dist/check.js",
      "dist/feedpoint.js",
      "dist/package.json",
      "dist/page.html",
      "dist/program.js",
      "dist/THIRD-PARTY-NOTICES",
      "dist/worker-thread.js",
      "package.json",
    ]
  `);
  expect(cli).toContain("guide/README.md");

  const notices = text("packages/cli/dist/THIRD-PARTY-NOTICES");
  const bundled = {
    ...manifestOf("cli").devDependencies,
    ...manifestOf("answers").dependencies,
    ...manifestOf("core").dependencies,
  };
  for (const [name, version] of Object.entries(bundled)) {
    if (!/^@types\/|^@feedpoint\//.test(name))
      expect(notices).toMatch(new RegExp(`^${name} ${version} \\(\\w+\\)$`, "m"));
  }
  // What these need in turn.
  expect(notices).toMatch(/^d3-path /m);
  expect(notices).toMatch(/^string-width /m);
});
