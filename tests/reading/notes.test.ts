/** SWR noted by hand: bands, stretches and frequencies in the ways people write them. Invented notes. */
import { readSweeps, type Sweep, swrFromReflectionMagnitude } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { messageOf, notesOf } from "../support/known-load.js";

const read = (text: string): Sweep => readSweeps(text, { fileName: "noted.txt" })[0];

/** What was read, in MHz and SWR. */
const readingsOf = ({ frequencyHz, reflectionMagnitude }: Sweep) =>
  Array.from(frequencyHz, (hz, i) => [
    hz / 1e6,
    Number(swrFromReflectionMagnitude(reflectionMagnitude[i] ?? Number.NaN).toFixed(6)),
  ]);

/** What was noted of each place: its band, and the least and the greatest SWR. */
const rangesOf = (sweep: Sweep) =>
  sweep.kind === "scalar" ? sweep.readings.map(({ band, swrLow, swrHigh }) => [band, swrLow, swrHigh]) : [];

// Middles of what all ITU Regions share: 3.5-3.8, 7.0-7.2 and 14.0-14.35 MHz.
const [M80, M40, M20] = [3.65, 7.1, 14.175];

describe("a note of a band and its SWR", () => {
  test.each([
    ["80m 2\n40m 1.5\n20m 3"],
    ["80 m: 2\n40 m: 1,5\n20 m: 3,0:1"],
    ["Wire at the lock\n2026-05-02\n80m .... SWR 2\n40m .... SWR 1:1.5\n20m .... SWR 3"],
    ["80-m-Band - SWV etwa 2\n40-m-Band - SWV 1,5\n20-m-Band - SWV 3"],
    ["bande 80 m -> ROS 2\nbande 40 m -> ROS env. 1,5\nbande 20 m -> ROS 3"],
    ["80m: 2, 40m: 1.5, 20m: 3"],
    ["80m=2 / 40m=1.5 / 20m=3"],
    ["80 2\n40 1.5\n20 3"],
    ["Band | SWR\n80m | 2\n40m | 1.5\n20m | 3"],
    ["80m 2 (ok)\n40m 1.5 good\n20m 3 needs tuner"],
    ["80m 2 (at 14:30)\n40m 1.5, 6 m up\n20m under 3"],
  ])("%j", (text) => {
    const sweep = read(text);
    expect(readingsOf(sweep)).toEqual([
      [M80, 2],
      [M40, 1.5],
      [M20, 3],
    ]);
    expect(sweep.findings.find(({ code }) => code === "spot-band")?.severity).toBe("info");
    expect(sweep.continuity).toBe("spots");
  });
});

describe("of several readings of a band", () => {
  test.each([
    ["40m 1.5 to 2\n20m 3", [1.5, 2], [3, 3]],
    ["40 m: 1,5 bis 2\n20 m: 3", [1.5, 2], [3, 3]],
    ["Band;low;mid;high\n40m;2.0;1.2;1.5\n20m;3.0;2.1;2.2", [1.2, 2], [2.1, 3]],
    ["40m 1.5\n20m 3\n40m 2", [1.5, 2], [3, 3]],
  ])("the range is kept, and the highest counts for its sample: %j", (text, forty, twenty) => {
    const sweep = read(text);
    expect(rangesOf(sweep)).toEqual([
      ["40m", ...forty],
      ["20m", ...twenty],
    ]);
    expect(readingsOf(sweep)).toEqual([
      [M40, 2],
      [M20, 3],
    ]);
  });

  test.each(["40m 1.5 to 2\n20m 3", "40 m: 1,5 bis 2\n20 m: 3"])("a range needs no word: %j", (text) => {
    expect(read(text).findings.map(({ code }) => code)).not.toContain("frequency-repeated");
  });

  test.each(["Band;low;mid;high\n40m;2.0;1.2;1.5\n20m;3.0;2.1;2.2", "40m 1.5\n20m 3\n40m 2"])(
    "that they are taken for one is said: %j",
    (text) => {
      const said = read(text).findings.find(({ code }) => code === "frequency-repeated");
      expect(said?.message).toContain("40m");
    },
  );
});

test("a frequency anywhere in a band as wide as it is in any country", () => {
  expect(readingsOf(read("1.801 swr 1.28\n3.95 swr 2.5"))).toEqual([
    [1.801, 1.28],
    [3.95, 2.5],
  ]);
});

describe("a frequency beside the band", () => {
  test.each([
    "40m 1.5 @ 7.030\n20m 3 @ 14.060",
    "40m: 1.5 at 7.030 MHz\n20m: 3 at 14.060 MHz",
    "40m 7.030 1.5\n20m 14.060 3",
    "40m (7.030) 1.5\n20m (14.060) 3",
    "Band,Frequency,SWR\n40m,7.030,1.5\n20m,14.060,3",
    "7.030 MHz: 1.5\n14.060 MHz: 3",
    "7030 kHz 1.5\n14060 kHz 3",
    "SWR of the wire\n7.030 1.5\n14.060 3",
  ])("is where the reading stands: %j", (text) => {
    const sweep = read(text);
    expect(readingsOf(sweep)).toEqual([
      [7.03, 1.5],
      [14.06, 3],
    ]);
    expect(notesOf(sweep)).not.toContain("spot-band");
  });

  test("may be a stretch, whose middle it is put at", () => {
    expect(readingsOf(read("7.0-7.2 MHz 1.5\n14 to 14.35 MHz 3"))).toEqual([
      [M40, 1.5],
      [M20, 3],
    ]);
  });

  test("is none where an SWR may have been meant", () => {
    // 3.7 is an SWR or a frequency of the 80 m band; of three numbers it is an SWR like the others.
    expect(readingsOf(read("80m 3.7 1.9 1.5\n40m 1.9 2.8 2.9"))).toEqual([
      [M80, 3.7],
      [M40, 2.9],
    ]);
  });
});

describe("a line that is no reading", () => {
  test("costs only itself, and is told", () => {
    const sweep = read("40m 1.5\n11m 1.2\n20m 3");
    expect(readingsOf(sweep)).toEqual([
      [M40, 1.5],
      [M20, 3],
    ]);
    expect(messageOf(sweep, "row-left-out")).toContain("11m 1.2");
    expect(sweep.findings.find(({ code }) => code === "row-left-out")?.line).toBe(2);
  });

  test.each(["40m 0.8\n20m 3\n15m 2", "40m 14 dB\n20m 3\n15m 2"])("is one of another unit, or below 1: %j", (text) => {
    expect(readingsOf(read(text)).map(([mhz]) => mhz)).toEqual([M20, 21.225]);
  });
});

test("a table of other readings is no note of SWR", () => {
  const sweep = read("Band,MHz,R,X\n40m,7.03,40,-12\n20m,14.06,60,15\n");
  expect(sweep.kind).toBe("vector");
  expect([...sweep.frequencyHz]).toEqual([7_030_000, 14_060_000]);
});

test.each(["40m >5\n20m 3", "40m 5+\n20m 3", "40m over 5\n20m 3", "40 m: plus de 5\n20 m: 3"])(
  "%j keeps its bound",
  (text) => {
    const sweep = read(text);
    // ρ = (5 - 1) / (5 + 1)
    expect(sweep.kind === "scalar" ? sweep.ceilingMagnitude : null).toBeCloseTo(2 / 3, 12);
  },
);

test("the reference that a note states is used", () => {
  expect(read("SWR against Z0 = 75 ohm\n40m 1.5\n20m 3").referenceOhms).toBe(75);
});
