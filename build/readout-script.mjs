import { createHash } from "node:crypto";
import { browserScript } from "./browser-script.mjs";

/** The script of a report, which runs in the page that it is written into, and its hash, by which that page permits it. */
export async function readoutScript() {
  const { text } = await browserScript("packages/answers/browser/report-script.ts");
  return {
    READOUT_SCRIPT: JSON.stringify(text),
    READOUT_HASH: JSON.stringify(createHash("sha256").update(text).digest("base64")),
  };
}
