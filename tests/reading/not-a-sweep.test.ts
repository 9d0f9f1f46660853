/** What looks like a sweep and is none: refused in one sentence or two, or read with its doubt stated; never in silence. */
import { describe, expect, test } from "vitest";
import {
  bytesOf,
  expectMagnitudes,
  expectRefusal,
  latin1Of,
  notesOf,
  RI_ROWS,
  RX_ROWS,
  readOne,
  SWR_LOAD,
  SWR_ROWS,
  textOf,
} from "../support/known-load.js";

/** Rows of frequency in MHz and levels such as a transmission or a spectrum has. */
const LEVELS = SWR_LOAD.map(({ mhz }, i) => `${mhz},${-40 - i}.5`);
const PAIRS = SWR_LOAD.map(({ mhz }, i) => `${mhz},${40 + i}.5,${i - 3}`);

describe("transmission", () => {
  test.each(["S21 (dB)", "S12 (dB)", "dB of S21", "S21 in dB", "S_21 (dB)", "S2,1 (dB)"])("%s is refused", (header) => {
    expectRefusal(textOf(`Frequency (MHz),"${header}"`, LEVELS), {
      code: "not-a-reflection-sweep",
      says: /hold transmission \(S21 or S12\); expected a reflection.*Export S11/,
    });
  });

  test.each(["Meas Type,S21", "! DATA Freq,S21", "Measurement: S12", "Parameter,S21"])(
    "%j in the preamble refuses columns of R and X",
    (line) => {
      expectRefusal(textOf(line, "Format,Smith,R+jX", "Frequency (MHz),R,X", RX_ROWS), {
        code: "not-a-reflection-sweep",
        says: /the preamble says that the file holds transmission.*Export S11/,
      });
    },
  );
});

describe("other things than a reflection", () => {
  test.each([
    ["spectrum", "Level (dBm)"],
    ["spectrum", "Amplitude (dBuV)"],
    ["spectrum", "dBm"],
    ["spectrum", "Noise floor (dB)"],
    ["gain", "Gain (dB)"],
    ["gain", "Gain (dBi)"],
    ["loss", "Insertion loss (dB)"],
    ["loss", "Cable loss (dB)"],
    ["loss", "Attenuation (dB)"],
    ["loss", "Reflection loss (dB)"],
    ["another port", "S22 (dB)"],
    ["power", "Power (W)"],
    ["a coupler", "Directivity (dB)"],
    ["delay", "Group delay (ns)"],
  ])("%s: %s is refused", (_, header) => {
    expectRefusal(textOf(`Frequency (MHz),${header}`, LEVELS), {
      code: "no-reflection",
      says: /names no reading that gives a reflection; expected SWR, return loss, S11.*--columns frequency:MHz,(?:swr|return-loss)/,
    });
  });

  test.each(["eps real,eps imag", "mu real,mu imag", "permittivity,loss tangent", "re(V),im(V)", "I,Q", "L (uH),Q"])(
    "material and parts: %s is refused",
    (header) => {
      expectRefusal(textOf(`Frequency (MHz),${header}`, PAIRS), {
        code: "no-reflection",
        says: /names no reading that gives a reflection; expected SWR.*--columns/,
      });
    },
  );

  test.each([
    ["power", "Power (dBm),SWR"],
    ["time", "Time (s),SWR"],
    ["length", "Length (m),SWR"],
    ["wavelength", "Wavelength (m),SWR"],
    ["none that is named", "A,B"],
  ])("a sweep over %s is refused", (_, header) => {
    expectRefusal(textOf(header, SWR_ROWS), {
      code: "no-frequency",
      line: 2,
      says: /does not name a frequency and a reading.*say what the 2 columns hold, such as --columns/,
    });
  });

  test.each([
    ["spectrum", LEVELS],
    ["impedance", RX_ROWS],
    ["reflection", RI_ROWS],
  ])("numbers of a %s without a header are refused", (_, rows) => {
    expectRefusal(textOf(rows), { code: "no-frequency", line: 1, says: /no header says what they are.*--columns/ });
  });

  test("a part without a subject, too large for a reflection, is refused", () => {
    expectRefusal(textOf("Frequency (MHz),real,imag", PAIRS), {
      code: "ambiguous",
      says: /too large for a reflection.*--columns frequency:MHz,r,x/,
    });
  });

  test("a part without a subject, small enough for a reflection, is read with its doubt stated", () => {
    const rows = SWR_LOAD.map(({ mhz, rho }) => `${mhz},${rho}`);
    const sweep = readOne(textOf("Frequency (MHz),Magnitude", rows));
    expectMagnitudes(sweep);
    expect(notesOf(sweep)).toEqual(["reference-assumed", "reflection-assumed"]);
  });
});

describe("a header that commas split is not split at its blanks as well", () => {
  test.each(["Gain dB", "Level dB", "Limit SWR", "Modelled SWR"])(
    "%s keeps the word that makes it no reading of the antenna",
    (name) => {
      const rows = name.endsWith("SWR") ? SWR_ROWS : LEVELS;
      expectRefusal(textOf(`Frequency (MHz),${name}`, rows), {
        code: "no-reflection",
        says: /names no reading that gives a reflection/,
      });
    },
  );
});

describe("units of frequency that are not known", () => {
  test.each(["THz", "rad/s", "m"])("Frequency (%s) is not replaced by a guess", (unit) => {
    const rows = SWR_LOAD.map(({ swr }, i) => `${14 + i},${swr}`);
    expectRefusal(textOf(`Frequency (${unit}),SWR`, rows), { code: "ambiguous", says: /--unit/ });
  });
});

describe("Touchstone text without what it needs", () => {
  test("no option line: the line it is missing at is named", () => {
    expectRefusal(
      textOf("! at the lock", RI_ROWS),
      {
        code: "bad-option-line",
        line: 2,
        says: /before any option line; expected a line such as # MHz S RI R 50.*add the line/,
      },
      { fileName: "mooring.s1p" },
    );
  });

  test("mixed mode is refused at its line", () => {
    const header = ["[Version] 2.0", "# MHz S RI R 50", "[Number of Ports] 2", "[Mixed-Mode Order] D1,2 C1,2"];
    expectRefusal(textOf(header, "[Network Data]", "7 0 0 0 0 0 0 0 0"), {
      code: "not-a-reflection-sweep",
      line: 4,
      says: /mixed-mode parameters.*Export the single-ended parameters instead/,
    });
  });

  test.each(["H", "G"])("%s parameters of one port are refused", (parameter) => {
    expectRefusal(textOf(`# MHz ${parameter} RI R 50`, RI_ROWS), {
      code: "bad-option-line",
      line: 1,
      says: /of a 1-port; expected H and G with two ports only/,
    });
  });

  test("an option line alone is no data", () => {
    expectRefusal(textOf("# MHz S RI R 50"), { code: "no-data", says: /expected data after the option line/ });
  });

  test("values that are all practically zero are a placeholder, and that is said", () => {
    const sweep = readOne(textOf("# MHz S DB R 50", "7 -200 45", "7.1 -200 45", "7.2 -200 45"));
    expect(notesOf(sweep)).toEqual(["placeholder-values@1"]);
  });
});

describe("files that are no text", () => {
  const MAKE_TEXT = /Export the sweep from the analyser as Touchstone \(\.s1p\) or CSV and read that/;

  test("an empty file", () => {
    expectRefusal("", { code: "empty", says: /empty \(0 bytes\).*Export the sweep/ });
  });

  test("nothing but zero bytes", () => {
    expectRefusal(new Uint8Array(64), { code: "empty", says: /nothing but zero bytes/ });
  });

  test.each<[string, readonly number[], RegExp]>([
    ["PNG picture", [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13], MAKE_TEXT],
    ["JPEG picture", [0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46], MAKE_TEXT],
    ["PDF document", [...bytesOf("%PDF-1.7\n"), 0, 1, 2, 3], MAKE_TEXT],
    ["ZIP archive", [0x50, 0x4b, 3, 4, 20, 0, 8, 0], /Unpack it, or save the sheet as CSV/],
    ["gzip archive", [0x1f, 0x8b, 8, 0, 0, 0, 0, 0], /Unpack it first/],
  ])("a %s is called by its name", (what, bytes, says) => {
    expectRefusal(Uint8Array.from(bytes), {
      code: "not-text",
      says: new RegExp(`this is an? ${what}.*${says.source}`),
    });
  });

  test("other binary data", () => {
    const bytes = Uint8Array.from({ length: 3000 }, (_, i) => (i * 167 + (i >> 3) * 29) % 256);
    expectRefusal(bytes, { code: "not-text", says: new RegExp(`not a text file.*${MAKE_TEXT.source}`) });
  });

  test.each([
    ["blank lines", "\n\n  \n\t\n"],
    ["prose", "The wire sags between the mooring posts.\nIt was windy.\n"],
    ["prose with numbers", "We left lock 7 at 10.\nThe wire is 20 m long, at 45 degrees.\n"],
    ["markup", "<html><body><p>7.1 MHz</p></body></html>\n"],
  ])("%s: no columns of numbers", (_, text) => {
    expectRefusal(text, { code: "no-data", says: /no two columns of numbers.*Export the sweep as Touchstone/ });
  });
});

describe("too little", () => {
  test("a header alone is refused", () => {
    expectRefusal("Frequency (MHz),SWR\n", {
      code: "no-data",
      says: /no two columns of numbers.*as CSV with a header line/,
    });
  });

  test("a single row is read, and its weakness said", () => {
    const sweep = readOne("Frequency (MHz),SWR\n7.1,1.5\n");
    expectMagnitudes(sweep, [{ frequencyHz: 7_100_000, rho: 0.2 }]);
    expect(notesOf(sweep)).toEqual(["reference-assumed", "single-point"]);
  });

  test("rows at 0 Hz alone are refused", () => {
    expectRefusal(textOf("# MHz S RI R 50", "0 1 0"), { code: "no-data", says: /no row has a frequency above 0 Hz/ });
  });
});

test("what stands in a message is made printable", () => {
  const text = latin1Of(`# MHz S \u0007\u001b[31mRI\u0085 R 50\n${"7 0.5 0\n".repeat(20)}`);
  expectRefusal(text, { code: "bad-option-line", line: 1, says: /^[^\p{Cc}\p{Cf}]*$/u });
});

test("a file name with a line end in it still gives a message of one line", () => {
  expect(() => readOne("no sweep at all\n", { fileName: "mooring\n2.csv" })).toThrow(/^mooring·2\.csv: [^\n]*$/);
});
