/** Further forms of tables and notes, all invented: what each says, in short. */
import { ReadError, readSweeps } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { readInShort as read } from "../support/read-in-short.js";

const THREE = "7:1.9 7.1:1.3 7.2:1.6";
/** R of 40, 45 and 50 Ω with X of -9, 0 and 8. */
const RX = "7:1.35 7.1:1.11 7.2:1.17";
const ROWS = "MHz,SWR\n7.0,1.9\n7.1,1.3\n7.2,1.6\n";

describe("pairs under a title", () => {
  test.each([
    ["SWR, fan dipole, MHz\n7.000 ... 1.9\n7.100 ... 1.3\n7.200 ... 1.6\n", THREE],
    ["SWR, ground plane (MHz)\n7.000 = 1.9    7.100 = 1.3\n7.200 = 1.6\n", THREE],
    ["kHz:SWR\n7000/1.9 7100/1.3 7200/1.6\n", THREE],
    ["MHz (SWR)\n7.000 (1.9)  7.100 (1.3)  7.200 (1.6)\n", THREE],
    ["SWR, doublet, MHz\n7.000   1.9\n7.100   1.3\n7.200   ditto\n", "7:1.9 7.1:1.3 7.2:1.3"],
    ["SWR delta loop (MHz): 7.000: 1.9; 7.100: 1.3; 7.200: 1.6\n", THREE],
    ["SWR (frequency in MHz)\n40 m: 7.000=1.9, 7.100=1.3, 7.200=1.6\n", THREE],
    ["Impedance in ohm, f in MHz\n7.0  40 - 9j Ω\n7.1  45 + 0j Ω\n7.2  50 + 8j Ω\n", RX],
    ["7.0 MHz: Z = 40 - j9 ohm\n7.1 MHz: Z = 45 + j0 ohm\n7.2 MHz: Z = 50 + j8 ohm\n", RX],
    [
      "Impedance:\n7000 kHz: 40 ohms resistive, 9 ohms capacitive\n7100 kHz: 50 ohms resistive, 8 ohms inductive\n",
      "7:1.35 7.1:1.17",
    ],
    ["Return loss of the loop\n7.0 MHz: 10 dB\n7.1 MHz: 20 dB\n", "7:1.92 7.1:1.22"],
    [
      "here the SWR (MHz, SWR):\nbefore: 7.0 1.9, 7.1 1.3, 7.2 1.6\nafter: 7.0 2.9, 7.1 2.3, 7.2 2.6\n73\n",
      `${THREE} | 7:2.9 7.1:2.3 7.2:2.6`,
    ],
  ])("are read: %s", (content, said) => {
    expect(read(content)).toBe(said);
  });

  test.each(["Offset (kHz)\tSWR\n-100\t1.9\n0\t1.3\n100\t1.6\n", "SWR,Frequency (MHz)\n7.0,1.9\n7.1,1.3\n7.2,1.6\n"])(
    "are none under names of columns that say something else: %s",
    (content) => {
      expect(read(content)).toBe("refused");
    },
  );
});

describe("notes", () => {
  test.each([
    ["SWR\nLong wire: 80m 1.4, 60m 1.2\nLoop: 160m 2.8, 40m 1.3\n", "80m=1.4 60m=1.2 | 160m=2.8 40m=1.3"],
    [
      "Half-wave dipole\nSWR under 1.5 from 7.00 to 7.12 MHz\nAt 7.2 MHz the SWR is 2.5.\n",
      "7=1-1.5 7.2=2.5; spot-readings",
    ],
    [
      "7.0 MHz: 100 watts forward / 25 watts back\n7.1 MHz: vorlaufend 50 W, rücklaufend 2 W\n",
      "7=3 7.1=1.5; spot-readings",
    ],
    ["40m 3.6 dB return loss\n20m 4% reflected\n", "40m=4.89 20m=1.5"],
    ["Измерения диполя\nна 7,000 МГц КСВ 1,9\nна 7,100 МГц КСВ 1,3\n", "7=1.9 7.1=1.3; spot-readings"],
    ["SWR, moxon\n7,000 kHz, SWR 1.9\n7,100 kHz, SWR 1.3\n", "7=1.9 7.1=1.3; spot-readings"],
    ["Band in metres,SWR\n160,1.7\n80,1.6\n", "160m=1.7 80m=1.6"],
    [
      "Beam. I read an SWR of 2.5 at 7.0 MHz, 1.3 at 7.1 MHz and 1.4 at 7.2 MHz.\n",
      "7=2.5 7.1=1.3 7.2=1.4; spot-readings",
    ],
    ["The SWR of the dipole is 2.1 at 7.0 MHz, 1.8 at 7.1 MHz\n", "7=2.1 7.1=1.8; spot-readings"],
    ["160米：2.0\n40米：1.9\n", "160m=2 40m=1.9"],
    ["SWR\n40m 1.6\n20m flat\n", "40m=1.6 20m=1; cells-remarked"],
    ["SWR\n21.050  13\n21.150  12\n21.200  14\n", "21.05=13 21.15=12 21.2=14; readings-absurd; spot-readings"],
  ])("are read: %s", (content, said) => {
    expect(read(content)).toBe(said);
  });

  test("do not take heights above frequencies for bands", () => {
    expect(read("MHz,SWR at 6 m,SWR at 10 m\n7.0,1.9,2.9\n7.1,1.3,2.3\n7.2,1.6,2.6\n")).toBe(
      `${THREE} | 7:2.9 7.1:2.3 7.2:2.6`,
    );
  });

  test("leave out a digit that nobody can read, and say so", () => {
    expect(read("SWR\n7.0 MHz: 1.9\n7.1 MHz: 1.?\n7.2 MHz: 1.6\n7.3 MHz: 1.8\n7.4 MHz: 1.9\n")).toContain(
      "row-left-out",
    );
  });

  test("of a frequency that none is swept at are refused", () => {
    expect(read("SWR\n3.500 kHz 5.5\n3.750 kHz 1.3\n")).toBe("refused");
  });
});

test.each([
  ["MHz;Forward (dBm);Reflected (dBm)\n7.0;20;10\n7.1;20;0\n", "7:1.92 7.1:1.22"],
  ["MHz;P+ (mW);P- (mW)\n7.0;100;25\n7.1;100;4\n", "7:3 7.1:1.5"],
  ["MHz;Forward (W);Reflected (mW)\n7.0;1;250\n7.1;1;40\n", "7:3 7.1:1.5"],
  ["MHz;Pf (W);Pr (W)\n7.0;100;25\n7.1;100;4\n", "7:3 7.1:1.5"],
  ["MHz;Pr/Pf\n7.0;0.25\n7.1;0.04\n", "7:3 7.1:1.5"],
  ["MHz;1-|Γ|² (%)\n7.0;75\n7.1;96\n", "7:3 7.1:1.5"],
  ["MHz;Power reflection coefficient |Γ|²\n7.0;0.25\n7.1;0.04\n", "7:3 7.1:1.5"],
  ["MHz;R+jX (ohm)\n7.0;40-9j\n7.1;45+0j\n7.2;50+8j\n", RX],
  ["MHz;Feed point impedance\n7.0;40 - j9 Ω\n7.1;45 + j0 Ω\n7.2;50 + j8 Ω\n", RX],
  ["MHz;S11 (mag ∠ deg)\n7.0;0.5∠-90°\n7.1;0.2∠0°\n", "7:3 7.1:1.5"],
  ["Frequency (kc/s);SWR\n7000;1.9\n7100;1.3\n7200;1.6\n", THREE],
  ["Frequency (×10^6 Hz);SWR\n7.0;1.9\n7.1;1.3\n7.2;1.6\n", THREE],
  ["MHz;R (kilo-ohm);X (kilo-ohm)\n7.0;0.040;-0.009\n7.1;0.045;0\n7.2;0.050;0.008\n", RX],
  ["MHz;R (mΩ);X (mΩ)\n7.0;40000;-9000\n7.1;45000;0\n7.2;50000;8000\n", RX],
  ["MHz;Series R (ohm);Series C (pF)\n7.0;40;2526.3\n7.1;45;1e9\n", "7:1.35 7.1:1.11"],
  [
    "MHz;R (ohm);|X| (ohm);kind of X\n7.0;40;9;capacitive\n7.1;45;1;capacitive\n7.2;50;8;inductive\n",
    "7:1.35 7.1:1.11 7.2:1.17",
  ],
  ["kHz above 7000;SWR\n0;1.9\n100;1.3\n200;1.6\n", THREE],
  ["Offsets from 7.1 MHz\nΔf (kHz);SWR\n-100;1.9\n0;1.3\n100;1.6\n", THREE],
  ["周波数 (MHz);SWR\n７．０;１．９\n７．１;１．３\n７．２;１．６\n", THREE],
])("what a name says: %s", (content, said) => {
  expect(read(content)).toBe(said);
});

test("the sign of a reactance may stand in a column of words", () => {
  const [sweep] = readSweeps(
    "MHz;R (ohm);|X| (ohm);kind\n7.0;50;10;capacitive\n7.1;50;10;inductive\n7.2;50;10;inductive\n",
  );
  expect(sweep.kind === "vector" && Array.from(sweep.reflectionImaginary, Math.sign)).toEqual([-1, 1, 1]);
});

test.each([
  ["SWR by antenna\nMHz;before;after\n7.0;1.9;2.9\n7.1;1.3;2.3\n7.2;1.6;2.6\n", `${THREE} | 7:2.9 7.1:2.3 7.2:2.6`],
  ["Quantity: SWR\nMHz;4 m;6 m\n7.0;1.9;2.9\n7.1;1.3;2.3\n7.2;1.6;2.6\n", `${THREE} | 7:2.9 7.1:2.3 7.2:2.6`],
  ["SWR\nAntenna / MHz;7.0;7.1;7.2\ndipole;1.9;1.3;1.6\nloop;2.9;2.3;2.6\n", `${THREE} | 7:2.9 7.1:2.3 7.2:2.6`],
  ["MHz;SWR (5 m high);SWR (8 m high)\n7.0;1.9;2.9\n7.1;1.3;2.3\n7.2;1.6;2.6\n", `${THREE} | 7:2.9 7.1:2.3 7.2:2.6`],
  ["MHz;Dipole SWR;Delta loop SWR\n7.0;1.9;2.9\n7.1;1.3;2.3\n7.2;1.6;2.6\n", `${THREE} | 7:2.9 7.1:2.3 7.2:2.6`],
  [
    "f A\tSWR A\tf B\tSWR B\nMHz\t\tMHz\n7.0\t1.9\t3.5\t2.9\n7.1\t1.3\t3.6\t2.3\n\t\t3.7\t2.6\n",
    "7:1.9 7.1:1.3 | 3.5:2.9 3.6:2.3 3.7:2.6",
  ],
  ["MHz;Loop: SWR;Whip: return loss (dB)\n7.0;1.9;4\n7.1;1.3;5\n7.2;1.6;8\n", `${THREE}; name-in-part`],
  ["SWR log\nMHz;dipole;Temp\n7.0;1.9;12\n7.1;1.3;12\n", "refused"],
])("several antennas: %s", (content, said) => {
  expect(read(content)).toBe(said);
});

test.each([
  ["9999 = not measured\nMHz,SWR\n7.0,1.9\n7.1,9999\n7.2,1.6\n", "7:1.9 7.2:1.6; row-without-number"],
  ["MHz,SWR\n7.0,1.9\n7.1,999\n7.2,1.6\n", "7:1.9 7.2:1.6; row-without-number"],
  [
    "MHz,SWR\n7.0,1.9\n7.1,1.3\n7.2,15.2\n7.3,1.5\n7.4,1.7\n",
    "7:1.9 7.1:1.3 7.2:15.2 7.3:1.5 7.4:1.7; reading-slipped",
  ],
  ["MHz,SWR,Grade\n7.0,1.9,poor\n7.1,1.3,good\n7.2,1.6,usable\n", THREE],
  ["MHz;SWR\n• 7.0;1.9\n• 7.1;1.3\n• 7.2;1.6\n", THREE],
  ["kHz\tSWR\n'7000\t'1.9\n'7100\t'1.3\n'7200\t'1.6\n", THREE],
  ["MHz,SWR\n7.0,1.9\n7.1,1.75, no: 1.3\n7.2,1.6\n", "7:1.9 7.1:1.75 7.2:1.6; cells-remarked"],
  ["MHz  SWR\n  7.0  1.9\n! 7.1  1.3\n  7.2  1.6\n", `${THREE}; cells-remarked`],
  [
    "Rows with x are bad readings, ignore them\n,MHz,SWR\n,7.0,1.9\nx,7.1,1.3\n,7.2,1.6\n",
    `${THREE}; remark-may-change`,
  ],
  ["S.W.R.;Freq (MHz)\n7.0;1.9\n7.1;1.8\n7.2;1.3\n7.3;1.7\n7.4;1.9\n", "refused"],
  [
    " #  Freq (MHz)  SWR  RL (dB)\n 1  7.0  1.92  10\n 2  7.1  1.22  20\n 3  7.2  1.67  12\n",
    "7:1.92 7.1:1.22 7.2:1.67",
  ],
])("rows and marks: %s", (content, said) => {
  expect(read(content)).toBe(said);
});

test.each([
  ["Impedancja charakterystyczna 100 om", "(100) "],
  ["SWR referred to the 300-ohm feeder", "(300) "],
  ["Bezugswiderstand: fünfundsiebzig Ohm", "(75) "],
  ["Y0 = 10 mS", "(100) "],
  ["Last week 50 ohm was set; this sweep: 100 ohm", "(100) "],
])("a reference: %s", (line, said) => {
  expect(read(`${line}\n${ROWS}`)).toBe(`${said}${THREE}`);
});

test.each([
  ["MHz;SWR (28 ohm);SWR (50 ohm)\n7.0;2.9;1.9\n7.1;2.3;1.3\n7.2;2.6;1.6\n", THREE],
  ["MHz,swr200ohm\n7.0,1.9\n7.1,1.3\n7.2,1.6\n", `(200) ${THREE}`],
  ["Frequency\tSWR\nMHz\tre 120 ohm\n7.0\t1.9\n7.1\t1.3\n7.2\t1.6\n", `(120) ${THREE}`],
  [`Reference impedance: 5 kOhm\n${ROWS}`, `${THREE}; reference-mentioned`],
  ["SWR, 50 ohm\nMHz,SWR\n7.0,1.9\n7.1,1.3\n# Z0 = 75 from here\n7.2,1.6\n", "refused"],
])("references: %s", (content, said) => {
  expect(read(content)).toBe(said);
});

test.each([
  ["Start: 7.0 MHz\nStep: 100 kHz\nSWR:\n1.9 1.3 1.6 1.7 1.8\n", `${THREE} 7.3:1.7 7.4:1.8`],
  ["First frequency 7.0 MHz, last 7.4 MHz, SWR:\n1.9\n1.3\n1.6\n1.7\n1.8\n", `${THREE} 7.3:1.7 7.4:1.8`],
  [
    "INSERT INTO sweep (mhz, swr) VALUES (7.0, 1.9);\nINSERT INTO sweep (mhz, swr) VALUES (7.1, 1.3);\nINSERT INTO sweep (mhz, swr) VALUES (7.2, 1.6);\n",
    THREE,
  ],
  [
    "<table><caption>reference impedance 93 &Omega;</caption><tr><th>MHz<th>SWR</tr><tr><td>7.0<td>1.9</tr><tr><td>7.1<td>1.3</tr><tr><td>7.2<td>1.6</tr></table>",
    `(93) ${THREE}`,
  ],
  [
    '[{"antenna":"sloper","sweep":[{"mhz":7.0,"swr":1.9},{"mhz":7.1,"swr":1.3}]},{"antenna":"dipole","sweep":[{"mhz":28,"swr":2.9},{"mhz":28.1,"swr":2.3}]}]',
    "7:1.9 7.1:1.3 | 28:2.9 28.1:2.3",
  ],
  ["MHz;SWR;valid\n7.0;1.9;yes\n7.1;1.3;no\n7.2;1.6;yes\n", `${THREE}; cells-remarked`],
  ["MHz;SWR^-1\n7.0;0.5\n7.1;0.8\n", "refused"],
  ["MHz;20·log|Γ| (dB)\n7.0;-9.54\n7.1;-13.98\n", "7:2 7.1:1.5"],
  ["λ [m]   SWR\n42.8  1.9\n42.2  1.3\n41.6  1.6\n", "refused"],
  ["the goal is an SWR of 2 on 30 m, 1.4 on 20 m\n", "refused"],
  ["SWR < 2.5 on 12 m\nSWR below 1.5 on all of 10 m\n", "12m=1-2.5 10m=1-1.5"],
  ["SWR is 1.6 on 80, 2.4 on 15, 1.3 on 10.\n", "80m=1.6 15m=2.4 10m=1.3"],
])("further ways to write: %s", (content, said) => {
  expect(read(content)).toBe(said);
});

test.each([
  [`SWR on the 600 ohm ladder line\n${ROWS}`, `(600) ${THREE}`],
  ["MHz\tSWR (x:1) [112 ohm]\n7.0\t1.9\n7.1\t1.3\n7.2\t1.6\n", `(112) ${THREE}`],
  ["MHz,|S11| @93 ohm,Phase S11 (deg) @93 ohm\n7.0,0.31,20\n7.1,0.13,-10\n7.2,0.23,0\n", "(93) 7:1.9 7.1:1.3 7.2:1.6"],
  ["MHz,S11 real in 93 ohm,S11 imag in 93 ohm\n7.0,0.31,0\n7.1,0.13,0\n7.2,0.23,0\n", "(93) 7:1.9 7.1:1.3 7.2:1.6"],
  ["Συχνότητα MHz;Ωμική αντίσταση;Άεργος αντίσταση\n7.0;40;-9\n7.1;45;0\n7.2;50;8\n", RX],
  ["MHz,Re S11 in 93 ohm,Im S11 in 93 ohm\n7.0,0.31,0\n7.1,0.13,0\n7.2,0.23,0\n", "(93) 7:1.9 7.1:1.3 7.2:1.6"],
  ["SWR with the sloper at 9 m: 1.2:1 on 18.10 MHz, 1.3:1 on 21.1 MHz.\n", "18.1=1.2 21.1=1.3; spot-readings"],
  [",at 6 m,at 10 m\nMHz,SWR,SWR\n7.0,1.9,2.9\n7.1,1.3,2.3\n7.2,1.6,2.6\n", `${THREE} | 7:2.9 7.1:2.3 7.2:2.6`],
  ["kHz\tSWR\n1810\t01. Sep\n1820\t02. Mai\n1830\t01. Mrz\n", "refused"],
  ["kHz;SWR\n1810;01-Sep\n1820;02 May\n1830;1 Mar\n", "refused"],
  ["I would like an SWR of 2.1 on 10 m, 1.4 on 80 m", "refused"],
  ["MHz,SWR\n28,7.11\n28.1,5.41\n28.2,409\n28.3,2.99\n", "28:7.11 28.1:5.41 28.2:409 28.3:2.99; reading-slipped"],
  ["MHz;SWR;MHz;SWR\n7.0;1.9;14.0;1.8\n7.1;1.3;14.1;1.5\n7.2;1.6;14.2;1.4\n", `${THREE} 14:1.8 14.1:1.5 14.2:1.4`],
  ["MHz,SWR\n7.0,1.9\n7.1,1.3\n7.2,1.", "7:1.9 7.1:1.3 7.2:1; last-number-cut"],
  [`reference 75.0+0.0j ohm\n${ROWS}`, `(75) ${THREE}`],
  [`Everything below was worked out for a 60Ω line.\n${ROWS}`, `(60) ${THREE}`],
  ["Frequencies are kHz above 7 MHz\nkHz above;SWR\n0;1.9\n100;1.3\n200;1.6\n", THREE],
  ["SWR of the dipole, MHz\n7.0   1.9\n7.1   same\n7.2   1.6\n", "7:1.9 7.1:1.9 7.2:1.6"],
  ["I read an SWR of 1.9 at 7.0, 1.3 at 7.1 and 1.6 at 7.2 MHz.\n", "7=1.9 7.1=1.3 7.2=1.6; spot-readings"],
  ['Frequency (Hz),SWR\n7000000,"1,900"\n7100000,"1,300"\n7200000,"1,600"\n', THREE],
  ['kHz,SWR\n"7,000",1.9\n"7,100",1.3\n"7,200",1.6\n', THREE],
  ["F [MHz]  Loss (dB)\n7.0  1.7\n7.1  1.8\n7.2  1.9\n", "refused"],
  ["MHz|SWR dB\n7.0|1.7\n7.1|1.8\n7.2|1.9\n", "refused"],
])("what was taken for something else: %s", (content, said) => {
  expect(read(content)).toBe(said);
});

const codesOf = (content: string) => readSweeps(content).flatMap(({ findings }) => findings.map(({ code }) => code));

test("a last number of fewer decimals than all others, without a line break, may be cut off", () => {
  const rows = Array.from({ length: 10 }, (_, i) => `${7000 + 10 * i},1.${i}5`).join("\n");
  expect(codesOf(`kHz,SWR\n${rows}`)).not.toContain("last-number-cut");
  expect(codesOf(`kHz,SWR\n${rows}\n7100,1.5`)).toContain("last-number-cut");
  expect(codesOf(`kHz,SWR\n${rows}\n7100,1.5\n`)).not.toContain("last-number-cut");
  expect(codesOf(`kHz,SWR,note\n${rows.replaceAll("5\n", "5,\n")},`)).not.toContain("last-number-cut");
  expect(codesOf("kHz,SWR,Nr\n7000,1.5,101\n7010,1.4,7")).not.toContain("last-number-cut");
});

test("readings as far apart as bands, and facts below them, lack no decimal point", () => {
  expect(codesOf("MHz,SWR\n3,1.2\n6,16\n9,1.9\n12,1.4\n15,1.3\n")).not.toContain("reading-slipped");
  const rows = Array.from({ length: 11 }, (_, i) => `${7000 + 10 * i};1.${i + 10}`).join("\n");
  expect(codesOf(`kHz;SWR\n${rows}\n\nPoints;11\nMinimum;1.1\n`)).not.toContain("reading-slipped");
});

test("columns of readings without a number are named", () => {
  expect(() => readSweeps("MHz;SWR\n7.0;poor\n7.1;fair\n")).toThrow('no row holds a number under "SWR"');
  expect(() => readSweeps("MHz;SWR;RL;note\n7.0;poor\n7.1;fair\n")).toThrow(ReadError);
});

test.each([" ", ".", "-", "\t"])("a long run of one character among rows does not hold up the reader: %j", (mark) => {
  const run = mark.repeat(3000);
  expect(read(`SWR, dipole, MHz\n7.0${run}1.9\n7.1 ... 1.3${run}x\n7${run}.2 ... 1.6${run}\n`)).toBeDefined();
  expect(read(`MHz,SWR\n7.0 MHz,1.9\n7${run} MHz,1.3\n7.2 MHz${run},1.6\n`)).toBeDefined();
});
