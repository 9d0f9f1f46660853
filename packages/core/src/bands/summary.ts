import { type Curve, isVectorCurve } from "../curve/curve.js";
import type { Piece, Span } from "../curve/pieces.js";
import { reflectiveCrossings } from "../curve/resonances.js";
import { type LimitSpan, spanAt, type Trace } from "../curve/trace.js";
import type { BandUncertainty } from "../curve/uncertainty/band-uncertainty.js";
import type { UsableBand } from "../facts/band-plan/band-plan.js";
import type { Limits, Need } from "../facts/limits.js";
import { impedanceQ } from "./impedance-q.js";
import type { Answering } from "./parts.js";
import { type Point, pointAt, pointOn } from "./point.js";
import { type Extremes, reachOf, type TunerSpans, type UsableShares } from "./reach.js";

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
  /**
   * What it rests on: a curve; single readings, between which nothing is known; or an SWR noted by hand for a stretch. Then the
   * best and the worst point are the ends of what was noted, and stand for no frequency. null where nothing was swept
   */
  readonly restsOn: "curve" | "spots" | "stretch" | null;
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

/** A band's summary, and the parts that its best and its worst point were found in; null where nothing was swept. */
export interface Summarised {
  readonly summary: BandSummary;
  readonly extremes: Extremes | null;
}

/** All that is known of a band. */
export const summariseBand = (answering: readonly Answering[], band: UsableBand, limits: Limits): BandSummary =>
  summarised(answering, band, limits).summary;

/** The same with the parts that the best and the worst point come from. */
export function summarised(answering: readonly Answering[], band: UsableBand, limits: Limits): Summarised {
  const { sweptFraction, within, widthHz, usable, tunerSpans, extremes, need } = reachOf(answering, band);
  const curves = answering.filter(({ part }) => part.knows !== "stretch");
  const best = extremes?.best ?? null;
  const ofBest = best === null || best.part.knows === "stretch" ? null : best.part.analysis;
  const bandwidth = best === null || ofBest === null ? null : spanAround(ofBest.spans, best.frequencyHz);
  const resonances = curves.flatMap(({ part, pieces }) => resonancesIn(part.analysis.trace, pieces));
  const edgeAt = (frequencyHz: number) =>
    curves.map(({ part }) => pointAt(part.analysis.curve, frequencyHz)).find((point) => point !== null) ?? null;
  const summary: BandSummary = {
    band: band.band,
    lowHz: band.lowHz,
    highHz: band.highHz,
    pieces: band.pieces,
    sweptFraction,
    best: best && pointOn(best.part.analysis.curve, best),
    worst: extremes && pointOn(extremes.worst.part.analysis.curve, extremes.worst),
    atLow: extremes && edgeAt(band.lowHz),
    atHigh: extremes && edgeAt(band.highHz),
    withinLimit: { limitSwr: limits.swr, widthHz, fraction: usable.withoutTuner, spans: within },
    usable,
    tunerSpans,
    bandwidth,
    resonances: extremes === null ? [] : resonances.sort((a, b) => a.frequencyHz - b.frequencyHz),
    impedanceQ: best === null || ofBest === null ? null : qNearest(ofBest.curve, resonances, best.frequencyHz),
    loadedQ: best === null ? null : loadedQ(bandwidth, best.reflectionMagnitude, limits.swr),
    need,
    uncertainty: null,
    restsOn: best?.part.knows ?? null,
  };
  return { summary, extremes };
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
