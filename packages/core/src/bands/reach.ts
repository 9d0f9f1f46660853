import { clipSpans, extremesOver, type Piece, type Span, share, totalWidth, widthOf } from "../curve/pieces.js";
import { type CurvePoint, isBeyondScale, type LimitSpan, sweptWidthHz } from "../curve/trace.js";
import type { UsableBand } from "../facts/band-plan/band-plan.js";
import { type Need, needFor } from "../facts/limits.js";
import { swrFromReflectionMagnitude } from "../reflection/swr.js";
import type { Analysis } from "./analysis.js";

/** Shares of a whole usable band within reach, by means, 0 to 1; nothing that was not swept counts. */
export interface UsableShares {
  readonly withoutTuner: number;
  readonly withBuiltInTuner: number;
  readonly withWideRangeTuner: number;
}

/** Spans of the usable band within reach of each kind of tuner, what needs none included. */
export interface TunerSpans {
  readonly builtIn: readonly Span[];
  readonly wideRange: readonly Span[];
}

/** What of a band was swept and can be used: all that a grade needs, and the ground of a summary. */
export interface BandReach {
  readonly pieces: readonly Piece[];
  /** Share of the usable pieces that was swept, 0 to 1 */
  readonly sweptFraction: number;
  readonly usable: UsableShares;
  /** What a tuner brings within reach, or what is without one */
  readonly tunerSpans: TunerSpans;
  /** What the worst swept point needs */
  readonly need: Need;
  /** Within the limit */
  readonly within: readonly Span[];
  readonly widthHz: number;
  /** null where nothing was swept */
  readonly extremes: { readonly best: CurvePoint; readonly worst: CurvePoint } | null;
}

/** What of a band a sweep covers, and what of that is within the limit and within reach of each kind of tuner. */
export function reachOf(analysis: Analysis, { pieces }: UsableBand): BandReach {
  const { curve, trace, spans } = analysis;
  const usableHz = totalWidth(pieces);
  const sweptHz = pieces.reduce((sum, { lowHz, highHz }) => sum + sweptWidthHz(curve, lowHz, highHz), 0);
  const within = pieces.flatMap((piece) => clipSpans(spans, piece));
  const widthHz = widthOf(within);
  const clipped = (all: readonly LimitSpan[]) => pieces.flatMap((piece) => clipSpans(all, piece));
  const tunerSpans = {
    builtIn: clipped(analysis.builtInTunerSpans),
    wideRange: clipped(analysis.wideRangeTunerSpans),
  };
  const extremes = extremesOver(trace, pieces);
  return {
    pieces,
    sweptFraction: share(sweptHz, usableHz),
    within,
    widthHz,
    usable: {
      withoutTuner: share(widthHz, usableHz),
      withBuiltInTuner: share(widthOf(tunerSpans.builtIn), usableHz),
      withWideRangeTuner: share(widthOf(tunerSpans.wideRange), usableHz),
    },
    tunerSpans,
    extremes,
    need: needOf(analysis, extremes?.worst ?? null),
  };
}

/** What a point on the curve needs; null (not swept) is unknown, and so is what "at least" an SWR within reach may need. */
export function needOf({ curve, limits }: Analysis, point: CurvePoint | null): Need {
  const need = needFor(point && swrFromReflectionMagnitude(point.reflectionMagnitude), limits);
  const isKnown = point === null || need === "beyond-tuner" || !isBeyondScale(curve, point.reflectionMagnitude);
  return isKnown ? need : "unknown";
}
