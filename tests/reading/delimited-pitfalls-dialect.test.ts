/**
 * What readers of delimited text have stumbled over: delimiter against decimal comma, preamble, units.
 *
 * Sources: issues of public projects by their number.
 */
import { type Delimiter, parseColumnRoles } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import {
  expectLoad,
  expectMagnitudes,
  expectRefusal,
  LOAD,
  messageOf,
  notesOf,
  ROUNDING,
  RX_ROWS,
  readOne,
  rewritten,
  SWR_LOAD,
  SWR_ROWS,
  textOf,
} from "../support/known-load.js";

const PLAIN = ["reference-assumed"];
const RX = "Frequency (MHz),R (Ohm),X (Ohm)";

function expectRx(text: string, notes: readonly string[] = PLAIN): void {
  const sweep = readOne(text);
  expectLoad(sweep, { tolerance: ROUNDING });
  expect(notesOf(sweep)).toEqual(notes);
}

function expectSwr(text: string, notes: readonly string[] = PLAIN): void {
  const sweep = readOne(text);
  expectMagnitudes(sweep);
  expect(notesOf(sweep)).toEqual(notes);
}

test("a unit that stands as a word by itself behind the frequency's name belongs to it", () => {
  expectSwr(textOf("Frequency MHz SWR", rewritten(SWR_ROWS, " ", ".")));
});

describe("delimiter against decimal comma (mholt/PapaParse#153, #290, #804, #860, #1005; adaltas/node-csv#400)", () => {
  test.each([
    ["semicolons", ";"],
    ["tabs", "\t"],
  ])("no header, decimal commas, %s: refused without the user's word, exact with it", (_, delimiter) => {
    const text = textOf(rewritten(SWR_ROWS, delimiter, ","));
    expectRefusal(text, { code: "no-frequency", line: 1, says: /say what the 2 columns hold, such as --columns/ });
    const sweep = readOne(text, { columns: parseColumnRoles("frequency:MHz,swr") });
    expectMagnitudes(sweep);
    expect(notesOf(sweep)).toEqual(PLAIN);
  });

  test("a header and four columns between semicolons, decimal commas", () => {
    const rows = LOAD.map(({ mhz, ohms }, i) => `${mhz},${ohms.join(",")},${i}.5`);
    expectRx(textOf("Frequency (MHz);R (Ohm);X (Ohm);Temperature", rewritten(rows, ";", ",")));
  });

  test("commas inside the header's words, data between semicolons", () => {
    const header = "Frequency, as set (MHz);R, series (Ohm);X, series (Ohm)";
    expectRx(textOf(header.replace(", as set", ", of the input"), rewritten(RX_ROWS, ";", ",")));
    expectRx(textOf(header.replace(", as set", ", of the input"), rewritten(RX_ROWS, ";")));
  });

  test("two preamble lines with commas, then data between semicolons", () => {
    const preamble = ["Mooring, lock 7, windy", "Wire, 20 m, sloping, invented"];
    expectSwr(textOf(preamble, "Frequency (MHz);SWR", rewritten(SWR_ROWS, ";", ",")));
  });

  test.each([
    ["one blank", " "],
    ["runs of blanks", "    "],
    ["blanks and tabs", " \t "],
  ])("columns split by %s, with either decimal mark", (_, delimiter) => {
    expectRx(textOf(`MHz${delimiter}R${delimiter}X`, rewritten(RX_ROWS, delimiter)));
    expectRx(textOf(`MHz${delimiter}R${delimiter}X`, rewritten(RX_ROWS, delimiter, ",")));
  });

  test.each([",", ";", "\t"])("a degree sign in the header, split by %j", (delimiter) => {
    const rows = LOAD.slice(0, 2).map(({ mhz, ohms: [r, x] }) =>
      [mhz, Math.hypot(r, x), (Math.atan2(x, r) * 180) / Math.PI].join(","),
    );
    const sweep = readOne(textOf(["Freq (MHz)", "|Z| (Ω)", "Phase (°)"].join(delimiter), rewritten(rows, delimiter)));
    expectLoad(sweep, { tolerance: ROUNDING, points: LOAD.slice(0, 2) });
    expect(notesOf(sweep)).toEqual(PLAIN);
  });

  test("two readings that fit equally well are refused, and both are listed", () => {
    expectRefusal(textOf("kHz SWR", "7000 ,5", "7050 ,6"), {
      code: "ambiguous",
      line: 2,
      says: /--delimiter (comma --decimal point or --delimiter space --decimal comma|space .* comma --decimal point)/,
    });
  });
});

describe("a wrong delimiter (langgenius/dify PR #42354)", () => {
  test.each<Delimiter>(["comma", "tab", "space"])("%s, asked for, is a failure and not one column", (delimiter) => {
    expectRefusal(
      textOf("Frequency (MHz);SWR", rewritten(SWR_ROWS, ";")),
      { code: "no-data", says: /no two columns of numbers.*Try it without --delimiter/ },
      { delimiter },
    );
  });

  test("one column of numbers is a failure", () => {
    expectRefusal(
      textOf(
        "SWR",
        SWR_LOAD.map(({ swr }) => swr),
      ),
      {
        code: "no-data",
        says: /no two columns of numbers.*expected rows with a frequency and a reading/,
      },
    );
  });
});

describe("a preamble (mholt/PapaParse#738, #794, #894; adaltas/node-csv-parse#81; duckdb/duckdb#25827)", () => {
  test("of any form is passed over and kept", () => {
    const preamble = [
      "Mooring: lock 7",
      "! invented",
      "Start Frequency,+5.0E+07",
      "Points,7",
      "Note,wire, 20 m",
      "",
      "7",
    ];
    const sweep = readOne(textOf(preamble, RX, RX_ROWS));
    expectLoad(sweep, { tolerance: ROUNDING });
    expect(notesOf(sweep)).toEqual(PLAIN);
    expect(sweep.source.comments).toEqual([
      "Mooring: lock 7",
      "invented",
      "Start Frequency,+5.0E+07",
      "Points,7",
      "Note,wire, 20 m",
      "7",
    ]);
  });

  test("longer than the table is not taken for the table", () => {
    const preamble = Array.from({ length: 60 }, (_, i) => `Setting ${i}: ${i * 3}, ${i}`);
    expectRx(textOf(preamble, RX, RX_ROWS));
  });

  test("header and rows are not taken for a preamble", () => {
    expectRx(textOf(RX, RX_ROWS.slice(0, 2), "", RX_ROWS.slice(2)));
  });
});

describe("a row of units (scikit-rf/scikit-rf PR #1100)", () => {
  test.each([
    ["below the header", ["Frequency,R,X", "MHz,Ohm,Ohm"]],
    ["below the header, in brackets", ["Frequency,R,X", "[MHz],[Ω],[Ω]"]],
    ["above the header", ["MHz,Ohm,Ohm", "Frequency,R,X"]],
  ])("%s gives the units", (_, header) => {
    expectRx(textOf(header, RX_ROWS));
  });

  test("kHz in that row is kHz", () => {
    const rows = LOAD.map(({ frequencyHz, ohms }) => `${frequencyHz / 1000},${ohms.join(",")}`);
    expectRx(textOf("Frequency,R,X", "kHz,Ohm,Ohm", rows));
  });

  test.each([
    ["Hz under MHz", "Frequency (MHz),SWR", (hz: number) => `${hz}`],
    ["MHz under Hz", "Frequency (Hz),SWR", (hz: number) => `${hz / 1e6}`],
    ["MHz under kHz", "Frequency (kHz),SWR", (hz: number) => `${hz / 1e6}`],
  ])("a unit that the numbers contradict is refused: %s", (_, header, frequency) => {
    const rows = SWR_LOAD.map(({ frequencyHz, swr }) => `${frequency(frequencyHz)},${swr}`);
    expectRefusal(textOf(header, rows), { code: "ambiguous", says: /seems to be another; say --unit or --decimal/ });
  });

  test.each([
    ["kHz", 1000],
    ["Hz", 1],
  ])("no unit anywhere: %s is told from the size, and said", (unit, hz) => {
    // Read as kHz, 7 000 000 would be 7 GHz, where no amateur's analyser sweeps an antenna.
    const rows = SWR_LOAD.map(({ frequencyHz, swr }) => `${frequencyHz / hz},${swr}`);
    const sweep = readOne(textOf("Frequency,SWR", rows));
    expectMagnitudes(sweep);
    expect(notesOf(sweep)).toEqual(["frequency-unit-inferred", "reference-assumed"]);
    expect(messageOf(sweep, "frequency-unit-inferred")).toContain(`says ${unit}.`);
  });

  test("no unit anywhere: the one that puts the sweep into an amateur band, which is said", () => {
    const sweep = readOne(textOf("Frequency,SWR", SWR_ROWS));
    expect(sweep.frequencyHz[0]).toBeGreaterThan(6e6);
    expect(sweep.frequencyHz[0]).toBeLessThan(8e6);
    expect(notesOf(sweep)).toContain("frequency-unit-inferred");
  });

  test("no unit anywhere, and two that fit, or none: refused", () => {
    expectRefusal(textOf("Frequency,SWR", "2.40,2", "2.45,1.5", "2.50,2"), {
      code: "ambiguous",
      says: /Say which it is: --unit Hz, --unit kHz/,
    });
  });
});
