import { at, type Column } from "../../numbers/column.js";
import type { ScalarSweep } from "../../sweep/sweep.js";
import type { Stretch } from "../samples/stretches.js";
import { estimateNoise } from "./noise.js";

/** ρ at and above this counts as this in 1 / (1 - ρ²), which would run to infinity. */
const GREATEST_INVERTIBLE = 0.999999;
/** Noise in ρ² fades towards ρ = 0; below this ρ it is taken to stay what it is here. */
const LEAST_RELATIVE_NOISE_AT = 0.01;

/** 1 / (1 - ρ²), the inverse of the share of power accepted. */
export const inverseAt = (rho: number): number => 1 / (1 - Math.min(rho, GREATEST_INVERTIBLE) ** 2);

/** The same and its noise over that of ρ, sample by sample. */
export function inverseOf(reflectionMagnitude: Column): { inverse: Float64Array; weights: Float64Array } {
  const inverse = new Float64Array(reflectionMagnitude.length);
  const weights = new Float64Array(reflectionMagnitude.length);
  for (let i = 0; i < reflectionMagnitude.length; i++) {
    const rho = Math.min(at(reflectionMagnitude, i), GREATEST_INVERTIBLE);
    inverse[i] = inverseAt(rho);
    weights[i] = (2 * Math.max(rho, LEAST_RELATIVE_NOISE_AT)) / (1 - rho * rho) ** 2;
  }
  return { inverse, weights };
}

/** Readings that lie nearer to total reflection than this many times the noise tell it badly by their inverse. */
const FAR_FROM_TOTAL = 8;

/**
 * Noise in ρ, told by its inverse, in which an antenna's curve is smoothest, from the samples that it does not push towards
 * total reflection; where few are left, by ρ itself. What means "at least" has none.
 */
export function scalarNoise(
  sweep: ScalarSweep,
  magnitude: Column,
  inverse: Column,
  weights: Column,
  stretches: readonly Stretch[],
): number | null {
  const below = (limit: number) => runsWithin(stretches, (i) => at(magnitude, i) < Math.min(limit, ceilingOf(sweep)));
  const rough = estimateNoise([magnitude], below(GREATEST_INVERTIBLE));
  const calm = below(Math.min(GREATEST_INVERTIBLE, 1 - FAR_FROM_TOTAL * (rough ?? 0)));
  const areMany = samplesIn(calm) > samplesIn(stretches) / 4;
  return estimateNoise([inverse], calm, weights) ?? (areMany ? null : rough);
}

const samplesIn = (stretches: readonly Stretch[]): number =>
  stretches.reduce((sum, { first, last }) => sum + last - first + 1, 0);

export const ceilingOf = ({ ceilingMagnitude }: ScalarSweep): number => ceilingMagnitude ?? Number.POSITIVE_INFINITY;

/** The parts of some stretches whose samples meet a condition. */
export function runsWithin(stretches: readonly Stretch[], isKept: (index: number) => boolean): readonly Stretch[] {
  return stretches.flatMap((stretch) => {
    const runs: Stretch[] = [];
    let first = stretch.first;
    for (let i = stretch.first; i <= stretch.last + 1; i++) {
      if (i <= stretch.last && isKept(i)) continue;
      if (i > first) runs.push({ first, last: i - 1 });
      first = i + 1;
    }
    return runs;
  });
}
