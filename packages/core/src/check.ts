import {
  type BandPlan,
  type Emission,
  emissionsIn,
  type JudgedBand,
  judgedBands,
  type PlanSegment,
} from "./band-plan/band-plan.js";
import { COMMON_PLAN_ID } from "./band-plan/plans.js";
import { CAUTIONS } from "./cautions.js";
import { sweptWidthHz } from "./curve/trace.js";
import { type Finding, finding } from "./finding.js";
import { DEFAULT_LIMITS, type Limits } from "./limits.js";
import { lossBound } from "./loss-bound.js";
import { extremesOver, share, widthWithin } from "./pieces.js";
import { swrFromReflectionMagnitude } from "./reflection.js";
import { samplingFindings, spikeFindings } from "./sampling.js";
import { type BandSummary, type Judgement, judge, summariseBand, withUncertainty } from "./summary.js";
import type { Sweep } from "./sweep.js";
import { type SweepInfo, sweepInfo } from "./sweep-info.js";
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
}

/** What identifies a plan in a result. */
export interface PlanInfo extends Pick<BandPlan, "id" | "title" | "edition" | "source"> {
  readonly licenceClass: string | null;
}

export interface CheckResult {
  readonly schema: "feedpoint/check@1";
  readonly sweep: SweepInfo;
  readonly plan: PlanInfo;
  readonly limits: Limits;
  readonly bands: readonly BandResult[];
  readonly findings: readonly Finding[];
  readonly cautions: readonly string[];
}

export interface CheckOptions {
  readonly plan: BandPlan;
  /** null: the whole of each band, whatever the class */
  readonly licenceClass?: string | null;
  /** Names of the bands wanted; all of the plan where absent */
  readonly bands?: readonly string[];
  readonly limits?: Limits;
  /** The analyser's own errors, where they are known */
  readonly instrument?: Instrument | null;
}

/** Where the sweep allows more loss than this on the way to the antenna, loss may be what lowers the SWR (our own choice). */
const HIDING_LOSS_DB = 1;

/** Judges a sweep against a band plan: what it does on each band and segment, and what that takes to transmit. */
export function check(sweep: Sweep, options: CheckOptions): CheckResult {
  const { plan, licenceClass = null, limits = DEFAULT_LIMITS, instrument = null } = options;
  const judgement = judge(sweep, limits);
  const selected = selectBands(plan, licenceClass, options.bands);
  const grounds = groundsOf(judgement.trace);
  const bands = selected.map((band) => ({
    band,
    result: checkBand(judgement, band, licenceClass, grounds, instrument),
  }));
  return {
    schema: "feedpoint/check@1",
    sweep: sweepInfo(sweep),
    plan: planInfo(plan, licenceClass),
    limits,
    bands: bands.map(({ result }) => result),
    findings: [
      ...planFindings(
        plan,
        licenceClass,
        bands.filter(({ result }) => result.best !== null).map(({ band }) => band),
      ),
      ...closedBands(options, selected),
      ...spikeFindings(judgement.curve),
      ...bands.flatMap(({ band, result }) => samplingFindings(judgement, band, result)),
      ...lossFindings(sweep),
      ...referenceFindings(sweep),
    ],
    cautions: CAUTIONS,
  };
}

/** The bands of a plan that were asked for, in the plan's order. */
export function selectBands(
  plan: BandPlan,
  licenceClass: string | null,
  names?: readonly string[],
): readonly JudgedBand[] {
  const all = judgedBands(plan, licenceClass);
  return names === undefined ? all : all.filter(({ band }) => names.includes(band));
}

/** Bands asked for that the licence class may not use. */
function closedBands({ bands = [], licenceClass }: CheckOptions, open: readonly JudgedBand[]): readonly Finding[] {
  return bands
    .filter((name) => !open.some(({ band }) => band === name))
    .map((band) =>
      finding(
        "problem",
        "band-not-permitted",
        licenceClass ? `Class ${licenceClass} has no privileges on ${band}.` : `The plan has no band ${band}.`,
        { band },
      ),
    );
}

export function planInfo(plan: BandPlan, licenceClass: string | null): PlanInfo {
  const { id, title, edition, source } = plan;
  return { id, title, edition, source, licenceClass };
}

function checkBand(
  judgement: Judgement,
  band: JudgedBand,
  licenceClass: string | null,
  grounds: Grounds | null,
  instrument: Instrument | null,
): BandResult {
  const summary = withUncertainty(summariseBand(judgement, band), judgement, grounds, instrument);
  const { sweptFraction, withinLimit } = summary;
  return {
    ...summary,
    verdict: verdictOf(sweptFraction, withinLimit.fraction),
    segments: band.segments.map((segment) => checkSegment(judgement, segment, licenceClass)),
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

/** What the choice of plan and class leaves open. */
export function planFindings(
  plan: BandPlan,
  licenceClass: string | null,
  judged: readonly JudgedBand[],
): readonly Finding[] {
  const findings: Finding[] = [];
  if (plan.id === COMMON_PLAN_ID) {
    findings.push(
      finding(
        "info",
        "plan-common",
        "No band plan was chosen, so only what all three ITU Regions have in common was judged. Choose yours with --plan.",
      ),
    );
  }
  if (plan.classes !== undefined && licenceClass === null) {
    findings.push(
      finding(
        "caution",
        "class-not-stated",
        `Judged for every licence class together. Say which is yours with --class (${plan.classes.join(", ")}).`,
      ),
    );
  }
  for (const { band, segments } of judged) {
    if (segments.every(({ confirmed }) => confirmed)) continue;
    findings.push(
      finding("caution", "plan-from-memory", `The plan's ${band} edges could not all be confirmed from a source.`, {
        band,
      }),
    );
  }
  return findings;
}

/** What radios are made for; Ω (common practice, no source) */
const RADIO_OHMS = 50;

function referenceFindings({ referenceOhms }: Sweep): readonly Finding[] {
  if (referenceOhms === RADIO_OHMS) return [];
  const message = `SWR here is against the ${referenceOhms} Ω of the file; a radio made for ${RADIO_OHMS} Ω sees another SWR. Say --system-ohms ${RADIO_OHMS} to judge for that.`;
  return [finding("problem", "reference-not-50", message)];
}

/** What the sweep itself says about loss on the way to the antenna. */
function lossFindings(sweep: Sweep): readonly Finding[] {
  const bound = lossBound(sweep);
  if (bound === null) return [];
  const text = `Between analyser and antenna at most ${bound.lossDb.toFixed(1)} dB is lost one way near ${(bound.frequencyHz / 1e6).toFixed(1)} MHz (half of the return loss there; more at higher frequencies).`;
  if (bound.lossDb <= HIDING_LOSS_DB) return [finding("info", "loss-bound", text)];
  return [
    finding(
      "caution",
      "low-swr-may-be-loss",
      `Nowhere in this sweep is the SWR above ${swrFromReflectionMagnitude(bound.reflectionMagnitude).toFixed(1)}: that may be loss (a long, old or wet feedline, a poor joint), not a good antenna. ${text}`,
    ),
  ];
}
