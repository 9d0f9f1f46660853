/**
 * What a feedline does, against worked examples, published tables and an independent library.
 *
 * Sources: feedline-cases.json (how it was made stands in it); two mailing-list posts with worked examples, TowerTalk March 1999, message
 * 00368 (after the 1991 ARRL Handbook, p. 16-14) and TenTec February 2009, message 085188 (after the ARRL Antenna Book, 1994, p. 24-9);
 * tests/golden/line.json (scikit-rf 0.15.4); ARRL, The General Class License Manual, corrected table 6-1 (web page).
 */
import { readFileSync } from "node:fs";
import {
  deliveredFraction,
  FEEDLINE_KINDS,
  feedlineFrom,
  greatestStress,
  impedanceFromReflection,
  magnitudeAtLoad,
  matchedLossDb,
  reflectionAtInput,
  reflectionAtLoad,
  reflectionFromImpedance,
  reflectionMagnitudeFromSwr,
  sectionAt,
  swrFromReflectionMagnitude,
  throughLine,
  totalLossDb,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { stressAlong } from "../../packages/core/src/facts/feedline/line.js";
import { fc } from "../support/property.js";
import { seededUniform } from "../support/seeded-noise.js";
import { type Pair, present } from "../support/sweeps.js";

const read = <Content>(name: string) => JSON.parse(readFileSync(new URL(name, import.meta.url), "utf8")) as Content;

const { cases, lossGrid } = read<{
  cases: readonly {
    name: string;
    loadOhms: Pair;
    characteristicOhms: Pair;
    matchedLossDb: number;
    lengthDegrees: number;
    inputOhms: Pair;
    swrAtLoad: number;
    swrAtInput: number;
    totalLossDb: number;
    formulaLossDb: number;
  }[];
  lossGrid: readonly { matchedLossDb: number; swrAtLoad: number; totalLossDb: number; swrAtInput: number }[];
}>("feedline-cases.json");

const complex = ([real, imaginary]: Pair) => ({ real, imaginary });
const distance = (a: { real: number; imaginary: number }, [real, imaginary]: Pair) =>
  Math.hypot(a.real - real, a.imaginary - imaginary);

describe.each(cases)("$name", (row) => {
  const { matchedLossDb: lossDb, lengthDegrees } = row;
  const section = { matchedLossDb: lossDb, lengthDegrees };
  const load = complex(row.loadOhms);
  const [characteristicOhms, reactive] = row.characteristicOhms;

  test("shows the input impedance and loses what is stated", () => {
    const { inputImpedance, totalLossDb: loss } = throughLine(load, complex(row.characteristicOhms), section);
    expect(distance(inputImpedance, row.inputOhms)).toBeLessThanOrEqual(1e-9 * Math.hypot(...row.inputOhms));
    expect(Math.abs(loss - row.totalLossDb)).toBeLessThanOrEqual(1e-9);
  });

  test.runIf(reactive === 0)("gives the same by way of Γ and of the handbook's formula", () => {
    const reflection = reflectionFromImpedance(load, characteristicOhms);
    const input = impedanceFromReflection(reflectionAtInput(reflection, section), characteristicOhms);
    expect(distance(input, row.inputOhms)).toBeLessThanOrEqual(1e-9 * Math.hypot(...row.inputOhms));
    const magnitude = Math.hypot(reflection.real, reflection.imaginary);
    // 1 - ρ² has few digits left near an open end.
    const tolerance = 1e-9 + 1e-14 / (1 - magnitude);
    expect(Math.abs(totalLossDb(lossDb, magnitude) - row.formulaLossDb)).toBeLessThanOrEqual(tolerance);
  });
});

describe("loss with standing waves", () => {
  test.each([
    ["200 ft RG-213, 8:1, 20 MHz (message 00368)", 2, 8, 4.837, 0.0005],
    ["200 ft of 450 ohm line, 20:1, 20 MHz (message 00368)", 0.08, 20, 0.737, 0.0005],
    ["100 ft RG-213, 3.6:1, 4 MHz (message 085188)", 0.6, 3.6, 1.066, 0.0005],
    ["100 ft of window line, 32:1 (message 085188)", 0.027, 32, 0.41, 0.005],
  ])("%s", (_, lossDb, swr, published, rounding) => {
    expect(Math.abs(totalLossDb(lossDb, reflectionMagnitudeFromSwr(swr)) - published)).toBeLessThanOrEqual(rounding);
  });

  test.each(lossGrid)("$matchedLossDb dB and $swrAtLoad:1", (row) => {
    const atLoad = reflectionMagnitudeFromSwr(row.swrAtLoad);
    // The grid carries 10 digits.
    expect(Math.abs(totalLossDb(row.matchedLossDb, atLoad) / row.totalLossDb - 1)).toBeLessThanOrEqual(1e-9);
    const atInput = reflectionMagnitudeFromSwr(row.swrAtInput);
    expect(Math.abs(magnitudeAtLoad(atInput, row.matchedLossDb) - atLoad)).toBeLessThanOrEqual(1e-9);
  });

  test("1 dB is 20.5672 % of the power, 3 dB 49.8813 %", () => {
    expect(1 - deliveredFraction(1)).toBeCloseTo(0.205672, 6);
    expect(1 - deliveredFraction(3)).toBeCloseTo(0.498813, 6);
  });

  test("an SWR that the line alone explains leaves nothing for the antenna", () => {
    const atLoad = magnitudeAtLoad(reflectionMagnitudeFromSwr(3), 3.1);
    expect(swrFromReflectionMagnitude(atLoad)).toBe(Number.POSITIVE_INFINITY);
    expect(totalLossDb(3.1, atLoad)).toBe(Number.POSITIVE_INFINITY);
  });
});

test("all vectors of scikit-rf's line", () => {
  interface Vector {
    readonly characteristicImpedanceOhms: number;
    readonly matchedLossDb: number;
    readonly electricalLengthDegrees: number;
    readonly load: { readonly resistanceOhms: number; readonly reactanceOhms: number };
    readonly inputReflection: { readonly re: number; readonly im: number };
  }
  const { vectors } = read<{ vectors: readonly Vector[] }>("../golden/line.json");
  expect(vectors.length).toBeGreaterThan(100);
  for (const vector of vectors) {
    const { characteristicImpedanceOhms: ohms, load, inputReflection } = vector;
    const reflection = reflectionFromImpedance({ real: load.resistanceOhms, imaginary: load.reactanceOhms }, ohms);
    const section = { matchedLossDb: vector.matchedLossDb, lengthDegrees: vector.electricalLengthDegrees };
    const atInput = reflectionAtInput(reflection, section);
    expect(distance(atInput, [inputReflection.re, inputReflection.im]), JSON.stringify(vector)).toBeLessThan(1e-12);
    expect(distance(reflectionAtLoad(atInput, section), [reflection.real, reflection.imaginary])).toBeLessThan(1e-12);
  }
});

test("there and back along any line is exact to 1e-12", () => {
  const part = fc.double({ min: -1, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      part,
      part,
      fc.double({ min: 0, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 1e4, noNaN: true }),
      (...drawn) => {
        const [real, imaginary, lossDb, lengthDegrees] = drawn;
        const section = { matchedLossDb: lossDb, lengthDegrees };
        const back = reflectionAtLoad(reflectionAtInput({ real, imaginary }, section), section);
        expect(distance(back, [real, imaginary])).toBeLessThanOrEqual(1e-12);
      },
    ),
  );
});

describe("voltage and current", () => {
  test("a matched line of 50 ohm carries 70.7 V and 1.41 A at 100 W", () => {
    const { volts, amperes } = greatestStress(100, 50, 0, 0.5);
    expect(volts).toBeCloseTo(Math.sqrt(5000), 9);
    expect(amperes).toBeCloseTo(Math.sqrt(2), 9);
  });

  test("without loss an SWR of 4 doubles both", () => {
    expect(greatestStress(100, 50, 0.6, 0).volts).toBeCloseTo(2 * Math.sqrt(5000), 9);
  });

  test("along 200 lines of 50, 75, 300 and 450 ohm is within 1 % of the exact maximum", () => {
    const chance = seededUniform(2026);
    for (let k = 0; k < 200; k++) {
      const ohms = [50, 75, 300, 450][k % 4] as number;
      const [size, angle] = [0.95 * chance(), 2 * Math.PI * chance()];
      const section = { matchedLossDb: 3 * chance(), lengthDegrees: 1500 * chance() };
      const input = { real: size * Math.cos(angle), imaginary: size * Math.sin(angle) };
      const told = stressAlong(100, ohms, input, section);
      const places = Array.from({ length: 4_001 }, (_, i) => i / 4_000).map((share) => {
        const part = { matchedLossDb: section.matchedLossDb * share, lengthDegrees: section.lengthDegrees * share };
        const here = reflectionAtLoad(input, part);
        const forward = Math.sqrt((100 * ohms) / (1 - size ** 2)) * 10 ** (-part.matchedLossDb / 20);
        return {
          volts: forward * Math.hypot(1 + here.real, here.imaginary),
          amperes: (forward / ohms) * Math.hypot(1 - here.real, here.imaginary),
        };
      });
      for (const what of ["volts", "amperes"] as const) {
        const exact = Math.max(...places.map((place) => place[what]));
        // The exact one is looked for at 4,001 places, which miss it by less than this.
        expect(told[what]).toBeLessThanOrEqual(exact * (1 + 1e-4));
        expect(told[what]).toBeGreaterThan(0.99 * exact);
        expect(told[what]).toBeLessThanOrEqual(
          greatestStress(100, ohms, size, section.matchedLossDb)[what] * (1 + 1e-9),
        );
      }
    }
  });

  test("no place on any line has more", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        number(0, 0.99),
        number(0, 6),
        number(1, 2000),
        number(0, 1),
        (inputMagnitude, lossDb, length, share) => {
          const bound = greatestStress(100, 50, inputMagnitude, lossDb);
          const forward = Math.sqrt((100 * 50) / (1 - inputMagnitude ** 2)) * 10 ** ((-lossDb * share) / 20);
          const here = reflectionAtLoad(
            { real: inputMagnitude, imaginary: 0 },
            { matchedLossDb: lossDb * share, lengthDegrees: length * share },
          );
          const volts = forward * Math.hypot(1 + here.real, here.imaginary);
          const amperes = (forward / 50) * Math.hypot(1 - here.real, here.imaginary);
          expect(volts).toBeLessThanOrEqual(bound.volts * (1 + 1e-12));
          expect(amperes).toBeLessThanOrEqual(bound.amperes * (1 + 1e-12));
        },
      ),
    );
  });
});

describe("the catalogue", () => {
  test.each(FEEDLINE_KINDS.map(({ id }) => id))("%s rises with frequency and states its source", (id) => {
    const line = feedlineFrom({ kind: id, lengthM: 100 });
    const losses = [1, 3.5, 7, 14, 28, 50, 100, 400].map((megahertz) => matchedLossDb(line, megahertz * 1e6));
    for (let i = 1; i < losses.length; i++) expect(losses[i]).toBeGreaterThan(present(losses[i - 1], "loss"));
    expect(
      present(
        FEEDLINE_KINDS.find((kind) => kind.id === id),
        id,
      ).source,
    ).not.toBe("");
  });

  // dB per 100 ft at 30 and 150 MHz, table 6-1. Cables of one designation differ by 20 % and more.
  test.each([
    ["rg-213", 1.08, 2.53],
    ["rg-8x", 1.96, 4.53],
    ["rg-58a", 2.47, 5.63],
    ["rg-59", 1.79, 4.11],
    ["rg-174", 4.56, 10.3],
  ])("%s lies within 25 %% of the published table", (kind, at30, at150) => {
    const line = feedlineFrom({ kind, lengthM: 30.48 });
    expect(Math.abs(matchedLossDb(line, 30e6) / at30 - 1)).toBeLessThan(0.25);
    expect(Math.abs(matchedLossDb(line, 150e6) / at150 - 1)).toBeLessThan(0.25);
  });

  test("a line's electrical length follows from its velocity", () => {
    const { lengthDegrees, matchedLossDb: lossDb } = sectionAt(
      feedlineFrom({ lengthM: 30.48, velocityFactor: 0.66, loss: [{ frequencyHz: 14.2e6, dbPer100M: 2.5 }] }),
      14.2e6,
    );
    expect(lengthDegrees).toBeCloseTo(787.482968, 6);
    expect(lossDb).toBeCloseTo(0.762, 12);
  });
});

describe("loss as the operator states it", () => {
  const stated = [
    { frequencyHz: 10e6, dbPer100M: 2 },
    { frequencyHz: 40e6, dbPer100M: 4 },
  ];
  const line = feedlineFrom({ lengthM: 100, loss: stated });

  test.each([
    [10, 2, "as stated"],
    [40, 4, "as stated"],
    [20, Math.sqrt(8), "between, straight on logarithmic scales"],
    [2.5, 1, "below, as the root of frequency"],
    [160, 8, "above, as the root of frequency"],
  ])("at %d MHz %d dB: %s", (megahertz, expected) => {
    expect(matchedLossDb(line, megahertz * 1e6)).toBeCloseTo(expected, 12);
  });

  test("goes before that of the kind, and a line of neither is refused", () => {
    expect(matchedLossDb(feedlineFrom({ kind: "rg-58", lengthM: 100, loss: stated }), 10e6)).toBe(2);
    expect(() => feedlineFrom({ lengthM: 10 })).toThrow(/needs its kind/);
    expect(() => feedlineFrom({ kind: "rg-1", lengthM: 10 })).toThrow(/no kind of feedline "rg-1"/);
  });
});
