import { at, firstIndexAbove } from "../column.js";
import { type Curve, magnitudeBetween, magnitudeWithin } from "./curve.js";
import { leastBetween, turningPoint } from "./search.js";
import type { Stretch } from "./stretches.js";

/** A frequency on the curve and ρ there. */
export interface CurvePoint {
  readonly frequencyHz: number;
  readonly reflectionMagnitude: number;
}

/** A span of frequency where ρ stays at or under a limit. `open…`: the sweep ended, or a gap began, before the limit. */
export interface LimitSpan {
  readonly lowHz: number;
  readonly highHz: number;
  readonly openLow: boolean;
  readonly openHigh: boolean;
}

/** The curve walked from end to end: ρ at every sample and, where it bends much between two, at points between them. */
export interface Trace {
  readonly curve: Curve;
  readonly frequencyHz: Float64Array;
  readonly reflectionMagnitude: Float64Array;
  /** For each stretch of the curve, the indices of its first and last knot */
  readonly stretches: readonly Stretch[];
}

/** Between two knots the curve departs from a straight line by about this much in ρ at the most. */
const GREATEST_BEND = 5e-4;
const MOST_PIECES = 16;

/** Walks the whole curve once; dips, crossings and extremes are then looked for on the trace and refined on the curve. */
export function traceOf(curve: Curve): Trace {
  const axis = curve.sweep.frequencyHz;
  const frequencies: number[] = [];
  const magnitudes: number[] = [];
  const stretches: Stretch[] = [];
  for (const stretch of curve.stretches) {
    const first = frequencies.length;
    for (let i = stretch.first; i < stretch.last; i++) {
      const start = at(axis, i);
      const step = at(axis, i + 1) - start;
      const atStart = magnitudeBetween(curve, stretch, i, start);
      const pieces = piecesBetween(curve, stretch, i, atStart);
      for (let piece = 0; piece < pieces; piece++) {
        const frequency = start + (step * piece) / pieces;
        frequencies.push(frequency);
        magnitudes.push(piece === 0 ? atStart : magnitudeBetween(curve, stretch, i, frequency));
      }
    }
    const end = at(axis, stretch.last);
    frequencies.push(end);
    magnitudes.push(magnitudeWithin(curve, stretch, end));
    stretches.push({ first, last: frequencies.length - 1 });
  }
  return {
    curve,
    frequencyHz: new Float64Array(frequencies),
    reflectionMagnitude: new Float64Array(magnitudes),
    stretches,
  };
}

/** How many pieces an interval that begins at a known ρ needs so that each is nearly straight, from its bend at the middle. */
function piecesBetween(curve: Curve, stretch: Stretch, index: number, atStart: number): number {
  const axis = curve.sweep.frequencyHz;
  const low = at(axis, index);
  const high = at(axis, index + 1);
  const middle = magnitudeBetween(curve, stretch, index, (low + high) / 2);
  const ends = (atStart + magnitudeBetween(curve, stretch, index, high)) / 2;
  const bend = Math.abs(middle - ends);
  return bend <= GREATEST_BEND ? 1 : Math.min(MOST_PIECES, 2 * Math.ceil(Math.sqrt(bend / GREATEST_BEND)));
}

/**
 * The spans where ρ ≤ `limit`, over the whole sweep, ascending. Edges are found on the curve, not on the samples.
 */
export function spansWithin(trace: Trace, limit: number): readonly LimitSpan[] {
  const spans: LimitSpan[] = [];
  for (const { first, last } of trace.stretches) {
    let low: number | null = at(trace.reflectionMagnitude, first) <= limit ? at(trace.frequencyHz, first) : null;
    let openLow = low !== null;
    for (let k = first; k < last; k++) {
      const inside = at(trace.reflectionMagnitude, k) <= limit;
      const nextInside = at(trace.reflectionMagnitude, k + 1) <= limit;
      if (inside === nextInside) continue;
      const edge = crossingBetween(trace, k, limit);
      if (nextInside) {
        low = edge;
        openLow = false;
      } else if (low !== null) {
        spans.push({ lowHz: low, highHz: edge, openLow, openHigh: false });
        low = null;
      }
    }
    if (low !== null) spans.push({ lowHz: low, highHz: at(trace.frequencyHz, last), openLow, openHigh: true });
  }
  return spans;
}

/** The span that holds a frequency; undefined where none does. */
export const spanAt = (spans: readonly LimitSpan[], frequencyHz: number): LimitSpan | undefined =>
  spans.find(({ lowHz, highHz }) => frequencyHz >= lowHz && frequencyHz <= highHz);

/** Where ρ crosses `limit` between knots `k` and `k + 1`. */
function crossingBetween(trace: Trace, k: number, limit: number): number {
  const stretch = stretchOfKnot(trace, k);
  const isWithin = (frequencyHz: number) => magnitudeWithin(trace.curve, stretch, frequencyHz) <= limit;
  return turningPoint(isWithin, at(trace.frequencyHz, k), at(trace.frequencyHz, k + 1));
}

function stretchOfKnot(trace: Trace, k: number): Stretch {
  const index = trace.stretches.findIndex(({ first, last }) => k >= first && k <= last);
  return trace.curve.stretches[index] as Stretch;
}

/**
 * The points of least and of greatest ρ between two frequencies, both within what was swept there.
 *
 * @returns null where nothing between the two was swept
 */
export function extremesBetween(
  trace: Trace,
  lowHz: number,
  highHz: number,
): { best: CurvePoint; worst: CurvePoint } | null {
  let best: CurvePoint | null = null;
  let worst: CurvePoint | null = null;
  trace.stretches.forEach((knots, s) => {
    const stretch = trace.curve.stretches[s] as Stretch;
    const low = Math.max(lowHz, at(trace.frequencyHz, knots.first));
    const high = Math.min(highHz, at(trace.frequencyHz, knots.last));
    if (low > high) return;
    for (const sign of [1, -1]) {
      const found = extremeWithin(trace, stretch, knots, low, high, sign);
      if (sign === 1 && (best === null || found.reflectionMagnitude < best.reflectionMagnitude)) best = found;
      if (sign === -1 && (worst === null || found.reflectionMagnitude > worst.reflectionMagnitude)) worst = found;
    }
  });
  return best === null || worst === null ? null : { best, worst };
}

/** Least (sign 1) or greatest (sign -1) ρ from low to high within one stretch: the best knot, refined on the curve. */
function extremeWithin(
  trace: Trace,
  stretch: Stretch,
  knots: Stretch,
  low: number,
  high: number,
  sign: number,
): CurvePoint {
  const value = (frequencyHz: number) => sign * magnitudeWithin(trace.curve, stretch, frequencyHz);
  let bestFrequency = low;
  let bestValue = value(low);
  const consider = (frequencyHz: number, candidate: number) => {
    if (candidate < bestValue) {
      bestFrequency = frequencyHz;
      bestValue = candidate;
    }
  };
  consider(high, value(high));
  let k = firstIndexAbove(trace.frequencyHz, low);
  const begin = Math.max(k, knots.first);
  for (k = begin; k <= knots.last && at(trace.frequencyHz, k) < high; k++) {
    consider(at(trace.frequencyHz, k), sign * at(trace.reflectionMagnitude, k));
  }
  const after = firstIndexAbove(trace.frequencyHz, bestFrequency);
  const before = after - 1 - (at(trace.frequencyHz, after - 1) === bestFrequency ? 1 : 0);
  const left = before >= knots.first ? Math.max(low, at(trace.frequencyHz, before)) : low;
  const right = after <= knots.last ? Math.min(high, at(trace.frequencyHz, after)) : high;
  const refined = leastBetween(value, left, right);
  consider(refined, value(refined));
  return { frequencyHz: bestFrequency, reflectionMagnitude: sign * bestValue };
}

/** Width in Hz of what was swept between two frequencies. */
export function sweptWidthHz(curve: Curve, lowHz: number, highHz: number): number {
  const axis = curve.sweep.frequencyHz;
  let width = 0;
  for (const { first, last } of curve.stretches) {
    width += Math.max(0, Math.min(highHz, at(axis, last)) - Math.max(lowHz, at(axis, first)));
  }
  return width;
}
