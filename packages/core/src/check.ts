import type { Emission, JudgedBand, PlanSegment } from "./band-plan/band-plan.js";
import { emissionsIn } from "./band-plan/privileges.js";
import { CAUTIONS } from "./cautions.js";
import { doubtFindings, lossFindings, modeFindings, powerFindings, referenceFindings } from "./check-findings.js";
import { sweptWidthHz } from "./curve/trace.js";
import { type BandFeedline, bandFeedline, feedlineFindings } from "./feedline/band-feedline.js";
import type { Feedline } from "./feedline/feedline.js";
import type { Finding } from "./finding.js";
import { closedBands, type JudgingOptions, type PlanInfo, planFindings, planInfo, selectBands } from "./judging.js";
import { DEFAULT_LIMITS, type Limits } from "./limits.js";
import { extremesOver, share, widthWithin } from "./pieces.js";
import { swrFromReflectionMagnitude } from "./reflection.js";
import { samplingFindings, spikeFindings, spotFindings } from "./sampling.js";
import { type Dial, type DialResult, dialResult } from "./station/dials.js";
import { COMMON_MODES } from "./station/modes.js";
import { type Equipment, isLimiting, type PowerResult, powersIn } from "./station/power.js";
import { type BandSummary, type Judgement, judge, summariseBand, withUncertainty } from "./summary.js";
import type { Sweep } from "./sweep.js";
import { type SweepInfo, sweepInfo } from "./sweep-info.js";
import { dipFindings } from "./trim.js";
import { type Grounds, groundsOf } from "./uncertainty/band-uncertainty.js";
import type { Instrument } from "./uncertainty/instrument.js";

/** pass: all of it swept and within the limit; partial: some of it; fail: none of the swept part; not-swept: nothing known. */
export type Verdict = "pass" | "partial" | "fail" | "not-swept";

export interface SegmentResult {
  readonly use: string;
  /** What the licence class may send there; null where the plan does not say */
  readonly emissions: readonly Emission[] | null;
  readonly lowHz: number;
  readonly highHz: number;
  readonly sweptFraction: number;
  readonly withinLimitFraction: number;
  /** null where nothing was swept */
  readonly worstSwr: number | null;
  readonly verdict: Verdict;
}

export interface BandResult extends BandSummary {
  readonly verdict: Verdict;
  readonly segments: readonly SegmentResult[];
  /** The greatest power in each mode that was asked for; empty where none was */
  readonly power: readonly PowerResult[];
  /** What the feedline does on this band; null where it is not known or nothing was swept */
  readonly feedline: BandFeedline | null;
}

export interface CheckResult {
  readonly schema: "feedpoint/check@1";
  readonly sweep: SweepInfo;
  readonly plan: PlanInfo;
  readonly limits: Limits;
  readonly feedline: Feedline | null;
  readonly bands: readonly BandResult[];
  readonly dials: readonly DialResult[];
  readonly findings: readonly Finding[];
  readonly cautions: readonly string[];
}

export interface CheckOptions extends JudgingOptions {
  /** The analyser's own errors, where they are known */
  readonly instrument?: Instrument | null;
  /** The line between analyser and antenna, where it is known */
  readonly feedline?: Feedline | null;
  /** What radio and antenna are made for; power is told for `modes`, or for the commonest where there are none */
  readonly equipment?: Equipment;
  readonly dials?: readonly Dial[];
}

/** Judges a sweep against a band plan: what it does on each band and segment, and what that takes to transmit. */
export const check = (sweep: Sweep, options: CheckOptions): CheckResult =>
  checkJudged(judge(sweep, options.limits ?? DEFAULT_LIMITS), options);

/** The same for a sweep whose curve is needed for more than this; the limits are those that it was judged with. */
export function checkJudged(judgement: Judgement, options: Omit<CheckOptions, "limits">): CheckResult {
  const { plan, licenceClass = null, feedline = null, dials = [] } = options;
  const { limits } = judgement;
  const { sweep } = judgement.curve;
  const selected = selectBands(options);
  const grounds = groundsOf(judgement.trace);
  const bands = selected.map((band) => ({ band, result: checkBand(judgement, band, grounds, options) }));
  const results = bands.map(({ result }) => result);
  return {
    schema: "feedpoint/check@1",
    sweep: sweepInfo(sweep),
    plan: planInfo(options),
    limits,
    feedline,
    bands: results,
    dials: dials.map((dial) => dialResult(judgement, plan, licenceClass, dial)),
    findings: [
      ...planFindings(
        options,
        bands.filter(({ result }) => result.best !== null).map(({ band }) => band),
      ),
      ...closedBands(options, selected, (lowHz, highHz) => sweptWidthHz(judgement.curve, lowHz, highHz) > 0),
      ...spotFindings(sweep, plan),
      ...spikeFindings(judgement.curve),
      ...bands.flatMap(({ band, result }) => samplingFindings(judgement, band, result)),
      ...doubtFindings(results, limits),
      ...modeFindings(bands, options),
      ...powerFindings(results, feedline),
      ...dipFindings(judgement, results),
      ...lossFindings(judgement.curve),
      ...(feedline === null ? [] : feedlineFindings(sweep, feedline, results)),
      ...referenceFindings(sweep),
    ],
    cautions: CAUTIONS,
  };
}

function checkBand(
  judgement: Judgement,
  band: JudgedBand,
  grounds: Grounds | null,
  { licenceClass = null, instrument = null, feedline = null, modes, equipment = {} }: Omit<CheckOptions, "limits">,
): BandResult {
  const summary = withUncertainty(summariseBand(judgement, band), judgement, grounds, instrument);
  const { sweptFraction, withinLimit } = summary;
  const powered = modes ?? (isLimiting(equipment) ? COMMON_MODES : []);
  const power = summary.best === null ? [] : powersIn(judgement, band, licenceClass, powered, equipment);
  return {
    ...summary,
    verdict: verdictOf(sweptFraction, withinLimit.fraction),
    segments: band.segments.map((segment) => checkSegment(judgement, segment, licenceClass)),
    power,
    feedline: feedline && bandFeedline(judgement.curve, feedline, summary, power),
  };
}

function checkSegment(judgement: Judgement, segment: PlanSegment, licenceClass: string | null): SegmentResult {
  const { use, lowHz, highHz } = segment;
  const piece = { lowHz, highHz };
  const sweptFraction = share(sweptWidthHz(judgement.curve, lowHz, highHz), highHz - lowHz);
  const withinLimitFraction = share(widthWithin(judgement.spans, [piece]), highHz - lowHz);
  const extremes = extremesOver(judgement.trace, [piece]);
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
