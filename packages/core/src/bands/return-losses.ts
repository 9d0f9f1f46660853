import { type Curve, reflectionMagnitudeAt } from "../curve/curve.js";
import { toFourDecimals } from "../numbers/decimals.js";
import { returnLossDb } from "../reflection/swr.js";

/** What came back at a frequency. */
export interface ReturnLossPoint {
  readonly frequencyHz: number;
  /** dB there and back */
  readonly returnLossDb: number;
}

/** The same frequencies for all sweeps, so that any two can be compared: eight an octave from here on. */
const LOWEST_HZ = 1.6e6;
const STEPS_AN_OCTAVE = 8;
const STEPS = 48;
const GRID_HZ = Array.from({ length: STEPS }, (_, k) => Math.round(LOWEST_HZ * 2 ** (k / STEPS_AN_OCTAVE)));

/** What came back on that grid, by the first curve that knows it. @param curves of one way of putting the antenna up */
export function returnLosses(curves: readonly Curve[]): readonly ReturnLossPoint[] {
  const swept = curves.filter(({ sweep }) => sweep.continuity === "curve");
  const points: ReturnLossPoint[] = [];
  for (const frequencyHz of GRID_HZ) {
    const known = magnitudeAt(swept, frequencyHz);
    if (known > 0 && known < 1) points.push({ frequencyHz, returnLossDb: toFourDecimals(returnLossDb(known)) });
  }
  return points;
}

/** ρ as the first curve has it that knows it; NaN where none does. */
function magnitudeAt(curves: readonly Curve[], frequencyHz: number): number {
  for (const curve of curves) {
    const rho = reflectionMagnitudeAt(curve, frequencyHz);
    if (!Number.isNaN(rho)) return rho;
  }
  return Number.NaN;
}
