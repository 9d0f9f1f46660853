/** Units and marks between thousands that leave room for doubt, and why the text is refused. Files and numbers invented. */
import type { ReadErrorCode } from "@feedpoint/core";
import { test } from "vitest";
import { expectRefusal, textOf } from "../support/known-load.js";

interface Refused {
  readonly what: string;
  readonly lines: readonly string[];
  readonly code: ReadErrorCode;
  readonly line?: number;
  readonly says: RegExp;
}

const NO_TABLE = /no two columns of numbers; .* Export the numbers without units beside them/;

const REFUSED: readonly Refused[] = [
  {
    what: "a column of resonances",
    lines: ["Frequency (Hz),R,X,Resonance", "7000000,50.5,-12,7.1 MHz", "7100000,51.1,0.3,7.1 MHz"],
    code: "no-data",
    says: NO_TABLE,
  },
  {
    what: "a column of steps",
    lines: ["Step,Frequency,SWR,RBW", "1,7.0,2.5,10 kHz", "2,7.01,2.1,10 kHz"],
    code: "no-data",
    says: NO_TABLE,
  },
  {
    what: "numbers with a unit and numbers with an exponent",
    lines: ["Frequency,SWR", "7.0 MHz,2.5", "7.1e6,2.1"],
    code: "ambiguous",
    line: 3,
    says: /"7\.1e6,2\.1" can be read in two ways/,
  },
  {
    what: "ohms with a unit and with an exponent",
    lines: ["f,R,X", "7.0 MHz,0.9 kohm,-0.5 kohm", "7.1 MHz,1.2e3,-3e2"],
    code: "ambiguous",
    line: 3,
    says: /2 columns of numbers, but names for 3/,
  },
  {
    what: "radians in the name, degrees in the cells",
    lines: ["f,S11 (dB),Phase (rad)", "7.0 MHz,-20 dB,90°", "7.1 MHz,-14 dB,45°"],
    code: "no-data",
    says: NO_TABLE,
  },
  {
    what: "a row of units above the header",
    lines: ["MHz;kOhm;kOhm", "Frequency;R;X", "7,0 MHz;900 ohm;-500 ohm", "7,1 MHz;850 ohm;-3 ohm"],
    code: "no-data",
    says: NO_TABLE,
  },
  {
    what: "a row of units with signs above the header",
    lines: ["MHz;kΩ;kΩ", "Frequency;R;X", "7.0 MHz;900 ohm;-500 ohm", "7.1 MHz;850 ohm;-3 ohm"],
    code: "no-data",
    says: NO_TABLE,
  },
  {
    what: "a row of units below the header",
    lines: ["Frequency;R;X", "MHz;kOhm;kOhm", "7.0 MHz;1.2 kohm;-0.5 kohm", "7.1 MHz;0.9 kohm;-0.3 kohm"],
    code: "no-data",
    says: NO_TABLE,
  },
  {
    what: "a line between header and rows",
    lines: [
      "Frequency (MHz);R (kohm);X (kohm)",
      "# averaged;slow;indoors",
      "7.0;900 ohm;-500 ohm",
      "7.1;850 ohm;-3 ohm",
    ],
    code: "no-data",
    says: NO_TABLE,
  },
  {
    what: "a header below the first row",
    lines: [
      "Start;Middle;End",
      "7.0;900 ohm;-500 ohm",
      "# Frequency (MHz);R (kohm);X (kohm)",
      "7.1;850 ohm;-3 ohm",
      "7.2;800 ohm;30 ohm",
    ],
    code: "no-data",
    says: NO_TABLE,
  },
  {
    what: "a unit beside a bound",
    lines: ["Frequency;SWR;Return loss", "475 kHz;1,2;> 10 dB", "477 kHz;1,5;> 12 dB", "479 kHz;1,8;> 11 dB"],
    code: "ambiguous",
    says: /the unit "kHz" stands beside the numbers \("475 kHz;1,2;> 10 dB"\)/,
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
    what: "a zero before thousands",
    lines: ["Frequency (Hz);R;X", "7.100.000;1.012,5;-30,2", "7.200.000;0.950;1,5"],
    code: "bad-row",
    line: 3,
    says: /"0\.950" in a column whose thousands are marked with "\."/,
  },
  {
    what: "a unit in the rows and another in the header",
    lines: ["Freq (MHz) Unit SWR", "475 kHz 2.5", "477 kHz 2.1"],
    code: "ambiguous",
    says: /the unit "kHz" stands beside the numbers \("475 kHz 2\.5"\), and MHz in the header/,
  },
  {
    what: "two kinds of marks in a column",
    lines: ["Frequency (kHz);SWR", "7'100;2,5", "7 200;2,1", "7 300;1,8"],
    code: "no-data",
    says: /no two columns of numbers/,
  },
  {
    what: "blanks between thousands beside a tab",
    lines: ["Frequency kHz\tSWR", "144 100\t1.5", "145 200\t1.4", "146 300\t1.6"],
    code: "ambiguous",
    line: 2,
    says: /3 columns of numbers, but names for 2/,
  },
  {
    what: "a column of units",
    lines: ["Freq Unit SWR", "475 kHz 2.5", "477 kHz 2.1", "479 kHz 1.8"],
    code: "ambiguous",
    says: /the unit "kHz" stands beside the numbers \("475 kHz 2\.5"\)/,
  },
  {
    what: "a first row without readings",
    lines: ["Frequency,S21", "7.0 MHz,-- dB", "7.1 MHz,-14 dB", "7.2 MHz,-12 dB"],
    code: "no-data",
    says: NO_TABLE,
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
    says: /frequencies up to 7100 Hz by the stated unit, kHz/,
  },
  {
    what: "marks and units that change",
    lines: ["Frequency;SWR", "950.000 kHz;2.5", "999.000 kHz;2.1", "1.000.000 Hz;1.8"],
    code: "ambiguous",
    says: /the unit "kHz" stands beside the numbers \("950\.000 kHz;2\.5"\)/,
  },
  {
    what: "a text in a column beside marks",
    lines: ["Frequency (Hz);SWR;Note", "900.000;2.7;start", "950.000;2.5;-", "1.000.000;2.1;-"],
    code: "ambiguous",
    says: /frequencies up to 950 Hz by the stated unit, Hz/,
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
  {
    what: "a header of another width",
    lines: ["Frequency;R;X", "7,0 MHz;1,2 kohm;0,3 kohm;", "7,1 MHz;950 ohm;-120 ohm;"],
    code: "no-data",
    says: NO_TABLE,
  },
  {
    what: "a row whose marks are not those of thousands",
    lines: ["f (Hz);SWR", "6.500.000;2,5", "950.5;2,1", "6.700.000;1,8"],
    code: "bad-row",
    line: 3,
    says: /"950\.5" in a column whose thousands are marked with "\."/,
  },
];

test.each(REFUSED)("$what", ({ lines, ...expected }) => {
  expectRefusal(textOf(lines), expected);
});
