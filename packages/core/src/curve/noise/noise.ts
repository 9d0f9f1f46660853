import { at, type Column, medianOf } from "../../numbers/column.js";
import { type ComplexResult, rationalThrough } from "../between/interpolation.js";
import type { Stretch } from "../samples/stretches.js";

/** Orders of difference tried; each next one suppresses what is smooth further and leaves the noise as it is. */
const FIRST_ORDER = 3;
const LAST_ORDER = 8;
/** Fewer differences than this say too little about noise. */
const FEWEST_DIFFERENCES = 8;
/** Where a further order lowers the estimate to less than this share, smooth shape was still in it. */
const SETTLED_RATIO = 0.85;
/** A larger "noise" is taken for shape that the sweep does not resolve. */
const GREATEST_NOISE = 0.03;
/** Reckoned with where a sweep is too short or coarse to tell its noise (common practice, no source). */
export const ASSUMED_NOISE = 0.002;
/** Median of a Rayleigh distribution over its parameter: √(2 ln 2). */
const RAYLEIGH_MEDIAN = 1.1774100225154747;
/** Median of the absolute value of a normal variable over its standard deviation. */
const NORMAL_MEDIAN = 0.6744897501960817;

/**
 * Standard deviation of the noise in each column, told from the sweep itself by differences of high order: the shape of
 * an antenna's curve is smooth and vanishes from them, noise from sample to sample does not. The median keeps dips and
 * spikes out of it.
 *
 * @param columns real and imaginary part, or one column alone; equally noisy
 * @param weights how noisy each sample is beside the others (its noise is the result times its weight)
 * @returns the noise of a sample of weight 1; null where the samples are too few or too coarse to tell
 */
export function estimateNoise(
  columns: readonly Column[],
  stretches: readonly Stretch[],
  weights: Column | null = null,
): number | null {
  const room = new Float64Array(columns[0]?.length ?? 0);
  let previous: number | null = null;
  for (let order = FIRST_ORDER; order <= LAST_ORDER; order++) {
    const squares = relativeSquares(columns, stretches, weights, order, room);
    if (squares.length < FEWEST_DIFFERENCES) return null;
    const estimate = Math.sqrt(medianOf(squares)) / (columns.length === 2 ? RAYLEIGH_MEDIAN : NORMAL_MEDIAN);
    if (previous !== null && estimate > SETTLED_RATIO * previous) {
      const noise = Math.min(estimate, previous);
      return noise <= GREATEST_NOISE ? noise : null;
    }
    previous = estimate;
  }
  return null;
}

/**
 * More noise than this a sweep cannot have, where estimateNoise cannot tell how much it has: the least that differences of
 * any order, or rational functions through three neighbours, leave unexplained. Part of it may be shape.
 *
 * @param columns real and imaginary part, or one column alone
 * @returns null for fewer than five samples in every stretch
 */
export function greatestNoise(
  position: Column,
  columns: readonly Column[],
  stretches: readonly Stretch[],
  weights: Column | null = null,
): number | null {
  const room = new Float64Array(columns[0]?.length ?? 0);
  const bounds: number[] = [];
  const toDeviation = columns.length === 2 ? RAYLEIGH_MEDIAN : NORMAL_MEDIAN;
  for (let order = 2; order <= LAST_ORDER; order++) {
    const squares = relativeSquares(columns, stretches, weights, order, room);
    if (squares.length >= FEWEST_FOR_A_BOUND) bounds.push(Math.sqrt(medianOf(squares)) / toDeviation);
  }
  const [real, imaginary] = columns;
  if (real !== undefined && imaginary !== undefined) {
    const sizes = unexplainedByNeighbours(position, real, imaginary, stretches);
    if (sizes.length >= FEWEST_FOR_A_BOUND) bounds.push(medianOf(sizes) / toDeviation);
  }
  return bounds.length === 0 ? null : Math.min(...bounds);
}

/** A bound from fewer values than this is no bound. */
const FEWEST_FOR_A_BOUND = 3;

/** How far each sample lies from the rational function through two neighbours on one side and one on the other. */
function unexplainedByNeighbours(
  position: Column,
  real: Column,
  imaginary: Column,
  stretches: readonly Stretch[],
): Float64Array {
  const sizes: number[] = [];
  const result: ComplexResult = { real: 0, imaginary: 0 };
  for (const { first, last } of stretches) {
    for (let i = first + 1; i < last; i++) {
      for (const far of [i - 2, i + 2]) {
        if (far < first || far > last) continue;
        const places = [Math.min(far, i - 1), far < i ? i - 1 : i + 1, far < i ? i + 1 : far] as const;
        const spread = rationalThrough(position, real, imaginary, places, at(position, i), result);
        const size = Math.hypot(result.real - at(real, i), result.imaginary - at(imaginary, i)) / spread;
        // Three equal samples have no such function.
        if (Number.isFinite(size)) sizes.push(size);
      }
    }
  }
  return Float64Array.from(sizes);
}

/** Squares of the differences of an order within the stretches, over what noise of 1 would give, put into a room for them. */
function relativeSquares(
  columns: readonly Column[],
  stretches: readonly Stretch[],
  weights: Column | null,
  order: number,
  squares: Float64Array,
): Float64Array {
  const factors = differenceFactors(order);
  const evenVariance = varianceAt(factors, null, 0);
  const [first, second] = columns;
  if (first === undefined) return squares.subarray(0, 0);
  let count = 0;
  for (const stretch of stretches) {
    for (let start = stretch.first; start + order <= stretch.last; start++) {
      const square =
        second === undefined ? differenceAt(first, factors, start) ** 2 : squareOf(first, second, factors, start);
      squares[count++] = square / (weights === null ? evenVariance : varianceAt(factors, weights, start));
    }
  }
  return squares.subarray(0, count);
}

/** Square of the difference in both columns, which are walked together. */
function squareOf(first: Column, second: Column, factors: Float64Array, start: number): number {
  let x = 0;
  let y = 0;
  for (let k = 0; k < factors.length; k++) {
    const factor = at(factors, k);
    x += factor * at(first, start + k);
    y += factor * at(second, start + k);
  }
  return x * x + y * y;
}

function differenceAt(column: Column, factors: Float64Array, start: number): number {
  let difference = 0;
  for (let k = 0; k < factors.length; k++) difference += at(factors, k) * at(column, start + k);
  return difference;
}

/** Variance of a difference of samples whose standard deviations are the weights (1 without). */
function varianceAt(factors: Float64Array, weights: Column | null, start: number): number {
  let variance = 0;
  for (let k = 0; k < factors.length; k++) {
    variance += (at(factors, k) * (weights === null ? 1 : at(weights, start + k))) ** 2;
  }
  return variance;
}

/** (-1)ᵏ C(order, k), for k from 0 to the order. */
function differenceFactors(order: number): Float64Array {
  const factors = new Float64Array(order + 1);
  factors[0] = 1;
  for (let k = 1; k <= order; k++) factors[k] = (-at(factors, k - 1) * (order - k + 1)) / k;
  return factors;
}
