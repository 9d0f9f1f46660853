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
    ["blanks between semicolons", ["Frequency (Hz);SWR", "6 500 000;2.5", "6 600 000;2.1", "6 700 000;1.8"]],
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
    expect(message).toContain('"1.523" may be a fraction or a number above a thousand');
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
  const { code, problem, message } = refusalOf(["f (Hz);SWR", "6.500.000;2,5", "950.5;2,1", "6.700.000;1,8"]);
  expect(code).toBe("bad-row");
  expect(problem.line).toBe(3);
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

const impedancesOf = (lines: readonly string[], options?: ReadOptions) => {
  const sweep = read(lines, options) as VectorSweep;
  expect(sweep.kind).toBe("vector");
  return Array.from(sweep.frequencyHz, (hz, i) => {
    const { real, imaginary } = sampleImpedance(sweep, i);
    return [hz, Number(real.toFixed(6)), Number(imaginary.toFixed(6))];
  });
};

describe("units belong to their own column", () => {
  const PLAIN = ["Frequency (MHz),SWR,Note", "7.0,2.5,start", "7.1,1.2,best", "7.2,1.8,50 kHz", "7.3,2.2,end"];
  test("a note with a frequency changes none", () => {
    expect(readingsOf(PLAIN).map(([hz]) => hz)).toEqual([7e6, 7.1e6, 7.2e6, 7.3e6]);
  });

  test.each([
    [
      "a column of resonances",
      ["Frequency (Hz),R,X,Resonance", "7000000,50.5,-12,7.1 MHz", "7100000,51.1,0.3,7.1 MHz"],
    ],
    ["a column of steps", ["Step,Frequency,SWR,RBW", "1,7.0,2.5,10 kHz", "2,7.01,2.1,10 kHz"]],
    ["numbers with a unit and numbers with an exponent", ["Frequency,SWR", "7.0 MHz,2.5", "7.1e6,2.1"]],
    ["ohms with a unit and with an exponent", ["f,R,X", "7.0 MHz,0.9 kohm,-0.5 kohm", "7.1 MHz,1.2e3,-3e2"]],
    [
      "radians in the name, degrees in the cells",
      ["f,S11 (dB),Phase (rad)", "7.0 MHz,-20 dB,90°", "7.1 MHz,-14 dB,45°"],
    ],
    [
      "a row of units above the header",
      ["MHz;kOhm;kOhm", "Frequency;R;X", "7,0 MHz;900 ohm;-500 ohm", "7,1 MHz;850 ohm;-3 ohm"],
    ],
    [
      "a row of units with signs above the header",
      ["MHz;kΩ;kΩ", "Frequency;R;X", "7.0 MHz;900 ohm;-500 ohm", "7.1 MHz;850 ohm;-3 ohm"],
    ],
    [
      "a row of units below the header",
      ["Frequency;R;X", "MHz;kOhm;kOhm", "7.0 MHz;1.2 kohm;-0.5 kohm", "7.1 MHz;0.9 kohm;-0.3 kohm"],
    ],
    [
      "a line between header and rows",
      ["Frequency (MHz);R (kohm);X (kohm)", "# averaged;slow;indoors", "7.0;900 ohm;-500 ohm", "7.1;850 ohm;-3 ohm"],
    ],
    [
      "a header below the first row",
      [
        "Start;Middle;End",
        "7.0;900 ohm;-500 ohm",
        "# Frequency (MHz);R (kohm);X (kohm)",
        "7.1;850 ohm;-3 ohm",
        "7.2;800 ohm;30 ohm",
      ],
    ],
    [
      "a unit beside a bound",
      ["Frequency;SWR;Return loss", "475 kHz;1,2;> 10 dB", "477 kHz;1,5;> 12 dB", "479 kHz;1,8;> 11 dB"],
    ],
    ["thousands or decimals in kHz", ["Frequency;R;X", "14.100 kHz;50;-12", "14.200 kHz;51;3"]],
    ["thousands or decimals in ohms", ["Frequency;R;X", "950 kHz;1.234 ohm;-56 ohm", "960 kHz;980 ohm;-57 ohm"]],
    ["a zero before thousands", ["Frequency (Hz);R;X", "7.100.000;1.012,5;-30,2", "7.200.000;0.950;1,5"]],
    ["a unit in the rows and another in the header", ["Freq (MHz) Unit SWR", "475 kHz 2.5", "477 kHz 2.1"]],
    ["two kinds of marks in a column", ["Frequency (kHz);SWR", "7'100;2,5", "7 200;2,1", "7 300;1,8"]],
    ["blanks between thousands beside a tab", ["Frequency kHz\tSWR", "144 100\t1.5", "145 200\t1.4", "146 300\t1.6"]],
    ["a column of units", ["Freq Unit SWR", "475 kHz 2.5", "477 kHz 2.1", "479 kHz 1.8"]],
    ["a first row without readings", ["Frequency,S21", "7.0 MHz,-- dB", "7.1 MHz,-14 dB", "7.2 MHz,-12 dB"]],
    ["7.100 kHz", ["Frequency;R;X", "7.000 kHz;50 ohm;-12 ohm", "7.100 kHz;51 ohm;3 ohm"]],
    ["two marks in a column", ["Frequency (kHz),SWR", "7'000,2.5", "7.100,2.1", "7'200,1.8"]],
    ["marks and units that change", ["Frequency;SWR", "950.000 kHz;2.5", "999.000 kHz;2.1", "1.000.000 Hz;1.8"]],
    [
      "a text in a column beside marks",
      ["Frequency (Hz);SWR;Note", "900.000;2.7;start", "950.000;2.5;-", "1.000.000;2.1;-"],
    ],
  ])("%s: refused", (_, lines) => {
    expect(refusalOf(lines).code).toMatch(/ambiguous|no-data|no-reflection|no-frequency|bad-row/);
  });

  test.each([
    ["a footer of another width", ["Frequency (kHz),SWR,Run", "6500,2.5,7", "6600,2.1,8", "6700,1.8,9", "7.1 MHz,1.2"]],
    ["a footer split otherwise", ["Frequency (kHz),SWR", "6500,2.5", "6600,2.1", "6700,1.8", "7.1 MHz 1.2"]],
    ["a footer with a unit", ["Frequency (kHz),SWR", "6500,2.5", "6600,2.1", "6700,1.8", "", "7100 kHz,1.2"]],
  ])("%s does not change the table", (_, lines) => {
    expect(readingsOf(lines)).toEqual(EXPECTED);
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

  test("a table whose header has another width is refused", () => {
    expect(refusalOf(["Frequency;R;X", "7,0 MHz;1,2 kohm;0,3 kohm;", "7,1 MHz;950 ohm;-120 ohm;"]).code).toBe(
      "no-data",
    );
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
  expect(readingsOf(lines).map(([hz]) => hz)).toEqual([900_000, 950_000, 1_000_000, 1_050_000]);
});

test("one mark is enough where another stands before decimals", () => {
  const lines = ["Frequenz (Hz);R;X", "7.000.000;998,5;-20,1", "7.100.000;1.012,5;-30,2", "7.200.000;1.100,1;10,1"];
  expect(impedancesOf(lines).map(([, r]) => r)).toEqual([998.5, 1012.5, 1100.1]);
});

test("a stray character that joins lines is no fault of ours", () => {
  const rows = Array.from({ length: 60 }, (_, i) => `${(7 + i / 100).toFixed(3)} MHz,${(1.5 + i / 50).toFixed(2)}`);
  expect(refusalOf(["\0cal", "Frequency,SWR", ...rows])).toBeInstanceOf(ReadError);
});

describe("marks that could be decimal ones", () => {
  test.each([
    [
      "a minus sign of its own",
      ["Frequency (Hz),R,X", '"7,000,000",50,"−1,523"', '"7,100,000",51,"−1,412"', '"7,200,000",52,"1,301"'],
    ],
    [
      "a bound among them",
      ["Frequency (Hz);R;X", "7.000.000;1.523;-40", "7.100.000;1.412;-51", "7.200.000;> 1.301;60"],
    ],
    [
      "dots for a missing one",
      ["Frequency (Hz);R;X", "7.000.000;...;-40", "7.100.000;1.412;-51", "7.200.000;1.301;60"],
    ],
  ])("are refused: %s", (_, lines) => {
    expect(refusalOf(lines).code).toBe("ambiguous");
  });

  test("and what --decimal settles is read", () => {
    const lines = ["Frequency (Hz);R;X", "7.000.000;50;−1.523", "7.100.000;51;−1.412", "7.200.000;52;1.301"];
    expect(impedancesOf(lines, { decimal: "comma" }).map(([, , x]) => x)).toEqual([-1523, -1412, 1301]);
    expect(impedancesOf(lines, { decimal: "point" }).map(([, , x]) => x)).toEqual([-1.523, -1.412, 1.301]);
  });
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
  expect(readingsOf(lines, { frequencyUnit: "kHz" }).map(([hz]) => hz)).toEqual([475_000, 477_000, 479_000]);
});

test("a Ctrl-Z at the end is the end", () => {
  expect(readingsOf(["Frequency,SWR", "6.5 MHz,2.5", "6.6 MHz,2.1", "6.7 MHz,1.8", "\u001a"], {}, "\r\n")).toEqual(
    EXPECTED,
  );
});

test("degrees beside the angles leave no doubt of their unit", () => {
  expect(codesOf(["Frequency,Phase,S11", "7.0 MHz,1°,-20 dB", "7.1 MHz,2°,-14 dB"])).not.toContain(
    "angle-unit-assumed",
  );
});

test("what may be thousands is settled by --decimal", () => {
  const lines = ["Frequency;SWR", "14.100 kHz;2", "14.200 kHz;3"];
  expect(readingsOf(lines, { decimal: "comma" }).map(([hz]) => hz)).toEqual([14_100_000, 14_200_000]);
  expect(readingsOf(lines, { decimal: "point" }).map(([hz]) => hz)).toEqual([14_100, 14_200]);
});

test("nought before a mark leaves no doubt", () => {
  const lines = ["Frequency;rho", "14.100.000 Hz;0.333", "14.200.000 Hz;0.300"];
  expect([...read(lines).reflectionMagnitude]).toEqual([0.333, 0.3]);
});

test("letters like those of a unit in a plain text are none", () => {
  const lines = ["Frequency,SWR,Trace", "6500,2.5,HZ-2", "6600,2.1,HZ-2", "6700,1.8,HZ-2"];
  expect(readingsOf(lines)).toEqual(EXPECTED);
});
