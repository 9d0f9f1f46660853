/** Files as instruments, spreadsheets and scripts write them, which a reader may take for something else. All invented. */
import { readSweeps, type Sweep, sampleImpedance, type VectorSweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import {
  bytesOf,
  expectLoad,
  expectMagnitudes,
  expectRefusal,
  LOAD,
  messageOf,
  notesOf,
  RI_ROWS,
  ROUNDING,
  RX_ROWS,
  readAll,
  readOne,
  SWR_LOAD,
  SWR_ROWS,
  textOf,
} from "../support/known-load.js";

describe("names that say a little more", () => {
  test.each([["R//,X//"], ["R \u2225,X \u2225"], ["R\u2016,X\u2016"], ["||R,||X"], ["Rp||,Xp||"], ["Rp,Xp"]])(
    "%s are parallel",
    (names) => {
      // 1 / (1/100 - 1/(-100j)) = 50 - 50j at 7 MHz, by hand.
      const sweep = readOne(textOf(`Freq (MHz),${names}`, "7,100,-100", "7.1,100,-50", "7.2,100,50")) as VectorSweep;
      expect(sampleImpedance(sweep, 0).real).toBeCloseTo(50, 9);
      expect(sampleImpedance(sweep, 0).imaginary).toBeCloseTo(-50, 9);
    },
  );

  test.each(["|S11|^3", "|Z|^2", "-X"])("%s is no reading", (name) => {
    expectRefusal(textOf(`Freq (MHz),${name}`, "7,0.2", "7.1,0.1", "7.2,0.3"), {
      code: "no-reflection",
      says: /names no reading that gives a reflection/,
    });
  });

  test.each([
    ["R,jX", "50,-50", "R and X"],
    ["R_s,X_s", "50,-50", "R and X"],
    ["Rin,Xin", "50,-50", "R and X"],
    ["Zre,Zim", "50,-50", "R and X"],
    ["real(Zin),imag(Zin)", "50,-50", "R and X"],
    ["Zmag,Zphase", "70.710678,-45", "|Z| and its angle"],
    ["G (\u00b5S),B (\u00b5S)", "10000,10000", "G and B"],
    ["V.S.W.R.", "2.6180339887", "SWR"],
    ["Voltage standing wave ratio", "2.6180339887", "SWR"],
    ["Ret. Loss", "6.9897", "return loss"],
    ["R.L.", "6.9897", "return loss"],
    ["S\u2081\u2081 (dB)", "-6.9897", "S11 in dB"],
    ["20log|S11|", "-6.9897", "S11 in dB"],
    ["Voltage reflection coefficient", "0.4472136", "reflection magnitude"],
  ])("%s are %s, read from %s", (names, row, from) => {
    // 50 - 50j ohm at all three, |S11| = √0.2.
    const sweep = readOne(textOf(`Freq (MHz),${names}`, `7,${row}`, `7.1,${row}`, `7.2,${row}`));
    expect(sweep.source.description).toMatch(new RegExp(` from ${from.replaceAll("|", "\\|")}$`));
    expect(sweep.reflectionMagnitude[0]).toBeCloseTo(Math.sqrt(0.2), 5);
  });

  test("a share of the reflected power or per cent is for the user to say", () => {
    expectRefusal(textOf("Freq (MHz),Reflected power", "7,0.25", "7.1,0.04"), { code: "ambiguous", says: /per cent/ });
    const sweep = readOne(textOf("Freq (MHz),Reflected power", "7,25", "7.1,4"));
    expect([...sweep.reflectionMagnitude]).toEqual([0.5, 0.2]);
  });

  test("a frequency's sign may be glued to its unit", () => {
    expect([...readOne(textOf("fkHz,SWR", "7000,2", "7100,1.5")).frequencyHz]).toEqual([7e6, 7.1e6]);
  });

  test.each(["SWR 80 m", "SWR (20 m)", "VSWR 10", "vswr 200 points", "SWR 75 m"])(
    "%s mentions no impedance",
    (text) => {
      expect(notesOf(readOne(textOf(`# ${text}`, "Freq (MHz),SWR", SWR_ROWS)))).toEqual(["reference-assumed"]);
    },
  );

  test.each(["Reference: 75 ohm", "System 75 ohm", "SWR_75"])("%s is what the readings refer to", (text) => {
    expect(readOne(textOf(`# ${text}`, "Freq (MHz),SWR", SWR_ROWS)).referenceOhms).toBe(75);
  });
});

describe("rows that are not whole", () => {
  test("with an empty last cell at the start belong to the table", () => {
    const lines = RX_ROWS.map((row, i) => `${row},${i < 3 ? "" : 21}`);
    expectLoad(readOne(textOf("Freq (MHz),R,X,Temperature", lines)), { tolerance: ROUNDING });
  });

  test("with words after the others' last cell belong to it", () => {
    const lines = RX_ROWS.map((row, i) => `${row},${i < 2 ? "start" : ""}`);
    expectLoad(readOne(textOf("Freq (MHz),R,X,Note", lines)), { tolerance: ROUNDING });
  });

  test("with an empty last cell between tabs are no riddle", () => {
    const lines = RX_ROWS.map((row, i) => `${row.replaceAll(",", "\t")}\t${i < 1 ? "" : 21}`);
    expectLoad(readOne(textOf("Freq (MHz)\tR\tX\tTemp", lines)), { tolerance: ROUNDING });
  });

  test.each(["inf", "---", "over", "\u221e", "***", "?", ""])("with %j at the start belong to it too", (none) => {
    const sweep = readOne(
      textOf(
        "Freq (MHz);SWR",
        `6;${none}`,
        `6.5;${none}`,
        SWR_LOAD.map(({ mhz, swr }) => `${mhz};${swr}`),
      ),
    );
    expect(sweep.source.comments).toEqual([]);
    const isOffScale = ["inf", "over", "\u221e"].includes(none);
    expect(sweep.frequencyHz).toHaveLength(SWR_LOAD.length + (isOffScale ? 2 : 0));
    expect(notesOf(sweep)).toContain(isOffScale ? "saturated" : "row-without-number@2");
  });

  test("a named last column that is empty throughout, or nearly so, is no riddle", () => {
    for (const last of ["", "best"]) {
      const lines = SWR_ROWS.map((row, i) => `${row},${i === 3 ? last : ""}`);
      expectMagnitudes(readOne(textOf("Freq (MHz),SWR,Comment", lines)));
    }
  });

  test("that lack a cell between blanks are left out: which one is missing cannot be told", () => {
    const lines = LOAD.map(({ mhz, ohms: [r, x] }, i) => (i === 2 ? `${mhz}   ${x}   1.5` : `${mhz}  ${r}  ${x}  2`));
    const sweep = readOne(textOf("Freq(MHz)  R  X  SWR", lines));
    expect(sweep.frequencyHz).toHaveLength(LOAD.length - 1);
    expect(notesOf(sweep)).toContain("row-left-out@4");
  });
});

describe("a title that begins with a number", () => {
  test.each(["2026-05-01", "40m dipole 12 m high", "7.0 to 7.3 MHz, 7 points"])("%s", (title) => {
    expectLoad(readOne(textOf(title, "Freq (MHz),R,X", RX_ROWS)), { tolerance: ROUNDING });
  });
});

test("tabs are not taken for blanks where words stand beside the numbers", () => {
  const tabbed = SWR_ROWS.map((row) => row.replace(",", "\t"));
  expectMagnitudes(readOne(textOf("Freq(MHz)\tSWR", tabbed, "Points in all: 7")));
  expectMagnitudes(
    readOne(
      textOf(
        "Freq(MHz)\tSWR\tNote",
        tabbed.map((row) => `${row}\tlooks fine`),
      ),
    ),
  );
});

test("thousands do not pass for kHz with fractions, unless the user says so", () => {
  expectRefusal(textOf("Frequenz (kHz);SWR", "14.000;2.5", "14.350;1.5"), {
    code: "ambiguous",
    says: /frequencies up to 14350 Hz/,
  });
  const options = { decimal: "point" } as const;
  expect(readOne(textOf("Frequency (kHz);SWR", "14.000;2.5", "14.350;1.5"), options).frequencyHz[0]).toBe(14_000);
});

test("bands in any order are one sweep", () => {
  const band = (start: number) => Array.from({ length: 6 }, (_, i) => `${(start + i / 100).toFixed(2)},${2 + i / 10}`);
  const sweep = readOne(textOf("Freq (MHz),SWR", band(7), band(3.5), band(14)));
  expect(sweep.frequencyHz[0]).toBe(3.5e6);
  expect(sweep.frequencyHz).toHaveLength(18);
});

test("bands in any order, and a zoom into a coarse sweep, are told apart", () => {
  const stretch = (start: number, step: number, count: number) =>
    Array.from({ length: count }, (_, i) => `${(start + i * step).toFixed(2)},${2 + (i % 3)}`);
  const ofBands = readAll(textOf("Freq (MHz),SWR", ...[7, 14, 3.5, 10.1].map((start) => stretch(start, 0.01, 6))));
  expect(ofBands.map(({ frequencyHz }) => frequencyHz.length)).toEqual([24]);
  const zoomed = readAll(textOf("Freq (MHz),SWR", stretch(1, 1, 30), stretch(7.02, 0.01, 28)));
  expect(zoomed.map(({ frequencyHz }) => frequencyHz.length)).toEqual([30, 28]);
});

test("repeated readings that lie far apart are no repeated readings", () => {
  const lines = SWR_ROWS.flatMap((row) => [row, row.replace(/,.*/, ",9.9")]);
  expect(messageOf(readOne(textOf("Freq (MHz),SWR", lines)), "frequency-repeated")).toContain("far apart");
});

test("series that a column tells apart are sweeps of their own", () => {
  const lines = SWR_ROWS.flatMap((row) => [`high,${row}`, `low,${row.replace(/,.*/, ",9")}`]);
  const [high, low, ...more] = readAll(textOf("Antenna,Freq (MHz),SWR", lines));
  expect(more).toEqual([]);
  expectMagnitudes(high as Sweep);
  // ρ = (SWR - 1) / (SWR + 1)
  expect([...(low as Sweep).reflectionMagnitude]).toEqual(SWR_ROWS.map(() => expect.closeTo(0.8, 12)));
  expect(messageOf(high as Sweep, "series-told-apart")).toContain("2 series are told apart (high, low)");
});

describe("cells that are written a little otherwise", () => {
  test("quotes behind blanks", () => {
    const quoted = (row: string) =>
      row
        .split(",")
        .map((cell) => `"${cell}"`)
        .join(", ");
    expectLoad(readOne(textOf(quoted("Freq (MHz),R,X"), RX_ROWS.map(quoted))), { tolerance: ROUNDING });
  });

  test("an SWR as 1:1.5", () => {
    expectMagnitudes(
      readOne(
        textOf(
          "Freq (MHz);SWR",
          SWR_LOAD.map(({ mhz, swr }) => `${mhz};1:${swr}`),
        ),
      ),
    );
  });

  test.each(["2026-05-01", "12:10", "12:10:05.2", "2026-05-01 12:10", "2026-05-01T12:10:05Z"])(
    "%s in a column of its own",
    (when) => {
      expectLoad(
        readOne(
          textOf(
            "Freq (MHz),R,X,When",
            RX_ROWS.map((row) => `${row},${when}`),
          ),
        ),
        { tolerance: ROUNDING },
      );
      expectLoad(
        readOne(
          textOf(
            "When,Freq (MHz),R,X",
            RX_ROWS.map((row) => `${when},${row}`),
          ),
        ),
        { tolerance: ROUNDING },
      );
    },
  );

  test("a row of units with a dash for none", () => {
    const lines = LOAD.map(({ mhz, ohms: [r, x] }) => `${mhz},${r},${x},2`);
    expectLoad(readOne(textOf("Freq,R,X,Gain", "[MHz],[ohm],[ohm],[-]", lines)), { tolerance: ROUNDING });
  });
});

describe("Touchstone", () => {
  test("a title behind # stands above the option line", () => {
    const sweep = readOne(textOf("# Sweep of the wire over the cut", "# MHz S RI R 50", RI_ROWS));
    expectLoad(sweep);
    expect(sweep.source.comments).toEqual(["Sweep of the wire over the cut"]);
  });

  test("hybrid parameters of version 2 with two references", () => {
    /*
     * A shunt of 100 ohm behind a series of 50 ohm, seen from port 1 with 75 ohm at port 2: 50 + 100 · 75 / 175 = 92.857 ohm,
     * against 30 ohm: Γ = 62.857 / 122.857. H: h11 = 50, h12 = 1, h21 = -1, h22 = 1 / 100. By hand.
     */
    const [sweep] = readSweeps(
      bytesOf(
        textOf(
          "[Version] 2.0",
          "# MHz H RI R 50",
          "[Number of Ports] 2",
          "[Two-Port Data Order] 12_21",
          "[Number of Frequencies] 1",
          "[Reference] 30 75",
          "[Network Data]",
          "7 50 0 1 0 -1 0 0.01 0",
          "[End]",
        ),
      ),
      {},
    );
    expect(sweep?.reflectionMagnitude[0]).toBeCloseTo(62.857142857 / 122.857142857, 9);
  });
});
