import type { Wish } from "../../bands/wish.js";
import { totalWidth } from "../../curve/pieces.js";

/** The frequencies at which all wishes are looked at, one wish after the other. */
export interface WishGrid {
  readonly wishes: readonly Wish[];
  readonly frequencyHz: Float64Array;
  /** From each frequency to the next of the same piece, as a share of its wish; 0 at the end of a piece */
  readonly share: Float64Array;
  /** Where each wish begins, and where the last one ends */
  readonly starts: readonly number[];
}

/** Pieces are told apart by so many frequencies at least. */
const FEWEST_OF_PIECE = 3;

/** A grid of about so many frequencies a wish, spread over its pieces by their widths. */
export function gridOf(wishes: readonly Wish[], points: number): WishGrid {
  const ofWishes = wishes.map((wish) => placesOf(wish, points));
  const all = ofWishes.flat();
  const starts = [0];
  for (const places of ofWishes) starts.push((starts.at(-1) ?? 0) + places.length);
  return {
    wishes,
    frequencyHz: Float64Array.from(all, ({ hz }) => hz),
    share: Float64Array.from(all, ({ share }) => share),
    starts,
  };
}

/** Where a wish begins, and where the next one does. */
export const rangeOf = ({ starts }: WishGrid, wish: number): readonly [start: number, end: number] => [
  starts[wish] ?? 0,
  starts[wish + 1] ?? 0,
];

function placesOf({ pieces }: Wish, points: number) {
  const wholeHz = totalWidth(pieces);
  return pieces.flatMap(({ lowHz, highHz }) => {
    const steps = Math.max(FEWEST_OF_PIECE, Math.round((points * (highHz - lowHz)) / wholeHz)) - 1;
    return Array.from({ length: steps + 1 }, (_, i) => ({
      hz: lowHz + ((highHz - lowHz) * i) / steps,
      share: i === steps ? 0 : (highHz - lowHz) / steps / wholeHz,
    }));
  });
}
