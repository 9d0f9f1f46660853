import { share } from "../curve/pieces.js";
import { type CurvePoint, extremesBetween, sweptWidthHz } from "../curve/trace.js";
import type { Dial } from "../facts/activity/dial.js";
import type { BandPlan, PowerLimit } from "../facts/band-plan/band-plan.js";
import { privilegeFor } from "../facts/band-plan/privileges.js";
import type { Need } from "../facts/limits.js";
import { type Mode, occupiedBy } from "../facts/modes.js";
import { swrFromReflectionMagnitude } from "../reflection/swr.js";
import type { Analysis } from "./analysis.js";
import { type Point, pointAt } from "./point.js";
import { needOf } from "./reach.js";

/** What holds at a dial frequency for a mode, over all that the signal occupies. */
export interface DialResult {
  readonly frequencyHz: number;
  /** null: nothing but the frequency itself was asked for */
  readonly mode: Mode["name"] | null;
  /** As it was given: what commonly happens there, or null */
  readonly activity: string | null;
  /** What the transmission occupies, Hz; both are the frequency itself where no mode was given */
  readonly lowHz: number;
  readonly highHz: number;
  /** The band that the transmission touches; null outside all */
  readonly band: string | null;
  /** Whether plan and class allow it; null without a mode, for then only the SWR was asked for */
  readonly isPermitted: boolean | null;
  /** All of which hold; empty where the plan does not say, or does not permit it */
  readonly licenceLimits: readonly PowerLimit[];
  /** The curve at the dial frequency; null where it was not swept */
  readonly point: Point | null;
  /** Worst SWR over what is occupied; null where not all of that was swept */
  readonly worstSwr: number | null;
  /** What the worst point over what is occupied needs */
  readonly need: Need;
}

/** Judges a dial frequency. */
export function dialResult(
  analysis: Analysis,
  plan: BandPlan,
  licenceClass: string | null,
  { frequencyHz, mode, activity }: Dial,
): DialResult {
  const occupied = mode === null ? { belowHz: 0, aboveHz: 0 } : occupiedBy(mode, frequencyHz);
  const lowHz = frequencyHz - occupied.belowHz;
  const highHz = frequencyHz + occupied.aboveHz;
  const privilege =
    mode &&
    privilegeFor(plan, {
      frequencyHz,
      emission: mode.emission,
      bandwidthHz: mode.bandwidthHz,
      licenceClass,
      occupied,
    });
  const worst = worstBetween(analysis, lowHz, highHz);
  return {
    frequencyHz,
    mode: mode?.name ?? null,
    activity,
    lowHz,
    highHz,
    band: plan.bands.find((band) => highHz >= band.lowHz && lowHz <= band.highHz)?.band ?? null,
    isPermitted: privilege?.allowed ?? null,
    licenceLimits: privilege?.limits ?? [],
    point: pointAt(analysis.curve, frequencyHz),
    worstSwr: worst && swrFromReflectionMagnitude(worst.reflectionMagnitude),
    need: needOf(analysis, worst),
  };
}

/** The worst point from one frequency to another; null unless all between them was swept. */
function worstBetween({ curve, trace }: Analysis, lowHz: number, highHz: number): CurvePoint | null {
  const isSwept = lowHz === highHz || share(sweptWidthHz(curve, lowHz, highHz), highHz - lowHz) === 1;
  return isSwept ? (extremesBetween(trace, lowHz, highHz)?.worst ?? null) : null;
}
