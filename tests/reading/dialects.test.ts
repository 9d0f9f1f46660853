/** Layouts met in files of measurements: where the words stand, how blocks and sweeps follow one another. Invented data. */
import { parseColumnRoles, readCompanions } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import {
  bytesOf,
  expectLoad,
  expectMagnitudes,
  expectRefusal,
  LOAD,
  messageOf,
  notesOf,
  ROUNDING,
  RX_ROWS,
  readAll,
  readOne,
  rewritten,
  SWR_LOAD,
  SWR_ROWS,
  textOf,
} from "../support/known-load.js";
import { present } from "../support/sweeps.js";

const PLAIN = ["reference-assumed"];
const RX = "Frequency (MHz),R (Ohm),X (Ohm)";

function expectRx(text: string): void {
  const sweep = readOne(text);
  expectLoad(sweep, { tolerance: ROUNDING });
  expect(notesOf(sweep)).toEqual(PLAIN);
}

describe("a header inside comment lines", () => {
  test.each([
    ["# MHz R X", " "],
    ["#MHz\tReZ\tImZ", "\t"],
    ["   # Frequency (MHz),R,X", ","],
    ["% Freq[MHz]  re(Z)  im(Z)", " "],
    ["! freq (MHz),R (Ohm),X (Ohm)", ","],
    ['"# Frequency (MHz)","R","X"', ","],
    ["// Frequency (MHz);R;X", ";"],
  ])("%j is the header", (header, delimiter) => {
    expectRx(textOf('"# Channel 1"', header, rewritten(RX_ROWS, delimiter)));
  });

  test("spread over two of them, the second with the units", () => {
    expectRx(textOf("% invented", "% Freq  R  X", "% MHz  Ohm  Ohm", rewritten(RX_ROWS, "  ")));
  });
});

describe("units that only the preamble states", () => {
  test.each([
    ["! unit of frequency Hz", "! unit of readings VSWR"],
    ["frequency unit,Hz", "unit of the readings,VSWR"],
    ["Frequencies are in Hz", "Unit: SWR"],
  ])("%j with %j", (...preamble) => {
    const rows = SWR_LOAD.map(({ frequencyHz, swr }) => `${frequencyHz},${swr}`);
    const sweep = readOne(textOf(preamble, "! Freq,S11", "BEGIN", rows, "END"));
    expectMagnitudes(sweep);
    expect(notesOf(sweep)).toEqual(PLAIN);
  });

  test("a format of R+jX", () => {
    const preamble = ["form,R + jX", "frequency unit,Hz", "begins at,+7.0E+06", "", "", "readings"];
    expectRx(
      textOf(
        preamble,
        LOAD.map(({ frequencyHz, ohms }) => `${frequencyHz},${ohms.join(",")}`),
      ),
    );
  });

  test("S11 without a unit in the header takes it from there", () => {
    const rows = [10, 20, 40].map((db, i) => `${7_000_000 + i * 1000},${-db}`);
    const sweep = readOne(textOf("! unit of readings dB", "Frequency (Hz),S11", rows));
    expectMagnitudes(
      sweep,
      [Math.sqrt(0.1), 0.1, 0.01].map((rho, i) => ({ frequencyHz: 7_000_000 + i * 1000, rho })),
    );
    expect(notesOf(sweep)).toEqual(PLAIN);
  });
});

describe("header and data split by different delimiters", () => {
  test.each([
    ["semicolons, then commas with a trailing one", RX.replaceAll(",", ";"), RX_ROWS.map((row) => `${row},`)],
    ["commas, then blanks", RX, rewritten(RX_ROWS, "  ")],
    ["tabs, then semicolons and decimal commas", RX.replaceAll(",", "\t"), rewritten(RX_ROWS, ";", ",")],
  ])("%s", (_, header, rows) => {
    expectRx(textOf(header, rows));
  });

  test("a tab and a comma in one row", () => {
    const rows = LOAD.map(({ frequencyHz, reflection }) => `${frequencyHz}\t${reflection.join(",")}`);
    expectRefusal(textOf("Frequency (Hz)\tre(S11),im(S11)", rows), {
      code: "no-data",
      says: /as CSV with a header line/,
    });
  });
});

describe("blocks between BEGIN and END", () => {
  const first = textOf("BEGIN first table", RX, RX_ROWS, "END");

  test.each([
    ["", ""],
    ["! by hand\n! no date\n\n", "\n\n"],
  ])("one block is read, after %j and before %j", (before, after) => {
    expectRx(`${before}${first}${after}`);
  });

  test("of two blocks the first is read, and the other's place is said", () => {
    const sweep = readOne(`${first}${textOf("BEGIN second table", RX.replace("R (", "R2 ("), RX_ROWS, "END")}`);
    expectLoad(sweep, { tolerance: ROUNDING });
    expect(notesOf(sweep)).toEqual(["block-left-out@13", "reference-assumed"]);
  });

  test("a second table under a header of its own is not appended", () => {
    const sweep = readOne(textOf(RX, RX_ROWS, "Time (s),Level,Gain", "8,1,2", "9,1,2"));
    expectLoad(sweep, { tolerance: ROUNDING });
    expect(notesOf(sweep)).toEqual(["block-left-out@9", "reference-assumed"]);
  });

  test("a repeated header between rows of one table is no block", () => {
    const sweep = readOne(textOf(RX, RX_ROWS.slice(0, 3), RX, RX_ROWS.slice(3)));
    expectLoad(sweep, { tolerance: ROUNDING });
    expect(notesOf(sweep)).toEqual(["reference-assumed", "row-left-out@5"]);
  });
});

describe("the order of columns", () => {
  test("imaginary before real goes by name", () => {
    const rows = LOAD.map(({ frequencyHz, reflection: [real, imaginary] }) => `${imaginary},${frequencyHz},${real}`);
    const sweep = readOne(textOf("im(S11),Frequency (Hz),re(S11)", rows));
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(PLAIN);
  });

  test("S21 before S11 goes by name", () => {
    const rows = LOAD.map(({ frequencyHz, reflection }) => `${frequencyHz},0.9,0.1,${reflection.join(",")}`);
    expectLoad(readOne(textOf("Frequency (Hz),re(S21),im(S21),re(S11),im(S11)", rows)));
  });

  test("several devices side by side are refused with the option, and exact with it", () => {
    const rows = LOAD.map(({ frequencyHz, reflection }) => `${frequencyHz},0.9,0.1,${reflection.join(",")}`);
    const text = textOf("Frequency (Hz),re(S11),im(S11),re(S11),im(S11)", rows);
    expectRefusal(text, {
      code: "ambiguous",
      says: /both hold reflection real\. Say which counts, such as --columns frequency:Hz,real,imaginary,skip,skip/,
    });
    expectLoad(readOne(text, { columns: parseColumnRoles("frequency:Hz,skip,skip,real,imaginary") }));
  });
});

describe("companion files, one part each", () => {
  const part = (header: string, cell: (index: number) => number) =>
    textOf(
      `Frequency (MHz),${header}`,
      LOAD.map(({ mhz }, i) => `${mhz},${cell(i)}`),
    );
  const at = (index: number) => present(LOAD[index], "the point");
  const angle = ([real, imaginary]: readonly [number, number]) => (Math.atan2(imaginary, real) * 180) / Math.PI;
  const together = (...texts: readonly string[]) =>
    readCompanions(texts.map((text, i) => ({ bytes: bytesOf(text), fileName: `part-${i + 1}.csv` })));

  test.each([
    ["re(S11)", "im(S11)", (i: number) => at(i).reflection[0], (i: number) => at(i).reflection[1]],
    [
      "S11 (dB)",
      "S11 Phase (deg)",
      (i: number) => 20 * Math.log10(Math.hypot(...at(i).reflection)),
      (i: number) => angle(at(i).reflection),
    ],
    ["|Z| (Ohm)", "Phase (deg)", (i: number) => Math.hypot(...at(i).ohms), (i: number) => angle(at(i).ohms)],
    ["R", "X", (i: number) => at(i).ohms[0], (i: number) => at(i).ohms[1]],
  ])("%s and %s, in either order", (firstHeader, secondHeader, first, second) => {
    const parts = [part(firstHeader, first), part(secondHeader, second)];
    for (const texts of [parts, [...parts].reverse()]) {
      const [sweep, ...others] = together(...texts);
      expect(others).toEqual([]);
      expectLoad(present(sweep, "the sweep"), { tolerance: ROUNDING });
      expect(notesOf(present(sweep, "the sweep"))).toEqual(["companion-files", "reference-assumed"]);
      expect(sweep?.label).toBe("part-1.csv+part-2.csv");
    }
  });

  test("of other frequencies are refused", () => {
    const shifted = part("X", (i) => at(i).ohms[1]).replace("7.05", "7.06");
    expect(() =>
      together(
        part("R", (i) => at(i).ohms[0]),
        shifted,
      ),
    ).toThrow(/^part-2\.csv: its frequencies are not those of part-1\.csv; .*Export both parts from the same sweep\.$/);
  });

  test("one of them alone is refused, and the other way is named", () => {
    expectRefusal(
      part("re(S11)", (i) => at(i).reflection[0]),
      { code: "no-reflection", says: /name two files with \+ between them/ },
    );
  });
});

describe("several sweeps or bands in one file", () => {
  const SWR = "Frequency (MHz),SWR";

  test("two sweeps stacked are two sweeps", () => {
    const other = SWR_LOAD.map(({ mhz }) => `${mhz},3`);
    const [first, second, ...rest] = readAll(textOf(SWR, SWR_ROWS, other), { fileName: "mooring.csv" });
    expect(rest).toEqual([]);
    expectMagnitudes(present(first, "the first"));
    expectMagnitudes(
      present(second, "the second"),
      SWR_LOAD.map((point) => ({ ...point, rho: 0.5 })),
    );
    expect([first?.label, second?.label]).toEqual(["mooring.csv (sweep 1 of 2)", "mooring.csv (sweep 2 of 2)"]);
  });

  test("bands one after the other, in any order, are one sweep with gaps", () => {
    const twenty = SWR_LOAD.map(({ swr }, i) => ({ frequencyHz: 14_000_000 + i * 50_000, swr, rho: 1 / 2 }));
    const rows = twenty.map(({ frequencyHz }) => `${frequencyHz / 1e6},3`);
    const sweep = readOne(textOf(SWR, rows, SWR_ROWS));
    expectMagnitudes(sweep, [...SWR_LOAD, ...twenty]);
    expect(notesOf(sweep)).toEqual(PLAIN);
  });

  test("readings of one frequency are averaged as reflections, and that is said", () => {
    const sweep = readOne(textOf(SWR, "7,3", "7.1,9", "7.1,4", "7.2,1.5"));
    expectMagnitudes(sweep, [
      { frequencyHz: 7_000_000, rho: 0.5 },
      { frequencyHz: 7_100_000, rho: 0.7 },
      { frequencyHz: 7_200_000, rho: 0.2 },
    ]);
    expect(notesOf(sweep)).toEqual(["frequency-repeated@4", "reference-assumed"]);
    expect(messageOf(sweep, "frequency-repeated")).toMatch(/1 frequency occurs more than once/);
  });
});
