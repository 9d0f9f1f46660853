import { execFileSync } from "node:child_process";
import { chmodSync, rmSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { build } from "esbuild";
import { LIBRARY_ENTRIES } from "./library-entries.mjs";
import { inlineAt, parsedJson, usedStatistics, withoutChildProcess } from "./plugins.mjs";
import { readoutScript } from "./readout-script.mjs";
import { SHARED_OPTIONS } from "./shared-options.mjs";
import { thirdPartyNotices } from "./third-party-notices.mjs";

const BUILT = "packages/cli/dist";
/** All commands, and the one that is called most by itself: what a program holds takes its time to load, called or not. */
const PROGRAMS = { program: "packages/cli/src/program.ts", check: "packages/cli/src/check-program.ts" };
const START = ["feedpoint", "worker-thread", "compile"].map((name) => `packages/cli/src/start/${name}.ts`);

/**
 * Builds the command: its programs, what starts them, and what starts one in the thread of a worker. Built as CommonJS, which Node
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
  for (const [name, entry] of Object.entries(PROGRAMS)) {
    const { outputFiles, metafile } = await build({
      ...options,
      entryPoints: [entry],
      write: false,
      metafile: true,
      // A package with binaries of its own, which the installer picks; only pictures as PNG need it.
      external: ["@resvg/resvg-js"],
      // One file: what is loaded when it is asked for is set up then.
      supported: { "dynamic-import": false },
      alias: LIBRARY_ENTRIES,
      plugins: [inlineAt, parsedJson, usedStatistics, withoutChildProcess],
    });
    writeFileSync(`${BUILT}/${name}.js`, inAscii(outputFiles[0].text));
    // Nothing else holds as many packages.
    if (name === "program") writeFileSync(`${BUILT}/THIRD-PARTY-NOTICES`, thirdPartyNotices(metafile));
  }
  writeFileSync(`${BUILT}/package.json`, '{ "type": "commonjs" }\n');
  chmodSync(`${BUILT}/feedpoint.js`, 0o755);
  compile();
}

/** The same code with escapes for all that is not ASCII, so that a character is a byte: esbuild leaves it in patterns and templates. */
function inAscii(code) {
  if (/\\[^\0-\x7f]/.test(code)) throw new Error("An escape would say something else behind a backslash.");
  return code.replace(/[^\0-\x7f]/g, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`);
}

/** Has V8 compile what a check and a grade need, for this version of Node; all else is compiled when it is called. */
function compile() {
  const runs = [
    // One whose samples are smoothed, one that a function explains, and a table.
    [
      "check",
      "2026-05-02-lantern-bridge-bridge-pole.s1p",
      "2026-02-21-tansy-reach-untrimmed.s1p",
      "2026-07-11-lantern-bridge-wet-feedline.csv",
    ],
    ["grade", ".", "--format", "ndjson"],
  ];
  const program = resolve(BUILT, "compile.js");
  for (const args of runs) {
    execFileSync(process.execPath, [program, ...args], {
      cwd: "samples/sweeps",
      stdio: ["ignore", "ignore", "inherit"],
    });
  }
  rmSync(program);
}
