import type { JudgedBand } from "../band-plan/band-plan.js";
import { CAUTIONS } from "../cautions.js";
import { at } from "../column.js";
import { type Curve, isVectorCurve } from "../curve/curve.js";
import { ASSUMED_NOISE } from "../curve/noise.js";
import { type Finding, finding } from "../finding.js";
import { type JudgingOptions, type PlanInfo, planFindings, planInfo, selectBands } from "../judging.js";
import { DEFAULT_LIMITS, type Limits } from "../limits.js";
import { type BandSummary, type Judgement, judge, summariseBand } from "../summary.js";
import { type Sweep, withReference } from "../sweep.js";
import { type SweepInfo, sweepInfo } from "../sweep-info.js";
import { type Cause, findCauses } from "./causes.js";
import { suspectedLoss } from "./suspected-loss.js";

export type DiffVerdict = "improved" | "worse" | "unchanged" | "mixed" | "not-comparable";

/** Every change is after minus before; null where one of the two is not known. */
export interface Change {
  readonly bestSwr: number | null;
  readonly bestFrequencyHz: number | null;
  readonly withinLimitFraction: number;
  readonly withinLimitWidthHz: number;
  readonly worstSwr: number | null;
}

export interface BandDiff {
  readonly band: string;
  readonly before: BandSummary;
  readonly after: BandSummary;
  readonly change: Change;
  readonly verdict: DiffVerdict;
  /** The verdict's reason, for a person */
  readonly why: string;
}

/** What a change must exceed to count (besides the noise of the two sweeps). */
export interface Thresholds {
  /** Change of ρ: 0.03 tells SWR 1.50 from 1.60, 2.0 from 2.1, 5.0 from 5.6 (our own choice) */
  readonly reflectionMagnitude: number;
  /** Change of the share of a band within the limit (our own choice) */
  readonly fraction: number;
}

export const DEFAULT_THRESHOLDS: Thresholds = { reflectionMagnitude: 0.03, fraction: 0.03 };

export interface DiffResult {
  readonly schema: "feedpoint/diff@1";
  readonly before: readonly SweepInfo[];
  readonly after: readonly SweepInfo[];
  readonly plan: PlanInfo;
  readonly limits: Limits;
  readonly thresholds: Thresholds;
  readonly bands: readonly BandDiff[];
  readonly causes: readonly Cause[];
  readonly findings: readonly Finding[];
  readonly cautions: readonly string[];
}

export interface DiffOptions extends JudgingOptions {
  readonly thresholds?: Thresholds;
}

/** A difference of two points must exceed this many standard deviations of their noise. */
const SIGNIFICANCE = 3;

/** Compares two deployments band by band, on what both sweeps cover, and looks for the cause. */
export function diff(before: Sweep, after: Sweep, options: DiffOptions): DiffResult {
  const { limits = DEFAULT_LIMITS, thresholds = DEFAULT_THRESHOLDS } = options;
  const findings: Finding[] = [];
  const matched = matchReference(after, before.referenceOhms, findings);
  const first = judge(before, limits);
  const second = judge(matched, limits);
  const found = isVectorCurve(first.curve) && isVectorCurve(second.curve) ? findCauses(first.curve, second.curve) : [];
  const causes = found.some(({ confidence }) => confidence === "likely")
    ? found
    : [...found, ...suspectedLoss(first.curve, second.curve)];
  const isBlocked = matched.referenceOhms !== before.referenceOhms;
  const judged = selectBands(options);
  const bands = judged.flatMap((band) => diffBand(band, first, second, thresholds, isBlocked ? null : causes));
  if (bands.length === 0) {
    findings.push(
      finding("problem", "no-overlap", "No band was swept both before and after, so nothing can be compared."),
    );
  }
  if (before.kind === "scalar" || after.kind === "scalar") {
    findings.push(
      finding(
        "info",
        "scalar-comparison",
        "One of the sweeps knows only the size of the reflection, so a change of line or loss cannot be told from a change of the antenna.",
      ),
    );
  }
  const compared = judged.filter(({ band }) => bands.some((result) => result.band === band));
  return {
    schema: "feedpoint/diff@1",
    before: [sweepInfo(before)],
    after: [sweepInfo(after)],
    plan: planInfo(options),
    limits,
    thresholds,
    bands,
    causes,
    findings: [...findings, ...planFindings(options, compared)],
    cautions: CAUTIONS,
  };
}

/** The sweep at another reference impedance; a scalar one cannot be converted and is returned as it is. */
function matchReference(sweep: Sweep, referenceOhms: number, findings: Finding[]): Sweep {
  if (sweep.referenceOhms === referenceOhms) return sweep;
  const canConvert = sweep.kind === "vector";
  findings.push(
    finding(
      canConvert ? "info" : "problem",
      "different-reference",
      canConvert
        ? `The second sweep refers to ${sweep.referenceOhms} Ω; it was converted to the first one's ${referenceOhms} Ω.`
        : `The second sweep refers to ${sweep.referenceOhms} Ω, the first to ${referenceOhms} Ω; without phase they cannot be compared.`,
    ),
  );
  return canConvert ? withReference(sweep, referenceOhms) : sweep;
}

/** @param causes null where the two cannot be compared at all */
function diffBand(
  band: JudgedBand,
  first: Judgement,
  second: Judgement,
  thresholds: Thresholds,
  causes: readonly Cause[] | null,
): BandDiff[] {
  const pieces = commonPieces(band, first.curve, second.curve);
  if (pieces.length === 0) return [];
  const common: JudgedBand = { ...band, pieces };
  const before = summariseBand(first, common);
  const after = summariseBand(second, common);
  const measured = verdictOf(before, after, thresholds, noiseOf(first.curve), noiseOf(second.curve));
  return [{ band: band.band, before, after, change: changeOf(before, after), ...explained(measured, causes) }];
}

/** The parts of a band that both curves know. */
function commonPieces(band: JudgedBand, first: Curve, second: Curve): { lowHz: number; highHz: number }[] {
  const within = (curve: Curve, pieces: readonly { lowHz: number; highHz: number }[]) =>
    pieces.flatMap((piece) =>
      curve.stretches.flatMap((stretch) => {
        const lowHz = Math.max(piece.lowHz, at(curve.sweep.frequencyHz, stretch.first));
        const highHz = Math.min(piece.highHz, at(curve.sweep.frequencyHz, stretch.last));
        return lowHz < highHz ? [{ lowHz, highHz }] : [];
      }),
    );
  return within(second, within(first, band.pieces));
}

function changeOf(before: BandSummary, after: BandSummary): Change {
  const difference = (a: number | undefined, b: number | undefined) =>
    a === undefined || b === undefined || !Number.isFinite(a - b) ? null : a - b;
  return {
    bestSwr: difference(after.best?.swr, before.best?.swr),
    bestFrequencyHz: difference(after.best?.frequencyHz, before.best?.frequencyHz),
    withinLimitFraction: after.withinLimit.fraction - before.withinLimit.fraction,
    withinLimitWidthHz: after.withinLimit.widthHz - before.withinLimit.widthHz,
    worstSwr: difference(after.worst?.swr, before.worst?.swr),
  };
}

interface Judged {
  readonly verdict: DiffVerdict;
  readonly why: string;
}

/** Judges what the operator would notice: the best and the worst point of the band, and how much of it is within the limit. */
function verdictOf(
  before: BandSummary,
  after: BandSummary,
  thresholds: Thresholds,
  noiseBefore: number,
  noiseAfter: number,
): Judged {
  const leastRho = Math.max(thresholds.reflectionMagnitude, SIGNIFICANCE * Math.hypot(noiseBefore, noiseAfter));
  const rho = (summary: BandSummary, which: "best" | "worst") => summary[which]?.reflectionMagnitude ?? Number.NaN;
  const swr = (summary: BandSummary, which: "best" | "worst") => formatSwr(summary[which]?.swr ?? Number.NaN);
  const signs: { better: boolean; text: string }[] = [];
  for (const which of ["best", "worst"] as const) {
    const change = rho(after, which) - rho(before, which);
    if (Math.abs(change) > leastRho) {
      signs.push({ better: change < 0, text: `${which} SWR ${swr(before, which)} → ${swr(after, which)}` });
    }
  }
  const gained = after.withinLimit.fraction - before.withinLimit.fraction;
  if (Math.abs(gained) > thresholds.fraction) {
    const kilohertz = Math.round((after.withinLimit.widthHz - before.withinLimit.widthHz) / 1000);
    signs.push({
      better: gained > 0,
      text: `${Math.abs(kilohertz)} kHz ${gained > 0 ? "more" : "less"} within ${before.withinLimit.limitSwr}:1`,
    });
  }
  if (signs.length === 0)
    return { verdict: "unchanged", why: "no difference beyond noise and what matters in practice" };
  const better = signs.filter((sign) => sign.better).length;
  const verdict = better === signs.length ? "improved" : better === 0 ? "worse" : "mixed";
  return { verdict, why: signs.map(({ text }) => text).join("; ") };
}

/** What the cause makes of a measured verdict: a lower SWR through loss is not better, another place is not comparable. */
function explained(measured: Judged, causes: readonly Cause[] | null): Judged {
  if (causes === null)
    return { verdict: "not-comparable", why: "the sweeps have different reference impedances and no phase" };
  const likely = causes.find(({ confidence }) => confidence === "likely");
  if (likely?.code === "line-length-changed")
    return { verdict: "not-comparable", why: "taken at another place on the line" };
  if (likely?.code === "reference-changed") return { verdict: "not-comparable", why: "another reference impedance" };
  if (likely?.code === "loss-added" && measured.verdict !== "unchanged") {
    return { verdict: "worse", why: `more loss on the way; ${measured.why}` };
  }
  if (likely?.code === "loss-removed" && measured.verdict !== "unchanged") {
    return { verdict: "improved", why: `less loss on the way; ${measured.why}` };
  }
  const suspected = causes.find(({ code }) => code === "loss-added" || code === "loss-removed")?.code;
  if (suspected === "loss-added" && measured.verdict === "improved") {
    return { verdict: "mixed", why: `lower SWR, but perhaps only by loss; ${measured.why}` };
  }
  if (suspected === "loss-removed" && measured.verdict === "worse") {
    return { verdict: "mixed", why: `higher SWR, but perhaps only because less is lost; ${measured.why}` };
  }
  return measured;
}

const noiseOf = ({ noise }: Curve) => noise ?? ASSUMED_NOISE;
const formatSwr = (swr: number) => (swr === Number.POSITIVE_INFINITY ? "∞" : swr.toFixed(2));
