import type { Instrument } from "../curve/uncertainty/instrument.js";
import type { Emission, PlanSegment, UsableBand } from "../facts/band-plan/band-plan.js";
import { emissionsIn } from "../facts/band-plan/privileges.js";
import type { Feedline } from "../facts/feedline/feedline.js";
import type { Limits } from "../facts/limits.js";
import { MODE_NAMES } from "../facts/mode-names.js";
import { COMMON_MODES, type Mode, modeOf } from "../facts/modes.js";
import { swrFromReflectionMagnitude } from "../reflection/swr.js";
import { type BandFeedline, bandFeedline } from "./band-feedline.js";
import type { People } from "./exposure.js";
import type { Known } from "./known.js";
import { answeringOn, type Part } from "./parts.js";
import { type Equipment, isLimiting, type PowerResult, powersIn } from "./power.js";
import { reachOf } from "./reach.js";
import { type BandSummary, summarised } from "./summary.js";
import { withUncertainty } from "./sureness.js";
import { type WattsPath, wattsPath } from "./watts-path.js";

/** pass: all of it swept and within the limit; partial: some of it; fail: none of the swept part; not-swept: nothing known. */
export type Verdict = "pass" | "partial" | "fail" | "not-swept";

/** What a sweep does on one segment of the plan. */
export interface SegmentResult {
  /** What the plan sets the segment aside for, in its own words: "cw", "all modes" */
  readonly use: string;
  /** What the licence class may send there; null where the plan does not say */
  readonly emissions: readonly Emission[] | null;
  readonly lowHz: number;
  readonly highHz: number;
  /** Share of the segment that was swept, 0 to 1 */
  readonly sweptFraction: number;
  /** Share of the whole segment within the limit, swept or not, 0 to 1 */
  readonly withinLimitFraction: number;
  /** null where nothing was swept */
  readonly worstSwr: number | null;
  readonly verdict: Verdict;
}

/** What a sweep does on one band, with a verdict and what follows for power and feedline. */
export interface BandResult extends BandSummary {
  /** Of the whole usable band */
  readonly verdict: Verdict;
  /** The segments that may be used, ascending */
  readonly segments: readonly SegmentResult[];
  /** The greatest power in each mode that was asked for; empty where none was */
  readonly power: readonly PowerResult[];
  /** What the feedline does on this band; null where it is not known or nothing was swept */
  readonly feedline: BandFeedline | null;
  /** Where the power goes before it reaches the wire; null where nothing is known of that or nothing was swept */
  readonly path: WattsPath | null;
  /** Which of the deployment's parts it rests on, by their places in the result's `parts`; empty where nothing was swept */
  readonly answeredBy: readonly number[];
}

/** What is known beside the sweep when a band is checked. */
export interface BandContext {
  readonly licenceClass?: string | null;
  readonly modes?: readonly Mode[];
  /** The analyser's own errors, where they are known */
  readonly instrument?: Instrument | null;
  /** The line between analyser and antenna, where it is known */
  readonly feedline?: Feedline | null;
  /** What radio and antenna are made for; power is told for `modes`, or for the commonest where there are none */
  readonly equipment?: Equipment;
  /** Where people are, and how long the station is on the air; all of the time where absent */
  readonly people?: People;
}

/** Checks one band: its numbers and how sure they are, each segment of the plan, power by mode, and the line. */
export function checkBand(
  { deployment, parts, limits, scatterOn }: Known,
  band: UsableBand,
  { licenceClass = null, instrument = null, feedline = null, modes, equipment = {}, people = {} }: BandContext,
): BandResult {
  const answering = answeringOn(parts, band.pieces);
  const bare = summarised(answering, band, limits);
  const summary = withUncertainty(bare, answering, limits, { instrument, scatter: scatterOn(band) });
  const powered = modes ?? poweredModes(equipment);
  const power =
    summary.best === null ? [] : powersIn(parts, band, licenceClass, powered, { equipment, feedline, people });
  const places = summary.best === null ? [] : answering.map(({ part }) => deployment.parts.indexOf(part.sweep));
  const ofLine = feedline && bandFeedline(answering, feedline, power);
  // Spelled out: to add to a copy of an object of so many fields takes longer than to reckon them.
  return {
    band: summary.band,
    lowHz: summary.lowHz,
    highHz: summary.highHz,
    pieces: summary.pieces,
    sweptFraction: summary.sweptFraction,
    best: summary.best,
    worst: summary.worst,
    atLow: summary.atLow,
    atHigh: summary.atHigh,
    withinLimit: summary.withinLimit,
    usable: summary.usable,
    tunerSpans: summary.tunerSpans,
    bandwidth: summary.bandwidth,
    resonances: summary.resonances,
    impedanceQ: summary.impedanceQ,
    loadedQ: summary.loadedQ,
    need: summary.need,
    uncertainty: summary.uncertainty,
    restsOn: summary.restsOn,
    verdict: verdictOf(summary),
    segments: band.segments.map((segment) => checkSegment(parts, segment, limits, licenceClass)),
    power,
    feedline: ofLine,
    path: wattsPath(ofLine?.losses ?? null, feedline, summary.worst?.swr ?? null, limits, equipment),
    answeredBy: [...new Set(places)],
  };
}

/** Modes that power is told for where none was named: those that the radio's output is stated for, or the commonest. */
function poweredModes(equipment: Equipment): readonly Mode[] {
  const powerW = equipment.radio?.powerW;
  if (typeof powerW === "object")
    return MODE_NAMES.filter((name) => powerW[name] !== undefined).map((name) => modeOf(name));
  return isLimiting(equipment) ? COMMON_MODES : [];
}

function checkSegment(
  parts: readonly Part[],
  segment: PlanSegment,
  limits: Limits,
  licenceClass: string | null,
): SegmentResult {
  const { use, lowHz, highHz } = segment;
  const pieces = [{ lowHz, highHz }];
  const { sweptFraction, usable, extremes } = reachOf(answeringOn(parts, pieces), { pieces });
  const swrOf = (point: { readonly reflectionMagnitude: number } | undefined) =>
    point === undefined ? null : swrFromReflectionMagnitude(point.reflectionMagnitude);
  const best = swrOf(extremes?.best);
  const withinLimit = { limitSwr: limits.swr, fraction: usable.withoutTuner };
  return {
    use,
    emissions: emissionsIn(segment, licenceClass),
    lowHz,
    highHz,
    sweptFraction,
    withinLimitFraction: usable.withoutTuner,
    worstSwr: swrOf(extremes?.worst),
    verdict: verdictOf({ sweptFraction, withinLimit, best: best === null ? null : { swr: best } }),
  };
}

/** An SWR that was noted for all of a band may lie within the limit on some of it, without saying where: partial. */
function verdictOf({
  sweptFraction,
  withinLimit: { limitSwr, fraction },
  best,
}: {
  readonly sweptFraction: number;
  readonly withinLimit: { readonly limitSwr: number; readonly fraction: number };
  readonly best: { readonly swr: number } | null;
}): Verdict {
  if (sweptFraction === 0) return "not-swept";
  if (fraction === 0) return best !== null && best.swr <= limitSwr ? "partial" : "fail";
  return sweptFraction === 1 && fraction === 1 ? "pass" : "partial";
}
