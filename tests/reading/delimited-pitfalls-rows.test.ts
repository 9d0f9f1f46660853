/**
 * What readers of delimited text have stumbled over: footers, line ends, encoding, quotes, ragged rows, duplicates.
 *
 * Sources: issues of public projects by their number.
 */
import { parseColumnRoles } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import {
  bytesOf,
  expectLoad,
  expectMagnitudes,
  expectRefusal,
  LOAD,
  latin1Of,
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
const TEXT = textOf(RX, RX_ROWS);
/** The text with the row of 7.1 MHz, in line 4, replaced by others. */
const withThird = (...rows: string[]) => textOf(RX, RX_ROWS.slice(0, 2), rows, RX_ROWS.slice(3));
const WITHOUT_THIRD = LOAD.filter((_, i) => i !== 2);

function expectRx(content: string | Uint8Array, notes: readonly string[] = PLAIN, points = LOAD): void {
  const sweep = readOne(content);
  expectLoad(sweep, { tolerance: ROUNDING, points });
  expect(notesOf(sweep)).toEqual(notes);
}

describe("the end of the file (adaltas/node-csv-parse#81; scikit-rf/scikit-rf#1424)", () => {
  test.each([
    ["with a newline", TEXT],
    ["without a newline", TEXT.trimEnd()],
    ["with END", `${TEXT}END\n`],
    ["with END and no newline", `${TEXT}END`],
    ["with END padded by commas", `${TEXT}END,,\n`],
    ["with blank lines", `${TEXT}\n\n\n`],
    ["with a comment", `${TEXT}# end of sweep\n`],
    ["with a Ctrl-Z", `${TEXT}\u001a`],
  ])("the last row survives %s", (_, text) => {
    expectRx(text);
  });

  test.each([
    ["words", "Report by the skipper"],
    ["a total with a number where none belongs", "Mean,50,1"],
    ["a line of dashes", "-----------"],
  ])("a footer of %s is left out, and that is said with its line", (_, footer) => {
    const sweep = readOne(`${TEXT}${footer}\n`);
    expectLoad(sweep, { tolerance: ROUNDING });
    expect(notesOf(sweep).filter((note) => note !== "reference-assumed")).toEqual([
      expect.stringMatching(/^row-(left-out|without-number)@9$/),
    ]);
  });
});

describe("line ends (mholt/PapaParse PR #1123, PR #281, #345)", () => {
  test.each([
    ["LF", TEXT],
    ["CR LF", TEXT.replaceAll("\n", "\r\n")],
    ["CR", TEXT.replaceAll("\n", "\r")],
    ["an LF after the header and CR LF after the rows", TEXT.replaceAll("\n", "\r\n").replace("\r\n", "\n")],
    [
      "all three mixed",
      TEXT.split("\n")
        .map((line, i) => line + ["\n", "\r\n", "\r"][i % 3])
        .join(""),
    ],
  ])("%s", (_, text) => {
    expectRx(text);
  });

  test.each(["\n", "\r\n", "\r"])("lines are counted on the original, with %j", (lineEnd) => {
    const text = withThird("7.1,25,").replaceAll("\n", lineEnd);
    expectRx(text, ["reference-assumed", "row-without-number@4"], WITHOUT_THIRD);
  });
});

describe("the encoding (adaltas/node-csv-parse#284, #250; ebranlard/pyDatView#197; pandas-dev/pandas#66391)", () => {
  const german = textOf("Frequenz (MHz),Wirkwiderstand (Ω),Blindwiderstand (Ω)", RX_ROWS);
  const degree = textOf("! 12 °C, gemessen für die Übersicht", RX, RX_ROWS);
  const utf16 = (text: string) =>
    Uint8Array.from([...`\uFEFF${text}`].flatMap((c) => [c.charCodeAt(0) & 255, c.charCodeAt(0) >> 8]));

  test("a byte-order mark does not become part of the first name", () => {
    expectRx(bytesOf(`\uFEFF${TEXT}`));
    expectRx(bytesOf(`\uFEFF${german}`));
  });

  test("Latin-1 is read, and which encoding was used is said", () => {
    const sweep = readOne(latin1Of(degree));
    expectLoad(sweep, { tolerance: ROUNDING });
    expect(sweep.source.comments).toEqual(["12 °C, gemessen für die Übersicht"]);
    expect(notesOf(sweep)).toEqual(["encoding", "reference-assumed"]);
    expect(messageOf(sweep, "encoding")).toContain("Latin-1");
  });

  test("UTF-16 is read, and which encoding was used is said", () => {
    const sweep = readOne(utf16(german));
    expectLoad(sweep, { tolerance: ROUNDING });
    expect(notesOf(sweep)).toEqual(["encoding", "reference-assumed"]);
    expect(messageOf(sweep, "encoding")).toContain("UTF-16");
  });
});

describe("lines without numbers (mholt/PapaParse#161, #319, #510; johnkerl/miller#1572)", () => {
  test.each([
    ["blank", ""],
    ["of blanks", "   \t "],
    ["of delimiters", ",,"],
    ["of delimiters and blanks", " , , "],
  ])("a line %s is skipped silently, anywhere", (_, line) => {
    expectRx(textOf(line, RX, line, RX_ROWS[0] ?? "", line, RX_ROWS.slice(1), line));
  });
});

describe("stray quotes (mholt/PapaParse#107, #112, #226, #713)", () => {
  test.each([
    ["an open quote in a text column", '7.1,25,-25,"open'],
    ["an inch mark in a text column", '7.1,25,-25,wire 2"'],
  ])("%s does not swallow what follows", (_, row) => {
    const rows = RX_ROWS.map((line) => `${line},ok`);
    expectRx(textOf(`${RX},Note`, rows.slice(0, 2), row, rows.slice(3)));
  });

  test("an open quote before a number costs that row alone, and that is said with its line", () => {
    expectRx(withThird('7.1,25,"-25'), ["reference-assumed", "row-without-number@4"], WITHOUT_THIRD);
  });

  test.each([
    ["a delimiter and doubled quotes", '"wire, very ""thick"""'],
    ["a digit", '"wire 2"'],
  ])("quoted cells are read as their contents, with %s in the text", (_, note) => {
    const quoted = RX_ROWS.map((row) => `"${row.replaceAll(",", '","')}",${note}`);
    expectRx(textOf('"Frequency (MHz)","R (Ohm)","X (Ohm)","Note"', quoted));
  });
});

describe("ragged rows (fsprojects/FSharp.Data#688; deephaven/deephaven-core#1800; johnkerl/miller#31, #523, #1016)", () => {
  test.each([
    ["in the rows", RX, RX_ROWS.map((row) => `${row},`)],
    ["in the header", `${RX},`, RX_ROWS],
    ["in both", `${RX},`, RX_ROWS.map((row) => `${row},`)],
    ["in some rows", RX, RX_ROWS.map((row, i) => (i % 2 === 0 ? row : `${row},`))],
  ])("an empty last column %s is ignored", (_, header, rows) => {
    expectRx(textOf(header, rows));
  });

  test.each(["\t", ";", ","])("%j at the end of every row, or two of them, are ignored", (delimiter) => {
    for (const end of [delimiter, delimiter + delimiter]) {
      const rows = rewritten(RX_ROWS, delimiter).map((row) => row + end);
      expectRx(textOf(rewritten([RX], delimiter), rows));
    }
  });

  test("a row with too few cells is left out with its line", () => {
    expectRx(withThird("7.1,25"), ["reference-assumed", "row-without-number@4"], WITHOUT_THIRD);
  });

  test("a row with too many cells is left out with its line", () => {
    expectRx(withThird("7.1,25,-25,1"), ["reference-assumed", "row-left-out@4"], WITHOUT_THIRD);
  });

  test("more bad rows are counted", () => {
    const sweep = readOne(withThird("7.1,25,-25,1", "7.11,1,1,1", "7.12,1,1,1"));
    expectLoad(sweep, { tolerance: ROUNDING, points: WITHOUT_THIRD });
    expect(messageOf(sweep, "row-left-out")).toMatch(/line 4 and 2 more/);
  });

  test("more columns of numbers than names are refused, and so are fewer", () => {
    const says = /say what the \d columns hold, "skip" for those to leave out, such as --columns frequency:MHz/i;
    const wide = LOAD.map(({ mhz, ohms }) => `${mhz},1,${ohms.join(",")}`);
    expectRefusal(textOf(RX, wide), { code: "ambiguous", line: 2, says });
    expectRefusal(textOf("No.,Frequency (MHz),SWR", SWR_ROWS), { code: "ambiguous", line: 2, says });
  });
});

describe("duplicate headers (mholt/PapaParse#129, #982, #988)", () => {
  const rows = SWR_LOAD.map(({ mhz, swr }) => `${mhz},2,${swr}`);

  test.each(["Frequency (MHz),SWR,SWR", "Frequency (MHz),SWR,VSWR"])(
    "%s: two candidates, so the user is asked",
    (header) => {
      expectRefusal(textOf(header, rows), {
        code: "ambiguous",
        says: /"SWR" and "V?SWR" both hold swr\. Say which counts, such as --columns frequency:MHz,swr,skip/,
      });
    },
  );

  test("the answer counts by position", () => {
    const sweep = readOne(textOf("Frequency (MHz),SWR,SWR", rows), {
      columns: parseColumnRoles("frequency:MHz,skip,swr"),
    });
    expectMagnitudes(sweep);
    expect(notesOf(sweep)).toEqual(PLAIN);
  });

  test("two columns that mean nothing here may have one name", () => {
    const notes = SWR_LOAD.map(({ mhz, swr }) => `${mhz},${swr},1,2`);
    const sweep = readOne(textOf("Frequency (MHz),SWR,Note,Note", notes));
    expectMagnitudes(sweep);
    expect(notesOf(sweep)).toEqual(PLAIN);
  });
});

describe("padding (mholt/PapaParse#270)", () => {
  test.each([
    ["blanks around commas", RX.replaceAll(",", "  ,  "), RX_ROWS.map((row) => `  ${row.replaceAll(",", "  ,   ")}  `)],
    ["tabs around commas", RX.replaceAll(",", "\t,\t"), RX_ROWS.map((row) => `\t${row.replaceAll(",", "\t,")}\t`)],
    [
      "cells of one width between blanks",
      "MHz      R        X",
      RX_ROWS.map((row) =>
        row
          .split(",")
          .map((cell) => cell.padStart(9))
          .join(""),
      ),
    ],
    [
      "cells of one width between semicolons",
      "Frequency (MHz) ; R (Ohm) ; X (Ohm)",
      RX_ROWS.map((row) =>
        row
          .split(",")
          .map((cell) => cell.padEnd(9))
          .join(";"),
      ),
    ],
  ])("%s", (_, header, rows) => {
    expectRx(textOf(header, rows));
  });
});
