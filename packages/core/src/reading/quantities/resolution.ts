import { at } from "../../numbers/column.js";
import type { Complex } from "../../numbers/complex.js";
import { once } from "../../numbers/once.js";
import type { Determination, NumberColumn } from "./determination.js";

/** A determination, and how finely it is printed. */
export interface Printed extends Determination {
  /**
   * How far rounding to the printed digits may have moved the reflection, as a distance in Γ: the median over the rows.
   * Infinity where it gives no number anywhere; told when asked
   */
  readonly resolution: () => number;
}

export function withResolution(determination: Determination): Printed {
  const resolution = once(() => {
    const halfUnits = determination.columns.map(({ halfUnit }) => halfUnit());
    const sizes = movesOf(determination, halfUnits, ROWS_FOR_RESOLUTION);
    return sizes[sizes.length >> 1] ?? Number.POSITIVE_INFINITY;
  });
  return { ...determination, resolution };
}

const ROWS_FOR_RESOLUTION = 60;

/**
 * How far half of one unit in the last printed place of each column moves the reflection, as distances in Γ, ascending.
 *
 * @param most rows that are looked at, evenly spread over all
 */
export function movesOf(
  { columns, reflection }: Determination,
  halfUnits: readonly number[],
  most = Number.POSITIVE_INFINITY,
): readonly number[] {
  const [first, second] = columns as readonly [NumberColumn, NumberColumn?];
  const [halfOfFirst = 0, halfOfSecond = 0] = halfUnits;
  const rows = first.values.length;
  const every = Math.max(1, Math.floor(rows / most));
  const sizes: number[] = [];
  for (let row = 0; row < rows; row += every) {
    const a = at(first.values, row);
    const b = second === undefined ? 0 : at(second.values, row);
    const centre = reflection(a, b);
    const square = squareOf(reflection(a + halfOfFirst, b), centre);
    const both = second === undefined ? square : square + squareOf(reflection(a, b + halfOfSecond), centre);
    if (Number.isFinite(both)) sizes.push(Math.sqrt(both));
  }
  return sizes.sort((a, b) => a - b);
}

const squareOf = (moved: Complex, { real, imaginary }: Complex) =>
  (moved.real - real) ** 2 + (moved.imaginary - imaginary) ** 2;

/** The most finely printed complex determination; without one, the most finely printed scalar one. */
export function mostPrecise(determinations: readonly Printed[]): Printed | null {
  const vectors = determinations.filter(({ isVector }) => isVector);
  const [first, ...others] = vectors.length > 0 ? vectors : determinations;
  if (first === undefined) return null;
  return others.reduce((best, next) => (next.resolution() < best.resolution() ? next : best), first);
}
