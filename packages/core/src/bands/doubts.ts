import type { Curve } from "../curve/curve.js";
import type { UsableBand } from "../facts/band-plan/band-plan.js";
import { takesSignal } from "../facts/band-plan/privileges.js";
import type { Feedline } from "../facts/feedline/feedline.js";
import type { Limits } from "../facts/limits.js";
import { RADIO_OHMS } from "../facts/station/station.js";
import { swrFromReflectionMagnitude } from "../reflection/swr.js";
import { type Finding, finding } from "../sweep/finding.js";
import type { Sweep } from "../sweep/sweep.js";
import type { BandResult } from "./band-result.js";
import type { People } from "./exposure.js";
import { HIDING_LOSS_DB, lossBoundOf } from "./loss-bound.js";
import type { Point } from "./point.js";
import { type Equipment, type PowerResult, RATED_UP_TO_SWR } from "./power.js";
import type { Scope } from "./scope.js";

/** Verdicts that the noise, the step or the analyser's own error may have turned. */
export function doubtFindings(results: readonly BandResult[], { swr: limit }: Limits): readonly Finding[] {
  const unsure = results.filter(
    ({ verdict, worst, best }) =>
      (verdict === "pass" && mayBeBeyond(worst, limit)) ||
      (verdict === "fail" && mayBeWithin(best, limit)) ||
      (verdict === "partial" && (mayBeBeyond(best, limit) || mayBeWithin(worst, limit))),
  );
  return unsure.map(({ band, verdict, worst, best }) => {
    const isWorst = verdict === "pass" || (verdict === "partial" && mayBeWithin(worst, limit));
    const { swrLow = 1, swrHigh = 1 } = (isWorst ? worst : best) ?? {};
    const which = isWorst ? "worst" : "best";
    return finding("caution", "verdict-unsure", { band, which, swrLow, swrHigh, verdict, limitSwr: limit }, { band });
  });
}

const mayBeBeyond = (point: Point | null, limit: number): boolean => (point?.swrHigh ?? 0) > limit;
const mayBeWithin = (point: Point | null, limit: number): boolean =>
  point !== null && point.swr > limit && (point.swrLow ?? Number.POSITIVE_INFINITY) < limit;

/** Modes that were named and may not be sent on a band that others keep in the table. */
export function modeFindings(
  bands: readonly { readonly band: UsableBand; readonly result: BandResult }[],
  { licenceClass = null, modes = [] }: Pick<Scope, "licenceClass" | "modes">,
): readonly Finding[] {
  return modes.flatMap((mode) => {
    const closed = bands
      .filter(({ result }) => result.best !== null)
      .filter(({ band }) => !band.segments.some((segment) => takesSignal(segment, licenceClass, mode)))
      .map(({ band }) => band.band);
    return closed.length === 0 ? [] : [finding("caution", "mode-not-permitted", { mode: mode.name, bands: closed })];
  });
}

/** What the power told leaves out. */
export function powerFindings(
  results: readonly BandResult[],
  feedline: Feedline | null,
  { radio, antenna }: Equipment,
): readonly Finding[] {
  const told = results.filter(({ power }) => power.some(({ watts }) => watts !== null));
  const where = (holds: (power: PowerResult) => boolean) =>
    told.filter(({ power }) => power.some((each) => each.watts !== null && holds(each))).map(({ band }) => band);
  const unlimited = where(({ licenceLimits }) => licenceLimits.length === 0);
  const unrated = radio?.powerW === undefined && antenna?.ratedPowerW === undefined ? told.map(({ band }) => band) : [];
  const beyond = where(({ isRatingCovered }) => isRatingCovered === false);
  const byShortWire = where(({ exposure }) => exposure !== null);
  const stressed = results.some(({ feedline: line }) => line?.stress != null);
  return [
    ...(unlimited.length === 0 ? [] : [finding("caution", "power-limit-unknown", { bands: unlimited })]),
    ...(unrated.length === 0 ? [] : [finding("caution", "no-rating-stated", { bands: unrated })]),
    ...(beyond.length === 0
      ? []
      : [
          finding("caution", "rating-not-covered", {
            bands: beyond,
            upToSwr: antenna?.ratedUpToSwr ?? RATED_UP_TO_SWR,
          }),
        ]),
    ...(byShortWire.length > 0 && antenna?.wireLengthM === undefined
      ? [finding("caution", "wire-length-unknown", {})]
      : []),
    ...(stressed && feedline !== null && feedline.ratedVolts === null && feedline.ratedAmperes === null
      ? [finding("caution", "feedline-rating-unknown", {})]
      : []),
  ];
}

/** Rules that are not kept where people are said to be, each with the bands on which, and the most power that would keep all. */
export function peopleFindings(results: readonly BandResult[], { distanceM }: People): readonly Finding[] {
  if (distanceM === undefined) return [];
  const broken = results.flatMap(({ band, power }) =>
    power.flatMap(({ mode, exposure }) => {
      const rules = exposure?.byRule.filter((rule) => rule.distanceM > distanceM) ?? [];
      return rules.length === 0 ? [] : [{ what: `${band} ${mode}`, isAll: rules.length === exposure?.byRule.length }];
    }),
  );
  if (broken.length === 0) return [];
  const severity = broken.some(({ isAll }) => isAll) ? "problem" : "caution";
  return [finding(severity, "people-too-near", { distanceM, where: broken.map(({ what }) => what) })];
}

/** A sweep against another impedance than the radio is made for: its SWR is not what the radio sees. */
export function referenceFindings(parts: readonly Sweep[], radioOhms = RADIO_OHMS): readonly Finding[] {
  const others = new Map(
    parts.filter(({ referenceOhms }) => referenceOhms !== radioOhms).map((sweep) => [sweep.referenceOhms, sweep]),
  );
  return [...others.values()].map(({ referenceOhms, kind }) =>
    finding("problem", "reference-not-50", { referenceOhms, radioOhms, hasPhase: kind === "vector" }),
  );
}

/** What the sweep itself says about loss on the way to the antenna. */
export function lossFindings(curves: readonly Curve[]): readonly Finding[] {
  const bound = lossBoundOf(curves);
  if (bound === null) return [];
  const { lossDb, frequencyHz, reflectionMagnitude } = bound;
  if (lossDb <= HIDING_LOSS_DB) return [finding("info", "loss-bound", { lossDb, frequencyHz })];
  const greatestSwr = swrFromReflectionMagnitude(reflectionMagnitude);
  return [finding("caution", "low-swr-may-be-loss", { lossDb, frequencyHz, greatestSwr })];
}
