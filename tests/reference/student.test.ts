/**
 * The quantile of Student's distribution that holds 95 % on both sides.
 *
 * Sources: values by scipy 1.17.1, stats.t.ppf(0.975, freedom); the distribution for whole degrees of freedom in closed form,
 * M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4 (from memory; it agrees with those values).
 */
import { expect, test } from "vitest";
import { student95 } from "../../packages/core/src/numbers/student.js";

const TOLERANCE = 1e-4;

const BY_SCIPY = [
  [1, 12.706205],
  [2, 4.302653],
  [3, 3.182446],
  [4, 2.776445],
  [5, 2.570582],
  [6, 2.446912],
  [7, 2.364624],
  [8, 2.306004],
  [9, 2.262157],
  [10, 2.228139],
  [11, 2.200985],
  [12, 2.178813],
  [15, 2.13145],
  [20, 2.085963],
  [25, 2.059539],
  [30, 2.042272],
  [40, 2.021075],
  [60, 2.000298],
  [120, 1.97993],
  [1000, 1.962339],
] as const;

for (const [freedom, quantile] of BY_SCIPY) {
  test(`at ${freedom} degrees of freedom`, () => {
    expect(Math.abs(student95(freedom) - quantile)).toBeLessThan(TOLERANCE);
  });
}

/** How likely a value of Student's distribution lies between -t and t. */
function probabilityWithin(t: number, freedom: number): number {
  const angle = Math.atan(t / Math.sqrt(freedom));
  const isOdd = freedom % 2 === 1;
  let term = isOdd ? Math.cos(angle) : 1;
  let sum = freedom === 1 ? 0 : term;
  for (let k = isOdd ? 3 : 2; k <= freedom - 2; k += 2) {
    term *= (Math.cos(angle) ** 2 * (k - 1)) / k;
    sum += term;
  }
  return isOdd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
}

test("it holds 95 % at all others up to 300", () => {
  for (let freedom = 1; freedom <= 300; freedom++) {
    expect(probabilityWithin(student95(freedom) - TOLERANCE, freedom)).toBeLessThan(0.95);
    expect(probabilityWithin(student95(freedom) + TOLERANCE, freedom)).toBeGreaterThan(0.95);
  }
});
