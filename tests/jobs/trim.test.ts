/** A cut wire, foretold from closed form: the same resonance with its frequency multiplied. Everything is invented. */
import { feedlineFrom, type Sweep, sweepAtAnalyser, type TrimOptions, trim } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { inventedPlan } from "../support/invented-plan.js";
import { limitEdges, resonanceSweep } from "../support/judged.js";
import { evenly, type Pair, present, reflectionOf, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const [band] = inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6 }]).bands;
const forty = present(band, "40m");
const thirty = {
  ...forty,
  band: "30m",
  lowHz: 10.1e6,
  highHz: 10.15e6,
  segments: forty.segments.map((segment) => ({ ...segment, lowHz: 10.1e6, highHz: 10.15e6 })),
};
const PLAN = { ...inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6 }]), bands: [forty, thirty] };
const ANTENNA = { resonanceHz: 6.8e6, ohms: 60, q: 15 };
const LONG = resonanceSweep(ANTENNA, evenly(5.5e6, 8.5e6, 10_000));
const trimmed = (sweep: Sweep = LONG, options: Partial<TrimOptions> = {}) =>
  trim(sweep, { plan: PLAN, band: "40m", ...options });
const codes = (sweep: Sweep, options: Partial<TrimOptions> = {}) =>
  trimmed(sweep, options).findings.map(({ code }) => code);

test("a wire that is too long is to be cut by the share that its dip lies too low", () => {
  const result = trimmed(LONG, { wireLengthM: 20 });
  expect(result.wantedHz).toBe(7.1e6);
  expect(present(result.lengthChange, "change")).toBeCloseTo(6.8 / 7.1 - 1, 5);
  expect(present(result.lengthChangeM, "change in m")).toBeCloseTo(20 * (6.8 / 7.1 - 1), 4);
  expect(trimmed().lengthChangeM).toBeNull();
  expect(present(trimmed(LONG, { wantedHz: 6.7e6 }).lengthChange, "change")).toBeCloseTo(6.8 / 6.7 - 1, 5);
});

test.each([
  ["vector", LONG],
  ["scalar", sweepOfMagnitudes([...LONG.frequencyHz], [...LONG.reflectionMagnitude])],
] as const)("of a %s sweep the bands are told before and after", (_, sweep) => {
  const [told] = trimmed(sweep).bands;
  expect(told?.before?.best?.frequencyHz).toBe(7.0e6);
  const after = present(told?.after, "after");
  expect(present(after.best, "best").frequencyHz / 7.1e6).toBeCloseTo(1, 5);
  const [lowHz, highHz] = limitEdges({ ...ANTENNA, resonanceHz: 7.1e6 }, 2);
  expect(Math.abs(present(after.bandwidth, "bandwidth").lowHz - lowHz)).toBeLessThan(30);
  expect(Math.abs(present(after.bandwidth, "bandwidth").highHz - highHz)).toBeLessThan(30);
});

test("the line is taken out, and put back", () => {
  const feedline = feedlineFrom({ kind: "rg-58", lengthM: 15 });
  const result = trimmed(sweepAtAnalyser(LONG, feedline, 50), { feedline });
  const dipHz = present(result.dip, "dip").frequencyHz;
  const shifted = resonanceSweep({ ...ANTENNA, resonanceHz: (6.8e6 * 7.1e6) / dipHz }, evenly(6e6, 8.4e6, 10_000));
  const after = present(result.bands[0]?.after, "after");
  const truth = trimmed(sweepAtAnalyser(shifted, feedline, 50)).bands[0]?.before;
  expect(Math.abs(present(after.best, "best").swr - present(truth?.best, "truth").swr)).toBeLessThan(1e-3);
  expect(Math.abs(present(after.worst, "worst").swr - present(truth?.worst, "truth").swr)).toBeLessThan(2e-3);
  expect(result.feedline).toBe(feedline);
});

describe("bands", () => {
  const named = (options: Partial<TrimOptions>, sweep = LONG) => trimmed(sweep, options).bands.map((each) => each.band);
  const wide = resonanceSweep(ANTENNA, evenly(5.5e6, 10.12e6, 10_000));

  test("are those of the plan, or those named and the one that is trimmed for", () => {
    expect(named({}, wide)).toEqual(["40m", "30m"]);
    expect(named({ bands: ["30m"] }, wide)).toEqual(["40m", "30m"]);
    expect(named({ bands: [] }, wide)).toEqual(["40m"]);
  });

  test("that were not swept before nor reached afterwards are left out, of others one side is null", () => {
    expect(named({})).toEqual(["40m"]);
    // The axis up to 9.8 MHz ends at 10.23 MHz after it was stretched.
    const reached = trimmed(resonanceSweep(ANTENNA, evenly(5.5e6, 9.8e6, 10_000))).bands[1];
    expect([reached?.band, reached?.before, reached?.after === null]).toEqual(["30m", null, false]);
  });

  test("that are closed are refused", () => {
    expect(() => trimmed(LONG, { band: "20m" })).toThrow(RangeError);
  });
});

describe("said is", () => {
  const scalar = sweepOfMagnitudes([...LONG.frequencyHz], [...LONG.reflectionMagnitude]);
  const feedline = feedlineFrom({ kind: "rg-58", lengthM: 15 });

  test("that the prediction is rough without phase, or without knowing the line", () => {
    const { findings } = trimmed(LONG, { fixed: "nothing" });
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([["prediction-rough", "info"]]);
    expect(codes(LONG, { isAtAntenna: true, fixed: "nothing" })).toEqual([]);
    expect(codes(LONG, { feedline, fixed: "nothing" })).toEqual([]);
    expect(codes(scalar, { isAtAntenna: true, fixed: "nothing" })).toEqual(["prediction-rough"]);
  });

  test("that nobody told what stays as it is, or not all of it", () => {
    const at = { isAtAntenna: true } as const;
    expect(codes(LONG, at)).toEqual(["fixed-parts-not-told"]);
    expect(codes(LONG, { ...at, fixed: "radials" })).toEqual(["fixed-lengths-not-told"]);
    expect(codes(LONG, { ...at, fixed: { what: "counterpoise", lengthM: 9 } })).toEqual(["fixed-lengths-not-told"]);
    const told = { fixed: { what: "radials", count: 4, lengthM: 10 }, wireLengthM: 10 } as const;
    expect(codes(LONG, { ...at, ...told })).toEqual([]);
    expect(trimmed(LONG, told)).toMatchObject({ fixed: "radials", fixedWires: { count: 4, lengthM: 10 } });
    expect(() => trimmed(LONG, { fixed: { what: "radials", count: 1.5 } })).toThrow("fixed.count must be");
    expect(() => trimmed(LONG, { fixed: { what: "radials", lengthM: 0 } })).toThrow("fixed.lengthM must be");
  });

  test("that there is no dip, and then nothing is foretold", () => {
    const result = trimmed(resonanceSweep({ ...ANTENNA, resonanceHz: 12e6 }));
    expect(result.findings.map(({ code, severity }) => [code, severity])).toEqual([["no-dip", "problem"]]);
    expect(result).toMatchObject({ dip: null, lengthChange: null, lengthChangeM: null });
    expect(result.bands.map(({ after }) => after)).toEqual([null]);
  });

  test("what rests on memory", () => {
    const plan = inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6, confirmed: false }]);
    expect(codes(LONG, { plan, isAtAntenna: true, fixed: "nothing" })).toEqual(["plan-from-memory"]);
  });

  test("where a reading stands alone below all others, and then nothing is foretold", () => {
    const sparse = evenly(5.5e6, 8.5e6, 10_000);
    const lone = sparse.map((_, i) => (i === 155 ? 0.02 : 0.6));
    const result = trimmed(sweepOfMagnitudes(sparse, lone));
    expect(result.dip).toBeNull();
    const [finding] = result.findings.filter(({ code }) => code === "no-dip");
    expect(finding?.severity).toBe("problem");
    // Where the dip is wanted, and where the reading is.
    expect(finding?.message.match(/\d+\.\d{3}/g)).toEqual(["7.100", "7.050"]);
  });

  test("which samples stood alone, and that the step is coarse", () => {
    const axis = evenly(5.5e6, 8.5e6, 10_000);
    const spiked = axis.map(
      (hz, i): Pair => (i === 250 ? [0, 0] : reflectionOf([60, 900 * (hz / 6.8e6 - 6.8e6 / hz)])),
    );
    expect(codes(sweepOfReflections(axis, spiked), { isAtAntenna: true })).toContain("spike");
    const coarse = resonanceSweep({ ...ANTENNA, q: 3 }, evenly(5.5e6, 8.5e6, 150_000));
    expect(codes(coarse, { isAtAntenna: true, fixed: "nothing" })).toEqual(["step-too-coarse"]);
  });
});
