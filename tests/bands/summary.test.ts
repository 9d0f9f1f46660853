/** A band in numbers, held against closed forms of a single series resonance. */
import { DEFAULT_LIMITS, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { answeringOn, type Part } from "../../packages/core/src/bands/parts.js";
import { isDip, summarised } from "../../packages/core/src/bands/summary.js";
import { withUncertainty } from "../../packages/core/src/bands/sureness.js";
import type { Instrument } from "../../packages/core/src/curve/uncertainty/instrument.js";
import { rampSweep } from "../support/invented-plan.js";
import { bandOf, limitEdges, partFor, resonanceSweep, summaryFor } from "../support/judged.js";
import { seededNormal } from "../support/seeded-noise.js";
import { evenly, type Pair, present, reflectionOf, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const ANTENNA = { resonanceHz: 7.08e6, ohms: 60, q: 15 };
const BAND: Pair = [7.0e6, 7.2e6];
const summaryOf = (sweep: Sweep) => summaryFor(sweep, bandOf(BAND));

/** SWR of the antenna at a frequency: (1 + ρ) / (1 - ρ). */
function swrAt(frequencyHz: number): number {
  const { resonanceHz, ohms, q } = ANTENNA;
  const rho = Math.hypot(...reflectionOf([ohms, ohms * q * (frequencyHz / resonanceHz - resonanceHz / frequencyHz)]));
  return (1 + rho) / (1 - rho);
}

describe("a single resonance", () => {
  const single = () => summaryOf(resonanceSweep(ANTENNA));

  test("is best at its frequency, worst at the farther edge", () => {
    const summary = single();
    expect(present(summary.best, "best").swr).toBeCloseTo(1.2, 6);
    expect(present(summary.best, "best").resistanceOhms).toBeCloseTo(60, 3);
    expect(summary.worst).toMatchObject({ frequencyHz: 7.2e6, isAtLeast: false });
    expect(present(summary.worst, "worst").swr).toBeCloseTo(swrAt(7.2e6), 6);
  });

  test("has each edge of the band at its place", () => {
    const summary = single();
    expect(present(summary.atLow, "low edge")).toMatchObject({ frequencyHz: 7.0e6 });
    expect(present(summary.atLow, "low edge").swr).toBeCloseTo(swrAt(7.0e6), 6);
    expect(present(summary.atLow, "low edge").reactanceOhms).toBeLessThan(0);
    expect(present(summary.atHigh, "high edge")).toMatchObject({ frequencyHz: 7.2e6 });
    expect(present(summary.atHigh, "high edge").swr).toBeCloseTo(swrAt(7.2e6), 6);
    expect(present(summary.atHigh, "high edge").reactanceOhms).toBeGreaterThan(0);
  });

  test("is within the limit between the edges of the closed form, beyond the band as well", () => {
    const summary = single();
    const [lowHz, highHz] = limitEdges(ANTENNA, 2);
    const bandwidth = present(summary.bandwidth, "bandwidth");
    expect(bandwidth.lowHz).toBeCloseTo(lowHz, -1);
    expect(bandwidth.highHz).toBeCloseTo(highHz, -1);
    expect(bandwidth.widthHz).toBe(bandwidth.highHz - bandwidth.lowHz);
    expect(bandwidth).toMatchObject({ openLow: false, openHigh: false });
    expect(summary.withinLimit).toMatchObject({ limitSwr: 2 });
    expect(summary.withinLimit.widthHz).toBeCloseTo(Math.min(highHz, 7.2e6) - Math.max(lowHz, 7.0e6), -1);
  });

  test("has the Q of its bandwidth and of its impedance", () => {
    const summary = single();
    // At 50 Ω the loaded Q is that of the circuit with 50 Ω of the source in series: Q · R / (R + 50 Ω).
    expect(present(summary.loadedQ, "loaded Q")).toBeCloseTo((ANTENNA.q * 60) / 110, 2);
    expect(present(summary.impedanceQ, "Q")).toBeCloseTo(ANTENNA.q, 2);
    expect(summary.resonances.map(({ frequencyHz }) => Math.round(frequencyHz / 100))).toEqual([70_800]);
  });

  test("outside the band is no resonance of it", () => {
    const beside = summaryFor(resonanceSweep({ ...ANTENNA, resonanceHz: 6.95e6 }), bandOf(BAND));
    expect(beside).toMatchObject({ resonances: [], impedanceQ: null });
    expect(beside.best?.frequencyHz).toBe(7.0e6);
  });

  test("swept by its size alone has a loaded Q, but no reactance", () => {
    const { frequencyHz, reflectionMagnitude } = resonanceSweep(ANTENNA);
    const scalar = sweepOfMagnitudes([...frequencyHz], [...reflectionMagnitude]);
    const told = summaryFor(scalar, bandOf(BAND));
    expect(told).toMatchObject({
      resonances: [],
      impedanceQ: null,
      best: { resistanceOhms: null, reactanceOhms: null },
    });
    expect(present(told.loadedQ, "loaded Q")).toBeCloseTo((ANTENNA.q * 60) / 110, 2);
  });

  test.each([
    ["begins", [7.05e6, 7.8e6], { openLow: true, openHigh: false }],
    ["ends", [6.5e6, 7.1e6], { openLow: false, openHigh: true }],
  ] as const)("within whose limit the sweep %s has an open bandwidth, and no Q of it", (_, [first, last], open) => {
    const cut = summaryFor(resonanceSweep(ANTENNA, evenly(first, last, 10_000)), bandOf(BAND));
    expect(cut.bandwidth).toMatchObject(open);
    expect(cut.loadedQ).toBeNull();
  });

  test("is one of the pieces that hold it alone", () => {
    const pieces = (...[first, ...others]: readonly [Pair, ...Pair[]]) =>
      summaryFor(resonanceSweep(ANTENNA), bandOf(first, ...others)).resonances.length;
    expect(pieces([7.0e6, 7.05e6], [7.1e6, 7.2e6])).toBe(0);
    expect(pieces([7.0e6, 7.05e6], [7.06e6, 7.2e6])).toBe(1);
  });

  test("that never meets the limit has no bandwidth", () => {
    const poor = summaryFor(resonanceSweep({ ...ANTENNA, ohms: 150 }), bandOf(BAND));
    expect(poor).toMatchObject({ bandwidth: null, loadedQ: null, need: "wide-range-tuner" });
    expect(present(poor.impedanceQ, "Q")).toBeCloseTo(ANTENNA.q, 2);
  });
});

describe("of two resonances", () => {
  const [first, second] = [6.85e6, 7.15e6];
  /** R falls from 150 Ω at the first to 50 Ω at the second; X is 0 at both, with a slope of 1 Ω/kHz. */
  const impedance = (frequency: number): Pair => [
    150 - (100 * (frequency - first)) / (second - first),
    (1e-3 * (frequency - first) * (frequency - second)) / (second - first),
  ];
  const swept = (map: (frequency: number) => number) => {
    const axis = evenly(6.6e6, 7.4e6, 5000);
    return sweepOfReflections(
      axis,
      axis.map((frequency) => reflectionOf(impedance(map(frequency)))),
    );
  };

  test.each([
    ["upper", (frequency: number) => frequency, second],
    ["lower", (frequency: number) => first + second - frequency, first],
  ] as const)("the Q is that of the one at the best point, the %s", (_, map, best) => {
    const told = summaryFor(swept(map), bandOf([6.7e6, 7.3e6]));
    expect(told.resonances).toHaveLength(2);
    expect(Math.abs(present(told.best, "best").frequencyHz - best)).toBeLessThan(20_000);
    // f / (2 R) · √(R'² + X'²) with R = 50 Ω, R' = 100 Ω in 300 kHz, X' = 1 Ω/kHz.
    expect(present(told.impedanceQ, "Q")).toBeCloseTo((best / 100) * Math.hypot(100 / 300e3, 1e-3), 1);
  });
});

describe("of several pieces", () => {
  test("shares are of all of them, gaps between them left out", () => {
    // ρ is 0.1 at 7 MHz and rises by 0.1 each 100 kHz; the limit lies at 7.2333 MHz.
    const told = summaryFor(rampSweep([7.0e6, 7.3e6], [0.1, 0.4]), bandOf([7.0e6, 7.1e6], [7.2e6, 7.4e6]));
    expect(told.sweptFraction).toBeCloseTo(2 / 3, 9);
    expect(told.withinLimit.fraction).toBeCloseTo((100 + 100 / 3) / 300, 5);
    expect(told.withinLimit.widthHz).toBeCloseTo(100e3 + 100e3 / 3, -1);
    expect(told.usable.withoutTuner).toBe(told.withinLimit.fraction);
    expect(told.usable.withBuiltInTuner).toBeCloseTo(2 / 3, 9);
    expect(told.best?.frequencyHz).toBe(7.0e6);
    expect(told.worst?.frequencyHz).toBe(7.3e6);
    expect(told.atHigh).toBeNull();
    expect(told).toMatchObject({ band: "40m", lowHz: 7.0e6, highHz: 7.4e6, uncertainty: null, need: "built-in-tuner" });
  });

  test("what is within reach grows with the tuner", () => {
    const told = summaryFor(rampSweep([7.0e6, 7.2e6], [0.2, 1]), bandOf(BAND));
    expect(told.usable.withoutTuner).toBeCloseTo((1 / 3 - 0.2) / 0.8, 5);
    expect(told.usable.withBuiltInTuner).toBeCloseTo((0.5 - 0.2) / 0.8, 5);
    expect(told.usable.withWideRangeTuner).toBeCloseTo((9 / 11 - 0.2) / 0.8, 5);
    expect(told.need).toBe("beyond-tuner");
  });

  test("of an edge that was not swept nothing is known, of the other one it is", () => {
    const told = summaryOf(rampSweep([7.05e6, 7.3e6], [0.1, 0.2]));
    expect(told.atLow).toBeNull();
    expect(present(told.atHigh, "high edge").reflectionMagnitude).toBeCloseTo(0.16, 9);
  });

  test("nothing swept is nothing known", () => {
    const told = summaryFor(rampSweep([14e6, 14.2e6], [0.1, 0.1]), bandOf(BAND));
    const nothing = { best: null, worst: null, atLow: null, atHigh: null, bandwidth: null, loadedQ: null };
    expect(told).toMatchObject({ ...nothing, sweptFraction: 0, resonances: [], impedanceQ: null, need: "unknown" });
  });
});

test("a best point is a dip, but for the edges of any piece", () => {
  const pieces = [
    { lowHz: 7.0e6, highHz: 7.1e6 },
    { lowHz: 7.15e6, highHz: 7.2e6 },
  ];
  const at = (frequencyHz: number) => isDip({ best: { frequencyHz }, pieces });
  expect([7.0e6, 7.05e6, 7.1e6, 7.15e6, 7.16e6, 7.2e6].map(at)).toEqual([false, true, false, false, true, false]);
  expect(isDip({ best: null, pieces })).toBe(false);
});

describe("how sure it is", () => {
  const normal = seededNormal(5);
  const noisy = evenly(6.5e6, 7.8e6, 10_000).map((frequency) => {
    const [real, imaginary] = reflectionOf([60, 60 * 15 * (frequency / 7.08e6 - 7.08e6 / frequency)]);
    return { frequency, reflection: [real + 0.003 * normal(), imaginary + 0.003 * normal()] as const };
  });
  const SWEEP = sweepOfReflections(
    noisy.map(({ frequency }) => frequency),
    noisy.map(({ reflection }) => reflection),
  );
  const band = bandOf(BAND);
  /** What is known of the band, plain and with how sure it is. */
  const looked = (part: Part, instrument: Instrument | null = null) => {
    const answering = answeringOn([part], band.pieces);
    const bare = summarised(answering, band, DEFAULT_LIMITS);
    const told = withUncertainty(bare, answering, DEFAULT_LIMITS, { instrument, scatter: 0 });
    return { plain: bare.summary, told };
  };

  test("each number lies within its interval", () => {
    const { plain, told } = looked(partFor(SWEEP));
    for (const point of [told.best, told.worst]) {
      const { swr, swrLow = Number.NaN, swrHigh = Number.NaN } = present(point, "point");
      expect(swrLow).toBeLessThan(swr);
      expect(swrHigh).toBeGreaterThan(swr);
    }
    const { bestMagnitude, worstMagnitude, lowEdgeHz, highEdgeHz } = present(told.uncertainty, "uncertainty");
    const { lowHz, highHz } = present(told.bandwidth, "bandwidth");
    for (const [value, interval] of [
      [plain.best?.reflectionMagnitude, bestMagnitude],
      [plain.worst?.reflectionMagnitude, worstMagnitude],
      [lowHz, lowEdgeHz],
      [highHz, highEdgeHz],
    ] as const) {
      const { low, high } = present(interval, "interval");
      expect(low).toBeLessThan(present(value, "value"));
      expect(high).toBeGreaterThan(present(value, "value"));
    }
  });

  test("an instrument's error widens what the SWR may be, by its size at the least", () => {
    const { told } = looked(partFor(SWEEP), { directivityDb: 30 });
    const rho = (swr: number) => (swr - 1) / (swr + 1);
    const { reflectionMagnitude, swrLow = 0, swrHigh = 0 } = present(told.worst, "worst");
    expect(rho(swrHigh) - reflectionMagnitude).toBeGreaterThan(10 ** (-30 / 20));
    expect(reflectionMagnitude - rho(swrLow)).toBeGreaterThan(10 ** (-30 / 20));
  });

  test("is not asked for where nothing stands behind it, or where even the best point is beyond any tuner", () => {
    const unfounded = looked({ ...partFor(SWEEP), grounds: () => null });
    expect(unfounded.told).toBe(unfounded.plain);
    const hopeless = looked(partFor(rampSweep([7.0e6, 7.2e6], [0.83, 0.9])));
    expect(hopeless.told).toBe(hopeless.plain);
    const barely = looked(partFor(rampSweep([7.0e6, 7.2e6], [0.8, 0.9])));
    expect(barely.told.uncertainty).not.toBeNull();
  });
});
