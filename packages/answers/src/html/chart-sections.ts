import type { Limits } from "@feedpoint/core";
import { reactanceChart, resistanceChart, returnLossChart } from "../svg/quantity-charts.js";
import type { Series } from "../svg/series.js";
import { smithChart } from "../svg/smith-chart.js";
import { sweepSwrChart } from "../svg/swr-chart.js";
import { html, type Markup } from "../text/markup.js";
import { readoutLine } from "./readout-line.js";

/** All charts of a sweep or a comparison, the panels of its bands among them. */
export function chartSections(series: readonly Series[], limits: Limits, panels: Markup | null): Markup {
  const isVector = series.every(({ sweep }) => sweep.kind === "vector");
  return html`<section><h2>SWR over the sweep</h2><figure class="wide">${sweepSwrChart(series, limits, "wide")}${readoutLine(series)}</figure><figure class="narrow">${sweepSwrChart(series, limits, "narrow")}${readoutLine(series)}</figure></section>
${panels === null ? null : bandSection(series, limits, panels)}
<section class="tiles">${[
    isVector
      ? tile(
          "Smith chart",
          smithChart(series, limits),
          series,
          `Each band from its sign, at its low end. Within the dashed circle the SWR is ${limits.swr}:1 or less.`,
        )
      : null,
    tile("Return loss", returnLossChart(series), series, "0 dB is total reflection; a good match is far down."),
    isVector
      ? tile("Resistance", resistanceChart(series), series, "The dashed line is the reference impedance.")
      : null,
    isVector
      ? tile(
          "Reactance",
          reactanceChart(series),
          series,
          "Where the curve crosses 0 the antenna is resonant, seen from the analyser.",
        )
      : null,
  ]}</section>`;
}

function bandSection(series: readonly Series[], limits: Limits, panels: Markup): Markup {
  const before = series.length > 1 ? " Before the change: a square, and the upper of two bars." : "";
  return html`<section><h2>Band by band</h2><p>The ring marks the best point, the green bar where the SWR is ${limits.swr}:1 or less.${before}</p>${panels}</section>`;
}

function tile(name: string, chart: Markup, series: readonly Series[], note: string): Markup {
  return html`<figure><h2>${name}</h2>${chart}${readoutLine(series)}<figcaption>${note}</figcaption></figure>`;
}
