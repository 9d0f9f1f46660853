import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { build } from "esbuild";
import { browserScript } from "./browser-script.mjs";
import { LIBRARY_ENTRIES } from "./library-entries.mjs";
import { inlineAt, parsedJson, usedStatistics } from "./plugins.mjs";
import { readoutScript } from "./readout-script.mjs";
import { SHARED_OPTIONS } from "./shared-options.mjs";
import { thirdPartyNotices } from "./third-party-notices.mjs";

const SOURCE = "packages/page/src";
/** Of one wire, dry and in the rain. */
const SAMPLE = ["2026-05-02-lantern-bridge-bridge-pole.s1p", "2026-07-11-lantern-bridge-wet-feedline.csv"];

/**
 * Builds the page: one file with its styles, its script, and the script of its worker as a text that the page starts. The
 * command writes the same file. The library must be built before: its schema makes the form.
 */
export async function buildPage() {
  const { jsonSchemaOf } = await import("../packages/core/dist/schema.js");
  const sample = SAMPLE.map((name) => [`invented-${name}`, readFileSync(`samples/sweeps/${name}`, "utf8")]);
  const script = await bundled(`${SOURCE}/page.ts`, {
    STATION_SCHEMA: JSON.stringify(jsonSchemaOf("station")),
    SAMPLE: JSON.stringify(sample),
  });
  const style = `${await reportStyles()}\n${readFileSync(`${SOURCE}/page.css`, "utf8").trim()}`;
  const worker = await bundled(`${SOURCE}/worker/worker.ts`, await readoutScript());
  const page = pageOf({ style, script: script.text, worker: worker.text, notices: thirdPartyNotices(worker.metafile) });
  mkdirSync("packages/page/dist", { recursive: true });
  writeFileSync("packages/page/dist/feedpoint.html", page);
  writeFileSync("packages/cli/dist/page.html", page);
}

/** Scripts are permitted by their hash and no other; nothing may be asked of any network. */
function pageOf({ style, script, worker, notices }) {
  const hash = createHash("sha256").update(script).digest("base64");
  const policy = `default-src 'none'; script-src 'sha256-${hash}'; worker-src blob:; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="description" content="Reads the sweeps an antenna analyser exported and says what they mean. Works without a network and sends nothing.">
<title>feedpoint</title>
<link rel="icon" href="data:,">
<style>${style}</style>
</head>
<body>
<noscript><p>This page reads and judges sweeps by a script of its own, which your browser does not permit. Nothing is sent anywhere; permit scripts for this file to use it.</p></noscript>
<script type="text/plain" id="worker">${worker}</script>
<script>${script}</script>
<script type="text/plain" id="licences">${notices}</script>
</body>
</html>
`;
}

const bundled = (entry, define) =>
  browserScript(entry, {
    charset: "utf8",
    define,
    alias: LIBRARY_ENTRIES,
    plugins: [inlineAt, parsedJson, usedStatistics],
  });

/** The style sheet that the page shares with a report. */
async function reportStyles() {
  const { outputFiles } = await build({
    ...SHARED_OPTIONS,
    bundle: true,
    entryPoints: ["packages/answers/src/html/styles.ts"],
    write: false,
  });
  const { pageStyles } = await import(
    `data:text/javascript;base64,${Buffer.from(outputFiles[0].text).toString("base64")}`
  );
  return pageStyles();
}
