/** Tables as people leave them: remarks in cells, bars, words of many languages. Invented. */
import { readSweeps, type Sweep, swrFromReflectionMagnitude } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import {
  expectLoad,
  expectMagnitudes,
  expectRefusal,
  messageOf,
  notesOf,
  ROUNDING,
  RX_ROWS,
  readAll,
  readOne,
  rewritten,
  SWR_ROWS,
  textOf,
} from "../support/known-load.js";

const swrOf = (sweep: Sweep) =>
  Array.from(sweep.reflectionMagnitude, (rho) => Number(swrFromReflectionMagnitude(rho).toFixed(6)));

describe("a number with a remark is that number, and is told", () => {
  test.each([
    ["~1.5"],
    ["ca. 1.5"],
    ["1.5*"],
    ["1.5?"],
    ["1.5 !"],
    ["1.5 (wind)"],
    ["1.5 # dip"],
    ["1.5 <- look"],
    ["<1.5"],
    ["under 1.5"],
    ["1,5"],
  ])("%s", (cell) => {
    const sweep = readOne(textOf("Freq (MHz);SWR", "7;3", `7.1;${cell}`, "7.2;2"));
    expect(swrOf(sweep)).toEqual([3, 1.5, 2]);
    expect(messageOf(sweep, "cells-remarked")).toContain(cell);
    expect(notesOf(sweep)).toContain("cells-remarked@3");
  });

  test("from the first row on, and between tabs", () => {
    const sweep = readOne(textOf("Freq (MHz)\tSWR", "7\t3 (wind)", "7.1\t1.5", "7.2\t2 !", "7.3\t2.5"));
    expect(swrOf(sweep)).toEqual([3, 1.5, 2, 2.5]);
  });

  test("10+ is at least 10, as >10 is", () => {
    const sweep = readOne(textOf("Freq (MHz),SWR", "7,10+", "7.1,2", "7.2,1.5", "7.3,10+"));
    // ρ = (10 - 1) / (10 + 1)
    expect(sweep.kind === "scalar" ? sweep.ceilingMagnitude : null).toBeCloseTo(9 / 11, 12);
  });

  test("brackets alone are a minus", () => {
    const rows = ["7;50;(50)", "7.1;50;0", "7.2;50;50"];
    const [sweep] = readSweeps(textOf("Freq (MHz);R;X", rows));
    expect(sweep.kind === "vector" ? sweep.reflectionImaginary[0] : null).toBeLessThan(0);
  });

  test("another unit is no remark", () => {
    const sweep = readOne(textOf("Freq (MHz),SWR", "7,3", "7.1,1.5 dB", "7.2,2"));
    expect(swrOf(sweep)).toEqual([3, 2]);
    expect(notesOf(sweep)).toContain("row-without-number@3");
  });

  test("words behind the last column leave their row alone", () => {
    const rows = RX_ROWS.map((row, i) => (i === 1 ? `${row},see photo 12` : row));
    expectLoad(readOne(textOf("Freq (MHz),R,X", rows)), { tolerance: ROUNDING });
  });
});

describe("bars split columns", () => {
  test("alone", () => {
    expectMagnitudes(readOne(textOf("Frequency (MHz)|SWR", rewritten(SWR_ROWS, "|"))));
  });

  test("and frame a table, with a rule below its header", () => {
    const rows = RX_ROWS.map((row) => `| ${row.replaceAll(",", " | ")} |`);
    expectLoad(readOne(textOf("| Freq (MHz) | R | X |", "|---:|---|---|", rows)), { tolerance: ROUNDING });
  });
});

describe("a header in another language", () => {
  // Words from memory, as in the reader.
  test.each([
    "Częstotliwość (MHz);WFS",
    "Kmitočet (MHz);ČSV",
    "Частота (MHz);КСВ",
    "周波数 (MHz);定在波比",
    "频率 (MHz);驻波比",
    "주파수 (MHz);정재파비",
    "Taajuus (MHz);SAS",
  ])("%s", (header) => {
    expectMagnitudes(readOne(textOf(header, rewritten(SWR_ROWS, ";"))));
  });

  test.each([
    "Częstotliwość (MHz);Rezystancja (ohm);Reaktancja (ohm)",
    "Συχνότητα (MHz);R;X",
    "Frekvens (MHz);Resistans;Reaktans",
  ])("%s", (header) => {
    expectLoad(
      readOne(
        textOf(
          header,
          RX_ROWS.map((row) => row.replaceAll(",", ";")),
        ),
      ),
      { tolerance: ROUNDING },
    );
  });
});

describe("parts and squares of the reflection", () => {
  test.each(["Z',Z''", "Zr,Zi", "Rser (ohm),Xser (ohm)", "Re(Z),Im(Z)"])("%s are R and X", (names) => {
    expectLoad(readOne(textOf(`Freq (MHz),${names}`, RX_ROWS)), { tolerance: ROUNDING });
  });

  test.each(["|S11|^2", "ρ²", "|Γ|²"])("%s is the share of the power that comes back", (name) => {
    const sweep = readOne(textOf(`Freq (MHz),${name}`, "7,0.25", "7.1,0.04", "7.2,0.09"));
    expect([...sweep.reflectionMagnitude]).toEqual([0.5, 0.2, 0.3].map((rho) => expect.closeTo(rho, 12)));
  });

  test("SWR less 1 is one more", () => {
    expect(swrOf(readOne(textOf("Freq (MHz),SWR-1", "7,1.5", "7.1,1.2")))).toEqual([2.5, 2.2]);
  });

  test("the reference beside a name is no part of it", () => {
    expect(readOne(textOf("Freq (MHz),SWR (Z0 = 75 ohm)", SWR_ROWS)).referenceOhms).toBe(75);
  });
});

describe("what a file leaves open", () => {
  test("two sweeps of the same frequencies are told", () => {
    const two = readAll(
      textOf("Freq (MHz),SWR", ...[1.5, 2].map((swr) => [7, 7.05, 7.1, 7.15, 7.2].map((mhz) => `${mhz},${swr}`))),
    );
    expect(two).toHaveLength(2);
    expect(messageOf(two[0] as Sweep, "series-untold")).toContain("2 sweeps");
  });

  test.each([
    ["SWR", ["7,150", "7.1,180", "7.2,210"], "beyond 100"],
    ["R,X", ["7,1.2,0.3", "7.1,1,0", "7.2,0.8,-0.3"], "below 5"],
    ["G (S),B (S)", ["7,20,1", "7.1,21,-1", "7.2,22,-2"], "thousandths"],
  ])("%s that no antenna has: %j", (names, rows, words) => {
    const sweep = readOne(textOf(`Freq (MHz),${names}`, rows));
    expect(messageOf(sweep, "readings-absurd")).toContain(words);
  });

  test("a unit beside some frequencies is that of all", () => {
    const sweep = readOne(textOf("Frequency,SWR", "7.0 MHz,3", "7.05,2", "7.1,1.5", "7.15,2"));
    expect([...sweep.frequencyHz]).toEqual([7e6, 7.05e6, 7.1e6, 7.15e6]);
  });

  test.each(["kHz above 7 MHz", "Offset from 7 MHz (kHz)", "f - 7000 kHz (kHz)"])(
    "a frequency counted from another is where it stands: %s",
    (name) => {
      const sweep = readOne(textOf(`${name},SWR`, "0,2", "50,1.5", "100,1.7"));
      expect([...sweep.frequencyHz]).toEqual([7_000_000, 7_050_000, 7_100_000]);
    },
  );

  test("a frequency counted from one that is not named is refused", () => {
    expectRefusal(textOf("Offset (kHz),SWR", "-50,2", "0,1.5", "50,1.7", "100,2"), {
      code: "ambiguous",
      says: /unit of|below 0/,
    });
  });
});

describe("one odd row among many is left out, and the others are read", () => {
  test.each([
    ["an angle sign in a frequency", "7<100;1.9"],
    ["a frequency beyond all sweeps", "5.0e12;1.9"],
    ["marks between thousands that no other number has", "5.000.550;1.9"],
  ])("%s", (_, odd) => {
    const rows = Array.from({ length: 40 }, (_, i) => `${(7 + i / 100).toFixed(2)};${(1.2 + i / 100).toFixed(2)}`);
    const sweep = readOne(textOf("Frequency (MHz);SWR", ...rows.slice(0, 20), odd, ...rows.slice(20)));
    expect(sweep.frequencyHz.length).toBe(40);
    expect(notesOf(sweep)).toContain("row-without-number@22");
  });

  test("a header of several words that is printed again below a blank line", () => {
    const rows = ["27.5 4.3", "27.6 4.7", "27.7 5.1", "27.8 5.7"];
    const header = "FREQUENCY in MHz  RL in dB";
    expect(readOne(textOf(header, ...rows, "", header, "27.9 6.0", "28.0 6.5")).frequencyHz.length).toBe(6);
  });

  test("a few bands with their limits below a sweep", () => {
    const rows = Array.from({ length: 30 }, (_, i) => `${(3.5 + i / 100).toFixed(2)};${(1.2 + i / 100).toFixed(2)}`);
    const limits = ["Limits wanted", "Band;From MHz;To MHz;SWR limit", "40m;7.0;7.2;2.0", "20m;14.0;14.35;1.5"];
    expect(readOne(textOf("MHz;SWR", ...rows, ...limits)).frequencyHz.length).toBe(30);
  });
});

test("a unit above the table that differs from the header's is told", () => {
  const sweep = readOne(textOf("All frequencies in GHz", "Frequency (MHz),SWR", "7,2", "7.1,1.5", "7.2,2"));
  expect(messageOf(sweep, "unit-stated")).toContain("GHz");
});
