import type { JudgedBand } from "./band-plan/band-plan.js";
import { type Curve, curveOf, reflectionAt, reflectionMagnitudeAt } from "./curve/curve.js";
import { reflectiveCrossings } from "./curve/resonances.js";
import {
  type CurvePoint,
  extremesBetween,
  type LimitSpan,
  spansWithin,
  sweptWidthHz,
  type Trace,
  traceOf,
} from "./curve/trace.js";
import { type Limits, type Need, needFor } from "./limits.js";
import {
  impedanceFromReflection,
  reflectionMagnitudeFromSwr,
  returnLossDb,
  swrFromReflectionMagnitude,
} from "./reflection.js";
import type { Sweep } from "./sweep.js";

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
}

/** A span of frequency; `open…` where the sweep ended, or a gap began, before the limit was met. */
export interface Span extends LimitSpan {
  readonly widthHz: number;
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
  /** The span around the best point with SWR within the limit, band edges ignored; null where the best is not within */
  readonly bandwidth: Span | null;
  /** Where the reactance is 0 within the band; empty for a scalar sweep */
  readonly resonances: readonly Point[];
  /**
   * Loaded Q of the dip. With u = 1 / (1 - ρ²), a single resonance gives u / u_best = 1 + (2 Q δ)², so the bandwidth at
   * the limit yields Q whatever the match at the best point is. Null where the bandwidth is open or there is none.
   */
  readonly loadedQ: number | null;
  /** What the worst swept point needs */
  readonly need: Need;
}

/** A trace and the spans within each limit, found once and shared by all bands. */
export interface Judgement {
  readonly curve: Curve;
  readonly trace: Trace;
  readonly limits: Limits;
  /** Spans over the whole sweep with SWR within `limits.swr` */
  readonly spans: readonly LimitSpan[];
}

/** Prepares a sweep for being summarised, band after band. */
export function judge(sweep: Sweep, limits: Limits): Judgement {
  const curve = curveOf(sweep);
  const trace = traceOf(curve);
  return { curve, trace, limits, spans: spansWithin(trace, reflectionMagnitudeFromSwr(limits.swr)) };
}

/** A frequency span as a band, or a part of one. */
export interface Piece {
  readonly lowHz: number;
  readonly highHz: number;
}

export function summariseBand(judgement: Judgement, band: JudgedBand): BandSummary {
  const { curve, trace, limits, spans } = judgement;
  const usableHz = totalWidth(band.pieces);
  const sweptHz = band.pieces.reduce((sum, { lowHz, highHz }) => sum + sweptWidthHz(curve, lowHz, highHz), 0);
  const within = band.pieces.flatMap((piece) => clipSpans(spans, piece));
  const widthHz = within.reduce((sum, span) => sum + span.widthHz, 0);
  const extremes = extremesOver(trace, band.pieces);
  const bandwidth = extremes === null ? null : spanAround(spans, extremes.best.frequencyHz);
  return {
    band: band.band,
    lowHz: band.lowHz,
    highHz: band.highHz,
    pieces: band.pieces,
    sweptFraction: share(sweptHz, usableHz),
    best: extremes && pointOn(curve, extremes.best),
    worst: extremes && pointOn(curve, extremes.worst),
    atLow: extremes && pointAt(curve, band.lowHz),
    atHigh: extremes && pointAt(curve, band.highHz),
    withinLimit: { limitSwr: limits.swr, widthHz, fraction: share(widthHz, usableHz), spans: within },
    bandwidth,
    resonances: extremes === null ? [] : resonancesIn(trace, band.pieces),
    loadedQ: extremes === null ? null : loadedQ(bandwidth, extremes.best.reflectionMagnitude, limits.swr),
    need: needFor(extremes && swrFromReflectionMagnitude(extremes.worst.reflectionMagnitude), limits),
  };
}

/** Share of the whole that a width is; rounding does not make it miss 1. */
export function share(widthHz: number, wholeHz: number): number {
  const fraction = widthHz / wholeHz;
  return fraction > 1 - 1e-9 ? 1 : fraction;
}

export const totalWidth = (pieces: readonly Piece[]): number =>
  pieces.reduce((sum, { lowHz, highHz }) => sum + highHz - lowHz, 0);

/** The parts of spans that lie within a piece. A span cut by the piece's edge is not open there. */
export function clipSpans(spans: readonly LimitSpan[], { lowHz, highHz }: Piece): Span[] {
  return spans.flatMap((span) => {
    const low = Math.max(lowHz, span.lowHz);
    const high = Math.min(highHz, span.highHz);
    if (low >= high) return [];
    return [
      {
        lowHz: low,
        highHz: high,
        widthHz: high - low,
        openLow: span.openLow && span.lowHz > lowHz,
        openHigh: span.openHigh && span.highHz < highHz,
      },
    ];
  });
}

/** Best and worst over several pieces of a band. */
export function extremesOver(trace: Trace, pieces: readonly Piece[]): { best: CurvePoint; worst: CurvePoint } | null {
  // A curve that only touches a piece with its end does not cover any of it; a single reading within counts.
  const areSpots = trace.curve.sweep.continuity === "spots";
  return pieces
    .map(({ lowHz, highHz }) =>
      areSpots || sweptWidthHz(trace.curve, lowHz, highHz) > 0 ? extremesBetween(trace, lowHz, highHz) : null,
    )
    .filter((found) => found !== null)
    .reduce<{ best: CurvePoint; worst: CurvePoint } | null>((all, next) => {
      if (all === null) return next;
      return {
        best: next.best.reflectionMagnitude < all.best.reflectionMagnitude ? next.best : all.best,
        worst: next.worst.reflectionMagnitude > all.worst.reflectionMagnitude ? next.worst : all.worst,
      };
    }, null);
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
    isAtLeast: isBeyondScale(curve.sweep, reflectionMagnitude),
    returnLossDb: returnLossDb(reflectionMagnitude),
    reflectionMagnitude,
    resistanceOhms: impedance?.real ?? null,
    reactanceOhms: impedance?.imaginary ?? null,
  };
}

function isBeyondScale(sweep: Sweep, reflectionMagnitude: number): boolean {
  const ceiling = sweep.kind === "scalar" ? sweep.ceilingMagnitude : null;
  return ceiling !== null && reflectionMagnitude > ceiling - 1e-9;
}

function spanAround(spans: readonly LimitSpan[], frequencyHz: number): Span | null {
  const span = spans.find(({ lowHz, highHz }) => frequencyHz >= lowHz && frequencyHz <= highHz);
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
