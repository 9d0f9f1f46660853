import { errorFunction } from "simple-statistics";

/** In more ways than this two groups are not drawn anew one after the other; the normal distribution then serves. */
const MOST_WAYS = 20_000;

/**
 * How likely chance alone sets two groups as far apart as they are, or farther, either way: the sum of the ranks of one of them
 * among all ways of drawing it, equal values sharing their rank.
 *
 * Source: H. B. Mann, D. R. Whitney, Annals of Mathematical Statistics 18, 1947, p. 50; the normal approximation with its
 * correction for equal values from a handbook (both from memory; a test holds it to small cases worked out by hand).
 *
 * @returns from 0 to 1; 1 where all values are equal
 */
export function chanceOfDifference(one: readonly number[], other: readonly number[]): number {
  const ranks = ranksOf([...one, ...other]);
  const total = ranks.length;
  const expected = (one.length * (total + 1)) / 2;
  const sumOfRanks = (some: readonly number[]) => some.reduce((sum, rank) => sum + rank, 0);
  const distance = Math.abs(sumOfRanks(ranks.slice(0, one.length)) - expected);
  if (waysToDraw(one.length, total) <= MOST_WAYS) {
    let ways = 0;
    let asFar = 0;
    eachDraw(ranks, one.length, (sum) => {
      ways++;
      // Ranks are halves at the least: less than that is rounding.
      if (Math.abs(sum - expected) > distance - 0.25) asFar++;
    });
    return asFar / ways;
  }
  const mean = sumOfRanks(ranks) / total;
  const squares = ranks.reduce((sum, rank) => sum + (rank - mean) ** 2, 0);
  const variance = (one.length * other.length * squares) / (total * (total - 1));
  if (variance === 0) return 1;
  const deviation = Math.max(0, distance - 0.5) / Math.sqrt(variance);
  return 1 - errorFunction(deviation / Math.SQRT2);
}

/** The least that chanceOfDifference can be for groups of these sizes. */
export const leastChance = (one: number, other: number): number => 2 / waysToDraw(one, one + other);

/** Ranks from 1 on; equal values share the mean of theirs. */
function ranksOf(values: readonly number[]): readonly number[] {
  const sorted = values.toSorted((a, b) => a - b);
  const first = new Map<number, number>();
  const last = new Map<number, number>();
  sorted.forEach((value, i) => {
    if (!first.has(value)) first.set(value, i);
    last.set(value, i);
  });
  return values.map((value) => ((first.get(value) ?? 0) + (last.get(value) ?? 0)) / 2 + 1);
}

/** In how many ways so many can be drawn out of all; infinite where that is beyond counting. */
function waysToDraw(count: number, total: number): number {
  let ways = 1;
  for (let k = 1; k <= Math.min(count, total - count); k++) ways = (ways * (total - k + 1)) / k;
  return ways;
}

/** The sum of each way to draw so many of some values. */
function eachDraw(values: readonly number[], count: number, take: (sum: number) => void): void {
  const draw = (from: number, left: number, sum: number) => {
    if (left === 0) {
      take(sum);
      return;
    }
    for (let i = from; i <= values.length - left; i++) draw(i + 1, left - 1, sum + (values[i] as number));
  };
  draw(0, count, 0);
}
