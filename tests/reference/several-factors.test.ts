/**
 * Several factors at once: the cement data of A. Hald, Statistical Theory with Engineering Applications, 1952, with its fit as commonly
 * printed; the criterion of C. M. Hurvich and C.-L. Tsai, 1989; tail chances of F as scipy 1.17.1 (stats.f.sf) and tables give them.
 */
import { describe, expect, test } from "vitest";
import { chanceOfRatio, regularisedBeta } from "../../packages/core/src/numbers/beta.js";
import { criterionOf, leastSquares } from "../../packages/core/src/numbers/least-squares.js";

const CEMENT = [
  [7, 26, 6, 60, 78.5],
  [1, 29, 15, 52, 74.3],
  [11, 56, 8, 20, 104.3],
  [11, 31, 8, 47, 87.6],
  [7, 52, 6, 33, 95.9],
  [11, 55, 9, 22, 109.2],
  [3, 71, 17, 6, 102.7],
  [1, 31, 22, 44, 72.5],
  [2, 54, 18, 22, 93.1],
  [21, 47, 4, 26, 115.9],
  [1, 40, 23, 34, 83.8],
  [11, 66, 9, 12, 113.3],
  [10, 68, 8, 12, 109.4],
];
const column = (k: number) => CEMENT.map((row) => row[k] ?? Number.NaN);
const heat = column(4);
const columns = (which: readonly number[]) => which.map((k) => column(k - 1));

describe("the cement data", () => {
  const fit = leastSquares([heat.map(() => 1), ...columns([1, 2, 3, 4])], heat);

  test("has the coefficients and standard errors that are printed", () => {
    const wanted = [62.4053693, 1.551102648, 0.5101675797, 0.1019094036, -0.1440610291];
    wanted.forEach((value, i) => {
      expect(fit?.coefficients[i]).toBeCloseTo(value, 6);
    });
    expect(fit?.residualSquares).toBeCloseTo(47.86363935, 7);
    const errors = [70.07095921, 0.7447698671, 0.7237880018, 0.7547090451, 0.7090520634];
    errors.forEach((value, i) => {
      expect(Math.sqrt(((fit?.variances[i] ?? 0) * (fit?.residualSquares ?? 0)) / 8)).toBeCloseTo(value, 6);
    });
  });

  test.each([
    [[1, 2], 32.42],
    [[1, 2, 4], 35.545],
    [[1, 2, 3], 35.583],
    [[1, 4], 35.742],
    [[1, 2, 3, 4], 42.944],
    [[2], 63.845],
    [[4], 63.518],
    [[], 74.644],
  ] as const)("%j has the criterion %d", (which, criterion) => {
    expect(Math.abs(criterionOf(columns(which), heat) - criterion)).toBeLessThan(6e-4);
  });

  test("a column that follows from others has no fit", () => {
    expect(leastSquares([heat.map(() => 1), heat, heat.map((value) => 2 * value - 3)], heat)).toBeNull();
    expect(criterionOf([heat, heat], heat)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("chances", () => {
  test("of F are those of the tables", () => {
    // The greatest F of one in twenty: 4.9646 (1 and 10), 3.4903 (3 and 12), 2.7109 (5 and 20); of one in a hundred 10.0443 (1 and 10).
    expect(chanceOfRatio(4.9646, 1, 10)).toBeCloseTo(0.05, 5);
    expect(chanceOfRatio(3.4903, 3, 12)).toBeCloseTo(0.05, 5);
    expect(chanceOfRatio(2.7109, 5, 20)).toBeCloseTo(0.05, 5);
    expect(chanceOfRatio(10.0443, 1, 10)).toBeCloseTo(0.01, 5);
    expect(chanceOfRatio(0, 2, 9)).toBe(1);
  });

  test("of Student's t are squares of F: 2.22814 at 10 degrees of freedom", () => {
    expect(chanceOfRatio(2.22814 ** 2, 1, 10)).toBeCloseTo(0.05, 6);
  });

  test("the incomplete beta function is a binomial tail where it is one", () => {
    // I(0.3; 3, 8): of 10 draws at 0.3 three or more.
    const tail = [0, 1, 2].reduce((sum, k) => {
      const ways = [1, 10, 45][k] ?? 0;
      return sum - ways * 0.3 ** k * 0.7 ** (10 - k);
    }, 1);
    expect(regularisedBeta(0.3, 3, 8)).toBeCloseTo(tail, 12);
    expect(regularisedBeta(0, 2, 2)).toBe(0);
    expect(regularisedBeta(1, 2, 2)).toBe(1);
    expect(regularisedBeta(0.5, 4, 4)).toBeCloseTo(0.5, 12);
  });
});
