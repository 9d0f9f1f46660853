/** Headers that are repeated, that name row numbers, or that begin a table of their own. All invented. */
import { describe, expect, test } from "vitest";
import { expectLoad, LOAD, notesOf, ROUNDING, RX_ROWS, readOne, textOf } from "../support/known-load.js";

describe("a column of numbers that count the rows", () => {
  test.each([
    ["#;Freq (MHz);R;X", ""],
    ["#;Freq (MHz);R;X;Comment", ";"],
    [";Freq (MHz);R;X", ""],
    [";Freq (MHz);R;X;Comment", ";"],
  ])("under %s is not the frequency", (header, end) => {
    const lines = RX_ROWS.map((row, i) => `${i};${row.replaceAll(",", ";")}${end}`);
    expectLoad(readOne(textOf(header, lines)), { tolerance: ROUNDING });
  });

  test.each([";", "#;", "!;"])("%s is a comment mark where the rows have a delimiter at their end", (mark) => {
    const lines = RX_ROWS.map((row) => `${row.replaceAll(",", ";")};`);
    expectLoad(readOne(textOf(`${mark} Freq (MHz);R;X`, lines)), { tolerance: ROUNDING });
  });

  test("a comment mark before the first name is none", () => {
    expectLoad(
      readOne(
        textOf(
          "; Freq (MHz);R;X",
          RX_ROWS.map((row) => row.replaceAll(",", ";")),
        ),
      ),
      {
        tolerance: ROUNDING,
      },
    );
  });
});

describe("a table of markers", () => {
  test.each(["#,Freq (MHz),SWR", "Marker,Freq (MHz),SWR"])("under %s is not appended to the sweep", (header) => {
    const sweep = readOne(textOf("Freq (MHz),R,X", RX_ROWS, header, "1,7.05,1.5", "2,7.1,1.2"));
    expectLoad(sweep, { tolerance: ROUNDING });
    expect(notesOf(sweep)).toEqual(["block-left-out@9", "reference-assumed"]);
  });

  test("a comment among the rows is no heading, nor is the header again", () => {
    const lines = [...RX_ROWS.slice(0, 3), "# marker at freq 7.1, SWR 1.5", "# Freq (MHz),R,X", ...RX_ROWS.slice(3)];
    expectLoad(readOne(textOf("# Freq (MHz),R,X", lines)), { tolerance: ROUNDING });
  });
});

describe("between rows of one table", () => {
  const between = (line: string, header = "Freq (MHz),R,X", rewritten = (row: string) => row) =>
    readOne(textOf(header, RX_ROWS.slice(0, 3).map(rewritten), line, RX_ROWS.slice(3).map(rewritten)));

  test.each([
    "Freq (MHz),R,X,",
    '"Freq (MHz)", "R", "X"',
    "FREQ (MHZ),R,X",
    "Frequency (MHz),Resistance,Reactance",
    "# Freq, R, X",
    "; Freq (MHz),R,X",
    "# tuned again, antenna moved, windy",
    "# the antenna moved",
  ])("the header again, or a remark, ends nothing: %s", (line) => {
    expectLoad(between(line), { tolerance: ROUNDING });
    expect(notesOf(between(line)).filter((note) => note.startsWith("block"))).toEqual([]);
  });

  test.each(["Freq (MHz)   R (ohm)   X (ohm)", "# antenna moved again", "Freq drift seen"])(
    "so between blanks: %s",
    (line) => {
      const sweep = between(line, "Freq (MHz)   R (ohm)   X (ohm)", (row) => row.replaceAll(",", "   "));
      expectLoad(sweep, { tolerance: ROUNDING });
    },
  );

  test.each(["Freq (kHz),R,X", "Freq (MHz),SWR,Note", "# Freq (MHz),Return loss,Phase"])(
    "another header does: %s",
    (line) => {
      expectLoad(between(line), { tolerance: ROUNDING, points: LOAD.slice(0, 3) });
      expect(notesOf(between(line))).toContain("block-left-out@5");
    },
  );
});
