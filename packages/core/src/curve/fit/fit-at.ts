import { at } from "../../numbers/column.js";
import { type Complex, complex } from "../../numbers/complex.js";
import type { WholeFit } from "./whole-fit.js";

/** A complex number for each unknown of a fit: what a number of the curve moves by when that unknown does. */
export interface Sensitivity {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
}

/** A fit at one frequency: its value and derivatives by frequency, and how its unknowns move value and slope. */
export interface FitAt {
  readonly value: Complex;
  readonly slope: Complex;
  readonly bend: Complex;
  readonly ofValue: Sensitivity;
  readonly ofSlope: Sensitivity;
}

/** Top, or bottom, of a rational function with its first and second derivative, at a place. */
function polynomialAt(
  real: Float64Array,
  imaginary: Float64Array,
  place: number,
): readonly [Complex, Complex, Complex] {
  let [a, b, c, d, e, f] = [0, 0, 0, 0, 0, 0];
  for (let k = real.length - 1; k >= 0; k--) {
    e = e * place + 2 * c;
    f = f * place + 2 * d;
    c = c * place + a;
    d = d * place + b;
    a = a * place + at(real, k);
    b = b * place + at(imaginary, k);
  }
  return [complex(a, b), complex(c, d), complex(e, f)];
}

const times = (p: Complex, q: Complex): Complex =>
  complex(p.real * q.real - p.imaginary * q.imaginary, p.real * q.imaginary + p.imaginary * q.real);
const minus = (p: Complex, q: Complex): Complex => complex(p.real - q.real, p.imaginary - q.imaginary);
const scaled = ({ real, imaginary }: Complex, factor: number): Complex => complex(factor * real, factor * imaginary);

/** Γ = P / Q and its derivatives; by aₖ it moves as tᵏ / Q, by bₖ as -Γ tᵏ / Q. */
export function fitAt({ rational, middle, half }: WholeFit, frequencyHz: number): FitAt {
  const place = (frequencyHz - middle) / half;
  const { topReal, topImaginary, bottomReal, bottomImaginary } = rational;
  const [top, topSlope, topBend] = polynomialAt(topReal, topImaginary, place);
  const [bottom, bottomSlope, bottomBend] = polynomialAt(bottomReal, bottomImaginary, place);
  const size = bottom.real * bottom.real + bottom.imaginary * bottom.imaginary;
  const inverse = complex(bottom.real / size, -bottom.imaginary / size);
  const value = times(top, inverse);
  const slope = times(minus(topSlope, times(value, bottomSlope)), inverse);
  const bend = times(minus(minus(topBend, scaled(times(slope, bottomSlope), 2)), times(value, bottomBend)), inverse);
  // The derivative of 1 / Q.
  const inverseSlope = scaled(times(times(bottomSlope, inverse), inverse), -1);
  const order = topReal.length - 1;
  const column = () => new Float64Array(2 * order + 1);
  const ofValue = { real: column(), imaginary: column() };
  const ofSlope = { real: column(), imaginary: column() };
  const put = ({ real, imaginary }: Sensitivity, index: number, number: Complex) => {
    real[index] = number.real;
    imaginary[index] = number.imaginary;
  };
  let power = 1;
  let powerSlope = 0;
  for (let k = 0; k <= order; k++) {
    const byTop = scaled(inverse, power);
    const slopeByTop = complex(
      powerSlope * inverse.real + power * inverseSlope.real,
      powerSlope * inverse.imaginary + power * inverseSlope.imaginary,
    );
    put(ofValue, k, byTop);
    put(ofSlope, k, scaled(slopeByTop, 1 / half));
    if (k > 0) {
      put(ofValue, order + k, scaled(times(value, byTop), -1));
      const moved = minus(scaled(times(slope, byTop), -1), times(value, slopeByTop));
      put(ofSlope, order + k, scaled(moved, 1 / half));
    }
    powerSlope = powerSlope * place + power;
    power *= place;
  }
  return { value, slope: scaled(slope, 1 / half), bend: scaled(bend, 1 / (half * half)), ofValue, ofSlope };
}
