import { at } from "../../numbers/column.js";
import { normalNumbers } from "../../numbers/random.js";
import { magnitudeOf } from "../between/scalar-interpolation.js";
import type { Curve } from "../curve.js";
import { inverseOf } from "../noise/scalar-noise.js";
import { smooth, smoothBy } from "../noise/smoothing.js";
import { findStretches, type Stretch } from "../samples/stretches.js";
import { type Columns, cut, noiselessCurve, PAIRS, type Part, SEED } from "./part.js";

/** Copies smoothed by the windows that one of them calls for: all are of one curve, and differ by their noise alone. */
export function copiesOfSamples(base: Part, noise: number, numbers: (count: number) => Float64Array): Curve[] {
  const { length } = base.real;
  const { needed, smoothed } = smootherOf(
    withNoise(base, noiseFrom(numbers(2 * length), 0, length), 1),
    noise,
    base.copied,
  );
  const needs = cut(base, needed);
  const all = numbers(2 * (PAIRS + 1) * needs.real.length);
  const copies: Curve[] = [];
  for (let pair = 1; pair <= PAIRS; pair++) {
    const drawn = noiseFrom(all, pair, needs.real.length);
    for (const sign of [1, -1]) copies.push(noiselessCurve(base, smoothed(withNoise(needs, drawn, sign))));
  }
  return copies;
}

interface Noise {
  readonly along: Float64Array;
  readonly across: Float64Array;
}

/** Gives at least so many numbers of that noise: the same ones, from the first on, for every band. */
export function noiseNumbers(noise: number): (count: number) => Float64Array {
  const normal = normalNumbers(SEED);
  let made = new Float64Array(0);
  return (count) => {
    const known = made.length;
    if (count <= known) return made;
    const more = new Float64Array(count);
    more.set(made);
    for (let i = known; i < count; i++) more[i] = noise * normal();
    made = more;
    return made;
  };
}

/** The noise of a pair of copies of so many samples. */
function noiseFrom(numbers: Float64Array, pair: number, length: number): Noise {
  const start = 2 * pair * length;
  return {
    across: numbers.subarray(start, start + length),
    along: numbers.subarray(start + length, start + 2 * length),
  };
}

function withNoise({ frequencyHz, real, imaginary }: Columns, { along, across }: Noise, sign: number): Columns {
  const first = sumOf(real, along, sign);
  if (imaginary !== null) return { frequencyHz, real: first, imaginary: sumOf(imaginary, across, sign) };
  // What a scalar instrument shows is the size of Γ with both parts of its noise.
  return { frequencyHz, real: first.map((value, i) => Math.hypot(value, at(across, i))), imaginary: null };
}

function sumOf(values: Float64Array, noise: Float64Array, sign: number): Float64Array {
  const sum = new Float64Array(values.length);
  for (let i = 0; i < sum.length; i++) sum[i] = at(values, i) + sign * at(noise, i);
  return sum;
}

/** How some rows of columns are smoothed, and the rows that this needs. */
interface Smoother {
  readonly needed: Stretch;
  /** The wanted rows, smoothed, of columns that hold the needed ones */
  readonly smoothed: (columns: Columns) => Columns;
}

/** Smooths columns of an example's shape by the windows that the example calls for. */
function smootherOf({ frequencyHz, real, imaginary }: Columns, noise: number, wanted: Stretch): Smoother {
  const stretches = findStretches(frequencyHz);
  const options = { fits: stretches.map(() => "none" as const), wanted };
  const { inverse, weights } = imaginary === null ? inverseOf(real) : { inverse: real, weights: null };
  const { halfWidths } = smooth(frequencyHz, inverse, imaginary, stretches, noise, weights, options);
  const reach = Math.max(...halfWidths);
  const needed = {
    first: Math.max(0, wanted.first - reach),
    last: Math.min(frequencyHz.length - 1, wanted.last + reach),
  };
  const windows = halfWidths.subarray(needed.first, needed.last + 1);
  const kept = { first: wanted.first - needed.first, last: wanted.last - needed.first };
  const parts = stretches
    .map(({ first, last }) => ({ first: Math.max(first, needed.first), last: Math.min(last, needed.last) }))
    .filter(({ first, last }) => first <= last)
    .map(({ first, last }) => ({ first: first - needed.first, last: last - needed.first }));
  const smoothed = (copy: Columns): Columns => {
    if (copy.imaginary !== null)
      return cut({ ...copy, ...smoothBy(windows, copy.frequencyHz, copy.real, copy.imaginary, parts) }, kept);
    const wide = smoothBy(windows, copy.frequencyHz, inverseOf(copy.real).inverse, null, parts);
    return cut({ ...copy, real: wide.real.map(magnitudeOf) }, kept);
  };
  return { needed, smoothed };
}
