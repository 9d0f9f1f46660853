import { student95 } from "./student.js";

/** A value told by a group of measurements that belong together, and how much it would vary were the group measured again. */
export interface ClusterValue {
  readonly value: number;
  /** Variance of the value within the group; 0 or more */
  readonly variance: number;
}

/** What groups tell together. */
export interface ClusteredMean {
  readonly mean: number;
  /** Both ends that hold the mean of all such groups with 95 %; null for fewer than two groups */
  readonly interval: { readonly low: number; readonly high: number } | null;
  /** Variance between groups beyond what they vary in themselves */
  readonly between: number;
}

/**
 * The mean of groups of which each has a value of its own: not the measurements are independent, the groups are. Each weighs by its
 * own variance and that between groups (R. C. Paule, J. Mandel, J. Res. NBS 87:377, 1982), the interval is Student's with one degree
 * of freedom less than groups, its width what the
 * groups do scatter (G. Knapp, J. Hartung, Stat. Med. 22:2693, 2003; from memory).
 *
 * @param groups at least one
 */
export function clusteredMean(groups: readonly ClusterValue[]): ClusteredMean {
  const count = groups.length;
  const between = variationBetween(groups);
  const { mean, weight, squares } = weighed(groups, between);
  if (count < 2) return { mean, interval: null, between };
  // A few groups may agree by chance, which makes none of them surer than it is by itself.
  const scatter = Math.max(count < FEW ? 1 : 0, squares / (count - 1));
  const half = student95(count - 1) * Math.sqrt(scatter / weight);
  return { mean, interval: { low: mean - half, high: mean + half }, between };
}

/** Fewer groups than these do not tell how far groups scatter. */
const FEW = 6;

/** Nothing varies less than this, so that no group weighs without end. */
const LEAST_VARIANCE = 1e-9;

function weighed(groups: readonly ClusterValue[], between: number) {
  const weights = groups.map(({ variance }) => 1 / Math.max(LEAST_VARIANCE, variance + between));
  const weight = weights.reduce((sum, each) => sum + each, 0);
  const mean = groups.reduce((sum, { value }, i) => sum + value * (weights[i] as number), 0) / weight;
  const squares = groups.reduce((sum, { value }, i) => sum + (weights[i] as number) * (value - mean) ** 2, 0);
  return { mean, weight, squares };
}

/** The variance between groups by which they scatter as much as they should; 0 where they scatter less even without any. */
function variationBetween(groups: readonly ClusterValue[]): number {
  const wanted = groups.length - 1;
  if (wanted < 1 || weighed(groups, 0).squares <= wanted) return 0;
  let [low, high] = [0, 1];
  while (weighed(groups, high).squares > wanted) high *= 2;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (weighed(groups, middle).squares > wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * How likely a mean as far from 0 is where the sign of each value is as good as its opposite: all choices of signs of up to
 * sixteen values; null for more, of which Student's interval says as much.
 */
export function signFlipChance(values: readonly number[]): number | null {
  const count = values.length;
  if (count > 16) return null;
  const seen = Math.abs(values.reduce((sum, value) => sum + value, 0));
  // What differs by rounding alone is as far.
  const slack = 1e-9 * values.reduce((sum, value) => sum + Math.abs(value), 0);
  let asFar = 0;
  for (let signs = 0; signs < 2 ** count; signs++) {
    const sum = values.reduce((total, value, i) => total + (((signs >> i) & 1) === 1 ? value : -value), 0);
    if (Math.abs(sum) >= seen - slack) asFar++;
  }
  return asFar / 2 ** count;
}

/** How likely a split as uneven is where either side is as likely: the exact test of McNemar, on both sides. */
export function splitChance(one: number, other: number): number {
  const count = one + other;
  if (count === 0) return 1;
  let term = 1;
  let tail = 1;
  for (let k = 1; k <= Math.min(one, other); k++) {
    term *= (count - k + 1) / k;
    tail += term;
  }
  return Math.min(1, (2 * tail) / 2 ** count);
}
