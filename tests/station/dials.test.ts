/** Dial frequencies. Sweeps and plan are invented; activities are those of the library, tested in reference/activity.test.ts. */
import {
  type Activity,
  activitiesFor,
  check,
  type Dial,
  dialOf,
  type ModeName,
  modeOf,
  type Sweep,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { inventedPlan, rampSweep } from "../support/invented-plan.js";
import { type Pair, present, sweepOfMagnitudes } from "../support/sweeps.js";

const PLAN = inventedPlan([
  { lowHz: 7.0e6, highHz: 7.1e6, grants: [{ classes: ["full"], maxPower: { watts: 100, basis: "pep" } }] },
  { lowHz: 7.1e6, highHz: 7.2e6, grants: [{ classes: ["full"], maxPower: { watts: 400, basis: "pep" } }] },
]);
/** SWR from 1 to 3 across 6.9 to 7.3 MHz: ρ rises evenly by 1/8 each 100 kHz. */
const SWEEP = rampSweep([6.9e6, 7.3e6], [0, 0.5], 401);
const rhoAt = (frequencyHz: number) => ((frequencyHz - 6.9e6) / 0.4e6) * 0.5;
const swrAt = (frequencyHz: number) => (1 + rhoAt(frequencyHz)) / (1 - rhoAt(frequencyHz));

function dial(frequencyHz: number, mode: ModeName | null, sweep: Sweep = SWEEP) {
  const asked: Dial = { frequencyHz, mode: mode && modeOf(mode), activity: null };
  return present(check(sweep, { plan: PLAN, dials: [asked] }).dials[0], "dial");
}

describe("a dial frequency", () => {
  test("without a mode: only the SWR is told", () => {
    const result = dial(7.05e6, null);
    expect(result).toMatchObject({ lowHz: 7.05e6, highHz: 7.05e6, band: "40m", isPermitted: null, need: "none" });
    expect(result.licenceLimits).toEqual([]);
    expect(present(result.worstSwr, "SWR")).toBeCloseTo(swrAt(7.05e6), 6);
    expect(present(result.point, "point").swr).toBeCloseTo(swrAt(7.05e6), 6);
  });

  test("with a mode: the worst SWR of all that is occupied", () => {
    const upper = dial(7.05e6, "usb");
    expect(upper).toMatchObject({ mode: "usb", lowHz: 7.0503e6, highHz: 7.0528e6, isPermitted: true });
    expect(present(upper.worstSwr, "SWR")).toBeCloseTo(swrAt(7.0528e6), 6);
    const lower = dial(7.05e6, "ssb");
    expect(present(lower.worstSwr, "SWR")).toBeCloseTo(swrAt(7.0497e6), 6);
  });

  test("over two segments the lower licence limit holds", () => {
    expect(dial(7.15e6, "cw").licenceLimits).toEqual([{ watts: 400, basis: "pep" }]);
    expect(dial(7.1e6, "cw").licenceLimits).toEqual([{ watts: 100, basis: "pep" }]);
  });

  test.each([
    [7.29e6, "built-in-tuner"],
    [7.0e6, "none"],
  ])("at %d Hz the need is %s", (frequencyHz, need) => {
    expect(dial(frequencyHz, null).need).toBe(need);
  });
});

describe("permission", () => {
  test("a signal that reaches out of the band is not permitted, though its dial frequency lies within", () => {
    expect(dial(7.199e6, "usb")).toMatchObject({ band: "40m", isPermitted: false, licenceLimits: [] });
    expect(dial(7.1972e6, "usb").isPermitted).toBe(true);
  });

  test("a sideband that lies within is permitted, though its dial frequency lies outside", () => {
    expect(dial(6.9997e6, "usb")).toMatchObject({ band: "40m", isPermitted: true });
    expect(dial(7.2003e6, "lsb")).toMatchObject({ band: "40m", isPermitted: true });
  });

  test("the edges of a band are its own", () => {
    const bandAt = (frequencyHz: number) => dial(frequencyHz, null).band;
    expect([6.999e6, 7.0e6, 7.2e6, 7.201e6].map(bandAt)).toEqual([null, "40m", "40m", null]);
  });

  test("outside all bands nothing is, and the SWR is still told", () => {
    const result = dial(7.25e6, "cw");
    expect(result).toMatchObject({ band: null, isPermitted: false });
    expect(present(result.worstSwr, "SWR")).toBeCloseTo(swrAt(7.250075e6), 6);
  });
});

describe("what was not swept is not known", () => {
  const NOTHING = { worstSwr: null, need: "unknown" };
  const shortSweep = rampSweep([7.0e6, 7.05e6], [0.1, 0.1]);

  test("outside the sweep", () => {
    expect(dial(7.1e6, "cw", shortSweep)).toMatchObject({ ...NOTHING, point: null, isPermitted: true });
    expect(dial(7.1e6, null, shortSweep)).toMatchObject({ ...NOTHING, point: null });
  });

  test("partly outside: the point is told, the whole is not", () => {
    const result = dial(7.049e6, "usb", shortSweep);
    expect(result).toMatchObject(NOTHING);
    expect(present(result.point, "point").reflectionMagnitude).toBeCloseTo(0.1, 9);
    expect(present(dial(7.0472e6, "usb", shortSweep).worstSwr, "SWR")).toBeCloseTo(1.1 / 0.9, 6);
  });

  test("across a gap", () => {
    const steps = (firstHz: number) => Array.from({ length: 101 }, (_, i) => firstHz + i * 100);
    // 7.010 to 7.012 MHz is missing.
    const frequencies = [...steps(7.0e6), ...steps(7.012e6)];
    const gap = sweepOfMagnitudes(
      frequencies,
      frequencies.map(() => 0.1),
    );
    expect(dial(7.009e6, "usb", gap)).toMatchObject(NOTHING);
    expect(dial(7.011e6, null, gap)).toMatchObject({ ...NOTHING, point: null });
    expect(present(dial(7.005e6, "usb", gap).worstSwr, "SWR")).toBeCloseTo(1.1 / 0.9, 6);
    expect(present(dial(7.012e6, "usb", gap).worstSwr, "SWR")).toBeCloseTo(1.1 / 0.9, 6);
  });
});

describe("an activity as a dial frequency", () => {
  const first = (label: string): Activity => present(activitiesFor({ label })[0], label);

  test.each([
    ["FT8", "data"],
    ["WSPR", "data"],
    ["CW QRP", "cw"],
    ["slow CW", "cw"],
    ["SSB QRP", "ssb"],
    ["emergency centre", "ssb"],
    ["digital voice", "ssb"],
    ["image (SSTV)", "image"],
    ["AM calling", "am"],
    ["FM calling", "fm"],
  ])("%s is sent in %s", (label, mode) => {
    const { frequencyHz } = first(label);
    expect(dialOf(first(label))).toEqual({ frequencyHz, mode: modeOf(mode as ModeName), activity: label });
  });

  test("beacons are only listened to", () => {
    expect(dialOf(first("international beacons")).mode).toBeNull();
  });

  test("FT8 on 40 m is judged over all of its audio range", () => {
    const ft8 = present(
      activitiesFor({ label: "FT8", band: "40m" }).find(({ frequencyHz }) => frequencyHz === 7.074e6),
      "FT8 on 7.074 MHz",
    );
    const [result] = check(SWEEP, { plan: PLAN, dials: [dialOf(ft8)] }).dials;
    const occupied: Pair = [7.0742e6, 7.0768e6];
    expect(result).toMatchObject({ activity: "FT8", mode: "data", lowHz: occupied[0], highHz: occupied[1] });
    expect(result?.isPermitted).toBe(true);
  });
});
