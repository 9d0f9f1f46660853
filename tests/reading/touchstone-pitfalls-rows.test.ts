/**
 * What readers of Touchstone text have stumbled over: encoding, rows, numbers, frequencies, formats, messages.
 *
 * Sources: IBIS Open Forum, Touchstone File Format Specification, Version 2.0 (2009); issues of public projects by their
 * number.
 */
import type { FrequencyUnit } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import {
  bytesOf,
  expectLoad,
  expectRefusal,
  LOAD,
  latin1Of,
  messageOf,
  notesOf,
  RI_ROWS,
  ROUNDING,
  readAll,
  readOne,
  textOf,
} from "../support/known-load.js";
import type { Pair } from "../support/sweeps.js";

const OPTION_LINE = "# MHz S RI R 50";
const TEXT = textOf("! 12 °C at the lock", OPTION_LINE, RI_ROWS);
/** The text with the row of 7.1 MHz, in line 4, replaced by others. */
const withThird = (...rows: string[]) => textOf(OPTION_LINE, RI_ROWS.slice(0, 2), rows, RI_ROWS.slice(3));
const WITHOUT_THIRD = LOAD.filter((_, i) => i !== 2);

function utf16Of(text: string, isBigEndian: boolean): Uint8Array {
  return Uint8Array.from(
    [...text].flatMap((character) => {
      const code = character.charCodeAt(0);
      return isBigEndian ? [code >> 8, code & 255] : [code & 255, code >> 8];
    }),
  );
}

describe("the encoding (scikit-rf/scikit-rf#280, #214, #586; PR #587)", () => {
  test.each<[string, Uint8Array, string[]]>([
    ["UTF-8", bytesOf(TEXT), []],
    ["UTF-8 with byte-order mark", bytesOf(`\uFEFF${TEXT}`), []],
    ["Latin-1", latin1Of(TEXT), ["encoding"]],
    ["UTF-16, low byte first, with mark", utf16Of(`\uFEFF${TEXT}`, false), ["encoding"]],
    ["UTF-16, high byte first, with mark", utf16Of(`\uFEFF${TEXT}`, true), ["encoding"]],
    ["UTF-16, low byte first, without mark", utf16Of(TEXT, false), ["encoding"]],
    ["UTF-16, high byte first, without mark", utf16Of(TEXT, true), ["encoding"]],
  ])("%s is read, its comments included, and said if it is not UTF-8", (_, bytes, notes) => {
    const sweep = readOne(bytes);
    expectLoad(sweep);
    expect(sweep.source.comments).toEqual(["12 °C at the lock"]);
    expect(notesOf(sweep)).toEqual(notes);
  });

  test("a broken number in a Latin-1 file is blamed on the number, not on the encoding", () => {
    expectRefusal(latin1Of(TEXT.replace("7.1 ", "7x1 ")), {
      code: "bad-number",
      line: 5,
      says: /"7x1" is not a number.*Correct the line/,
    });
  });
});

describe("ragged rows (scikit-rf/scikit-rf#1155)", () => {
  test.each([
    ["too few numbers", withThird("7.1 -0.2"), /2 numbers; expected 3 for a 1-port/],
    ["too many numbers", withThird("7.1 -0.2 -0.4 0.5"), /4 numbers; expected 3 for a 1-port/],
  ])("%s: line, count and expected count are named", (_, text, says) => {
    expectRefusal(text, { code: "bad-row", line: 4, says: new RegExp(`${says.source}.*Correct or remove the line`) });
  });

  test("a pair missing from a two-port's row is blamed on that row, not on the next", () => {
    const rows = LOAD.map(({ mhz, reflection }, i) => `${mhz} ${reflection.join(" ")} 0 0 0 0${i === 2 ? "" : " 0 0"}`);
    expectRefusal(textOf(OPTION_LINE, rows), {
      code: "bad-row",
      line: 4,
      says: /7 numbers; expected 9 for a 2-port.*Correct or remove the line/,
    });
  });

  test("a last row that is cut off is left out, and that is said with its line", () => {
    const sweep = readOne(`${textOf(OPTION_LINE, RI_ROWS.slice(0, -1))}7.3 0.5`);
    expectLoad(sweep, { points: LOAD.slice(0, -1) });
    expect(notesOf(sweep)).toEqual(["last-row-cut@8"]);
    expect(messageOf(sweep, "last-row-cut")).toContain("2 of 3 numbers");
  });

  test("the last row survives without a newline", () => {
    const sweep = readOne(textOf(OPTION_LINE, RI_ROWS).trimEnd());
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual([]);
  });
});

describe("odd numbers", () => {
  test.each([
    ["exponents with D", RI_ROWS.map((row) => row.replace(/(\S+) (\S+) (\S+)/, "$1D0 $2D+00 $3d-0"))],
    ["exponents of three digits", RI_ROWS.map((row) => row.replace(/(\S+) (\S+) (\S+)/, "$1E+000 $2e-000 $3E000"))],
    ["plus signs", RI_ROWS.map((row) => row.replace(/(^| )(\d)/g, "$1+$2"))],
    ["no zero before the point", RI_ROWS.map((row) => row.replace(/(^| |-)0\./g, "$1."))],
    ["a closing Ctrl-Z", [...RI_ROWS, "\u001a", "garbage"]],
    ["a Ctrl-Z behind the last number", [...RI_ROWS.slice(0, -1), `${RI_ROWS.at(-1)}\u001a`]],
    ["a comma and a blank between the numbers", RI_ROWS.map((row) => row.replaceAll(" ", ", "))],
  ])("%s are read as meant", (_, rows) => {
    const sweep = readOne(textOf(OPTION_LINE, rows));
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual([]);
  });

  test.each(["nan", "NaN", "-nan", "1.#IND", "-1.#IND", "1.#QNAN", "inf", "-Infinity", "1.#INF", "---"])(
    "%s is left out with its line",
    (word) => {
      const sweep = readOne(withThird(`7.1 ${word} -0.4`));
      expectLoad(sweep, { points: WITHOUT_THIRD });
      expect(notesOf(sweep)).toEqual(["row-without-number@4"]);
    },
  );

  test("a decimal comma is refused with what to do", () => {
    expectRefusal(withThird("7,1 -0,2 -0,4"), {
      code: "bad-number",
      line: 4,
      says: /"7,1" is not a number; expected a decimal point.*decimal points, or save it as CSV with semicolons/,
    });
  });

  test.each([
    ["no rows at all", textOf(OPTION_LINE), /no rows of numbers; expected data after the option line/],
    ["rows without a number", textOf(OPTION_LINE, "7 nan nan"), /no row holds usable numbers; expected a frequency/],
  ])("%s is an error", (_, text, says) => {
    expectRefusal(text, { code: "no-data", says });
  });
});

describe("frequencies (scikit-rf/scikit-rf#517, #1090, #138, #787; PR #269, #523)", () => {
  test("repeated ones are averaged, and that is said", () => {
    const sweep = readOne(withThird("7.1 -0.1 -0.3", "7.1 -0.3 -0.5"));
    expectLoad(sweep, { tolerance: ROUNDING });
    expect(notesOf(sweep)).toEqual(["frequency-repeated@5"]);
  });

  test("a sweep from high to low is turned round, and that is said", () => {
    const sweep = readOne(textOf(OPTION_LINE, [...RI_ROWS].reverse()));
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(["frequency-descending"]);
  });

  test("rows out of order are sorted, and that is said with the first line astray", () => {
    const [first = "", second = "", third = "", ...others] = RI_ROWS;
    const sweep = readOne(textOf(OPTION_LINE, first, third, second, others));
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(["frequency-not-ascending@4"]);
  });

  test("a single point is read, and its weakness said", () => {
    const sweep = readOne(textOf(OPTION_LINE, RI_ROWS.slice(0, 1)));
    expectLoad(sweep, { points: LOAD.slice(0, 1) });
    expect(notesOf(sweep)).toEqual(["single-point"]);
  });

  test("a point at 0 Hz is left out, and that is said", () => {
    const sweep = readOne(textOf(OPTION_LINE, "0 1 0", RI_ROWS));
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(["frequency-not-positive@2"]);
  });

  test("units are scaled by moving the decimal mark, so that no noise comes in", () => {
    // In binary, 0.0071 * 1e9 is 7100000.000000001, and 7.1e-3 * 1e9 likewise.
    const rows = ["0.0071 0 0.1", "7.1000001e-3 0 0.1", "7100000.2e-9 0 0.1", "0.000000007100000300000e+6 0 0.1"];
    const sweep = readOne(textOf("# GHz S RI R 50", rows));
    expect([...sweep.frequencyHz]).toEqual([7_100_000, 7_100_000.1, 7_100_000.2, 7_100_000.3]);
  });
});

describe("every parameter in every format and unit (PR #588)", () => {
  const UNITS: readonly [FrequencyUnit, number][] = [
    ["Hz", 1],
    ["kHz", 1e3],
    ["MHz", 1e6],
    ["GHz", 1e9],
  ];
  const PARAMETERS: Readonly<Record<string, (ohms: Pair, reflection: Pair) => Pair>> = {
    S: (_, reflection) => reflection,
    Z: ([r, x]) => [r / 50, x / 50],
    Y: ([r, x]) => [(50 * r) / (r * r + x * x), (-50 * x) / (r * r + x * x)],
  };
  const degrees = ([real, imaginary]: Pair) => (Math.atan2(imaginary, real) * 180) / Math.PI;
  const FORMATS: Readonly<Record<string, (value: Pair) => Pair>> = {
    RI: (value) => value,
    MA: (value) => [Math.hypot(...value), degrees(value)],
    DB: (value) => [20 * Math.log10(Math.hypot(...value)), degrees(value)],
  };
  const cases = Object.keys(PARAMETERS).flatMap((parameter) =>
    Object.keys(FORMATS).flatMap((format) => UNITS.map(([unit, hz]) => ({ parameter, format, unit, hz }))),
  );

  test.each(cases)("$parameter $format $unit", ({ parameter, format, unit, hz }) => {
    const rows = LOAD.map(({ frequencyHz, ohms, reflection }) => {
      const value = PARAMETERS[parameter]?.(ohms, reflection) ?? [Number.NaN, Number.NaN];
      return [frequencyHz / hz, ...(FORMATS[format]?.(value) ?? [])].join(" ");
    });
    const sweep = readOne(textOf(`# ${unit} ${parameter} ${format} R 50`, rows));
    expectLoad(sweep, { tolerance: ROUNDING });
    expect(notesOf(sweep)).toEqual([]);
  });
});

describe("the first real cause is reported (scikit-rf/scikit-rf#180, #432, #1146, #1339)", () => {
  test.each([
    [
      "a word among the numbers",
      withThird("7.1 -0.2 minus", "also broken"),
      "bad-number",
      4,
      /"minus" is not a number/,
    ],
    ["no option line", textOf("! a note", RI_ROWS), "bad-option-line", 2, /add the line that the analyser should have/],
  ] as const)("%s", (_, text, code, line, says) => {
    expectRefusal(text, { code, line, says }, { fileName: "mooring.s1p" });
  });

  test("and nothing else is thrown for any cut of a file", () => {
    const whole = bytesOf(TEXT);
    for (let length = 1; length < whole.length; length++) {
      try {
        readAll(whole.subarray(0, length));
      } catch (error) {
        expect(error).toHaveProperty("name", "ReadError");
      }
    }
  });
});
