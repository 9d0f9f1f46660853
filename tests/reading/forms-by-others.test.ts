/** Tables and notes in forms that their readers were not built on, all invented: what each says, in short. */
import { parseColumnRoles, readSweeps, swrFromReflectionMagnitude } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { readInShort as read } from "../support/read-in-short.js";

const THREE = "7:1.9 7.1:1.3 7.2:1.6";
/** R of 40, 45 and 50 Ω with X of -9, 0 and 8. */
const RX = "7:1.35 7.1:1.11 7.2:1.17";
const OTHER = "7:2.9 7.1:2.3 7.2:2.6";
const ROWS = "MHz,SWR\n7.0,1.9\n7.1,1.3\n7.2,1.6\n";

test.each([
  ["Frequency (MHz): 7.0, 7.1, 7.2\nSWR: 1.9, 1.3, 1.6\n", THREE],
  ["MHz = 7.0, 7.1, 7.2\nR = 40, 45, 50\nX = -9, 0, 8\n", RX],
  ["Frequenz (MHz): 7,0; 7,1; 7,2\nSWR: 1,9; 1,3; 1,6\n", THREE],
  ["MHz 7.0, 7.1, 7.2\nSWR 1.9, 1.3, 1.6\n", THREE],
  ["freq_mhz = [7.0, 7.1, 7.2]\nswr = [1.9, 1.3, 1.6]\n", THREE],
  ["frequency_mhz: {7.0, 7.1, 7.2}\nswr: {1.9, 1.3, 1.6}\n", THREE],
  ["f = [7.0 7.1 7.2]; % MHz\nswr = [1.9 1.3 1.6];\n", THREE],
  ["<table><tr><td>MHz<td>7.0<td>7.1<td>7.2<tr><td>SWR<td>1.9<td>1.3<td>1.6</table>", THREE],
  ["MHz,7.0,7.1,7.2\nSWR before,1.9,1.3,1.6\nSWR after,2.9,2.3,2.6\n", `${THREE} | ${OTHER}`],
  ["MHz,7.0,7.1,7.2\nSWR 5 m,1.9,1.3,1.6\nSWR 10 m,2.9,2.3,2.6\n", `${THREE} | ${OTHER}`],
])("a list behind its name: %s", (content, said) => {
  expect(read(content)).toBe(said);
});

describe("records", () => {
  test("of one line each with an equals sign are no notes of SWR", () => {
    expect(read("f = 7.0 MHz, R = 40, X = -9\nf = 7.1 MHz, R = 45, X = 0\nf = 7.2 MHz, R = 50, X = 8\n")).toBe(RX);
  });

  test("that a numbered title stands above are all there", () => {
    const record = (title: string, mhz: string, swr: string) => `${title}\nFrequency: ${mhz} MHz\nSWR: ${swr}\n\n`;
    const records = (title: string) =>
      record(`${title} 1`, "7.0", "1.9") + record(`${title} 2`, "7.1", "1.3") + record(`${title} 3`, "7.2", "1.6");
    expect(read(records("Point"))).toBe(THREE);
    expect(read(records("Marker"))).toBe(THREE);
  });

  test("of which one is otherwise are not read without a word", () => {
    const record = (mhz: string, rest: string) => `Frequency: ${mhz} MHz\n${rest}\n`;
    const plain = record("7.0", "SWR: 1.9") + record("7.1", "SWR: 1.3") + record("7.2", "SWR: 1.6");
    expect(read(plain + record("7.3", "SWR: 2\nCount: 40"))).toBe(`${THREE}; row-left-out`);
  });
});

test.each([
  ["Antenna,Frequency (MHz),SWR\ndipole,7.0,1.9\n,7.1,1.3\n,7.2,1.6\n", THREE],
  ["Antenna,MHz,SWR\nA,7.0,1.9\n,7.1,1.3\n,7.2,1.6\nB,7.0,2.9\n,7.1,2.3\n,7.2,2.6\n", `${THREE} | ${OTHER}`],
  ["Comment,MHz,SWR\n,7.0,1.9\n,7.1,1.3\nend,7.2,1.6\n", THREE],
  ["Mark,MHz,SWR\n,7.0,1.9\n*,7.1,1.3\n,7.2,1.6\n", THREE],
  ["MHz  SWR\n  7.0  1.9\n* 7.1  1.3\n  7.2  1.6\n", `${THREE}; cells-remarked`],
  ["#|MHz|SWR\n1|7.0|1.9\n2|7.1|1.3\n3|7.2|1.6\n", THREE],
  ["Frequency (MHz)\tSWR\tTrace\n7.0\t1.9\tMast 1\n7.1\t1.3\tMast 1\n7.2\t1.6\tMast 1\n", THREE],
  ["MHz,SWR before,SWR after,Remark\n7.0,1.9,2.9,\n7.1,1.3,2.3,windy\n7.2,1.6,2.6,\n", `${THREE} | ${OTHER}`],
  ["Frequency,before,after\nMHz,SWR,SWR\n7.0,1.9,2.9\n7.1,1.3,2.3\n7.2,1.6,2.6\n", `${THREE} | ${OTHER}`],
  ["MHz;R;X;R2;X2\n7.0;40;-9;50;0\n7.1;45;0;50;0\n7.2;50;8;50;0\n", `${RX} | 7:1 7.1:1 7.2:1`],
  ["MHz,SWR\n7.0,1.9\n7.1,1.3\n7.2,1.6\n7.3,2.22,AVG\n", `${THREE}; row-left-out`],
  ["MHz;Активно съпротивление, Ω;Реактивно съпротивление, Ω\n7.0;40;-9\n7.1;45;0\n7.2;50;8\n", RX],
  ["MHz,SWR,Status\n7.0,1.9,ok\n7.1,1.3,error\n7.2,1.6,ok\n", `${THREE}; cells-remarked`],
  ["MHz,R dry,X wet\n7.0,40,-9\n7.1,45,0\n7.2,50,8\n", `${RX}; name-in-part`],
  ["MHz;SWR;Mystery\n7.0;1.9;-9\n7.1;1.3;-2\n7.2;1.6;8\n7.3;2;9\n", `${THREE} 7.3:2; phase-not-understood`],
  ["MHz;SWR;Temp (°C)\n7.0;1.9;-9\n7.1;1.3;-2\n7.2;1.6;8\n7.3;2;9\n", `${THREE} 7.3:2`],
  ["MHz;Otpor;Reaktancija\n7.0;40;-9\n7.1;45;0\n7.2;50;8\n", RX],
])("every row and column counts: %s", (content, said) => {
  expect(read(content)).toBe(said);
});

test.each([
  ["Frequency (MHz) - 7;SWR\n0.0;1.9\n0.1;1.3\n0.2;1.6\n", THREE],
  ["MHz;half R;half X\n7.0;20;-4\n7.1;25;1\n7.2;26;4\n", "refused"],
  ["MHz,SWR (tenths)\n7.0,15\n7.1,14\n7.2,16\n", "refused"],
  ["MHz;log SWR\n7.0;1.3\n7.1;1.1\n7.2;1.2\n", "refused"],
  ["Frequency (MHz);SWR\nkHz;\n3.5;2.36\n3.6;2.1\n3.7;1.6\n", "refused"],
])("numbers that were reckoned with, or are in two units: %s", (content, said) => {
  expect(read(content)).toBe(said);
});

test.each([
  "|Y| in mS\nMHz;|Y|;Y angle\n7.0;12.4;10\n7.1;15.0;0\n7.2;14;-9\n",
  "MHz;R (kΩ);X (kΩ)\n7.0;61;-60\n7.1;65;-3\n7.2;70;61\n",
  "MHz;G (mS);B (mS)\n7.0;0.003;-0.002\n7.1;0.0025;0.001\n7.2;0.003;0.002\n",
])("readings in another unit than they say are absurd: %s", (content) => {
  expect(read(content)).toContain("readings-absurd");
});

test.each([
  "# SWR times ten",
  "# all frequencies are 100 kHz too high",
  "# add 0.2 to every SWR, the meter reads low",
  "# X positive means capacitive",
])("a remark that may change the numbers is told: %s", (remark) => {
  expect(read(`${remark}\n${ROWS}`)).toBe(`${THREE}; remark-may-change`);
});

test.each([
  [`Z0,Date,Operator\n75,2025-05-03,me\n\n${ROWS}`, `(75) ${THREE}`],
  [`Ζ0=75 Ω\n${ROWS}`, `(75) ${THREE}`],
  [`Reference impedance is not 75 ohm but 50\n${ROWS}`, `${THREE}; reference-mentioned`],
  [`Bezugsimpedanz nicht 75 Ohm, sondern 50 Ohm\n${ROWS}`, `${THREE}; reference-mentioned`],
  [`Reference impedance 1,000 ohm\n${ROWS}`, `(1000) ${THREE}`],
  [`Z ref = 75+j0\n${ROWS}`, `(75) ${THREE}`],
  [`Z0 = 75 - j10\n${ROWS}`, `${THREE}; reference-mentioned`],
  ["MHz,RL@75 dB\n7.0,9.54\n7.1,20\n7.2,12\n", "(75) 7:2 7.1:1.22 7.2:1.67"],
  [`${ROWS}Ref. impedance,450\n`, `(450) ${THREE}; row-without-number`],
])("the reference impedance: %s", (content, said) => {
  expect(read(content)).toBe(said);
});

test.each([
  [
    "frequency_mhz,quantity,value,unit\n7.0,R,40,ohm\n7.0,X,-9,ohm\n7.1,R,45,ohm\n7.1,X,0,ohm\n7.2,R,50,ohm\n7.2,X,8,ohm\n",
    RX,
  ],
  [
    "MHz;series;parameter;value\n7;a;SWR;1.9\n7.1;a;SWR;1.3\n7;b;SWR;2.9\n7.1;b;SWR;2.3\n",
    "7:1.9 7.1:1.3 | 7:2.9 7.1:2.3",
  ],
  [
    "<table><tr><th>MHz<th>SWR</tr><tr><td>7.0</td><td>1.9</td></tr><tr><td>7.1</td><td>1.3</td></tr><tr><td>7.2</td><td>1.6</td></tr></table>",
    THREE,
  ],
  [
    "<table><tr><th>MHz<th>SWR<tr><td>7.0<td>1.9<sup>2</sup><!--<tr><td>7.05<td>9.4--><tr><td>7.1<td>1.3<tr><td>7.2<td>1.6</table>",
    `${THREE}; cells-remarked`,
  ],
  [
    '<sweep z0="75"><point f_mhz="7.0" swr="1.9"/><point f_mhz="7.1" swr="1.3"/><point f_mhz="7.2" swr="1.6"/></sweep>',
    `(75) ${THREE}`,
  ],
  [
    "<s><p><mhz>7.0</mhz><r>40</r><x>-9</x></p><p><mhz>7.1</mhz><r>45</r><x>0</x></p><p><mhz>7.2</mhz><r>50</r><x>8</x></p></s>",
    RX,
  ],
  ['{"7000000":{"r":40,"x":-9},"7100000":{"r":45,"x":0},"7200000":{"r":50,"x":8}}', `${RX}; frequency-unit-inferred`],
  ['{"swr":{"7.0":1.9,"7.1":1.3,"7.2":1.6}}', `${THREE}; frequency-unit-inferred`],
  ['{"f_mhz":[7.0,7.1,7.2],"swr":{"A":[1.9,1.3,1.6],"B":[2.9,2.3,2.6]}}', `${THREE} | ${OTHER}`],
  ['{"frequency_mhz":[7.0,7.1],"s11":[[0.1,-0.2],[0.05,0]]}', "7:1.58 7.1:1.11"],
  ['{"frequencies":{"unit":"kHz","values":[7000,7100,7200]},"impedance":{"real":[40,45,50],"imag":[-9,0,8]}}', RX],
  ['{"start_mhz":7.0,"step_mhz":0.1,"swr":[1.9,1.3,1.6]}', THREE],
])("another form than rows of cells: %s", (content, said) => {
  expect(read(content)).toBe(said);
});

test.each([
  ["40m 45-j10\n20m 60+j22\n", "refused"],
  ["Band,SWR A,SWR B\n40m,1.5,1.8\n20m,1.3,1.6\n", "40m=1.5 20m=1.3 | 40m=1.8 20m=1.6"],
  ["Band,SWR 1,SWR 2\n40m,1.5,1.8\n20m,1.3,1.6\n", "40m=1.5 20m=1.3 | 40m=1.8 20m=1.6"],
  ["40/20m 1.5/1.8\n", "40m=1.5 20m=1.8"],
  ["40m/20m/15m: 1.5/1.8/2.2\n", "40m=1.5 20m=1.8 15m=2.2"],
  ["40m, 20m: 1.5, 1.8\n", "40m=1.5 20m=1.8"],
  ["80/40/20/10 m: 3.1/2.4/1.7/2.6\n", "80m=3.1 40m=2.4 20m=1.7 10m=2.6"],
  ["40m and 20m 1.5-1.8\n", "40m=1.5-1.8 20m=1.5-1.8"],
  ["40m: 7.0/1.9 7.1/1.3 7.2/1.6\n", `${THREE.replaceAll(":", "=")}; spot-readings`],
  ["swr today 30: 2.0, 20: 3.1, 17: 2.5\n", "30m=2 20m=3.1 17m=2.5"],
  ["80: 1.8; 17: 3.4; 10: 1.6\n", "80m=1.8 17m=3.4 10m=1.6"],
  ["40m return loss 17 dB\n20m return loss 12 dB\n", "40m=1.33 20m=1.67"],
  ["40m dipole: 1.5\n20m dipole: 1.7\n", "40m=1.5 20m=1.7"],
  ["40m 1.3 (45 ohm)\n20m 1.7 (60 ohm)\n", "40m=1.3 20m=1.7"],
  ["7.02 2:1\n7.1 1.3:1\n7.15 2:1\n", "7.02=2 7.1=1.3 7.15=2; spot-readings"],
  ["7.195MHz 驻波比3.3\n18.110 MHz で 2.2\n", "7.2=3.3 18.11=2.2; spot-readings"],
  ["10.112 1.7, 14.257 2.9, 18.120 2.9\n", "10.11=1.7 14.26=2.9 18.12=2.9; spot-readings"],
  ["2025-05-03: 3.738 1.5 - 7.146 2.7\n", "3.74=1.5 7.15=2.7; spot-readings"],
  ["2025-05-03: 80: 2.4 | 40: 3.0 | 15: 1.4\n", "80m=2.4 40m=3 15m=1.4"],
  ["14.195 / 2.6\n21.076 / 1.7\n", "14.2=2.6 21.08=1.7; spot-readings"],
  ["80m,30m,15m\n2.6,1.4,2.6\n", "80m=2.6 30m=1.4 15m=2.6"],
  ["Antenna\t80m\t30m\nA\t3.0\t1.2\nB\t2.6\t2.2\n", "80m=3 30m=1.2 | 80m=2.6 30m=2.2"],
  ["SWR\nBand,A,B\n80m,1.4,2.6\n40m,2.8,1.7\n", "80m=1.4 40m=2.8 | 80m=2.6 40m=1.7"],
  ["40m height: 9.5\n20m gain: 3.2\n", "refused"],
  ["SWR 1.5 40m\nSWR 1.7 20m\n", "40m=1.5 20m=1.7"],
])("notes: %s", (content, said) => {
  expect(read(content)).toBe(said);
});

describe("units that the user states for a column", () => {
  const first = (content: string, columns: string) => {
    const [sweep] = readSweeps(content, { columns: parseColumnRoles(columns) });
    return swrFromReflectionMagnitude(sweep.reflectionMagnitude[0] ?? Number.NaN);
  };

  test("count", () => {
    expect(first("7.0 0.1 0\n7.1 0.1 0\n7.2 0.1 0\n", "frequency:MHz,r:kOhm,x:kOhm")).toBeCloseTo(2, 9);
    expect(first("7.0 10 0\n7.1 10 0\n7.2 10 0\n", "frequency:MHz,g:mS,b:mS")).toBeCloseTo(2, 9);
  });

  test("that it cannot have are refused with those that it can", () => {
    expect(() => parseColumnRoles("frequency:MHz,g:furlong")).toThrow("use s, ms, us, or none");
    expect(() => parseColumnRoles("frequency:MHz,swr:db")).toThrow("it takes none");
  });
});
