/**
 * What readers of delimited text have stumbled over: decimal comma and thousands, deciding by too little of the file.
 *
 * Sources: issues of public projects by their number.
 */
import { describe, expect, test } from "vitest";
import {
  bytesOf,
  expectLoad,
  expectMagnitudes,
  expectRefusal,
  LOAD,
  notesOf,
  ROUNDING,
  RX_ROWS,
  readOne,
  rewritten,
  SWR_ROWS,
  textOf,
} from "../support/known-load.js";

const PLAIN = ["reference-assumed"];
const RX = "Frequency (MHz),R (Ohm),X (Ohm)";

describe("decimal comma and thousands (mholt/PapaParse#143, #327, #461; pandas-dev/pandas#59299)", () => {
  test("7,000 as kHz would be 7 kHz, so it is refused", () => {
    expectRefusal(textOf("Frequency (kHz);SWR", "7,000;2,35", "7,050;2,15", "7,100;1,95"), {
      code: "ambiguous",
      says: /The unit or the decimal mark seems to be another; say --unit or --decimal/,
    });
  });

  test("a comma for thousands beside a decimal point can be nothing else where no sweep is at the fraction", () => {
    const sweep = readOne(textOf("Frequency (kHz);SWR", "7,000;2.35", "7,050;2.15", "7,100;1.95"));
    expect([...sweep.frequencyHz]).toEqual([7_000_000, 7_050_000, 7_100_000]);
    expect([...readOne(textOf("Frequency (MHz);SWR", "7,000;2.35", "7,050;2.15", "7,100;1.95")).frequencyHz]).toEqual([
      7_000_000, 7_050_000, 7_100_000,
    ]);
  });

  test("a comma for thousands without a decimal point beside it is refused and not deleted", () => {
    expectRefusal(textOf("Frequency (kHz);SWR", "7,000;2", "7,050;2", "7,100;1"), {
      code: "ambiguous",
      says: /frequencies up to 7100 Hz by the stated unit, kHz.*say --unit or --decimal/,
    });
  });

  test("and the user's word settles it", () => {
    const text = textOf("Frequency (kHz);SWR", "7,000;2.35", "7,050;2.15", "7,100;1.95");
    expect([...readOne(text, { decimal: "point" }).frequencyHz]).toEqual([7_000_000, 7_050_000, 7_100_000]);
  });

  test("a point for thousands beside a decimal comma can be nothing else", () => {
    const sweep = readOne(textOf("Frequency (kHz);SWR", "7.000,5;3", "7.050,5;1,5"));
    expectMagnitudes(sweep, [
      { frequencyHz: 7_000_500, rho: 0.5 },
      { frequencyHz: 7_050_500, rho: 0.2 },
    ]);
  });

  test("commas for thousands and millions can be nothing else", () => {
    const sweep = readOne(textOf("Frequency (Hz);SWR", "7,000,000;3", "7,050,000;1.5"));
    expectMagnitudes(sweep, [
      { frequencyHz: 7_000_000, rho: 0.5 },
      { frequencyHz: 7_050_000, rho: 0.2 },
    ]);
  });

  test("7,000 under MHz is settled by the range", () => {
    const sweep = readOne(textOf("Frequency (MHz);SWR", "7,000;3,000", "7,050;1,500"));
    expectMagnitudes(sweep, [
      { frequencyHz: 7_000_000, rho: 0.5 },
      { frequencyHz: 7_050_000, rho: 0.2 },
    ]);
  });

  test("the mark is decided over all rows, and the row that breaks it is blamed", () => {
    const rows = rewritten(RX_ROWS, ";", ",");
    const text = textOf("Frequency (MHz);R;X", rows.slice(0, 2), "7.1;25;-25", rows.slice(3));
    const sweep = readOne(text);
    expectLoad(sweep, { tolerance: ROUNDING, points: LOAD.filter((_, i) => i !== 2) });
    expect(notesOf(sweep)).toEqual(["reference-assumed", "row-without-number@4"]);
  });
});

describe("the whole file decides (gitonthescene/csv-reconcile#68; pandas-dev/pandas#28458)", () => {
  test.each([100, 500])("a decimal comma that first comes after %i whole numbers is seen", (count) => {
    const rows = Array.from({ length: 2 * count }, (_, i) => `${7000 + i / 2};${i % 2 === 0 ? "3" : "1,5"}`);
    const early = rows.slice(0, count).map((_, i) => `${6000 + i};3`);
    const text = textOf(
      "Frequency (kHz);SWR",
      early,
      rows.map((row) => row.replace(".", ",")),
    );
    const sweep = readOne(text);
    expect(sweep.frequencyHz).toHaveLength(3 * count);
    expect(sweep.frequencyHz[count + 1]).toBe(7_000_500);
    expect(notesOf(sweep)).toEqual(PLAIN);
  });

  test.each([
    ["a letter", "x"],
    ["a colon", ":"],
  ])("%s is no delimiter", (_, mark) => {
    expectRefusal(textOf(`Frequency (MHz)${mark}SWR`, rewritten(SWR_ROWS, mark)), {
      code: "no-data",
      says: /split by comma, semicolon, tab, bars or blanks/,
    });
  });

  test("a sample is not cut in the middle of a line: every length of the file reads or is refused", () => {
    const whole = bytesOf(textOf(RX, RX_ROWS));
    for (let length = 1; length < whole.length; length++) {
      try {
        readOne(whole.subarray(0, length));
      } catch (error) {
        expect(error).toHaveProperty("name", "ReadError");
      }
    }
  });
});
