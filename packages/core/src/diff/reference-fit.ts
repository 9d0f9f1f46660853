import { at } from "../column.js";
import { leastBetween } from "../curve/search.js";
import { changeReference } from "../reflection.js";
import type { CommonSamples } from "./common-samples.js";

export interface ReferenceFit {
  readonly ohms: number;
  readonly residual: number;
}

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
