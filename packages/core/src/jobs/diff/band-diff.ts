import { answeringOn, knownIn, type Part } from "../../bands/parts.js";
import { scatterOn } from "../../bands/scatter.js";
import { type BandSummary, type Summarised, summarised } from "../../bands/summary.js";
import { withUncertainty } from "../../bands/sureness.js";
import { ASSUMED_NOISE } from "../../curve/noise/noise.js";
import { clipSpans, joinPieces, type Piece, type Span } from "../../curve/pieces.js";
import type { Instrument } from "../../curve/uncertainty/instrument.js";
import type { UsableBand } from "../../facts/band-plan/band-plan.js";
import type { Limits } from "../../facts/limits.js";
import { fractionSign, magnitudeSign, readingSign, type Thresholds } from "./band-signs.js";
import type { Cause } from "./cause.js";
import { groupChange } from "./repeats.js";
import type { Side } from "./sides.js";
import { type DiffVerdict, explained, type ReasonedVerdict, verdictOf } from "./verdict.js";

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
  /** Changed by no more than putting the same antenna up again is assumed to do: repeats would tell */
  readonly isPerhaps: boolean;
}

/**
 * Compares a band on what all the sweeps know of it.
 *
 * @param scatter what one sweep a side is assumed to differ by from the next, in Γ; null where repeats tell it
 * @param causes null where the two cannot be compared at all
 * @returns null where they have nothing of the band in common
 */
export function diffBand(
  band: UsableBand,
  first: Side,
  second: Side,
  {
    thresholds,
    instrument,
    limits,
    scatter,
  }: { thresholds: Thresholds; instrument: Instrument | null; limits: Limits; scatter: number | null },
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
      magnitudeSign(which, befores, afters, { before, after }, { noise, instrument, thresholds, scatter }),
    );
    return explained(
      verdictOf(points, fractionSign(befores, afters, { before, after }, { thresholds, scatter })),
      causes,
    );
  };
  return { band: band.band, before, after, change: changeOf(befores, afters, before, after), ...reasoned() };
}

const summariesOf = (all: readonly Summarised[]): readonly BandSummary[] => all.map(({ summary }) => summary);

const INCOMPARABLE: ReasonedVerdict = {
  verdict: "not-comparable",
  why: "the sweeps have different reference impedances and no phase",
  isHidden: false,
  isPerhaps: false,
};

/** Of some pieces what the parts of a deployment know. */
function piecesKnown(parts: readonly Part[], pieces: readonly Piece[]): readonly Piece[] {
  return joinPieces(
    answeringOn(parts, pieces).flatMap(({ part, pieces: own }) => own.flatMap((piece) => knownIn(part, piece))),
  );
}

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
