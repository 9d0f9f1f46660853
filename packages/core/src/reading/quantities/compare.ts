import { at } from "../../numbers/column.js";
import type { Complex } from "../../numbers/complex.js";
import type { Determination, NumberColumn } from "./assemble.js";

/**
 * How far rounding to the printed digits may have moved the reflection, as a distance in Γ: the median over the rows.
 * Infinity where a determination gives no number anywhere.
 */
export function resolutionOf(determination: Determination): number {
  const sizes = movesOf(
    determination,
    determination.columns.map(({ halfUnit }) => halfUnit()),
    ROWS_FOR_RESOLUTION,
  );
  return sizes[sizes.length >> 1] ?? Number.POSITIVE_INFINITY;
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
  const rows = (columns[0] as NumberColumn).values.length;
  const every = Math.max(1, Math.floor(rows / most));
  const sizes: number[] = [];
  for (let row = 0; row < rows; row += every) {
    const values = columns.map((column) => at(column.values, row));
    const centre = reflection(values);
    let square = 0;
    halfUnits.forEach((halfUnit, c) => {
      const moved = reflection(values.map((value, i) => (i === c ? value + halfUnit : value)));
      square += (moved.real - centre.real) ** 2 + (moved.imaginary - centre.imaginary) ** 2;
    });
    if (Number.isFinite(square)) sizes.push(Math.sqrt(square));
  }
  return sizes.sort((a, b) => a - b);
}

/** Rows looked at to compare columns: evenly spread over all. */
const COMPARED_ROWS = 400;

/** Median difference in ρ between two determinations, over the rows that both give (some hundreds of a long file). */
export const medianDisagreement = (first: Determination, second: Determination): number =>
  medianOver(first, second, (one, other) => Math.abs(sizeOf(one) - sizeOf(other)));

/** Median distance in Γ between two determinations that both tell its phase. */
export const medianDistance = (first: Determination, second: Determination): number =>
  medianOver(first, second, (one, other) => Math.hypot(one.real - other.real, one.imaginary - other.imaginary));

function medianOver(
  first: Determination,
  second: Determination,
  difference: (one: Complex, other: Complex) => number,
): number {
  const differences: number[] = [];
  const rows = (first.columns[0] as NumberColumn).values.length;
  for (let row = 0; row < rows; row += Math.ceil(rows / COMPARED_ROWS)) {
    const found = difference(reflectionAt(first, row), reflectionAt(second, row));
    if (Number.isFinite(found)) differences.push(found);
  }
  return differences.length === 0 ? 0 : middleOf(differences);
}

const reflectionAt = ({ columns, reflection }: Determination, row: number): Complex =>
  reflection(columns.map(({ values }) => at(values, row)));

const sizeOf = ({ real, imaginary }: Complex): number => Math.hypot(real, imaginary);

function middleOf(numbers: number[]): number {
  numbers.sort((a, b) => a - b);
  return numbers[Math.floor(numbers.length / 2)] as number;
}

/** The most finely printed complex determination; without one, the most finely printed scalar one. */
export function mostPrecise(determinations: readonly Determination[]): Determination | null {
  const vectors = determinations.filter(({ isVector }) => isVector);
  const choice = vectors.length > 0 ? vectors : determinations;
  if (choice.length <= 1) return choice[0] ?? null;
  return (
    choice
      .map((determination) => ({ determination, resolution: resolutionOf(determination) }))
      .reduce<{ determination: Determination; resolution: number } | null>(
        (best, next) => (best === null || next.resolution < best.resolution ? next : best),
        null,
      )?.determination ?? null
  );
}
