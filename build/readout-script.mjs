import { createHash } from "node:crypto";
import { build } from "esbuild";
import { SHARED_OPTIONS } from "./shared-options.mjs";

/** The script of a report, which runs in the page that it is written into, and its hash, by which that page permits it. */
export async function readoutScript() {
  const { outputFiles } = await build({
    ...SHARED_OPTIONS,
    bundle: true,
    entryPoints: ["packages/answers/browser/report-script.ts"],
    platform: "browser",
    format: "iife",
    target: "es2022",
    minify: true,
    write: false,
  });
  const script = outputFiles[0].text.trim();
  return {
    READOUT_SCRIPT: JSON.stringify(script),
    READOUT_HASH: JSON.stringify(createHash("sha256").update(script).digest("base64")),
  };
}
