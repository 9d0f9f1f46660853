import { student95 } from "../../numbers/student.js";

/** How much of its departure a dip may keep until the next sweep, at the usual time between two. */
const PERSISTENCES = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95];
/** Sweeps of one day are not one: closer than this share of the usual time between two they count as so far apart. */
const LEAST_GAP = 0.05;

/**
 * By how much a slope may be off, with 95 % probability, where scatter persists: what is wet this week is wet next week. How much it
 * persists is told from the departures themselves, of which few tell little, so that all that they allow is weighed in.
 *
 * Restricted likelihood of a Gaussian process whose correlation falls exponentially with time, over a grid of persistences, each with
 * the same weight beforehand (D. A. Harville, Journal of the American Statistical Association 72, 1977, on restricted likelihood; from
 * memory).
 *
 * @param months when each was swept, ascending
 * @param departures from the lines that were fitted, Hz
 * @param starts indices at which the lines begin; they share a slope
 * @returns Hz a month; Infinity where too few dips are left
 */
export function slopeMargin(
  months: readonly number[],
  departures: readonly number[],
  starts: readonly number[],
): number {
  // A step takes two unknowns: its size and its place.
  const freedom = months.length - 2 * starts.length;
  if (freedom < 1) return Number.POSITIVE_INFINITY;
  const rows = rowsOf(months, departures, starts);
  const gaps = gapsOf(months);
  const fits = PERSISTENCES.map((persistence) => fitted(rows, gaps, persistence, freedom));
  const likeliest = Math.max(...fits.map(({ logLikelihood }) => logLikelihood));
  const weights = fits.map(({ logLikelihood }) => Math.exp(logLikelihood - likeliest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = (of: (fit: Fitted) => number) =>
    fits.reduce((sum, fit, i) => sum + ((weights[i] ?? 0) / total) * of(fit), 0);
  const slope = mean((fit) => fit.slope);
  const variance = mean((fit) => fit.variance + (fit.slope - slope) ** 2);
  return student95(freedom) * Math.sqrt(variance);
}

interface Fitted {
  readonly slope: number;
  readonly variance: number;
  /** Restricted, but for a constant */
  readonly logLikelihood: number;
}

/** For each dip which line it is on, how long after the first it was, and its departure. */
function rowsOf(
  months: readonly number[],
  departures: readonly number[],
  starts: readonly number[],
): readonly (readonly number[])[] {
  return months.map((month, i) => {
    const line = starts.filter((start) => start <= i).length - 1;
    return [...starts.map((_, k) => Number(k === line)), month - (months[0] ?? 0), departures[i] ?? 0];
  });
}

/** Least squares for one persistence: on what of each departure is new since the one before. */
function fitted(
  rows: readonly (readonly number[])[],
  gaps: readonly number[],
  persistence: number,
  freedom: number,
): Fitted {
  let logScales = 0;
  const whitened = rows.map((row, i) => {
    if (i === 0) return row;
    const kept = persistence ** (gaps[i - 1] ?? 1);
    const scale = Math.sqrt(1 - kept * kept);
    logScales += Math.log(scale);
    return row.map((value, k) => (value - kept * (rows[i - 1]?.[k] ?? 0)) / scale);
  });
  const { logDeterminant, residualSquares, last, lastVariance } = leastSquares(whitened);
  const squares = Math.max(residualSquares, Number.MIN_VALUE);
  return {
    slope: last,
    variance: (lastVariance * squares) / freedom,
    logLikelihood: -logScales - logDeterminant / 2 - (freedom / 2) * Math.log(squares),
  };
}

/** Times from one sweep to the next, over what is usual between two of different days. */
function gapsOf(months: readonly number[]): readonly number[] {
  const gaps = months.slice(1).map((month, i) => month - (months[i] ?? 0));
  const apart = gaps.filter((gap) => gap > 0).sort((a, b) => a - b);
  const usual = apart[Math.floor(apart.length / 2)] ?? 1;
  return gaps.map((gap) => Math.max(LEAST_GAP, gap / usual));
}

/**
 * Least squares of the last column by the others, by Gram and Schmidt: the last unknown, its variance for residuals of variance 1, and
 * the logarithm of the determinant of the normal equations.
 */
function leastSquares(rows: readonly (readonly number[])[]) {
  const width = rows[0]?.length ?? 0;
  const columns = Array.from({ length: width }, (_, k) => rows.map((row) => row[k] ?? 0));
  let logDeterminant = 0;
  let last = 0;
  let lastVariance = 0;
  for (const [k, column] of columns.slice(0, -1).entries()) {
    const norm = dot(column, column);
    logDeterminant += Math.log(norm);
    for (const other of columns.slice(k + 1)) {
      const factor = dot(column, other) / norm;
      for (const [i, value] of column.entries()) other[i] = (other[i] ?? 0) - factor * value;
      if (k === width - 2) last = factor;
    }
    if (k === width - 2) lastVariance = 1 / norm;
  }
  const residual = columns[width - 1] ?? [];
  return { logDeterminant, residualSquares: dot(residual, residual), last, lastVariance };
}

const dot = (one: readonly number[], other: readonly number[]): number =>
  one.reduce((sum, value, i) => sum + value * (other[i] ?? 0), 0);
