import { magnitudeAt, type Place, powerAt } from "../../facts/matching/chain.js";
import { at } from "../../numbers/column.js";
import type { WishGrid } from "./wish-grid.js";

/** What counts as within reach. */
export interface Terms {
  /** What the radio is made for, Ω */
  readonly radioOhms: number;
  /** Greatest ρ without a tuner */
  readonly magnitude: number;
  /** Greatest ρ with the operator's own tuner; the same without one */
  readonly tunedMagnitude: number;
  /** Share of the power that the tuner lets through where it is used */
  readonly throughTuner: number;
  /** Share of the power that must arrive at the antenna */
  readonly leastArriving: number;
}

/** Shares of each wish within reach, of which enough arrives, 0 to 1. */
export interface Shares {
  /** With the operator's own tuner, where there is one */
  readonly reached: Float64Array;
  readonly withoutTuner: Float64Array;
  /** Mean ρ at the radio, 1 where it is not known */
  readonly meanMagnitude: Float64Array;
}

/** Shares of so many wishes, to be written on. */
export const emptyShares = (wishes: number): Shares => ({
  reached: new Float64Array(wishes),
  withoutTuner: new Float64Array(wishes),
  meanMagnitude: new Float64Array(wishes),
});

/**
 * Writes what of a wish is within reach and lets enough power through.
 *
 * @param antenna voltage and current at the antenna, on the grid
 * @param radio and at the radio
 */
export function writeShares(
  into: Shares,
  { share, starts }: WishGrid,
  wish: number,
  antenna: Place,
  radio: Place,
  terms: Terms,
): void {
  const { radioOhms, magnitude, tunedMagnitude, throughTuner, leastArriving } = terms;
  const start = starts[wish] ?? 0;
  const end = starts[wish + 1] ?? start;
  let reached = 0;
  let withoutTuner = 0;
  let meanMagnitude = 0;
  let lastTuned = Number.NaN;
  let lastPlain = Number.NaN;
  let lastRho = 1;
  for (let i = start; i < end; i++) {
    const rho = magnitudeAt(radio, i, radioOhms);
    const arrives = powerAt(antenna, i) / powerAt(radio, i);
    const plain = Math.min(magnitude - rho, arrives - leastArriving);
    const tuned = Math.max(plain, Math.min(tunedMagnitude - rho, arrives * throughTuner - leastArriving));
    const width = i > start ? at(share, i - 1) : 0;
    if (width > 0) {
      reached += width * shareAbove0(lastTuned, tuned);
      withoutTuner += width * shareAbove0(lastPlain, plain);
      meanMagnitude += (width * (known(lastRho) + known(rho))) / 2;
    }
    lastTuned = tuned;
    lastPlain = plain;
    lastRho = rho;
  }
  into.reached[wish] = whole(reached);
  into.withoutTuner[wish] = whole(withoutTuner);
  into.meanMagnitude[wish] = meanMagnitude;
}

/** Rounding does not make a share miss the whole. */
const whole = (share: number): number => (share > 1 - 1e-9 ? 1 : share);

const known = (rho: number): number => Math.min(rho, 1);

/** Share of the way between two values that a straight line between them is not below 0; none where one is not known. */
function shareAbove0(from: number, to: number): number {
  if (from >= 0 && to >= 0) return 1;
  if (from >= 0 && to < 0) return from / (from - to);
  if (from < 0 && to >= 0) return to / (to - from);
  return 0;
}
