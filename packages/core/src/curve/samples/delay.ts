import { at, medianOf } from "../../numbers/column.js";
import type { VectorSweep } from "../../sweep/sweep.js";
import type { Stretch } from "./stretches.js";

/** Phase steps looked at (our own choice). */
const MOST_STEPS = 256;
/** Samples that are turned by the same step one after the other, before rounding is put right. */
const TURNS = 32;

/**
 * The delay that most of a sweep's phase turns with: mainly the way to the antenna and back along the feedline.
 *
 * Taken from the median phase step between neighbours, which a narrow resonance or a few bad samples do not move. Of many
 * steps some, spread over the sweep, tell it as well.
 *
 * @returns round-trip delay, s; 0 for fewer than two samples
 */
export function bulkDelay(sweep: VectorSweep, stretches: readonly Stretch[]): number {
  const { frequencyHz, reflectionReal, reflectionImaginary } = sweep;
  const delays = new Float64Array(frequencyHz.length);
  let count = 0;
  const every = Math.ceil(frequencyHz.length / MOST_STEPS);
  for (const { first, last } of stretches) {
    for (let i = first; i < last; i += every) {
      const real = at(reflectionReal, i);
      const imaginary = at(reflectionImaginary, i);
      const nextReal = at(reflectionReal, i + 1);
      const nextImaginary = at(reflectionImaginary, i + 1);
      const turn = Math.atan2(nextImaginary * real - nextReal * imaginary, nextReal * real + nextImaginary * imaginary);
      delays[count++] = -turn / (2 * Math.PI * (at(frequencyHz, i + 1) - at(frequencyHz, i)));
    }
  }
  return count === 0 ? 0 : medianOf(delays.subarray(0, count));
}

/** Γ of a sweep's samples with a round-trip delay taken out of it, s. */
export function withoutDelay(
  { frequencyHz, reflectionReal, reflectionImaginary }: VectorSweep,
  delayS: number,
): { real: Float64Array; imaginary: Float64Array } {
  if (delayS === 0) return { real: reflectionReal.slice(), imaginary: reflectionImaginary.slice() };
  const angular = 2 * Math.PI * delayS;
  const real = new Float64Array(frequencyHz.length);
  const imaginary = new Float64Array(frequencyHz.length);
  for (let start = 0; start < frequencyHz.length; start += TURNS) {
    const end = Math.min(start + TURNS, frequencyHz.length);
    const step = start + 1 < end ? at(frequencyHz, start + 1) - at(frequencyHz, start) : 0;
    const stepCosine = Math.cos(angular * step);
    const stepSine = Math.sin(angular * step);
    let cosine = 0;
    let sine = 0;
    for (let i = start; i < end; i++) {
      const frequency = at(frequencyHz, i);
      if (i > start && frequency - at(frequencyHz, i - 1) === step) {
        const before = cosine;
        cosine = before * stepCosine - sine * stepSine;
        sine = before * stepSine + sine * stepCosine;
      } else {
        cosine = Math.cos(angular * frequency);
        sine = Math.sin(angular * frequency);
      }
      real[i] = at(reflectionReal, i) * cosine - at(reflectionImaginary, i) * sine;
      imaginary[i] = at(reflectionReal, i) * sine + at(reflectionImaginary, i) * cosine;
    }
  }
  return { real, imaginary };
}
