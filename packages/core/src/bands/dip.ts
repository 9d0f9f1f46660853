import { extremesBetween } from "../curve/trace.js";
import { at, type Column, firstIndexAbove } from "../numbers/column.js";
import { reflectionMagnitudeFromSwr } from "../reflection/swr.js";
import type { Analysis } from "./analysis.js";
import { type Point, pointAt } from "./point.js";

/** A dip further from the wanted frequency than this is another resonance, not one to be trimmed (our own choice). */
const GREATEST_CHANGE = 0.2;
/** SWR that a dip must reach to count as one that can be trimmed for (our own choice). */
export const USELESS_SWR = 10;
/**
 * ρ rises by this much on either side of a dip, and by so many standard deviations of the noise (our own choice): what an
 * analyser with 40 dB of directivity may make up.
 */
const LEAST_RISE = 0.01;
const RISE_OVER_NOISE = 6;

export interface DipNear {
  readonly dip: Point | null;
  /** Frequency of a reading below the dip that stands alone and was left out of the curve; there is no dip then. Null: none does */
  readonly loneHz: number | null;
}

/**
 * The lowest dip of the SWR within 20 % of a frequency. Where the sweep or a stretch of it ends is none, nor is a ripple that
 * does not stand out of a slope or of the noise.
 */
export function dipNear({ curve, trace }: Analysis, wantedHz: number): DipNear {
  const { frequencyHz, reflectionMagnitude, stretches } = trace;
  const isNear = (hz: number) => Math.abs(hz / wantedHz - 1) <= GREATEST_CHANGE;
  const rise = Math.max(LEAST_RISE, RISE_OVER_NOISE * (curve.noise ?? 0));
  let lowest: number | null = null;
  let limit = reflectionMagnitudeFromSwr(USELESS_SWR);
  // A little further than near, which is told exactly below.
  const begin = firstIndexAbove(frequencyHz, (1 - 1.01 * GREATEST_CHANGE) * wantedHz);
  const end = firstIndexAbove(frequencyHz, (1 + 1.01 * GREATEST_CHANGE) * wantedHz);
  for (const { first, last } of stretches) {
    for (let k = Math.max(first + 1, begin); k < Math.min(last, end); k++) {
      const rho = at(reflectionMagnitude, k);
      const isDip = rho <= at(reflectionMagnitude, k - 1) && rho <= at(reflectionMagnitude, k + 1);
      if (!isDip || rho > limit || !isNear(at(frequencyHz, k))) continue;
      if (riseBeside(reflectionMagnitude, k, first, last) < rise) continue;
      lowest = k;
      limit = rho;
    }
  }
  const { sweep, spikes } = curve;
  const lone = spikes.find((i) => isNear(at(sweep.frequencyHz, i)) && at(sweep.reflectionMagnitude, i) < limit);
  if (lone !== undefined) return { dip: null, loneHz: at(sweep.frequencyHz, lone) };
  if (lowest === null) return { dip: null, loneHz: null };
  const refined = extremesBetween(trace, at(frequencyHz, lowest - 1), at(frequencyHz, lowest + 1));
  return { dip: refined && pointAt(curve, refined.best.frequencyHz), loneHz: null };
}

/** How far values rise on both sides of one of them, at the least, before they fall below it or end. */
function riseBeside(values: Column, index: number, first: number, last: number): number {
  const bottom = at(values, index);
  const riseTowards = (step: number) => {
    let top = bottom;
    for (let k = index + step; k >= first && k <= last && at(values, k) >= bottom; k += step) {
      top = Math.max(top, at(values, k));
    }
    return top - bottom;
  };
  return Math.min(riseTowards(-1), riseTowards(1));
}
