import { median } from "simple-statistics";
import { at } from "../../numbers/column.js";
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
  const bands = bandsOf(samples).map((indices) => residualsByDegree(samples, indices, least));
  return (residual) =>
    bands.reduce((sum, residuals) => {
      const degree = residuals.findIndex((left) => left <= residual);
      return sum + 2 * (degree < 0 ? residuals.length : degree);
    }, 0);
}

/** Samples of each stretch that was swept without a gap. */
function bandsOf({ frequencyHz }: CommonSamples): readonly (readonly number[])[] {
  const steps = Array.from(frequencyHz.subarray(1), (hz, i) => hz - at(frequencyHz, i));
  const usual = steps.length === 0 ? 0 : median(steps);
  const bands: number[][] = [];
  for (let i = 0; i < frequencyHz.length; i++) {
    const last = bands.at(-1);
    if (last === undefined || (steps[i - 1] ?? 0) > GAP_RATIO * usual) bands.push([i]);
    else last.push(i);
  }
  return bands;
}

/** Root mean square of what polynomials leave of the difference: of no polynomial first, then by their degree. */
function residualsByDegree(samples: CommonSamples, indices: readonly number[], least: number): readonly number[] {
  const count = indices.length;
  const [first, last] = [
    at(samples.frequencyHz, indices[0] as number),
    at(samples.frequencyHz, indices[count - 1] as number),
  ];
  const place = indices.map((i) =>
    last > first ? (2 * (at(samples.frequencyHz, i) - first)) / (last - first) - 1 : 0,
  );
  const real = indices.map((i) => at(samples.afterReal, i) - at(samples.beforeReal, i));
  const imaginary = indices.map((i) => at(samples.afterImaginary, i) - at(samples.beforeImaginary, i));
  let left = real.reduce((sum, value, i) => sum + value ** 2 + (imaginary[i] as number) ** 2, 0);
  const residuals = [Math.sqrt(left / count)];
  const basis: number[][] = [];
  // Each is made from the one before, which keeps them apart however high their degree is.
  for (let degree = 0; degree <= Math.min(GREATEST_DEGREE, count - 1) && (residuals.at(-1) ?? 0) > least; degree++) {
    const before = basis.at(-1);
    const vector = before === undefined ? place.map(() => 1) : before.map((value, i) => value * (place[i] as number));
    for (const other of [...basis, ...basis]) {
      const along = dot(vector, other);
      for (let i = 0; i < count; i++) vector[i] = (vector[i] as number) - along * (other[i] as number);
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

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}
