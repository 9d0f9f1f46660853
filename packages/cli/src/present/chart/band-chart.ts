import { limitLines, SWR_TICKS } from "@feedpoint/answers/text/swr-ticks";
import { textWidth } from "@feedpoint/answers/text/text-width";
import { megahertz } from "@feedpoint/answers/text/units";
import { type BandSummary, type Curve, type Limits, type Piece, reflectionMagnitudeFromSwr } from "@feedpoint/core";
import { type Canvas, emptyCanvas, linesOf, put } from "./canvas.js";
import { columnOf, drawCharacters, drawDots, rowOf, type View } from "./draw-curve.js";
import type { Glyphs } from "./glyphs.js";

/** One side of a chart: a sweep, or repeats of it, and what is marked of the band. */
interface Side {
  readonly name: "only" | "before" | "after";
  readonly curves: readonly Curve[];
  readonly summary: BandSummary;
}

export interface BandChart {
  readonly title: string;
  readonly sides: readonly Side[];
  readonly limits: Limits;
  readonly greatestSwr: number;
}

/** Room for the labels of the axis. */
const LEAST_GUTTER = "1.5 ".length;
/** Rows of the plot itself. */
const ROWS = 10;

/** SWR over one band as lines of text, all of them of the same width. */
export function bandChart({ title, sides, limits, greatestSwr }: BandChart, width: number, glyphs: Glyphs): string[] {
  const [first] = sides;
  if (first === undefined) return [];
  const gutter = Math.max(LEAST_GUTTER, ...sides.map((side) => markName(side, glyphs).length + 1));
  const { lowHz, highHz } = first.summary;
  const view: View = { lowHz, highHz, greatestMagnitude: reflectionMagnitudeFromSwr(greatestSwr) };
  const canvas = emptyCanvas(width - gutter - 1, ROWS);
  const labels = labelRows(limits, greatestSwr, view, glyphs);
  for (const { swr } of limitLines(limits, greatestSwr)) {
    for (let column = 0; column < canvas.width; column++) put(canvas, column, rowOfSwr(swr, view), glyphs.limit);
  }
  drawSides(canvas, sides, view, glyphs);
  const plot = linesOf(canvas).map((line, row) => {
    const label = labels.get(row);
    return `${(label ?? "").padStart(gutter - 1)} ${label === undefined ? glyphs.axis : glyphs.tick}${line}`;
  });
  const marks = sides.map(
    (side) => `${markName(side, glyphs).padEnd(gutter + 1)}${marksOf(side.summary, view, canvas.width, glyphs)}`,
  );
  const lines = [
    title,
    ...plot,
    `${" ".repeat(gutter)}${glyphs.corner}${glyphs.floor.repeat(canvas.width)}`,
    ...marks,
    `${" ".repeat(gutter + 1)}${frequencies(sides, view, canvas.width)}`,
  ];
  return lines.map((line) => line + " ".repeat(Math.max(0, width - textWidth(line))));
}

/** The sweep before a change first, so that the one after it lies on top. */
function drawSides(canvas: Canvas, sides: readonly Side[], view: View, glyphs: Glyphs): void {
  for (const { name, curves } of sides) {
    for (const curve of curves) {
      if (name === "before") drawCharacters(canvas, curve, view, glyphs.before, 2);
      else if (glyphs.hasDots) drawDots(canvas, curve, view);
      else drawCharacters(canvas, curve, view, glyphs.curve, 1);
    }
  }
}

const rowOfSwr = (swr: number, view: View) => rowOf(reflectionMagnitudeFromSwr(swr), view, ROWS);

/** What is written beside each row: the limits, the ends, and of the rest what has a row to itself. */
function labelRows(limits: Limits, greatestSwr: number, view: View, { infinity }: Glyphs): ReadonlyMap<number, string> {
  const wanted = [...limitLines(limits, greatestSwr).map(({ swr }) => swr), 1, greatestSwr, ...SWR_TICKS];
  const labels = new Map<number, string>();
  for (const swr of wanted.filter((value) => value <= greatestSwr)) {
    const row = rowOfSwr(swr, view);
    if (!labels.has(row)) labels.set(row, swr === Number.POSITIVE_INFINITY ? infinity : String(swr));
  }
  return labels;
}

const markName = ({ name, summary }: Side, { upTo }: Glyphs) =>
  name === "only" ? `${upTo}${summary.withinLimit.limitSwr}` : name;

/** The parts within the limit as a bar, its ends where the curve meets the limit, and the best point. */
function marksOf({ withinLimit, best, pieces }: BandSummary, view: Piece, width: number, glyphs: Glyphs): string {
  const line = Array.from({ length: width }, () => " ");
  for (const { lowHz, highHz } of withinLimit.spans) {
    const [low, high] = [columnOf(lowHz, view, width), columnOf(highHz, view, width)];
    for (let column = low; column <= high; column++) line[column] = glyphs.within;
    if (pieces.every((piece) => piece.lowHz !== lowHz)) line[low] = glyphs.low;
    if (pieces.every((piece) => piece.highHz !== highHz)) line[high] = glyphs.high;
  }
  if (best !== null) line[columnOf(best.frequencyHz, view, width)] = glyphs.best;
  return line.join("");
}

/** The ends of the band and, for a single sweep, the best point between them where there is room. */
function frequencies(sides: readonly Side[], view: Piece, width: number): string {
  const [low, high] = [megahertz(view.lowHz), megahertz(view.highHz)];
  const best = sides.length === 1 ? (sides[0]?.summary.best ?? null) : null;
  const blank = width - low.length - high.length;
  if (best === null) return low + " ".repeat(Math.max(1, blank)) + high;
  const text = megahertz(best.frequencyHz);
  const start = columnOf(best.frequencyHz, view, width) - Math.floor(text.length / 2);
  const before = start - low.length;
  const after = width - high.length - start - text.length;
  return before < 1 || after < 1
    ? low + " ".repeat(Math.max(1, blank)) + high
    : low + " ".repeat(before) + text + " ".repeat(after) + high;
}
