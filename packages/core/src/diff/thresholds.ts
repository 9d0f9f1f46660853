import type { Curve } from "../curve/curve.js";

/** An explanation may leave this much of Γ unexplained (or more, where the sweeps are noisier than that). */
const EXPLAINED_RESIDUAL = 0.012;
/** Times the noise of both sweeps; from noise alone √2 of it is left, and less of smoothed curves. */
const NOISE_MARGIN = 2;
/** A change that is small as a whole counts where its explanation leaves less than this share of the difference. */
export const CLEARLY = 0.6;
/** Changes of the line below these are not told from a repeat. Electrical length in m, loss at 10 MHz in dB. */
export const LEAST_LENGTH_M = 0.25;
export const LEAST_LOSS_DB = 0.1;

/** Sweeps that agree to this share of what is overlooked anyway need no explanation. */
const NEGLIGIBLE_SHARE = 1 / 8;
/** The difference of two groups of repeats may be this many times what lies between the repeats of one (our own choice). */
const SCATTER_MARGIN = 1.5;

/** What of the difference of two curves needs no word, root mean square of Γ (or of ρ, where only that is known). */
export interface Tolerances {
  /** A smaller difference is none */
  readonly negligible: number;
  /** What an explanation may leave over */
  readonly enough: number;
}

/** @param scatter root mean square between repeats of the same; 0 where nothing was repeated */
export function tolerancesFor(before: Curve, after: Curve, scatter: number): Tolerances {
  const noise = Math.hypot(before.noise ?? 0, after.noise ?? 0);
  const ofScatter = SCATTER_MARGIN * scatter;
  const enough = Math.max(EXPLAINED_RESIDUAL, NOISE_MARGIN * noise, ofScatter);
  return { enough, negligible: Math.max(NEGLIGIBLE_SHARE * enough, ofScatter) };
}
