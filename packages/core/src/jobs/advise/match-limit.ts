import type { Piece } from "../../curve/pieces.js";
import { greatestBandwidth, leastMagnitude } from "../../facts/matching/bode-fano.js";
import { impedanceAt, type Place } from "../../facts/matching/chain.js";
import { at } from "../../numbers/column.js";
import type { Complex } from "../../numbers/complex.js";
import { reflectionMagnitudeFromSwr, swrFromReflectionMagnitude } from "../../reflection/swr.js";
import type { View } from "./view.js";
import { rangeOf } from "./wish-grid.js";

/** What no lossless network can do better on a wish, whatever is built. */
export interface MatchLimit {
  /** Q of what is to be matched; null where it cannot be told */
  readonly q: number | null;
  /** Whether it behaves as one resonance there: the bound holds for no other */
  readonly isOneResonance: boolean;
  /** The least SWR that can be had throughout; null where the bound does not hold */
  readonly leastSwr: number | null;
  /** The greatest share that can be brought within the limit without a tuner, 0 to 1; null likewise */
  readonly greatestShare: number | null;
}

const UNKNOWN: MatchLimit = { q: null, isOneResonance: false, leastSwr: null, greatestShare: null };

/** Q that varies by more than this over a wish is that of several resonances (our own choice; a dipole's varies by a fifth over ±4 %). */
const GREATEST_SPREAD = 1.5;
/** A wish wider than this is not looked at as one resonance, whatever its Q. */
const GREATEST_BANDWIDTH = 1;

/** The limit for a wish, from the antenna's impedance over it. */
export function matchLimit(view: View, wish: number, limitSwr: number): MatchLimit {
  const { wishes, frequencyHz } = view.grid;
  const [start, end] = rangeOf(view.grid, wish);
  const pieces = wishes[wish]?.pieces ?? [];
  const { antenna } = view.endsAt(0);
  const qs = Array.from({ length: Math.max(0, end - start - 2) }, (_, k) => start + 1 + k)
    .filter((i) => view.grid.share[i - 1] !== 0 && view.grid.share[i] !== 0)
    .map((i) => qAt(antenna, frequencyHz, i));
  const [least, greatest] = [Math.min(...qs), Math.max(...qs)];
  const bandwidth = bandwidthOf(pieces);
  if (qs.length === 0 || bandwidth === null || !qs.every((q) => q > 0 && Number.isFinite(q))) return UNKNOWN;
  // The least Q promises most: what is told to be out of reach then is so.
  const isOneResonance = greatest <= GREATEST_SPREAD * least && bandwidth <= GREATEST_BANDWIDTH;
  if (!isOneResonance) return { ...UNKNOWN, q: least };
  return {
    q: least,
    isOneResonance,
    leastSwr: swrFromReflectionMagnitude(leastMagnitude(least, bandwidth)),
    greatestShare: Math.min(1, greatestBandwidth(least, reflectionMagnitudeFromSwr(limitSwr)) / bandwidth),
  };
}

/** From the lowest to the highest frequency over the middle; null for a wish of no width. */
function bandwidthOf(pieces: readonly Piece[]): number | null {
  const lowHz = Math.min(...pieces.map((piece) => piece.lowHz));
  const highHz = Math.max(...pieces.map((piece) => piece.highHz));
  return highHz > lowHz ? (highHz - lowHz) / Math.sqrt(lowHz * highHz) : null;
}

/**
 * Q of an impedance made real by one reactance: f / (2R) · √(R'² + (X' + |X| / f)²).
 *
 * Source: as of {@link impedanceQ}, A. D. Yaghjian, S. R. Best, 2005.
 */
function qAt(place: Place, frequencyHz: Float64Array, i: number): number {
  const [below, here, above] = [i - 1, i, i + 1].map((k) => impedanceAt(place, k)) as [Complex, Complex, Complex];
  const width = at(frequencyHz, i + 1) - at(frequencyHz, i - 1);
  const hz = at(frequencyHz, i);
  const across = (above.imaginary - below.imaginary) / width + Math.abs(here.imaginary) / hz;
  return (hz / (2 * here.real)) * Math.hypot((above.real - below.real) / width, across);
}
