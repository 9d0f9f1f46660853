import { at } from "../../numbers/column.js";
import { magnitudeOf } from "../between/scalar-interpolation.js";
import type { NoisyPoint, Sensitivity } from "../noisy-point.js";
import type { NoisyPart } from "./noisy-parts.js";

/** How far noise takes a number down and up. */
export interface Offsets {
  readonly below: number;
  readonly above: number;
}

/** A curve at a frequency with what noise makes of it there. */
export interface LocalPoint {
  readonly hz: number;
  readonly part: NoisyPart;
  readonly at: NoisyPoint;
  readonly rho: number;
  /** Of ρ by frequency */
  readonly slope: number;
  readonly ofRho: Sensitivity;
  /** Standard deviation of ρ */
  readonly deviation: number;
}

/** Nearer to a perfect match than this ρ has no derivative that tells anything. */
const LEAST_MAGNITUDE = 1e-6;

/** Looks at each frequency once: the best point is often an edge or an end as well. Null where there is no curve. */
export function localPoints(parts: readonly NoisyPart[]): (hz: number) => LocalPoint | null {
  const known = new Map<number, LocalPoint | null>();
  return (hz) => {
    const found = known.get(hz);
    if (found !== undefined) return found;
    const part = parts.find(({ lowHz, highHz }) => hz >= lowHz && hz <= highHz);
    const local = part === undefined ? null : localPoint(part, hz);
    known.set(hz, local);
    return local;
  };
}

function localPoint(part: NoisyPart, hz: number): LocalPoint {
  const here = part.at(hz);
  const { value, slope, ofValue } = here;
  const rho = part.isInverse ? magnitudeOf(value.real) : Math.hypot(value.real, value.imaginary);
  const divisor = Math.max(rho, LEAST_MAGNITUDE);
  // By the size of Γ along its own direction; of u = 1 / (1 - ρ²) by its derivative.
  const [real, imaginary] = part.isInverse
    ? [1 / (2 * divisor * value.real * value.real), 0]
    : [value.real / divisor, -value.imaginary / divisor];
  const ofRho = weighted([{ of: ofValue, real, imaginary }]);
  return {
    hz,
    part,
    at: here,
    rho,
    slope: real * slope.real - imaginary * slope.imaginary,
    ofRho,
    deviation: Math.sqrt(part.varianceOf(ofRho)),
  };
}

/**
 * How far noise takes ρ, so many standard deviations.
 *
 * Near a perfect match ρ grows as the root of u, and what a scalar instrument shows is the size of Γ with both parts of its noise, which
 * is too much on average.
 */
export function offsetsOfMagnitude({ part, at: here, rho, deviation }: LocalPoint, deviations: number): Offsets {
  if (!part.isInverse) return { below: deviations * deviation, above: deviations * deviation };
  const moved = deviations * Math.sqrt(part.varianceOf(here.ofValue));
  const shown = rho - Math.sqrt(Math.max(0, rho * rho - 2 * part.sampleNoise ** 2));
  return {
    below: rho - magnitudeOf(here.value.real - moved) + shown,
    above: magnitudeOf(here.value.real + moved) - rho,
  };
}

/** A sum of sensitivities, each times a complex number. */
export function weighted(
  terms: readonly { readonly of: Sensitivity; readonly real: number; readonly imaginary: number }[],
): Sensitivity {
  const length = terms[0]?.of.real.length ?? 0;
  const sum = { real: new Float64Array(length), imaginary: new Float64Array(length) };
  for (const { of, real, imaginary } of terms) {
    for (let k = 0; k < length; k++) {
      const [x, y] = [at(of.real, k), at(of.imaginary, k)];
      sum.real[k] = at(sum.real, k) + real * x - imaginary * y;
      sum.imaginary[k] = at(sum.imaginary, k) + real * y + imaginary * x;
    }
  }
  return sum;
}
