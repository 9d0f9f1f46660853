import { varianceOfSum } from "../../numbers/positive-system.js";
import { fitAt } from "../fit/fit-at.js";
import type { NoisyPoint, Sensitivity } from "../noisy-point.js";
import type { FitOfStretch } from "./fits-of-stretches.js";

/** A part of a curve as a function of numbers that carry noise: the unknowns of a fit, or the samples that it was smoothed from. */
export interface NoisyPart {
  readonly lowHz: number;
  readonly highHz: number;
  /** Whether its value is u = 1 / (1 - ρ²), of a scalar sweep, and not Γ */
  readonly isInverse: boolean;
  /** Standard deviation of ρ of a sample */
  readonly sampleNoise: number;
  readonly at: (hz: number) => NoisyPoint;
  /** Variance of the real part of a sum of those numbers */
  readonly varianceOf: (weights: Sensitivity) => number;
}

export const partOfFit = ({ fit, lowHz, highHz }: FitOfStretch, sampleNoise: number): NoisyPart => ({
  lowHz,
  highHz,
  isInverse: fit.isReal,
  sampleNoise,
  at: (hz) => fitAt(fit, hz),
  varianceOf: (weights) => varianceOfSum(fit.system, weights),
});
