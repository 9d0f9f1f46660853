import { html, type Markup } from "../markup.js";
import type { Series } from "../svg/series.js";

/** Where a chart tells its values; room is kept for a line a curve. */
export const readoutLine = (series: readonly Series[]): Markup =>
  html`<p class="readout${series.length > 1 ? " two" : ""}"></p>`;
