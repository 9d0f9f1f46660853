import { leastBetween } from "../../numbers/search.js";

/** Range and step of the frequency scale searched: a wire up to 8 % longer or shorter. */
export const GREATEST_SCALE = 0.08;
const STEP = 0.002;
/** A wire that seems longer or shorter by less than this is the same: sag, wind and warmth do as much (our own choice). */
export const LEAST_SCALE = 0.002;

/** A stretched axis must reach samples that hold at least this share of the (squared) difference: it explains nothing elsewhere. */
export const LEAST_REACHED = 0.5;

/**
 * The frequency scale that leaves the least residual.
 *
 * @param rough residual to find the neighbourhood by, step by step
 * @param fine residual to find the place in it by
 */
export function bestScale(rough: (scale: number) => number, fine = rough): number {
  let best = 1;
  let least = Number.POSITIVE_INFINITY;
  for (let scale = 1 - GREATEST_SCALE; scale <= 1 + GREATEST_SCALE; scale += STEP) {
    const residual = rough(scale);
    if (residual < least) {
      least = residual;
      best = scale;
    }
  }
  return leastBetween(fine, best - STEP, best + STEP, 1e-5);
}
