import type { Pair } from "../sweeps.js";

// The library's own complex arithmetic is left out on purpose: what is to be judged must not judge itself.

export const add = (a: Pair, b: Pair): Pair => [a[0] + b[0], a[1] + b[1]];
export const subtract = (a: Pair, b: Pair): Pair => [a[0] - b[0], a[1] - b[1]];
export const multiply = (a: Pair, b: Pair): Pair => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
export const scaled = (a: Pair, factor: number): Pair => [a[0] * factor, a[1] * factor];
export const magnitude = (a: Pair): number => Math.hypot(a[0], a[1]);

/** 1 / a; a zero gives a very large number instead of an infinite one. */
export function inverse(a: Pair): Pair {
  const square = a[0] * a[0] + a[1] * a[1] + 1e-300;
  return [a[0] / square, -a[1] / square];
}

export const divide = (a: Pair, b: Pair): Pair => multiply(a, inverse(b));

/** Two impedances in parallel, in ohms. */
export const parallel = (a: Pair, b: Pair): Pair => inverse(add(inverse(a), inverse(b)));

export function exponential(a: Pair): Pair {
  const size = Math.exp(a[0]);
  return [size * Math.cos(a[1]), size * Math.sin(a[1])];
}

/** The root with a real part that is not negative. */
export function squareRoot(a: Pair): Pair {
  const size = magnitude(a);
  const real = Math.sqrt(Math.max(0, (size + a[0]) / 2));
  const imaginary = Math.sqrt(Math.max(0, (size - a[0]) / 2));
  return [real, a[1] < 0 ? -imaginary : imaginary];
}

/** coth(real + j imaginary): the impedance of an open line, as a factor on its characteristic impedance. */
export function hyperbolicCotangent(real: number, imaginary: number): Pair {
  const divisor = Math.cosh(2 * real) - Math.cos(2 * imaginary) + 1e-15;
  return [Math.sinh(2 * real) / divisor, -Math.sin(2 * imaginary) / divisor];
}

/** Γ of an impedance against a real reference in ohms. */
export const gammaOfImpedance = (z: Pair, ohms: number): Pair => divide(subtract(z, [ohms, 0]), add(z, [ohms, 0]));

/** The impedance in ohms of a Γ against a real reference in ohms. */
export const impedanceOfGamma = (gamma: Pair, ohms: number): Pair =>
  scaled(divide(add([1, 0], gamma), subtract([1, 0], gamma)), ohms);
