import { execFileSync } from "node:child_process";
import { chmodSync, rmSync, writeFileSync } from "node:fs";
import { build } from "esbuild";
import { LIBRARY_ENTRIES } from "./library-entries.mjs";
import { inlineAt, parsedJson, usedStatistics, withoutChildProcess } from "./plugins.mjs";
import { readoutScript } from "./readout-script.mjs";
import { SHARED_OPTIONS } from "./shared-options.mjs";
import { thirdPartyNotices } from "./third-party-notices.mjs";

const BUILT = "packages/cli/dist";
const START = ["feedpoint", "worker-thread", "compile"].map((name) => `packages/cli/src/start/${name}.ts`);

/**
 * Builds the command: one program, what starts it, and what starts it in the thread of a worker. Built as CommonJS, which Node
 * runs without setting up its loader of modules, and which V8 can hand over compiled.
 */
export async function buildCommand() {
  rmSync(BUILT, { recursive: true, force: true });
  const options = {
    ...SHARED_OPTIONS,
    bundle: true,
    outdir: BUILT,
    platform: "node",
    format: "cjs",
    minify: true,
    define: { "import.meta.dirname": "__dirname", ...(await readoutScript()) },
  };
  await build({ ...options, entryPoints: START });
  const program = await build({
    ...options,
    entryPoints: ["packages/cli/src/program.ts"],
    write: false,
    metafile: true,
    // A package with binaries of its own, which the installer picks; only pictures as PNG need it.
    external: ["@resvg/resvg-js"],
    // One file: what is loaded when it is asked for is set up then.
    supported: { "dynamic-import": false },
    alias: LIBRARY_ENTRIES,
    plugins: [inlineAt, parsedJson, usedStatistics, withoutChildProcess],
  });
  writeFileSync(`${BUILT}/program.js`, inAscii(program.outputFiles[0].text));
  writeFileSync(`${BUILT}/package.json`, '{ "type": "commonjs" }\n');
  writeFileSync(`${BUILT}/THIRD-PARTY-NOTICES`, thirdPartyNotices(program.metafile));
  chmodSync(`${BUILT}/feedpoint.js`, 0o755);
  compile();
}

/** The same code with escapes for all that is not ASCII, so that a character is a byte: esbuild leaves it in patterns and templates. */
function inAscii(code) {
  if (/\\[^\0-\x7f]/.test(code)) throw new Error("An escape would say something else behind a backslash.");
  return code.replace(/[^\0-\x7f]/g, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`);
}

/** Has V8 compile what a check needs, for this version of Node; all else is compiled when it is called. */
function compile() {
  const sample = "samples/sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p";
  execFileSync(process.execPath, [`${BUILT}/compile.js`, "check", sample], { stdio: ["ignore", "ignore", "inherit"] });
  rmSync(`${BUILT}/compile.js`);
}
