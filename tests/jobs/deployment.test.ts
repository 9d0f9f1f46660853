/** Deployments of several parts: which part answers where, and what is told of several together. All sweeps are invented. */
import {
  check,
  type Deployment,
  deploymentOf,
  diff,
  gradeSweep,
  planById,
  readSweeps,
  type Sweep,
  trim,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { evenly, present, reflectionOf, sweepOfReflections } from "../support/sweeps.js";

const PLAN = planById("itu-r1");
const BANDS = ["80m", "40m", "30m", "20m", "17m", "15m", "12m", "10m"] as const;

interface Seen {
  /** Metres of coax before the antenna */
  readonly lineM?: number;
  readonly extraOhms?: number;
  /** What moves Γ as a whole: another calibration, a touch */
  readonly offset?: number;
}

/** A wire with a resonance near every second band, seen through a line of velocity 0.66 without loss but its own. */
function antenna(hz: number, { lineM = 12, extraOhms = 0, offset = 0 }: Seen) {
  const terms = [3.62, 7.08, 14.1, 21.2, 28.6].map((mhz) => {
    const detuning = 12 * (hz / (mhz * 1e6) - (mhz * 1e6) / hz);
    return { real: 1 / (55 * (1 + detuning ** 2)), imaginary: -detuning / (55 * (1 + detuning ** 2)) };
  });
  const [g, b] = [0, 1].map((part) => terms.reduce((sum, t) => sum + (part === 0 ? t.real : t.imaginary), 0)) as [
    number,
    number,
  ];
  const size = g * g + b * b;
  const load = reflectionOf([g / size + extraOhms, -b / size]);
  const matchedLossDb = 0.04 * lineM * Math.sqrt(hz / 1e7);
  const [real, imaginary] = [load[0], load[1]];
  const angle = (-4 * Math.PI * hz * lineM) / (0.66 * 299_792_458);
  const factor = 10 ** (-matchedLossDb / 10);
  return [
    factor * (real * Math.cos(angle) - imaginary * Math.sin(angle)) + offset,
    factor * (real * Math.sin(angle) + imaginary * Math.cos(angle)),
  ] as const;
}

const swept = (lowHz: number, highHz: number, stepHz: number, seen: Seen, label: string): Sweep => {
  const axis = evenly(lowHz, highHz, stepHz);
  const sweep = sweepOfReflections(
    axis,
    axis.map((hz) => antenna(hz, seen)),
  );
  return { ...sweep, label, source: { ...sweep.source, file: label } };
};

const ofBand = (name: string, seen: Seen = {}): Sweep => {
  const { lowHz, highHz } = present(
    PLAN.bands.find(({ band }) => band === name),
    name,
  );
  return swept(lowHz, highHz, (highHz - lowHz) / 100, seen, `${name}.s1p`);
};
const wide = (seen: Seen = {}): Sweep => swept(1.8e6, 30e6, 50e3, seen, "wide.s1p");
const season = (seen: Seen = {}): Deployment =>
  deploymentOf([...BANDS.map((name) => ofBand(name, seen)), wide(seen)], { label: "the mooring" });

describe("a sweep a band and a wide one", () => {
  const { bands, parts, sweep } = check(season(), { plan: PLAN });
  const on = (name: string) =>
    present(
      bands.find(({ band }) => band === name),
      name,
    );

  test.each(BANDS)("%s is told to the last digit as of its own sweep", (name) => {
    const alone = present(check(ofBand(name), { plan: PLAN, bands: [name] }).bands[0], name);
    const { answeredBy, best, worst, uncertainty, ...together } = on(name);
    const { answeredBy: _, best: ownBest, worst: ownWorst, uncertainty: __, ...own } = alone;
    expect(together).toEqual(own);
    expect(best?.swr).toBe(ownBest?.swr);
    expect(worst?.swr).toBe(ownWorst?.swr);
    expect(answeredBy.map((place) => parts[place]?.label)).toEqual([`${name}.s1p`]);
  });

  test("the wide one serves the bands that have none of their own", () => {
    expect(parts.find(({ label }) => label === "wide.s1p")?.bands).toEqual(["160m", "60m"]);
    const alone = present(check(wide(), { plan: PLAN, bands: ["160m"] }).bands[0], "160m");
    expect(on("160m").best?.swr).toBe(alone.best?.swr);
  });

  test("is one answer under one name", () => {
    expect(sweep).toMatchObject({
      label: "the mooring",
      points: BANDS.length * 101 + 565,
      startHz: 1.8e6,
      stopHz: 30e6,
    });
  });

  test("says the same whatever the order of its files", () => {
    const parts = season().parts;
    const turned = deploymentOf([...parts].reverse(), { label: "the mooring" });
    expect(check(turned, { plan: PLAN })).toEqual(check(season(), { plan: PLAN }));
  });

  test("is graded band by band as its own sweeps are", () => {
    const { bands: graded } = gradeSweep(season(), { plan: PLAN });
    for (const name of BANDS) {
      const own = gradeSweep(ofBand(name), { plan: PLAN, bands: [name] }).bands[0];
      expect(graded.find(({ band }) => band === name)).toEqual(own);
    }
  });

  test("is trimmed by the sweep of the band", () => {
    const trimmed = trim(season(), { plan: PLAN, band: "40m", wantedHz: 7.05e6 });
    const alone = trim(ofBand("40m"), { plan: PLAN, band: "40m", wantedHz: 7.05e6 });
    expect(trimmed.dip).toEqual(alone.dip);
  });
});

describe("a band of which its own sweep covers a part", () => {
  const lower = swept(3.5e6, 3.6e6, 1e3, {}, "cw.s1p");
  const upper = swept(3.6e6, 3.8e6, 1e3, {}, "voice.s1p");
  const whole = swept(3.5e6, 3.8e6, 1e3, {}, "80m.s1p");
  const bandOf = (given: Sweep | Deployment) => present(check(given, { plan: PLAN, bands: ["80m"] }).bands[0], "80m");

  test("is told by several parts together", () => {
    const [together, alone] = [bandOf(deploymentOf([lower, upper])), bandOf(whole)];
    expect(together.answeredBy.length).toBe(2);
    expect(together.sweptFraction).toBe(1);
    expect(together.verdict).toBe(alone.verdict);
    expect(together.best?.swr).toBeCloseTo(alone.best?.swr ?? 0, 3);
    expect(together.worst?.swr).toBeCloseTo(alone.worst?.swr ?? 0, 3);
    expect(together.withinLimit.widthHz).toBeCloseTo(alone.withinLimit.widthHz, -2);
    expect(together.uncertainty).not.toBeNull();
  });
});

describe("parts that overlap are repeats", () => {
  const apart = (offset: number) => deploymentOf([ofBand("40m"), wide({ offset })]);
  const intervalOf = (given: Deployment | Sweep) => {
    const { best } = present(check(given, { plan: PLAN, bands: ["40m"] }).bands[0], "40m");
    return (best?.swrHigh ?? 0) - (best?.swrLow ?? 0);
  };

  test("whose disagreement is told where it matters", () => {
    const codes = (offset: number) => check(apart(offset), { plan: PLAN }).findings.map(({ code }) => code);
    expect(codes(0.05)).toContain("parts-differ");
    expect(codes(0.01)).not.toContain("parts-differ");
  });

  test("and widens the intervals", () => {
    expect(intervalOf(apart(0.04))).toBeGreaterThan(3 * intervalOf(ofBand("40m")));
  });

  test("and is what another deployment has to exceed", () => {
    const verdict = (before: Deployment | Sweep) =>
      diff(before, ofBand("40m", { offset: 0.05 }), { plan: PLAN, bands: ["40m"] }).bands[0]?.verdict;
    expect(verdict(ofBand("40m"))).not.toBe("unchanged");
    expect(verdict(apart(0.08))).toBe("unchanged");
  });
});

describe("two deployments of several parts", () => {
  test("have one headline, and one line for all bands", () => {
    const { bands, causes, headline } = diff(season(), season({ lineM: 19 }), { plan: PLAN });
    expect(bands.length).toBe(10);
    expect(causes.map(({ code, confidence }) => [code, confidence])).toEqual([["line-length-changed", "likely"]]);
    // 7 m of solid dielectric are 7 / 0.66 m of air.
    expect(causes[0]?.evidence.addedElectricalM ?? causes[0]?.evidence.electricalLengthM).toBeCloseTo(7 / 0.66, 1);
    expect(headline).toContain("another place on the line");
  });

  test("by band sweeps alone, too", () => {
    const only = (seen: Seen) => deploymentOf(BANDS.map((name) => ofBand(name, seen)));
    const { causes } = diff(only({}), only({ lineM: 15 }), { plan: PLAN });
    expect(causes.map(({ code, confidence }) => [code, confidence])).toEqual([["line-length-changed", "likely"]]);
  });

  test("that are the same are unchanged on every band", () => {
    const { bands, causes } = diff(season(), season(), { plan: PLAN });
    expect(new Set(bands.map(({ verdict }) => verdict))).toEqual(new Set(["unchanged"]));
    expect(causes).toEqual([]);
  });
});

describe("readings by hand", () => {
  const noted = (text: string): Sweep => readSweeps(text, { fileName: "noted.txt" })[0];
  const on = (text: string, plan = "itu-r1" as const) =>
    Object.fromEntries(check(noted(text), { plan: planById(plan) }).bands.map((band) => [band.band, band]));

  test.each([
    ["40m 1.5", "pass", "none", 1],
    ["40m 1.5-1.9", "pass", "none", 1],
    ["40m 1.5-2.5", "partial", "built-in-tuner", 0],
    ["40m 2.2-2.8", "fail", "built-in-tuner", 0],
    ["40m 2-4", "partial", "wide-range-tuner", 0],
    ["40m >5", "fail", "unknown", 0],
    ["40m off scale", "fail", "beyond-tuner", 0],
  ])("%s: %s, %s", (line, verdict, need, fraction) => {
    const band = present(on(`${line}\n6m 1.2`)["40m"], "40m");
    expect([band.verdict, band.need, band.withinLimit.fraction]).toEqual([verdict, need, fraction]);
    expect(band.restsOn).toBe("stretch");
  });

  test("of a band are for whatever the licence allows there", () => {
    const { bands } = check(noted("80m 1.5\n20m 1.5\n15m 1.5"), {
      plan: planById("us-part97"),
      licenceClass: "general",
    });
    expect(bands.filter(({ verdict }) => verdict === "pass").map(({ band }) => band)).toEqual(["80m", "20m", "15m"]);
  });

  test("beside a sweep answer where that does not", () => {
    const both = deploymentOf([ofBand("40m"), noted("40m 9\n20m 1.4")]);
    const { bands } = check(both, { plan: PLAN, bands: ["40m", "20m"] });
    expect(bands.map(({ restsOn }) => restsOn)).toEqual(["curve", "stretch"]);
  });

  test("at a dial frequency answer before those of the whole band", () => {
    const { dials } = check(noted("40m 2.5\n7.074 MHz 1.3"), {
      plan: PLAN,
      dials: [{ frequencyHz: 7.074e6, mode: null, activity: null }],
    });
    expect(dials[0]?.point?.swr).toBeCloseTo(1.3, 9);
  });

  test.each([
    ["40m 2-3", "40m 1.2-1.5", "improved"],
    ["40m 1.2-1.5", "40m 2-3", "worse"],
    ["40m 2-3", "40m 2.5-4", "unchanged"],
    ["40m 1.5", "40m 1.7", "unchanged"],
    ["40m 1.5", "40m 1.8", "worse"],
    ["40m >10", "40m 2", "improved"],
  ])("%s then %s: %s", (before, after, verdict) => {
    const { bands } = diff(noted(`${before}\n6m 1.2`), noted(`${after}\n6m 1.2`), { plan: PLAN });
    expect(bands.find(({ band }) => band === "40m")?.verdict).toBe(verdict);
  });

  test("of few words may have to change by more, where that is said", () => {
    const { bands } = diff(noted("40m 1.5\n6m 1.2"), noted("40m 1.8\n6m 1.2"), {
      plan: PLAN,
      thresholds: { readingSwr: 0.5 },
    });
    expect(bands.find(({ band }) => band === "40m")?.verdict).toBe("unchanged");
  });
});

test("what is no sweep or deployment is told", () => {
  expect(() => deploymentOf([])).toThrow(RangeError);
  expect(() => check({ parts: [] } as unknown as Deployment, { plan: PLAN })).toThrow(TypeError);
});
