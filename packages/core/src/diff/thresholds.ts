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

/** What an explanation of the difference of two curves may leave over, root mean square of Γ. */
export const enoughFor = (before: Curve, after: Curve): number =>
  Math.max(EXPLAINED_RESIDUAL, NOISE_MARGIN * Math.hypot(before.noise ?? 0, after.noise ?? 0));
