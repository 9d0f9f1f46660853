/** What a band plan of one's own is refused for, and what not. The plan is invented. */

import { check, modeOf } from "@feedpoint/core";
import { parseBandPlan } from "@feedpoint/core/schema";
import { describe, expect, test } from "vitest";
import { evenly, present, sweepOfMagnitudes } from "../support/sweeps.js";

const segment = (more: object = {}) => ({
  lowHz: 7_000_000,
  highHz: 7_200_000,
  use: "all",
  confirmed: false,
  sources: [],
  ...more,
});
const band = (more: object = {}) => ({
  band: "40m",
  lowHz: 7_000_000,
  highHz: 7_200_000,
  segments: [segment()],
  ...more,
});
const plan = (more: object = {}) => ({
  id: "towpath",
  title: "Invented",
  kind: "licence-privileges",
  authority: "none",
  edition: "",
  source: { title: "invented" },
  confirmed: false,
  classes: ["skipper", "mate"],
  notes: [],
  sources: [],
  bands: [band()],
  ...more,
});

describe("a band plan", () => {
  test("may name its schema and hold a comment", () => {
    expect(parseBandPlan(plan({ $schema: "./plan.schema.json", $comment: "invented" })).id).toBe("towpath");
  });

  test.each([
    [
      "in MHz",
      plan({ bands: [band({ lowHz: 7, highHz: 7.2, segments: [segment({ lowHz: 7, highHz: 7.2 })] })] }),
      "frequencies are in Hz",
    ],
    ["with a band twice", plan({ bands: [band(), band()] }), "two bands have the same name"],
    [
      "with bands that overlap",
      plan({ bands: [band(), band({ band: "forty" })] }),
      "bands must ascend and not overlap",
    ],
    [
      "that grants to a misspelt class",
      plan({ bands: [band({ segments: [segment({ grants: [{ classes: ["skiper"] }] })] })] }),
      'bands[0].segments[0].grants[0].classes: "skiper" does not stand in the classes of the plan (skipper, mate)',
    ],
  ])("%s is refused", (_, data, message) => {
    expect(() => parseBandPlan(data)).toThrow(message);
  });
});

describe("the power that a plan gives", () => {
  const sweep = sweepOfMagnitudes(evenly(6.9e6, 7.3e6, 10e3), Array<number>(41).fill(0.1));
  const limitsOf = (grants: readonly object[], more: object, licenceClass: string | null) => {
    const parsed = parseBandPlan(plan({ bands: [band({ segments: [segment({ grants, ...more })] })] }));
    const modes = [modeOf("cw")];
    const dials = [{ frequencyHz: 7.05e6, mode: modes[0] ?? null, activity: null }];
    const result = check(sweep, { plan: parsed, licenceClass, modes, dials });
    const power = present(result.bands[0]?.power[0], "power").licenceLimits;
    expect(present(result.dials[0], "dial").licenceLimits).toEqual(power);
    return power;
  };
  const pep = (watts: number) => ({ watts, basis: "pep" });
  const eirp = (watts: number) => ({ watts, basis: "eirp" });

  test("a segment's limit holds for all of its grants, at the dial and in the table of power", () => {
    const grants = [{ classes: ["skipper"] }, { classes: ["mate"], maxPower: pep(100) }];
    expect(limitsOf(grants, { maxPower: pep(5) }, "skipper")).toEqual([pep(5)]);
    expect(limitsOf(grants, { maxPower: pep(5) }, "mate")).toEqual([pep(5)]);
    expect(limitsOf(grants, { maxPower: eirp(5) }, "mate")).toEqual([pep(100), eirp(5)]);
  });

  test("without a class the greatest of the grants holds", () => {
    const grants = [
      { classes: ["mate"], maxPower: pep(10) },
      { classes: ["skipper"], maxPower: pep(100) },
    ];
    expect(limitsOf(grants, {}, null)).toEqual([pep(100)]);
  });

  test("a limit at the transmitter stands beside a radiated one", () => {
    const grants = [{ classes: ["mate"], maxPower: eirp(15), alsoMaxTransmitterWattsPep: 5 }];
    expect(limitsOf(grants, {}, "mate")).toEqual([eirp(15), pep(5)]);
  });
});
