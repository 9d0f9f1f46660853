import type { JudgedBand } from "./band-plan/band-plan.js";
import { type Curve, curveOf, isVectorCurve, reflectionAt, reflectionMagnitudeAt } from "./curve/curve.js";
import { reflectiveCrossings } from "./curve/resonances.js";
import {
  type CurvePoint,
  isBeyondScale,
  type LimitSpan,
  spanAt,
  spansWithin,
  sweptWidthHz,
  type Trace,
  traceOf,
} from "./curve/trace.js";
import { impedanceQ } from "./impedance-q.js";
import { type Limits, type Need, needFor } from "./limits.js";
import { clipSpans, extremesOver, type Piece, type Span, share, totalWidth, widthOf, widthWithin } from "./pieces.js";
import {
  impedanceFromReflection,
  reflectionMagnitudeFromSwr,
  returnLossDb,
  swrFromReflectionMagnitude,
} from "./reflection.js";
import type { Sweep } from "./sweep.js";
import { type BandUncertainty, bandUncertainty, type Grounds, type Interval } from "./uncertainty/band-uncertainty.js";
import type { Instrument } from "./uncertainty/instrument.js";

/** A point on the curve. Resistance and reactance are null for a scalar sweep. */
export interface Point {
  readonly frequencyHz: number;
  /** Infinity where ρ ≥ 1 */
  readonly swr: number;
  /** Whether the instrument's scale ended there, so that SWR and ρ are at least this */
  readonly isAtLeast: boolean;
  readonly returnLossDb: number;
  readonly reflectionMagnitude: number;
  readonly resistanceOhms: number | null;
  readonly reactanceOhms: number | null;
  /** Both ends of what the SWR may be (95 %), where that is told: at the best and the worst point of a band */
  readonly swrLow?: number;
  readonly swrHigh?: number;
}

/** What a curve does within one band. Nothing that was not swept counts as good. */
export interface BandSummary {
  readonly band: string;
  readonly lowHz: number;
  readonly highHz: number;
  /** The parts of the band that were judged: all of it, or what the licence class may use */
  readonly pieces: readonly Piece[];
  /** Share of the usable pieces of the band that was swept, 0 to 1 */
  readonly sweptFraction: number;
  /** Least ρ within the swept part; null where nothing was swept, like the next three */
  readonly best: Point | null;
  readonly worst: Point | null;
  readonly atLow: Point | null;
  readonly atHigh: Point | null;
  readonly withinLimit: {
    readonly limitSwr: number;
    readonly widthHz: number;
    /** Of the whole usable band, swept or not */
    readonly fraction: number;
    readonly spans: readonly Span[];
  };
  /** Shares of the whole usable band within reach, by means */
  readonly usable: {
    readonly withoutTuner: number;
    readonly withBuiltInTuner: number;
    readonly withWideRangeTuner: number;
  };
  /** The span around the best point with SWR within the limit, band edges ignored; null where the best is not within */
  readonly bandwidth: Span | null;
  /** Where the reactance is 0 within the band; empty for a scalar sweep */
  readonly resonances: readonly Point[];
  /**
   * Loaded Q of the dip. With u = 1 / (1 - ρ²), a single resonance gives u / u_best = 1 + (2 Q δ)², so the bandwidth at
   * the limit yields Q whatever the match at the best point is. Null where the bandwidth is open or there is none.
   */
  readonly loadedQ: number | null;
  /** Q from the impedance at the resonance nearest to the best point; null for a scalar sweep and without a resonance */
  readonly impedanceQ: number | null;
  /** What the worst swept point needs */
  readonly need: Need;
  /** How sure all this is; null where it was not asked for or the samples are too few */
  readonly uncertainty: BandUncertainty | null;
}

/** Whether the best point of a band is a dip within it, and not just the edge that lies nearest to one. */
export const isDip = ({
  best,
  pieces,
}: {
  best: Pick<Point, "frequencyHz"> | null;
  pieces: readonly Piece[];
}): boolean =>
  best !== null && pieces.every(({ lowHz, highHz }) => best.frequencyHz !== lowHz && best.frequencyHz !== highHz);

/** A trace and the spans within each limit, found once and shared by all bands. */
export interface Judgement {
  readonly curve: Curve;
  readonly trace: Trace;
  readonly limits: Limits;
  /** Spans over the whole sweep with SWR within `limits.swr`, and within what each kind of tuner matches */
  readonly spans: readonly LimitSpan[];
  readonly builtInTunerSpans: readonly LimitSpan[];
  readonly wideRangeTunerSpans: readonly LimitSpan[];
}

/** Prepares a sweep for being summarised, band after band. */
export function judge(sweep: Sweep, limits: Limits): Judgement {
  const curve = curveOf(sweep);
  const trace = traceOf(curve);
  const within = (swr: number) => spansWithin(trace, reflectionMagnitudeFromSwr(swr));
  return {
    curve,
    trace,
    limits,
    spans: within(limits.swr),
    builtInTunerSpans: within(limits.builtInTunerSwr),
    wideRangeTunerSpans: within(limits.wideRangeTunerSwr),
  };
}

/** What of a band was swept and can be used: all that a grade needs, and the ground of a summary. */
export interface BandReach extends Pick<BandSummary, "pieces" | "sweptFraction" | "usable" | "need"> {
  /** Within the limit */
  readonly within: readonly Span[];
  readonly widthHz: number;
  /** null where nothing was swept */
  readonly extremes: { readonly best: CurvePoint; readonly worst: CurvePoint } | null;
}

export function reachOf(judgement: Judgement, { pieces }: JudgedBand): BandReach {
  const { curve, trace, spans } = judgement;
  const usableHz = totalWidth(pieces);
  const sweptHz = pieces.reduce((sum, { lowHz, highHz }) => sum + sweptWidthHz(curve, lowHz, highHz), 0);
  const within = pieces.flatMap((piece) => clipSpans(spans, piece));
  const widthHz = widthOf(within);
  const shareOf = (all: readonly LimitSpan[]) => share(widthWithin(all, pieces), usableHz);
  const extremes = extremesOver(trace, pieces);
  return {
    pieces,
    sweptFraction: share(sweptHz, usableHz),
    within,
    widthHz,
    usable: {
      withoutTuner: share(widthHz, usableHz),
      withBuiltInTuner: shareOf(judgement.builtInTunerSpans),
      withWideRangeTuner: shareOf(judgement.wideRangeTunerSpans),
    },
    extremes,
    need: needOf(judgement, extremes?.worst ?? null),
  };
}

/** What a point on the curve needs; null (not swept) is unknown, and so is what "at least" an SWR within reach may need. */
export function needOf({ curve, limits }: Judgement, point: CurvePoint | null): Need {
  const need = needFor(point && swrFromReflectionMagnitude(point.reflectionMagnitude), limits);
  const isKnown = point === null || need === "beyond-tuner" || !isBeyondScale(curve, point.reflectionMagnitude);
  return isKnown ? need : "unknown";
}

export function summariseBand(judgement: Judgement, band: JudgedBand): BandSummary {
  const { curve, trace, limits, spans } = judgement;
  const { sweptFraction, within, widthHz, usable, extremes, need } = reachOf(judgement, band);
  const bandwidth = extremes === null ? null : spanAround(spans, extremes.best.frequencyHz);
  const resonances = extremes === null ? [] : resonancesIn(trace, band.pieces);
  return {
    band: band.band,
    lowHz: band.lowHz,
    highHz: band.highHz,
    pieces: band.pieces,
    sweptFraction,
    best: extremes && pointOn(curve, extremes.best),
    worst: extremes && pointOn(curve, extremes.worst),
    atLow: extremes && pointAt(curve, band.lowHz),
    atHigh: extremes && pointAt(curve, band.highHz),
    withinLimit: { limitSwr: limits.swr, widthHz, fraction: usable.withoutTuner, spans: within },
    usable,
    bandwidth,
    resonances,
    impedanceQ: extremes === null ? null : qNearest(curve, resonances, extremes.best.frequencyHz),
    loadedQ: extremes === null ? null : loadedQ(bandwidth, extremes.best.reflectionMagnitude, limits.swr),
    need,
    uncertainty: null,
  };
}

/** The same summary with both ends of what its numbers may be. Costs some dozens of times the summary itself. */
export function withUncertainty(
  summary: BandSummary,
  { limits }: Judgement,
  grounds: Grounds | null,
  instrument: Instrument | null,
): BandSummary {
  const { best, worst, pieces, bandwidth } = summary;
  // Where even the best point is beyond any tuner, nobody needs to know by how much.
  if (grounds === null || best === null || worst === null || best.swr > limits.wideRangeTunerSwr) return summary;
  const limit = reflectionMagnitudeFromSwr(limits.swr);
  const uncertainty = bandUncertainty(grounds, pieces, limit, best.frequencyHz, bandwidth, instrument);
  if (uncertainty === null) return summary;
  const between = ({ low, high }: Interval) => ({
    swrLow: swrFromReflectionMagnitude(low),
    swrHigh: swrFromReflectionMagnitude(high),
  });
  return {
    ...summary,
    best: { ...best, ...between(uncertainty.bestMagnitude) },
    worst: { ...worst, ...between(uncertainty.worstMagnitude) },
    uncertainty,
  };
}

function qNearest(curve: Curve, resonances: readonly Point[], frequencyHz: number): number | null {
  const [first, ...others] = resonances.map((point) => point.frequencyHz);
  if (first === undefined || !isVectorCurve(curve)) return null;
  const distance = (candidate: number) => Math.abs(candidate - frequencyHz);
  return impedanceQ(
    curve,
    others.reduce((best, next) => (distance(next) < distance(best) ? next : best), first),
  );
}

/** The curve at a frequency; null where nothing was swept. */
export function pointAt(curve: Curve, frequencyHz: number): Point | null {
  const reflectionMagnitude = reflectionMagnitudeAt(curve, frequencyHz);
  return Number.isNaN(reflectionMagnitude) ? null : pointOn(curve, { frequencyHz, reflectionMagnitude });
}

function pointOn(curve: Curve, { frequencyHz, reflectionMagnitude }: CurvePoint): Point {
  const reflection = reflectionAt(curve, frequencyHz);
  const impedance = reflection && impedanceFromReflection(reflection, curve.sweep.referenceOhms);
  return {
    frequencyHz,
    swr: swrFromReflectionMagnitude(reflectionMagnitude),
    isAtLeast: isBeyondScale(curve, reflectionMagnitude),
    returnLossDb: returnLossDb(reflectionMagnitude),
    reflectionMagnitude,
    resistanceOhms: impedance?.real ?? null,
    reactanceOhms: impedance?.imaginary ?? null,
  };
}

function spanAround(spans: readonly LimitSpan[], frequencyHz: number): Span | null {
  const span = spanAt(spans, frequencyHz);
  return span === undefined ? null : { ...span, widthHz: span.highHz - span.lowHz };
}

function resonancesIn(trace: Trace, pieces: readonly Piece[]): Point[] {
  return pieces
    .flatMap(({ lowHz, highHz }) => reflectiveCrossings(trace, lowHz, highHz))
    .map((frequencyHz) => pointAt(trace.curve, frequencyHz))
    .filter((point) => point !== null);
}

function loadedQ(bandwidth: Span | null, bestMagnitude: number, limitSwr: number): number | null {
  if (bandwidth === null || bandwidth.openLow || bandwidth.openHigh) return null;
  const atLimit = (2 + limitSwr + 1 / limitSwr) / 4;
  const rise = atLimit * (1 - bestMagnitude * bestMagnitude) - 1;
  if (!(rise > 0)) return null;
  return (Math.sqrt(rise) * Math.sqrt(bandwidth.lowHz * bandwidth.highHz)) / bandwidth.widthHz;
}
