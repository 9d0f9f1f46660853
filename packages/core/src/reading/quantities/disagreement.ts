import type { Complex } from "../../numbers/complex.js";
import { type Determination, type NumberColumn, reflectionAt } from "./determination.js";

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

const sizeOf = ({ real, imaginary }: Complex): number => Math.hypot(real, imaginary);

function middleOf(numbers: number[]): number {
  numbers.sort((a, b) => a - b);
  return numbers[Math.floor(numbers.length / 2)] as number;
}
