import { at } from "./column.js";
import { returnLossDb } from "./reflection.js";
import type { Sweep } from "./sweep.js";

/** The most that can be lost one way between analyser and antenna, and where the sweep says so. */
export interface LossBound {
  readonly lossDb: number;
  readonly frequencyHz: number;
  /** Greatest ρ of the sweep, which the bound follows from */
  readonly reflectionMagnitude: number;
}

/** Fewer points than this are readings where the antenna is good, not a sweep (our own choice). */
const FEWEST_POINTS = 10;
/** A sweep over less than this ratio of frequencies may be well matched throughout and bounds nothing worth saying. */
const LEAST_SPAN = 2;

/**
 * Bounds the loss of the feedline by the sweep alone: a passive antenna reflects at most everything, so at every frequency
 * the one-way loss ahead of it is at most half of the return loss.
 *
 * Source: half the return loss with the far end shorted is the cable loss, Anritsu application note "Average Cable Loss
 * Measurement" (abstract read); that it bounds from above with any passive end is derived.
 *
 * @returns null for a sweep over less than an octave, and for a handful of readings
 */
export function lossBound({ frequencyHz, reflectionMagnitude, continuity }: Sweep): LossBound | null {
  if (continuity === "spots" || frequencyHz.length < FEWEST_POINTS) return null;
  const last = frequencyHz.length - 1;
  if (at(frequencyHz, last) < LEAST_SPAN * at(frequencyHz, 0)) return null;
  let greatest = 0;
  for (let i = 1; i <= last; i++) if (at(reflectionMagnitude, i) > at(reflectionMagnitude, greatest)) greatest = i;
  const rho = at(reflectionMagnitude, greatest);
  return {
    lossDb: Math.max(0, returnLossDb(rho) / 2),
    frequencyHz: at(frequencyHz, greatest),
    reflectionMagnitude: rho,
  };
}
