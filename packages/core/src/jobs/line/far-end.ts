import { at, medianOf } from "../../numbers/column.js";
import { type Sweep, scalarSweep, vectorSweep } from "../../sweep/sweep.js";

/** Less of the far end than this, in ρ, is no more than what a good calibration leaves of an analyser's own: 40 dB (common practice, no source). */
const LEAST_SEEN = 10 ** (-40 / 20);
/** Neighbours on both sides that a reading is taken together with: the reflection of a line swings from sample to sample. */
const NEIGHBOURS = 4;

/** The samples of a line in which its far end is seen: from the first up to where what comes back drowns in the analyser's own error. */
export function samplesSeen({ reflectionMagnitude }: Sweep): number {
  const { length } = reflectionMagnitude;
  for (let i = 0; i < length; i++) {
    const around = reflectionMagnitude.subarray(Math.max(0, i - NEIGHBOURS), i + NEIGHBOURS + 1);
    if (medianOf(Float64Array.from(around)) < LEAST_SEEN) return i;
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

/** The highest frequency of some first samples of a sweep, Hz. */
export const highestOf = ({ frequencyHz }: Sweep, count: number): number => at(frequencyHz, count - 1);
