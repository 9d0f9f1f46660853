/**
 * One load written in every parameter and number format, in keyword-free files (Y and Z normalised to R) and in
 * version 2 files (ohms and siemens).
 *
 * Source of the rule: IBIS Open Forum, Touchstone File Format Specification, Version 2.1 (2024), p. 8 and p. 29. The numbers were
 * computed with numpy; files made of them gave these loads in scikit-rf 2.0.0 too, but for keyword-free Y: that reader
 * multiplies by R where the specification's wording, normalised to R, asks for y / R (it writes no equation out).
 * H: the specification's formulae in its own normalisation; a two-port of a load across port 1, derived in the test.
 */
import { readSweeps, sampleImpedance } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import type { Pair } from "../support/sweeps.js";

interface Formats {
  readonly ri: Pair;
  readonly ma: Pair;
  readonly db: Pair;
}

interface Fixture {
  readonly load: Pair;
  readonly referenceOhms: number;
  readonly forms: {
    readonly s: Formats;
    readonly zNormalised: Formats;
    readonly zOhms: Formats;
    readonly yNormalised: Formats;
    readonly ySiemens: Formats;
  };
}

const FIXTURES: readonly Fixture[] = [
  {
    load: [30, -40],
    referenceOhms: 50,
    forms: {
      s: { ri: [0.0, -0.5], ma: [0.5, -90.0], db: [-6.02059991327962, -90.0] },
      zNormalised: { ri: [0.6, -0.8], ma: [1.0, -53.130102354156], db: [0.0, -53.130102354156] },
      zOhms: { ri: [30.0, -40.0], ma: [50.0, -53.130102354156], db: [33.9794000867204, -53.130102354156] },
      yNormalised: { ri: [0.6, 0.8], ma: [1.0, 53.130102354156], db: [0.0, 53.130102354156] },
      ySiemens: { ri: [0.012, 0.016], ma: [0.02, 53.130102354156], db: [-33.9794000867204, 53.130102354156] },
    },
  },
  {
    load: [30, -40],
    referenceOhms: 75,
    forms: {
      s: {
        ri: [-0.247524752475248, -0.475247524752475],
        ma: [0.535843925850883, -117.512002623851],
        db: [-5.41923375883687, -117.512002623851],
      },
      zNormalised: {
        ri: [0.4, -0.533333333333333],
        ma: [0.666666666666667, -53.130102354156],
        db: [-3.52182518111363, -53.130102354156],
      },
      zOhms: { ri: [30.0, -40.0], ma: [50.0, -53.130102354156], db: [33.9794000867204, -53.130102354156] },
      yNormalised: { ri: [0.9, 1.2], ma: [1.5, 53.130102354156], db: [3.52182518111362, 53.130102354156] },
      ySiemens: { ri: [0.012, 0.016], ma: [0.02, 53.130102354156], db: [-33.9794000867204, 53.130102354156] },
    },
  },
  {
    load: [75, 25],
    referenceOhms: 50,
    forms: {
      s: {
        ri: [0.230769230769231, 0.153846153846154],
        ma: [0.277350098112615, 33.6900675259798],
        db: [-11.1394335230684, 33.6900675259798],
      },
      zNormalised: { ri: [1.5, 0.5], ma: [1.58113883008419, 18.434948822922], db: [3.97940008672038, 18.434948822922] },
      zOhms: { ri: [75.0, 25.0], ma: [79.0569415042095, 18.434948822922], db: [37.9588001734408, 18.434948822922] },
      yNormalised: {
        ri: [0.6, -0.2],
        ma: [0.632455532033676, -18.434948822922],
        db: [-3.97940008672037, -18.434948822922],
      },
      ySiemens: {
        ri: [0.012, -0.004],
        ma: [0.0126491106406735, -18.434948822922],
        db: [-37.9588001734407, -18.434948822922],
      },
    },
  },
  {
    load: [75, 25],
    referenceOhms: 75,
    forms: {
      s: {
        ri: [0.027027027027027, 0.162162162162162],
        ma: [0.164398987305357, 80.5376777919744],
        db: [-15.6820172406699, 80.5376777919744],
      },
      zNormalised: {
        ri: [1.0, 0.333333333333333],
        ma: [1.05409255338946, 18.434948822922],
        db: [0.457574905606752, 18.434948822922],
      },
      zOhms: { ri: [75.0, 25.0], ma: [79.0569415042095, 18.434948822922], db: [37.9588001734408, 18.434948822922] },
      yNormalised: {
        ri: [0.9, -0.3],
        ma: [0.948683298050514, -18.434948822922],
        db: [-0.45757490560675, -18.434948822922],
      },
      ySiemens: {
        ri: [0.012, -0.004],
        ma: [0.0126491106406735, -18.434948822922],
        db: [-37.9588001734407, -18.434948822922],
      },
    },
  },
  {
    load: [82.5, 3.75],
    referenceOhms: 50,
    forms: {
      s: {
        ri: [0.245887060915963, 0.0213428190306803],
        ma: [0.246811593427186, 4.9607987415246],
        db: [-12.1526888827923, 4.9607987415246],
      },
      zNormalised: {
        ri: [1.65, 0.075],
        ma: [1.65170366591589, 2.60256220249981],
        db: [4.35864265385664, 2.60256220249981],
      },
      zOhms: { ri: [82.5, 3.75], ma: [82.5851832957946, 2.60256220249981], db: [38.338042740577, 2.60256220249981] },
      yNormalised: {
        ri: [0.604810996563574, -0.0274914089347079],
        ma: [0.605435478915333, -2.60256220249981],
        db: [-4.35864265385664, -2.60256220249981],
      },
      ySiemens: {
        ri: [0.0120962199312715, -0.000549828178694158],
        ma: [0.0121087095783067, -2.60256220249981],
        db: [-38.338042740577, -2.60256220249981],
      },
    },
  },
  {
    load: [82.5, 3.75],
    referenceOhms: 75,
    forms: {
      s: {
        ri: [0.0481586402266289, 0.0226628895184136],
        ma: [0.0532246295412349, 25.2011236454751],
        db: [-25.4777470538782, 25.2011236454751],
      },
      zNormalised: {
        ri: [1.1, 0.05],
        ma: [1.10113577727726, 2.60256220249981],
        db: [0.836817472743013, 2.60256220249981],
      },
      zOhms: { ri: [82.5, 3.75], ma: [82.5851832957946, 2.60256220249981], db: [38.338042740577, 2.60256220249981] },
      yNormalised: {
        ri: [0.907216494845361, -0.0412371134020619],
        ma: [0.908153218373, -2.60256220249981],
        db: [-0.836817472743013, -2.60256220249981],
      },
      ySiemens: {
        ri: [0.0120962199312715, -0.000549828178694158],
        ma: [0.0121087095783067, -2.60256220249981],
        db: [-38.338042740577, -2.60256220249981],
      },
    },
  },
];

/** Fifteen digits are given; two conversions of them leave about 1e-12 of a load of 100 ohm. */
const TOLERANCE_OHMS = 1e-10;

const keywordFree = (parameter: string, format: string, ohms: number, values: readonly number[]) =>
  `# MHz ${parameter} ${format.toUpperCase()} R ${ohms}\n14.1 ${values.join(" ")}\n`;

const version2 = (parameter: string, format: string, ohms: number, values: readonly number[]) =>
  `[Version] 2.1\n# MHz ${parameter} ${format.toUpperCase()} R ${ohms}\n[Number of Ports] 1\n[Number of Frequencies] 1\n` +
  `[Network Data]\n14.1 ${values.join(" ")}\n[End]\n`;

function expectLoad(text: string, [resistance, reactance]: Pair, referenceOhms: number): void {
  const [sweep] = readSweeps(new TextEncoder().encode(text));
  if (sweep?.kind !== "vector") throw new Error("no vector sweep");
  expect([...sweep.frequencyHz]).toEqual([14_100_000]);
  expect(sweep.referenceOhms).toBe(referenceOhms);
  const actual = sampleImpedance(sweep, 0);
  expect(Math.abs(actual.real - resistance), `${actual.real} ohm`).toBeLessThanOrEqual(TOLERANCE_OHMS);
  expect(Math.abs(actual.imaginary - reactance), `${actual.imaginary} ohm`).toBeLessThanOrEqual(TOLERANCE_OHMS);
}

describe.each(FIXTURES)("$load ohm with R $referenceOhms", ({ load, referenceOhms, forms }) => {
  test.each(["ri", "ma", "db"] as const)("is the same load from S, Z and Y of a keyword-free file in %s", (format) => {
    expectLoad(keywordFree("S", format, referenceOhms, forms.s[format]), load, referenceOhms);
    expectLoad(keywordFree("Z", format, referenceOhms, forms.zNormalised[format]), load, referenceOhms);
    expectLoad(keywordFree("Y", format, referenceOhms, forms.yNormalised[format]), load, referenceOhms);
  });

  test.each(["ri", "ma", "db"] as const)("is the same load from S, Z and Y of a version 2 file in %s", (format) => {
    expectLoad(version2("S", format, referenceOhms, forms.s[format]), load, referenceOhms);
    expectLoad(version2("Z", format, referenceOhms, forms.zOhms[format]), load, referenceOhms);
    expectLoad(version2("Y", format, referenceOhms, forms.ySiemens[format]), load, referenceOhms);
  });

  test("is the same load from H of a two-port that is the load at port 1 and nothing between the ports", () => {
    // h11 is the input impedance, normalised like Z in a keyword-free file; h21 = h12 = 0; any h22 will do.
    const [real, imaginary] = forms.zNormalised.ri;
    expectLoad(keywordFree("H", "ri", referenceOhms, [real, imaginary, 0, 0, 0, 0, 0.7, 0.2]), load, referenceOhms);
  });

  test("is the same load from G of such a two-port, whose g11 is an admittance", () => {
    const [real, imaginary] = forms.yNormalised.ri;
    expectLoad(keywordFree("G", "ri", referenceOhms, [real, imaginary, 0, 0, 0, 0, 0.7, 0.2]), load, referenceOhms);
  });
});
