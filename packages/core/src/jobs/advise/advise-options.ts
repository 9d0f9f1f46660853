import { checkFeedline, checkInstrument, checkScope } from "../../bands/option-checks.js";
import type { Equipment } from "../../bands/power.js";
import type { Scope } from "../../bands/scope.js";
import type { Wish } from "../../bands/wish.js";
import type { Instrument } from "../../curve/uncertainty/instrument.js";
import type { Feedline } from "../../facts/feedline/feedline.js";
import { checkFixed, type FixedParts, type FixedWires } from "../../facts/fixed-parts.js";
import type { Limits } from "../../facts/limits.js";
import type { StatedParts } from "../../facts/matching/parts-at-hand.js";
import { RADIO_OHMS } from "../../facts/station/station.js";
import { demand, isFiniteAbove0 } from "../../input/argument.js";
import { reflectionMagnitudeFromSwr } from "../../reflection/swr.js";
import type { Terms } from "./shares.js";

/** What is wanted of an antenna, and what there is to work with. */
export interface AdviseOptions extends Scope {
  /** What is wanted; each band of the scope of which anything is known where absent */
  readonly wishes?: readonly Wish[];
  /** The line between analyser and antenna, which {@link feedlineFrom} makes; null or absent: not known */
  readonly feedline?: Feedline | null;
  /** The sweep was taken at the antenna, so that there is no line to take out */
  readonly isAtAntenna?: boolean;
  /** Radio, tuner and antenna, as far as they are stated */
  readonly equipment?: Equipment;
  /** The analyser's own errors, where they are known */
  readonly instrument?: Instrument | null;
  /** What may be built from; the usual kinds and values where absent */
  readonly parts?: StatedParts;
  /** Share of the power that has to arrive at the antenna for a frequency to count, above 0, below 1; 0.75 where absent */
  readonly leastArriving?: number;
  /** What stays as it is when the wire is cut, by name or with count and length; absent: as the antenna says, or not said */
  readonly fixed?: FixedParts | FixedWires;
}

/** Where nobody says how much of the power has to arrive. */
export const LEAST_ARRIVING = 0.75;

/** Taken where no power is stated, W: what most transceivers put out (common practice, no source). */
const USUAL_POWER_W = 100;

export function checkAdviseOptions(options: AdviseOptions): void {
  checkScope(options);
  const { wishes, feedline, instrument, leastArriving, fixed } = options;
  checkFeedline(feedline);
  checkInstrument(instrument);
  checkFixed(fixed, "fixed");
  if (wishes !== undefined) demand(Array.isArray(wishes), "wishes", "a list of wishes, such as wishesOf gives", wishes);
  wishes?.forEach((wish, i) => {
    demand(isFiniteAbove0(wish?.weight), `wishes[${i}].weight`, "a number above 0", wish?.weight);
    demand(Array.isArray(wish.pieces) && wish.pieces.length > 0, `wishes[${i}].pieces`, "a list of spans", wish.pieces);
  });
  if (leastArriving !== undefined) {
    const isShare = isFiniteAbove0(leastArriving) && leastArriving < 1;
    demand(isShare, "leastArriving", "a share above 0, below 1", leastArriving);
  }
}

/** What counts as within reach of a station. @param referenceOhms what SWR is judged against where the radio does not say, Ω */
export function termsOf(
  { radio = {} }: Equipment,
  limits: Limits,
  leastArriving: number,
  referenceOhms = RADIO_OHMS,
): Terms {
  const { ohms = referenceOhms, tuner = "none", tunerLossDb = 0 } = radio;
  const tunedSwr = { none: limits.swr, "built-in": limits.builtInTunerSwr, "wide-range": limits.wideRangeTunerSwr };
  return {
    radioOhms: ohms,
    magnitude: reflectionMagnitudeFromSwr(limits.swr),
    tunedMagnitude: reflectionMagnitudeFromSwr(tunedSwr[tuner]),
    throughTuner: 10 ** (-tunerLossDb / 10),
    leastArriving,
  };
}

/** The power that stress is reckoned at: the greatest of all modes, W. */
export function powerOf({ radio = {} }: Equipment): { readonly powerW: number; readonly isPowerStated: boolean } {
  const { powerW } = radio;
  if (powerW === undefined) return { powerW: USUAL_POWER_W, isPowerStated: false };
  return { powerW: typeof powerW === "number" ? powerW : Math.max(...Object.values(powerW)), isPowerStated: true };
}
