import { at, type Column, firstIndexAbove } from "../numbers/column.js";
import { leastBetween, zeroBetween } from "../numbers/search.js";
import type { Sweep } from "../sweep/sweep.js";
import { type Curve, curveOf, magnitudeBetween, magnitudeWithin } from "./curve.js";
import type { Stretch } from "./samples/stretches.js";

/** A frequency on the curve and ρ there. */
export interface CurvePoint {
  readonly frequencyHz: number;
  /** ρ */
  readonly reflectionMagnitude: number;
}

/** A span of frequency where ρ stays at or under a limit. */
export interface LimitSpan {
  readonly lowHz: number;
  readonly highHz: number;
  /** The sweep began, or a gap ended, before the limit was met below */
  readonly openLow: boolean;
  /** The sweep ended, or a gap began, before the limit was met above */
  readonly openHigh: boolean;
}

/** The curve walked from end to end: ρ at every sample and, where it bends much between two, at points between them. */
export interface Trace {
  readonly curve: Curve;
  /** The knots, ascending */
  readonly frequencyHz: Float64Array;
  /** ρ at each knot */
  readonly reflectionMagnitude: Float64Array;
  /** For each stretch of the curve, the indices of its first and last knot */
  readonly stretches: readonly Stretch[];
}

/** Between two knots the curve departs from a straight line by about this much in ρ at the most. */
const GREATEST_BEND = 5e-4;
const MOST_PIECES = 16;
/** Where the curve rises from an edge on over this much, the edge is where it is least. */
const NEXT_TO_EDGE_HZ = 1;

/** What was walked already: a sweep never changes, and a check, a grade and a picture of it need the same trace. */
const traces = new WeakMap<Sweep, Trace>();

/** The trace of a sweep's curve, made once for each sweep. */
export function traceOfSweep(sweep: Sweep): Trace {
  const known = traces.get(sweep);
  if (known !== undefined) return known;
  const trace = traceOf(curveOf(sweep));
  traces.set(sweep, trace);
  return trace;
}

/** Walks the whole curve once; dips, crossings and extremes are then looked for on the trace and refined on the curve. */
export function traceOf(curve: Curve): Trace {
  const axis = curve.sweep.frequencyHz;
  const { reflectionMagnitude: atSamples } = curve;
  const pieces = piecesAfterSamples(curve, atSamples);
  let total = 0;
  for (const count of pieces) total += count;
  const frequencyHz = new Float64Array(total);
  const reflectionMagnitude = new Float64Array(total);
  let knot = 0;
  const stretches = curve.stretches.map((stretch) => {
    const first = knot;
    for (let i = stretch.first; i < stretch.last; i++) {
      const start = at(axis, i);
      frequencyHz[knot] = start;
      reflectionMagnitude[knot++] = at(atSamples, i);
      const count = pieces[i] as number;
      for (let piece = 1; piece < count; piece++) {
        const frequency = start + ((at(axis, i + 1) - start) * piece) / count;
        frequencyHz[knot] = frequency;
        reflectionMagnitude[knot++] = magnitudeBetween(curve, stretch, i, frequency);
      }
    }
    const end = at(axis, stretch.last);
    frequencyHz[knot] = end;
    // Of a reading by itself this is what was read.
    reflectionMagnitude[knot++] = magnitudeWithin(curve, stretch, end);
    return { first, last: knot - 1 };
  });
  return { curve, frequencyHz, reflectionMagnitude, stretches };
}

/** How many pieces the interval after each sample needs so that each is nearly straight; 1 at the end of a stretch. */
function piecesAfterSamples(curve: Curve, atSamples: Column): Uint8Array {
  const axis = curve.sweep.frequencyHz;
  const pieces = new Uint8Array(axis.length).fill(1);
  for (const stretch of curve.stretches) {
    let isBent = false;
    for (let i = stretch.first; i < stretch.last; i++) {
      const wasBent = isBent;
      isBent = i + 1 < stretch.last && standsOff(axis, atSamples, i + 1) > GREATEST_BEND;
      // An interval bends less than its samples stand off their neighbours.
      if (wasBent || isBent) pieces[i] = piecesForBend(curve, stretch, i, atSamples);
    }
  }
  return pieces;
}

/** How many pieces the interval after a sample needs, from its bend at the middle. */
function piecesForBend(curve: Curve, stretch: Stretch, index: number, atSamples: Column): number {
  const axis = curve.sweep.frequencyHz;
  const middle = magnitudeBetween(curve, stretch, index, (at(axis, index) + at(axis, index + 1)) / 2);
  const bend = Math.abs(middle - (at(atSamples, index) + at(atSamples, index + 1)) / 2);
  return bend > GREATEST_BEND ? Math.min(MOST_PIECES, 2 * Math.ceil(Math.sqrt(bend / GREATEST_BEND))) : 1;
}

/** How far a sample lies off the straight line between its neighbours. */
function standsOff(axis: Column, values: Column, index: number): number {
  const start = at(axis, index - 1);
  const share = (at(axis, index) - start) / (at(axis, index + 1) - start);
  const straight = at(values, index - 1) + share * (at(values, index + 1) - at(values, index - 1));
  return Math.abs(at(values, index) - straight);
}

/** What smoothing may take from a reading at the end of the scale by rounding. */
const SCALE_TOLERANCE = 1e-9;

/** ρ beyond which a reading tells nothing but "at least", where the instrument's scale ended. */
const greatestKnown = ({ sweep }: Curve): number =>
  sweep.kind === "scalar" && sweep.ceilingMagnitude !== null
    ? sweep.ceilingMagnitude - SCALE_TOLERANCE
    : Number.POSITIVE_INFINITY;

/** Whether the instrument's scale ended at a reading, so that ρ is at least this. */
export const isBeyondScale = (curve: Curve, reflectionMagnitude: number): boolean =>
  reflectionMagnitude > greatestKnown(curve);

/** Spans of a trace that were found already: every band asks for the same few limits. */
const spansKnown = new WeakMap<Trace, Map<number, readonly LimitSpan[]>>();

/**
 * The spans where ρ ≤ `wanted`, over the whole sweep, ascending. Edges are found on the curve, not on the samples. A reading
 * that means "at least" is within no limit.
 */
export function spansWithin(trace: Trace, wanted: number): readonly LimitSpan[] {
  const limit = Math.min(wanted, greatestKnown(trace.curve));
  const known = spansKnown.get(trace) ?? new Map<number, readonly LimitSpan[]>();
  const spans = known.get(limit) ?? spansUnder(trace, limit);
  spansKnown.set(trace, known.set(limit, spans));
  return spans;
}

function spansUnder(trace: Trace, limit: number): readonly LimitSpan[] {
  const { frequencyHz, reflectionMagnitude } = trace;
  const spans: LimitSpan[] = [];
  for (const { first, last } of trace.stretches) {
    let isInside = at(reflectionMagnitude, first) <= limit;
    let low = isInside ? at(frequencyHz, first) : null;
    let openLow = isInside;
    for (let k = first; k < last; k++) {
      if (at(reflectionMagnitude, k + 1) <= limit === isInside) continue;
      isInside = !isInside;
      const edge = crossingBetween(trace, k, limit);
      if (isInside) {
        low = edge;
        openLow = false;
      } else if (low !== null) {
        spans.push({ lowHz: low, highHz: edge, openLow, openHigh: false });
        low = null;
      }
    }
    if (low !== null) spans.push({ lowHz: low, highHz: at(frequencyHz, last), openLow, openHigh: true });
  }
  return spans;
}

/** The span that holds a frequency; undefined where none does. */
export const spanAt = (spans: readonly LimitSpan[], frequencyHz: number): LimitSpan | undefined =>
  spans.find(({ lowHz, highHz }) => frequencyHz >= lowHz && frequencyHz <= highHz);

/** Where ρ crosses `limit` between knots `k` and `k + 1`. */
function crossingBetween(trace: Trace, k: number, limit: number): number {
  const stretch = stretchOfKnot(trace, k);
  const beyondLimit = (frequencyHz: number) => magnitudeWithin(trace.curve, stretch, frequencyHz) - limit;
  return zeroBetween(beyondLimit, at(trace.frequencyHz, k), at(trace.frequencyHz, k + 1));
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
  const found = () => ({ frequencyHz: bestFrequency, reflectionMagnitude: sign * bestValue });
  consider(high, value(high));
  const begin = Math.max(firstIndexAbove(trace.frequencyHz, low), knots.first);
  for (let k = begin; k <= knots.last && at(trace.frequencyHz, k) < high; k++) {
    consider(at(trace.frequencyHz, k), sign * at(trace.reflectionMagnitude, k));
  }
  if (bestFrequency === low && value(Math.min(low + NEXT_TO_EDGE_HZ, high)) >= bestValue) return found();
  if (bestFrequency === high && value(Math.max(high - NEXT_TO_EDGE_HZ, low)) >= bestValue) return found();
  const after = firstIndexAbove(trace.frequencyHz, bestFrequency);
  const before = after - 1 - (at(trace.frequencyHz, after - 1) === bestFrequency ? 1 : 0);
  const left = before >= knots.first ? Math.max(low, at(trace.frequencyHz, before)) : low;
  const right = after <= knots.last ? Math.min(high, at(trace.frequencyHz, after)) : high;
  const refined = leastBetween(value, left, right);
  consider(refined, value(refined));
  return found();
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
