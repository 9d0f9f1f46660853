import { answeringOn, knownIn, type Part } from "../../bands/parts.js";
import { scatterOn } from "../../bands/scatter.js";
import { type BandSummary, type Summarised, summarised } from "../../bands/summary.js";
import { withUncertainty } from "../../bands/sureness.js";
import { ASSUMED_NOISE } from "../../curve/noise/noise.js";
import { clipSpans, joinPieces, type Piece, type Span, totalWidth } from "../../curve/pieces.js";
import { type Instrument, instrumentError } from "../../curve/uncertainty/instrument.js";
import type { UsableBand } from "../../facts/band-plan/band-plan.js";
import type { Limits } from "../../facts/limits.js";
import type { Cause } from "./cause.js";
import { type GroupChange, groupChange } from "./repeats.js";
import type { Side } from "./sides.js";
import { type DiffVerdict, explained, HIDDEN, type ReasonedVerdict, type Seen, verdictOf } from "./verdict.js";

/**
 * Every change is after minus before, of means where there are repeats; null where one of the two is not known.
 */
export interface Change {
  readonly bestSwr: number | null;
  readonly bestFrequencyHz: number | null;
  /** Of the part of the band that all sweeps cover */
  readonly withinLimitFraction: number;
  readonly withinLimitWidthHz: number;
  readonly worstSwr: number | null;
  /** Lower edge of the span around the best point; null where one of the two has no such edge */
  readonly lowEdgeHz: number | null;
  /** Upper edge of it; null likewise */
  readonly highEdgeHz: number | null;
  /** Width that came within the limit, Hz */
  readonly gainedHz: number;
  /** Width that left it, Hz */
  readonly lostHz: number;
}

/** What changed on one band, as far as all sweeps cover it. */
export interface BandDiff {
  readonly band: string;
  /** Of repeats the one that lies closest to all others */
  readonly before: BandSummary;
  /** The same of the sweeps after */
  readonly after: BandSummary;
  /** After minus before */
  readonly change: Change;
  /** What that means for the operator */
  readonly verdict: DiffVerdict;
  /** The verdict's reason, for a person */
  readonly why: string;
  /** Unchanged only because the sweeps of one side differ so much among themselves that nothing can be told */
  readonly isHidden: boolean;
}

/** What a change must exceed to count, besides noise, instrument and the scatter of repeats. */
export interface Thresholds {
  /** Change of ρ: 0.03 tells SWR 1.50 from 1.60, 2.0 from 2.1, 5.0 from 5.6 (our own choice) */
  readonly reflectionMagnitude: number;
  /** Change of the share of a band within the limit (our own choice) */
  readonly fraction: number;
  /** Change of an SWR read off a scale by eye (common practice, no source) */
  readonly readingSwr: number;
}

/** The thresholds where nobody states others: 0.03 of ρ, 0.03 of the band, 0.2 of a reading. */
export const DEFAULT_THRESHOLDS: Thresholds = { reflectionMagnitude: 0.03, fraction: 0.03, readingSwr: 0.2 };

/** A difference of two points must exceed this many standard deviations of their noise. */
const SIGNIFICANCE = 3;
/** The same on intervals, which reach out 1.96 standard deviations and hold a band's best and worst point as a whole. */
const INTERVAL_SIGNIFICANCE = SIGNIFICANCE / 1.96;

/**
 * Compares a band on what all the sweeps know of it.
 *
 * @param causes null where the two cannot be compared at all
 * @returns null where they have nothing of the band in common
 */
export function diffBand(
  band: UsableBand,
  first: Side,
  second: Side,
  { thresholds, instrument, limits }: { thresholds: Thresholds; instrument: Instrument | null; limits: Limits },
  causes: readonly Cause[] | null,
): BandDiff | null {
  const pieces = [...first.all, ...second.all].reduce<readonly Piece[]>(
    (common, { parts }) => piecesKnown(parts, common),
    band.pieces,
  );
  if (pieces.length === 0) return null;
  const common: UsableBand = { ...band, pieces };
  const all = (side: Side) =>
    side.all.map(({ parts }) => summarised(answeringOn(parts, common.pieces), common, limits));
  const middleOf = ({ all, middle }: Side, ofSide: readonly Summarised[]) =>
    withUncertainty(ofSide[all.indexOf(middle)] as Summarised, answeringOn(middle.parts, common.pieces), limits, {
      instrument,
      scatter: scatterOn(middle.overlaps, band),
    });
  const [summarisedBefore, summarisedAfter] = [all(first), all(second)];
  const [before, after] = [middleOf(first, summarisedBefore), middleOf(second, summarisedAfter)];
  const [befores, afters] = [summariesOf(summarisedBefore), summariesOf(summarisedAfter)];
  const reasoned = (): ReasonedVerdict => {
    if (causes === null) return INCOMPARABLE;
    if (before.restsOn !== "curve" || after.restsOn !== "curve")
      return verdictOf([readingSign(befores, afters, thresholds)], null);
    const noise = Math.hypot(noiseToReckonWith(first), noiseToReckonWith(second));
    const points = (["best", "worst"] as const).map((which) =>
      magnitudeSign(which, befores, afters, { before, after }, { noise, instrument, thresholds }),
    );
    return explained(verdictOf(points, fractionSign(befores, afters, { before, after }, thresholds)), causes);
  };
  return { band: band.band, before, after, change: changeOf(befores, afters, before, after), ...reasoned() };
}

const summariesOf = (all: readonly Summarised[]): readonly BandSummary[] => all.map(({ summary }) => summary);

const INCOMPARABLE: ReasonedVerdict = {
  verdict: "not-comparable",
  why: "the sweeps have different reference impedances and no phase",
  isHidden: false,
};

/** Of some pieces what the parts of a deployment know. */
function piecesKnown(parts: readonly Part[], pieces: readonly Piece[]): readonly Piece[] {
  return joinPieces(
    answeringOn(parts, pieces).flatMap(({ part, pieces: own }) => own.flatMap((piece) => knownIn(part, piece))),
  );
}

/** Whether what was noted by hand changed: where the ranges do not touch, by more than a reading off a scale is sure to. */
function readingSign(
  befores: readonly BandSummary[],
  afters: readonly BandSummary[],
  { readingSwr }: Thresholds,
): Seen {
  const [before, after] = [rangeOf(befores), rangeOf(afters)];
  const isBetter = after.high < before.low - readingSwr;
  const isWorse = after.low > before.high + readingSwr;
  return isBetter || isWorse
    ? { isBetter, text: `SWR ${rangeText(before)} → ${rangeText(after)}, from readings` }
    : null;
}

interface SwrRange {
  readonly low: number;
  readonly high: number;
}

/** From the least to the greatest SWR of a side; what means "more than" has no end. */
function rangeOf(summaries: readonly BandSummary[]): SwrRange {
  const lows = summaries.map(({ best }) => best?.swr ?? Number.NaN);
  const highs = summaries.map(({ worst }) =>
    worst?.isAtLeast ? Number.POSITIVE_INFINITY : (worst?.swr ?? Number.NaN),
  );
  return { low: Math.min(...lows), high: Math.max(...highs) };
}

const rangeText = ({ low, high }: SwrRange): string => {
  if (high === Number.POSITIVE_INFINITY) return `≥${formatSwr(low)}`;
  return low === high ? formatSwr(low) : `${formatSwr(low)}-${formatSwr(high)}`;
};

interface Middles {
  readonly before: BandSummary;
  readonly after: BandSummary;
}

/** Whether the best or the worst point changed beyond noise, instrument, scatter and what matters; null where it did not. */
function magnitudeSign(
  which: "best" | "worst",
  befores: readonly BandSummary[],
  afters: readonly BandSummary[],
  { before, after }: Middles,
  { noise, instrument, thresholds }: { noise: number; instrument: Instrument | null; thresholds: Thresholds },
): Seen {
  const rho = (summary: BandSummary) => summary[which]?.reflectionMagnitude ?? Number.NaN;
  const group = groupChange(befores.map(rho), afters.map(rho));
  const { change } = group;
  const systematic =
    instrument === null
      ? 0
      : Math.max(instrumentError(rho(before), instrument), instrumentError(rho(after), instrument));
  const half = (summary: BandSummary) => {
    const { uncertainty } = summary;
    const interval = which === "best" ? uncertainty?.bestMagnitude : uncertainty?.worstMagnitude;
    // What means "at least" is open on the side that does not matter here.
    return interval === undefined || summary[which]?.isAtLeast ? 0 : (interval.high - interval.low) / 2;
  };
  const unsure = Math.max(SIGNIFICANCE * noise, INTERVAL_SIGNIFICANCE * Math.hypot(half(before), half(after)));
  // From "at least" it can only be told to have fallen, to "at least" only to have risen.
  if ((before[which]?.isAtLeast && !(change < 0)) || (after[which]?.isAtLeast && !(change > 0))) return null;
  const counts = Math.max(thresholds.reflectionMagnitude, unsure, systematic);
  if (isHidden(group, counts)) return HIDDEN;
  if (!(Math.abs(change) > counts)) return null;
  const swr = (summary: BandSummary) =>
    `${summary[which]?.isAtLeast ? "≥" : ""}${formatSwr(summary[which]?.swr ?? Number.NaN)}`;
  return { isBetter: change < 0, text: `${which} SWR ${swr(before)} → ${swr(after)}` };
}

/** Whether the share within the limit changed in the same sense. */
function fractionSign(
  befores: readonly BandSummary[],
  afters: readonly BandSummary[],
  { before, after }: Middles,
  thresholds: Thresholds,
): Seen {
  const fraction = ({ withinLimit }: BandSummary) => withinLimit.fraction;
  const group = groupChange(befores.map(fraction), afters.map(fraction));
  const { change } = group;
  const half = ({ uncertainty, pieces }: BandSummary) =>
    uncertainty === null ? 0 : (uncertainty.withinHz.high - uncertainty.withinHz.low) / 2 / totalWidth(pieces);
  const counts = Math.max(thresholds.fraction, Math.hypot(half(before), half(after)));
  if (isHidden(group, counts)) return HIDDEN;
  if (!(Math.abs(change) > counts)) return null;
  const kilohertz = Math.round((change * totalWidth(before.pieces)) / 1000);
  return {
    isBetter: change > 0,
    text: `${Math.abs(kilohertz)} kHz ${change > 0 ? "more" : "less"} within ${before.withinLimit.limitSwr}:1`,
  };
}

/** Whether the repeats scatter so that a change which counts may be made by it, or lie in it unseen. */
const isHidden = ({ change, margin, scatter }: GroupChange, counts: number): boolean =>
  Math.abs(change) <= margin && Math.max(Math.abs(change), scatter) > counts;

function changeOf(
  befores: readonly BandSummary[],
  afters: readonly BandSummary[],
  before: BandSummary,
  after: BandSummary,
): Change {
  const ofMeans = (value: (summary: BandSummary) => number | undefined) => {
    const numbers = (group: readonly BandSummary[]) => group.map((summary) => value(summary) ?? Number.NaN);
    const { change } = groupChange(numbers(befores), numbers(afters));
    return Number.isFinite(change) ? change : null;
  };
  const edge = (which: "low" | "high") =>
    ofMeans(({ bandwidth }) => {
      if (bandwidth === null || (which === "low" ? bandwidth.openLow : bandwidth.openHigh)) return undefined;
      return which === "low" ? bandwidth.lowHz : bandwidth.highHz;
    });
  return {
    bestSwr: ofMeans(({ best }) => best?.swr),
    bestFrequencyHz: ofMeans(({ best }) => best?.frequencyHz),
    withinLimitFraction: ofMeans(({ withinLimit }) => withinLimit.fraction) ?? 0,
    withinLimitWidthHz: ofMeans(({ withinLimit }) => withinLimit.widthHz) ?? 0,
    worstSwr: ofMeans(({ worst }) => worst?.swr),
    lowEdgeHz: edge("low"),
    highEdgeHz: edge("high"),
    gainedHz: widthOutside(after.withinLimit.spans, before.withinLimit.spans),
    lostHz: widthOutside(before.withinLimit.spans, after.withinLimit.spans),
  };
}

/** Width of some spans that lies outside others, Hz. */
function widthOutside(spans: readonly Span[], others: readonly Span[]): number {
  return spans.reduce(
    (sum, span) => sum + span.widthHz - clipSpans(others, span).reduce((inside, { widthHz }) => inside + widthHz, 0),
    0,
  );
}

/** Noise of a side, where the sweep does not tell it the usual one. */
const noiseToReckonWith = ({ middle }: Side) => middle.curve?.noise ?? ASSUMED_NOISE;
const formatSwr = (swr: number) => (swr === Number.POSITIVE_INFINITY ? "∞" : swr.toFixed(2));
