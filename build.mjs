/** Builds both packages: bundles with esbuild, declarations with tsc. Run by `pnpm build`. */
import { execFileSync } from "node:child_process";
import { chmodSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { build } from "esbuild";

/** at(column, index) as column[index]: code that runs once or twice, in a short command, is slow to call anything. */
const inlineAt = {
  name: "inline-at",
  setup({ onLoad }) {
    onLoad({ filter: /packages[\\/]core[\\/]src[\\/].*\.ts$/ }, ({ path }) => ({
      contents: withoutCallsOfAt(readFileSync(path, "utf8")),
      loader: "ts",
    }));
  },
};

function withoutCallsOfAt(source) {
  const call = /(?<![\w$.])at\(([\w.]+), /.exec(source);
  if (call === null) return source;
  const start = call.index + call[0].length;
  let end = start;
  for (let depth = 1; depth > 0; end++) depth += "([{".includes(source[end]) ? 1 : ")]}".includes(source[end]) ? -1 : 0;
  const index = withoutCallsOfAt(source.slice(start, end - 1));
  return `${source.slice(0, call.index)}${call[1]}[${index}]${withoutCallsOfAt(source.slice(end))}`;
}

/** commander can start other programs, which nothing here does; to load what it needs for that takes longer than commander. */
const withoutChildProcess = {
  name: "without-child-process",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^node:child_process$/ }, () => ({ path: "none", namespace: "without-child-process" }));
    onLoad({ filter: /.*/, namespace: "without-child-process" }, () => ({ contents: "module.exports = {};" }));
  },
};

/** Data as a text that is parsed: V8 reads it in less time than the same data as code. */
const parsedJson = {
  name: "parsed-json",
  setup({ onLoad }) {
    onLoad({ filter: /\.json$/ }, ({ path }) => ({
      contents: `export default JSON.parse(${JSON.stringify(JSON.stringify(JSON.parse(readFileSync(path, "utf8"))))});`,
    }));
  },
};

/** Of simple-statistics what is used, and not the tables that it makes when it is loaded. */
const usedStatistics = {
  name: "used-statistics",
  setup({ onResolve, resolve }) {
    onResolve({ filter: /^simple-statistics$/ }, async ({ importer, resolveDir, kind }) => {
      const { path } = await resolve("simple-statistics/package.json", { importer, resolveDir, kind });
      return { path: join(dirname(path), "index.js"), sideEffects: false };
    });
    onResolve({ filter: /^\.\// }, ({ path, resolveDir }) =>
      /[\\/]simple-statistics[\\/]?/.test(resolveDir)
        ? { path: join(resolveDir, path), sideEffects: false }
        : undefined,
    );
  },
};

/** The same code with escapes for all that is not ASCII, so that a character is a byte: esbuild leaves it in patterns and templates. */
function inAscii(code) {
  if (/\\[^\0-\x7f]/.test(code)) throw new Error("An escape would say something else behind a backslash.");
  return code.replace(/[^\0-\x7f]/g, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`);
}

// minifySyntax writes constants such as the byte of a blank out where they are used; reading is faster by an eighth for it.
const shared = {
  bundle: true,
  format: "esm",
  target: "node20",
  logLevel: "warning",
  legalComments: "none",
  minifySyntax: true,
  plugins: [inlineAt],
};

for (const packageName of ["core", "cli"]) rmSync(`packages/${packageName}/dist`, { recursive: true, force: true });

// The library: its own code in one file per entry, its dependencies left to the installer.
await build({
  ...shared,
  entryPoints: ["index", "schema", "for-command"].map((name) => `packages/core/src/${name}.ts`),
  outdir: "packages/core/dist",
  platform: "neutral",
  packages: "external",
  splitting: true,
  chunkNames: "shared-[hash]",
  sourcemap: true,
});

// The script of a report, which runs in the page that it is written into.
const script = await build({
  ...shared,
  entryPoints: ["packages/cli/browser/readout.ts"],
  platform: "browser",
  format: "iife",
  target: "es2022",
  minify: true,
  write: false,
});

// The command: one program, what starts it, and what starts it in the thread of a worker. Built as CommonJS, which Node runs
// without setting up its loader of modules, and which V8 can hand over compiled.
const command = {
  ...shared,
  outdir: "packages/cli/dist",
  platform: "node",
  format: "cjs",
  minify: true,
  define: { "import.meta.dirname": "__dirname", READOUT_SCRIPT: JSON.stringify(script.outputFiles[0].text.trim()) },
};
await build({
  ...command,
  entryPoints: ["feedpoint", "worker-thread", "compile"].map((name) => `packages/cli/src/start/${name}.ts`),
});
const program = await build({
  ...command,
  entryPoints: ["packages/cli/src/program.ts"],
  write: false,
  // A package with binaries of its own, which the installer picks; only pictures as PNG need it.
  external: ["@resvg/resvg-js"],
  // One file: what is loaded when it is asked for is set up then.
  supported: { "dynamic-import": false },
  alias: {
    "@feedpoint/core/schema": "./packages/core/src/schema.ts",
    "@feedpoint/core/for-command": "./packages/core/src/for-command.ts",
    "@feedpoint/core": "./packages/core/src/index.ts",
  },
  plugins: [inlineAt, parsedJson, usedStatistics, withoutChildProcess],
});
writeFileSync("packages/cli/dist/program.js", inAscii(program.outputFiles[0].text));
writeFileSync("packages/cli/dist/package.json", '{ "type": "commonjs" }\n');
chmodSync("packages/cli/dist/feedpoint.js", 0o755);

// What a check needs is compiled now, and all else when it is called.
const sample = "samples/sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p";
execFileSync(process.execPath, ["packages/cli/dist/compile.js", "check", sample], {
  stdio: ["ignore", "ignore", "inherit"],
});
rmSync("packages/cli/dist/compile.js");

execFileSync(process.execPath, ["node_modules/typescript/bin/tsc", "--build", "packages/core"], { stdio: "inherit" });
