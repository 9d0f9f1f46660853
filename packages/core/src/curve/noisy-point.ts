import type { Complex } from "../numbers/complex.js";

/** A complex number for each of the numbers that noise moves: by how much something moves with it. */
export interface Sensitivity {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
}

/** A curve at one frequency: its value and derivatives by frequency, and how what noise moves moves value and slope. */
export interface NoisyPoint {
  readonly value: Complex;
  readonly slope: Complex;
  readonly bend: Complex;
  readonly ofValue: Sensitivity;
  readonly ofSlope: Sensitivity;
}
