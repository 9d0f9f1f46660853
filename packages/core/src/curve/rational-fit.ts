import { at, type Column } from "../column.js";
import { emptySystem, type LinearSystem, solvePositive } from "./positive-system.js";

/** Samples of a complex quantity to be fitted. */
export interface FitSamples {
  /** Where each lies, from -1 to 1 over the whole */
  readonly place: Column;
  readonly real: Column;
  /** All 0 for a quantity that is real */
  readonly imaginary: Column;
  /** One over the standard deviation of each part of each */
  readonly precision: Column;
  readonly isReal: boolean;
}

/** (a₀ + a₁ t + … + aₙ tⁿ) / (1 + b₁ t + … + bₙ tⁿ) with complex coefficients and t from -1 to 1. */
export interface Rational {
  readonly topReal: Float64Array;
  readonly topImaginary: Float64Array;
  /** From b₀ = 1 on */
  readonly bottomReal: Float64Array;
  readonly bottomImaginary: Float64Array;
}

/** The constant 0, to start a fit from. */
export const NOTHING: Rational = {
  topReal: Float64Array.of(0),
  topImaginary: Float64Array.of(0),
  bottomReal: Float64Array.of(1),
  bottomImaginary: Float64Array.of(0),
};

/** Real unknowns per part of a rational function of an order. */
export const unknownsOf = (order: number): number => 2 * order + 1;

/**
 * A first fit of an order, or a better one: least squares of (top - bottom · sample) over the bottom of the fit before.
 *
 * Source: C. K. Sanathanan, J. Koerner, IEEE Transactions on Automatic Control 8, 1963 (from memory).
 *
 * @param before the fit before, of any order
 * @returns null where the samples do not determine it
 */
export function approachFit(samples: FitSamples, order: number, before: Rational): Rational | null {
  return solveFit(samples, order, before, false);
}

/** One step of Gauss and Newton from a fit close to the least squares of (value - sample) towards it. */
export function improveFit(samples: FitSamples, fit: Rational): Rational | null {
  return solveFit(samples, fit.topReal.length - 1, fit, true);
}

/** Sums over the samples of precision² · tᵏ / |bottom before|² times something: all that the normal equations consist of. */
interface Moments {
  readonly one: Float64Array;
  /** Of c */
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  /** Of |c|² */
  readonly square: Float64Array;
  /** Of y - c; all 0 unless it is a step of Newton's */
  readonly offReal: Float64Array;
  readonly offImaginary: Float64Array;
  /** Of (y - c) times the conjugate of c */
  readonly offSquareReal: Float64Array;
  readonly offSquareImaginary: Float64Array;
}

/**
 * Both kinds of step find the top P and bottom Q = 1 + q that make (P - q c - y) / Q' least, with Q' the bottom before. The
 * first kind puts the samples for c and y; the second puts the values v before for c, and v + (sample - v) Q' for y.
 */
function solveFit(samples: FitSamples, order: number, before: Rational, isNewton: boolean): Rational | null {
  const system = normalEquations(momentsOf(samples, order, before, isNewton), order);
  if (!solvePositive(system)) return null;
  const { size, real, imaginary } = system;
  const solution = (column: Float64Array, r: number) => at(column, r * (size + 1) + size);
  const bottom = (column: Float64Array, one: number) =>
    Float64Array.from({ length: order + 1 }, (_, k) => (k === 0 ? one : solution(column, order + k)));
  return {
    topReal: Float64Array.from({ length: order + 1 }, (_, k) => solution(real, k)),
    topImaginary: Float64Array.from({ length: order + 1 }, (_, k) => solution(imaginary, k)),
    bottomReal: bottom(real, 1),
    bottomImaginary: bottom(imaginary, 0),
  };
}

function momentsOf(samples: FitSamples, order: number, before: Rational, isNewton: boolean): Moments {
  const { place, precision } = samples;
  const sums = () => new Float64Array(2 * order + 1);
  const one = sums();
  const real = sums();
  const imaginary = sums();
  const square = sums();
  const offReal = sums();
  const offImaginary = sums();
  const offSquareReal = sums();
  const offSquareImaginary = sums();
  for (let i = 0; i < place.length; i++) {
    const t = at(place, i);
    evaluate(before, t);
    const { bottomReal, bottomImaginary } = value;
    const x = isNewton ? value.real : at(samples.real, i);
    const y = isNewton ? value.imaginary : at(samples.imaginary, i);
    const weight = at(precision, i) ** 2 / (bottomReal * bottomReal + bottomImaginary * bottomImaginary);
    let power = weight;
    for (let k = 0; k <= 2 * order; k++) {
      one[k] = at(one, k) + power;
      real[k] = at(real, k) + power * x;
      imaginary[k] = at(imaginary, k) + power * y;
      square[k] = at(square, k) + power * (x * x + y * y);
      power *= t;
    }
    if (!isNewton) continue;
    const missReal = at(samples.real, i) - x;
    const missImaginary = at(samples.imaginary, i) - y;
    const u = missReal * bottomReal - missImaginary * bottomImaginary;
    const v = missReal * bottomImaginary + missImaginary * bottomReal;
    power = weight;
    for (let k = 0; k <= order; k++) {
      offReal[k] = at(offReal, k) + power * u;
      offImaginary[k] = at(offImaginary, k) + power * v;
      offSquareReal[k] = at(offSquareReal, k) + power * (x * u + y * v);
      offSquareImaginary[k] = at(offSquareImaginary, k) + power * (x * v - y * u);
      power *= t;
    }
  }
  return { one, real, imaginary, square, offReal, offImaginary, offSquareReal, offSquareImaginary };
}

/** Rows and columns 0 to n belong to a₀ … aₙ, those after them to b₁ … bₙ. */
function normalEquations(moments: Moments, order: number): LinearSystem {
  const system = emptySystem(unknownsOf(order));
  const { size } = system;
  const put = (r: number, c: number, real: number, imaginary: number) => {
    system.real[r * (size + 1) + c] = real;
    system.imaginary[r * (size + 1) + c] = imaginary;
  };
  for (let j = 0; j <= order; j++) {
    for (let k = 0; k <= order; k++) {
      const sum = j + k;
      put(j, k, at(moments.one, sum), 0);
      if (k > 0) put(j, order + k, -at(moments.real, sum), -at(moments.imaginary, sum));
      if (j > 0) put(order + j, k, -at(moments.real, sum), at(moments.imaginary, sum));
      if (j > 0 && k > 0) put(order + j, order + k, at(moments.square, sum), 0);
    }
    put(j, size, at(moments.real, j) + at(moments.offReal, j), at(moments.imaginary, j) + at(moments.offImaginary, j));
    if (j === 0) continue;
    put(order + j, size, -at(moments.square, j) - at(moments.offSquareReal, j), -at(moments.offSquareImaginary, j));
  }
  return system;
}

/** Where `evaluate` leaves its result; shared, so that evaluating allocates nothing. */
const value = { real: 0, imaginary: 0, bottomReal: 0, bottomImaginary: 0 };

function evaluate({ topReal, topImaginary, bottomReal, bottomImaginary }: Rational, t: number): void {
  let p = 0;
  let q = 0;
  let u = 0;
  let v = 0;
  for (let k = topReal.length - 1; k >= 0; k--) {
    p = p * t + at(topReal, k);
    q = q * t + at(topImaginary, k);
    u = u * t + at(bottomReal, k);
    v = v * t + at(bottomImaginary, k);
  }
  const norm = u * u + v * v;
  value.real = (p * u + q * v) / norm;
  value.imaginary = (q * u - p * v) / norm;
  value.bottomReal = u;
  value.bottomImaginary = v;
}

/** Values of a fit at some places. */
export function valuesOf(fit: Rational, place: Column): { real: Float64Array; imaginary: Float64Array } {
  const real = new Float64Array(place.length);
  const imaginary = new Float64Array(place.length);
  for (let i = 0; i < place.length; i++) {
    evaluate(fit, at(place, i));
    real[i] = value.real;
    imaginary[i] = value.imaginary;
  }
  return { real, imaginary };
}
