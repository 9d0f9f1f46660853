/**
 * The band plans that come with the library.
 *
 * Sources: 47 CFR 97.301 (class edges), 97.303(h)(3) with 91 FR 1405 (60 m), 97.305 (emissions), read in reprints and
 * quotations; ITU Radio Regulations, Article 5, as the Region columns of 47 CFR 97.301 and IARU Region 1 quote it. For the
 * plans after these: a retyped draft of the Japanese band-use table (19 Nov 2022), and what each plan names as its sources;
 * licence-values.test.ts holds them to single values.
 */
import {
  type BandPlan,
  COMMON_PLAN_ID,
  check,
  type Emission,
  planById,
  planCertainty,
  planIdNamed,
  planIds,
  usableBands,
} from "@feedpoint/core";
import { parseBandPlan } from "@feedpoint/core/schema";
import { describe, expect, test } from "vitest";
import { evenly, type Pair, present, sweepOfMagnitudes } from "../support/sweeps.js";

const plan = (id: string): BandPlan => present(planById(id), id);
const us = plan("us-part97");

/** Spans in kHz where a class may use an emission, adjoining ones joined. */
function spansKhz(licenceClass: string, emission: Emission, bandName: string): Pair[] {
  const band = present(
    us.bands.find(({ band: name }) => name === bandName),
    bandName,
  );
  const spans: [number, number][] = [];
  for (const { lowHz, highHz, grants = [] } of band.segments) {
    if (!grants.some((grant) => grant.classes.includes(licenceClass) && grant.emissions?.includes(emission))) continue;
    const last = spans.at(-1);
    if (last?.[1] === lowHz / 1000) last[1] = highHz / 1000;
    else spans.push([lowHz / 1000, highHz / 1000]);
  }
  return spans;
}

describe("every plan that comes with the library", () => {
  test("is found by its name, the common one first, and no other is", () => {
    expect(planIds()[0]).toBe(COMMON_PLAN_ID);
    expect(new Set(planIds()).size).toBe(planIds().length);
    expect(planIds()).toEqual(
      expect.arrayContaining([
        "us-part97",
        "itu-r1",
        "itu-r2",
        "itu-r3",
        "iaru-r1-hf",
        "jp-mic",
        "uk",
        "de",
        "fr",
        "ca",
        "br",
        "au",
      ]),
    );
    expect(planById("no-such-plan")).toBeNull();
  });

  test.each(planIds())("%s passes the schema unchanged", (id) => {
    expect(plan(id).id).toBe(id);
    const asFromFile: unknown = JSON.parse(JSON.stringify(plan(id)));
    expect(parseBandPlan(asFromFile)).toEqual(plan(id));
  });

  test.each(planIds())("%s lists its bands and their segments upwards without overlap", (id) => {
    let reached = 0;
    for (const band of plan(id).bands) {
      expect(band.lowHz).toBeGreaterThan(reached);
      let within = band.lowHz;
      for (const { lowHz, highHz } of band.segments) {
        expect(lowHz).toBeGreaterThanOrEqual(within);
        expect(highHz).toBeGreaterThan(lowHz);
        within = highHz;
      }
      expect(within).toBeLessThanOrEqual(band.highHz);
      reached = band.highHz;
    }
  });
});

describe("a plan that rests on memory", () => {
  const fromMemory = planIds().filter((id) => /^(mostly-)?from-memory$/.test(planCertainty(plan(id))));
  const sweep = sweepOfMagnitudes(evenly(3e6, 30e6, 50e3), Array<number>(541).fill(0.2));
  const cautions = (id: string) =>
    check(sweep, { plan: plan(id) }).findings.filter(({ code }) => code === "plan-from-memory");

  test("is one of these, and its title says so", () => {
    expect(fromMemory).toEqual(["iaru-r2-hf", "iaru-r3-hf"]);
    for (const id of fromMemory) expect(plan(id).title).toMatch(/from memory$/);
  });

  test("has no part in what is judged where no plan was chosen", () => {
    expect(plan(COMMON_PLAN_ID).source.title).toBe("What itu-r1, itu-r2, itu-r3 have in common");
    expect(plan(COMMON_PLAN_ID).sources.map(({ id }) => id)).not.toContain("memory");
  });

  test.each([
    [
      "iaru-r2-hf",
      { extent: "most", bands: ["160m", "80m", "60m"] },
      "Most of this plan rests on memory; read whole from a source: only 160m, 80m, 60m.",
    ],
    [
      "iaru-r3-hf",
      { extent: "most", bands: [] },
      "Most of this plan rests on memory; read whole from a source: no band of it.",
    ],
  ])("%s says so once in a result, whichever bands were judged", (id, params, message) => {
    expect(cautions(id)).toEqual([{ code: "plan-from-memory", severity: "caution", params, message }]);
    expect(check(sweep, { plan: plan(id), bands: ["80m"] }).findings).toContainEqual(
      expect.objectContaining({ message }),
    );
  });

  test("is told from one that does so in part, which names the bands, and from one read whole", () => {
    expect(planCertainty(plan("itu-r1"))).toBe("partly-from-memory");
    expect(cautions("itu-r1").map(({ band }) => band)).toEqual(["20m"]);
    expect(planCertainty(plan("us-part97"))).toBe("from-sources");
    expect(cautions("us-part97")).toEqual([]);
  });
});

describe("national plans", () => {
  test("that lack bands say so in their titles", () => {
    const usual = ["80m", "40m", "20m", "15m", "10m", "2m", "70cm"];
    const national = planIds().filter((id) => !/^(itu|iaru)-/.test(id));
    const partial = national.filter((id) => usual.some((name) => !plan(id).bands.some(({ band }) => band === name)));
    expect(partial).toEqual(["jp-mic"]);
    for (const id of partial) expect(plan(id).title).toContain("partial");
  });

  test("are found by what their countries are called", () => {
    expect(["Germany", "us", "UK", "united kingdom", "Brasil"].map(planIdNamed)).toEqual([
      "de",
      "us-part97",
      "uk",
      "uk",
      "br",
    ]);
    expect(planIdNamed("constructor")).toBeNull();
  });

  test("Japan: 80 m is six pieces with gaps between", () => {
    const eighty = usableBands(plan("jp-mic"), null).find(({ band }) => band === "80m");
    expect(eighty?.pieces.map(({ lowHz, highHz }) => [lowHz / 1000, highHz / 1000])).toEqual([
      [3500, 3580],
      [3599, 3612],
      [3662, 3687],
      [3702, 3716],
      [3745, 3770],
      [3791, 3805],
    ]);
  });

  test("Canada: 60 m is where the United States have it, with 100 W ERP throughout", () => {
    const sixty = (id: string) => present(plan(id).bands.find(({ band }) => band === "60m")?.segments, id);
    const edges = (id: string) => sixty(id).map(({ lowHz, highHz }) => [lowHz, highHz]);
    expect(edges("ca")).toEqual(edges("us-part97"));
    for (const { grants = [] } of sixty("ca"))
      expect(grants.map(({ maxPower }) => maxPower)).toEqual([{ watts: 100, basis: "erp" }]);
  });
});

describe("what the ITU Regions have in common", () => {
  test.each(["itu-r1", "itu-r2", "itu-r3"])("lies within %s, piece by piece", (id) => {
    const region = new Map(usableBands(plan(id), null).map((band) => [band.band, band.pieces]));
    for (const { band, pieces } of usableBands(plan(COMMON_PLAN_ID), null)) {
      for (const piece of pieces) {
        const holds = (region.get(band) ?? []).some(
          ({ lowHz, highHz }) => lowHz <= piece.lowHz && piece.highHz <= highHz,
        );
        expect(holds, `${band} ${piece.lowHz} to ${piece.highHz} Hz`).toBe(true);
      }
    }
  });

  // Radio Regulations, Article 5: Region 1 sets the upper end on 80 and 40 m and both ends on 160 m.
  test.each([
    ["160m", 1810, 1850],
    ["80m", 3500, 3800],
    ["60m", 5351.5, 5366.5],
    ["40m", 7000, 7200],
    ["30m", 10100, 10150],
    ["20m", 14000, 14350],
    ["17m", 18068, 18168],
    ["15m", 21000, 21450],
    ["12m", 24890, 24990],
    ["10m", 28000, 29700],
  ])("is on %s the span from %d to %d kHz", (name, lowKhz, highKhz) => {
    const band = usableBands(plan(COMMON_PLAN_ID), null).find((candidate) => candidate.band === name);
    expect(band?.pieces).toEqual([{ lowHz: lowKhz * 1000, highHz: highKhz * 1000 }]);
  });
});

describe("United States classes", () => {
  test.each([
    ["80m", 3800, 4000],
    ["40m", 7175, 7300],
    ["20m", 14225, 14350],
    ["17m", 18110, 18168],
    ["15m", 21275, 21450],
    ["12m", 24930, 24990],
    ["10m", 28300, 29700],
  ])("General may use phone on %s from %d to %d kHz and nowhere else", (band, low, high) => {
    expect(spansKhz("general", "phone", band)).toEqual([[low, high]]);
  });

  test.each([
    ["80m", 3600, 4000],
    ["40m", 7125, 7300],
    ["20m", 14150, 14350],
    ["15m", 21200, 21450],
  ])("Extra may use phone on %s from %d to %d kHz and nowhere else", (band, low, high) => {
    expect(spansKhz("extra", "phone", band)).toEqual([[low, high]]);
  });

  test("General has no phone on 30 m and 160 m in full", () => {
    expect(spansKhz("general", "phone", "30m")).toEqual([]);
    expect(spansKhz("general", "phone", "160m")).toEqual([[1800, 2000]]);
  });

  test("97.301(b): what Extra alone may use", () => {
    const exclusive = us.bands.flatMap(({ segments }) =>
      segments
        .filter(({ grants = [] }) => grants.every(({ classes }) => classes.every((name) => name === "extra")))
        .map(({ lowHz, highHz }): Pair => [lowHz / 1000, highHz / 1000]),
    );
    expect(exclusive).toEqual([
      [3500, 3525],
      [3600, 3700],
      [7000, 7025],
      [14000, 14025],
      [14150, 14175],
      [21000, 21025],
      [21200, 21225],
    ]);
  });

  test("97.301: Extra has 500 kHz on HF that General has not", () => {
    const widthHz = (licenceClass: string) =>
      usableBands(us, licenceClass)
        .filter(({ highHz }) => highHz <= 30_000_000)
        .flatMap(({ pieces }) => pieces)
        .reduce((sum, { lowHz, highHz }) => sum + highHz - lowHz, 0);
    expect(widthHz("extra") - widthHz("general")).toBe(500_000);
  });

  test("97.303(h)(3): 60 m is four channels of 2.8 kHz around their centres and one piece of 15 kHz", () => {
    const sixty = present(
      usableBands(us, "general").find(({ band }) => band === "60m"),
      "60m",
    );
    expect(sixty.pieces.map(({ lowHz, highHz }) => [lowHz, highHz])).toEqual([
      [5_330_600, 5_333_400],
      [5_346_600, 5_349_400],
      [5_351_500, 5_366_500],
      [5_371_600, 5_374_400],
      [5_403_600, 5_406_400],
    ]);
    const channels = sixty.segments.filter(({ centreHz }) => centreHz !== undefined);
    expect(channels.map(({ centreHz }) => centreHz)).toEqual([5_332_000, 5_348_000, 5_373_000, 5_405_000]);
    for (const { lowHz, highHz, centreHz, upperSidebandDialHz, maxBandwidthHz } of channels) {
      expect(highHz - lowHz).toBe(2800);
      expect((lowHz + highHz) / 2).toBe(centreHz);
      expect(maxBandwidthHz).toBe(2800);
      expect(present(centreHz, "centre") - present(upperSidebandDialHz, "dial")).toBe(1500);
    }
  });
});
