import { at } from "../../numbers/column.js";
import { add, type Complex } from "../../numbers/complex.js";
import { leastBetween } from "../../numbers/search.js";
import { impedanceFromReflection, reflectionFromImpedance } from "../../reflection/impedance.js";
import { beforeAt, type CommonSamples, residualOf } from "./common-samples.js";

/** Something in series with what was measured, at the place of measuring. */
export type SeriesPart = "resistance" | "coil" | "capacitor";

export interface SeriesFit {
  readonly part: SeriesPart;
  /** Ω, H or F */
  readonly value: number;
  readonly residual: number;
}

/** Reactance in series at 10 MHz, and resistance, that are looked for: Ω. */
const LEAST_OHMS = 0.5;
const GREATEST_OHMS = 2000;
const AT_HZ = 10e6;

/** Impedance of each part by frequency, for one that has so many ohms at 10 MHz. */
const IMPEDANCES: Readonly<Record<SeriesPart, (ohms: number, frequencyHz: number) => Complex>> = {
  resistance: (ohms) => ({ real: ohms, imaginary: 0 }),
  coil: (ohms, frequencyHz) => ({ real: 0, imaginary: (ohms * frequencyHz) / AT_HZ }),
  capacitor: (ohms, frequencyHz) => ({ real: 0, imaginary: (-ohms * AT_HZ) / frequencyHz }),
};

const VALUES: Readonly<Record<SeriesPart, (ohms: number) => number>> = {
  resistance: (ohms) => ohms,
  coil: (ohms) => ohms / (2 * Math.PI * AT_HZ),
  capacitor: (ohms) => 1 / (2 * Math.PI * AT_HZ * ohms),
};

/** The resistance, the coil and the capacitor that explain most of a difference, each by one number. */
export function fitSeries(samples: CommonSamples, referenceOhms: number): readonly SeriesFit[] {
  const before = Array.from(samples.frequencyHz, (_, i) =>
    impedanceFromReflection(beforeAt(samples, i), referenceOhms),
  );
  return (Object.keys(IMPEDANCES) as SeriesPart[]).map((part) => {
    const residualAt = (logOhms: number) => {
      const ohms = Math.exp(logOhms);
      return residualOf(samples, (i) =>
        reflectionFromImpedance(
          add(before[i] as Complex, IMPEDANCES[part](ohms, at(samples.frequencyHz, i))),
          referenceOhms,
        ),
      );
    };
    const best = leastOf(residualAt);
    return { part, value: VALUES[part](Math.exp(best)), residual: residualAt(best) };
  });
}

const STARTS = 16;

/** The place of the least of several troughs. */
function leastOf(residualAt: (logOhms: number) => number): number {
  const [low, high] = [Math.log(LEAST_OHMS), Math.log(GREATEST_OHMS)];
  const step = (high - low) / STARTS;
  const places = Array.from({ length: STARTS + 1 }, (_, i) => low + i * step);
  const residuals = Float64Array.from(places, residualAt);
  const best = low + step * residuals.indexOf(Math.min(...residuals));
  return leastBetween(residualAt, Math.max(low, best - step), Math.min(high, best + step), 1e-4);
}
