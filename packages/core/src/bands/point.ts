import { type Curve, reflectionAt, reflectionMagnitudeAt } from "../curve/curve.js";
import { type CurvePoint, isBeyondScale } from "../curve/trace.js";
import { impedanceFromReflection } from "../reflection/impedance.js";
import { returnLossDb, swrFromReflectionMagnitude } from "../reflection/swr.js";

/** A point on the curve. Resistance and reactance are null for a scalar sweep. */
export interface Point {
  readonly frequencyHz: number;
  /** Infinity where ρ ≥ 1 */
  readonly swr: number;
  /** Whether the instrument's scale ended there, so that SWR and ρ are at least this */
  readonly isAtLeast: boolean;
  /** Positive for a passive load; Infinity at a perfect match */
  readonly returnLossDb: number;
  /** ρ */
  readonly reflectionMagnitude: number;
  /** Of the impedance in series form, Ω */
  readonly resistanceOhms: number | null;
  /** Above 0 inductive, below 0 capacitive; Ω */
  readonly reactanceOhms: number | null;
  /** Least of what the SWR may be (95 %), where that is told: at the best and the worst point of a band */
  readonly swrLow?: number;
  /** Greatest of what it may be */
  readonly swrHigh?: number;
}

/** The curve at a frequency; null where nothing was swept. */
export function pointAt(curve: Curve, frequencyHz: number): Point | null {
  const reflectionMagnitude = reflectionMagnitudeAt(curve, frequencyHz);
  return Number.isNaN(reflectionMagnitude) ? null : pointOn(curve, { frequencyHz, reflectionMagnitude });
}

/** A point of which ρ is known already. */
export function pointOn(curve: Curve, { frequencyHz, reflectionMagnitude }: CurvePoint): Point {
  const reflection = reflectionAt(curve, frequencyHz);
  const impedance = reflection && impedanceFromReflection(reflection, curve.sweep.referenceOhms);
  return {
    frequencyHz,
    swr: swrFromReflectionMagnitude(reflectionMagnitude),
    isAtLeast: isBeyondScale(curve, reflectionMagnitude),
    returnLossDb: returnLossDb(reflectionMagnitude),
    reflectionMagnitude,
    resistanceOhms: impedance?.real ?? null,
    reactanceOhms: impedance?.imaginary ?? null,
  };
}
