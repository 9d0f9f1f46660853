import { at, type Column } from "../column.js";
import type { Values } from "./rational.js";

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

/*
 * Both kinds of step find the top P and bottom Q = 1 + q that make (P - q c - y) / Q' least, with Q' the bottom before. The
 * first kind puts the samples for c and y; the second puts the values v before for c, and v + (sample - v) Q' for y.
 */

/** Sums over the samples of precision² · tᵏ / |Q'|² times something, for k from 0 to twice the order. */
export interface Moments {
  readonly order: number;
  readonly one: Float64Array;
  /** Of c */
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  /** Of |c|² */
  readonly square: Float64Array;
}

/** The same sums of y - c, for k from 0 to the order. */
export interface Offsets {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  /** Of (y - c) times the conjugate of c */
  readonly squareReal: Float64Array;
  readonly squareImaginary: Float64Array;
  /** Sum of precision² · |sample - v|² */
  readonly squares: number;
}

export function momentsOf(
  { place, precision }: FitSamples,
  order: number,
  values: Record<keyof Values, Column>,
): Moments {
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

export function offsetsOf(samples: FitSamples, order: number, values: Values): Offsets {
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
