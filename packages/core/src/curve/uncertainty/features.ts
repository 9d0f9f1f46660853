import { extremesOver, type Piece, widthWithin } from "../pieces.js";
import { spanAt, spansWithin, type Trace } from "../trace.js";

/** The numbers of a band whose uncertainty is told. NaN where the curve has none. */
export interface Features {
  readonly bestMagnitude: number;
  readonly bestHz: number;
  readonly worstMagnitude: number;
  readonly withinHz: number;
  /** Edges of the span around `aroundHz` */
  readonly lowEdgeHz: number;
  readonly highEdgeHz: number;
}

export const FEATURE_NAMES = [
  "bestMagnitude",
  "bestHz",
  "worstMagnitude",
  "withinHz",
  "lowEdgeHz",
  "highEdgeHz",
] as const;

/** Frequencies closer than this are one, Hz. */
export const SAME_HZ = 1;

/** @param aroundHz frequency of the best point, by which the same span is found again in another curve */
export function featuresOf(
  trace: Trace,
  pieces: readonly Piece[],
  limit: number,
  aroundHz: number,
  extremes = extremesOver(trace, pieces),
): Features {
  const spans = spansWithin(trace, limit);
  const span = spanAt(spans, aroundHz);
  return {
    bestMagnitude: extremes?.best.reflectionMagnitude ?? Number.NaN,
    bestHz: extremes?.best.frequencyHz ?? Number.NaN,
    worstMagnitude: extremes?.worst.reflectionMagnitude ?? Number.NaN,
    withinHz: widthWithin(spans, pieces),
    lowEdgeHz: span === undefined || span.openLow ? Number.NaN : span.lowHz,
    highEdgeHz: span === undefined || span.openHigh ? Number.NaN : span.highHz,
  };
}
