/**
 * What each mode takes up, and where a plan lets it be sent.
 *
 * Sources: IARU Region 1 HF Band Plan, effective 16 October 2020, 40 m and 20 m rows, as the plan iaru-r1-hf has them; 47 CFR 97.303(h)
 * (upper sideband on 60 m). Widths and sidebands are common practice, as said in station/modes.ts.
 */
import {
  type BandPlan,
  check,
  MODE_NAMES,
  type ModeName,
  modeOf,
  occupiedBy,
  planById,
  privilegeFor,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { inventedPlan, rampSweep } from "../support/invented-plan.js";
import { present } from "../support/sweeps.js";

/** From where to where a transmission lies, Hz from the dial frequency. */
function reach(name: ModeName, frequencyHz: number, widthHz?: number) {
  const { belowHz, aboveHz } = occupiedBy(modeOf(name, widthHz === undefined ? {} : { widthHz }), frequencyHz);
  return [-belowHz, aboveHz];
}

describe("what a transmission occupies beside its dial frequency", () => {
  const EXPECTED: Readonly<Record<ModeName, readonly [number, number]>> = {
    cw: [-75, 75],
    ssb: [300, 2800],
    usb: [300, 2800],
    lsb: [-2800, -300],
    am: [-3000, 3000],
    fm: [-8000, 8000],
    rtty: [-125, 125],
    data: [200, 2800],
    image: [300, 2800],
  };

  test.each(MODE_NAMES)("%s on 20 m", (name) => {
    expect(reach(name, 14.2e6)).toEqual(EXPECTED[name]);
  });

  test.each([
    ["160 m", 1.9e6, [-2800, -300]],
    ["80 m", 3.7e6, [-2800, -300]],
    ["60 m", 5.357e6, [300, 2800]],
    ["40 m", 7.1e6, [-2800, -300]],
    ["just below 10 MHz", 9_999_999, [-2800, -300]],
    ["10 MHz", 10e6, [300, 2800]],
  ])("voice lies on the customary side on %s", (_, frequencyHz, expected) => {
    expect(reach("ssb", frequencyHz)).toEqual(expected);
    expect(reach("image", frequencyHz)).toEqual(expected);
  });

  test("a sideband that is named, and data, do not change sides", () => {
    expect(reach("usb", 7.1e6)).toEqual([300, 2800]);
    expect(reach("lsb", 14.2e6)).toEqual([-2800, -300]);
    expect(reach("data", 7.074e6)).toEqual([200, 2800]);
  });
});

describe("what the operator states of a mode", () => {
  test("a width goes before the usual one", () => {
    expect(reach("cw", 7e6, 500)).toEqual([-250, 250]);
    expect(reach("usb", 14e6, 2400)).toEqual([300, 2400]);
    expect(reach("lsb", 7e6, 3000)).toEqual([-3000, -300]);
  });

  test("the width that is held against a plan changes with it", () => {
    expect(modeOf("fm", { widthHz: 8000 }).bandwidthHz).toBe(8000);
    expect(modeOf("ssb", { widthHz: 5600 }).bandwidthHz).toBe(5300);
    expect(modeOf("data", { widthHz: 400 }).bandwidthHz).toBe(200);
    expect(modeOf("data", { bandwidthHz: 2300 }).bandwidthHz).toBe(2300);
    expect(modeOf("ssb", {})).toEqual(modeOf("ssb"));
  });

  test("a width that ends before the sideband begins is refused", () => {
    expect(() => modeOf("data", { widthHz: 50 })).toThrow(/begins at 200 Hz; 50 Hz is too little/);
    expect(() => modeOf("usb", { widthHz: 300 })).toThrow(RangeError);
    expect(modeOf("cw", { widthHz: 50 }).bandwidthHz).toBe(50);
  });
});

/** Where a mode is judged on a band, kHz, with the whole band swept. */
function piecesKhz(plan: BandPlan, band: string, name: ModeName, widthHz?: number) {
  const mode = modeOf(name, widthHz === undefined ? {} : { widthHz });
  const sweep = rampSweep([1e6, 30e6], [0.1, 0.1], 1001);
  const { bands, findings } = check(sweep, { plan, bands: [band], modes: [mode] });
  const isClosed = findings.some(({ code }) => code === "band-not-permitted");
  expect(isClosed).toBe(bands.length === 0);
  return bands.flatMap(({ pieces }) => pieces.map(({ lowHz, highHz }) => [lowHz / 1000, highHz / 1000]));
}

describe("a plan that limits bandwidth", () => {
  const iaru = present(planById("iaru-r1-hf"), "iaru-r1-hf");

  test.each([
    ["40m", "cw", [[7000, 7200]]],
    ["40m", "data", [[7040, 7200]]],
    ["40m", "ssb", [[7050, 7200]]],
    ["40m", "am", []],
    // 14.099-14.101 MHz is for beacons alone.
    [
      "20m",
      "cw",
      [
        [14000, 14099],
        [14101, 14350],
      ],
    ],
    [
      "20m",
      "data",
      [
        [14070, 14099],
        [14101, 14350],
      ],
    ],
    ["20m", "ssb", [[14101, 14350]]],
    ["30m", "ssb", []],
    ["30m", "data", [[10130, 10150]]],
  ] as const)("%s has for %s %j", (band, mode, expected) => {
    expect(piecesKhz(iaru, band, mode)).toEqual(expected);
  });

  test("takes the stated width for it", () => {
    // 200 Hz are allowed up to 7040 kHz, 500 Hz up to 7050 kHz.
    expect(piecesKhz(iaru, "40m", "cw", 200)).toEqual([[7000, 7200]]);
    expect(piecesKhz(iaru, "40m", "cw", 201)).toEqual([[7040, 7200]]);
    expect(piecesKhz(iaru, "40m", "cw", 501)).toEqual([[7050, 7200]]);
  });
});

test("a segment of an invented plan whose use is Morse takes Morse only, one for beacons nothing", () => {
  const plan = inventedPlan([
    { lowHz: 7.0e6, highHz: 7.05e6, use: "cw" },
    { lowHz: 7.05e6, highHz: 7.06e6, use: "beacon" },
    { lowHz: 7.06e6, highHz: 7.2e6, use: "all" },
  ]);
  expect(piecesKhz(plan, "40m", "cw")).toEqual([
    [7000, 7050],
    [7060, 7200],
  ]);
  expect(piecesKhz(plan, "40m", "ssb")).toEqual([[7060, 7200]]);
});

test("a band is judged where any of the modes may be sent", () => {
  const plan = present(planById("iaru-r1-hf"), "iaru-r1-hf");
  const sweep = rampSweep([6.9e6, 7.3e6], [0.1, 0.1]);
  const pieces = (...names: ModeName[]) =>
    check(sweep, { plan, bands: ["40m"], modes: names.map((name) => modeOf(name)) }).bands[0]?.pieces;
  expect(pieces("ssb", "data")).toEqual([{ lowHz: 7.04e6, highHz: 7.2e6 }]);
});

test("on 60 m voice on the customary side is permitted where the lower sideband is not", () => {
  const plan = present(planById("us-part97"), "us-part97");
  const permitted = (name: ModeName) => {
    const mode = modeOf(name);
    return privilegeFor(plan, {
      frequencyHz: 5.3305e6,
      emission: mode.emission,
      licenceClass: "general",
      occupied: occupiedBy(mode, 5.3305e6),
    }).allowed;
  };
  expect(permitted("ssb")).toBe(true);
  expect(permitted("lsb")).toBe(false);
});
