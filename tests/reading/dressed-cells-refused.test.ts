/** Units and marks between thousands that leave room for doubt, and why the text is refused. Files and numbers invented. */
import type { ReadErrorCode } from "@feedpoint/core";
import { expect, test } from "vitest";
import { expectRefusal, notesOf, readOne, textOf } from "../support/known-load.js";

interface Refused {
  readonly what: string;
  readonly lines: readonly string[];
  readonly code: ReadErrorCode;
  readonly line?: number;
  readonly says: RegExp;
}

const REFUSED: readonly Refused[] = [
  {
    what: "numbers with a unit and numbers with an exponent",
    lines: ["Frequency,SWR", "7.0 MHz,2.5", "7.1e6,2.1"],
    code: "ambiguous",
    says: /the unit "MHz" stands beside numbers of "Frequency", and not beside all of them/,
  },
  {
    what: "ohms with a unit and with an exponent",
    lines: ["f,R,X", "7.0 MHz,0.9 kohm,-0.5 kohm", "7.1 MHz,1.2e3,-3e2"],
    code: "ambiguous",
    says: /the unit "kohm" stands beside numbers of "R", and not beside all of them/,
  },
  {
    what: "radians in the name, degrees in the cells",
    lines: ["f,S11 (dB),Phase (rad)", "7.0 MHz,-20 dB,90°", "7.1 MHz,-14 dB,45°"],
    code: "ambiguous",
    says: /the unit "deg" stands beside numbers of "Phase \(rad\)"/,
  },
  {
    what: "thousands or decimals in kHz",
    lines: ["Frequency;R;X", "14.100 kHz;50;-12", "14.200 kHz;51;3"],
    code: "ambiguous",
    says: /"14\.100" may be a fraction or a number above a thousand/,
  },
  {
    what: "thousands or decimals in ohms",
    lines: ["Frequency;R;X", "950 kHz;1.234 ohm;-56 ohm", "960 kHz;980 ohm;-57 ohm"],
    code: "ambiguous",
    says: /"1\.234" may be a fraction or a number above a thousand/,
  },
  {
    what: "a unit in the rows and another in the header",
    lines: ["Freq (MHz) Unit SWR", "475 kHz 2.5", "477 kHz 2.1"],
    code: "ambiguous",
    line: 2,
    says: /2 columns of numbers, but names for 3/,
  },
  {
    what: "a column of units",
    lines: ["Freq Unit SWR", "475 kHz 2.5", "477 kHz 2.1", "479 kHz 1.8"],
    code: "ambiguous",
    line: 2,
    says: /2 columns of numbers, but names for 3/,
  },
  {
    what: "7.100 kHz",
    lines: ["Frequency;R;X", "7.000 kHz;50 ohm;-12 ohm", "7.100 kHz;51 ohm;3 ohm"],
    code: "ambiguous",
    says: /"7\.000" may be a fraction or a number above a thousand/,
  },
  {
    what: "two marks in a column",
    lines: ["Frequency (kHz),SWR", "7'000,2.5", "7.100,2.1", "7'200,1.8"],
    code: "ambiguous",
    says: /"7\.100" may be a fraction or a number above a thousand/,
  },
  {
    what: "marks and units that change",
    lines: ["Frequency;SWR", "950.000 kHz;2.5", "999.000 kHz;2.1", "1.000.000 Hz;1.8"],
    code: "ambiguous",
    says: /"950\.000" may be a fraction or a number above a thousand/,
  },
  {
    what: "a fraction or a thousand",
    lines: ["Frequency (Hz);R;X", "6.500.000;1.523;-4", "6.600.000;1.412;5", "6.700.000;1.301;9"],
    code: "ambiguous",
    says: /"1\.523" may be a fraction or a number above a thousand/,
  },
  {
    what: "the same behind a minus sign",
    lines: ["Frequency (Hz),R,X", '"7,000,000",50,"−1,523"', '"7,100,000",51,"−1,412"', '"7,200,000",52,"1,301"'],
    code: "ambiguous",
    says: /"-1,523" may be a fraction or a number above a thousand/,
  },
  {
    what: "the same with a bound among them",
    lines: ["Frequency (Hz);R;X", "7.000.000;1.523;-40", "7.100.000;1.412;-51", "7.200.000;> 1.301;60"],
    code: "ambiguous",
    says: /"1\.523" may be a fraction or a number above a thousand/,
  },
  {
    what: "the same with dots for a missing one",
    lines: ["Frequency (Hz);R;X", "7.000.000;...;-40", "7.100.000;1.412;-51", "7.200.000;1.301;60"],
    code: "ambiguous",
    says: /"1\.412" may be a fraction or a number above a thousand/,
  },
];

test.each(REFUSED)("$what", ({ lines, ...expected }) => {
  expectRefusal(textOf(lines), expected);
});

test("a number with the unit of something else is no reading, also in a table without units", () => {
  const sweep = readOne(textOf("frequency_hz,swr", "7000000,2", "7100000,1.5", "40m,1.3", "7200000,2.5"));
  expect(Array.from(sweep.frequencyHz)).toEqual([7e6, 7.1e6, 7.2e6]);
  expect(notesOf(sweep)).toContain("row-without-number@4");
});
