import type { Scale } from "./quantities.js";

/** A run of this many equal greatest values is the end of an instrument's scale. */
const SATURATED_RUN = 3;

/** A run as long as this is no curve that happens to be flat, if its readings could show it. */
const LONG_RUN = 8;

/**
 * Puts the least that "more than" cells allow into a column. A cell that states no bound ("inf") counts as at least the
 * greatest value that was read, where a scale may end there, and as infinite elsewhere.
 *
 * @returns ceiling: from where on a reading means "at least"; the greatest that can be where only cells without a bound are
 *   beyond the scale
 */
export function withBounds(
  values: Float64Array,
  atLeast: readonly { row: number; bound: number | null }[],
  { leastEnd, greatest: infinite }: Scale,
): { settled: Float64Array; ceiling: number | null } {
  let greatest = Number.NEGATIVE_INFINITY;
  // Missing numbers are greater than nothing.
  for (const value of values) if (value > greatest) greatest = value;
  if (atLeast.length === 0) {
    return { settled: values, ceiling: isEndOfScale(values, greatest, leastEnd, infinite) ? greatest : null };
  }
  const settled = Float64Array.from(values);
  const unbounded = greatest >= leastEnd ? greatest : infinite;
  const least = atLeast.reduce((low, { bound }) => Math.min(low, bound ?? unbounded), infinite);
  for (const { row, bound } of atLeast) settled[row] = bound ?? unbounded;
  return { settled, ceiling: least };
}

/**
 * Whether a greatest reading is where the scale ends: several readings in a row have it at an end of the sweep or at two places
 * of it. In a single place they may be the top of a curve.
 */
function isEndOfScale(values: Float64Array, greatest: number, leastEnd: number, infinite: number): boolean {
  const runs = runsOf(values, greatest).filter(({ length }) => length >= SATURATED_RUN);
  const isPlateau =
    runs.length > 1 || runs.some(({ first, length }) => first === 0 || first + length === values.length);
  if (!isPlateau) return false;
  if (greatest >= leastEnd) return true;
  const longest = Math.max(...runs.map(({ length }) => length));
  return longest >= LONG_RUN && isRoundEnd(greatest, infinite) && areFine(values) && isCurve(values, greatest);
}

/** Where a value stands so many times in a row. */
function runsOf(values: Float64Array, wanted: number): readonly { readonly first: number; readonly length: number }[] {
  const runs: { first: number; length: number }[] = [];
  values.forEach((value, i) => {
    if (value !== wanted) return;
    const last = runs.at(-1);
    if (last !== undefined && last.first + last.length === i) last.length++;
    else runs.push({ first: i, length: 1 });
  });
  return runs;
}

/** Whether some reading is far below the greatest one: a resistor's are not. */
const isCurve = (values: Float64Array, greatest: number): boolean =>
  values.some((value) => value < LOW_SHARE * greatest);
const LOW_SHARE = 0.75;

/** Whether an SWR is one at which low scales end: 1.5, 2, 2.5, 3 … */
const isRoundEnd = (swr: number, greatest: number): boolean =>
  greatest === Number.POSITIVE_INFINITY && swr >= 1.5 && Number.isInteger(2 * swr);

/** Whether some value has more than one decimal. */
const areFine = (values: Float64Array): boolean =>
  values.some((value) => Math.abs(10 * value - Math.round(10 * value)) > 1e-6);
