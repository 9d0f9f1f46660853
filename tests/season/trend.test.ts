/**
 * How often the findings over time are right: dips simulated once a month, with normal scatter from one sweep to the next, a
 * drift, or a step that lasts. Shares over 400 series of each kind.
 */
import { type Drift, driftFindings, driftsOf } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { graded } from "../support/graded.js";
import { seededNormal } from "../support/seeded-noise.js";
import { present } from "../support/sweeps.js";

const SERIES = 400;

interface Kind {
  readonly sweeps: number;
  readonly driftKhz?: number;
  /** How far, and from which sweep on, counted from 0 */
  readonly stepKhz?: number;
  readonly stepAt?: number;
  readonly scatterKhz: number;
}

const monthOf = (index: number) => `2025-${String(1 + (index % 12)).padStart(2, "0")}-15`;
const dateAt = (index: number) => monthOf(index).replace("2025", String(2025 + Math.floor(index / 12)));

function seriesOf({ sweeps, driftKhz = 0, stepKhz = 0, stepAt = 0, scatterKhz }: Kind, normal: () => number): Drift {
  const dips = Array.from({ length: sweeps }, (_, i) => {
    const kilohertz = 7100 + driftKhz * i + (i >= stepAt ? stepKhz : 0) + scatterKhz * normal();
    return graded(`${i}.s1p`, { dipHz: 1000 * kilohertz, log: { date: dateAt(i) } });
  });
  return present(driftsOf(dips, null)[0], "a drift");
}

/** Shares of the series that are told to drift, to jump, and neither. */
function shares(kind: Kind) {
  const normal = seededNormal(kind.sweeps);
  const told = Array.from({ length: SERIES }, () => {
    const codes = driftFindings([seriesOf(kind, normal)]).map(({ code }) => code);
    return { drifts: codes.includes("dip-drifts"), jumps: codes.includes("dip-jumped") };
  });
  const share = (count: number) => count / SERIES;
  return {
    drifting: share(told.filter(({ drifts }) => drifts).length),
    jumping: share(told.filter(({ jumps }) => jumps).length),
    silent: share(told.filter(({ drifts, jumps }) => !drifts && !jumps).length),
  };
}

describe.each([5, 6, 8, 12, 20])("of %i sweeps", (sweeps) => {
  test("scatter alone seldom says anything", () => {
    expect(shares({ sweeps, scatterKhz: 5 }).silent).toBeGreaterThan(0.94);
    expect(shares({ sweeps, scatterKhz: 15 }).silent).toBeGreaterThan(0.8);
  });

  test("a drift far beyond the scatter is told, and is no jump", () => {
    // Of five sweeps scatter that persists looks most like a drift.
    const { drifting, jumping } = shares({ sweeps, driftKhz: sweeps === 5 ? 9 : 8, scatterKhz: 3 });
    expect(drifting).toBeGreaterThan(0.95);
    expect(jumping).toBeLessThan(0.05);
  });

  test("a large step that lasts is hardly ever a drift, though the sweeps scatter", () => {
    const { drifting, jumping } = shares({ sweeps, stepKhz: 60, stepAt: Math.floor(sweeps / 2), scatterKhz: 4 });
    // With five, a line and a step leave two sweeps to tell the scatter by.
    expect(jumping).toBeGreaterThan(sweeps === 5 ? 0.7 : 0.8);
    expect(drifting).toBeLessThan(0.1);
  });

  test("a step that lasts is a jump, and no drift", () => {
    for (const stepAt of [1, Math.floor(sweeps / 2), sweeps - 1]) {
      const { drifting, jumping } = shares({ sweeps, stepKhz: 40, stepAt, scatterKhz: 2 });
      expect(jumping).toBeGreaterThan(0.9);
      expect(drifting).toBeLessThan(0.1);
    }
  });
});

describe("a step in a drift", () => {
  const steps = [0, -2, -4, 36, 34, 32];
  const dips = steps.map((kilohertz, i) =>
    graded(`${i}.s1p`, { dipHz: 7_100_000 + 1000 * kilohertz, log: { date: dateAt(i) } }),
  );

  test("leaves the slope as it is on both sides, and is told with its date", () => {
    const drift = present(driftsOf(dips, null)[0], "a drift");
    // 2 kHz from each 15th to the next: months of 30.4375 days are not the calendar's.
    expect((drift.slopeHzPerMonth ?? 0) / -2000).toBeCloseTo(1, 1);
    expect(drift.jumps).toEqual([{ date: dateAt(3), changeHz: 40_000 }]);
  });
});

test("one sweep that is off by itself is named, and is neither a drift nor a jump", () => {
  const offsets = [0, 3, -2, 4, 60, 1, -3, 2, 0, 3];
  const dips = offsets.map((kilohertz, i) =>
    graded(`${i}.s1p`, { dipHz: 7_100_000 + 1000 * kilohertz, log: { date: dateAt(i) } }),
  );
  const drift = present(driftsOf(dips, null)[0], "a drift");
  expect(drift.jumps).toEqual([]);
  expect(drift.odd).toMatchObject([{ date: dateAt(4) }]);
  expect(present(drift.odd[0], "an odd one").departureHz / 60_000).toBeCloseTo(1, 1);
  expect(driftFindings([drift]).map(({ code }) => code)).toEqual(["dip-odd"]);
});

describe("scatter that persists, and scatter with heavy tails", () => {
  const SEASONS = 300;

  /** Shares of seasons of a kind whose margin holds the true slope, and of those that are said to jump. */
  function told(sweeps: number, departures: (normal: () => number) => number[]) {
    const normal = seededNormal(900 + sweeps);
    const slopeHz = 1000;
    const drifts = Array.from({ length: SEASONS }, () =>
      present(
        driftsOf(
          departures(normal).map((departure, i) =>
            graded(`${i}.s1p`, { dipHz: 7.1e6 + slopeHz * i + 6000 * departure, log: { date: dateAt(i) } }),
          ),
          null,
        )[0],
        "a drift",
      ),
    );
    const share = (holds: (drift: Drift) => boolean) => drifts.filter(holds).length / SEASONS;
    return {
      holds: share((drift) => Math.abs((drift.slopeHzPerMonth ?? 0) - slopeHz) <= (drift.slopeMarginHzPerMonth ?? 0)),
      jumps: share(({ jumps }) => jumps.length > 0),
    };
  }

  /** Each departure keeps 0.7 of the one before. */
  function persistent(sweeps: number, normal: () => number): number[] {
    const all = [normal()];
    while (all.length < sweeps) all.push(0.7 * (all.at(-1) ?? 0) + Math.sqrt(1 - 0.49) * normal());
    return all;
  }

  /** Student's t with three degrees of freedom, of the same standard deviation. */
  function heavyTailed(normal: () => number): number {
    const squares = [normal(), normal(), normal()].reduce((sum, value) => sum + value * value, 0);
    return normal() / Math.sqrt(squares);
  }

  test.each([5, 8, 12, 24, 40])("%i sweeps, 0.7 kept from month to month: the margin holds 90 %%", (sweeps) => {
    const { holds, jumps } = told(sweeps, (normal) => persistent(sweeps, normal));
    // Three standard deviations of a share of 300.
    expect(holds).toBeGreaterThan(0.9 - 0.05);
    expect(jumps).toBeLessThan(0.05);
  });

  test.each([12, 24, 40])("%i sweeps with heavy tails: a dip that is off by itself is no jump", (sweeps) => {
    const { holds, jumps } = told(sweeps, (normal) => Array.from({ length: sweeps }, () => heavyTailed(normal)));
    expect(holds).toBeGreaterThan(0.93);
    expect(jumps).toBeLessThan(0.1);
  });
});

test("the margin of three sweeps is wide, as Student's t with one degree of freedom says", () => {
  // Days 0, 30.4375, 60.875; kHz 0, 2, 10: the median slope is 5 a month, over it lie 0, -3, 0 (median 0). Squares 9, freedom 1,
  // spread of the months 2: 12.71 · √(9 / 1 / 2) = 26.96.
  const dips = [0, 2, 10].map((kilohertz, i) =>
    graded(`${i}.s1p`, {
      dipHz: 7_100_000 + 1000 * kilohertz,
      log: { date: new Date(Date.UTC(2026, 0, 1) + i * 30.4375 * 86_400_000).toISOString().slice(0, 16) },
    }),
  );
  const drift = present(driftsOf(dips, null)[0], "a drift");
  expect(drift.slopeHzPerMonth).toBeCloseTo(5000, 0);
  expect(drift.slopeMarginHzPerMonth).toBeGreaterThan(26_900);
  expect(driftFindings([drift])).toEqual([]);
});
