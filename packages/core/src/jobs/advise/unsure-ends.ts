import { matchedLossDb } from "../../facts/feedline/feedline.js";
import { mayReflectAll } from "../../facts/feedline/spread-of-kind.js";
import { magnitudeAt } from "../../facts/matching/chain.js";
import { at } from "../../numbers/column.js";
import type { View } from "./view.js";
import { rangeOf } from "./wish-grid.js";

/** The wishes, by their places, on which a line that loses a little more than is usual would leave an antenna that reflects everything. */
export function unsureEnds(view: View): ReadonlySet<number> {
  const { grid, line } = view;
  if (line === null || line.feedline.lossIs !== "typical") return new Set();
  const { feedline } = line;
  const { antenna } = view.endsAt(0);
  const isUnsure = (i: number) => {
    const rho = magnitudeAt(antenna, i, feedline.characteristicOhms);
    return mayReflectAll(rho, matchedLossDb(feedline, at(grid.frequencyHz, i)), feedline.lossIs);
  };
  return new Set(
    grid.wishes.flatMap((_, wish) => {
      const [start, end] = rangeOf(grid, wish);
      return Array.from({ length: end - start }, (_, k) => start + k).some(isUnsure) ? [wish] : [];
    }),
  );
}
