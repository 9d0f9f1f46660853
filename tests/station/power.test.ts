/**
 * The greatest power by band and mode. Plans and sweeps are invented, but for the 60 m band: 47 CFR 97.313 and 97.303(h) with
 * 91 FR 1405, as the plan us-part97 has them. ERP is EIRP less 2.15 dB, the gain of a half-wave dipole over an isotropic
 * radiator (ITU Radio Regulations 1.161 and 1.162, from memory).
 */
import {
  check,
  type Equipment,
  type Grant,
  type ModeName,
  type ModeSettings,
  modeOf,
  type PowerResult,
  planById,
  reducedPower,
  reflectionMagnitudeFromSwr,
  type Sweep,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { inventedPlan, rampSweep } from "../support/invented-plan.js";
import { type Pair, present } from "../support/sweeps.js";

const BAND: Pair = [7.0e6, 7.2e6];
const rho = reflectionMagnitudeFromSwr;
const flat = (swr: number) => rampSweep(BAND, [rho(swr), rho(swr)]);
/** SWR from 1.25 to 12 over the band: ρ rises evenly. */
const RAMP = rampSweep(BAND, [rho(1.25), rho(12)]);

interface Asked {
  readonly sweep?: Sweep;
  readonly grant?: Omit<Grant, "classes">;
  readonly equipment?: Equipment;
  readonly mode?: ModeName;
  readonly settings?: ModeSettings;
}

/** Power in one mode over an invented band of one segment. */
function powerOf({ sweep = flat(1), grant = {}, equipment = {}, mode = "ssb", settings }: Asked): PowerResult {
  const plan = inventedPlan([{ lowHz: BAND[0], highHz: BAND[1], grants: [{ classes: ["full"], ...grant }] }], ["full"]);
  const { bands } = check(sweep, { plan, licenceClass: "full", modes: [modeOf(mode, settings)], equipment });
  return present(bands[0]?.power[0], "power");
}

describe("the lowest of all limits wins", () => {
  test.each([
    [100, 80, 50, 50, "radio"],
    [100, 50, 80, 50, "antenna"],
    [50, 100, 80, 50, "licence"],
  ] as const)("licence %d W, antenna %d W, radio %d W: %d W by the %s", (licence, ratedPowerW, powerW, watts, by) => {
    const result = powerOf({
      grant: { maxPower: { watts: licence, basis: "pep" } },
      equipment: { radio: { powerW }, antenna: { ratedPowerW } },
    });
    expect(result).toMatchObject({ watts, limitedBy: by, bestWatts: watts });
    expect(result.licenceLimits).toEqual([{ watts: licence, basis: "pep" }]);
  });

  test("without any limit there is no number", () => {
    const result = powerOf({ sweep: flat(1.5) });
    expect(result).toMatchObject({ watts: null, limitedBy: null, bestWatts: null, averageWatts: null });
    expect(result.licenceLimits).toEqual([]);
    expect(result.worstSwr).toBeCloseTo(1.5, 9);
    expect(result.usableFraction).toBe(1);
  });

  test("a licence limit at the transmitter holds beside one of radiated power", () => {
    const grant = { maxPower: { watts: 5, basis: "eirp" }, alsoMaxTransmitterWattsPep: 500 } as const;
    const poor = powerOf({ grant, equipment: { antenna: { gainDbi: -30 } } });
    expect(poor).toMatchObject({ watts: 500, limitedBy: "licence" });
    const fair = powerOf({ grant, equipment: { antenna: { gainDbi: -10 } } });
    expect(fair.watts).toBeCloseTo(50, 9);
    expect(fair.licenceLimits).toEqual([
      { watts: 5, basis: "eirp" },
      { watts: 500, basis: "pep" },
    ]);
  });
});

describe("radiated power at the transmitter", () => {
  test.each([
    ["a half-wave dipole is the reference itself", "erp", undefined, 100],
    ["3 dB more", "erp", 5.15, 50.1187],
    ["3 dB less", "erp", -0.85, 199.526],
    ["2.15 dB less than for an isotropic radiator", "eirp", undefined, 60.9537],
    ["an isotropic radiator is the reference itself", "eirp", 0, 100],
    ["10 dB more", "eirp", 10, 10],
  ] as const)("%s: 100 W %s with %s dBi are %d W", (_, basis, gainDbi, watts) => {
    const result = powerOf({
      grant: { maxPower: { watts: 100, basis } },
      equipment: { antenna: gainDbi === undefined ? {} : { gainDbi } },
    });
    expect(result.watts).toBeCloseTo(watts, 3);
  });
});

describe("a radio that reduces its power", () => {
  const reduction = { fromSwr: 1.5, toSwr: 3, toW: 20 };

  test.each([
    [1, 100],
    [1.5, 100],
    [2.25, 60],
    [2.5, 100 - 80 * (1 / 1.5)],
    [3, 20],
    [Number.POSITIVE_INFINITY, 20],
  ])("gives at SWR %d of its 100 W %d W", (swr, watts) => {
    expect(reducedPower(100, reduction, swr)).toBeCloseTo(watts, 9);
  });

  test("never gives more than it has, and all of it without a statement", () => {
    expect(reducedPower(10, reduction, 3)).toBe(10);
    expect(reducedPower(10, reduction, 2)).toBe(10);
    expect(reducedPower(100, undefined, 9)).toBe(100);
  });

  test("is asked at the worst and at the best SWR within reach", () => {
    const result = powerOf({ sweep: RAMP, equipment: { radio: { powerW: 100, reduction } } });
    expect(present(result.worstSwr, "worst")).toBeCloseTo(2, 4);
    expect(present(result.watts, "watts")).toBeCloseTo(100 - 80 * (0.5 / 1.5), 2);
    expect(result.bestWatts).toBe(100);
  });
});

describe("the tuner says how much of the band is in reach", () => {
  const shareTo = (swr: number) => (rho(swr) - rho(1.25)) / (rho(12) - rho(1.25));
  const reduction = { fromSwr: 1.5, toSwr: 3, toW: 20 };

  test.each([
    ["none", 2, 100 - 80 * (0.5 / 1.5)],
    ["built-in", 3, 100],
    ["wide-range", 10, 100],
  ] as const)("%s: to %d:1, with %d W", (tuner, swr, watts) => {
    const result = powerOf({ sweep: RAMP, equipment: { radio: { powerW: 100, tuner, reduction } } });
    expect(result.usableFraction).toBeCloseTo(shareTo(swr), 5);
    expect(present(result.worstSwr, "worst")).toBeCloseTo(swr, 3);
    expect(present(result.watts, "watts")).toBeCloseTo(watts, 2);
  });

  test("with nothing in reach there is no power, whatever the limits", () => {
    const result = powerOf({
      sweep: flat(5),
      grant: { maxPower: { watts: 100, basis: "pep" } },
      equipment: { radio: { powerW: 100, tuner: "built-in" } },
    });
    expect(result).toMatchObject({
      usableFraction: 0,
      watts: null,
      limitedBy: null,
      worstSwr: null,
      bestWatts: null,
      averageWatts: null,
    });
  });

  test("on a band that was not swept no power is told", () => {
    const plan = inventedPlan([{ lowHz: BAND[0], highHz: BAND[1] }]);
    const elsewhere = rampSweep([14e6, 14.3e6], [0.1, 0.1]);
    const equipment = { radio: { powerW: 100 } };
    expect(check(elsewhere, { plan, modes: [modeOf("cw")], equipment }).bands[0]?.power).toEqual([]);
  });
});

describe("by mode", () => {
  const ratedPowerW = { ssb: 200, cw: 100, data: 50 };

  test.each([
    ["ssb", 200, 40],
    ["cw", 100, 40],
    ["data", 50, 50],
  ] as const)("a rating of 100, 50 and 25 %%: %s %d W, %d W on average", (mode, watts, average) => {
    const result = powerOf({ mode, equipment: { radio: { powerW: 500 }, antenna: { ratedPowerW } } });
    expect(result).toMatchObject({ watts, limitedBy: "antenna" });
    expect(result.averageWatts).toBeCloseTo(average, 9);
  });

  test("a mode without a rating is held by that of one like it", () => {
    const result = powerOf({ mode: "fm", equipment: { radio: { powerW: 500 }, antenna: { ratedPowerW } } });
    expect(result).toMatchObject({ watts: 50, limitedBy: "antenna", averageWatts: 50 });
  });

  test("the operator's own duty factor goes before the usual one", () => {
    const result = powerOf({ settings: { dutyFactor: 0.45 }, equipment: { radio: { powerW: 100 } } });
    expect(result.averageWatts).toBeCloseTo(45, 9);
  });

  test("each mode has the parts where it may be sent, adjoining ones joined, apart by licence limit", () => {
    const grant = (emissions: Grant["emissions"], watts: number) => ({
      grants: [
        {
          classes: ["full"],
          ...(emissions === undefined ? {} : { emissions }),
          maxPower: { watts, basis: "pep" },
        } as const,
      ],
    });
    const plan = inventedPlan(
      [
        { lowHz: 7.0e6, highHz: 7.02e6, ...grant(["cw"], 10) },
        { lowHz: 7.02e6, highHz: 7.05e6, ...grant(["cw"], 100) },
        { lowHz: 7.05e6, highHz: 7.1e6, ...grant(["cw", "phone"], 100) },
        { lowHz: 7.15e6, highHz: 7.2e6, ...grant(["cw", "phone"], 100) },
      ],
      ["full"],
    );
    const modes = [modeOf("cw"), modeOf("ssb")];
    const [band] = check(flat(1), { plan, licenceClass: "full", modes }).bands;
    expect(
      band?.power.map(({ mode, watts, pieces }) => [
        mode,
        watts,
        ...pieces.map((piece) => [piece.lowHz, piece.highHz]),
      ]),
    ).toEqual([
      ["cw", 10, [7.0e6, 7.02e6]],
      ["cw", 100, [7.02e6, 7.1e6], [7.15e6, 7.2e6]],
      ["ssb", 100, [7.05e6, 7.1e6], [7.15e6, 7.2e6]],
    ]);
  });
});

test("60 m has two licence limits, and a result for each: four channels at 100 W ERP, 15 kHz at 9.15 W ERP", () => {
  const plan = present(planById("us-part97"), "us-part97");
  const sweep = rampSweep([5.3e6, 5.42e6], [0.1, 0.1]);
  const [band] = check(sweep, {
    plan,
    licenceClass: "general",
    bands: ["60m"],
    modes: [modeOf("ssb")],
    equipment: { radio: { powerW: 100 }, antenna: { gainDbi: 5.15 } },
  }).bands;
  const rows = present(band, "60 m").power;
  expect(rows.map(({ licenceLimits, pieces }) => [licenceLimits, pieces.length])).toEqual([
    [[{ watts: 100, basis: "erp" }], 4],
    [[{ watts: 9.15, basis: "erp" }], 1],
  ]);
  expect(rows.map(({ limitedBy }) => limitedBy)).toEqual(["licence", "licence"]);
  expect(rows[0]?.watts).toBeCloseTo(50.1187, 3);
  expect(rows[1]?.watts).toBeCloseTo(9.15 * 0.501187, 3);
});
