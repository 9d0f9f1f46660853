import type { Wish } from "../../bands/wish.js";
import { at } from "../../numbers/column.js";
import type { Shares } from "./shares.js";

/**
 * How good a candidate is over all wishes: the worst of them counts first, then the mean by weight; then both without a tuner; and of
 * those that are alike in all of that the one with the least reflected.
 */
export interface Score {
  readonly worst: number;
  readonly mean: number;
  readonly worstWithoutTuner: number;
  readonly meanWithoutTuner: number;
  /** Mean ρ over the worst wish */
  readonly magnitude: number;
}

/** The score of shares of some wishes. */
export function scoreOf(
  { reached, withoutTuner, meanMagnitude }: Shares,
  wishes: readonly Pick<Wish, "weight">[],
): Score {
  let total = 0;
  let worst = 1;
  let mean = 0;
  let worstWithoutTuner = 1;
  let meanWithoutTuner = 0;
  let magnitude = 0;
  for (let wish = 0; wish < wishes.length; wish++) {
    const weight = wishes[wish]?.weight ?? 1;
    total += weight;
    worst = Math.min(worst, at(reached, wish));
    mean += weight * at(reached, wish);
    worstWithoutTuner = Math.min(worstWithoutTuner, at(withoutTuner, wish));
    meanWithoutTuner += weight * at(withoutTuner, wish);
    magnitude = Math.max(magnitude, at(meanMagnitude, wish));
  }
  return { worst, mean: mean / total, worstWithoutTuner, meanWithoutTuner: meanWithoutTuner / total, magnitude };
}

/** Shares are told apart from here on. */
const SAME = 1e-6;

/** Above 0 where the first is better. */
export function compareScores(a: Score, b: Score): number {
  return (
    inPercent(a.worst) - inPercent(b.worst) ||
    apart(a.mean, b.mean) ||
    inPercent(a.worstWithoutTuner) - inPercent(b.worstWithoutTuner) ||
    apart(a.meanWithoutTuner, b.meanWithoutTuner) ||
    apart(b.magnitude, a.magnitude)
  );
}

/** Nobody builds something for less than a percent of one band. */
const inPercent = (share: number): number => Math.round(100 * share);

const apart = (a: number, b: number): number => (Math.abs(a - b) > SAME ? a - b : 0);
