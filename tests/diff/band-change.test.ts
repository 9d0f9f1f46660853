/** What changed on a band, and beyond what it counts. ρ is flat or runs evenly, so that every number is known. */
import { type Sweep, scalarSweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import type { Side } from "../../packages/core/src/jobs/diff/sides.js";
import { rampSweep } from "../support/invented-plan.js";
import { limitEdges, resonanceSweep } from "../support/judged.js";
import { evenly, present, sweepOfMagnitudes } from "../support/sweeps.js";
import { type Asked, BAND, compared, flat, sureSide, withNoise } from "./compared-bands.js";

const verdict = (first: Side, second: Side, asked: Asked = {}) => compared(first, second, asked)?.verdict;

describe("every change is after minus before", () => {
  const before = { resonanceHz: 7.05e6, ohms: 60, q: 15 };
  const after = { resonanceHz: 7.11e6, ohms: 70, q: 15 };
  const changeOf = (first: Sweep, second: Sweep) =>
    present(compared(sureSide(first), sureSide(second), { band: [6.8e6, 7.4e6] }), "the band").change;

  test("of the best and the worst SWR, and of the best frequency", () => {
    const change = changeOf(resonanceSweep(before), resonanceSweep(after));
    expect(change.bestSwr).toBeCloseTo(70 / 50 - 60 / 50, 4);
    expect(Math.abs((change.bestFrequencyHz ?? 0) - 60_000)).toBeLessThan(20);
    const ramps = changeOf(rampSweep([6.8e6, 7.4e6], [0.2, 0.5]), rampSweep([6.8e6, 7.4e6], [0.2, 0.6]));
    expect(ramps.worstSwr).toBeCloseTo(4 - 3, 6);
    expect(ramps.bestSwr).toBeCloseTo(0, 6);
  });

  test("of both edges, each on its side", () => {
    const change = changeOf(resonanceSweep(before), resonanceSweep(after));
    const [was, is] = [limitEdges(before, 2), limitEdges(after, 2)];
    expect(Math.abs((change.lowEdgeHz ?? 0) - (is[0] - was[0]))).toBeLessThan(20);
    expect(Math.abs((change.highEdgeHz ?? 0) - (is[1] - was[1]))).toBeLessThan(20);
    expect(Math.abs((change.lowEdgeHz ?? 0) - (change.highEdgeHz ?? 0))).toBeGreaterThan(2000);
    expect(Math.abs(change.gainedHz - (is[1] - was[1]))).toBeLessThan(20);
    expect(Math.abs(change.lostHz - (is[0] - was[0]))).toBeLessThan(20);
    const width = is[1] - is[0] - (was[1] - was[0]);
    expect(Math.abs(change.withinLimitWidthHz - width)).toBeLessThan(20);
    expect(change.withinLimitFraction).toBeCloseTo(width / 600e3, 4);
  });

  test.each([
    ["low", [7.05e6, 7.8e6]],
    ["high", [6.5e6, 7.1e6]],
  ] as const)("of no %s edge where a sweep ends before it", (side, [first, last]) => {
    const cut = resonanceSweep(before, evenly(first, last, 10_000));
    for (const change of [changeOf(cut, resonanceSweep(before)), changeOf(resonanceSweep(before), cut)]) {
      expect([change.lowEdgeHz === null, change.highEdgeHz === null]).toEqual([side === "low", side === "high"]);
    }
  });

  test("of nothing that is not within the limit", () => {
    const poor = changeOf(resonanceSweep({ ...before, ohms: 150 }), resonanceSweep(before));
    expect(poor).toMatchObject({ lowEdgeHz: null, highEdgeHz: null, lostHz: 0 });
    const [low, high] = limitEdges(before, 2);
    expect(Math.abs(poor.gainedHz - (high - low))).toBeLessThan(20);
    const infinite = changeOf(rampSweep([6.8e6, 7.4e6], [0.2, 1]), rampSweep([6.8e6, 7.4e6], [0.2, 0.6]));
    expect(infinite.worstSwr).toBeNull();
  });

  test("of means, where there are repeats", () => {
    const swr = (value: number) => flat((value - 1) / (value + 1));
    const change = compared(sureSide(swr(1.2), swr(1.4)), sureSide(swr(1.5), swr(1.9)))?.change;
    expect(change?.bestSwr).toBeCloseTo(1.7 - 1.3, 6);
  });
});

describe("a change counts", () => {
  test.each([
    ["beyond 0.03 of ρ, for the worse", 0.1, 0.131, "worse"],
    ["beyond 0.03 of ρ, for the better", 0.131, 0.1, "improved"],
    ["not up to 0.03", 0.1, 0.129, "unchanged"],
    ["not down to 0.03", 0.129, 0.1, "unchanged"],
  ])("%s", (_, before, after, expected) => {
    expect(verdict(sureSide(flat(before)), sureSide(flat(after)))).toBe(expected);
  });

  test("of the best and the worst point, each for itself", () => {
    const ramp = (low: number, high: number) => sureSide(rampSweep(BAND, [low, high]));
    expect(verdict(ramp(0.1, 0.3), ramp(0.05, 0.3))).toBe("improved");
    expect(verdict(ramp(0.1, 0.3), ramp(0.1, 0.25))).toBe("improved");
    expect(verdict(ramp(0.1, 0.25), ramp(0.05, 0.3))).toBe("mixed");
    expect(verdict(ramp(0.1, 0.25), ramp(0.15, 0.3))).toBe("worse");
  });

  test.each([
    [0.04, "improved"],
    [0.025, "unchanged"],
    [-0.04, "worse"],
    [-0.025, "unchanged"],
  ])("of %d of the band within the limit: %s", (share, expected) => {
    // From 0.25 to 0.45 over a tenth of the band: the limit is met nearby, best and worst stay.
    const rising = (startHz: number) => {
      const axis = evenly(7.0e6, 7.2e6, 1000);
      const rho = (hz: number) => 0.25 + 0.2 * Math.min(1, Math.max(0, (hz - startHz) / 20_000));
      return sureSide(sweepOfMagnitudes(axis, axis.map(rho)));
    };
    expect(verdict(rising(7.08e6), rising(7.08e6 + 200e3 * share))).toBe(expected);
  });

  describe("beyond three standard deviations of the noise of both sides", () => {
    const noisy = (before: number | null, after: number | null, rho = 0.15) =>
      verdict(withNoise(before, flat(0.1)), withNoise(after, flat(rho)));

    test.each([
      [0, 0, "worse"],
      [0.016, 0, "worse"],
      [0.0172, 0, "unchanged"],
      [0, 0.016, "worse"],
      [0, 0.0172, "unchanged"],
      // √2 · 3 · 0.0115 = 0.0488, √2 · 3 · 0.012 = 0.0509.
      [0.0115, 0.0115, "worse"],
      [0.012, 0.012, "unchanged"],
    ])("of %d and %d", (before, after, expected) => {
      expect(noisy(before, after)).toBe(expected);
    });

    test("of which the usual one is taken where it is not known", () => {
      expect(noisy(null, null)).toBe("worse");
      expect(noisy(0.0172, null)).toBe("unchanged");
    });
  });

  describe("beyond the instrument's greatest error, on either side", () => {
    test.each([
      // 26 dB are 0.0501 of ρ, 26.1 dB 0.0495.
      [26, "unchanged"],
      [26.1, "worse"],
    ])("of %d dB of directivity", (directivityDb, expected) => {
      expect(verdict(sureSide(flat(0.1)), sureSide(flat(0.15)), { instrument: { directivityDb } })).toBe(expected);
    });

    test("at the side where it is greater", () => {
      // Tracking of 0.8 dB adds 0.0965 ρ to 0.01: 0.0486 at 0.4, which is more than the change, and 0.0443 at 0.355.
      const instrument = { directivityDb: 40, trackingDb: 0.8 };
      const [low, high] = [sureSide(flat(0.355)), sureSide(flat(0.4))];
      expect(verdict(low, high, { instrument })).toBe("unchanged");
      expect(verdict(high, low, { instrument })).toBe("unchanged");
      expect(verdict(low, high)).toBe("worse");
    });
  });

  describe("beyond the intervals of both sides", () => {
    /** A side whose noise is so much of ρ; where nothing is smoothed it is taken 1.5 times. */
    const within = (rho: number, noise: number): Side => {
      const side = sureSide(flat(rho));
      const nothing = { real: 0, imaginary: 0 };
      const weights = { real: Float64Array.of(1), imaginary: Float64Array.of(0) };
      const part = {
        lowHz: 0,
        highHz: 1e9,
        isInverse: false,
        sampleNoise: noise,
        at: () => ({
          value: { real: rho, imaginary: 0 },
          slope: nothing,
          bend: nothing,
          ofValue: weights,
          ofSlope: { real: Float64Array.of(0), imaginary: Float64Array.of(0) },
        }),
        varianceOf: (of: { readonly real: Float64Array }) => (noise * (of.real[0] ?? 0)) ** 2,
      };
      const views = { parts: [part], smoothing: null, thinned: [] };
      const { trace } = present(side.middle.parts[0], "the part").analysis;
      const grounds = { trace, noise: 0, viewsBetween: () => views };
      const middle = {
        ...side.middle,
        parts: side.middle.parts.map((part) => ({ ...part, grounds: () => grounds })),
      };
      return { ...side, all: [middle], middle };
    };

    test.each([
      // 3 · 1.5 · 0.01 = 0.045, and √2 of that for both: 0.0636.
      [0.01, 0, 0.0465, "worse"],
      [0.01, 0, 0.0435, "unchanged"],
      [0, 0.01, 0.0465, "worse"],
      [0, 0.01, 0.0435, "unchanged"],
      [0.01, 0.01, 0.065, "worse"],
      [0.01, 0.01, 0.062, "unchanged"],
    ])("of %d and %d: a change of %d is %s", (before, after, change, expected) => {
      expect(verdict(within(0.1, before), within(0.1 + change, after))).toBe(expected);
    });
  });

  describe("beyond the scatter of repeats", () => {
    const group = (...rhos: readonly number[]) => sureSide(...rhos.map(flat));

    test("or is hidden by it", () => {
      // Means 0.1 and 0.2 apart; variances of 0.0002 and 0.02, 2 degrees of freedom: t = 4.30.
      expect(compared(group(0.09, 0.11), group(0.19, 0.21))).toMatchObject({ verdict: "worse", isHidden: false });
      expect(compared(group(0.0, 0.2), group(0.1, 0.3))).toMatchObject({ verdict: "unchanged", isHidden: true });
      expect(compared(group(0.1, 0.12), group(0.11, 0.13))).toMatchObject({ verdict: "unchanged", isHidden: false });
      expect(compared(group(0.1, 0.2), group(0.1, 0.2))).toMatchObject({ verdict: "unchanged", isHidden: true });
    });
  });
});

describe("at the end of an instrument's scale", () => {
  /** All of it means at least this. */
  const atLeast = (rho: number) =>
    sureSide(
      scalarSweep(
        { label: "end", source: { file: "end", format: "computed", description: "", comments: [] }, referenceOhms: 50 },
        { frequencyHz: Float64Array.from(BAND), reflectionMagnitude: Float64Array.of(rho, rho) },
        rho,
      ),
    );

  test("a fall from it and a rise to it are told, the other ways not", () => {
    expect(verdict(atLeast(0.5), sureSide(flat(0.4)))).toBe("improved");
    expect(verdict(atLeast(0.5), sureSide(flat(0.6)))).toBe("unchanged");
    expect(verdict(sureSide(flat(0.4)), atLeast(0.5))).toBe("worse");
    expect(verdict(sureSide(flat(0.6)), atLeast(0.5))).toBe("unchanged");
    expect(verdict(atLeast(0.5), atLeast(0.6))).toBe("unchanged");
    expect(verdict(atLeast(0.6), atLeast(0.5))).toBe("unchanged");
  });
});

describe("compared is", () => {
  const part = (low: number, high: number, rho = 0.2) => sureSide(rampSweep([low, high], [rho, rho]));

  test("what all the sweeps know of a band", () => {
    const pieces = compared(part(6.9e6, 7.15e6), part(7.05e6, 7.3e6))?.before.pieces;
    expect(pieces).toEqual([{ lowHz: 7.05e6, highHz: 7.15e6 }]);
    const repeats = sureSide(rampSweep([6.9e6, 7.15e6], [0.2, 0.2]), rampSweep([6.9e6, 7.1e6], [0.2, 0.2]));
    expect(compared(repeats, part(7.05e6, 7.3e6))?.after.pieces).toEqual([{ lowHz: 7.05e6, highHz: 7.1e6 }]);
  });

  test("nothing where they have nothing in common, or a frequency alone", () => {
    expect(compared(part(6.9e6, 7.05e6), part(7.1e6, 7.3e6))).toBeNull();
    expect(compared(part(6.9e6, 7.1e6), part(7.1e6, 7.3e6))).toBeNull();
    expect(compared(part(14e6, 14.2e6), part(14e6, 14.2e6))).toBeNull();
  });

  test("nothing beyond the numbers at different reference impedances", () => {
    const told = compared(sureSide(flat(0.1)), sureSide(flat(0.3)), { causes: null });
    expect(told).toMatchObject({ band: "40m", verdict: "not-comparable", isHidden: false });
    expect(told?.change.bestSwr).toBeCloseTo(1.3 / 0.7 - 1.1 / 0.9, 6);
  });

  test("the middle one of the repeats, with the others in the means", () => {
    const told = compared(sureSide(flat(0.1), flat(0.2), flat(0.25)), sureSide(flat(0.3)));
    expect(told?.before.best?.reflectionMagnitude).toBeCloseTo(0.2, 9);
    expect(told?.after.best?.reflectionMagnitude).toBeCloseTo(0.3, 9);
  });
});
