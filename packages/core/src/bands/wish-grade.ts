import { isBeyondScale } from "../curve/trace.js";
import type { UsableBand } from "../facts/band-plan/band-plan.js";
import { usableBands } from "../facts/band-plan/privileges.js";
import type { Feedline } from "../facts/feedline/feedline.js";
import type { Limits, Need } from "../facts/limits.js";
import type { Mode } from "../facts/modes.js";
import type { Tuner } from "../facts/station/station.js";
import { swrFromReflectionMagnitude } from "../reflection/swr.js";
import { antennaEndOfPoint } from "./antenna-end.js";
import type { LossRange } from "./band-feedline.js";
import { answeringOn, type Part } from "./parts.js";
import { type Equipment, greatestPower, type PowerLimiter } from "./power.js";
import { segmentsByLimit } from "./power-pieces.js";
import { type BandReach, type Extremes, reachOf } from "./reach.js";
import type { Scope } from "./scope.js";
import { wattsPath } from "./watts-path.js";
import type { Wish } from "./wish.js";

/** What a deployment does for something that is wanted. */
export interface WishGrade {
  readonly title: string;
  /** Share of it that is known, 0 to 1 */
  readonly sweptFraction: number;
  /** What its worst known point needs */
  readonly need: Need;
  /** Worst SWR over it; null where nothing of it is known */
  readonly worstSwr: number | null;
  /** Whether the instrument's scale ended there, so that the SWR is at least this */
  readonly isAtLeast: boolean;
  /** Share of it within reach with the operator's own tuner, where there is one */
  readonly reachedFraction: number;
  /** The greatest power in its mode, W PEP; null without a mode, out of reach, and where nothing limits it */
  readonly watts: number | null;
  readonly limitedBy: PowerLimiter | null;
  /** Share of the power that reaches the wire, 0 to 1; null where no line is known */
  readonly arrives: { readonly least: number; readonly most: number } | null;
}

/** What of the station a wish is graded with. */
export interface WishContext {
  readonly equipment: Equipment;
  readonly feedline: Feedline | null;
}

/** What the parts of a deployment do for a wish. */
export function gradeWish(
  parts: readonly Part[],
  wish: Wish,
  scope: Scope,
  limits: Limits,
  { equipment, feedline }: WishContext,
): WishGrade {
  const answering = answeringOn(parts, wish.pieces);
  const reach = reachOf(answering, wish);
  const worst = reach.extremes?.worst ?? null;
  const worstSwr = worst && swrFromReflectionMagnitude(worst.reflectionMagnitude);
  const tuner = equipment.radio?.tuner ?? "none";
  const reachedFraction = reachedWith(tuner, reach);
  const power =
    wish.mode === null || reachedFraction < 1 ? null : leastPower(wish, wish.mode, scope, equipment, worstSwr);
  const losses = feedline && reach.extremes && lossesBetween(reach.extremes, feedline);
  const path = wattsPath(losses, feedline, worstSwr, limits, equipment);
  return {
    title: wish.title,
    sweptFraction: reach.sweptFraction,
    need: reach.need,
    worstSwr,
    isAtLeast: worst !== null && isBeyondScale(worst.part.analysis.curve, worst.reflectionMagnitude),
    reachedFraction,
    watts: power?.watts ?? null,
    limitedBy: power?.by ?? null,
    arrives: path?.line == null ? null : path.arrives,
  };
}

/** What the line loses at the best and at the worst of a wish; null where it cannot be taken out. */
function lossesBetween({ best, worst }: Extremes, feedline: Feedline): LossRange | null {
  const ends = [best, worst].map((point) => antennaEndOfPoint(point, feedline)?.totalLossDb ?? Number.NaN);
  return ends.some(Number.isNaN) ? null : { leastDb: Math.min(...ends), greatestDb: Math.max(...ends) };
}

const reachedWith = (tuner: Tuner, { usable }: BandReach): number =>
  tuner === "wide-range"
    ? usable.withWideRangeTuner
    : tuner === "built-in"
      ? usable.withBuiltInTuner
      : usable.withoutTuner;

/** The least of the powers that the plan, radio and antenna allow where the wish lies. */
function leastPower(
  { band, pieces }: Wish,
  mode: Mode,
  { plan, licenceClass = null }: Scope,
  equipment: Equipment,
  worstSwr: number | null,
) {
  const usable: UsableBand | undefined = usableBands(plan, licenceClass, [mode]).find((each) => each.band === band);
  if (usable === undefined) return null;
  const powers = segmentsByLimit(usable, licenceClass, mode)
    .filter((group) =>
      group.pieces.some((own) => pieces.some((piece) => piece.lowHz < own.highHz && piece.highHz > own.lowHz)),
    )
    .flatMap(({ limits }) => greatestPower(limits, mode, equipment, worstSwr) ?? []);
  return powers.length === 0 ? null : powers.reduce((least, next) => (next.watts < least.watts ? next : least));
}
