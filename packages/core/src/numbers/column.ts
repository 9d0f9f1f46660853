import { quickselect } from "simple-statistics";

/** A column of numbers, one per sweep point. Readers may look, never write. */
export type Column = Readonly<Float64Array>;

/**
 * The number at an index that is known to lie within the column.
 *
 * The one place where an index is trusted: every loop in this library runs from 0 to the column's length, and asking
 * for a default at each access would hide a wrong bound instead of showing it.
 */
export function at(column: Column, index: number): number {
  return column[index] as number;
}

/** √(real² + imaginary²) of two columns of the same length. */
export function magnitudesOf(real: Column, imaginary: Column): Float64Array {
  const magnitudes = new Float64Array(real.length);
  for (let i = 0; i < magnitudes.length; i++) {
    const x = at(real, i);
    const y = at(imaginary, i);
    const magnitude = Math.sqrt(x * x + y * y);
    // Squares of absurd readings overflow where their root does not.
    magnitudes[i] = magnitude < Number.POSITIVE_INFINITY ? magnitude : Math.hypot(x, y);
  }
  return magnitudes;
}

/** First index whose value is greater than `value`, in an ascending column (its length if there is none). */
export function firstIndexAbove(column: Column, value: number): number {
  let low = 0;
  let high = column.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (at(column, middle) > value) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** The median of one number or more. Puts them into another order, where the library's own would copy them twice. */
export function medianOf(values: Float64Array): number {
  const half = values.length >> 1;
  // It asks for an array of numbers and uses nothing that a column does not have.
  quickselect(values as unknown as number[], half);
  const upper = at(values, half);
  if (values.length % 2 === 1) return upper;
  let lower = at(values, 0);
  for (let i = 1; i < half; i++) if (at(values, i) > lower) lower = at(values, i);
  return (lower + upper) / 2;
}
