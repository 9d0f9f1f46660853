import { extremesOver, share, widthWithin } from "../curve/pieces.js";
import { sweptWidthHz } from "../curve/trace.js";
import type { Grounds } from "../curve/uncertainty/band-uncertainty.js";
import type { Instrument } from "../curve/uncertainty/instrument.js";
import type { Emission, PlanSegment, UsableBand } from "../facts/band-plan/band-plan.js";
import { emissionsIn } from "../facts/band-plan/privileges.js";
import type { Feedline } from "../facts/feedline/feedline.js";
import { COMMON_MODES, type Mode } from "../facts/modes.js";
import { swrFromReflectionMagnitude } from "../reflection/swr.js";
import type { Analysis } from "./analysis.js";
import { type BandFeedline, bandFeedline } from "./band-feedline.js";
import { type Equipment, isLimiting, type PowerResult, powersIn } from "./power.js";
import { type BandSummary, summariseBand, withUncertainty } from "./summary.js";

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
}

/** Checks one band: its numbers and how sure they are, each segment of the plan, power by mode, and the line. */
export function checkBand(
  analysis: Analysis,
  band: UsableBand,
  grounds: Grounds | null,
  { licenceClass = null, instrument = null, feedline = null, modes, equipment = {} }: BandContext,
): BandResult {
  const summary = withUncertainty(summariseBand(analysis, band), analysis, grounds, instrument);
  const { sweptFraction, withinLimit } = summary;
  const powered = modes ?? (isLimiting(equipment) ? COMMON_MODES : []);
  const power = summary.best === null ? [] : powersIn(analysis, band, licenceClass, powered, equipment);
  return {
    ...summary,
    verdict: verdictOf(sweptFraction, withinLimit.fraction),
    segments: band.segments.map((segment) => checkSegment(analysis, segment, licenceClass)),
    power,
    feedline: feedline && bandFeedline(analysis.curve, feedline, summary, power),
  };
}

function checkSegment(analysis: Analysis, segment: PlanSegment, licenceClass: string | null): SegmentResult {
  const { use, lowHz, highHz } = segment;
  const piece = { lowHz, highHz };
  const sweptFraction = share(sweptWidthHz(analysis.curve, lowHz, highHz), highHz - lowHz);
  const withinLimitFraction = share(widthWithin(analysis.spans, [piece]), highHz - lowHz);
  const extremes = extremesOver(analysis.trace, [piece]);
  return {
    use,
    emissions: emissionsIn(segment, licenceClass),
    lowHz,
    highHz,
    sweptFraction,
    withinLimitFraction,
    worstSwr: extremes && swrFromReflectionMagnitude(extremes.worst.reflectionMagnitude),
    verdict: verdictOf(sweptFraction, withinLimitFraction),
  };
}

function verdictOf(sweptFraction: number, withinFraction: number): Verdict {
  if (sweptFraction === 0) return "not-swept";
  if (withinFraction === 0) return "fail";
  return sweptFraction === 1 && withinFraction === 1 ? "pass" : "partial";
}
