/** Units and marks between thousands that stand in the cells beside the numbers. Files and numbers invented. */
import { parseColumnRoles, type ReadOptions, sampleImpedance, type VectorSweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { notesOf, readOne, textOf } from "../support/known-load.js";

const read = (lines: readonly string[], options?: ReadOptions) => readOne(textOf(lines), options);
const swrOf = (rho: number) => (1 + rho) / (1 - rho);
/** Frequency and SWR of each sample. */
const readingsOf = (text: string, options?: ReadOptions) => {
  const { frequencyHz, reflectionMagnitude } = readOne(text, options);
  return Array.from(frequencyHz, (hz, i) => [hz, Number(swrOf(reflectionMagnitude[i] as number).toFixed(9))]);
};
const frequenciesOf = (lines: readonly string[], options?: ReadOptions) => [...read(lines, options).frequencyHz];
/** Frequency, R and X of each sample. */
const impedancesOf = (lines: readonly string[], options?: ReadOptions) => {
  const sweep = read(lines, options) as VectorSweep;
  expect(sweep.kind).toBe("vector");
  return Array.from(sweep.frequencyHz, (hz, i) => {
    const { real, imaginary } = sampleImpedance(sweep, i);
    return [hz, Number(real.toFixed(6)), Number(imaginary.toFixed(6))];
  });
};

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
    ["blanks between semicolons", ["Frequency (Hz);SWR", "6 500 000;2.5", "6 600 000;2.1", "6 700 000;1.8"]],
    ["narrow blanks", ["Frequency (kHz);SWR", "6\u202f500;2,5", "6\u202f600;2,1", "6\u202f700;1,8"]],
    ["a unit", ["Frequency,SWR", "6.5 MHz,2.5", "6.6 MHz,2.1", "6.7 MHz,1.8"]],
    ["a unit without a blank, a ratio", ["Frequency,SWR", "6500kHz,2.5:1", "6600kHz,2.1:1", "6700kHz,1.8:1"]],
    ["a unit between blanks", ["f SWR", "6.5 MHz 2.5", "6.6 MHz 2.1", "6.7 MHz 1.8"]],
    ["units that change", ["Frequency;SWR", "0,0065 GHz;2,5", "6600 kHz;2,1", "6,7 MHz;1,8"]],
    ["a unit behind marked thousands", ["Frequency;SWR", "6.500.000 Hz;2,5", "6.600.000 Hz;2,1", "6.700.000 Hz;1,8"]],
    ["a comment at the end", ["f (MHz),SWR", "6.5,2.5", "6.6,2.1", "6.7,1.8", "# against 50 ohm"]],
  ])("%s", (_, lines) => {
    expect(readingsOf(textOf(lines).replaceAll("\n", end))).toEqual(EXPECTED);
  });
});

test("a column whose numbers grow beyond a million counts as marked from its first row on", () => {
  const lines = ["Frequency (Hz);SWR", "950.000;2,5", "1.000.000;2,1", "1.050.000;1,8"];
  expect(frequenciesOf(lines)).toEqual([950_000, 1_000_000, 1_050_000]);
});

test("what was taken out of the cells is said", () => {
  const lines = ["f;SWR", "6.500.000 Hz;2,5", "6.600.000 Hz;2,1"];
  expect(notesOf(read(lines))).toEqual(["reference-assumed", "thousands-marked", "units-in-cells"]);
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
  expect(readingsOf(textOf(lines), { frequencyUnit: "kHz" })).toEqual(EXPECTED);
  expect(notesOf(read(lines, { frequencyUnit: "kHz" }))).toEqual([
    "reference-assumed",
    "unit-stated",
    "units-in-cells",
  ]);
  expect(notesOf(read(lines, { frequencyUnit: "MHz" }))).toEqual(["reference-assumed", "units-in-cells"]);
});

test("without a header the user's word for the columns is enough", () => {
  const lines = ["6.5 MHz,2.5", "6.6 MHz,2.1", "6.7 MHz,1.8"];
  expect(readingsOf(textOf(lines), { columns: parseColumnRoles("frequency,swr") })).toEqual(EXPECTED);
});

test("a row that is off the scale, or empty, is no reason to give up", () => {
  const lines = ["Frequency;SWR", "6,5 MHz;> 9,9", "6,6 MHz;2,1", "6,7 MHz;---", "6,8 MHz;1,8"];
  const sweep = read(lines);
  expect([...sweep.frequencyHz]).toEqual([6_500_000, 6_600_000, 6_800_000]);
});

test.each([
  ["point", 1.523],
  ["comma", 1523],
] as const)("a mark that may be that of thousands or of fractions is settled by --decimal %s", (decimal, ohms) => {
  const lines = ["Frequency (Hz);R;X", "6.500.000;1.523;-4", "6.600.000;1.412;5", "6.700.000;1.301;9"];
  expect(impedancesOf(lines, { decimal })[0]).toEqual([6_500_000, ohms, -4]);
});

test("a line with a unit of its own says nothing about numbers without one", () => {
  const lines = ["Frequency (kHz),SWR", "6500,2.5", "6600,2.1", "6700,1.8", "7.1 MHz,1.5"];
  expect(readingsOf(textOf(lines))).toEqual(EXPECTED);
  expect(notesOf(read(lines))).toEqual(["reference-assumed", "row-without-number@5"]);
});

test("words that every object knows are no units", () => {
  expect(
    readingsOf(textOf(["Frequency (MHz),SWR,constructor", "6.5,2.5,1 deg", "6.6,2.1,2 deg", "6.7,1.8,3 deg"])),
  ).toEqual(EXPECTED);
});

test("blanks that split columns beside a decimal comma mark no thousands", () => {
  const lines = ["Frequency(kHz) R X", "6500,000 100,00 -10,00", "6600,500 100,00 100,00"];
  const sweep = read(lines) as VectorSweep;
  expect([...sweep.frequencyHz]).toEqual([6_500_000, 6_600_500]);
  expect(sampleImpedance(sweep, 1).imaginary).toBeCloseTo(100, 9);
});

describe("units belong to their own column", () => {
  const PLAIN = ["Frequency (MHz),SWR,Note", "7.0,2.5,start", "7.1,1.2,best", "7.2,1.8,50 kHz", "7.3,2.2,end"];
  test("a note with a frequency changes none", () => {
    expect(frequenciesOf(PLAIN)).toEqual([7e6, 7.1e6, 7.2e6, 7.3e6]);
  });

  test.each([
    ["a footer of another width", ["Frequency (kHz),SWR,Run", "6500,2.5,7", "6600,2.1,8", "6700,1.8,9", "7.1 MHz,1.2"]],
    ["a footer split otherwise", ["Frequency (kHz),SWR", "6500,2.5", "6600,2.1", "6700,1.8", "7.1 MHz 1.2"]],
    ["a footer with a unit", ["Frequency (kHz),SWR", "6500,2.5", "6600,2.1", "6700,1.8", "", "7100 kHz,1.2"]],
  ])("%s does not change the table", (_, lines) => {
    expect(readingsOf(textOf(lines))).toEqual(EXPECTED);
  });
});

describe("the unit that a column's name means counts, whatever the cells have", () => {
  test.each([
    ["names without unit", "f   R   X"],
    ["ohms", "f(MHz)   R(ohm)   X(ohm)"],
    ["kiloohms", "f(MHz)   R(kohms)   X(kohms)"],
  ])("%s", (_, header) => {
    expect(impedancesOf([header, "7.0 MHz   1.2 kohm   0.3 kohm", "7.1 MHz   950 ohm   -120 ohm"])).toEqual([
      [7e6, 1200, 300],
      [7.1e6, 950, -120],
    ]);
  });

  test("the user's word for the columns takes the units of the cells", () => {
    const lines = ["7.0 MHz,1.2 kohm,-0.5 kohm", "7.1 MHz,0.9 kohm,-0.3 kohm"];
    expect(impedancesOf(lines, { columns: parseColumnRoles("frequency,r,x") })).toEqual([
      [7e6, 1200, -500],
      [7.1e6, 900, -300],
    ]);
    const polar = read(["7.0 MHz,-20 dB,1.57 rad", "7.1 MHz,-14 dB,-0.78 rad"], {
      columns: parseColumnRoles("frequency,s11-db,angle"),
    }) as VectorSweep;
    expect(polar.reflectionImaginary[0]).toBeCloseTo(0.1 * Math.sin(1.57), 12);
    const percent = read(["7.0 MHz,30 %", "7.1 MHz,20 %"], { columns: parseColumnRoles("frequency,rho") });
    expect(percent.reflectionMagnitude[0]).toBeCloseTo(0.3, 12);
  });
});

test("marked thousands on both sides of a comment are read alike", () => {
  const lines = [
    "Frequency (Hz);SWR",
    "900.000;2.7",
    "950.000;2.5",
    "# upper half",
    "1.000.000;2.1",
    "",
    "1.050.000;1.8",
  ];
  expect(frequenciesOf(lines)).toEqual([900_000, 950_000, 1_000_000, 1_050_000]);
});

test("one mark is enough where another stands before decimals", () => {
  const lines = ["Frequenz (Hz);R;X", "7.000.000;998,5;-20,1", "7.100.000;1.012,5;-30,2", "7.200.000;1.100,1;10,1"];
  expect(impedancesOf(lines).map(([, r]) => r)).toEqual([998.5, 1012.5, 1100.1]);
});

test("a stray character above the table does no harm", () => {
  const rows = Array.from({ length: 60 }, (_, i) => `${(7 + i / 100).toFixed(3)} MHz,${(1.5 + i / 50).toFixed(2)}`);
  expect(frequenciesOf(["\0cal", "Frequency,SWR", ...rows])).toEqual(rows.map((_, i) => 7_000_000 + i * 10_000));
});

test("marks behind a minus sign of its own are settled by --decimal", () => {
  const lines = ["Frequency (Hz);R;X", "7.000.000;50;−1.523", "7.100.000;51;−1.412", "7.200.000;52;1.301"];
  expect(impedancesOf(lines, { decimal: "comma" }).map(([, , x]) => x)).toEqual([-1523, -1412, 1301]);
  expect(impedancesOf(lines, { decimal: "point" }).map(([, , x]) => x)).toEqual([-1.523, -1.412, 1.301]);
});

test.each([
  ["blanks and a tab", ["f R X\tSWR", "144 100 200\t10.4", "145 110 -150\t6.6", "146 120 100\t4.2"]],
  [
    "a unit in brackets",
    ["Frequency (MHz) R\tX\tSWR", "144 100\t200\t10.4", "145 110\t-150\t6.6", "146 120\t100\t4.2"],
  ],
  ["commas and a tab at the end", ["f,R,X\t", "144,100,200\t", "145,110,-150\t", "146,120,100\t"]],
])("whole numbers in columns are no marked thousands: %s", (_, lines) => {
  expect(impedancesOf(lines)).toEqual([
    [144e6, 100, 200],
    [145e6, 110, -150],
    [146e6, 120, 100],
  ]);
});

test("the unit of another column of frequencies does not take the place of the one that is given", () => {
  const lines = ["Frequency,Start frequency,SWR", "475,0.472 MHz,2.5", "477,0.472 MHz,2.1", "479,0.472 MHz,1.8"];
  expect(frequenciesOf(lines, { frequencyUnit: "kHz" })).toEqual([475_000, 477_000, 479_000]);
});

test("a Ctrl-Z at the end is the end", () => {
  const text = textOf("Frequency,SWR", "6.5 MHz,2.5", "6.6 MHz,2.1", "6.7 MHz,1.8", "\u001a");
  expect(readingsOf(text.replaceAll("\n", "\r\n"))).toEqual(EXPECTED);
});

test("degrees beside the angles leave no doubt of their unit", () => {
  const lines = ["Frequency,Phase,S11", "7.0 MHz,1°,-20 dB", "7.1 MHz,2°,-14 dB"];
  expect(notesOf(read(lines))).toEqual(["reference-assumed", "units-in-cells"]);
});

test("what may be thousands is settled by --decimal", () => {
  const lines = ["Frequency;SWR", "14.100 kHz;2", "14.200 kHz;3"];
  expect(frequenciesOf(lines, { decimal: "comma" })).toEqual([14_100_000, 14_200_000]);
  expect(frequenciesOf(lines, { decimal: "point" })).toEqual([14_100, 14_200]);
});

test("nought before a mark leaves no doubt", () => {
  const lines = ["Frequency;rho", "14.100.000 Hz;0.333", "14.200.000 Hz;0.300"];
  expect([...read(lines).reflectionMagnitude]).toEqual([0.333, 0.3]);
});

test("letters like those of a unit in a plain text are none", () => {
  const lines = ["Frequency,SWR,Trace", "6500,2.5,HZ-2", "6600,2.1,HZ-2", "6700,1.8,HZ-2"];
  expect(readingsOf(textOf(lines))).toEqual(EXPECTED);
});

describe("units in cells where the header has others, or another table has them", () => {
  test.each([
    [
      "a column of resonances",
      ["Frequency (Hz),R,X,Resonance", "7000000,50.5,-12,7.1 MHz", "7100000,51.1,0.3,7.1 MHz"],
    ],
    [
      "a row of units above the header",
      ["MHz;kOhm;kOhm", "Frequency;R;X", "7,0 MHz;50.5 ohm;-12 ohm", "7,1 MHz;51.1 ohm;0.3 ohm"].map((line) =>
        line.replaceAll(".", ","),
      ),
    ],
    [
      "a row of units below the header",
      ["Frequency;R;X", "MHz;kOhm;kOhm", "7.0 MHz;50.5 ohm;-12 ohm", "7.1 MHz;51.1 ohm;0.3 ohm"],
    ],
    [
      "a remark between header and rows",
      ["Frequency (MHz);R (kohm);X (kohm)", "# averaged;slow;indoors", "7.0;50.5 ohm;-12 ohm", "7.1;51.1 ohm;0.3 ohm"],
    ],
    ["an empty cell at the end", ["Frequency;R;X", "7.0 MHz;50.5 ohm;-12 ohm;", "7.1 MHz;0.0511 kohm;0.3 ohm;"]],
  ])("%s", (_, lines) => {
    expect(impedancesOf(lines)).toEqual([
      [7_000_000, 50.5, -12],
      [7_100_000, 51.1, 0.3],
    ]);
  });

  test("a bound with a unit is none of the scale of another column", () => {
    const lines = ["Frequency;SWR;Return loss", "475 kHz;2,5;> 10 dB", "477 kHz;2,1;> 12 dB", "479 kHz;1,8;> 11 dB"];
    expect(readingsOf(textOf(lines))).toEqual([
      [475_000, 2.5],
      [477_000, 2.1],
      [479_000, 1.8],
    ]);
  });

  test("a row without readings costs only itself", () => {
    const lines = ["Frequency,S11", "7.0 MHz,-- dB", "7.1 MHz,-14 dB", "7.2 MHz,-12 dB"];
    expect(frequenciesOf(lines)).toEqual([7_100_000, 7_200_000]);
    expect(notesOf(read(lines))).toContain("row-without-number@2");
  });
});

describe("marks between thousands that not all numbers of a column have", () => {
  test("a number below a thousand among them is told from a fraction by the others", () => {
    expect(frequenciesOf(["Frequency (Hz);SWR;Note", "900.000;2.7;start", "950.000;2.5;-", "1.000.000;2.1;-"])).toEqual(
      [900_000, 950_000, 1_000_000],
    );
  });

  test("apostrophes and blanks may stand in one column", () => {
    expect(frequenciesOf(["Frequency (kHz);SWR", "7'100;2,5", "7 200;2,1", "7 300;1,8"])).toEqual([
      7_100_000, 7_200_000, 7_300_000,
    ]);
  });

  test("one that fits neither way costs its row, which is named", () => {
    const lines = ["f (Hz);SWR", "6.500.000;2,5", "950.5;2,1", "6.700.000;1,8"];
    expect(notesOf(read(lines))).toContain("row-without-number@3");
  });
});
