import { median } from "simple-statistics";
import { at, type Column } from "../../numbers/column.js";
import type { CommonSamples } from "./common-samples.js";

/** Steps longer than this many usual ones part two bands. */
const GAP_RATIO = 4;
/** Polynomials beyond this degree explain anything. */
const GREATEST_DEGREE = 24;

/** How many real numbers a smooth change of the reflection needs to leave as little as something. */
export type NumbersNeeded = (residual: number) => number;

/** A change of Γ over frequency, or of ρ alone. */
export interface ChangeOverFrequency {
  readonly frequencyHz: Column;
  /** After less before */
  readonly real: Column;
  /** null: of ρ, which is one number at each frequency */
  readonly imaginary: Column | null;
}

/** The change of Γ that some samples show. */
export const changeOf = (samples: CommonSamples): ChangeOverFrequency => ({
  frequencyHz: samples.frequencyHz,
  real: samples.afterReal.map((after, i) => after - at(samples.beforeReal, i)),
  imaginary: samples.afterImaginary.map((after, i) => after - at(samples.beforeImaginary, i)),
});

/**
 * What any smooth change of the reflection would explain: polynomials in frequency for the difference of Γ, one for each band that
 * was swept, of the degrees that together leave least. A cause that needs no fewer numbers than these explains nothing.
 *
 * @param least the least residual that will be asked for
 * @returns a function of the residual, root mean square over all samples; two real numbers for each complex coefficient
 */
export function smoothChange(change: ChangeOverFrequency, least: number): NumbersNeeded {
  const steps = stepsDown(bandsOf(change).map((band) => squaresByDegree(band, least)));
  const count = change.frequencyHz.length;
  const each = change.imaginary === null ? 1 : 2;
  return (residual) => {
    const reached = steps.findIndex(({ square }) => square <= count * residual ** 2);
    const { coefficients } = steps.at(reached) as StepDown;
    // Where no degree leaves so little, one more would not either.
    return each * (reached < 0 ? coefficients + 1 : coefficients);
  };
}

/** What so many coefficients leave over, summed over all bands. */
interface StepDown {
  readonly coefficients: number;
  readonly square: number;
}

/** Coefficients are spent where each of them takes most away, several of a band at once where the first of them does little. */
function stepsDown(bands: readonly (readonly number[])[]): readonly StepDown[] {
  const spent = bands.map(() => 0);
  const left = () => bands.reduce((sum, squares, b) => sum + (squares[spent[b] as number] as number), 0);
  const steps: StepDown[] = [{ coefficients: 0, square: left() }];
  for (;;) {
    let best = { band: -1, to: 0, gain: 0 };
    for (const [band, squares] of bands.entries()) {
      const from = spent[band] as number;
      for (let to = from + 1; to < squares.length; to++) {
        const gain = ((squares[from] as number) - (squares[to] as number)) / (to - from);
        if (gain > best.gain) best = { band, to, gain };
      }
    }
    if (best.band < 0) return steps;
    spent[best.band] = best.to;
    steps.push({ coefficients: spent.reduce((sum, each) => sum + each, 0), square: left() });
  }
}

/** The stretches that were swept without a gap. */
function bandsOf({ frequencyHz, real, imaginary }: ChangeOverFrequency): readonly ChangeOverFrequency[] {
  const steps = Array.from(frequencyHz.subarray(1), (hz, i) => hz - at(frequencyHz, i));
  const usual = steps.length === 0 ? 0 : median(steps);
  const starts = [0, ...steps.flatMap((step, i) => (step > GAP_RATIO * usual ? [i + 1] : []))];
  return starts.map((start, k) => {
    const of = (column: Column) => column.subarray(start, starts[k + 1]);
    return { frequencyHz: of(frequencyHz), real: of(real), imaginary: imaginary && of(imaginary) };
  });
}

/** Sum of squares of what polynomials leave of the difference: of no polynomial first, then by their degree. */
function squaresByDegree({ frequencyHz, real, imaginary }: ChangeOverFrequency, least: number): readonly number[] {
  const count = frequencyHz.length;
  const [first, last] = [at(frequencyHz, 0), at(frequencyHz, count - 1)];
  const place = frequencyHz.map((hz) => (last > first ? (2 * (hz - first)) / (last - first) - 1 : 0));
  const both = imaginary === null ? [real] : [real, imaginary];
  let left = both.reduce((sum, part) => sum + dot(part, part), 0);
  const squares = [left];
  const basis: Column[] = [];
  // Each is made from the one before, which keeps them apart however high their degree is.
  for (let degree = 0; degree <= Math.min(GREATEST_DEGREE, count - 1) && left > count * least ** 2; degree++) {
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
    left -= both.reduce((sum, part) => sum + dot(part, unit) ** 2, 0);
    squares.push(Math.max(0, left));
  }
  return squares;
}

function dot(a: Column, b: Column): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += at(a, i) * at(b, i);
  return sum;
}
