import { at, type Column } from "../column.js";
import { emptySystem, type LinearSystem, noiseOfUnknowns, solvePositive } from "./positive-system.js";

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

/** A rational function and its bottom at some places. */
export interface Values {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  readonly bottomReal: Float64Array;
  readonly bottomImaginary: Float64Array;
}

/**
 * A first fit of an order, or a better one: least squares of (top - bottom · sample) over the bottom of the fit before.
 *
 * Source: C. K. Sanathanan, J. Koerner, IEEE Transactions on Automatic Control 8, 1963 (from memory).
 *
 * @param before the fit before, of any order
 * @returns null where the samples do not determine it
 */
export function approachFit(samples: FitSamples, order: number, before: Rational): Rational | null {
  const { bottomReal, bottomImaginary } = valuesOf(before, samples.place);
  const { real, imaginary } = samples;
  const system = normalEquations(momentsOf(samples, order, { real, imaginary, bottomReal, bottomImaginary }), null);
  return solvePositive(system) ? solutionOf(system) : null;
}

/** A better fit, and what it leaves. */
export interface Improvement {
  readonly fit: Rational;
  /** Sum of the squares that it should leave, in units of the noise: what it does leave where the step was short enough */
  readonly foretold: number;
  /** The normal equations of the step, solved */
  readonly system: LinearSystem;
}

/**
 * One step of Gauss and Newton from a fit close to the least squares of (value - sample) towards it.
 *
 * @param values those of the fit before
 */
export function improveFit(samples: FitSamples, before: Rational, values: Values): Improvement | null {
  const order = before.topReal.length - 1;
  const offsets = offsetsOf(samples, order, values);
  const system = normalEquations(momentsOf(samples, order, values), offsets);
  if (!solvePositive(system)) return null;
  const fit = solutionOf(system);
  return { fit, foretold: offsets.squares - gainOf(offsets, before, fit), system };
}

/**
 * A fit as other noise would have left it, and as the opposite noise would, to first order.
 *
 * @param system the normal equations of the last step towards it
 * @param normal independent numbers of variance 1
 * @param isReal whether what was fitted is
 */
export function noisyFits(
  fit: Rational,
  system: LinearSystem,
  normal: () => number,
  isReal: boolean,
): readonly [Rational, Rational] {
  const move = rationalOf(noiseOfUnknowns(system, normal, isReal), 0);
  const moved = (sign: number): Rational => ({
    topReal: fit.topReal.map((value, k) => value + sign * at(move.topReal, k)),
    topImaginary: fit.topImaginary.map((value, k) => value + sign * at(move.topImaginary, k)),
    bottomReal: fit.bottomReal.map((value, k) => value + sign * at(move.bottomReal, k)),
    bottomImaginary: fit.bottomImaginary.map((value, k) => value + sign * at(move.bottomImaginary, k)),
  });
  return [moved(1), moved(-1)];
}

/*
 * Both kinds of step find the top P and bottom Q = 1 + q that make (P - q c - y) / Q' least, with Q' the bottom before. The
 * first kind puts the samples for c and y; the second puts the values v before for c, and v + (sample - v) Q' for y.
 */

/** Sums over the samples of precision² · tᵏ / |Q'|² times something, for k from 0 to twice the order. */
interface Moments {
  readonly order: number;
  readonly one: Float64Array;
  /** Of c */
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  /** Of |c|² */
  readonly square: Float64Array;
}

/** The same sums of y - c, for k from 0 to the order. */
interface Offsets {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  /** Of (y - c) times the conjugate of c */
  readonly squareReal: Float64Array;
  readonly squareImaginary: Float64Array;
  /** Sum of precision² · |sample - v|² */
  readonly squares: number;
}

function momentsOf({ place, precision }: FitSamples, order: number, values: Record<keyof Values, Column>): Moments {
  const [a, b, c, d] = columnsOf(place.length);
  for (let i = 0; i < place.length; i++) {
    const x = at(values.real, i);
    const y = at(values.imaginary, i);
    const weight = at(precision, i) ** 2 / (at(values.bottomReal, i) ** 2 + at(values.bottomImaginary, i) ** 2);
    a[i] = weight;
    b[i] = weight * x;
    c[i] = weight * y;
    d[i] = weight * (x * x + y * y);
  }
  const [one, real, imaginary, square] = powerSums(place, 2 * order, a, b, c, d);
  return { order, one, real, imaginary, square };
}

function offsetsOf(samples: FitSamples, order: number, values: Values): Offsets {
  const { place, precision } = samples;
  const [a, b, c, d] = columnsOf(place.length);
  let squares = 0;
  for (let i = 0; i < place.length; i++) {
    const x = at(values.real, i);
    const y = at(values.imaginary, i);
    const missReal = at(samples.real, i) - x;
    const missImaginary = at(samples.imaginary, i) - y;
    const exact = at(precision, i) ** 2;
    squares += exact * (missReal * missReal + missImaginary * missImaginary);
    const bottomReal = at(values.bottomReal, i);
    const bottomImaginary = at(values.bottomImaginary, i);
    const weight = exact / (bottomReal * bottomReal + bottomImaginary * bottomImaginary);
    const u = weight * (missReal * bottomReal - missImaginary * bottomImaginary);
    const v = weight * (missReal * bottomImaginary + missImaginary * bottomReal);
    a[i] = u;
    b[i] = v;
    c[i] = x * u + y * v;
    d[i] = x * v - y * u;
  }
  const [real, imaginary, squareReal, squareImaginary] = powerSums(place, order, a, b, c, d);
  return { real, imaginary, squareReal, squareImaginary, squares };
}

type Four<T> = readonly [T, T, T, T];

let scratch = fourColumns(0);
let powers = new Float64Array(0);

function fourColumns(length: number): Four<Float64Array> {
  return [new Float64Array(length), new Float64Array(length), new Float64Array(length), new Float64Array(length)];
}

/** Columns to work in, kept from one fit to the next: allocating them would take longer than filling them. */
function columnsOf(length: number): Four<Float64Array> {
  if (powers.length < length) {
    scratch = fourColumns(length);
    powers = new Float64Array(length);
  }
  return scratch;
}

/** Σ tᵏ · column for k from 0 to `last`; one power after the other, so that the sums stay in registers. */
function powerSums(place: Column, last: number, a: Column, b: Column, c: Column, d: Column): Four<Float64Array> {
  const sums = fourColumns(last + 1);
  powers.fill(1, 0, place.length);
  for (let k = 0; k <= last; k++) {
    let ofA = 0;
    let ofB = 0;
    let ofC = 0;
    let ofD = 0;
    for (let i = 0; i < place.length; i++) {
      const power = at(powers, i);
      ofA += power * at(a, i);
      ofB += power * at(b, i);
      ofC += power * at(c, i);
      ofD += power * at(d, i);
      powers[i] = power * at(place, i);
    }
    sums[0][k] = ofA;
    sums[1][k] = ofB;
    sums[2][k] = ofC;
    sums[3][k] = ofD;
  }
  return sums;
}

function solutionOf({ size, real, imaginary }: LinearSystem): Rational {
  const side = (column: Float64Array) =>
    Float64Array.from({ length: size }, (_, r) => at(column, r * (size + 1) + size));
  return rationalOf({ real: side(real), imaginary: side(imaginary) }, 1);
}

/** Coefficients in the order of the unknowns, with b₀ before those of the bottom. */
function rationalOf({ real, imaginary }: { real: Float64Array; imaginary: Float64Array }, constant: number): Rational {
  const tops = (real.length + 1) / 2;
  return {
    topReal: real.slice(0, tops),
    topImaginary: imaginary.slice(0, tops),
    bottomReal: Float64Array.of(constant, ...real.subarray(tops)),
    bottomImaginary: Float64Array.of(0, ...imaginary.subarray(tops)),
  };
}

/** Rows and columns 0 to n belong to a₀ … aₙ, those after them to b₁ … bₙ. */
function normalEquations({ order, one, real, imaginary, square }: Moments, offsets: Offsets | null): LinearSystem {
  const system = emptySystem(unknownsOf(order));
  const { size } = system;
  const put = (r: number, c: number, re: number, im: number) => {
    system.real[r * (size + 1) + c] = re;
    system.imaginary[r * (size + 1) + c] = im;
  };
  const offset = (column: "real" | "imaginary" | "squareReal" | "squareImaginary", j: number) =>
    offsets === null ? 0 : at(offsets[column], j);
  for (let j = 0; j <= order; j++) {
    for (let k = 0; k <= order; k++) {
      const sum = j + k;
      put(j, k, at(one, sum), 0);
      if (k > 0) put(j, order + k, -at(real, sum), -at(imaginary, sum));
      if (j > 0) put(order + j, k, -at(real, sum), at(imaginary, sum));
      if (j > 0 && k > 0) put(order + j, order + k, at(square, sum), 0);
    }
    put(j, size, at(real, j) + offset("real", j), at(imaginary, j) + offset("imaginary", j));
    if (j > 0) put(order + j, size, -at(square, j) - offset("squareReal", j), -offset("squareImaginary", j));
  }
  return system;
}

/** By how much a step of Newton's should lower the sum of squares: the step times the slope that it was taken from. */
function gainOf({ real, imaginary, squareReal, squareImaginary }: Offsets, before: Rational, after: Rational): number {
  let gain = 0;
  for (let k = 0; k < after.topReal.length; k++) {
    gain +=
      (at(after.topReal, k) - at(before.topReal, k)) * at(real, k) +
      (at(after.topImaginary, k) - at(before.topImaginary, k)) * at(imaginary, k) -
      (at(after.bottomReal, k) - at(before.bottomReal, k)) * at(squareReal, k) -
      (at(after.bottomImaginary, k) - at(before.bottomImaginary, k)) * at(squareImaginary, k);
  }
  return gain;
}

/**
 * A fit at some places.
 *
 * @param values columns to put them into; new ones where there are none
 */
export function valuesOf(fit: Rational, place: Column, values: Values = emptyValues(place.length)): Values {
  const { topReal, topImaginary, bottomReal, bottomImaginary } = fit;
  for (let i = 0; i < place.length; i++) {
    const t = at(place, i);
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
    values.real[i] = (p * u + q * v) / norm;
    values.imaginary[i] = (q * u - p * v) / norm;
    values.bottomReal[i] = u;
    values.bottomImaginary[i] = v;
  }
  return values;
}

function emptyValues(length: number): Values {
  const [real, imaginary, bottomReal, bottomImaginary] = fourColumns(length);
  return { real, imaginary, bottomReal, bottomImaginary };
}
