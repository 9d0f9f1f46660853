import { type BandGrade, dateOf, type LossHistory, type SweepGrade, timeOf } from "@feedpoint/core";
import { scaleLinear } from "d3-scale";
import { html, type Markup } from "../text/markup.js";
import { fixed } from "../text/units.js";
import { tenths } from "./frequency-chart.js";
import { BAND_COLOURS } from "./palette.js";

/** Loss, and the dip and worst match of each band, by date: what goes together over a season is seen at one glance. */

const FRAME = { left: 64, right: 760 };
const PANEL = 120;
const GAP = 34;

interface Dot {
  readonly time: number;
  readonly value: number;
}

interface Line {
  readonly name: string;
  readonly dots: readonly Dot[];
}

/** @returns null where fewer than two dates are known */
export function seasonTime(sweeps: readonly SweepGrade[], losses: readonly LossHistory[]): Markup | null {
  const times = sweeps.flatMap((graded) => timeOf(dateOf(graded) ?? "") ?? []);
  const [first, last] = [Math.min(...times), Math.max(...times)];
  if (!(last > first)) return null;
  const bands = [...new Set(sweeps.flatMap((graded) => graded.bands.map(({ band }) => band)))];
  const ofBands = (value: (band: BandGrade) => number | null) =>
    bands.map((name) => ({ name, dots: dotsOf(sweeps, name, value) })).filter(({ dots }) => dots.length > 1);
  const panels = [
    {
      title: "Loss against the first, dB at 10 MHz",
      lines: losses.map(({ deployment, sweeps: told }) => ({
        name: deployment ?? "all",
        dots: told.map(({ date, at10MHzDb }) => ({ time: timeOf(date) ?? 0, value: at10MHzDb })),
      })),
    },
    { title: "Dip against its mean, %", lines: aroundMean(ofBands(({ dipHz }) => dipHz)) },
    {
      title: "Share within the limit, %",
      lines: ofBands((band) => (band.grade === null ? null : 100 * band.withinLimitFraction)),
    },
  ].filter(({ lines }) => lines.length > 0);
  if (panels.length === 0) return null;
  const x = scaleLinear().domain([first, last]).range([FRAME.left, FRAME.right]);
  const drawn = panels.map(({ title, lines }, i) => panel(title, lines, x, 24 + i * (PANEL + GAP)));
  const height = panels.length * (PANEL + GAP) + 30;
  const dates = [first, last].map((time, i) => {
    const date = new Date(time).toISOString().slice(0, 10);
    return html`<text class="t" x="${x(time)}" y="${height - 6}" text-anchor="${i === 0 ? "start" : "end"}">${date}</text>`;
  });
  return html`<svg class="chart" xmlns="http://www.w3.org/2000/svg" viewBox="0 0 900 ${height}" role="img" aria-label="${panels.map(({ title, lines }) => `${title}: ${lines.map(inWords).join(", ")}`).join("; ")}">${drawn}${dates}</svg>`;
}

const inWords = ({ name, dots }: Line): string =>
  `${name} from ${fixed(dots[0]?.value ?? 0, 2)} to ${fixed(dots.at(-1)?.value ?? 0, 2)}`;

function dotsOf(
  sweeps: readonly SweepGrade[],
  name: string,
  value: (band: BandGrade) => number | null,
): readonly Dot[] {
  return sweeps
    .flatMap((graded) => {
      const time = timeOf(dateOf(graded) ?? "");
      const entry = graded.bands.find(({ band }) => band === name);
      const told = entry === undefined ? null : value(entry);
      return time === null || told === null ? [] : [{ time, value: told }];
    })
    .sort((a, b) => a.time - b.time);
}

const aroundMean = (lines: readonly Line[]): readonly Line[] =>
  lines.map(({ name, dots }) => {
    const mean = dots.reduce((sum, { value }) => sum + value, 0) / dots.length;
    return { name, dots: dots.map(({ time, value }) => ({ time, value: 100 * (value / mean - 1) })) };
  });

function panel(title: string, lines: readonly Line[], x: (time: number) => number, top: number): Markup {
  const values = lines.flatMap(({ dots }) => dots.map(({ value }) => value));
  const y = scaleLinear()
    .domain([Math.min(0, ...values), Math.max(...values, 0.1)])
    .nice(4)
    .range([top + PANEL, top]);
  const ticks = y.ticks(4).map((value) => {
    const at = tenths(y(value));
    return html`<path class="grid" d="M${FRAME.left},${at}H${FRAME.right}"/><text class="t" x="${FRAME.left - 7}" y="${at + 4}" text-anchor="end">${String(value).replace("-", "−")}</text>`;
  });
  const drawn = lines.map(({ name, dots }, i) => {
    const places = dots.map(({ time, value }) => ({ x: tenths(x(time)), y: tenths(y(value)) }));
    const path = places.map((place, k) => `${k === 0 ? "M" : "L"}${place.x},${place.y}`).join("");
    const end = places.at(-1) ?? { x: FRAME.right, y: top };
    return html`<path class="line b${i % BAND_COLOURS}" d="${path}"/>${places.map((place) => html`<circle class="s${i % BAND_COLOURS}" cx="${place.x}" cy="${place.y}" r="2.6"/>`)}<text class="t" x="${FRAME.right + 8}" y="${end.y + 4}">${name}</text>`;
  });
  return html`<text class="strong" x="${FRAME.left}" y="${top - 7}">${title}</text>${ticks}<rect class="frame" x="${FRAME.left}" y="${top}" width="${FRAME.right - FRAME.left}" height="${PANEL}"/>${drawn}`;
}
