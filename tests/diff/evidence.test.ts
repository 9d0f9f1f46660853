/** What counts as a difference, and single signs of what changed, each at a size where it is told and at one where it is not. */
import { type CauseCode, type Sweep, scalarSweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { interference, jumpCause } from "../../packages/core/src/jobs/diff/interference.js";
import type { SideCurve } from "../../packages/core/src/jobs/diff/side-curve.js";
import { suspectedLoss } from "../../packages/core/src/jobs/diff/suspected-loss.js";
import { tolerancesFor } from "../../packages/core/src/jobs/diff/thresholds.js";
import { whatMoved } from "../../packages/core/src/jobs/diff/what-moved.js";
import { rampSweep } from "../support/invented-plan.js";
import { limitEdges, resonanceSweep, sideCurveFor } from "../support/judged.js";
import { numbersIn, wordsOf } from "../support/messages.js";
import { evenly, sweepOfMagnitudes } from "../support/sweeps.js";

const told = (causes: readonly { code: CauseCode; confidence: string }[]) =>
  causes.map(({ code, confidence }) => `${confidence} ${code}`);
const known = (noise: number | null, rho = 0.2, rounding = 0): SideCurve => ({
  ...sideCurveFor(rampSweep([7e6, 7.2e6], [rho, rho])),
  noise,
  rounding,
});

describe("what is overlooked", () => {
  test("is 0.012 of Γ, twice the noise, half as much again as the scatter, or the errors of both instruments", () => {
    expect(tolerancesFor(known(0), known(0), 0, null)).toEqual({ enough: 0.012, negligible: 0.0015, tight: 0.004 });
    const noisy = tolerancesFor(known(0.03), known(0.04), 0, null);
    expect([noisy.enough, noisy.negligible, noisy.tight]).toEqual(
      [0.1, 0.05, 0.1].map((each) => expect.closeTo(each, 12)),
    );
    expect(tolerancesFor(known(null), known(0.01), 0, null).enough).toBeCloseTo(0.02, 12);
    expect(tolerancesFor(known(0.01), known(null), 0, null).enough).toBeCloseTo(0.02, 12);
    const scattered = tolerancesFor(known(0), known(0), 0.02, null);
    expect([scattered.enough, scattered.negligible, scattered.tight]).toEqual(
      [0.03, 0.03, 0.03].map((each) => expect.closeTo(each, 12)),
    );
    // 40 dB are 0.01 of ρ, once for each sweep.
    const instrument = tolerancesFor(known(0), known(0), 0, { directivityDb: 40 });
    expect([instrument.enough, instrument.negligible]).toEqual([expect.closeTo(0.02, 9), expect.closeTo(0.02, 9)]);
    // 1 dB of tracking: 0.122 ρ at the median of each.
    const tracking = { directivityDb: 200, trackingDb: 1 };
    expect(tolerancesFor(known(0, 0.3), known(0, 0.5), 0, tracking).enough).toBeCloseTo(0.8 * (10 ** 0.05 - 1), 4);
  });
});

describe("interference", () => {
  const spiked = (spikes: number) => ({ ...known(0), spikes });

  test("is likely where one sweep has two lone samples more", () => {
    expect(told(interference(spiked(0), spiked(2)))).toEqual(["likely interference"]);
    expect(interference(spiked(3), spiked(1))[0]?.evidence).toEqual({ spikesBefore: 3, spikesAfter: 1 });
    expect(interference(spiked(1), spiked(2))).toEqual([]);
    expect(interference(spiked(2), spiked(2))).toEqual([]);
  });

  test("is possible where one sweep is three times as rough, and rough at all", () => {
    expect(told(interference(known(0.001), known(0.0031)))).toEqual(["possible interference"]);
    expect(told(interference(known(0.0031), known(0.001)))).toEqual(["possible interference"]);
    expect(interference(known(0.001), known(0.0031))[0]?.evidence).toEqual({ noiseBefore: 0.001, noiseAfter: 0.0031 });
    expect(interference(known(0.001), known(0.0029))).toEqual([]);
    expect(interference(known(0.0001), known(0.0014))).toEqual([]);
    expect(told(interference(known(0.0001), known(0.0016)))).toEqual(["possible interference"]);
  });

  test("is not told of noise that is not known, or that printing made", () => {
    expect(interference(known(null), known(0.01))).toEqual([]);
    expect(interference(known(0.01), known(null))).toEqual([]);
    expect(interference(known(0.001, 0.2, 0.001), known(0.01))).toEqual([]);
    expect(interference(known(0.001), known(0.01, 0.2, 0.001))).toEqual([]);
  });

  test("is told with its numbers, of the sweep that has it", () => {
    const messages = (before: SideCurve, after: SideCurve) => interference(before, after).map(({ message }) => message);
    const [second] = messages(spiked(1), spiked(4));
    const [first] = messages(spiked(4), spiked(1));
    expect([numbersIn(second), numbersIn(first)]).toEqual([
      [4, 1],
      [4, 1],
    ]);
    expect(wordsOf(first)).not.toBe(wordsOf(second));
    const [rough] = messages(known(0.001), known(0.004));
    const [calm] = messages(known(0.004), known(0.001));
    expect([numbersIn(rough), numbersIn(calm)]).toEqual([[4], [4]]);
    expect(wordsOf(rough)).not.toBe(wordsOf(calm));
    expect(wordsOf(jumpCause(1).message)).not.toBe(wordsOf(jumpCause(2).message));
    expect(wordsOf(jumpCause(3).message)).toBe(wordsOf(jumpCause(2).message));
  });

  test("of single jumps has their number", () => {
    expect(jumpCause(2)).toMatchObject({ code: "interference", confidence: "likely", evidence: { jumps: 2 } });
  });
});

describe("loss by what comes back far from a match", () => {
  const flat = (rho: number, points = 20) => sideCurveFor(rampSweep([3e6, 30e6], [rho, rho], points));
  const codes = (before: SideCurve, after: SideCurve) => told(suspectedLoss(before, after));

  test.each([
    // 20 log10(0.9 / 0.85) = 0.496 dB, 20 log10(0.9 / 0.849) = 0.507 dB.
    [0.9, 0.849, ["possible loss-added"]],
    [0.9, 0.85, []],
    [0.849, 0.9, ["possible loss-removed"]],
    [0.85, 0.9, []],
    // Only where one of the two reflects 0.7 or more, and less than everything.
    [0.71, 0.5, ["possible loss-added"]],
    [0.69, 0.5, []],
    [0.5, 0.71, ["possible loss-removed"]],
    [1, 0.8, []],
    [0.999, 0.8, ["possible loss-added"]],
  ])("from %d to %d: %j", (before, after, expected) => {
    expect(codes(flat(before), flat(after))).toEqual(expected);
  });

  test("carries how much of the return is missing, and in how many samples", () => {
    const [cause] = suspectedLoss(flat(0.9), flat(0.8));
    expect(cause?.evidence).toEqual({
      returnLossChangeDb: expect.closeTo(20 * Math.log10(0.9 / 0.8), 6),
      shareOfSamples: 1,
    });
  });

  test("needs twelve samples, of which four in five show it", () => {
    expect(codes(flat(0.9, 12), flat(0.8, 12))).toHaveLength(1);
    expect(codes(flat(0.9, 11), flat(0.8, 11))).toEqual([]);
    const frequencies = evenly(3e6, 22e6, 1e6);
    const showing = (count: number) =>
      suspectedLoss(
        sideCurveFor(
          sweepOfMagnitudes(
            frequencies,
            frequencies.map(() => 0.85),
          ),
        ),
        sideCurveFor(
          sweepOfMagnitudes(
            frequencies,
            frequencies.map((_, i) => (i < count ? 0.75 : 0.9)),
          ),
        ),
      ).length;
    expect([showing(17), showing(15)]).toEqual([1, 0]);
  });

  test("leaves out what means at least", () => {
    const frequencyHz = Float64Array.from(evenly(3e6, 30e6, 1e6));
    const atEnd = sideCurveFor(
      scalarSweep(
        { label: "end", source: { file: "end", format: "computed", description: "", comments: [] }, referenceOhms: 50 },
        { frequencyHz, reflectionMagnitude: frequencyHz.map(() => 0.8) },
        0.8,
      ),
    );
    const free = sideCurveFor(
      sweepOfMagnitudes(
        [...frequencyHz],
        [...frequencyHz].map(() => 0.9),
      ),
    );
    expect(suspectedLoss(free, atEnd)).toEqual([]);
    expect(suspectedLoss(atEnd, free)).toEqual([]);
  });
});

describe("what moved", () => {
  const antenna = { resonanceHz: 7.0e6, ohms: 60, q: 15 };
  const moved = { resonanceHz: 7.2e6, ohms: 70, q: 15 };
  const evidence = (first: Sweep, second: Sweep) => whatMoved(sideCurveFor(first), sideCurveFor(second)).evidence;

  test("is the deepest dip, its resistance and its width at 2:1", () => {
    const found = evidence(resonanceSweep(antenna), resonanceSweep(moved));
    const width = (of: typeof antenna) => limitEdges(of, 2)[1] - limitEdges(of, 2)[0];
    expect(Math.abs((found.dipHzBefore ?? 0) - 7.0e6)).toBeLessThan(20);
    expect(Math.abs((found.dipHzAfter ?? 0) - 7.2e6)).toBeLessThan(20);
    expect(found.resistanceOhmsBefore).toBeCloseTo(60, 2);
    expect(found.resistanceOhmsAfter).toBeCloseTo(70, 2);
    expect(Math.abs((found.widthHzBefore ?? 0) - width(antenna))).toBeLessThan(20);
    expect(Math.abs((found.widthHzAfter ?? 0) - width(moved))).toBeLessThan(20);
  });

  test("is told with its numbers, as many as both have", () => {
    const text = (first: Sweep, second: Sweep) => numbersIn(whatMoved(sideCurveFor(first), sideCurveFor(second)).text);
    const kilohertz = (of: typeof antenna) => Math.round((limitEdges(of, 2)[1] - limitEdges(of, 2)[0]) / 1000);
    // MHz and SWR of both dips; the limit of 2:1 and both widths in kHz; both resistances.
    const dips = [7, 1.2, 7.2, 1.4];
    const widths = [2, 1, kilohertz(antenna), kilohertz(moved)];
    expect(text(resonanceSweep(antenna), resonanceSweep(moved))).toEqual([...dips, ...widths, 60, 70]);
    const { frequencyHz, reflectionMagnitude } = resonanceSweep(moved);
    const withoutPhase = sweepOfMagnitudes([...frequencyHz], [...reflectionMagnitude]);
    expect(text(resonanceSweep(antenna), withoutPhase)).toEqual([...dips, ...widths]);
    const poor = resonanceSweep({ ...moved, ohms: 150 });
    expect(text(resonanceSweep(antenna), poor)).toEqual([7, 1.2, 7.2, 3, 60, 150]);
    expect(text(poor, resonanceSweep(antenna))).toEqual([7.2, 3, 7, 1.2, 150, 60]);
  });

  test("lies between the frequencies that both have", () => {
    const [low, high] = [evenly(6.0e6, 7.4e6, 10_000), evenly(6.8e6, 8.2e6, 10_000)];
    // A deeper dip of the first sweep, at 6.4 MHz, lies where the second was not swept.
    const two = low.map((hz) => {
      const dip = (at: number, depth: number) => depth * Math.max(0, 1 - ((hz - at) / 150_000) ** 2);
      return 0.8 - dip(6.4e6, 0.75) - dip(7.1e6, 0.6);
    });
    const one = resonanceSweep({ resonanceHz: 7.15e6, ohms: 60, q: 15 }, high);
    expect((evidence(sweepOfMagnitudes(low, two), one).dipHzBefore ?? 0) / 7.1e6).toBeCloseTo(1, 3);
    expect((evidence(one, sweepOfMagnitudes(low, two)).dipHzAfter ?? 0) / 7.1e6).toBeCloseTo(1, 3);
  });

  test("is told without what one of the two does not have", () => {
    const { frequencyHz, reflectionMagnitude } = resonanceSweep(moved);
    const withoutPhase = sweepOfMagnitudes([...frequencyHz], [...reflectionMagnitude]);
    const names = (first: Sweep, second: Sweep) => Object.keys(evidence(first, second));
    const dip = ["dipHzBefore", "dipHzAfter"];
    const width = ["widthHzBefore", "widthHzAfter"];
    expect(names(resonanceSweep(antenna), withoutPhase)).toEqual([...dip, ...width]);
    expect(names(withoutPhase, resonanceSweep(antenna))).toEqual([...dip, ...width]);
    const poor = resonanceSweep({ ...moved, ohms: 150 });
    const resistance = ["resistanceOhmsBefore", "resistanceOhmsAfter"];
    expect(names(resonanceSweep(antenna), poor)).toEqual([...dip, ...resistance]);
    for (const [first, last] of [
      [6.5e6, 7.25e6],
      [7.15e6, 7.8e6],
    ] as const) {
      const cut = resonanceSweep(moved, evenly(first, last, 10_000));
      const wide = resonanceSweep({ ...antenna, resonanceHz: 7.2e6 });
      expect(names(wide, cut)).toEqual([...dip, ...resistance]);
    }
  });

  test("is nothing where there is no dip, or none near", () => {
    expect(evidence(resonanceSweep({ ...antenna, resonanceHz: 9e6 }), resonanceSweep(moved))).toEqual({});
    expect(evidence(resonanceSweep(antenna), resonanceSweep({ ...antenna, resonanceHz: 9e6 }))).toEqual({});
    const wide = evenly(5.5e6, 9e6, 10_000);
    const at = (resonanceHz: number) => resonanceSweep({ ...antenna, resonanceHz }, wide);
    expect(evidence(at(7.0e6), at(7.0e6 * 1.14))).not.toEqual({});
    expect(evidence(at(7.0e6), at(7.0e6 * 1.16))).toEqual({});
    expect(evidence(at(7.0e6), at(7.0e6 * 0.86))).not.toEqual({});
    expect(evidence(at(7.0e6), at(7.0e6 * 0.84))).toEqual({});
  });
});
