import { share } from "../curve/pieces.js";
import { extremesBetween, sweptWidthHz } from "../curve/trace.js";
import type { Dial } from "../facts/activity/dial.js";
import type { BandPlan, PowerLimit } from "../facts/band-plan/band-plan.js";
import { privilegeFor } from "../facts/band-plan/privileges.js";
import type { Need } from "../facts/limits.js";
import { type Mode, occupiedBy } from "../facts/modes.js";
import type { Tuner } from "../facts/station/station.js";
import { swrFromReflectionMagnitude } from "../reflection/swr.js";
import { type Exposure, exposureOf } from "./exposure.js";
import type { Part } from "./parts.js";
import { type Point, pointAt, pointOn } from "./point.js";
import { coversRating, greatestPower, type PowerContext, type PowerLimiter } from "./power.js";
import { needOf, type PointOfPart } from "./reach.js";

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
  /** The greatest power there, W PEP; null without a mode, where it is not permitted or out of reach, and where nothing limits it */
  readonly watts: number | null;
  /** What sets it */
  readonly limitedBy: PowerLimiter | null;
  /** false: the SWR there goes beyond the one that the maker's rating was stated for; null as for `watts`, and without a rating */
  readonly isRatingCovered: boolean | null;
  /** What it means for people near the antenna; null as for `watts` */
  readonly exposure: Exposure | null;
}

/** Judges a dial frequency. */
export function dialResult(
  parts: readonly Part[],
  plan: BandPlan,
  licenceClass: string | null,
  { frequencyHz, mode, activity }: Dial,
  { equipment, feedline, people }: PowerContext,
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
      name: mode.name,
      licenceClass,
      occupied,
    });
  const worst = worstBetween(parts, lowHz, highHz);
  const worstSwr = worst && swrFromReflectionMagnitude(worst.reflectionMagnitude);
  const need = worst === null ? "unknown" : needOf(worst.part.analysis, worst);
  const limits = privilege?.limits ?? [];
  const power =
    mode !== null && privilege?.allowed === true && matches(equipment.radio?.tuner ?? "none", need)
      ? greatestPower(limits, mode, equipment, worstSwr)
      : null;
  return {
    frequencyHz,
    mode: mode?.name ?? null,
    activity,
    lowHz,
    highHz,
    band: plan.bands.find((band) => highHz >= band.lowHz && lowHz <= band.highHz)?.band ?? null,
    isPermitted: privilege?.allowed ?? null,
    licenceLimits: limits,
    point: pointIn(parts, frequencyHz) ?? (worst && pointOn(worst.part.analysis.curve, worst)),
    worstSwr,
    need,
    watts: power?.watts ?? null,
    limitedBy: power?.by ?? null,
    isRatingCovered: power && mode && coversRating(worst, mode, equipment.antenna ?? {}, feedline),
    exposure:
      power &&
      mode &&
      exposureOf({
        watts: power.watts,
        mode,
        pieces: [{ lowHz, highHz }],
        radiator: equipment.antenna ?? {},
        feedline,
        curves: parts.map(({ analysis }) => analysis.curve),
        people,
      }),
  };
}

/** Whether a tuner brings about what is needed. */
function matches(tuner: Tuner, need: Need): boolean {
  if (need === "none") return true;
  if (need === "built-in-tuner") return tuner !== "none";
  return need === "wide-range-tuner" && tuner === "wide-range";
}

/** What the first part that knows a frequency says of it. */
const pointIn = (parts: readonly Part[], frequencyHz: number): Point | null =>
  inOrder(parts)
    .map(({ analysis }) => pointAt(analysis.curve, frequencyHz))
    .find((point) => point !== null) ?? null;

/**
 * The worst point from one frequency to another by the first part that knows all between them: a curve, single readings within,
 * or one of the whole band; null where none does.
 */
function worstBetween(parts: readonly Part[], lowHz: number, highHz: number): PointOfPart | null {
  for (const part of inOrder(parts)) {
    const { curve, trace } = part.analysis;
    const isKnown =
      part.knows === "spots" || lowHz === highHz || share(sweptWidthHz(curve, lowHz, highHz), highHz - lowHz) === 1;
    const worst = isKnown ? (extremesBetween(trace, lowHz, highHz)?.worst ?? null) : null;
    if (worst !== null) return { ...worst, part };
  }
  return null;
}

/** What a reading at a frequency says of it counts before one of the whole band. */
const ORDER: readonly Part["knows"][] = ["curve", "spots", "stretch"];
const inOrder = (parts: readonly Part[]): readonly Part[] =>
  ORDER.flatMap((what) => parts.filter(({ knows }) => knows === what));
