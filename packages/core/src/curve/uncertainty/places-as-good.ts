import { at } from "../../numbers/column.js";
import { reflectionMagnitudeAt } from "../curve.js";
import type { Piece } from "../pieces.js";
import type { Trace } from "../trace.js";
import { type Features, SAME_HZ } from "./features.js";

/**
 * Frequencies of a band at which the curve is as good as at the best point, as far as can be told: other dips, ends of the band, and, where
 * the best point is such an end, what lies beside it.
 *
 * @param margin what ρ at the best point may be off by
 */
export function placesAsGood(
  trace: Trace,
  pieces: readonly Piece[],
  { bestHz, bestMagnitude }: Pick<Features, "bestHz" | "bestMagnitude">,
  margin: number,
): readonly number[] {
  const isAsGood = (rho: number) => rho <= bestMagnitude + margin;
  const { frequencyHz, reflectionMagnitude, stretches } = trace;
  const places: number[] = [];
  for (const { lowHz, highHz } of pieces) {
    const ends = [lowHz, highHz];
    places.push(...ends.filter((hz) => isAsGood(reflectionMagnitudeAt(trace.curve, hz))));
    const isAtEnd = ends.some((hz) => Math.abs(hz - bestHz) < SAME_HZ);
    for (const { first, last } of stretches) {
      const isIn = (k: number) =>
        k >= first && k <= last && at(frequencyHz, k) >= lowHz && at(frequencyHz, k) <= highHz;
      const rho = (k: number) => (isIn(k) ? at(reflectionMagnitude, k) : Number.POSITIVE_INFINITY);
      const inPiece: number[] = [];
      for (let k = first; k <= last; k++) if (isIn(k)) inPiece.push(k);
      places.push(
        ...inPiece
          .filter((k) => isAsGood(rho(k)) && rho(k) <= rho(k - 1) && rho(k) <= rho(k + 1))
          .map((k) => at(frequencyHz, k)),
      );
      if (!isAtEnd) continue;
      const isAtLow = Math.abs(lowHz - bestHz) < SAME_HZ;
      const outwards = isAtLow ? inPiece : inPiece.toReversed();
      for (const k of outwards) {
        if (!isAsGood(rho(k))) break;
        places.push(at(frequencyHz, k));
      }
    }
  }
  return places;
}
