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
    const scale = 1 / (u * u + v * v);
    values.real[i] = (p * u + q * v) * scale;
    values.imaginary[i] = (q * u - p * v) * scale;
    values.bottomReal[i] = u;
    values.bottomImaginary[i] = v;
  }
  return values;
}

function emptyValues(length: number): Values {
  const column = () => new Float64Array(length);
  return { real: column(), imaginary: column(), bottomReal: column(), bottomImaginary: column() };
}
