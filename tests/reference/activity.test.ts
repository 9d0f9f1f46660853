/**
 * Common activity frequencies.
 *
 * Sources: IARU Region 1 HF band plan of 16 Oct 2020 (centres of activity, QRP), quotations of the Region 2 plan of 2016 and
 * a Region 3 chart of 2020 (emergency centres), public lists of FT8 and FT4 dial frequencies that agree, a WSPR list of 2011.
 */
import {
  ACTIVITIES,
  ACTIVITY_SOURCES,
  type Activity,
  type ActivityFilter,
  type ActivityRegion,
  activitiesFor,
  planById,
  usableBands,
} from "@feedpoint/core";
import { activitySchema } from "@feedpoint/core/schema";
import { describe, expect, test } from "vitest";
import { present } from "../support/sweeps.js";

const kilohertz = (filter: ActivityFilter) => activitiesFor(filter).map(({ frequencyHz }) => frequencyHz / 1000);
const nameOf = ({ label, band, frequencyHz }: Activity) => `${label} on ${band}, ${frequencyHz} Hz`;

/** Whether a plan gives the span to amateurs, in one piece of the band of that name. */
function isWithin(planId: string, bandName: string, lowHz: number, highHz: number): boolean {
  const band = usableBands(present(planById(planId), planId), null).find((candidate) => candidate.band === bandName);
  return (band?.pieces ?? []).some((piece) => piece.lowHz <= lowHz && highHz <= piece.highHz);
}

describe("the data", () => {
  const asFromFile = () => structuredClone({ sources: ACTIVITY_SOURCES, activities: ACTIVITIES });

  test("passes the schema unchanged", () => {
    expect(activitySchema.parse(asFromFile())).toEqual({ sources: ACTIVITY_SOURCES, activities: ACTIVITIES });
  });

  test.each([
    ["a misspelt key", { dail: "usb" }],
    ["a source that is not listed", { sources: ["hearsay"] }],
    ["a frequency out of order", { frequencyHz: 1e12 }],
    ["no region", { regions: [] }],
    ["offsets the wrong way round", { occupied: { lowOffsetHz: 3000, highOffsetHz: 200 } }],
  ])("would not pass it with %s", (_, change) => {
    const { sources, activities } = asFromFile();
    Object.assign(present(activities[0], "an activity"), change);
    expect(activitySchema.safeParse({ sources, activities }).success).toBe(false);
  });

  test("is frozen to the bottom", () => {
    expect(Object.isFrozen(ACTIVITIES)).toBe(true);
    for (const { regions, sources, occupied = null } of ACTIVITIES) {
      expect([regions, sources, occupied].every(Object.isFrozen)).toBe(true);
    }
  });

  test("names each frequency of a label once, ascending on every band", () => {
    const reached = new Map<string, number>();
    for (const { label, band, frequencyHz } of ACTIVITIES) {
      const place = `${label} ${band}`;
      expect(frequencyHz, place).toBeGreaterThan(reached.get(place) ?? 0);
      reached.set(place, frequencyHz);
    }
  });

  test("says memory where it is memory, and a source where one was read", () => {
    for (const entry of ACTIVITIES) expect(entry.sources.includes("memory"), nameOf(entry)).toBe(!entry.confirmed);
  });
});

describe("each activity lies where amateurs may transmit", () => {
  test("all its signals, in every ITU Region, where it is common everywhere", () => {
    const everywhere = ACTIVITIES.filter(({ regions }) => regions.includes("all"));
    expect(everywhere.length).toBeGreaterThan(40);
    for (const entry of everywhere) {
      const { band, frequencyHz, occupied = { lowOffsetHz: 0, highOffsetHz: 0 } } = entry;
      const [low, high] = [frequencyHz + occupied.lowOffsetHz, frequencyHz + occupied.highOffsetHz];
      expect(isWithin("itu-common", band, low, high), nameOf(entry)).toBe(true);
    }
  });

  // The middle of the signals: their outer edges are rounded, and on a 60 m channel the dial itself lies outside.
  test.each([
    ["1", "iaru-r1-hf"],
    ["2", "iaru-r2-hf"],
    ["3", "iaru-r3-hf"],
    ["us", "us-part97"],
    ["jp", "jp-mic"],
    ["uk", "uk"],
  ] as const)("in region %s by the plan %s, where it is common only there", (region, planId) => {
    const local = ACTIVITIES.filter(({ regions }) => regions.includes(region));
    expect(local.length).toBeGreaterThan(0);
    for (const entry of local) {
      const { lowOffsetHz, highOffsetHz } = entry.occupied ?? { lowOffsetHz: 0, highOffsetHz: 0 };
      const middle = entry.frequencyHz + (lowOffsetHz + highOffsetHz) / 2;
      expect(isWithin(planId, entry.band, middle, middle), nameOf(entry)).toBe(true);
    }
  });

  test("beacons where IARU Region 1 keeps a segment for them", () => {
    const segments = present(planById("iaru-r1-hf"), "plan").bands.flatMap((band) => band.segments);
    for (const entry of activitiesFor({ kind: "beacon" })) {
      const home = segments.find(({ lowHz, highHz }) => lowHz <= entry.frequencyHz && entry.frequencyHz < highHz);
      expect(home?.use, nameOf(entry)).toBe("beacon");
    }
  });
});

describe("published frequencies, in kHz", () => {
  test.each<[ActivityRegion, number[]]>([
    ["1", [3760, 7110, 14300, 18160, 21360]],
    ["2", [3750, 3985, 7060, 7240, 7275, 14300, 18160, 21360]],
    ["3", [3600, 7110, 14300, 18160, 21360]],
  ])("emergency centres of Region %s", (region, expected) => {
    expect(kilohertz({ kind: "emergency", region })).toEqual(expected);
  });

  test("Morse at low power in Region 1", () => {
    expect(kilohertz({ label: "CW QRP", region: "1" })).toEqual([
      1836, 3560, 7030, 10116, 14060, 18086, 21060, 24906, 28060,
    ]);
  });

  test("FT8 dials of the whole world", () => {
    expect(kilohertz({ label: "FT8", region: "all" })).toEqual([
      1840, 3573, 5357, 7074, 10136, 14074, 18100, 21074, 24915, 28074, 50313, 144174,
    ]);
  });
});

describe("activities for a filter", () => {
  test("all of them, where nothing is asked", () => {
    expect(activitiesFor({})).toEqual(ACTIVITIES);
  });

  test("of a country are its own, its Region's and the world's", () => {
    const places = (region: ActivityRegion) =>
      [...new Set(activitiesFor({ region }).flatMap(({ regions }) => regions))].sort();
    expect(places("us")).toEqual(["1", "2", "3", "all", "us"]); // 1 and 3 share emergency centres and PSK31 with 2
    expect(kilohertz({ region: "us", label: "FT8", band: "40m" })).toEqual([7074]);
    expect(kilohertz({ region: "jp", label: "FT8", band: "40m" })).toEqual([7041, 7074]);
    expect(kilohertz({ region: "2", label: "FT8", band: "60m" })).toEqual([5357]);
    expect(kilohertz({ region: "us", label: "FT8", band: "60m" })).toEqual([5357, 5371.5]);
  });

  test("must meet all that is asked", () => {
    expect(kilohertz({ kind: "ssb-qrp", band: "40m", region: "1" })).toEqual([7090]);
    expect(kilohertz({ kind: "ssb-qrp", label: "FT8" })).toEqual([]);
  });
});
