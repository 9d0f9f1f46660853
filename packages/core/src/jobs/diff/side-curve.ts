import { rootMeanSquare } from "simple-statistics";
import { answeringOn, type Part } from "../../bands/parts.js";
import {
  type Curve,
  continuedAt,
  isVectorCurve,
  reflectionMagnitudeAt as magnitudeOn,
  reflectionAt as reflectionOn,
} from "../../curve/curve.js";
import { isBeyondScale } from "../../curve/trace.js";
import { at } from "../../numbers/column.js";
import type { Complex } from "../../numbers/complex.js";

/** A curve, and where it answers for its deployment. */
export interface CurvePiece {
  readonly curve: Curve;
  readonly lowHz: number;
  readonly highHz: number;
}

/** All that the sweeps of a deployment know of its reflection, each where it answers; never mixed. */
export interface SideCurve {
  /** Ascending, none over another */
  readonly pieces: readonly CurvePiece[];
  /** All of them know Γ as a complex number */
  readonly isVector: boolean;
  readonly referenceOhms: number;
  /** In each part of Γ, root mean square over the sweeps; null where it is known of none */
  readonly noise: number | null;
  /** Samples that stood alone and were left out */
  readonly spikes: number;
  /** Rounding in print, the greatest of all */
  readonly rounding: number;
}

/** @returns null where nothing was swept */
export function sideCurve(parts: readonly Part[]): SideCurve | null {
  const swept = parts.filter(({ knows }) => knows === "curve");
  const curves = swept.map(({ analysis }) => analysis.curve);
  const [first] = curves;
  if (first === undefined) return null;
  const noises = curves.flatMap(({ noise }) => (noise === null ? [] : [noise]));
  return {
    pieces: piecesOf(swept),
    isVector: curves.every(isVectorCurve),
    referenceOhms: first.sweep.referenceOhms,
    noise: noises.length === 0 ? null : rootMeanSquare(noises),
    spikes: curves.reduce((sum, { spikes }) => sum + spikes.length, 0),
    rounding: Math.max(...curves.map(({ sweep }) => sweep.rounding)),
  };
}

function piecesOf(swept: readonly Part[]): readonly CurvePiece[] {
  const extents = swept.map(({ analysis }) => extentOf(analysis.curve));
  if (swept.length === 1) return swept.map(({ analysis }, i) => ({ curve: analysis.curve, ...(extents[i] as Extent) }));
  const whole = {
    lowHz: Math.min(...extents.map(({ lowHz }) => lowHz)),
    highHz: Math.max(...extents.map(({ highHz }) => highHz)),
  };
  return answeringOn(swept, [whole], 0)
    .flatMap(({ part, pieces }) => pieces.map((piece) => ({ curve: part.analysis.curve, ...piece })))
    .sort((a, b) => a.lowHz - b.lowHz);
}

interface Extent {
  readonly lowHz: number;
  readonly highHz: number;
}

const extentOf = ({ sweep: { frequencyHz } }: Curve): Extent => ({
  lowHz: at(frequencyHz, 0),
  highHz: at(frequencyHz, frequencyHz.length - 1),
});

const pieceAt = ({ pieces }: SideCurve, frequencyHz: number): CurvePiece | undefined =>
  pieces.find(({ lowHz, highHz }) => frequencyHz >= lowHz && frequencyHz <= highHz);

/** Γ at a frequency; null without phase, in a gap and beyond the ends. */
export function reflectionAt(side: SideCurve, frequencyHz: number): Complex | null {
  const piece = pieceAt(side, frequencyHz);
  return piece === undefined ? null : reflectionOn(piece.curve, frequencyHz);
}

/** How far a piece is continued beyond its ends, in halves of its width (our own choice). */
const CONTINUED = 1;

/** Γ at a frequency, and a little beyond the ends of what was swept, as the curve there goes on. */
export function reflectionAround(side: SideCurve, frequencyHz: number): Complex | null {
  const known = reflectionAt(side, frequencyHz);
  if (known !== null) return known;
  for (const { curve } of side.pieces) {
    const continued = isVectorCurve(curve) ? continuedAt(curve, frequencyHz, CONTINUED) : null;
    if (continued !== null) return continued;
  }
  return null;
}

/** ρ at a frequency; NaN in a gap and beyond the ends. */
export function magnitudeAt(side: SideCurve, frequencyHz: number): number {
  const piece = pieceAt(side, frequencyHz);
  return piece === undefined ? Number.NaN : magnitudeOn(piece.curve, frequencyHz);
}

/** The same, and NaN where it only means "at least". */
export function knownMagnitudeAt(side: SideCurve, frequencyHz: number): number {
  const piece = pieceAt(side, frequencyHz);
  if (piece === undefined) return Number.NaN;
  const rho = magnitudeOn(piece.curve, frequencyHz);
  return isBeyondScale(piece.curve, rho) ? Number.NaN : rho;
}

/** The widest of its curves. */
const widestOf = ({ pieces }: SideCurve): Curve => {
  const spanOf = ({ curve }: CurvePiece) => extentOf(curve).highHz - extentOf(curve).lowHz;
  return pieces.reduce((a, b) => (spanOf(b) > spanOf(a) ? b : a)).curve;
};

/** The delay of the line as the widest sweep has it, s; 0 without phase. */
export function bulkDelayOf(side: SideCurve): number {
  const curve = widestOf(side);
  return isVectorCurve(curve) ? curve.delayS : 0;
}

/** Width of the widest sweep, Hz: what its delay rests on. */
export function widestSpanHz(side: SideCurve): number {
  const { lowHz, highHz } = extentOf(widestOf(side));
  return highHz - lowHz;
}
