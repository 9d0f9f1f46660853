import { at, medianOf } from "../column.js";
import type { VectorSweep } from "../sweep.js";
import type { Stretch } from "./stretches.js";

/**
 * The delay that most of a sweep's phase turns with: mainly the way to the antenna and back along the feedline.
 *
 * Taken from the median phase step between neighbours, which a narrow resonance or a few bad samples do not move.
 *
 * @returns round-trip delay, s; 0 for fewer than two samples
 */
export function bulkDelay(sweep: VectorSweep, stretches: readonly Stretch[]): number {
  const { frequencyHz, reflectionReal, reflectionImaginary } = sweep;
  const delays: number[] = [];
  for (const { first, last } of stretches) {
    for (let i = first; i < last; i++) {
      const real = at(reflectionReal, i);
      const imaginary = at(reflectionImaginary, i);
      const nextReal = at(reflectionReal, i + 1);
      const nextImaginary = at(reflectionImaginary, i + 1);
      const turn = Math.atan2(nextImaginary * real - nextReal * imaginary, nextReal * real + nextImaginary * imaginary);
      delays.push(-turn / (2 * Math.PI * (at(frequencyHz, i + 1) - at(frequencyHz, i))));
    }
  }
  return delays.length === 0 ? 0 : medianOf(delays);
}
