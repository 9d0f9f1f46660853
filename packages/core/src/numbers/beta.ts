/**
 * The regularised incomplete beta function I(x; a, b), by its continued fraction.
 *
 * Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 1964, 26.5.8, evaluated from the front by the method of
 * W. J. Lentz, Applied Optics 15, 1976 (both from memory; the tests hold it to tables).
 *
 * @param x 0 to 1
 * @param a above 0
 * @param b above 0
 */
export function regularisedBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // The fraction converges fast below the mean of the distribution; above it the other tail is taken.
  if (x > (a + 1) / (a + b + 2)) return 1 - regularisedBeta(1 - x, b, a);
  const front = Math.exp(a * Math.log(x) + b * Math.log(1 - x) - logBeta(a, b)) / a;
  return front * fraction(x, a, b);
}

const MOST_TERMS = 300;
const TINY = 1e-300;

function fraction(x: number, a: number, b: number): number {
  let numerator = 1;
  let denominator = 1 / nonZero(1 - ((a + b) * x) / (a + 1));
  let value = denominator;
  for (let m = 1; m <= MOST_TERMS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    const before = value;
    for (const term of [even, odd]) {
      denominator = 1 / nonZero(1 + term * denominator);
      numerator = nonZero(1 + term / numerator);
      value *= denominator * numerator;
    }
    if (Math.abs(value / before - 1) < 1e-14) break;
  }
  return value;
}

const nonZero = (value: number): number => (Math.abs(value) < TINY ? TINY : value);

const logBeta = (a: number, b: number): number => logGamma(a) + logGamma(b) - logGamma(a + b);

/** Stirling's series, from 8 on; below that by the recurrence. Source: Abramowitz and Stegun, 6.1.41 (from memory). */
function logGamma(x: number): number {
  if (x < 8) return logGamma(x + 1) - Math.log(x);
  const square = 1 / (x * x);
  const series = (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square / 1188)))) / x;
  return (x - 0.5) * Math.log(x) - x + Math.log(2 * Math.PI) / 2 + series;
}

/**
 * The chance that an F ratio is at least so great where nothing but chance is at work.
 *
 * @param ratio 0 or more
 * @param above degrees of freedom of its numerator
 * @param below of its denominator
 */
export const chanceOfRatio = (ratio: number, above: number, below: number): number =>
  regularisedBeta(below / (below + above * Math.max(0, ratio)), below / 2, above / 2);
