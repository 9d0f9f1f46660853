import { type BandPlan, type Limits, reflectionMagnitudeFromSwr, type Sweep, traceOfSweep } from "@feedpoint/core";
import { html, type Markup } from "../text/markup.js";
import { limitLines } from "../text/swr-ticks.js";
import { frequencyAxis, swrAxis } from "./axes.js";
import { tenths } from "./frequency-chart.js";
import { linePath } from "./line-path.js";
import { BAND_COLOURS } from "./palette.js";
import { plotRuns } from "./plot-points.js";

/** A sweep of many, and what it is called beside its curve. */
export interface NamedSweep {
  readonly name: string;
  readonly sweep: Sweep;
}

const FRAME = { left: 44, right: 650, top: 30, bottom: 400 };
/** Width of a letter of the chart's font, about. */
const LETTER = 7.6;
const ROW = 18;
/** Share of the band that is shown on either side of it. */
const MARGIN = 0.3;
const END_SWR = 10;
/** Dashes that tell curves apart beside their colours. */
const DASHES = ["", "9 4", "2 4", "9 4 2 4", "1 6"];

/** The SWR of many deployments over each other on one band, each with its name and a number at its least. */
export function seasonCurves(sweeps: readonly NamedSweep[], band: BandPlan["bands"][number], limits: Limits): Markup {
  const { left, right, top } = FRAME;
  const width = right + 70 + LETTER * Math.max(...sweeps.map((each) => each.name.length));
  const bottom = Math.max(FRAME.bottom, top + ROW * sweeps.length);
  const margin = MARGIN * (band.highHz - band.lowHz);
  const range = { lowHz: band.lowHz - margin, highHz: band.highHz + margin };
  const x = frequencyAxis(range, [left, right], 6);
  const y = swrAxis(END_SWR, [bottom, top]);
  const greatest = reflectionMagnitudeFromSwr(END_SWR);
  const place = (hz: number, rho: number) => ({ x: x.place(hz / 1e6), y: y.place(Math.min(greatest, rho)) });
  const curves = sweeps.map(({ sweep }, i) => {
    const runs = plotRuns(traceOfSweep(sweep), range, right - left);
    const points = runs.flat();
    const least = points.reduce<(typeof points)[number] | null>(
      (best, point) => (best === null || point.reflectionMagnitude < best.reflectionMagnitude ? point : best),
      null,
    );
    const path = linePath(runs.map((run) => run.map((point) => place(point.frequencyHz, point.reflectionMagnitude))));
    const mark = least === null ? null : place(least.frequencyHz, least.reflectionMagnitude);
    return html`<path class="line b${i % BAND_COLOURS}" style="${dashOf(i)}" d="${path}"/>${mark === null ? null : html`<text class="halo" x="${tenths(mark.x)}" y="${tenths(mark.y - 5)}" text-anchor="middle">${i + 1}</text>`}`;
  });
  const names = sweeps.map(({ name }, i) => {
    const at = top + ROW * i + 8;
    return html`<path class="line b${i % BAND_COLOURS}" style="${dashOf(i)}" d="M${right + 14},${at}h26"/><text x="${right + 46}" y="${at + 4}">${i + 1} ${name}</text>`;
  });
  const lines = y.ticks.map(({ value, label }) => {
    const at = tenths(y.place(value));
    return html`<path class="grid" d="M${left},${at}H${right}"/><text class="t" x="${left - 7}" y="${at + 4}" text-anchor="end">${label}</text>`;
  });
  const limit = limitLines(limits, END_SWR).map(
    ({ swr }) => html`<path class="limit" d="M${left},${tenths(y.place(reflectionMagnitudeFromSwr(swr)))}H${right}"/>`,
  );
  const ticks = x.ticks.map(
    ({ value, label }) =>
      html`<path class="grid" d="M${tenths(x.place(value))},${top}V${bottom}"/><text class="t" x="${tenths(x.place(value))}" y="${bottom + 18}" text-anchor="middle">${label}</text>`,
  );
  const shade = html`<rect class="band" x="${tenths(x.place(band.lowHz / 1e6))}" y="${top}" width="${tenths(x.place(band.highHz / 1e6) - x.place(band.lowHz / 1e6))}" height="${bottom - top}"/>`;
  const name = `SWR on ${band.band} of ${sweeps.map((each, i) => `${i + 1} ${each.name}`).join(", ")}`;
  return html`<svg class="chart" xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${Math.ceil(width)} ${bottom + 28}" role="img" aria-label="${name}">${shade}${lines}${ticks}${limit}<rect class="frame" x="${left}" y="${top}" width="${right - left}" height="${bottom - top}"/>${curves}${names}<text class="t" x="${left - 7}" y="${top - 12}" text-anchor="end">SWR</text><text class="t" x="${right + 14}" y="${bottom + 18}">MHz</text></svg>`;
}

const dashOf = (i: number): string => {
  const dash = DASHES[Math.floor(i / BAND_COLOURS) % DASHES.length] ?? "";
  return dash === "" ? "" : `stroke-dasharray:${dash}`;
};
