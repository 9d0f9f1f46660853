import { at, type Column } from "../column.js";
import { evenWindow, isEven, unevenWindow, type Window } from "./smoothing-window.js";
import type { Stretch } from "./stretches.js";

/** Half-widths of the windows tried, in samples; 0 leaves the sample as it is. */
const HALF_WIDTHS = [3, 4, 6, 8, 11, 15, 20, 28, 40, 56];
/** Two windows agree while their results differ by no more than this many standard deviations of that difference. */
const AGREEMENT = 2.5;

/** Columns with their noise reduced where the samples lie close enough together to allow it. */
export interface Smoothed {
  readonly columns: readonly Float64Array[];
  /** Standard deviation left in each sample over that of a measured sample of weight 1 */
  readonly remaining: Float64Array;
}

/**
 * Reduces noise by fitting a cubic to a window of samples around each one.
 *
 * The window grows for as long as its result agrees, within the noise, with those of all the narrower ones: on a flat
 * part of the curve it grows wide, in a sharp dip or a coarse sweep it does not open at all and the sample is kept as
 * measured. (The rule is that of O. Lepski, Theory of Probability and Its Applications 35, 1990: on adapting to unknown
 * smoothness; from memory.)
 *
 * @param noise standard deviation of a sample of weight 1, as found by estimateNoise
 * @param weights relative noise of each sample, or null where all are alike
 */
export function smooth(
  position: Column,
  columns: readonly Column[],
  stretches: readonly Stretch[],
  noise: number,
  weights: Column | null = null,
): Smoothed {
  const result = columns.map((column) => Float64Array.from(column));
  const remaining = weights === null ? new Float64Array(position.length).fill(1) : Float64Array.from(weights);
  for (const stretch of stretches) {
    const halfWidths = HALF_WIDTHS.filter((half) => 2 * half <= stretch.last - stretch.first);
    const even = isEven(position, stretch) ? halfWidths.map(evenWindow) : null;
    const task = { columns, weights, noise, result, remaining };
    for (let i = stretch.first; i <= stretch.last; i++) {
      const widest = Math.min(i - stretch.first, stretch.last - i);
      smoothSample(task, i, (w) => {
        const half = halfWidths[w] ?? Number.POSITIVE_INFINITY;
        if (half > widest) return null;
        return even?.[w] ?? unevenWindow(position, i, half);
      });
    }
  }
  return { columns: result, remaining };
}

interface SmoothingTask {
  readonly columns: readonly Column[];
  readonly weights: Column | null;
  readonly noise: number;
  readonly result: readonly Float64Array[];
  readonly remaining: Float64Array;
}

/** @param windowAt the wth window around the sample, narrowest first; null where there is none wider */
function smoothSample(task: SmoothingTask, index: number, windowAt: (w: number) => Window | null): void {
  const { columns, weights, noise, result, remaining } = task;
  // What each accepted window gave, to compare the next one with: its value per column and its variance.
  const accepted: { values: number[]; variance: number }[] = [
    { values: columns.map((column) => at(column, index)), variance: (weights === null ? 1 : at(weights, index)) ** 2 },
  ];
  for (let w = 0; ; w++) {
    const window = windowAt(w);
    if (window === null) break;
    const candidate = applyWindow(task, window.coefficients, index - window.halfWidth);
    const agrees = accepted.every(({ values, variance }) => {
      let square = 0;
      for (let c = 0; c < values.length; c++) square += ((values[c] ?? 0) - (candidate.values[c] ?? 0)) ** 2;
      const spread = Math.max(variance - candidate.variance, 0.1 * variance) * columns.length;
      return square <= AGREEMENT * AGREEMENT * spread * noise * noise;
    });
    if (!agrees) break;
    accepted.push(candidate);
  }
  const best = accepted.reduce((least, entry) => (entry.variance < least.variance ? entry : least));
  for (let c = 0; c < columns.length; c++) (result[c] as Float64Array)[index] = best.values[c] as number;
  remaining[index] = Math.sqrt(best.variance);
}

function applyWindow({ columns, weights }: SmoothingTask, coefficients: Float64Array, start: number) {
  let variance = 0;
  for (let k = 0; k < coefficients.length; k++) {
    variance += (at(coefficients, k) * (weights === null ? 1 : at(weights, start + k))) ** 2;
  }
  const values = columns.map((column) => {
    let sum = 0;
    for (let k = 0; k < coefficients.length; k++) sum += at(coefficients, k) * at(column, start + k);
    return sum;
  });
  return { values, variance };
}
