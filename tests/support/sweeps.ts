import { type ScalarSweep, scalarSweep, type VectorSweep, vectorSweep } from "@feedpoint/core";

/** A complex number, or an impedance in ohms, as two plain numbers: real and imaginary. */
export type Pair = readonly [number, number];

const DETAILS = {
  label: "computed",
  source: { file: "computed", format: "computed", description: "computed by a test", comments: [] },
} as const;

/** A vector sweep from reflection coefficients. */
export function sweepOfReflections(
  frequencyHz: readonly number[],
  reflections: readonly Pair[],
  referenceOhms = 50,
): VectorSweep {
  return vectorSweep(
    { ...DETAILS, referenceOhms },
    {
      frequencyHz: Float64Array.from(frequencyHz),
      reflectionReal: Float64Array.from(reflections, ([real]) => real),
      reflectionImaginary: Float64Array.from(reflections, ([, imaginary]) => imaginary),
    },
  );
}

/** A scalar sweep from reflection magnitudes. */
export function sweepOfMagnitudes(
  frequencyHz: readonly number[],
  magnitudes: readonly number[],
  referenceOhms = 50,
): ScalarSweep {
  return scalarSweep(
    { ...DETAILS, referenceOhms },
    { frequencyHz: Float64Array.from(frequencyHz), reflectionMagnitude: Float64Array.from(magnitudes) },
  );
}

/** Γ of an impedance, written out in real arithmetic: (Z - Z0)(Z + Z0)* / |Z + Z0|². Not the library's own function. */
export function reflectionOf([resistance, reactance]: Pair, referenceOhms = 50): Pair {
  const square = (resistance + referenceOhms) ** 2 + reactance ** 2;
  return [(resistance ** 2 - referenceOhms ** 2 + reactance ** 2) / square, (2 * reactance * referenceOhms) / square];
}

/** Evenly spaced numbers from `first` to `last`, both included as far as the step allows. */
export function evenly(first: number, last: number, step: number): number[] {
  return Array.from({ length: Math.floor((last - first) / step + 1e-9) + 1 }, (_, i) => first + i * step);
}

/** The value, or a failure of the test that says what is missing. */
export function present<Value>(value: Value | null | undefined, what: string): Value {
  if (value === null || value === undefined) throw new Error(`missing: ${what}`);
  return value;
}
