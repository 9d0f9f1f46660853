/** Columns whose names leave open what they hold, settled by their numbers or refused. The load is invented. */
import { parseColumnRoles } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import {
  expectLoad,
  expectRefusal,
  LOAD,
  notesOf,
  ROUNDING,
  readOne,
  SWR_LOAD,
  textOf,
} from "../support/known-load.js";
import type { Pair } from "../support/sweeps.js";

const degrees = ([real, imaginary]: Pair) => (Math.atan2(imaginary, real) * 180) / Math.PI;
const size = (value: Pair) => Math.hypot(...value);
const rows = (cells: (point: (typeof LOAD)[number]) => readonly number[]) =>
  LOAD.map((point) => [point.mhz, ...cells(point)].join(","));

describe("an angle that does not say of what", () => {
  test("beside |Z| alone is that of the impedance", () => {
    const text = textOf(
      "MHz,|Z|,angle",
      rows(({ ohms }) => [size(ohms), degrees(ohms)]),
    );
    expectLoad(readOne(text), { tolerance: ROUNDING });
  });

  test.each([
    ["impedance", ({ ohms }: (typeof LOAD)[number]) => degrees(ohms)],
    ["reflection", ({ reflection }: (typeof LOAD)[number]) => degrees(reflection)],
  ] as const)("beside |Z| and |Γ| is the one that agrees with both: of the %s", (_, angle) => {
    const text = textOf(
      "MHz,|Z|,|Γ|,angle",
      rows((point) => [size(point.ohms), size(point.reflection), angle(point)]),
    );
    expectLoad(readOne(text), { tolerance: ROUNDING });
  });
});

describe("S11 without a unit", () => {
  const column = (value: (rho: number) => number) =>
    textOf(
      "MHz,S11",
      SWR_LOAD.map(({ mhz, rho }) => `${mhz},${value(rho)}`),
    );

  test("is a magnitude from 0 to 1, dB below 0", () => {
    const magnitude = readOne(column((rho) => rho));
    const decibels = readOne(column((rho) => 20 * Math.log10(rho)));
    for (const sweep of [magnitude, decibels]) {
      expect(sweep.reflectionMagnitude[0]).toBeCloseTo(0.8, 9);
      expect(notesOf(sweep).some((note) => note.startsWith("reflection-assumed"))).toBe(true);
    }
  });

  test("above 1 is refused: it may be either", () => {
    expectRefusal(
      column((rho) => -20 * Math.log10(rho)),
      { code: "ambiguous", says: /dB or a magnitude/ },
    );
  });
});

describe("frequencies without a unit", () => {
  const at = (...frequencies: readonly number[]) =>
    textOf(
      "freq,swr",
      frequencies.map((value) => `${value},1.5`),
    );

  test.each([
    [[7_000_000, 7_100_000, 7_200_000], 7_000_000],
    [[7000, 7100, 7200], 7_000_000],
    [[7.0, 14.1, 21.2], 7_000_000],
    [[7, 7.1, 7.2], 7_000_000],
    [[1_800_000, 1_900_000, 2_000_000], 1_800_000],
    [[430_000, 435_000, 440_000], 430_000_000],
  ])("%j begin at %d Hz", (frequencies, startHz) => {
    expect(readOne(at(...frequencies)).frequencyHz[0]).toBe(startHz);
  });

  test("that could be several, or none, are refused", () => {
    expectRefusal(at(2.4, 2.45, 2.5), { code: "ambiguous", says: /without a unit/ });
    expectRefusal(at(0, 0, 0), { code: "no-data", says: /no number above 0/ });
  });
});

describe("names and columns that do not match", () => {
  test("more columns of numbers than names are refused, a column of words is not", () => {
    const numbers = LOAD.map(({ mhz, ohms }) => [mhz, ...ohms, 1].join(","));
    expectRefusal(textOf("MHz,R,X", numbers), {
      code: "ambiguous",
      line: 2,
      says: /4 columns of numbers, but names for 3/,
    });
    const words = LOAD.map(({ mhz, ohms }) => [mhz, ...ohms, "ok"].join(","));
    expectLoad(readOne(textOf("MHz,R,X", words)), { tolerance: ROUNDING });
  });

  test("a unit of frequency that is none is asked for", () => {
    expectRefusal(textOf("Frequency (furlong),SWR", "7,1.5", "8,2", "9,3"), {
      code: "ambiguous",
      says: /is not known/,
    });
  });
});

describe("a preamble above a table without names", () => {
  test.each([
    ["! unit of readings VSWR", (rho: number) => (1 + rho) / (1 - rho)],
    ["! Y UNITS: dB", (rho: number) => 20 * Math.log10(rho)],
  ])("%s says what the second column holds", (line, value) => {
    const text = textOf(
      line,
      "! frequency unit MHz",
      SWR_LOAD.map(({ mhz, rho }) => `${mhz},${value(rho)}`),
    );
    expect(readOne(text).reflectionMagnitude[0]).toBeCloseTo(0.8, 9);
  });
});

describe("a reactance that is nowhere negative", () => {
  const sweep = (fromMhz: number, stepMhz: number, reactances: readonly number[]) =>
    readOne(
      textOf(
        "MHz,R,X",
        reactances.map((x, i) => `${(fromMhz + i * stepMhz).toFixed(3)},50,${x}`),
      ),
    );

  test.each([
    ["comes down to nothing and rises again, though the sweep is narrow", sweep(7, 0.01, [40, 20, 1, 20, 40])],
    ["stays high over a wide sweep", sweep(7, 1, [40, 50, 60, 50, 40])],
  ])("has lost its sign where it %s", (_, { kind, findings }) => {
    expect(kind).toBe("scalar");
    expect(findings.map(({ code }) => code)).toContain("reactance-without-sign");
  });

  test("is taken as it is where the sweep is narrow and it stays high", () => {
    expect(sweep(7, 0.01, [40, 50, 60, 50, 40]).kind).toBe("vector");
  });
});

describe("columns as the user names them", () => {
  const magnitudes = (text: string, values: (rho: number) => number) =>
    readOne(textOf(SWR_LOAD.map(({ mhz, rho }) => `${mhz},${values(rho)}`)), { columns: parseColumnRoles(text) })
      .reflectionMagnitude;
  const expected = SWR_LOAD.map(({ rho }) => rho);
  const expectNear = (values: Iterable<number>) => {
    for (const [i, value] of [...values].entries()) expect(value).toBeCloseTo(expected[i] ?? Number.NaN, 12);
  };

  test("hold parts of 1, or of 100 where that is said", () => {
    expectNear(magnitudes("frequency:MHz,rho", (rho) => rho));
    expectNear(magnitudes("frequency:MHz,rho:percent", (rho) => 100 * rho));
  });

  test("hold angles in degrees, or in radians where that is said", () => {
    for (const [unit, scale] of [
      ["", 1],
      [":rad", Math.PI / 180],
    ] as const) {
      const text = textOf(rows(({ ohms }) => [size(ohms), scale * degrees(ohms)]));
      const columns = parseColumnRoles(`frequency:MHz,z,z-angle${unit}`);
      expectLoad(readOne(text, { columns }), { tolerance: ROUNDING });
    }
  });

  test("that are none are refused with those that are", () => {
    expect(() => parseColumnRoles("frequency:MHz,swrr")).toThrow(/"swrr" is no column name; use frequency/);
    for (const name of ["constructor", "__proto__", "toString"])
      expect(() => parseColumnRoles(name)).toThrow(/is no column name/);
    expect(() => parseColumnRoles("frequency:furlong,swr")).toThrow(/is no unit of frequency/);
  });
});
