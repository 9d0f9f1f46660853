import { html, type Markup, trusted } from "../text/markup.js";
import { pageStyles } from "./styles.js";

/** The script of `packages/answers/browser`, and its SHA-256 in base 64, put here by the build. */
declare const READOUT_SCRIPT: string;
declare const READOUT_HASH: string;

/** A whole page that needs nothing from elsewhere, and may not ask for it either. */
export function page(title: string, parts: readonly Markup[]): string {
  const policy = `default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-${READOUT_HASH}'; img-src data:; base-uri 'none'; form-action 'none'`;
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
