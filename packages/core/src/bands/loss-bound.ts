import { type Curve, curveOf } from "../curve/curve.js";
import type { CurvePoint } from "../curve/trace.js";
import { at } from "../numbers/column.js";
import { returnLossDb } from "../reflection/swr.js";
import type { Sweep } from "../sweep/sweep.js";

/** The most that can be lost one way between analyser and antenna, and where the sweep says so. */
export interface LossBound {
  /** dB one way, 0 or more */
  readonly lossDb: number;
  /** Where the sweep reflects most */
  readonly frequencyHz: number;
  /** Greatest ρ of the sweep, which the bound follows from */
  readonly reflectionMagnitude: number;
}

/** Fewer points than this are readings where the antenna is good, not a sweep (our own choice). */
const FEWEST_POINTS = 10;
/** A sweep over less than this ratio of frequencies may be well matched throughout and bounds nothing worth saying. */
const LEAST_SPAN = 2;
/** Where the sweep allows more loss than this on the way to the antenna, loss may be what lowers the SWR (our own choice). */
export const HIDING_LOSS_DB = 1;

/**
 * Bounds the loss of the feedline by the sweep alone: a passive antenna reflects at most everything, so at every frequency
 * the one-way loss ahead of it is at most half of the return loss.
 *
 * Source: half the return loss with the far end shorted is the cable loss, Anritsu application note "Average Cable Loss
 * Measurement" (abstract read); that it bounds from above with any passive end is derived.
 *
 * @returns null for a sweep of less than an octave, and for a handful of readings
 */
export const lossBound = (sweep: Sweep): LossBound | null => lossBoundOf([curveOf(sweep)]);

/**
 * Bounds the loss of the feedline by the sweep alone: a passive antenna reflects at most everything, so at every frequency
 * the one-way loss ahead of it is at most half of the return loss. Told from the curve, not from its samples, one of which
 * noise or interference may have lifted.
 *
 * Source: half the return loss with the far end shorted is the cable loss, Anritsu application note "Average Cable Loss
 * Measurement" (abstract read); that it bounds from above with any passive end is derived.
 *
 * @param curves of one way of putting the antenna up
 * @returns null where they reach over less than an octave, and for a handful of readings
 */
export function lossBoundOf(curves: readonly Curve[]): LossBound | null {
  const swept = curves.filter(({ sweep }) => sweep.continuity === "curve" && sweep.frequencyHz.length >= FEWEST_POINTS);
  const starts = swept.map(({ sweep }) => at(sweep.frequencyHz, 0));
  const ends = swept.map(({ sweep }) => at(sweep.frequencyHz, sweep.frequencyHz.length - 1));
  if (swept.length === 0 || Math.max(...ends) < LEAST_SPAN * Math.min(...starts)) return null;
  const { frequencyHz, reflectionMagnitude } = swept
    .map(greatestOf)
    .reduce((a, b) => (b.reflectionMagnitude > a.reflectionMagnitude ? b : a));
  const lossDb = Math.max(0, returnLossDb(reflectionMagnitude) / 2);
  // Stretches on the bands alone may be well matched by themselves.
  if (lossDb > HIDING_LOSS_DB && Math.max(...swept.map(sweptRatio)) < LEAST_SPAN) return null;
  return { lossDb, frequencyHz, reflectionMagnitude };
}

/**
 * The most that can be lost one way at a frequency, dB: half of the return loss there or below, and what that comes to higher up, for no
 * line's loss grows faster than frequency.
 *
 * @param curves of one way of putting the antenna up, one at least
 */
export function greatestLossAt(curves: readonly Curve[], frequencyHz: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { sweep, reflectionMagnitude } of curves) {
    for (let i = 0; i < reflectionMagnitude.length; i++) {
      const growth = Math.max(1, frequencyHz / at(sweep.frequencyHz, i));
      least = Math.min(least, (growth * returnLossDb(Math.min(1, at(reflectionMagnitude, i)))) / 2);
    }
  }
  return least;
}

function greatestOf({ sweep, reflectionMagnitude }: Curve): CurvePoint {
  let greatest = 0;
  for (let i = 1; i < reflectionMagnitude.length; i++) {
    if (at(reflectionMagnitude, i) > at(reflectionMagnitude, greatest)) greatest = i;
  }
  return { frequencyHz: at(sweep.frequencyHz, greatest), reflectionMagnitude: at(reflectionMagnitude, greatest) };
}

/** Ratio of the frequencies that were swept, gaps left out. */
const sweptRatio = ({ sweep, stretches }: Curve): number =>
  stretches.reduce((ratio, { first, last }) => (ratio * at(sweep.frequencyHz, last)) / at(sweep.frequencyHz, first), 1);
