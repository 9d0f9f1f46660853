import { leastBetween } from "../../numbers/search.js";
import { changeReference } from "../../reflection/impedance.js";
import { beforeAt, type CommonSamples, residualOf } from "./common-samples.js";

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
    return residualOf(samples, (i) => changeReference(beforeAt(samples, i), referenceOhms, toOhms));
  };
  const best = leastBetween(residualAt, -2.5, 2.5, 1e-4);
  return { ohms: referenceOhms * Math.exp(best), residual: residualAt(best) };
}
