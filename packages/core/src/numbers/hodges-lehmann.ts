/**
 * The median of the means of all pairs of values, each with itself as well (Walsh averages): a middle that a few wild values do
 * not move, nearly as sharp as the mean where there are none. J. L. Hodges, E. L. Lehmann, Ann. Math. Statist. 34:598, 1963.
 *
 * @param values at least one
 */
export function hodgesLehmann(values: readonly number[]): number {
  return medianOfSorted(walshAverages(values));
}

/**
 * The interval around it that holds the middle with at least 95 %: from the q-th lowest Walsh average to the q-th highest, q the
 * least rank sum that is reached by chance in 2.5 % (M. Hollander, D. A. Wolfe, Nonparametric Statistical Methods).
 *
 * @returns null for fewer than six values, of which no such interval exists
 */
export function hodgesLehmannInterval(
  values: readonly number[],
): { readonly low: number; readonly high: number } | null {
  const place = leastRankSum(values.length);
  if (place === 0) return null;
  const averages = walshAverages(values);
  return { low: averages[place - 1] as number, high: averages[averages.length - place] as number };
}

/**
 * How likely signs as one-sided as these are by chance (Wilcoxon's signed ranks): zeros are left out, equal sizes share their
 * ranks, and every choice of signs counts alike.
 *
 * @returns the sum of the ranks of those above 0, and the chance of one as far from the middle on either side
 */
export function signedRanks(values: readonly number[]): { readonly statistic: number; readonly chance: number } {
  const sizes = values.filter((value) => value !== 0).sort((a, b) => Math.abs(a) - Math.abs(b));
  // Twice the ranks, which are whole numbers even where two values share theirs.
  const ranks = sizes.map((value) => {
    const first = sizes.findIndex((other) => Math.abs(other) === Math.abs(value));
    const last = sizes.findLastIndex((other) => Math.abs(other) === Math.abs(value));
    return first + last + 2;
  });
  const twice = ranks.reduce((sum, rank, i) => sum + ((sizes[i] as number) > 0 ? rank : 0), 0);
  const total = ranks.reduce((sum, rank) => sum + rank, 0);
  const lesser = Math.min(twice, total - twice);
  const ways = waysBySum(ranks, lesser);
  const tail = ways.reduce((sum, count) => sum + count, 0) / 2 ** ranks.length;
  return { statistic: twice / 2, chance: Math.min(1, 2 * tail) };
}

function walshAverages(values: readonly number[]): Float64Array {
  const count = values.length;
  const averages = new Float64Array((count * (count + 1)) / 2);
  let next = 0;
  for (let i = 0; i < count; i++) {
    for (let j = i; j < count; j++) averages[next++] = ((values[i] as number) + (values[j] as number)) / 2;
  }
  return averages.sort();
}

function medianOfSorted(values: Float64Array): number {
  const middle = values.length >> 1;
  const upper = values[middle] as number;
  return values.length % 2 === 1 ? upper : ((values[middle - 1] as number) + upper) / 2;
}

/** The least k for which a sum of signed ranks up to k has a chance of 2.5 % or more; 0 where even the least sum has. */
function leastRankSum(count: number): number {
  const ranks = Array.from({ length: count }, (_, i) => i + 1);
  const half = Math.ceil((count * (count + 1)) / 4);
  let tail = 0;
  for (const [sum, ways] of waysBySum(ranks, half).entries()) {
    tail += ways / 2 ** count;
    if (tail >= 0.025) return sum;
  }
  return half;
}

/** In how many ways some of the ranks sum up to each number from 0 to a greatest one. */
function waysBySum(ranks: readonly number[], greatest: number): readonly number[] {
  const ways = new Array<number>(greatest + 1).fill(0);
  ways[0] = 1;
  for (const rank of ranks) {
    for (let sum = greatest; sum >= rank; sum--) ways[sum] = (ways[sum] as number) + (ways[sum - rank] as number);
  }
  return ways;
}
