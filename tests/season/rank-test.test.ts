/** The rank test by which groups are told apart, against cases worked out by hand. */
import { describe, expect, test } from "vitest";
import { chanceOfDifference, leastChance } from "../../packages/core/src/numbers/rank-test.js";

/** Twelve of the numbers from 1 to 24 with a given sum, 150 or less. */
function ranksWithSum(sum: number): number[] {
  const chosen = Array.from({ length: 12 }, (_, i) => i + 1);
  let left = sum - 78;
  for (let i = 11; i >= 0; i--) {
    const step = Math.min(12, left);
    chosen[i] = (chosen[i] ?? 0) + step;
    left -= step;
  }
  return chosen;
}

/** Share of the ways to draw twelve of 1 to 24 whose sum lies at least so far from 150, counted number by number. */
function countedChance(away: number): number {
  const ways = Array.from({ length: 13 }, () => new Array<number>(301).fill(0));
  (ways[0] as number[])[0] = 1;
  for (let rank = 1; rank <= 24; rank++) {
    for (let count = 12; count >= 1; count--) {
      const [to, from] = [ways[count] as number[], ways[count - 1] as number[]];
      for (let sum = 300; sum >= rank; sum--) to[sum] = (to[sum] ?? 0) + (from[sum - rank] ?? 0);
    }
  }
  const all = ways[12] as number[];
  const total = all.reduce((sum, count) => sum + count, 0);
  return all.reduce((sum, count, i) => sum + (Math.abs(i - 150) >= away ? count : 0), 0) / total;
}

describe("the chance that two groups are as far apart", () => {
  test.each([
    // Of the 20 ways to draw three of six, two part them wholly.
    [[1, 2, 3], [4, 5, 6], 2 / 20],
    // Rank sums of two of four: 3, 4, 5, 5, 6, 7; 4 and 6 and what lies beyond are four of six.
    [[1, 3], [2, 4], 4 / 6],
    [[1, 2], [3, 4], 2 / 6],
    // Equal values share their rank: 1, 2.5, 2.5, 4; sums 3.5, 3.5, 5, 5, 6.5, 6.5.
    [[1, 2], [2, 3], 4 / 6],
    [[5, 5, 5], [5, 5], 1],
    [[1, Number.POSITIVE_INFINITY], [2, Number.POSITIVE_INFINITY], 1],
  ])("%j and %j", (one, other, chance) => {
    expect(chanceOfDifference(one, other)).toBeCloseTo(chance, 12);
    expect(chanceOfDifference(other, one)).toBeCloseTo(chance, 12);
  });

  test.each([0, 20, 40, 60, 80])(
    "of larger groups is that of counting to 0.006: rank sum %i from the middle",
    (away) => {
      // Twelve of twenty-four: the sum of the first group's ranks is 150 in the middle.
      const chosen = ranksWithSum(150 - away);
      const others = Array.from({ length: 24 }, (_, i) => i + 1).filter((rank) => !chosen.includes(rank));
      expect(Math.abs(chanceOfDifference(chosen, others) - countedChance(away))).toBeLessThan(0.006);
    },
  );

  test("is least where the groups are wholly apart", () => {
    expect(leastChance(3, 3)).toBe(0.1);
    expect(leastChance(4, 5)).toBeCloseTo(2 / 126, 12);
  });
});
