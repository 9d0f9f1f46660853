import type { Series } from "../svg/series.js";
import { html, type Markup } from "../text/markup.js";

/** Where a chart tells its values; room is kept for a line a curve. */
export const readoutLine = (series: readonly Series[]): Markup =>
  html`<p class="readout${series.length > 1 ? " two" : ""}"></p>`;
