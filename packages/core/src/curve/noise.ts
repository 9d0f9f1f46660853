import { median } from "simple-statistics";
import { at, type Column } from "../column.js";
import type { Stretch } from "./stretches.js";

/** Orders of difference tried; each next one suppresses what is smooth further and leaves the noise as it is. */
const FIRST_ORDER = 3;
const LAST_ORDER = 8;
/** Fewer differences than this say too little about noise. */
const FEWEST_DIFFERENCES = 8;
/** Where a further order lowers the estimate to less than this share, smooth shape was still in it. */
const SETTLED_RATIO = 0.85;
/** A larger "noise" is taken for shape that the sweep does not resolve. */
const GREATEST_NOISE = 0.03;
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
  let previous: number | null = null;
  for (let order = FIRST_ORDER; order <= LAST_ORDER; order++) {
    const estimate = noiseFromDifferences(columns, stretches, weights, order);
    if (estimate === null) return null;
    if (previous !== null && estimate > SETTLED_RATIO * previous) {
      const noise = Math.min(estimate, previous);
      return noise <= GREATEST_NOISE ? noise : null;
    }
    previous = estimate;
  }
  return null;
}

function noiseFromDifferences(
  columns: readonly Column[],
  stretches: readonly Stretch[],
  weights: Column | null,
  order: number,
): number | null {
  const coefficients = binomialCoefficients(order);
  const sizes: number[] = [];
  for (const { first, last } of stretches) {
    for (let start = first; start + order <= last; start++) {
      let variance = 0;
      let square = 0;
      for (let k = 0; k <= order; k++) {
        const spread = at(coefficients, k) * (weights === null ? 1 : at(weights, start + k));
        variance += spread * spread;
      }
      for (const column of columns) {
        let difference = 0;
        for (let k = 0; k <= order; k++) difference += at(coefficients, k) * at(column, start + k);
        square += difference * difference;
      }
      sizes.push(Math.sqrt(square / variance));
    }
  }
  if (sizes.length < FEWEST_DIFFERENCES) return null;
  return median(sizes) / (columns.length === 2 ? RAYLEIGH_MEDIAN : NORMAL_MEDIAN);
}

/** (-1)^k · C(order, k). */
function binomialCoefficients(order: number): Float64Array {
  const coefficients = new Float64Array(order + 1);
  coefficients[0] = 1;
  for (let k = 1; k <= order; k++) coefficients[k] = (-at(coefficients, k - 1) * (order - k + 1)) / k;
  return coefficients;
}
