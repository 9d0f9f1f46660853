import { at } from "../../numbers/column.js";
import { leastBetween } from "../../numbers/search.js";
import { changeReference } from "../../reflection/impedance.js";
import type { CommonSamples } from "./common-samples.js";

export interface ReferenceFit {
  readonly ohms: number;
  readonly residual: number;
}

/** References in use lie further apart than this (50, 60, 75, 100 Ω, …); a smaller seeming change is another antenna. */
const LEAST_RATIO = 1.1;

/** Whether a reference impedance is another one and not the same a little off. */
export const isAnotherReference = (ohms: number, referenceOhms: number): boolean =>
  Math.max(ohms / referenceOhms, referenceOhms / ohms) >= LEAST_RATIO;

/** The reference impedance under which the second sweep would be the first. */
export function fitReference(samples: CommonSamples, referenceOhms: number): ReferenceFit {
  const residualAt = (logRatio: number) => {
    const toOhms = referenceOhms * Math.exp(logRatio);
    let square = 0;
    for (let i = 0; i < samples.frequencyHz.length; i++) {
      const before = { real: at(samples.beforeReal, i), imaginary: at(samples.beforeImaginary, i) };
      const { real, imaginary } = changeReference(before, referenceOhms, toOhms);
      square += (real - at(samples.afterReal, i)) ** 2 + (imaginary - at(samples.afterImaginary, i)) ** 2;
    }
    return Math.sqrt(square / samples.frequencyHz.length);
  };
  const best = leastBetween(residualAt, -2.5, 2.5, 1e-4);
  return { ohms: referenceOhms * Math.exp(best), residual: residualAt(best) };
}
