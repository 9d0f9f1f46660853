import { at } from "../numbers/column.js";
import { type CurvePoint, extremesBetween, type LimitSpan, sweptWidthHz, type Trace } from "./trace.js";

/** A span of frequency; `open…` where the sweep ended, or a gap began, before the limit was met. */
export interface Span extends LimitSpan {
  /** From lowHz to highHz, Hz */
  readonly widthHz: number;
}

/** A span of frequency as a band is, or a part of one. */
export interface Piece {
  readonly lowHz: number;
  readonly highHz: number;
}

/** Share of the whole that a width is; rounding does not make it miss 1. */
export function share(widthHz: number, wholeHz: number): number {
  const fraction = widthHz / wholeHz;
  return fraction > 1 - 1e-9 ? 1 : fraction;
}

export const totalWidth = (pieces: readonly Piece[]): number =>
  pieces.reduce((sum, { lowHz, highHz }) => sum + highHz - lowHz, 0);

/** Pieces in ascending order, those that meet joined. */
export function joinPieces(pieces: readonly Piece[]): readonly Piece[] {
  const joined: Piece[] = [];
  for (const piece of [...pieces].sort((a, b) => a.lowHz - b.lowHz)) {
    const last = joined.at(-1);
    if (last === undefined || piece.lowHz > last.highHz) joined.push(piece);
    else joined[joined.length - 1] = { lowHz: last.lowHz, highHz: Math.max(last.highHz, piece.highHz) };
  }
  return joined;
}

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

/** Spans of several parts in ascending order, those that meet joined. */
export function joinSpans(spans: readonly Span[]): readonly Span[] {
  const joined: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.lowHz - b.lowHz)) {
    const last = joined.at(-1);
    if (last === undefined || span.lowHz > last.highHz) joined.push(span);
    else {
      const { lowHz, openLow } = last;
      const { highHz, openHigh } = span;
      joined[joined.length - 1] = { lowHz, highHz, widthHz: highHz - lowHz, openLow, openHigh };
    }
  }
  return joined;
}

/** Width of the spans that lies within some pieces, Hz. */
export const widthWithin = (spans: readonly LimitSpan[], pieces: readonly Piece[]): number =>
  widthOf(pieces.flatMap((piece) => clipSpans(spans, piece)));

export const widthOf = (spans: readonly Span[]): number => spans.reduce((sum, { widthHz }) => sum + widthHz, 0);

/** Best and worst over several pieces of a band. */
export function extremesOver(trace: Trace, pieces: readonly Piece[]): { best: CurvePoint; worst: CurvePoint } | null {
  // A curve that only touches a piece with its end does not cover any of it; a single reading within counts.
  const readings = trace.stretches.filter(({ first, last }) => first === last);
  const holdsReading = ({ lowHz, highHz }: Piece) =>
    readings.some(({ first }) => at(trace.frequencyHz, first) >= lowHz && at(trace.frequencyHz, first) <= highHz);
  return pieces
    .map((piece) => {
      const { lowHz, highHz } = piece;
      const isKnown = sweptWidthHz(trace.curve, lowHz, highHz) > 0 || holdsReading(piece);
      return isKnown ? extremesBetween(trace, lowHz, highHz) : null;
    })
    .filter((found) => found !== null)
    .reduce<{ best: CurvePoint; worst: CurvePoint } | null>((all, next) => {
      if (all === null) return next;
      return {
        best: next.best.reflectionMagnitude < all.best.reflectionMagnitude ? next.best : all.best,
        worst: next.worst.reflectionMagnitude > all.worst.reflectionMagnitude ? next.worst : all.worst,
      };
    }, null);
}
