import { median } from "simple-statistics";
import { at, type Column } from "../../numbers/column.js";

/** With its first part turned over a column that was folded at zero bends less than this share of what it does as it is. */
const FOLDED_BEND = 0.4;
/** Where it was folded it bends more than this many times as it does elsewhere. */
const KINK = 4;

/** Whether a column falls and rises as a line does that was folded at zero: with a kink that is gone when one side is turned over. */
export function isFolded(values: Column): boolean {
  let lowest = 0;
  for (let i = 1; i < values.length; i++) if (at(values, i) < at(values, lowest)) lowest = i;
  if (lowest < 2 || lowest > values.length - 3) return false;
  const bendsWith = (turned: number, from: number, to: number) => {
    const signed = (i: number) => (i < turned ? -at(values, i) : at(values, i));
    return Array.from({ length: to - from + 1 }, (_, k) =>
      Math.abs(signed(from + k - 1) - 2 * signed(from + k) + signed(from + k + 1)),
    );
  };
  const sumWith = (turned: number) => bendsWith(turned, 1, values.length - 2).reduce((sum, bend) => sum + bend, 0);
  if (Math.min(sumWith(lowest), sumWith(lowest + 1)) < FOLDED_BEND * sumWith(0)) return true;
  const kinkWith = (turned: number) =>
    Math.max(...bendsWith(turned, Math.max(1, lowest - 1), Math.min(values.length - 2, lowest + 1)));
  const kink = kinkWith(0);
  const isGone = Math.min(kinkWith(lowest), kinkWith(lowest + 1)) < FOLDED_BEND * kink;
  return isGone && kink > KINK * median(bendsWith(0, 1, values.length - 2));
}
