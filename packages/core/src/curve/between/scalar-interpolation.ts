import { at, type Column } from "../../numbers/column.js";
import type { Stretch } from "../samples/stretches.js";

/**
 * A scalar sweep ready to be interpolated: u = 1 / (1 - ρ²) by a cubic spline, since around a series or parallel resonance
 * u is a parabola in frequency. Towards total reflection u runs to infinity and no polynomial follows it; there ρ itself
 * is joined by straight lines.
 */
export interface ScalarInterpolation {
  readonly position: Column;
  /** u at the samples */
  readonly inverse: Column;
  /** Second derivative of the spline at the samples; NaN where a sample belongs to no spline */
  readonly bend: Column;
}

/** Beyond this u (ρ 0.91, SWR 22) straight lines serve: nothing is decided there that needs more. */
const GREATEST_CALM = 6;

/**
 * u is never below 1. A spline that runs below this between two samples has followed too few of them, and would invent a
 * dip; straight lines serve there. (A little below is rounding of a perfect match.)
 */
const LEAST_INVERSE = 0.97;

/** @param inverse u at each sample, 1 or more (noise may leave it slightly below) */
export function prepareScalarInterpolation(
  position: Column,
  inverse: Column,
  stretches: readonly Stretch[],
): ScalarInterpolation {
  const bend = new Float64Array(position.length).fill(Number.NaN);
  for (const { first, last } of stretches) {
    let start = first;
    for (let i = first; i <= last + 1; i++) {
      if (i <= last && at(inverse, i) <= GREATEST_CALM) continue;
      if (i > start) fillBend(position, inverse, start, i - 1, bend);
      start = i + 1;
    }
  }
  return { position, inverse, bend };
}

/** ρ between samples `index` and `index + 1` of one stretch. */
export function scalarBetween({ position, inverse, bend }: ScalarInterpolation, index: number, x: number): number {
  const low = at(position, index);
  const width = at(position, index + 1) - low;
  const b = (x - low) / width;
  const a = 1 - b;
  const lowBend = at(bend, index);
  const highBend = at(bend, index + 1);
  const straightMagnitude = a * magnitudeOf(at(inverse, index)) + b * magnitudeOf(at(inverse, index + 1));
  if (Number.isNaN(lowBend) || Number.isNaN(highBend)) return straightMagnitude;
  const lowest = lowestBetween(at(inverse, index), at(inverse, index + 1), lowBend, highBend, width);
  if (lowest < LEAST_INVERSE) return straightMagnitude;
  const straight = a * at(inverse, index) + b * at(inverse, index + 1);
  return magnitudeOf(straight + (((a * a * a - a) * lowBend + (b * b * b - b) * highBend) * width * width) / 6);
}

/** About the least value of the spline between two samples: of its ends and its middle. */
function lowestBetween(low: number, high: number, lowBend: number, highBend: number, width: number): number {
  return Math.min(low, high, (low + high) / 2 - ((lowBend + highBend) * width * width) / 16);
}

/** ρ that belongs to u. */
export const magnitudeOf = (inverse: number): number => (inverse > 1 ? Math.sqrt(1 - 1 / inverse) : 0);

/**
 * Second derivatives of the cubic spline through samples `first` to `last`, whose first two and last two pieces are one
 * cubic each ("not a knot"): nothing is assumed about the ends.
 *
 * Source: C. de Boor, A Practical Guide to Splines, revised edition 2001, chapter IV (from memory).
 */
function fillBend(position: Column, values: Column, first: number, last: number, bend: Float64Array): void {
  const count = last - first + 1;
  const step = (i: number) => at(position, first + i + 1) - at(position, first + i);
  const slope = (i: number) => (at(values, first + i + 1) - at(values, first + i)) / step(i);
  if (count < 3) {
    for (let i = first; i <= last; i++) bend[i] = 0;
    return;
  }
  if (count === 3) {
    const parabola = (2 * (slope(1) - slope(0))) / (step(0) + step(1));
    for (let i = first; i <= last; i++) bend[i] = parabola;
    return;
  }
  // Unknown: the inner second derivatives m1 … m(n-2). The condition at each end makes m0 = m1 + (m1 - m2)·h0/h1.
  const inner = count - 2;
  const diagonal = new Float64Array(inner);
  const upper = new Float64Array(inner);
  const lower = new Float64Array(inner);
  const right = new Float64Array(inner);
  for (let k = 0; k < inner; k++) {
    lower[k] = step(k);
    upper[k] = step(k + 1);
    diagonal[k] = 2 * (step(k) + step(k + 1));
    right[k] = 6 * (slope(k + 1) - slope(k));
  }
  const startRatio = step(0) / step(1);
  const endRatio = step(count - 2) / step(count - 3);
  diagonal[0] = at(diagonal, 0) + step(0) * (1 + startRatio);
  upper[0] = at(upper, 0) - step(0) * startRatio;
  diagonal[inner - 1] = at(diagonal, inner - 1) + step(count - 2) * (1 + endRatio);
  lower[inner - 1] = at(lower, inner - 1) - step(count - 2) * endRatio;
  for (let k = 1; k < inner; k++) {
    const factor = at(lower, k) / at(diagonal, k - 1);
    diagonal[k] = at(diagonal, k) - factor * at(upper, k - 1);
    right[k] = at(right, k) - factor * at(right, k - 1);
  }
  for (let k = inner - 1; k >= 0; k--) {
    const next = k + 1 < inner ? at(upper, k) * at(bend, first + k + 2) : 0;
    bend[first + k + 1] = (at(right, k) - next) / at(diagonal, k);
  }
  bend[first] = at(bend, first + 1) + (at(bend, first + 1) - at(bend, first + 2)) * startRatio;
  bend[last] = at(bend, last - 1) + (at(bend, last - 1) - at(bend, last - 2)) * endRatio;
}
