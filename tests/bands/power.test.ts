/** Ratings by mode, and which parts of a band share a licence limit. Plans and sweeps are invented. */
import { type AntennaDetails, type Equipment, type Grant, type ModeName, modeOf, usableBands } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { isLimiting, powersIn, reducedPower } from "../../packages/core/src/bands/power.js";
import { inventedPlan, rampSweep } from "../support/invented-plan.js";
import { partFor } from "../support/judged.js";
import { present } from "../support/sweeps.js";

const FLAT = rampSweep([7.0e6, 7.2e6], [0.1, 0.1]);
/** An SWR of 1.86 throughout. */
const HIGH = rampSweep([7.0e6, 7.2e6], [0.3, 0.3]);

/** Power in one mode; a segment of 20 kHz for each grant. */
function powersOf(grants: readonly Omit<Grant, "classes">[], mode: ModeName, equipment: Equipment = {}, sweep = FLAT) {
  const segments = grants.map((grant, i) => ({
    lowHz: 7.0e6 + i * 20_000,
    highHz: 7.02e6 + i * 20_000,
    grants: [{ classes: ["full"], ...grant }],
  }));
  const [first, ...others] = segments;
  const plan = inventedPlan([present(first, "a segment"), ...others], ["full"]);
  return powersIn([partFor(sweep)], present(usableBands(plan, "full")[0], "a band"), "full", [modeOf(mode)], {
    equipment,
    feedline: null,
    people: {},
  });
}

describe("an antenna's rating", () => {
  const rated = (mode: ModeName, ratedPowerW: Partial<Record<ModeName, number>>) =>
    powersOf([{}], mode, { radio: { powerW: 500 }, antenna: { ratedPowerW } })[0];

  test.each(["usb", "lsb", "ssb"] as const)("for ssb holds for %s", (mode) => {
    expect(rated(mode, { ssb: 200, cw: 100 })).toMatchObject({ watts: 200, limitedBy: "antenna" });
  });

  test("for one sideband goes before that for ssb", () => {
    expect(rated("usb", { ssb: 200, usb: 150 })).toMatchObject({ watts: 150 });
    expect(rated("lsb", { ssb: 200, usb: 150 })).toMatchObject({ watts: 200 });
  });

  test("for ssb holds for AM, which is voice, and that for data for what keys a carrier for long", () => {
    expect(rated("am", { ssb: 200, data: 50 })).toMatchObject({ watts: 200, limitedBy: "antenna" });
    for (const mode of ["rtty", "fm", "image"] as const)
      expect(rated(mode, { ssb: 200, data: 50 })).toMatchObject({ watts: 50, limitedBy: "antenna" });
  });

  test("of other modes alone is the least of those: what was not stated is no licence for more", () => {
    expect(rated("lsb", { usb: 150 })).toMatchObject({ watts: 150, limitedBy: "antenna" });
    expect(rated("data", { ssb: 200, cw: 100 })).toMatchObject({ watts: 100, limitedBy: "antenna" });
  });

  test("holds up to the SWR that it was stated for: 2 where nothing is said", () => {
    const covers = (antenna: AntennaDetails) => powersOf([{}], "ssb", { antenna }, HIGH)[0]?.isRatingCovered;
    expect(covers({ ratedPowerW: 100 })).toBe(true);
    expect(covers({ ratedPowerW: 100, ratedUpToSwr: 1.5 })).toBe(false);
    expect(covers({})).toBeNull();
  });
});

describe("a radio's output by mode", () => {
  const told = (mode: ModeName, powerW: Partial<Record<ModeName, number>>) =>
    powersOf([{}], mode, { radio: { powerW } })[0]?.watts;

  test("is that of the mode, of one like it, or else the greatest stated", () => {
    expect(told("ssb", { ssb: 100, data: 25 })).toBe(100);
    expect(told("usb", { ssb: 100, data: 25 })).toBe(100);
    expect(told("data", { ssb: 100, data: 25 })).toBe(25);
    expect(told("cw", { ssb: 100, data: 25 })).toBe(100);
  });
});

test("of equal limits the licence is named first", () => {
  const equal = { radio: { powerW: 100 }, antenna: { ratedPowerW: 100 } };
  expect(powersOf([{ maxPower: { watts: 100, basis: "pep" } }], "cw", equal)[0]?.limitedBy).toBe("licence");
});

test.each([
  [{}, false],
  [{ radio: { tuner: "built-in" } }, false],
  [{ antenna: { gainDbi: 3 } }, false],
  [{ radio: { powerW: 100 } }, true],
  [{ antenna: { ratedPowerW: 100 } }, true],
  [{ radio: { powerW: 100 }, antenna: { ratedPowerW: 100 } }, true],
] as const)("whether %j limits power: %s", (equipment, expected) => {
  expect(isLimiting(equipment)).toBe(expected);
});

test("a reduction in one step is none at that SWR, and whole beyond", () => {
  const step = { fromSwr: 2, toSwr: 2, toW: 20 };
  expect(reducedPower(100, step, 2)).toBe(100);
  expect(reducedPower(100, step, 2.01)).toBe(20);
});

describe("segments are apart", () => {
  const pieces = (...grants: readonly Omit<Grant, "classes">[]) =>
    powersOf(grants, "cw").map((power) => power.pieces.map(({ lowHz, highHz }) => [lowHz / 1e6, highHz / 1e6]));
  const two = [[[7.0, 7.02]], [[7.02, 7.04]]];

  test("where one has a limit and the other none, whichever comes first", () => {
    const limited: Omit<Grant, "classes"> = { maxPower: { watts: 100, basis: "pep" } };
    expect(pieces({}, limited)).toEqual(two);
    expect(pieces(limited, {})).toEqual(two);
    expect(pieces(limited, limited)).toEqual([[[7.0, 7.04]]]);
  });

  test("where the same watts are measured elsewhere", () => {
    expect(pieces({ maxPower: { watts: 100, basis: "pep" } }, { maxPower: { watts: 100, basis: "erp" } })).toEqual(two);
  });

  test("where the second of two limits differs", () => {
    const both = (watts: number): Omit<Grant, "classes"> => ({
      maxPower: { watts: 5, basis: "eirp" },
      alsoMaxTransmitterWattsPep: watts,
    });
    expect(pieces(both(500), both(400))).toEqual(two);
    expect(pieces(both(500), both(500))).toEqual([[[7.0, 7.04]]]);
  });
});
