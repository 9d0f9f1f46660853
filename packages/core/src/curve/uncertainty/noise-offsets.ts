import { at } from "../../numbers/column.js";
import { reflectionMagnitudeAt } from "../curve.js";
import { clipSpans, type Piece, widthWithin } from "../pieces.js";
import { type CurvePoint, type LimitSpan, spanAt, spansWithin, type Trace } from "../trace.js";
import { type Features, SAME_HZ } from "./features.js";
import { type LocalPoint, localPoints, type Offsets, offsetsOfMagnitude, weighted } from "./local-point.js";
import type { NoisyPart } from "./noisy-parts.js";

/** First derivatives tell what noise does to a number where what it hangs on is so many standard deviations from becoming something else. */
const SAFE = 4;
/** And where noise moves a frequency by no more than this share of the way to where the curve turns (our own choices). */
const SAFE_MOVE = 0.2;
/** An edge that noise of so many standard deviations leaves without is not sure to exist: one side of nine in ten. */
const SURE = 1.28;

/** What the numbers of a band are told by. */
export interface BandOnTrace {
  readonly trace: Trace;
  readonly pieces: readonly Piece[];
  /** ρ of the SWR limit */
  readonly limit: number;
  /** Of all that counts for the band */
  readonly lowHz: number;
  readonly highHz: number;
  readonly estimate: Features;
  readonly worst: CurvePoint;
  /** Standard deviation of ρ of a sample */
  readonly noise: number;
}

/**
 * How far noise takes a band's numbers: where it moves them a little, by first derivatives of the curve (the delta method: B. Efron, R. J.
 * Tibshirani, An Introduction to the Bootstrap, 1993, chapter 21; from memory); where it may join or part spans or move an edge or the
 * best point far, by what the same curve has at a level that is as much lower or higher.
 *
 * @param deviations how many standard deviations count
 * @returns null for a number that the curve has not, or may not have; null where it tells nothing
 */
export function noiseOffsets(
  parts: readonly NoisyPart[],
  band: BandOnTrace,
  deviations: number,
): Record<keyof Features, Offsets | null> | null {
  const { trace, limit, estimate, worst } = band;
  const localAt = localPoints(parts);
  const [best, greatest] = [localAt(estimate.bestHz), localAt(worst.frequencyHz)];
  if (best === null || greatest === null) return null;
  const { turns, ends } = turnsOf(band);
  // Where the curve turns, or what counts ends, so near to the limit that noise may make or end a span there.
  const doubtful = [...turns, ...ends, best.hz, greatest.hz]
    .filter((hz) => Math.abs(reflectionMagnitudeAt(trace.curve, hz) - limit) < 2 * SAFE * band.noise)
    .flatMap((hz) => localAt(hz) ?? [])
    .filter(({ rho, deviation }) => Math.abs(rho - limit) < SAFE * deviation);
  const edges = { turns, doubtful, localAt, deviations };
  return {
    bestMagnitude: offsetsOfMagnitude(best, deviations),
    bestHz: offsetsOfPlace(best, band, { turns, ends }, deviations),
    worstMagnitude: offsetsOfMagnitude(greatest, deviations),
    withinHz: offsetsOfWidth(band, edges),
    lowEdgeHz: offsetsOfEdge("lowHz", band, edges),
    highEdgeHz: offsetsOfEdge("highHz", band, edges),
  };
}

/** Where the curve turns between two frequencies, at knots of its trace; and where pieces of the band, or what was swept, end. */
interface Turns {
  readonly turns: readonly number[];
  readonly ends: readonly number[];
}

function turnsOf({ trace, pieces, lowHz, highHz }: BandOnTrace): Turns {
  const { frequencyHz, reflectionMagnitude: rho, stretches } = trace;
  const turns: number[] = [];
  const ends: number[] = [];
  for (const { first, last } of stretches) {
    const [start, end] = [at(frequencyHz, first), at(frequencyHz, last)];
    if (start > highHz || end < lowHz) continue;
    const limits = [start, end, ...pieces.flatMap((piece) => [piece.lowHz, piece.highHz])];
    ends.push(...limits.filter((hz) => hz >= Math.max(start, lowHz) && hz <= Math.min(end, highHz)));
    for (let k = first + 1; k < last; k++) {
      if (at(frequencyHz, k) < lowHz || at(frequencyHz, k) > highHz) continue;
      if ((at(rho, k) - at(rho, k - 1)) * (at(rho, k + 1) - at(rho, k)) <= 0) turns.push(at(frequencyHz, k));
    }
  }
  return { turns, ends };
}

/** The distance of the knots around a frequency, Hz. */
function stepAround({ frequencyHz }: Trace, hz: number): number {
  const after = frequencyHz.findIndex((knot) => knot > hz);
  const next = after < 0 ? frequencyHz.length - 1 : after;
  return at(frequencyHz, Math.min(next + 1, frequencyHz.length - 1)) - at(frequencyHz, Math.max(0, next - 2));
}

const distanceTo = (places: readonly number[], hz: number): number =>
  Math.min(...places.map((place) => Math.abs(place - hz)));

/** Of the frequency of the best point: where the derivative of |Γ|² (of u) is nothing, or at an end that it rises from. */
function offsetsOfPlace(best: LocalPoint, band: BandOnTrace, { turns, ends }: Turns, deviations: number): Offsets {
  const { hz, part } = best;
  const { value, slope, bend, ofValue, ofSlope } = best.at;
  const ofDerivative = part.isInverse
    ? ofSlope
    : weighted([
        { of: ofValue, real: slope.real, imaginary: -slope.imaginary },
        { of: ofSlope, real: value.real, imaginary: -value.imaginary },
      ]);
  const derivative = part.isInverse ? slope.real : value.real * slope.real + value.imaginary * slope.imaginary;
  const second = part.isInverse
    ? bend.real
    : slope.real ** 2 + slope.imaginary ** 2 + value.real * bend.real + value.imaginary * bend.imaginary;
  const deviation = Math.sqrt(part.varianceOf(ofDerivative));
  const step = stepAround(band.trace, hz);
  const isAtEnd = distanceTo(ends, hz) < SAME_HZ;
  if (isAtEnd && Math.abs(derivative) > SAFE * deviation) return { below: 0, above: 0 };
  const others = [...turns.filter((turn) => Math.abs(turn - hz) > step), ...ends];
  const moved = deviation / second;
  if (second > 0 && moved < SAFE_MOVE * distanceTo(others, hz))
    return { below: deviations * moved, above: deviations * moved };
  // Where it is flat: all that is as good.
  const { above } = offsetsOfMagnitude(best, deviations);
  const span = spanAt(spansWithin(band.trace, best.rho + above), hz);
  const own = band.pieces.find(({ lowHz, highHz }) => hz >= lowHz && hz <= highHz);
  return {
    below: hz - Math.max(span?.lowHz ?? hz, own?.lowHz ?? hz),
    above: Math.min(span?.highHz ?? hz, own?.highHz ?? hz) - hz,
  };
}

/** What noise may move edges by. */
interface AroundEdges {
  readonly turns: readonly number[];
  readonly doubtful: readonly LocalPoint[];
  readonly localAt: (hz: number) => LocalPoint | null;
  readonly deviations: number;
}

/** Standard deviation of a frequency where ρ crosses the limit; null where noise may move it far. */
function deviationOfEdge(local: LocalPoint, turns: readonly number[]): number | null {
  const moved = local.deviation / Math.abs(local.slope);
  return moved < SAFE_MOVE * distanceTo(turns, local.hz) ? moved : null;
}

const greatestDeviation = (points: readonly LocalPoint[]): number =>
  Math.max(0, ...points.map(({ deviation }) => deviation));

/** Of an edge of the span around the best point; null where that has none, or noise may leave it without. */
function offsetsOfEdge(
  side: "lowHz" | "highHz",
  { trace, limit, estimate }: BandOnTrace,
  { turns, doubtful, localAt, deviations }: AroundEdges,
): Offsets | null {
  const hz = side === "lowHz" ? estimate.lowEdgeHz : estimate.highEdgeHz;
  const local = Number.isNaN(hz) ? null : localAt(hz);
  if (local === null) return null;
  const moved = doubtful.length === 0 ? deviationOfEdge(local, turns) : null;
  if (moved !== null) return { below: deviations * moved, above: deviations * moved };
  const noise = greatestDeviation([local, ...doubtful]);
  const spanOf = (shift: number) => spanAt(spansWithin(trace, Math.max(0, limit + shift * noise)), estimate.bestHz);
  const isSure = (span: LimitSpan | undefined) =>
    span !== undefined && !(side === "lowHz" ? span.openLow : span.openHigh);
  if (!isSure(spanOf(SURE)) || !isSure(spanOf(-SURE))) return null;
  const places = [spanOf(deviations)?.[side] ?? hz, spanOf(-deviations)?.[side] ?? estimate.bestHz];
  return { below: Math.max(0, hz - Math.min(...places)), above: Math.max(0, Math.max(...places) - hz) };
}

/** Of the width within the limit, by all of its edges together. */
function offsetsOfWidth(band: BandOnTrace, around: AroundEdges): Offsets {
  const { trace, pieces, limit, estimate } = band;
  const { doubtful, deviations } = around;
  const edges = edgesWithin(band, around);
  const deviation = doubtful.length === 0 ? deviationOfWidth(edges, around) : null;
  if (deviation !== null) return { below: deviations * deviation, above: deviations * deviation };
  const noise = deviations * greatestDeviation([...edges.map(({ local }) => local), ...doubtful]);
  const widthAt = (level: number) => widthWithin(spansWithin(trace, Math.max(0, level)), pieces);
  return {
    below: Math.max(0, estimate.withinHz - widthAt(limit - noise)),
    above: Math.max(0, widthAt(limit + noise) - estimate.withinHz),
  };
}

/** An edge inside a piece of the band, and whether the width grows or shrinks where ρ grows there. */
interface Edge {
  readonly local: LocalPoint;
  readonly piece: Piece;
  readonly sign: 1 | -1;
}

function edgesWithin({ trace, pieces, limit }: BandOnTrace, { localAt }: AroundEdges): readonly Edge[] {
  const spans = spansWithin(trace, limit);
  return pieces.flatMap((piece) =>
    clipSpans(spans, piece).flatMap((span) =>
      [
        { hz: span.lowHz, sign: 1 as const, isMet: !span.openLow },
        { hz: span.highHz, sign: -1 as const, isMet: !span.openHigh },
      ].flatMap(({ hz, sign, isMet }) => {
        const local = isMet && hz > piece.lowHz && hz < piece.highHz ? localAt(hz) : null;
        return local === null ? [] : [{ local, piece, sign }];
      }),
    ),
  );
}

/** Null where noise may move an edge far, or out of the band, where it is cut off. */
function deviationOfWidth(edges: readonly Edge[], { turns }: AroundEdges): number | null {
  const terms = new Map<NoisyPart, { of: LocalPoint["ofRho"]; real: number; imaginary: number }[]>();
  for (const { local, piece, sign } of edges) {
    const moved = deviationOfEdge(local, turns);
    if (moved === null || distanceTo([piece.lowHz, piece.highHz], local.hz) < SAFE * moved) return null;
    const own = terms.get(local.part) ?? [];
    terms.set(local.part, [...own, { of: local.ofRho, real: sign / local.slope, imaginary: 0 }]);
  }
  let variance = 0;
  for (const [part, own] of terms) variance += part.varianceOf(weighted(own));
  return Math.sqrt(variance);
}
