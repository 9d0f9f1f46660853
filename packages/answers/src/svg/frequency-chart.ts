import type { Piece } from "@feedpoint/core";
import { html, type Markup } from "../text/markup.js";
import { type Axis, frequencyAxis, type Tick } from "./axes.js";
import { linePath, type Place } from "./line-path.js";
import { type PlotPoint, plotRuns } from "./plot-points.js";
import type { Series } from "./series.js";

/** The frame of a chart in the picture. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A line across the chart. */
export interface Limit extends Tick {
  /** What is written at its right end, where there is room for it */
  readonly note: string;
}

export interface BandShade extends Piece {
  readonly band: string;
}

export interface FrequencyChart {
  /** What is shown, for those who cannot see it */
  readonly name: string;
  readonly frame: Frame;
  readonly range: Piece;
  readonly series: readonly Series[];
  /** What is drawn of a point; NaN where there is nothing to draw */
  readonly value: (point: PlotPoint) => number;
  readonly valueAxis: Axis;
  readonly valueTitle: string;
  readonly limits: readonly Limit[];
  readonly bands: readonly BandShade[];
  /** Whether bands have their names above them */
  readonly withBandNames: boolean;
  /** What is drawn over the curves */
  readonly marks?: (place: (frequencyHz: number, value: number) => Place) => Markup;
}

/** Labels closer than this run into each other. */
const LEAST_TICK_DISTANCE = 15;
const WIDTH_PER_TICK = 90;
const LETTER_WIDTH = 9;

/** One or more curves over frequency, with bands, limits and axes. */
export function frequencyChart(chart: FrequencyChart): Markup {
  const { frame, range, series, valueAxis, marks } = chart;
  const { width, height, left, right, top, bottom } = frame;
  const x = frequencyAxis(range, [left, right], Math.max(3, Math.round((right - left) / WIDTH_PER_TICK)));
  const place = (frequencyHz: number, value: number): Place => ({
    x: x.place(frequencyHz / 1e6),
    y: valueAxis.place(value),
  });
  const attributes = series.every(({ valuesId }) => valuesId !== undefined)
    ? html` data-values="${series.map(({ valuesId }) => valuesId ?? "").join(" ")}" data-low="${range.lowHz / 1e6}" data-high="${range.highHz / 1e6}" data-left="${left}" data-right="${right}" data-top="${top}" data-bottom="${bottom}"${x.isLogarithmic ? html` data-log="1"` : null}`
    : null;
  return html`<svg class="chart" viewBox="0 0 ${width} ${height}" role="img" aria-label="${chart.name}" xmlns="http://www.w3.org/2000/svg"${attributes}>${[
    bandShades(chart, x),
    frequencyTicks(frame, x),
    valueGrid(chart),
    html`<rect class="frame" x="${left}" y="${top}" width="${right - left}" height="${bottom - top}"/>`,
    series.map((one) => curve(one, chart, place)),
    marks?.(place) ?? null,
    legend(series, left),
  ]}</svg>`;
}

function curve({ trace, role }: Series, { range, value, frame }: FrequencyChart, place: PlaceOf): Markup {
  const runs = plotRuns(trace, range, frame.right - frame.left).map((run) =>
    run.filter((point) => !Number.isNaN(value(point))).map((point) => place(point.frequencyHz, value(point))),
  );
  return html`<path class="line ${role}" d="${linePath(runs)}"/>${runs.map((run) => reading(run, role))}`;
}

/** A point with nothing known beside it. */
function reading(run: readonly Place[], kind: string): Markup | null {
  const [place, ...others] = run;
  if (place === undefined || others.length > 0) return null;
  return html`<circle class="reading ${kind}" cx="${tenths(place.x)}" cy="${tenths(place.y)}" r="2.5"/>`;
}

type PlaceOf = (frequencyHz: number, value: number) => Place;

function bandShades({ bands, range, frame, withBandNames }: FrequencyChart, x: Axis): readonly Markup[] {
  let free = 0;
  return bands.flatMap(({ band, lowHz, highHz }) => {
    if (highHz < range.lowHz || lowHz > range.highHz) return [];
    const start = Math.max(frame.left, x.place(lowHz / 1e6));
    const width = Math.max(1.5, Math.min(frame.right, x.place(highHz / 1e6)) - start);
    const shade = html`<rect class="band" x="${tenths(start)}" y="${frame.top}" width="${tenths(width)}" height="${frame.bottom - frame.top}"/>`;
    const half = (band.length * LETTER_WIDTH) / 2;
    const middle = Math.min(frame.right - half, Math.max(frame.left + half, start + width / 2));
    if (!withBandNames || middle - half < free) return [shade];
    free = middle + half;
    return [
      shade,
      html`<text class="t" x="${tenths(middle)}" y="${frame.top - 7}" text-anchor="middle">${band}</text>`,
    ];
  });
}

function valueGrid({ frame, valueAxis, valueTitle, limits }: FrequencyChart): Markup {
  const { left, right, top, width } = frame;
  const across = (y: number, kind: string) => html`<path class="${kind}" d="M${left},${tenths(y)}H${right}"/>`;
  const limitTicks = limits.map(({ value, label, note }) => {
    const y = valueAxis.place(value);
    return html`${across(y, "limit")}<text class="strong" x="${left - 7}" y="${tenths(y + 4)}" text-anchor="end">${label}</text>${
      note === "" || right === width ? null : html`<text class="t" x="${right + 7}" y="${tenths(y + 4)}">${note}</text>`
    }`;
  });
  const taken = limits.map(({ value }) => valueAxis.place(value));
  const others = valueAxis.ticks.flatMap(({ value, label }) => {
    const y = valueAxis.place(value);
    if (taken.some((other) => Math.abs(other - y) < LEAST_TICK_DISTANCE)) return [];
    taken.push(y);
    return [
      html`${across(y, "grid")}<text class="t" x="${left - 7}" y="${tenths(y + 4)}" text-anchor="end">${label}</text>`,
    ];
  });
  return html`${others}${limitTicks}<text class="t" x="${left - 7}" y="${top - 12}" text-anchor="end">${valueTitle}</text>`;
}

/** Lines at round frequencies; the last one that is labelled has the unit. */
function frequencyTicks({ left, top, bottom, width }: Frame, x: Axis): Markup {
  const y = bottom + 18;
  const room = (label: string) => (label.length * LETTER_WIDTH) / 2;
  let free = left - LETTER_WIDTH;
  const labelled = x.ticks.filter(({ value, label }) => {
    const start = x.place(value) - room(label);
    if (start < free) return false;
    free = x.place(value) + room(label) + LETTER_WIDTH;
    return true;
  });
  const labels = labelled.map(({ value, label }, i) => {
    const at = tenths(x.place(value));
    if (i < labelled.length - 1) return html`<text class="t" x="${at}" y="${y}" text-anchor="middle">${label}</text>`;
    const withUnit = `${label} MHz`;
    return at + room(withUnit) + room(" MHz") > width
      ? html`<text class="t" x="${width - 2}" y="${y}" text-anchor="end">${withUnit}</text>`
      : html`<text class="t" x="${tenths(at - room(label))}" y="${y}">${withUnit}</text>`;
  });
  const lines = x.ticks.map(({ value }) => `M${tenths(x.place(value))},${top}V${bottom}`).join("");
  return html`<path class="grid" d="${lines}"/>${labels}`;
}

/** Which line is which, where there are several. */
export function legend(series: readonly Series[], left: number): Markup | null {
  if (series.length < 2) return null;
  return html`${series.map(({ role }, i) => {
    const x = left + i * 92;
    return html`<path class="line ${role}" d="M${x},9H${x + 26}"/><text x="${x + 33}" y="13">${role}</text>`;
  })}`;
}

export const tenths = (value: number): number => Math.round(value * 10) / 10;
