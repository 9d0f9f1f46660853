import { medianOf } from "../../numbers/column.js";
import { type Sweep, scalarSweep, vectorSweep } from "../../sweep/sweep.js";

/**
 * Less of the far end than this, in ρ, is no more than what a good calibration leaves of an analyser's own, 40 dB, or what an impedance a
 * twentieth beside the one reckoned with sends back from the near end (common practice, no source).
 */
export const LEAST_SEEN = { whereImpedanceIsKnown: 0.01, elsewhere: 0.06 } as const;
/** Neighbours on both sides that a reading is taken together with: the reflection of a line swings from sample to sample. */
const NEIGHBOURS = 4;

/**
 * How many samples of a line show its far end: from the first up to where what comes back is less than something, in ρ. */
export function samplesSeen({ reflectionMagnitude }: Sweep, leastSeen: number): number {
  const { length } = reflectionMagnitude;
  for (let i = 0; i < length; i++) {
    const around = reflectionMagnitude.subarray(Math.max(0, i - NEIGHBOURS), i + NEIGHBOURS + 1);
    if (medianOf(Float64Array.from(around)) < leastSeen) return i;
  }
  return length;
}

/** The first samples of a sweep, as a sweep. */
export function firstSamples(sweep: Sweep, count: number): Sweep {
  const first = (column: Readonly<Float64Array>) => Float64Array.from(column.subarray(0, count));
  const frequencyHz = first(sweep.frequencyHz);
  return sweep.kind === "vector"
    ? vectorSweep(sweep, {
        frequencyHz,
        reflectionReal: first(sweep.reflectionReal),
        reflectionImaginary: first(sweep.reflectionImaginary),
      })
    : scalarSweep(sweep, { frequencyHz, reflectionMagnitude: first(sweep.reflectionMagnitude) });
}
