import { execFileSync } from "node:child_process";
import { readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { inlineAt, separateModules } from "./plugins.mjs";
import { SHARED_OPTIONS } from "./shared-options.mjs";

const SOURCE = "packages/core/src";
const BUILT = "packages/core/dist";

/**
 * Builds the library: each file of the source as a module of its own, so that who bundles one function gets no more than it
 * needs; its dependencies are left to the installer. A file of data x.json becomes x.json.js. Declarations are made by tsc.
 */
export async function buildLibrary() {
  rmSync(BUILT, { recursive: true, force: true });
  const files = readdirSync(SOURCE, { recursive: true }).filter((name) => /\.(ts|json)$/.test(name));
  await build({
    ...SHARED_OPTIONS,
    entryPoints: files.map((name) => ({ in: join(SOURCE, name), out: name.replace(/\.ts$/, "") })),
    outdir: BUILT,
    bundle: true,
    platform: "neutral",
    packages: "external",
    sourcemap: true,
    plugins: [inlineAt, separateModules],
  });
  execFileSync(process.execPath, ["node_modules/typescript/bin/tsc", "--build", "packages/core"], { stdio: "inherit" });
}
