import { combinations, errorFunction, sum, sumNthPowerDeviations } from "simple-statistics";

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
  const distance = Math.abs(sum(ranks.slice(0, one.length)) - expected);
  if (waysToDraw(one.length, total) <= MOST_WAYS) {
    const sums = combinations(ranks, one.length).map(sum);
    // Ranks are halves at the least: less than that is rounding.
    return sums.filter((other) => Math.abs(other - expected) > distance - 0.25).length / sums.length;
  }
  const squares = sumNthPowerDeviations(ranks, 2);
  const variance = (one.length * other.length * squares) / (total * (total - 1));
  if (variance === 0) return 1;
  const deviation = Math.max(0, distance - 0.5) / Math.sqrt(variance);
  return 1 - errorFunction(deviation / Math.SQRT2);
}

/** The least that chanceOfDifference can be for groups of these sizes. */
export const leastChance = (one: number, other: number): number => 2 / waysToDraw(one, one + other);

/** Ranks from 1 on; equal values share the mean of theirs. */
function ranksOf(values: readonly number[]): number[] {
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
