import { at } from "../../numbers/column.js";
import { add, type Complex, complex, multiply, scale, subtract } from "../../numbers/complex.js";
import type { NoisyPoint, Sensitivity } from "../noisy-point.js";
import type { WholeFit } from "./whole-fit.js";

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

/** Γ = P / Q and its derivatives; by aₖ it moves as tᵏ / Q, by bₖ as -Γ tᵏ / Q. */
export function fitAt({ rational, middle, half }: WholeFit, frequencyHz: number): NoisyPoint {
  const place = (frequencyHz - middle) / half;
  const { topReal, topImaginary, bottomReal, bottomImaginary } = rational;
  const [top, topSlope, topBend] = polynomialAt(topReal, topImaginary, place);
  const [bottom, bottomSlope, bottomBend] = polynomialAt(bottomReal, bottomImaginary, place);
  const size = bottom.real * bottom.real + bottom.imaginary * bottom.imaginary;
  const inverse = complex(bottom.real / size, -bottom.imaginary / size);
  const value = multiply(top, inverse);
  const slope = multiply(subtract(topSlope, multiply(value, bottomSlope)), inverse);
  const bend = multiply(
    subtract(subtract(topBend, scale(multiply(slope, bottomSlope), 2)), multiply(value, bottomBend)),
    inverse,
  );
  // The derivative of 1 / Q.
  const inverseSlope = scale(multiply(multiply(bottomSlope, inverse), inverse), -1);
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
    const byTop = scale(inverse, power);
    const slopeByTop = add(scale(inverse, powerSlope), scale(inverseSlope, power));
    put(ofValue, k, byTop);
    put(ofSlope, k, scale(slopeByTop, 1 / half));
    if (k > 0) {
      put(ofValue, order + k, scale(multiply(value, byTop), -1));
      const moved = subtract(scale(multiply(slope, byTop), -1), multiply(value, slopeByTop));
      put(ofSlope, order + k, scale(moved, 1 / half));
    }
    powerSlope = powerSlope * place + power;
    power *= place;
  }
  return { value, slope: scale(slope, 1 / half), bend: scale(bend, 1 / (half * half)), ofValue, ofSlope };
}
