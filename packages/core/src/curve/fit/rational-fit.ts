import { at } from "../../numbers/column.js";
import { type LinearSystem, solvePositive } from "../../numbers/positive-system.js";
import { type FitSamples, type Moments, momentsOf, type Offsets, offsetsOf } from "./fit-moments.js";
import type { FitRoom } from "./fit-room.js";
import { type Rational, unknownsOf, type Values } from "./rational.js";

/**
 * A first fit of an order, or a better one: least squares of (top - bottom · sample) over the bottom of the fit before.
 *
 * Source: C. K. Sanathanan, J. Koerner, IEEE Transactions on Automatic Control 8, 1963 (from memory).
 *
 * @param before values of the fit before, of any order
 * @returns null where the samples do not determine it
 */
export function approachFit(samples: FitSamples, order: number, before: Values, room: FitRoom): Rational | null {
  const { bottomReal, bottomImaginary } = before;
  const { real, imaginary } = samples;
  const moments = momentsOf(samples, order, { real, imaginary, bottomReal, bottomImaginary }, room);
  const system = normalEquations(moments, null, room);
  return solvePositive(system) ? solutionOf(system) : null;
}

/** A better fit, and what it leaves. */
export interface Improvement {
  readonly fit: Rational;
  /** Sum of the squares that it should leave, in units of the noise: what it does leave where the step was short enough */
  readonly foretold: number;
  /** The normal equations of the step, solved; the next step of any fit writes over them */
  readonly system: LinearSystem;
}

/**
 * One step of Gauss and Newton from a fit close to the least squares of (value - sample) towards it.
 *
 * @param values those of the fit before
 */
export function improveFit(samples: FitSamples, before: Rational, values: Values, room: FitRoom): Improvement | null {
  const order = before.topReal.length - 1;
  const offsets = offsetsOf(samples, order, values, room);
  const system = normalEquations(momentsOf(samples, order, values, room), offsets, room);
  if (!solvePositive(system)) return null;
  const fit = solutionOf(system);
  return { fit, foretold: offsets.squares - gainOf(offsets, before, fit), system };
}

/** The right sides of a solved system, one behind each row. */
const solutionOf = ({ size, real, imaginary }: LinearSystem): Rational =>
  rationalOf({ real, imaginary, unknowns: size, start: size, step: size + 1 }, 1);

/** Where so many unknowns stand in two columns, in their order. */
interface Unknowns {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  readonly unknowns: number;
  readonly start: number;
  readonly step: number;
}

/** Coefficients in the order of the unknowns, with b₀ before those of the bottom. */
function rationalOf({ real, imaginary, unknowns, start, step }: Unknowns, constant: number): Rational {
  const tops = (unknowns + 1) / 2;
  const topReal = new Float64Array(tops);
  const topImaginary = new Float64Array(tops);
  const bottomReal = new Float64Array(tops);
  const bottomImaginary = new Float64Array(tops);
  bottomReal[0] = constant;
  for (let k = 0; k < tops; k++) {
    const top = start + k * step;
    topReal[k] = at(real, top);
    topImaginary[k] = at(imaginary, top);
    if (k === 0) continue;
    const bottom = start + (tops - 1 + k) * step;
    bottomReal[k] = at(real, bottom);
    bottomImaginary[k] = at(imaginary, bottom);
  }
  return { topReal, topImaginary, bottomReal, bottomImaginary };
}

/** Rows and columns 0 to n belong to a₀ … aₙ, those after them to b₁ … bₙ. */
function normalEquations(
  { order, one, real, imaginary, square }: Moments,
  offsets: Offsets | null,
  room: FitRoom,
): LinearSystem {
  const system = room.system(unknownsOf(order));
  const { size } = system;
  const put = (r: number, c: number, re: number, im: number) => {
    system.real[r * (size + 1) + c] = re;
    system.imaginary[r * (size + 1) + c] = im;
  };
  for (let j = 0; j <= order; j++) {
    for (let k = j; k <= order; k++) put(j, k, at(one, j + k), 0);
    for (let k = 1; k <= order; k++) put(j, order + k, -at(real, j + k), -at(imaginary, j + k));
    put(j, size, at(real, j), at(imaginary, j));
  }
  for (let j = 1; j <= order; j++) {
    for (let k = j; k <= order; k++) put(order + j, order + k, at(square, j + k), 0);
    put(order + j, size, -at(square, j), 0);
  }
  if (offsets !== null) addOffsets(system, order, offsets);
  return system;
}

function addOffsets({ size, real, imaginary }: LinearSystem, order: number, offsets: Offsets): void {
  for (let j = 0; j <= order; j++) {
    const top = j * (size + 1) + size;
    real[top] = at(real, top) + at(offsets.real, j);
    imaginary[top] = at(imaginary, top) + at(offsets.imaginary, j);
    if (j === 0) continue;
    const bottom = (order + j) * (size + 1) + size;
    real[bottom] = at(real, bottom) - at(offsets.squareReal, j);
    imaginary[bottom] = at(imaginary, bottom) - at(offsets.squareImaginary, j);
  }
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
