import { at, type Column } from "../../numbers/column.js";
import type { FitRoom } from "./fit-room.js";

/** What a fit leaves of its samples, over the noise expected of each. */
export interface Residuals {
  readonly real: Column;
  /** All 0 for a quantity that is real */
  readonly imaginary: Column;
  /** 1 for a quantity that is real, 2 for a complex one */
  readonly parts: 1 | 2;
  /** Unknowns that the fit had, in each part */
  readonly unknowns: number;
}

/** The noise expected was itself told from a sweep, to within about this over the root of the count (by simulation). */
const NOISE_SPREAD = 8;
/** Neighbours that are alike by more standard deviations than this have shape in common. */
const GREATEST_LIKENESS = 2.5;
/** How often residuals that are noise alone may be rejected for a group that stands out. */
const CHANCE_OF_A_GROUP = 0.01;

/**
 * Whether residuals are noise and nothing else: no larger than expected, neighbours not alike, and no group of neighbours,
 * of whatever length, that together lie off zero.
 *
 * @param squares the sum of theirs, where it is known
 */
export function areNoise(residuals: Residuals, room: FitRoom, squares = sumOfSquares(residuals)): boolean {
  const { real, parts, unknowns } = residuals;
  const root = Math.sqrt(parts * real.length);
  const variance = squares / (parts * (real.length - unknowns));
  if (!(Math.sqrt(variance) <= 1 + NOISE_SPREAD / root)) return false;
  if (sumOfProducts(residuals, 1) > (GREATEST_LIKENESS * squares) / root) return false;
  // The square of a complex normal variable passes 2 ln (1 / chance) by that chance, that of a real one more seldom.
  return greatestGroup(residuals, room) <= 2 * variance * Math.log((2 * real.length) / CHANCE_OF_A_GROUP);
}

/** In units of the noise. */
export const sumOfSquares = (residuals: Residuals): number => sumOfProducts(residuals, 0);

/** Sum over the samples of each residual times the one so many places before it. */
function sumOfProducts({ real, imaginary }: Residuals, places: number): number {
  let sum = 0;
  for (let i = places; i < real.length; i++) {
    sum += at(real, i) * at(real, i - places) + at(imaginary, i) * at(imaginary, i - places);
  }
  return sum;
}

/** The greatest |sum|² / length among groups of 1, 2, 4, 8 … neighbours. */
function greatestGroup({ real, imaginary }: Residuals, room: FitRoom): number {
  let [sumReal, sumImaginary] = [real, imaginary];
  const [pairReal, pairImaginary] = room.pairs(real.length >> 1);
  let greatest = 0;
  for (let length = 1, groups = real.length; groups >= 1; length *= 2, groups >>= 1) {
    for (let k = 0; k < groups; k++) {
      const x = at(sumReal, k);
      const y = at(sumImaginary, k);
      const size = (x * x + y * y) / length;
      if (size > greatest) greatest = size;
    }
    for (let k = 0; 2 * k + 1 < groups; k++) {
      pairReal[k] = at(sumReal, 2 * k) + at(sumReal, 2 * k + 1);
      pairImaginary[k] = at(sumImaginary, 2 * k) + at(sumImaginary, 2 * k + 1);
    }
    [sumReal, sumImaginary] = [pairReal, pairImaginary];
  }
  return greatest;
}

/**
 * Weighs what a fit explains against its unknowns; the lower, the better.
 *
 * Source: H. Akaike, IEEE Transactions on Automatic Control 19, 1974; for few samples C. M. Hurvich, C.-L. Tsai, Biometrika
 * 76, 1989 (both from memory).
 *
 * @param squares sum of the squares that are left
 * @param samples how many were fitted
 * @param unknowns in each part
 * @param parts 1 for a quantity that is real, 2 for a complex one
 */
export function informationCriterion(squares: number, samples: number, unknowns: number, parts: 1 | 2): number {
  const count = parts * samples;
  const free = parts * unknowns;
  const correction = (2 * free * (free + 1)) / (count - free - 1);
  return count * Math.log(squares) + 2 * free + correction;
}
