import { median } from "simple-statistics";
import { at, type Column } from "../../numbers/column.js";
import type { CommonSamples } from "./common-samples.js";

/** Steps longer than this many usual ones part two bands. */
const GAP_RATIO = 4;
/** Polynomials beyond this degree explain anything. */
const GREATEST_DEGREE = 24;

/** How many real numbers a smooth change of the reflection needs to leave as little as something. */
export type NumbersNeeded = (residual: number) => number;

/**
 * What any smooth change of the reflection would explain: polynomials in frequency for the difference of Γ, one for each band that
 * was swept. A cause that needs no fewer numbers than these explains nothing.
 *
 * @param least the least residual that will be asked for
 * @returns a function of the residual, root mean square of Γ; two real numbers for each complex coefficient
 */
export function smoothChange(samples: CommonSamples, least: number): NumbersNeeded {
  const bands = bandsOf(samples).map((band) => residualsByDegree(band, least));
  return (residual) =>
    bands.reduce((sum, residuals) => {
      const degree = residuals.findIndex((left) => left <= residual);
      return sum + 2 * (degree < 0 ? residuals.length : degree);
    }, 0);
}

/** What a stretch that was swept without a gap changed by. */
interface BandChange {
  readonly frequencyHz: Column;
  /** Γ after less Γ before */
  readonly real: Column;
  readonly imaginary: Column;
}

function bandsOf(samples: CommonSamples): readonly BandChange[] {
  const { frequencyHz } = samples;
  const steps = Array.from(frequencyHz.subarray(1), (hz, i) => hz - at(frequencyHz, i));
  const usual = steps.length === 0 ? 0 : median(steps);
  const starts = [0, ...steps.flatMap((step, i) => (step > GAP_RATIO * usual ? [i + 1] : []))];
  const real = samples.afterReal.map((after, i) => after - at(samples.beforeReal, i));
  const imaginary = samples.afterImaginary.map((after, i) => after - at(samples.beforeImaginary, i));
  return starts.map((start, k) => {
    const of = (column: Float64Array) => column.subarray(start, starts[k + 1]);
    return { frequencyHz: of(frequencyHz), real: of(real), imaginary: of(imaginary) };
  });
}

/** Root mean square of what polynomials leave of the difference: of no polynomial first, then by their degree. */
function residualsByDegree({ frequencyHz, real, imaginary }: BandChange, least: number): readonly number[] {
  const count = frequencyHz.length;
  const [first, last] = [at(frequencyHz, 0), at(frequencyHz, count - 1)];
  const place = frequencyHz.map((hz) => (last > first ? (2 * (hz - first)) / (last - first) - 1 : 0));
  let left = dot(real, real) + dot(imaginary, imaginary);
  const residuals = [Math.sqrt(left / count)];
  const basis: Column[] = [];
  // Each is made from the one before, which keeps them apart however high their degree is.
  for (let degree = 0; degree <= Math.min(GREATEST_DEGREE, count - 1) && (residuals.at(-1) ?? 0) > least; degree++) {
    const before = basis.at(-1);
    const vector = before === undefined ? place.map(() => 1) : before.map((value, i) => value * at(place, i));
    for (const other of [...basis, ...basis]) {
      const along = dot(vector, other);
      for (let i = 0; i < count; i++) vector[i] = at(vector, i) - along * at(other, i);
    }
    const size = Math.sqrt(dot(vector, vector));
    if (!(size > 1e-9)) break;
    const unit = vector.map((value) => value / size);
    basis.push(unit);
    left -= dot(real, unit) ** 2 + dot(imaginary, unit) ** 2;
    residuals.push(Math.sqrt(Math.max(0, left) / count));
  }
  return residuals;
}

function dot(a: Column, b: Column): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += at(a, i) * at(b, i);
  return sum;
}
