/** Complex numbers that stand in one cell, in the forms that general programs write them. Files and numbers invented. */
import { readSweeps, sampleImpedance, sampleReflection, type VectorSweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { type Pair, present } from "../support/sweeps.js";

const encoder = new TextEncoder();
const read = (text: string) => present(readSweeps(encoder.encode(text), { fileName: "invented.csv" })[0], "sweep");

function reflectionsOf(text: string): readonly Pair[] {
  const sweep = read(text) as VectorSweep;
  expect(sweep.kind).toBe("vector");
  expect(sweep.findings.map(({ code }) => code)).toContain("complex-cells");
  return Array.from(sweep.frequencyHz, (_, i): Pair => {
    const { real, imaginary } = sampleReflection(sweep, i);
    return [real, imaginary];
  });
}

const EXPECTED: readonly Pair[] = [
  [0.1936, -0.1712],
  [-0.1, 0.05],
  [0.2, 0.1],
];

describe.each([
  [
    "commas, a quoted name with a comma in brackets",
    'freq[Hz],"rect(S(1,1))[]"',
    ",",
    ["0.1936-0.1712i", "-0.1+0.05i", "0.2+.1i"],
  ],
  ["blanks, brackets", "# f/Hz S11", " ", ["(0.1936-0.1712j)", "(-0.1+5e-2j)", "(2e-1+0.1j)"]],
  [
    "tabs, blanks around the sign, j in front",
    "Frequency (Hz)\tS11",
    "\t",
    ["0.1936 - j0.1712", "-0.1 + j0.05", "0.2 + j0.1"],
  ],
  [
    "semicolons, decimal comma, a times sign",
    "Frequency (Hz);S11",
    ";",
    ["0,1936-0,1712*i", "-0,1+0,05*i", "0,2+0,1*i"],
  ],
  ["blanks with blanks around the sign", "f/Hz S11", " ", ["0.1936 - 0.1712j", "-0.1 + 0.05j", "0.2 + 0.1j"]],
])("%s", (_, header, delimiter, cells) => {
  test.each(["\n", "\r\n"])("with line ends %j", (end) => {
    const rows = cells.map((cell, i) => `${7_000_000 + i * 100_000}${delimiter}${cell}`);
    const actual = reflectionsOf([header, ...rows, ""].join(end));
    actual.forEach(([real, imaginary], i) => {
      expect(real).toBe(EXPECTED[i]?.[0]);
      expect(imaginary).toBe(EXPECTED[i]?.[1]);
    });
  });
});

test("an impedance in one cell, with other columns beside it", () => {
  const sweep = read("Point,Frequency (MHz),Z (ohm),SWR\n1,7.0,50.1+j3.2,1.07\n2,7.1,51-j1,1.03\n3,7.2,60+10j,1.29\n");
  expect(sampleImpedance(sweep as VectorSweep, 2).real).toBeCloseTo(60, 12);
  expect(sampleImpedance(sweep as VectorSweep, 2).imaginary).toBeCloseTo(10, 12);
});

test("a row whose cell is broken is left out and named", () => {
  const sweep = read("Hz,S11\n7000000,0.1+0.2i\n7100000,0.1+xi\n7200000,0.2+0.1i\n7300000,0.3+0.1i\n");
  expect(sweep.frequencyHz).toHaveLength(3);
  expect(sweep.findings.map(({ code, line }) => [code, line])).toContainEqual(["row-without-number", 3]);
});

test("a text whose last line only speaks of such numbers is not touched", () => {
  const sweep = read("MHz,R,X\n7.0,50,3\n7.1,51,4\n7.2,52,5\n! Z is written R+jX, 50+j3 for example\n");
  expect(sweep.findings.map(({ code }) => code)).not.toContain("complex-cells");
});
