import { at, type Column } from "../../numbers/column.js";
import { isEven, type Stretch } from "../samples/stretches.js";
import { unevenWindow } from "./smoothing-window.js";

/** A fit to growing windows: `begin` at a sample, then `widen` to one half-width after the other. */
export interface WindowFit {
  begin(index: number): void;
  widen(index: number, halfWidth: number): void;
  real: number;
  imaginary: number;
  /** Of the fitted value, over that of a sample of weight 1 */
  variance: number;
}

/** Weights of the samples from `index - halfWidth` to `index + halfWidth` in the value that the fit has at the middle one. */
export function windowWeights(position: Column, areEven: boolean, index: number, halfWidth: number): Float64Array {
  if (!areEven) return unevenWindow(position, index, halfWidth);
  const { constant, slope } = evenWeights(halfWidth);
  return Float64Array.from({ length: 2 * halfWidth + 1 }, (_, k) => constant + slope * (k - halfWidth) ** 2);
}

/** The weight of sample k from the middle of 2m + 1 is `constant + slope · k²`. */
function evenWeights(m: number): { constant: number; slope: number } {
  const norm = ((2 * m - 1) * (2 * m + 1) * (2 * m + 3)) / 3;
  return { constant: (3 * m * (m + 1) - 1) / norm, slope: -5 / norm };
}

/** The fit to the windows of a stretch. */
export const windowFit = (
  position: Column,
  stretch: Stretch,
  real: Column,
  imaginary: Column,
  weights: Column | null,
): WindowFit =>
  isEven(position, stretch) ? evenFit(real, imaginary, weights) : unevenFit(position, real, imaginary, weights);

/**
 * The fit for evenly spaced samples. The value of the fitted cubic at the middle of 2m + 1 samples is the sum of
 * (3m(m + 1) - 1 - 5k²)·y_k over (2m - 1)(2m + 1)(2m + 3) / 3, so that a window widens by adding its new samples to
 * Σ y and Σ k² y.
 *
 * Source: A. Savitzky, M. J. E. Golay, Analytical Chemistry 36, 1964, p. 1627 (table of convolutes; the closed form for a
 * cubic at the middle is derived).
 */
function evenFit(realColumn: Column, imaginaryColumn: Column, weights: Column | null): WindowFit {
  let reached = 0;
  // Kept in an object: numbers that closures share are allocated anew at each change.
  const sums = { real0: 0, real2: 0, imaginary0: 0, imaginary2: 0, variance0: 0, variance2: 0, variance4: 0 };
  const fit: WindowFit = {
    real: 0,
    imaginary: 0,
    variance: 1,
    begin(index) {
      reached = 0;
      sums.real0 = fit.real = at(realColumn, index);
      sums.imaginary0 = fit.imaginary = at(imaginaryColumn, index);
      sums.variance0 = fit.variance = weights === null ? 1 : at(weights, index) ** 2;
      sums.real2 = sums.imaginary2 = sums.variance2 = sums.variance4 = 0;
    },
    widen(index, m) {
      let { real0, real2, imaginary0, imaginary2 } = sums;
      for (let k = reached + 1; k <= m; k++) {
        const square = k * k;
        const real = at(realColumn, index - k) + at(realColumn, index + k);
        const imaginary = at(imaginaryColumn, index - k) + at(imaginaryColumn, index + k);
        real0 += real;
        real2 += square * real;
        imaginary0 += imaginary;
        imaginary2 += square * imaginary;
      }
      sums.real0 = real0;
      sums.real2 = real2;
      sums.imaginary0 = imaginary0;
      sums.imaginary2 = imaginary2;
      for (let k = reached + 1; k <= m && weights !== null; k++) {
        const square = k * k;
        const variance = at(weights, index - k) ** 2 + at(weights, index + k) ** 2;
        sums.variance0 += variance;
        sums.variance2 += square * variance;
        sums.variance4 += square * square * variance;
      }
      reached = m;
      const { constant, slope } = evenWeights(m);
      fit.real = constant * real0 + slope * real2;
      fit.imaginary = constant * imaginary0 + slope * imaginary2;
      // Of equal samples the fit is a projection, whose variance is its weight at the middle.
      fit.variance =
        weights === null
          ? constant
          : constant * constant * sums.variance0 +
            2 * constant * slope * sums.variance2 +
            slope * slope * sums.variance4;
    },
  };
  return fit;
}

/** The fit for unevenly spaced samples, each window by itself. */
function unevenFit(position: Column, realColumn: Column, imaginaryColumn: Column, weights: Column | null): WindowFit {
  const fit: WindowFit = {
    real: 0,
    imaginary: 0,
    variance: 1,
    begin(index) {
      fit.real = at(realColumn, index);
      fit.imaginary = at(imaginaryColumn, index);
      fit.variance = weights === null ? 1 : at(weights, index) ** 2;
    },
    widen(index, halfWidth) {
      const coefficients = unevenWindow(position, index, halfWidth);
      fit.real = fit.imaginary = fit.variance = 0;
      for (let k = 0; k < coefficients.length; k++) {
        const place = index - halfWidth + k;
        fit.real += at(coefficients, k) * at(realColumn, place);
        fit.imaginary += at(coefficients, k) * at(imaginaryColumn, place);
        fit.variance += (at(coefficients, k) * (weights === null ? 1 : at(weights, place))) ** 2;
      }
    },
  };
  return fit;
}
