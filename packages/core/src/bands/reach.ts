import {
  clipSpans,
  extremesOver,
  joinSpans,
  type Piece,
  type Span,
  share,
  totalWidth,
  widthOf,
} from "../curve/pieces.js";
import { type CurvePoint, isBeyondScale, type LimitSpan, sweptWidthHz } from "../curve/trace.js";
import type { UsableBand } from "../facts/band-plan/band-plan.js";
import { type Need, needFor } from "../facts/limits.js";
import { swrFromReflectionMagnitude } from "../reflection/swr.js";
import type { Analysis } from "./analysis.js";
import type { Answering, Part } from "./parts.js";

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

/** A point of a band, and the part of the deployment that it was found in. */
export interface PointOfPart extends CurvePoint {
  readonly part: Part;
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
  readonly extremes: Extremes | null;
}

/** The best and the worst of what is known. */
export interface Extremes {
  readonly best: PointOfPart;
  readonly worst: PointOfPart;
}

/** What of a band is known, and what of that is within the limit and within reach of each kind of tuner. */
export function reachOf(answering: readonly Answering[], { pieces }: Pick<UsableBand, "pieces">): BandReach {
  const usableHz = totalWidth(pieces);
  const sweptHz = answering.reduce((sum, each) => sum + sweptBy(each), 0);
  const spansOf = (all: (analysis: Analysis) => readonly LimitSpan[]) => {
    const spans = answering.flatMap(({ part, pieces: own }) => {
      const ofPart = all(part.analysis);
      return own.flatMap((piece) => clipSpans(ofPart, piece));
    });
    // Those of one part are in order and apart already.
    return answering.length === 1 ? spans : joinSpans(spans);
  };
  const within = spansOf(({ spans }) => spans);
  const widthHz = widthOf(within);
  const tunerSpans = {
    builtIn: spansOf(({ builtInTunerSpans }) => builtInTunerSpans),
    wideRange: spansOf(({ wideRangeTunerSpans }) => wideRangeTunerSpans),
  };
  const extremes = extremesIn(answering);
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
    need: extremes === null ? "unknown" : needOf(extremes.worst.part.analysis, extremes.worst),
  };
}

/** Width of what the parts know of their pieces, Hz. */
const sweptBy = ({ part, pieces }: Answering): number =>
  pieces.reduce((sum, { lowHz, highHz }) => sum + sweptWidthHz(part.analysis.curve, lowHz, highHz), 0);

/** Best and worst over all pieces; of a reading of a stretch the least and the greatest SWR noted, at its middle. */
export function extremesIn(answering: readonly Answering[]): Extremes | null {
  return answering.reduce<Extremes | null>((all, { part, pieces }) => {
    const found = extremesOver(part.analysis.trace, pieces);
    if (found === null) return all;
    const { best, worst } = part.leastMagnitude === null ? found : notedOver(part.leastMagnitude, found.worst, pieces);
    return {
      best: all === null || best.reflectionMagnitude < all.best.reflectionMagnitude ? pointOf(best, part) : all.best,
      worst:
        all === null || worst.reflectionMagnitude > all.worst.reflectionMagnitude ? pointOf(worst, part) : all.worst,
    };
  }, null);
}

const pointOf = ({ frequencyHz, reflectionMagnitude }: CurvePoint, part: Part): PointOfPart => ({
  frequencyHz,
  reflectionMagnitude,
  part,
});

function notedOver(least: number, { reflectionMagnitude }: CurvePoint, pieces: readonly Piece[]) {
  const [lowHz, highHz] = [pieces[0]?.lowHz ?? 0, pieces.at(-1)?.highHz ?? 0];
  const frequencyHz = (lowHz + highHz) / 2;
  return { best: { frequencyHz, reflectionMagnitude: least }, worst: { frequencyHz, reflectionMagnitude } };
}

/** What a point on the curve needs; null (not swept) is unknown, and so is what "at least" an SWR within reach may need. */
export function needOf({ curve, limits }: Analysis, point: CurvePoint | null): Need {
  const need = needFor(point && swrFromReflectionMagnitude(point.reflectionMagnitude), limits);
  const isKnown = point === null || need === "beyond-tuner" || !isBeyondScale(curve, point.reflectionMagnitude);
  return isKnown ? need : "unknown";
}
