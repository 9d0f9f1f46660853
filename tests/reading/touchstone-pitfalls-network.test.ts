/**
 * What readers of Touchstone text have stumbled over: several ports, noise data, comments, version 2, Y and Z.
 *
 * Sources: IBIS Open Forum, Touchstone File Format Specification, Version 2.0 (2009), pages as given; issues of public
 * projects by their number.
 */
import { describe, expect, test } from "vitest";
import {
  expectLoad,
  expectRefusal,
  LOAD,
  messageOf,
  notesOf,
  RI_ROWS,
  ROUNDING,
  readOne,
  textOf,
} from "../support/known-load.js";

const OPTION_LINE = "# MHz S RI R 50";
/** Rows with the known load at one port and something else everywhere else. */
const twoPortRows = (port: 1 | 2) =>
  LOAD.map(({ mhz, reflection }) => {
    const known = reflection.join(" ");
    return port === 1 ? `${mhz} ${known} 0.11 0.12 0.21 0.22 0.9 0.1` : `${mhz} 0.9 0.1 0.11 0.12 0.21 0.22 ${known}`;
  });

describe("several ports (scikit-rf/scikit-rf#8, #345, #821)", () => {
  test.each([1, 2] as const)("S at port %i of a two-port", (port) => {
    const sweep = readOne(textOf(OPTION_LINE, twoPortRows(port)), { port, fileName: "mooring.s2p" });
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(["one-port-of-many@1"]);
    expect(messageOf(sweep, "one-port-of-many")).toContain(`S${port}${port}`);
  });

  test.each([1, 2, 3])("S at port %i of a three-port that wraps over lines", (wanted) => {
    const cell = (known: string, row: number, column: number) => {
      if (row !== column) return `0.0${row} 0.0${column}`;
      return row === wanted ? known : "0.9 0.1";
    };
    const rows = LOAD.flatMap(({ mhz, reflection }) =>
      [1, 2, 3].map((row) => {
        const cells = [1, 2, 3].map((column) => cell(reflection.join(" "), row, column)).join(" ");
        return row === 1 ? `${mhz} ${cells}` : `      ${cells} ! row ${row}`;
      }),
    );
    const sweep = readOne(textOf(OPTION_LINE, rows), { port: wanted, fileName: "mooring.s3p" });
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(["one-port-of-many@1"]);
  });

  test.each([0, 3, -1, 1.5, Number.NaN])("port %d of a two-port is refused", (port) => {
    const says = /the file has 2\. Give a port that the file has\./;
    expectRefusal(textOf(OPTION_LINE, twoPortRows(1)), { code: "bad-option", says }, { port });
  });
});

describe("noise data after a two-port (Spec 23-24; scikit-rf/scikit-rf#721)", () => {
  test.each([
    ["at a frequency below the last", ["7 0.5 1 45 0.4", "7.3 0.6 0.3 40 0.4"]],
    ["at a frequency equal to the last", ["7.3 0.5 1 45 0.4", "7.4 0.6 0.3 40 0.4"]],
  ])("are skipped when they begin %s, and that is said", (_, noise) => {
    const sweep = readOne(textOf(OPTION_LINE, twoPortRows(1), "! noise", noise));
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(["noise-data-skipped@10", "one-port-of-many@1"]);
    expect(messageOf(sweep, "noise-data-skipped")).toContain("2 lines");
  });

  test("five numbers at a frequency that advances are a broken row, not noise", () => {
    const rows = twoPortRows(1);
    expectRefusal(textOf(OPTION_LINE, rows.slice(0, 3), "7.12 0.5 1 45 0.4", rows.slice(3)), {
      code: "bad-row",
      line: 5,
      says: /expected 9 for a 2-port.*Correct or remove the line\./,
    });
  });
});

describe("comments (scikit-rf/scikit-rf#319, #1294)", () => {
  const [first = "", second = "", ...others] = RI_ROWS;
  const text = textOf(
    "! before",
    OPTION_LINE,
    "! after the option line",
    "",
    first,
    "! between",
    second,
    others,
    "! end",
  );

  test("do not disturb the numbers, on their own line or behind them, glued or not", () => {
    const rows = RI_ROWS.map((row, i) => (i % 2 === 0 ? `${row}!7.9 1 1` : `${row}   ! 7.9 1 1`));
    for (const content of [text, textOf(OPTION_LINE, rows)]) {
      const sweep = readOne(content);
      expectLoad(sweep);
      expect(notesOf(sweep)).toEqual([]);
    }
  });

  test("on lines of their own are all kept", () => {
    expect(readOne(text).source.comments).toEqual(["before", "after the option line", "between", "end"]);
  });

  test("behind the option line and behind data are kept as well", () => {
    const sweep = readOne(textOf(`${OPTION_LINE} ! at the lock`, `${first} ! wind from the west`, second, others));
    expectLoad(sweep);
    expect(sweep.source.comments).toEqual(["at the lock", "wind from the west"]);
  });

  test("a row that is commented out is no point", () => {
    const sweep = readOne(textOf(OPTION_LINE, first, `!${second}`, others));
    expectLoad(sweep, { points: LOAD.filter((_, i) => i !== 1) });
  });
});

describe("version 2 (Spec 10-25; scikit-rf/scikit-rf#400, #753, #1146)", () => {
  const header = (ports: number, count = LOAD.length) => [
    "[Version] 2.0",
    OPTION_LINE,
    `[Number of Ports] ${ports}`,
    `[Number of Frequencies] ${count}`,
  ];
  const ONE_PORT = textOf(header(1), "[Network Data]", RI_ROWS, "[End]");

  test("[Reference] may begin on the next line and span lines", () => {
    const rows = LOAD.map(({ mhz, reflection }) => `${mhz} ${"0.1 0 ".repeat(8)}${reflection.join(" ")}`);
    const references = ["[Reference]", "50 ! first", "! between", "60", "75"];
    const sweep = readOne(textOf(header(3), references, "[Network Data]", rows, "[End]"), { port: 3 });
    expectLoad(sweep, { referenceOhms: 75 });
    expect(notesOf(sweep)).toEqual(["one-port-of-many@2"]);
  });

  test.each([
    ["Lower", 3, (known: string) => `0.1 0 0.2 0 0.3 0 0.4 0 0.5 0 ${known}`],
    ["Lower", 2, (known: string) => `0.1 0 0.2 0 ${known} 0.4 0 0.5 0 0.6 0`],
    ["Upper", 2, (known: string) => `0.1 0 0.2 0 0.3 0 ${known} 0.5 0 0.6 0`],
    ["Upper", 3, (known: string) => `0.1 0 0.2 0 0.3 0 0.4 0 0.5 0 ${known}`],
    ["Full", 2, (known: string) => `0.1 0 0.2 0 0.3 0 0.4 0 ${known} 0.6 0 0.7 0 0.8 0 0.9 0`],
  ])("[Matrix Format] %s: port %i", (format, port, matrix) => {
    const rows = LOAD.map(({ mhz, reflection }) => `${mhz} ${matrix(reflection.join(" "))}`);
    const sweep = readOne(textOf(header(3), `[Matrix Format] ${format}`, "[Network Data]", rows, "[End]"), { port });
    expectLoad(sweep);
  });

  test.each([
    ["12_21", "0.9 0.1 0.11 0 0.21 0"],
    ["21_12", "0.9 0.1 0.21 0 0.11 0"],
  ])("[Two-Port Data Order] %s: S22 is last either way", (order, before) => {
    const rows = LOAD.map(({ mhz, reflection }) => `${mhz} ${before} ${reflection.join(" ")}`);
    const lines = [`[Two-Port Data Order] ${order}`, "[Network Data]"];
    expectLoad(readOne(textOf(header(2), lines, rows, "[End]"), { port: 2 }));
  });

  test("[Begin Information] is passed over, whatever it holds", () => {
    const block = ["[Begin Information]", "# GHz Z MA R 75", "1 2 3", "[Colour] blue", "[End Information]"];
    const sweep = readOne(textOf(header(1), block, "[Network Data]", RI_ROWS, "[End]"));
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual([]);
  });

  test.each([3, 99])("[Number of Frequencies] %i, though there are seven, is said and all are read", (count) => {
    const sweep = readOne(textOf(header(1, count), "[Network Data]", RI_ROWS, "[End]"));
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(["count-mismatch"]);
    expect(messageOf(sweep, "count-mismatch")).toMatch(new RegExp(`${count} frequencies and holds 7`));
  });

  test("rows after [End] are left out, and that is said with their line", () => {
    const sweep = readOne(`${ONE_PORT}7.35 0 0\n`);
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(["text-after-end@14"]);
  });

  test.each([
    ["without [End]", ONE_PORT.replace("[End]\n", "")],
    ["without a newline after [End]", ONE_PORT.trimEnd()],
    ["with keywords in capitals", ONE_PORT.replace(/\[.*?\]/g, (keyword) => keyword.toUpperCase())],
  ])("%s the last point is read and nothing is said (TSIRD 4.1)", (_, text) => {
    const sweep = readOne(text);
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual([]);
  });

  test("an unknown keyword is passed over, and that is said", () => {
    const sweep = readOne(textOf(header(1), "[Colour] blue", "[Network Data]", RI_ROWS, "[End]"));
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(["unknown-keyword@5"]);
  });

  test.each([
    [["[Version] 3.0"], 1, /version "3.0" is not supported; expected 2.0 or 2.1/],
    [["[Version] 2.0", OPTION_LINE, "[Number of Ports] one"], 3, /"one" is no count; expected a whole number above 0/],
    [
      ["[Version] 2.0", OPTION_LINE, "[Number of Ports] 1", "[Reference] 0"],
      4,
      /expected positive real numbers of ohms/,
    ],
    [["[Version] 2.0", OPTION_LINE, "[Matrix Format] Diagonal"], 3, /expected Full, Lower or Upper/],
  ])("%j is refused", (lines, line, says) => {
    expectRefusal(textOf(lines, "[Network Data]", RI_ROWS), { code: "bad-keyword", line, says });
  });
});

describe("Y and Z are multiples of R in version 1 and plain in version 2 (Spec 7, 27)", () => {
  const version2 = (option: string, rows: readonly string[]) =>
    textOf(
      "[Version] 2.1",
      option,
      "[Number of Ports] 1",
      "[Number of Frequencies] 7",
      "[Network Data]",
      rows,
      "[End]",
    );
  const rows = (scale: number, isAdmittance: boolean) =>
    LOAD.map(({ mhz, ohms: [r, x] }) => {
      const square = r * r + x * x;
      const [real, imaginary] = isAdmittance ? [r / square, -x / square] : [r, x];
      return `${mhz} ${real * scale} ${imaginary * scale}`;
    });

  test("the pair says the same for Z and for Y", () => {
    for (const [first, second] of [
      [textOf("# MHz Z RI R 50", rows(1 / 50, false)), version2("# MHz Z RI R 50", rows(1, false))],
      [textOf("# MHz Y RI R 50", rows(50, true)), version2("# MHz Y RI R 50", rows(1, true))],
    ] as const) {
      for (const text of [first, second]) {
        const sweep = readOne(text);
        expectLoad(sweep, { tolerance: ROUNDING });
        expect(notesOf(sweep)).toEqual([]);
      }
    }
  });

  test("ohms under a version 1 option line are doubted", () => {
    const large = LOAD.map(({ mhz }) => `${mhz} 50 -10`);
    expect(notesOf(readOne(textOf("# MHz Z RI R 50", large)))).toEqual(["maybe-not-normalised@1"]);
  });

  test("so are siemens", () => {
    const small = LOAD.map(({ mhz }) => `${mhz} 0.02 -0.004`);
    expect(notesOf(readOne(textOf("# MHz Y RI R 50", small)))).toEqual(["maybe-not-normalised@1"]);
  });
});
