import type { BandPlan, PowerLimit } from "../band-plan/band-plan.js";
import { privilegeFor } from "../band-plan/privileges.js";
import { type CurvePoint, extremesBetween, sweptWidthHz } from "../curve/trace.js";
import type { Need } from "../limits.js";
import { share } from "../pieces.js";
import { swrFromReflectionMagnitude } from "../reflection.js";
import { type Judgement, needOf, type Point, pointAt } from "../summary.js";
import { type Mode, occupiedBy } from "./modes.js";

/** A dial frequency to be judged. */
export interface Dial {
  readonly frequencyHz: number;
  /** null: only the SWR is asked for */
  readonly mode: Mode | null;
  /** What commonly happens there: "FT8"; null for a frequency that was only named */
  readonly activity: string | null;
}

/** What holds at a dial frequency for a mode, over all that the signal occupies. */
export interface DialResult {
  readonly frequencyHz: number;
  /** null: nothing but the frequency itself was asked for */
  readonly mode: Mode["name"] | null;
  readonly activity: string | null;
  /** What the transmission occupies */
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
  readonly need: Need;
}

/** Judges a dial frequency. */
export function dialResult(
  judgement: Judgement,
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
  const worst = worstBetween(judgement, lowHz, highHz);
  return {
    frequencyHz,
    mode: mode?.name ?? null,
    activity,
    lowHz,
    highHz,
    band: plan.bands.find((band) => highHz >= band.lowHz && lowHz <= band.highHz)?.band ?? null,
    isPermitted: privilege?.allowed ?? null,
    licenceLimits: privilege?.limits ?? [],
    point: pointAt(judgement.curve, frequencyHz),
    worstSwr: worst && swrFromReflectionMagnitude(worst.reflectionMagnitude),
    need: needOf(judgement, worst),
  };
}

/** The worst point from one frequency to another; null unless all between them was swept. */
function worstBetween({ curve, trace }: Judgement, lowHz: number, highHz: number): CurvePoint | null {
  const isSwept = lowHz === highHz || share(sweptWidthHz(curve, lowHz, highHz), highHz - lowHz) === 1;
  return isSwept ? (extremesBetween(trace, lowHz, highHz)?.worst ?? null) : null;
}
