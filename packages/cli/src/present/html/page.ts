import { createHash } from "node:crypto";
import { html, type Markup, trusted } from "../markup.js";
import { pageStyles } from "./styles.js";

/** The script of `packages/cli/browser`, put here by the build. */
declare const READOUT_SCRIPT: string;

/** A whole page that needs nothing from elsewhere, and may not ask for it either. */
export function page(title: string, parts: readonly Markup[]): string {
  const hash = createHash("sha256").update(READOUT_SCRIPT).digest("base64");
  const policy = `default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-${hash}'; img-src data:; base-uri 'none'; form-action 'none'`;
  return `${
    html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width">
<meta name="color-scheme" content="light dark">
<title>${title} – feedpoint</title>
<link rel="icon" href="data:,">
<style>${trusted(pageStyles())}</style>
</head>
<body>
<main>
${parts}
</main>
<script>${trusted(READOUT_SCRIPT)}</script>
</body>
</html>`.markup
  }\n`;
}
