/** What check says beside its numbers: one sweep for each finding, which another one must not have. Codes, never words. */
import {
  CAUTIONS,
  type CheckOptions,
  check,
  DEFAULT_LIMITS,
  feedlineFrom,
  modeOf,
  planById,
  type Sweep,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { inventedPlan, rampSweep } from "../support/invented-plan.js";
import { resonanceSweep } from "../support/judged.js";
import { evenly, type Pair, present, reflectionOf, sweepOfReflections } from "../support/sweeps.js";

const PLAN = inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6 }]);
const GOOD = resonanceSweep({ resonanceHz: 7.1e6, ohms: 55, q: 8 });
const checked = (sweep: Sweep, options: Partial<CheckOptions> = {}) => check(sweep, { plan: PLAN, ...options });
const codes = (sweep: Sweep, options: Partial<CheckOptions> = {}) =>
  checked(sweep, options).findings.map(({ code }) => code);

describe("the cautions of high voltage", () => {
  const warns = (sweep: Sweep, options: Partial<CheckOptions> = {}) =>
    checked(sweep, options).cautions.length > CAUTIONS.length;
  /** The same impedance at every sample. */
  const constant = (ohms: Pair) => {
    const axis = evenly(6.9e6, 7.3e6, 10_000);
    return sweepOfReflections(
      axis,
      axis.map(() => reflectionOf(ohms)),
    );
  };

  test("are those of a feed point whose impedance is 500 Ω or more, by resistance or reactance", () => {
    expect(warns(GOOD)).toBe(false);
    expect(warns(constant([501, 0]))).toBe(true);
    expect(warns(constant([30, 501]))).toBe(true);
    expect(warns(constant([499, 0]))).toBe(false);
    expect(warns(constant([400, 310]))).toBe(true);
  });

  test("come with any power that is named", () => {
    expect(warns(GOOD, { equipment: { radio: { powerW: 100 } } })).toBe(true);
  });

  test("come where one band of several has them", () => {
    // 55 Ω on 40 m, and 600 Ω from 10 MHz on.
    const axis = [...evenly(6.9e6, 7.3e6, 10_000), ...evenly(10.0e6, 10.2e6, 10_000)];
    const both = sweepOfReflections(
      axis,
      axis.map((hz) => reflectionOf([hz < 9e6 ? 55 : 600, 0])),
    );
    const plan = present(planById("itu-common"), "plan");
    expect(warns(both, { plan, bands: ["40m"] })).toBe(false);
    expect(warns(both, { plan, bands: ["40m", "30m"] })).toBe(true);
  });
});

test("nothing is said of a good sweep, but the usual cautions", () => {
  const { findings, cautions, limits, feedline, dials, plan, sweep } = checked(GOOD);
  expect(findings).toEqual([]);
  expect(cautions).toBe(CAUTIONS);
  expect(limits).toEqual(DEFAULT_LIMITS);
  expect({ feedline, dials, plan: plan.id, points: sweep.points }).toEqual({
    feedline: null,
    dials: [],
    plan: "invented",
    points: 131,
  });
});

const WIRE = { radio: { powerW: 100 }, antenna: { wireLengthM: 20 } };

describe("said is", () => {
  test("a sample that stands alone", () => {
    const axis = evenly(6.5e6, 7.8e6, 10_000);
    const pairs = axis.map(
      (hz, i): Pair => (i === 60 ? [0, 0.99] : reflectionOf([55, 440 * (hz / 7.1e6 - 7.1e6 / hz)])),
    );
    expect(codes(sweepOfReflections(axis, pairs))).toEqual(["spike"]);
  });

  test("a step too coarse for the band", () => {
    expect(codes(rampSweep([6.8e6, 7.4e6], [0.2, 0.2], 4))).toEqual(["step-too-coarse"]);
  });

  test("that a dip as narrow as a small loop's could lie between two samples", () => {
    expect(codes(rampSweep([6.8e6, 7.4e6], [0.2, 0.2], 31))).toEqual(["narrower-unseen"]);
    expect(codes(rampSweep([6.8e6, 7.4e6], [0.2, 0.2], 41))).toEqual([]);
  });

  test("a verdict that the instrument's error may turn", () => {
    const barely = rampSweep([6.9e6, 7.3e6], [0.32, 0.32]);
    expect(codes(barely)).toEqual([]);
    expect(codes(barely, { instrument: { directivityDb: 35 } })).toEqual(["verdict-unsure"]);
    expect(codes(barely, { instrument: { directivityDb: 35 }, limits: { ...DEFAULT_LIMITS, swr: 2.5 } })).toEqual([]);
  });

  test("a mode that may not be sent", () => {
    const plan = inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6, use: "cw" }]);
    expect(codes(GOOD, { plan, modes: [modeOf("cw"), modeOf("ssb")] })).toEqual(["mode-not-permitted"]);
    expect(codes(GOOD, { plan, modes: [modeOf("cw")] })).toEqual([]);
  });

  test("power that no licence limits", () => {
    expect(codes(GOOD, { equipment: WIRE })).toEqual(["power-limit-unknown"]);
  });

  test("a dip beside the band", () => {
    expect(codes(resonanceSweep({ resonanceHz: 6.9e6, ohms: 55, q: 20 }))).toEqual(["dip-outside-band"]);
  });

  test("what the sweep allows of loss", () => {
    expect(codes(rampSweep([3e6, 30e6], [0.3, 0.7], 2001))).toEqual(["low-swr-may-be-loss"]);
    expect(codes(rampSweep([3e6, 30e6], [0.3, 0.95], 2001))).toEqual(["loss-bound"]);
  });

  test("what the line leaves open, at its power", () => {
    const feedline = feedlineFrom({ kind: "rg-58", lengthM: 10, ratedVolts: 50 });
    expect(codes(GOOD, { feedline })).toEqual(["feedline-loss-typical"]);
    expect(codes(GOOD, { feedline, equipment: WIRE })).toEqual([
      "power-limit-unknown",
      "feedline-loss-typical",
      "feedline-overload",
    ]);
    expect(checked(GOOD, { feedline }).feedline).toBe(feedline);
  });

  test("another reference impedance", () => {
    expect(codes({ ...GOOD, referenceOhms: 60 })).toContain("reference-not-50");
  });

  test("a class that was not stated, and one to which the band is closed", () => {
    const granted = [{ lowHz: 7.0e6, highHz: 7.2e6, grants: [{ classes: ["full"] }] }] as const;
    const plan = inventedPlan(granted, ["full", "first"]);
    expect(codes(GOOD, { plan })).toEqual(["class-not-stated"]);
    expect(codes(GOOD, { plan, licenceClass: "full" })).toEqual([]);
    expect(codes(GOOD, { plan, licenceClass: "first" })).toEqual(["bands-closed"]);
    expect(codes(GOOD, { plan, licenceClass: "first", bands: ["40m"] })).toEqual(["band-not-permitted"]);
    const elsewhere = rampSweep([7.2e6, 7.4e6], [0.1, 0.1]);
    expect(codes(elsewhere, { plan, licenceClass: "first" })).toEqual([]);
  });

  test("what rests on memory, of bands that were swept alone", () => {
    const [read] = PLAN.bands;
    const [unread] = inventedPlan([{ lowHz: 7.3e6, highHz: 7.4e6, confirmed: false }]).bands;
    const named = [read, { ...present(read, "40m"), band: "30m" }, { ...present(unread, "20m"), band: "20m" }];
    const plan = { ...PLAN, bands: named.map((each) => present(each, "band")) };
    const said = checked(GOOD, { plan }).findings.map(({ code, band }) => [code, band]);
    expect(said).toContainEqual(["plan-from-memory", "20m"]);
    expect(codes(rampSweep([6.9e6, 7.25e6], [0.1, 0.1]), { plan })).toEqual([]);
  });

  test("a reading by hand outside of all bands", () => {
    expect(codes({ ...rampSweep([6.9e6, 7.3e6], [0.1, 0.1], 41), continuity: "spots" })).toContain(
      "spot-outside-bands",
    );
  });
});

test("a dial frequency is held against the class", () => {
  const plan = inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6, grants: [{ classes: ["full"] }] }], ["full", "first"]);
  const dials = [{ frequencyHz: 7.1e6, mode: modeOf("cw"), activity: null }];
  const permitted = (licenceClass: string) => checked(GOOD, { plan, licenceClass, dials }).dials[0]?.isPermitted;
  expect([permitted("full"), permitted("first")]).toEqual([true, false]);
});

test("what stands at the end of an instrument's scale is at least that", () => {
  const { bands } = check(ceiling(0.45), { plan: PLAN });
  expect(bands[0]?.worst).toMatchObject({ isAtLeast: true });
  expect(bands[0]).toMatchObject({ need: "unknown", verdict: "partial" });
});

test("what stands at the end of a scale beyond all tuners needs more than a tuner", () => {
  const { bands } = check(ceiling(0.9), { plan: PLAN });
  expect(bands[0]).toMatchObject({ need: "beyond-tuner", worst: { isAtLeast: true } });
});

/** ρ from 0.1 up to where the scale ends; 0.45 is 2.6:1, which a built-in tuner may or may not match. */
function ceiling(rho: number): Sweep {
  const { frequencyHz, ...sweep } = rampSweep([7.0e6, 7.2e6], [0.1, 1]);
  return {
    ...sweep,
    kind: "scalar",
    frequencyHz,
    reflectionMagnitude: sweep.reflectionMagnitude.map((value) => Math.min(value, rho)),
    ceilingMagnitude: rho,
    readings: [],
  };
}

test("the plan of the Region is told by its name", () => {
  expect(check(GOOD, { plan: present(planById("itu-r1"), "plan"), bands: ["40m"] }).plan.id).toBe("itu-r1");
});
