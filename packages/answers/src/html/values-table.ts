import { impedanceFromReflection, returnLossDb, swrFromReflectionMagnitude } from "@feedpoint/core";
import { type PlotPoint, plotRuns } from "../svg/plot-points.js";
import type { Series } from "../svg/series.js";
import { rangeOf } from "../svg/swr-chart.js";
import { html, type Markup, trusted } from "../text/markup.js";
import { fixed, signed, swr } from "../text/units.js";

/** The curves of a page in numbers, each under its name. */
export const valuesSection = (named: readonly (readonly [Series, string])[]): Markup =>
  html`<section class="all"><h2>The curve in numbers</h2><p>Points of the curve: all of them on the bands, fewer between, where it bends most.</p>${named.map(([series, name]) => valuesTable(series, name))}</section>`;

/** Between the bands no more points than this are listed. */
const MOST_OUTSIDE = 400;

/**
 * The curve in numbers, a row a point: every sample on the bands, fewer between them. The readout of the charts reads
 * its rows. They leave out the end tags that HTML does not need, which halves the page.
 */
function valuesTable(series: Series, name: string): Markup {
  const isVector = series.sweep.kind === "vector";
  const titles = ["MHz", "SWR", "return loss dB", ...(isVector ? ["R Ω", "X Ω"] : [])];
  const { referenceOhms } = series.sweep;
  const rows = pointsOf(series).map((point) => `<tr><td>${cellsOf(point, referenceOhms).join("<td>")}`);
  return html`<details class="values"><summary>${name}</summary><div class="scroll" tabindex="0" role="group" aria-label="${name}"><table class="n" id="${series.valuesId ?? ""}" data-name="${series.role === "only" ? "" : series.role}"><caption>${name}</caption><thead><tr>${titles.map((title) => html`<th scope="col">${title}</th>`)}</tr></thead><tbody>
${trusted(rows.join("\n"))}
</tbody></table></div></details>`;
}

function pointsOf(series: Series): readonly PlotPoint[] {
  const { trace, bands } = series;
  const everywhere = plotRuns(trace, rangeOf([series]), MOST_OUTSIDE).flat();
  const onBands = bands.flatMap(({ pieces }) =>
    pieces.flatMap((piece) => plotRuns(trace, piece, Number.POSITIVE_INFINITY).flat()),
  );
  const points = new Map([...everywhere, ...onBands].map((point) => [point.frequencyHz, point]));
  return [...points.values()].sort((first, second) => first.frequencyHz - second.frequencyHz);
}

function cellsOf(
  { frequencyHz, reflectionMagnitude, reflection }: PlotPoint,
  referenceOhms: number,
): readonly string[] {
  const scalar = [
    String(Number(fixed(frequencyHz / 1e6, 4))),
    swr(swrFromReflectionMagnitude(reflectionMagnitude)),
    decibels(returnLossDb(reflectionMagnitude)),
  ];
  if (reflection === null) return scalar;
  const { real, imaginary } = impedanceFromReflection(reflection, referenceOhms);
  return [...scalar, ohms(real), ohms(imaginary)];
}

const decibels = (value: number) => (value > 99 ? "99+" : fixed(value, 1));

/** Ohms with a sign where they are negative; a digit less where they are many. */
const ohms = (value: number) =>
  Number.isFinite(value) ? signed(value, Math.abs(value) < 1000 ? 1 : 0).replace("+", "") : "∞";
