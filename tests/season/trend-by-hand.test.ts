/** The trend of dips, and what is said of it, worked out by hand. Dips are invented; in Hz over 7.1 MHz, once a month. */
import { type Drift, driftFindings } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { type Trend, trendOf } from "../../packages/core/src/jobs/season/trend.js";
import { student95 } from "../../packages/core/src/numbers/student.js";
import { present } from "../support/sweeps.js";

const trend = (...offsetsHz: readonly number[]): Trend =>
  present(trendOf(offsetsHz.map((offset, months) => ({ months, dipHz: 7.1e6 + offset }))), "a trend");

/** The margin is that of least squares where scatter does not persist, and more for what of it may. */
function expectMargin(margin: number, ofLeastSquares: number): void {
  expect(margin).toBeGreaterThan(ofLeastSquares * (1 - 1e-6));
  expect(margin).toBeLessThan(2 * ofLeastSquares);
}

describe("a line", () => {
  test("is found as it is, with nothing left over", () => {
    expect(trend(0, -2000, -4000, -6000, -8000)).toEqual({ slope: -2000, margin: 0, scatter: 0 });
    expect(trend(5, 5, 5)).toEqual({ slope: 0, margin: 0, scatter: 0 });
  });

  test("needs three dates, of which several dips may share one", () => {
    const dips = (...months: readonly number[]) =>
      trendOf(months.map((month) => ({ months: month, dipHz: 7e6 + month })));
    expect(dips()).toBeNull();
    expect(dips(0, 1)).toBeNull();
    expect(dips(0, 1, 1, 1)).toBeNull();
    expect(dips(0, 1, 1, 2)?.slope).toBe(1);
  });

  test("of three has the margin of one degree of freedom", () => {
    // The slopes are 2, 5 and 8 kHz; over 5 kHz the dips lie at 0, -3 and 0. Two set the line, and the third is 3 kHz off.
    const { slope, margin, scatter } = trend(0, 2000, 10_000);
    expect([slope, scatter]).toEqual([5000, 3000]);
    expectMargin(margin, student95(1) * Math.sqrt(9e6 / 2));
  });

  test("is not moved by one odd dip, which counts as no farther than 4.45 times the scatter", () => {
    // The same to both sides, so that the median slope is none. Over the median of 1: 0, -2, 0, 99, 0, -2, 0 kHz.
    const { slope, margin, scatter } = trend(1000, -1000, 1000, 100_000, 1000, -1000, 1000);
    expect([slope, scatter]).toEqual([0, 2000]);
    const squares = 2 * 2000 ** 2 + (4.45 * 2000) ** 2;
    expectMargin(margin, student95(5) * Math.sqrt(squares / 5 / 28));
  });

  test("of four counts an odd dip for what it is", () => {
    // Slopes of 0, 10, 0, 20, 0 and -20 kHz; over their median of 0 the dips lie at 0, 0, 20, 0.
    const { slope, margin } = trend(0, 0, 20_000, 0);
    expect(slope).toBe(0);
    expectMargin(margin, student95(2) * Math.sqrt(20_000 ** 2 / 2 / 5));
  });
});

describe("a step", () => {
  const stepped = (count: number, at: number, stepHz: number, slope = 1000) =>
    trend(...Array.from({ length: count }, (_, i) => slope * i + (i >= at ? stepHz : 0)));

  test.each([
    [5, 2],
    [6, 3],
    [8, 1],
    [8, 7],
    [12, 5],
    [100, 50],
  ])("in %d dips, from dip %d on, leaves the slope on both sides as it is", (count, at) => {
    const { slope, margin, scatter } = stepped(count, at, 40_000);
    expect(slope).toBeCloseTo(1000, 6);
    expect(margin).toBeCloseTo(0, 6);
    expect(scatter).toBeCloseTo(0, 6);
    expect(stepped(count, at, -40_000).slope).toBeCloseTo(1000, 6);
  });

  test("is not looked for in four dips, nor in more than a hundred", () => {
    // Slopes of 0, 20, 13.3, 40, 20 and 0 kHz.
    expect(trend(0, 0, 40_000, 40_000).slope).toBeCloseTo((20_000 + 40_000 / 3) / 2, 6);
    expect(stepped(101, 50, 40_000, 0).slope).toBeGreaterThan(0);
    expect(stepped(100, 50, 40_000, 0).slope).toBe(0);
  });

  test("is one of more than 15 kHz", () => {
    expect(stepped(8, 4, 15_100).slope).toBeCloseTo(1000, 6);
    expect(stepped(8, 4, 14_900).slope).toBeGreaterThan(1500);
    expect(stepped(8, 4, -14_900).slope).toBeLessThan(500);
  });

  test("stands out of what it leaves, and leaves less than half of what there is without it", () => {
    const scattered = (scatterHz: number) =>
      trend(...[1, -1, -1, 1, 1, -1, -1, 1].map((sign, i) => sign * scatterHz + (i >= 4 ? 40_000 : 0)));
    expect(scattered(1000).slope).toBeCloseTo(0, 6);
    expect(scattered(15_000).slope).toBeGreaterThan(1000);
  });

  test("takes two more unknowns: of what is left the margin is wider", () => {
    // Residuals of 1 kHz on both sides of the step, 8 dips and 4 unknowns; the months spread by 5 on each side.
    const { slope, margin, scatter } = trend(1000, -1000, -1000, 1000, 41_000, 39_000, 39_000, 41_000);
    expect(slope).toBeCloseTo(0, 6);
    expect(scatter).toBeCloseTo(1000, 6);
    expectMargin(margin, student95(4) * Math.sqrt(8e6 / 4 / 10));
  });
});

describe("a drift is told", () => {
  /** A year of it. */
  const drift = (changes: Partial<Drift>): Drift => ({
    deployment: null,
    band: "40m",
    sweeps: 5,
    firstDate: "2026-01-01",
    lastDate: "2027-01-01",
    slopeHzPerMonth: 1000,
    slopeMarginHzPerMonth: 500,
    scatterHz: 100,
    jumps: [],
    odd: [],
    ...changes,
  });
  const said = (changes: Partial<Drift>) =>
    driftFindings([drift(changes)]).map(({ code, severity, band }) => `${severity} ${code} ${band}`);
  const told = ["info dip-drifts 40m"];

  test("that is more than its margin, and more than 10 kHz in all", () => {
    expect(said({})).toEqual(told);
    expect(said({ slopeHzPerMonth: -1000 })).toEqual(told);
    expect(said({ slopeMarginHzPerMonth: 1000 })).toEqual([]);
    expect(said({ slopeMarginHzPerMonth: 999 })).toEqual(told);
    // 365 days are 11.99 months.
    expect(said({ slopeHzPerMonth: 833 })).toEqual([]);
    expect(said({ slopeHzPerMonth: 835 })).toEqual(told);
    expect(said({ slopeHzPerMonth: -833 })).toEqual([]);
    expect(said({ slopeHzPerMonth: null, slopeMarginHzPerMonth: null })).toEqual([]);
  });

  test("with each of its jumps", () => {
    const jumps = [
      { date: "2026-05-01", changeHz: 40_000 },
      { date: "2026-08-01", changeHz: -30_000 },
    ];
    const jump = "info dip-jumped 40m";
    expect(said({ slopeHzPerMonth: 0, jumps })).toEqual([jump, jump]);
    expect(said({ jumps })).toEqual([...told, jump, jump]);
  });
});
