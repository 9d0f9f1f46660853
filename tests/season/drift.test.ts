import { driftFindings, driftsOf } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { graded } from "../support/graded.js";
import { present } from "../support/sweeps.js";

/** A year is 365.25 days and twelve months. */
const DAYS_A_MONTH = 365.25 / 12;
const DAY_MS = 24 * 3600 * 1000;

const onDay = (day: number) => new Date(Date.UTC(2026, 0, 1) + day * DAY_MS).toISOString().slice(0, 10);
const swept = (day: number, dipHz: number | null, deployment = "") =>
  graded(`${day}.s1p`, { dipHz, log: { date: onDay(day), deployment } });

type Dip = readonly [day: number, dipHz: number];

const driftOf = (...dips: readonly Dip[]) =>
  present(
    driftsOf(
      dips.map(([day, dipHz]) => swept(day, dipHz)),
      null,
    )[0],
    "a drift",
  );

describe("a drift", () => {
  test("is the median of the slopes between all pairs, by hand", () => {
    // Days 0, 10, 20, 30; kHz over 7100: 0, -2, -4, 60. Slopes in kHz a day: -0.2, -0.2, 2, -0.2, 3.1, 6.4; median 0.9.
    const drift = driftOf([0, 7_100_000], [10, 7_098_000], [20, 7_096_000], [30, 7_160_000]);
    expect(drift.slopeHzPerMonth).toBeCloseTo(900 * DAYS_A_MONTH, 6);
    // Over that slope the dips lie, in kHz: 0, -11, -22, 33; median -5.5, distances from it 5.5, 5.5, 16.5, 38.5. Two set the
    // line; of the others the median is 27.5.
    expect(drift.scatterHz).toBeCloseTo(27_500, 6);
  });

  test("is not moved by one odd sweep of five, where a least-squares line is", () => {
    // On a line of -1 kHz in five days but for the last, 500 kHz off.
    const drift = driftOf([0, 7_100_000], [5, 7_099_000], [10, 7_098_000], [15, 7_097_000], [20, 7_596_000]);
    expect(drift.slopeHzPerMonth).toBeCloseTo(-200 * DAYS_A_MONTH, 6);
    expect(drift.jumps).toEqual([{ date: onDay(20), changeHz: 499_000 }]);
  });

  test("does not depend on the order of the files", () => {
    const dips = [
      [20, 7_050_000],
      [0, 7_100_000],
      [40, 7_010_000],
      [10, 7_080_000],
    ] as const;
    expect(driftOf(...dips)).toEqual(driftOf(...dips.toReversed()));
  });

  test("of a long series pairs its halves and finds the same line", () => {
    const dips = Array.from({ length: 2001 }, (_, day) => [day, 7_100_000 + 10 * day] as const);
    expect(driftOf(...dips).slopeHzPerMonth).toBeCloseTo(10 * DAYS_A_MONTH, 6);
  });

  test("needs three dates, and a dip within the band on two", () => {
    expect(driftOf([0, 7_100_000], [10, 7_000_000])).toMatchObject({
      slopeHzPerMonth: null,
      scatterHz: null,
      jumps: [],
    });
    expect(driftOf([0, 7e6], [0, 7.1e6], [10, 7.2e6])).toMatchObject({ sweeps: 3, slopeHzPerMonth: null });
    expect(driftsOf([swept(0, 7e6), swept(10, null), graded("undated.s1p")], null)).toEqual([]);
  });

  test("is told for each deployment, without those that have no name", () => {
    const sweeps = [swept(0, 7e6, "lock"), swept(1, 7e6, "lock"), swept(2, 7e6), swept(3, 7e6), swept(4, 7e6, "reach")];
    expect(driftsOf(sweeps, "deployment").map(({ deployment, sweeps: count }) => [deployment, count])).toEqual([
      ["lock", 2],
    ]);
  });

  test("takes times of day for those of one zone, whatever the computer's", () => {
    const at = (time: string, dipHz: number) => graded("x.s1p", { dipHz, log: { date: time } });
    const sweeps = [at("2026-03-28 00:00", 7e6), at("2026-03-29", 7.001e6), at("2026-03-30T00:00", 7.002e6)];
    expect(driftsOf(sweeps, null)[0]?.slopeHzPerMonth).toBeCloseTo(1000 * DAYS_A_MONTH, 6);
  });
});

describe("the findings", () => {
  test("name a dip that wanders and one that jumps, and leave the rest alone", () => {
    const texts = (...dips: readonly Dip[]) => driftFindings([driftOf(...dips)]).map(({ message }) => message);
    expect(texts([0, 7_100_000], [50, 7_080_000], [100, 7_060_000])).toEqual([
      `40m: the dip has fallen about 40 kHz from ${onDay(0)} to ${onDay(100)}, by a straight line through its sweeps.`,
    ]);
    const steady = [0, 1, 2, 3, 4, 5].map((day): Dip => [day, 7_100_000]);
    expect(texts(...steady, [6, 7_150_000])).toEqual([`40m: the dip rose 50 kHz at once by ${onDay(6)}.`]);
    expect(texts([0, 7_100_000], [50, 7_101_000], [100, 7_100_500])).toEqual([]);
  });
});

describe("what is said of a drift", () => {
  const said = (...dips: readonly Dip[]) =>
    driftFindings([driftOf(...dips)]).map(({ code, message }) => `${code}: ${message}`);

  test("is how far the dip went, up or down, from when to when", () => {
    const falling = [0, 10, 20, 30].map((day): Dip => [day, 7_100_000 - 2000 * day]);
    const rising = [0, 10, 20, 30].map((day): Dip => [day, 7_100_000 + 2000 * day]);
    expect(said(...falling)).toEqual([
      `dip-drifts: 40m: the dip has fallen about 60 kHz from ${onDay(0)} to ${onDay(30)}, by a straight line through its sweeps.`,
    ]);
    expect(said(...rising)).toEqual([
      `dip-drifts: 40m: the dip has risen about 60 kHz from ${onDay(0)} to ${onDay(30)}, by a straight line through its sweeps.`,
    ]);
  });

  test("is nothing where the dip stays, or was seen twice only", () => {
    expect(said([0, 7_100_000], [10, 7_101_000], [20, 7_100_000])).toEqual([]);
    expect(said([0, 7_100_000], [10, 7_000_000])).toEqual([]);
  });

  test("is a jump where it went at once, with the deployment's name", () => {
    const sweeps = [0, 5, 10, 15, 20, 25, 30, 35].map((day) => swept(day, day < 30 ? 7_100_000 : 7_000_000, "lock"));
    const messages = driftFindings(driftsOf(sweeps, "deployment")).map(({ message }) => message);
    expect(messages).toContain(`lock, 40m: the dip fell 100 kHz at once by ${onDay(30)}.`);
  });
});
