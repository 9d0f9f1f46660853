import type { Known } from "../../bands/known.js";
import { DEFAULT_SCATTER } from "../../bands/scatter.js";
import type { Wish } from "../../bands/wish.js";
import { complex } from "../../numbers/complex.js";
import type { WishNow } from "./advise-result.js";
import { type Antenna, NO_DEVIATION } from "./antenna.js";
import { AS_IS } from "./candidate.js";
import type { OpenQuestions } from "./experiment.js";
import type { Terms } from "./shares.js";
import { FOLLOWS_ALL, sharesIn, type View, viewOf } from "./view.js";
import { gridOf, rangeOf } from "./wish-grid.js";

/** Frequencies of a wish that are looked at. */
const POINTS = 25;
/** A wire that is longer or shorter by this much is to be foretold (our own choice). */
const CHANGE = 0.05;
/** A share that scatter changes by more than this is not told (our own choice). */
const MATTERS = 0.05;
const WHOLE = 0.995;

/** What is open about each wish. */
export function openQuestions(
  antenna: Antenna,
  { overlaps }: Known,
  wishes: readonly WishNow[],
  foretold: readonly Wish[],
  terms: Terms,
  isLineKnown: boolean,
): readonly OpenQuestions[] {
  const grid = gridOf(foretold, POINTS);
  const plain = viewOf(antenna, grid, terms, FOLLOWS_ALL);
  const off = (direction: number) =>
    viewOf(antenna, grid, terms, FOLLOWS_ALL, () => ({
      ...NO_DEVIATION,
      reflection: complex(direction * DEFAULT_SCATTER, 0),
    }));
  const shares = [plain, off(1), off(-1)].map((view) => sharesIn(view, AS_IS).reached);
  return wishes.map(({ title, notForetold }) => {
    const i = foretold.findIndex((wish) => wish.title === title);
    const isKnown = notForetold === null && i >= 0;
    const reached = shares.map((each) => each[i] ?? 0);
    const spread = Math.max(...reached) - Math.min(...reached);
    return {
      title,
      isKnown,
      hasPhase: antenna.hasPhase,
      isLineKnown,
      isLineDoubtful: isKnown && antenna.feedline !== null && holdsUnknown(plain, i, 0),
      isSweptBeside: isKnown && !holdsUnknown(plain, i, CHANGE) && !holdsUnknown(plain, i, -CHANGE),
      mayScatter: isKnown && overlaps.length === 0 && spread > MATTERS,
      isReached: (reached[0] ?? 0) >= WHOLE,
    };
  });
}

/** Whether the antenna is not known somewhere within a wish, with the wire changed. */
function holdsUnknown(view: View, wish: number, lengthChange: number): boolean {
  return view
    .endsAt(lengthChange)
    .antenna.voltsReal.subarray(...rangeOf(view.grid, wish))
    .some(Number.isNaN);
}
