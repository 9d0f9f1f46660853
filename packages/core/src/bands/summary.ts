import { type Curve, isVectorCurve } from "../curve/curve.js";
import type { Piece, Span } from "../curve/pieces.js";
import { reflectiveCrossings } from "../curve/resonances.js";
import { type LimitSpan, spanAt, type Trace } from "../curve/trace.js";
import {
  type BandUncertainty,
  bandUncertainty,
  type Grounds,
  type Interval,
} from "../curve/uncertainty/band-uncertainty.js";
import type { Instrument } from "../curve/uncertainty/instrument.js";
import type { UsableBand } from "../facts/band-plan/band-plan.js";
import type { Need } from "../facts/limits.js";
import { reflectionMagnitudeFromSwr, swrFromReflectionMagnitude } from "../reflection/swr.js";
import type { Analysis } from "./analysis.js";
import { impedanceQ } from "./impedance-q.js";
import { type Point, pointAt, pointOn } from "./point.js";
import { reachOf, type TunerSpans, type UsableShares } from "./reach.js";

/** What a curve does within one band. Nothing that was not swept counts as good. */
export interface BandSummary {
  readonly band: string;
  readonly lowHz: number;
  readonly highHz: number;
  /** The parts of the band that were judged: all of it, or what the licence class may use */
  readonly pieces: readonly Piece[];
  /** Share of the usable pieces of the band that was swept, 0 to 1 */
  readonly sweptFraction: number;
  /** The point of least ρ within the swept part; null where nothing was swept, like the next three */
  readonly best: Point | null;
  /** The point of greatest ρ */
  readonly worst: Point | null;
  /** At the band's lower edge; null where that was not swept */
  readonly atLow: Point | null;
  /** At the band's upper edge */
  readonly atHigh: Point | null;
  /** What of the band has an SWR within the limit; its widths in Hz, its fraction 0 to 1 */
  readonly withinLimit: {
    readonly limitSwr: number;
    readonly widthHz: number;
    /** Of the whole usable band, swept or not */
    readonly fraction: number;
    readonly spans: readonly Span[];
  };
  /** Shares of the whole usable band within reach, by means */
  readonly usable: UsableShares;
  /** What each kind of tuner brings within reach */
  readonly tunerSpans: TunerSpans;
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

/**
 * Whether the best point of a band is a dip within it, and not just the edge that lies nearest to one.
 *
 * @param summary of a band, or as much of one
 * @returns false as well where nothing was swept
 */
export const isDip = ({
  best,
  pieces,
}: {
  best: Pick<Point, "frequencyHz"> | null;
  pieces: readonly Piece[];
}): boolean =>
  best !== null && pieces.every(({ lowHz, highHz }) => best.frequencyHz !== lowHz && best.frequencyHz !== highHz);

/** All that a curve does within a band. */
export function summariseBand(analysis: Analysis, band: UsableBand): BandSummary {
  const { curve, trace, limits, spans } = analysis;
  const { sweptFraction, within, widthHz, usable, tunerSpans, extremes, need } = reachOf(analysis, band);
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
    tunerSpans,
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
  { limits }: Analysis,
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
