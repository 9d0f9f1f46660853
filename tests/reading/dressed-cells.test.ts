/** Units and marks between thousands that stand in the cells beside the numbers. Files and numbers invented. */
import {
  parseColumnRoles,
  ReadError,
  type ReadOptions,
  readSweeps,
  sampleImpedance,
  type VectorSweep,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { present } from "../support/sweeps.js";

const read = (lines: readonly string[], options: ReadOptions = {}, end = "\n") => {
  const bytes = new TextEncoder().encode([...lines, ""].join(end));
  return present(readSweeps(bytes, { fileName: "invented.csv", ...options })[0], "sweep");
};
const swrOf = (rho: number) => (1 + rho) / (1 - rho);
const readingsOf = (lines: readonly string[], options?: ReadOptions, end?: string) => {
  const sweep = read(lines, options, end);
  return Array.from(sweep.frequencyHz, (hz, i) => [
    hz,
    Number(swrOf(sweep.reflectionMagnitude[i] as number).toFixed(9)),
  ]);
};
const codesOf = (lines: readonly string[], options?: ReadOptions) =>
  read(lines, options).findings.map(({ code }) => code);
function refusalOf(lines: readonly string[], options?: ReadOptions): ReadError {
  try {
    read(lines, options);
  } catch (error) {
    if (error instanceof ReadError) return error;
    throw error;
  }
  throw new Error("was read");
}

const EXPECTED = [
  [6_500_000, 2.5],
  [6_600_000, 2.1],
  [6_700_000, 1.8],
];

describe.each(["\n", "\r\n"])("with line ends %j", (end) => {
  test.each([
    ["points, decimal comma", ["Frequency (Hz);SWR", "6.500.000;2,5", "6.600.000;2,1", "6.700.000;1,8"]],
    [
      "points, other numbers with a decimal point",
      ["Frequency;SWR", "6.500.000;2.5", "6.600.000;2.1", "6.700.000;1.8"],
    ],
    ["commas in quotes", ["Frequency (Hz),SWR", '"6,500,000",2.5', '"6,600,000",2.1', '"6,700,000",1.8']],
    ["commas between semicolons", ["Frequency (Hz);SWR", "6,500,000;2.5", "6,600,000;2.1", "6,700,000;1.8"]],
    ["apostrophes", ["Frequency (Hz),SWR", "6'500'000,2.5", "6'600'000,2.1", "6'700'000,1.8"]],
    ["blanks between tabs", ["Frequency (Hz)\tSWR", "6 500 000\t2.5", "6 600 000\t2.1", "6 700 000\t1.8"]],
    ["narrow blanks", ["Frequency (kHz);SWR", "6\u202f500;2,5", "6\u202f600;2,1", "6\u202f700;1,8"]],
    ["a unit", ["Frequency,SWR", "6.5 MHz,2.5", "6.6 MHz,2.1", "6.7 MHz,1.8"]],
    ["a unit without a blank, a ratio", ["Frequency,SWR", "6500kHz,2.5:1", "6600kHz,2.1:1", "6700kHz,1.8:1"]],
    ["a unit between blanks", ["f SWR", "6.5 MHz 2.5", "6.6 MHz 2.1", "6.7 MHz 1.8"]],
    ["units that change", ["Frequency;SWR", "0,0065 GHz;2,5", "6600 kHz;2,1", "6,7 MHz;1,8"]],
    ["a unit behind marked thousands", ["Frequency;SWR", "6.500.000 Hz;2,5", "6.600.000 Hz;2,1", "6.700.000 Hz;1,8"]],
    ["a comment at the end", ["f (MHz),SWR", "6.5,2.5", "6.6,2.1", "6.7,1.8", "# against 50 ohm"]],
  ])("%s", (_, lines) => {
    expect(readingsOf(lines, {}, end)).toEqual(EXPECTED);
  });
});

test("a column whose numbers grow beyond a million counts as marked from its first row on", () => {
  const lines = ["Frequency (Hz);SWR", "950.000;2,5", "1.000.000;2,1", "1.050.000;1,8"];
  expect(readingsOf(lines).map(([hz]) => hz)).toEqual([950_000, 1_000_000, 1_050_000]);
});

test("what was taken out of the cells is said", () => {
  expect(codesOf(["f;SWR", "6.500.000 Hz;2,5", "6.600.000 Hz;2,1"]).slice(0, 2)).toEqual([
    "thousands-marked",
    "units-in-cells",
  ]);
});

test("units of resistance are brought to that of the column's name, or else of its first row", () => {
  const bare = ["f (MHz),R,X", "7.0,900 ohm,-0.5 kΩ", "7.1,1.2 kohm,-300 Ω"];
  const stated = ["f (MHz),R (kohm),X (ohm)", "7.0,900 ohm,-0.5 kΩ", "7.1,1.2 kohm,-300 Ω"];
  for (const lines of [bare, stated]) {
    const sweep = read(lines) as VectorSweep;
    expect(sampleImpedance(sweep, 0).real).toBeCloseTo(900, 9);
    expect(sampleImpedance(sweep, 0).imaginary).toBeCloseTo(-500, 9);
    expect(sampleImpedance(sweep, 1).real).toBeCloseTo(1200, 9);
    expect(sampleImpedance(sweep, 1).imaginary).toBeCloseTo(-300, 9);
  }
});

test("decibels and degrees name what their columns hold", () => {
  const sweep = read(["Frequency,S11,Phase", "7.0 MHz,-20 dB,90°", "7.1 MHz,-14 dB,45°"]) as VectorSweep;
  expect(sweep.kind).toBe("vector");
  expect(sweep.reflectionMagnitude[0]).toBeCloseTo(0.1, 12);
  expect(sweep.reflectionImaginary[0]).toBeCloseTo(0.1, 12);
});

test("the cells' own unit counts before the one that is given", () => {
  const lines = ["Frequency,SWR", "6.5 MHz,2.5", "6.6 MHz,2.1", "6.7 MHz,1.8"];
  expect(readingsOf(lines, { frequencyUnit: "kHz" })).toEqual(EXPECTED);
  expect(codesOf(lines, { frequencyUnit: "kHz" })).toContain("unit-stated");
  expect(codesOf(lines, { frequencyUnit: "MHz" })).not.toContain("unit-stated");
});

test("without a header the user's word for the columns is enough", () => {
  const lines = ["6.5 MHz,2.5", "6.6 MHz,2.1", "6.7 MHz,1.8"];
  expect(readingsOf(lines, { columns: parseColumnRoles("frequency,swr") })).toEqual(EXPECTED);
});

test("a row that is off the scale, or empty, is no reason to give up", () => {
  const lines = ["Frequency;SWR", "6,5 MHz;> 9,9", "6,6 MHz;2,1", "6,7 MHz;---", "6,8 MHz;1,8"];
  const sweep = read(lines);
  expect([...sweep.frequencyHz]).toEqual([6_500_000, 6_600_000, 6_800_000]);
});

describe("a mark that may be that of thousands or of fractions", () => {
  const lines = ["Frequency (Hz);R;X", "6.500.000;1.523;-4", "6.600.000;1.412;5", "6.700.000;1.301;9"];
  test("is refused", () => {
    const { code, message } = refusalOf(lines);
    expect(code).toBe("ambiguous");
    expect(message).toContain(
      '"1.523", beside thousands marked with ".", may be a fraction or a number above a thousand',
    );
    expect(message).toContain("--decimal point or --decimal comma");
  });
  test.each([
    ["point", 1.523],
    ["comma", 1523],
  ] as const)("is settled by --decimal %s", (decimal, ohms) => {
    expect(sampleImpedance(read(lines, { decimal }) as VectorSweep, 0).real).toBeCloseTo(ohms, 9);
  });
});

test("a row whose marks are not those of thousands is blamed", () => {
  const { code, problem, message } = refusalOf([
    "f (Hz);SWR",
    "6.500.000;2,5",
    "6.600.50;2,1",
    "6.700.000;1,8",
    "950.5;2,5",
  ]);
  expect(code).toBe("bad-row");
  expect(problem.line).toBe(5);
  expect(message).toContain('"950.5" in a column whose thousands are marked with "."');
});

test("a line with a unit of its own says nothing about numbers without one", () => {
  const lines = ["Frequency (kHz),SWR", "6500,2.5", "6600,2.1", "6700,1.8", "7.1 MHz,1.5"];
  expect(readingsOf(lines)).toEqual(EXPECTED);
  expect(codesOf(lines)).toContain("row-without-number");
});

test("words that every object knows are no units", () => {
  expect(readingsOf(["Frequency (MHz),SWR,constructor", "6.5,2.5,1 deg", "6.6,2.1,2 deg", "6.7,1.8,3 deg"])).toEqual(
    EXPECTED,
  );
});

test("blanks that split columns beside a decimal comma mark no thousands", () => {
  const lines = ["Frequency(kHz) R X", "6500,000 100,00 -10,00", "6600,500 100,00 100,00"];
  const sweep = read(lines) as VectorSweep;
  expect([...sweep.frequencyHz]).toEqual([6_500_000, 6_600_500]);
  expect(sampleImpedance(sweep, 1).imaginary).toBeCloseTo(100, 9);
});
