import { at, type Column } from "../../numbers/column.js";
import type { FitRoom } from "./fit-room.js";
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

/** The sums that a step needs; they lie where those of the step before did. */
export function momentsOf(
  { place, precision }: FitSamples,
  order: number,
  values: Record<keyof Values, Column>,
  room: FitRoom,
): Moments {
  const columns = room.terms(place.length);
  const [a, b, c, d] = columns;
  for (let i = 0; i < place.length; i++) {
    const x = at(values.real, i);
    const y = at(values.imaginary, i);
    const weight = at(precision, i) ** 2 / (at(values.bottomReal, i) ** 2 + at(values.bottomImaginary, i) ** 2);
    a[i] = weight;
    b[i] = weight * x;
    c[i] = weight * y;
    d[i] = weight * (x * x + y * y);
  }
  const sums = room.moments(2 * order + 2);
  powerSums(place, 2 * order, columns, sums, room);
  const [one, real, imaginary, square] = sums;
  return { order, one, real, imaginary, square };
}

/** See {@link momentsOf}. */
export function offsetsOf(samples: FitSamples, order: number, values: Values, room: FitRoom): Offsets {
  const { place, precision } = samples;
  const columns = room.terms(place.length);
  const [a, b, c, d] = columns;
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
  const sums = room.offsets(order + 2);
  powerSums(place, order, columns, sums, room);
  const [real, imaginary, squareReal, squareImaginary] = sums;
  return { real, imaginary, squareReal, squareImaginary, squares };
}

type Four = readonly [Float64Array, Float64Array, Float64Array, Float64Array];

/**
 * Σ tᵏ · column for k from 0 to `last`, and maybe one more; two powers at a time, so that the sums stay in registers.
 *
 * @param sums where to put them, with room for one more
 */
function powerSums(place: Column, last: number, [a, b, c, d]: Four, sums: Four, room: FitRoom): void {
  const [powers] = room.powers(place.length);
  powers.fill(1);
  for (let k = 0; k <= last; k += 2) {
    let ofA = 0;
    let ofB = 0;
    let ofC = 0;
    let ofD = 0;
    let nextA = 0;
    let nextB = 0;
    let nextC = 0;
    let nextD = 0;
    for (let i = 0; i < place.length; i++) {
      const t = at(place, i);
      const power = at(powers, i);
      const next = power * t;
      const valueA = at(a, i);
      const valueB = at(b, i);
      const valueC = at(c, i);
      const valueD = at(d, i);
      ofA += power * valueA;
      ofB += power * valueB;
      ofC += power * valueC;
      ofD += power * valueD;
      nextA += next * valueA;
      nextB += next * valueB;
      nextC += next * valueC;
      nextD += next * valueD;
      powers[i] = next * t;
    }
    sums[0][k] = ofA;
    sums[1][k] = ofB;
    sums[2][k] = ofC;
    sums[3][k] = ofD;
    sums[0][k + 1] = nextA;
    sums[1][k + 1] = nextB;
    sums[2][k + 1] = nextC;
    sums[3][k + 1] = nextD;
  }
}
