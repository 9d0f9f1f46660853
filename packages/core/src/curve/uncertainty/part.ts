import { type SweepDetails, scalarSweep, soundVectorSweep } from "../../sweep/sweep.js";
import { type Curve, curveOf } from "../curve.js";
import type { Stretch } from "../samples/stretches.js";

/** Samples as columns. */
export interface Columns {
  readonly frequencyHz: Float64Array;
  /** Γ without its bulk delay; ρ and nothing for a scalar sweep */
  readonly real: Float64Array;
  readonly imaginary: Float64Array | null;
}

/** Samples of a part of a curve, with their noise taken off as well as can be. */
export interface Part extends Columns {
  readonly details: SweepDetails;
  /** Index of the first of them in the sweep */
  readonly start: number;
  /** Those that are looked at; the others are there for the windows that they are smoothed by */
  readonly lookedAt: Stretch;
}

/** The rows of columns from the first to the last. */
export function cut({ frequencyHz, real, imaginary }: Columns, { first, last }: Stretch): Columns {
  const some = (column: Float64Array) => column.subarray(first, last + 1);
  return { frequencyHz: some(frequencyHz), real: some(real), imaginary: imaginary && some(imaginary) };
}

/** A curve through samples that are known to hold no noise. */
export function noiselessCurve({ details }: Part, { frequencyHz, real, imaginary }: Columns): Curve {
  const sweep =
    imaginary === null
      ? scalarSweep(details, { frequencyHz, reflectionMagnitude: real })
      : soundVectorSweep(details, { frequencyHz, reflectionReal: real, reflectionImaginary: imaginary });
  return curveOf(sweep, { noise: null, delayS: 0, hasNoSpikes: true });
}
