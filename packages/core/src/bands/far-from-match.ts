import { type Curve, reflectionMagnitudeAt } from "../curve/curve.js";
import { returnLossDb } from "../reflection/swr.js";

/** What came back at a frequency where the antenna is far from matched: there its shape hardly matters, and loss shows. */
export interface FarPoint {
  readonly frequencyHz: number;
  /** dB there and back */
  readonly returnLossDb: number;
}

/** The same frequencies for all sweeps, so that any two can be compared: eight an octave from here on. */
const LOWEST_HZ = 1.6e6;
const STEPS_AN_OCTAVE = 8;
const STEPS = 48;
const GRID_HZ = Array.from({ length: STEPS }, (_, k) => Math.round(LOWEST_HZ * 2 ** (k / STEPS_AN_OCTAVE)));
/** Below this the antenna takes much of what arrives, and its shape matters (our own choice). */
const LEAST_MAGNITUDE = 0.6;

/** What came back on that grid, by the first curve that knows it. @param curves of one way of putting the antenna up */
export function farFromMatch(curves: readonly Curve[]): readonly FarPoint[] {
  const swept = curves.filter(({ sweep }) => sweep.continuity === "curve");
  return GRID_HZ.flatMap((frequencyHz) => {
    const known = swept.map((curve) => reflectionMagnitudeAt(curve, frequencyHz)).find((rho) => !Number.isNaN(rho));
    if (known === undefined || known < LEAST_MAGNITUDE || known >= 1) return [];
    return [{ frequencyHz, returnLossDb: Number(returnLossDb(known).toFixed(4)) }];
  });
}
