/** Builds both packages: bundles with esbuild, declarations with tsc. Run by `pnpm build`. */
import { execFileSync } from "node:child_process";
import { chmodSync, readFileSync, rmSync } from "node:fs";
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
  entryPoints: ["packages/core/src/index.ts", "packages/core/src/schema.ts"],
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

// The command and the thread of its workers. What a command needs is in the files that it loads, and no more is read.
await build({
  ...shared,
  entryPoints: { feedpoint: "packages/cli/src/main.ts", "worker-thread": "packages/cli/src/grading/worker-thread.ts" },
  outdir: "packages/cli/dist",
  platform: "node",
  minify: true,
  splitting: true,
  chunkNames: "[name]-[hash]",
  define: { READOUT_SCRIPT: JSON.stringify(script.outputFiles[0].text.trim()) },
  // A package with binaries of its own, which the installer picks; only pictures as PNG need it.
  external: ["@resvg/resvg-js"],
  alias: {
    "@feedpoint/core/schema": "./packages/core/src/schema.ts",
    "@feedpoint/core": "./packages/core/src/index.ts",
  },
  banner: {
    js: '#!/usr/bin/env node\nimport { createRequire as __createRequire } from "node:module";const require = __createRequire(import.meta.url);',
  },
});
chmodSync("packages/cli/dist/feedpoint.js", 0o755);

execFileSync(process.execPath, ["node_modules/typescript/bin/tsc", "--build", "packages/core"], { stdio: "inherit" });
