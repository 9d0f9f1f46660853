import { at, type Column } from "../../numbers/column.js";

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
 * A fit at some places; two at a time, so that each coefficient is looked up half as often. Of an odd number the last is done twice.
 *
 * @param values columns to put them into; new ones where there are none
 */
export function valuesOf(fit: Rational, place: Column, values: Values = emptyValues(place.length)): Values {
  const { topReal, topImaginary, bottomReal, bottomImaginary } = fit;
  for (let i = 0; i < place.length; i += 2) {
    const j = i + 1 < place.length ? i + 1 : i;
    const s = at(place, i);
    const t = at(place, j);
    let p = 0;
    let q = 0;
    let u = 0;
    let v = 0;
    let nextP = 0;
    let nextQ = 0;
    let nextU = 0;
    let nextV = 0;
    for (let k = topReal.length - 1; k >= 0; k--) {
      const a = at(topReal, k);
      const b = at(topImaginary, k);
      const c = at(bottomReal, k);
      const d = at(bottomImaginary, k);
      p = p * s + a;
      q = q * s + b;
      u = u * s + c;
      v = v * s + d;
      nextP = nextP * t + a;
      nextQ = nextQ * t + b;
      nextU = nextU * t + c;
      nextV = nextV * t + d;
    }
    put(values, i, p, q, u, v);
    put(values, j, nextP, nextQ, nextU, nextV);
  }
  return values;
}

/** Puts down (p + q i) / (u + v i) and its bottom. */
function put(values: Values, index: number, p: number, q: number, u: number, v: number): void {
  const scale = 1 / (u * u + v * v);
  values.real[index] = (p * u + q * v) * scale;
  values.imaginary[index] = (q * u - p * v) * scale;
  values.bottomReal[index] = u;
  values.bottomImaginary[index] = v;
}

function emptyValues(length: number): Values {
  const column = () => new Float64Array(length);
  return { real: column(), imaginary: column(), bottomReal: column(), bottomImaginary: column() };
}
