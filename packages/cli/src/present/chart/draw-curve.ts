import { type Curve, type Piece, reflectionMagnitudeAt } from "@feedpoint/core";
import { type Canvas, DOTS_ACROSS, DOTS_DOWN, put, putDot } from "./canvas.js";

/** What a canvas shows: a range of frequencies, and ρ from 0 at the bottom to this at the top. */
export interface View extends Piece {
  readonly greatestMagnitude: number;
}

/** The row of a ρ, of so many; what lies above the top is drawn at the top. */
export function rowOf(reflectionMagnitude: number, { greatestMagnitude }: View, rows: number): number {
  const share = Math.min(1, Math.max(0, reflectionMagnitude / greatestMagnitude));
  return Math.round((1 - share) * (rows - 1));
}

/** The column of a frequency, of so many. */
export const columnOf = (frequencyHz: number, { lowHz, highHz }: Piece, columns: number): number =>
  Math.round(((frequencyHz - lowHz) / (highHz - lowHz)) * (columns - 1));

/** Draws a curve in dots, two across and four down a character; nothing in a gap. */
export function drawDots(canvas: Canvas, curve: Curve, view: View): void {
  const rows = rowsOver(curve, view, canvas.width * DOTS_ACROSS, canvas.height * DOTS_DOWN);
  forEachDrawn(rows, (column, row) => putDot(canvas, column, row));
}

/** Draws a curve in characters, in every column or in every other one. */
export function drawCharacters(canvas: Canvas, curve: Curve, view: View, character: string, every: 1 | 2): void {
  const rows = rowsOver(curve, view, canvas.width, canvas.height);
  if (every === 1) forEachDrawn(rows, (column, row) => put(canvas, column, row, character));
  else
    rows.forEach((row, column) => {
      if (row !== null && column % every === 0) put(canvas, column, row, character);
    });
}

/** The row of a curve in each column; null where it is not known. */
function rowsOver(curve: Curve, view: View, columns: number, rows: number): readonly (number | null)[] {
  const known = Array.from({ length: columns }, (_, column) => {
    // The last column's frequency is the end itself, which a sum could miss by a rounding.
    const frequencyHz =
      column === columns - 1 ? view.highHz : view.lowHz + ((view.highHz - view.lowHz) * column) / (columns - 1);
    return rowAt(curve, frequencyHz, view, rows);
  });
  // A single reading lies between the frequencies of columns.
  for (const { first, last } of curve.stretches) {
    const frequencyHz = curve.sweep.frequencyHz[first] ?? 0;
    if (first !== last || frequencyHz < view.lowHz || frequencyHz > view.highHz) continue;
    known[columnOf(frequencyHz, view, columns)] = rowAt(curve, frequencyHz, view, rows);
  }
  return known;
}

function rowAt(curve: Curve, frequencyHz: number, view: View, rows: number): number | null {
  const rho = reflectionMagnitudeAt(curve, frequencyHz);
  return Number.isNaN(rho) ? null : rowOf(rho, view, rows);
}

/** Where a curve is steep, the column is filled half-way to the rows of its neighbours, so that the line does not break. */
function forEachDrawn(rows: readonly (number | null)[], draw: (column: number, row: number) => void): void {
  rows.forEach((row, column) => {
    if (row === null) return;
    const reach = [rows[column - 1], rows[column + 1]].map((other) => (other == null ? row : (row + other) / 2));
    const top = Math.ceil(Math.min(row, ...reach));
    const bottom = Math.floor(Math.max(row, ...reach));
    for (let drawn = top; drawn <= bottom; drawn++) draw(column, drawn);
  });
}
