import { median, sum } from "simple-statistics";
import { slopeMargin } from "./persistent-scatter.js";

/** A dip and when it was swept. */
export interface DatedDip {
  readonly months: number;
  readonly dipHz: number;
}

/** How dips went over time but for a step, if there is one. */
export interface Trend {
  /** Hz a month */
  readonly slope: number;
  /** By how much the slope may be off, with 95 % probability */
  readonly margin: number;
  /** Median distance of the dips from it, Hz, but for as many as there are unknowns */
  readonly scatter: number;
}

const FEWEST_DATES = 3;
/** In fewer dips a step cannot be told from scatter; in more not every place is tried for one. */
const FEWEST_FOR_A_STEP = 5;
const MOST_FOR_A_STEP = 100;
/** With a step the dips lie nearer than this share of what they do without, or there is none: few may do so by chance. */
const STEP_SHARES: readonly { readonly dips: number; readonly share: number }[] = [
  { dips: 5, share: 0.25 },
  { dips: 6, share: 0.3 },
  { dips: 8, share: 0.4 },
  { dips: 12, share: 0.5 },
  { dips: Number.POSITIVE_INFINITY, share: 0.6 },
];
/** A step is at least so many Hz, and this many times the mean distance that it leaves (our own choices, by simulation). */
const LEAST_STEP_HZ = 15_000;
const STEP_RATIO = 9;
/** With more dips than this not all pairs are looked at, but each dip with the one half of the series later. */
const MOST_FOR_ALL_PAIRS = 1000;
/** A dip farther off than this many times the scatter counts as no farther: three standard deviations of a normal one. */
const FARTHEST_RATIO = 4.45;

/**
 * The trend of dips in order of time: the median of the slopes between pairs, which a few odd ones do not move (H. Theil, 1950;
 * P. K. Sen, Journal of the American Statistical Association 63, 1968; both from memory). A lasting step would tilt it; where
 * one leaves far less, pairs on either side of it alone are looked at.
 *
 * @returns null for fewer than three dates
 */
export function trendOf(dips: readonly DatedDip[]): Trend | null {
  const dates = new Set(dips.map(({ months }) => months)).size;
  if (dates < FEWEST_DATES) return null;
  const pairs = pairsOf(dips);
  const line = fitFor(dips, pairs, []);
  if (line === null) return null;
  const stepped = dips.length < FEWEST_FOR_A_STEP || dips.length > MOST_FOR_A_STEP ? null : bestStep(dips, pairs);
  const isStep =
    stepped !== null &&
    stepped.distance < (STEP_SHARES.find((few) => dips.length <= few.dips)?.share ?? 0) * line.distance &&
    Math.abs(stepped.step) > Math.max(LEAST_STEP_HZ, (STEP_RATIO * stepped.distance) / dips.length);
  return trendFrom(dips, isStep ? stepped : line);
}

interface Pair {
  readonly first: number;
  readonly second: number;
  readonly slope: number;
}

/** A slope, and what it leaves. */
interface Fit {
  readonly slope: number;
  /** Indices at which the dips begin that lie on one line */
  readonly starts: readonly number[];
  readonly residuals: readonly number[];
  /** Sum of the distances */
  readonly distance: number;
  /** From the first line to the last one, Hz */
  readonly step: number;
}

function pairsOf(dips: readonly DatedDip[]): readonly Pair[] {
  const half = Math.ceil(dips.length / 2);
  const isLong = dips.length > MOST_FOR_ALL_PAIRS;
  const pairs: Pair[] = [];
  for (const [first, a] of dips.entries()) {
    const start = isLong ? first + half : first + 1;
    for (const [k, b] of dips.slice(start, isLong ? start + 1 : dips.length).entries()) {
      if (b.months <= a.months) continue;
      pairs.push({ first, second: start + k, slope: (b.dipHz - a.dipHz) / (b.months - a.months) });
    }
  }
  return pairs;
}

/** The step that leaves the least; null where none leaves a pair on one side. */
function bestStep(dips: readonly DatedDip[], pairs: readonly Pair[]): Fit | null {
  return dips
    .slice(1)
    .map((_, k) => fitFor(dips, pairs, [k + 1]))
    .reduce((best, next) => (next !== null && (best === null || next.distance < best.distance) ? next : best), null);
}

/** @param steps index of the first dip after each step */
function fitFor(dips: readonly DatedDip[], pairs: readonly Pair[], steps: readonly number[]): Fit | null {
  const slopes = pairs
    .filter(({ first, second }) => !steps.some((step) => first < step && second >= step))
    .map((pair) => pair.slope);
  if (slopes.length === 0) return null;
  const slope = median(slopes);
  const offsets = dips.map(({ months, dipHz }) => dipHz - slope * (months - (dips[0]?.months ?? 0)));
  const starts = [0, ...steps];
  const parts = starts.map((start, k) => offsets.slice(start, starts[k + 1]));
  const middles = parts.map((part) => median(part));
  const residuals = parts.flatMap((part, k) => part.map((offset) => offset - (middles[k] ?? 0)));
  return {
    slope,
    starts,
    residuals,
    distance: sum(residuals.map(Math.abs)),
    step: (middles.at(-1) ?? 0) - (middles[0] ?? 0),
  };
}

/** The margin allows for scatter that persists (see persistent-scatter.ts), the farthest of the dips pulled in. */
function trendFrom(dips: readonly DatedDip[], { slope, starts, residuals }: Fit): Trend {
  // As many as there are unknowns lie on the lines or next to them, whatever the scatter.
  const distances = residuals.map(Math.abs).sort((a, b) => a - b);
  const scatter = median(distances.slice(Math.min(starts.length + 1, distances.length - 1)));
  const farthest = dips.length < FEWEST_FOR_A_STEP ? Number.POSITIVE_INFINITY : FARTHEST_RATIO * scatter;
  const pulledIn = residuals.map((residual) => Math.max(-farthest, Math.min(farthest, residual)));
  const months = dips.map((dip) => dip.months);
  return { slope, margin: slopeMargin(months, pulledIn, starts), scatter };
}
