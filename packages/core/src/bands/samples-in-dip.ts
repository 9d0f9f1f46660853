import type { Curve } from "../curve/curve.js";
import { at, firstIndexAbove } from "../numbers/column.js";

/** The foot of a dip is looked for among so many samples to each side. */
const REACH = 6;
/** A dip in which this much less of the power goes in than at its deepest, and no more, is a ripple (our own choice). */
const LEAST_DEPTH = 0.15;

/**
 * How many samples the dip of a band rests on: those next to each other in which at least half as much more of the power goes in
 * than beside the dip, as in the deepest. One resonance between its points of half the power is that wide.
 *
 * @returns null where there is no dip with both of its sides in reach
 */
export function samplesInDip(curve: Curve, lowHz: number, highHz: number): { samples: number; stepHz: number } | null {
  const { frequencyHz } = curve.sweep;
  const goesIn = (i: number) => 1 - at(curve.reflectionMagnitude, i) ** 2;
  const stretch = curve.stretches.find(
    ({ first, last }) => at(frequencyHz, first) <= highHz && at(frequencyHz, last) >= lowHz,
  );
  if (stretch === undefined) return null;
  // The sample on each side of the band counts, for the dip may lie between it and the first of the band.
  const from = Math.max(stretch.first, firstIndexAbove(frequencyHz, lowHz) - 1);
  const to = Math.min(stretch.last, firstIndexAbove(frequencyHz, highHz));
  let deepest = from;
  for (let i = from; i <= to; i++) if (goesIn(i) > goesIn(deepest)) deepest = i;
  const foot = (step: 1 | -1) => {
    let least = goesIn(deepest);
    for (let k = 1; k <= REACH; k++) {
      const i = deepest + k * step;
      if (i >= stretch.first && i <= stretch.last) least = Math.min(least, goesIn(i));
    }
    return least;
  };
  const half = (goesIn(deepest) + Math.max(foot(-1), foot(1))) / 2;
  if (goesIn(deepest) - half < LEAST_DEPTH / 2) return null;
  let [first, last] = [deepest, deepest];
  while (first > stretch.first && goesIn(first - 1) >= half) first--;
  while (last < stretch.last && goesIn(last + 1) >= half) last++;
  const end = Math.min(last + 1, stretch.last);
  return {
    samples: last - first + 1,
    stepHz: (at(frequencyHz, end) - at(frequencyHz, first)) / Math.max(1, end - first),
  };
}
