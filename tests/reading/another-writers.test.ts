/** Forms that people who had not seen the reader wrote, and what went lost or was taken for something else before; all invented. */
import { readSweeps } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { readInShort } from "../support/read-in-short.js";

describe("antennas by their names", () => {
  test.each([
    ["antenna | 80m | 40m\ninverted V | 1.5 | 2.8\ndelta loop | 2.9 | 1.4\n", "80m=1.5 40m=2.8 | 80m=2.9 40m=1.4"],
    ["band;inverted V;loop\n80m;1.7;1.9\n40m;3.1;1.4\n", "80m=1.7 40m=3.1 | 80m=1.9 40m=1.4"],
    ["band;SWR;battery V\n80m;1.7;12.6\n40m;3.1;12.5\n", "80m=1.7 40m=3.1"],
    ["band;SWR;supply (V)\n80m;1.7;12.6\n40m;3.1;12.5\n", "80m=1.7 40m=3.1"],
  ])("none is taken for volts: %j", (content, expected) => {
    expect(readInShort(content)).toBe(expected);
  });

  const blocks = (first: string, second: string) =>
    `# MHz  SWR\n# ${first}\n7.0 1.5\n7.1 1.4\n7.2 1.6\n\n\n# ${second}\n14.0 2.5\n14.1 2.4\n14.2 2.6\n`;

  test.each([
    ["end-fed wire", "half sloper"],
    ["inverted V", "ground plane"],
  ])("comments alone above their rows name them: %s, %s", (first, second) => {
    expect(readInShort(blocks(first, second))).toBe("7:1.5 7.1:1.4 7.2:1.6 | 14:2.5 14.1:2.4 14.2:2.6");
  });

  test.each([
    ["40m", "20m"],
    ["40 m band", "20 m band"],
    ["first half", "second half"],
  ])("but not bands, or parts of one sweep: %s, %s", (first, second) => {
    expect(readInShort(blocks(first, second))).toBe("7:1.5 7.1:1.4 7.2:1.6 14:2.5 14.1:2.4 14.2:2.6");
  });

  test("nor a word in the middle of a sweep", () => {
    expect(readInShort("MHz SWR\n7.00 1.5\n7.05 1.4\n\n# wind again\n7.10 1.4\n7.15 1.5\n")).toBe(
      "7:1.5 7.05:1.4 7.1:1.4 7.15:1.5",
    );
  });
});

describe("forms", () => {
  test.each([
    ["SWR, rows kHz\nkHz;+0;+20;+40\n7000;1.6;1.5;1.4\n7060;1.3;1.4;\n", "7:1.6 7.02:1.5 7.04:1.4 7.06:1.3 7.08:1.4"],
    ["SWR\nMHz +0 kHz  +50 kHz\n7.0  1.6  1.5\n7.1  1.4  1.3\n7.2  1.4  1.5\n", "refused"],
    ["SWR\nMHz;+0;+50\n7.0;1.6;1.5\n7.1;1.4;1.3\n7.2;1.4;1.5\n", "7:1.6 7.05:1.5 7.1:1.4 7.15:1.3 7.2:1.4 7.25:1.5"],
    ["kHz;+0;+20\n7000;1.6;1.5\n7040;1.3;1.4\n", "refused"],
    ["MHz;kHz;SWR\n7;0;1.6\n7;50;1.5\n7;100;1.4\n", "7:1.6 7.05:1.5 7.1:1.4"],
    ["MHz;kHz;SWR\n7.1;7050;1.6\n7.2;7100;1.5\n7.3;7150;1.4\n", "refused"],
    ["loop: SWR against MHz\n7.0 |##### 1.6\n7.1 |#### 1.5\n7.2 |### 1.4\n", "7:1.6 7.1:1.5 7.2:1.4"],
    [
      "start_hz=7000000\nstop_hz=7200000\nquantity=swr\n\n1.6, 1.5, 1.4\n1.5, 1.6\n",
      "7:1.6 7.05:1.5 7.1:1.4 7.15:1.5 7.2:1.6",
    ],
    ["SWR every 50 kHz from 7000 kHz upwards:\n1.6 1.5 1.4 1.5 1.6\n", "7:1.6 7.05:1.5 7.1:1.4 7.15:1.5 7.2:1.6"],
    ["MHz;Vfwd (mV);Vrefl (mV)\n7.0;500;100\n7.1;400;40\n7.2;400;80\n", "7:1.5 7.1:1.22 7.2:1.5"],
    ["MHz;SWR\n7.0;over 10\n7.1;1.5\n7.2;infinite\n", "7:10 7.1:1.5 7.2:Infinity; saturated"],
    ["MHz  Gamma\n7.0  0.5 / -60 deg\n7.1  0.4 / 0 deg\n7.2  0.5 / 60 deg\n", "7:3 7.1:2.33 7.2:3"],
    [
      "# complex reflection coefficient\n7.0 MHz  (-0.2+0.0j)\n7.1 MHz  (0.1-0.0j)\n7.2 MHz  (-0.2+0.0j)\n",
      "7:1.5 7.1:1.22 7.2:1.5",
    ],
    ["kHz : SWR\n7000 : 1¾\n7050 : 1½\n7100 : 1¼\n", "7:1.75 7.05:1.5 7.1:1.25"],
    ["kHz : SWR\n7000 : 1 3/4\n7050 : 1 1/2\n7100 : 1\n7150 : 1 1/4\n", "7:1.75 7.05:1.5 7.1:1 7.15:1.25"],
    ["kHz : SWR\n7000 : 1.6\n7050 : ''\n7100 : 1.4\n", "7:1.6 7.05:1.6 7.1:1.4"],
    ["MHz : SWR\n7.00 : more than 5\n7.05 : 1.5\n7.10 : 1.4\n", "7:5 7.05:1.5 7.1:1.4; saturated"],
    [
      "10100 kHz  ROE 1,6\n10125 kHz  ROE 1,3\n10150 kHz  ROE 1,5\n\nancho de banda (ROE 2) unos 40 kHz\n",
      "10.1=1.6 10.13=1.3 10.15=1.5; row-left-out; spot-readings",
    ],
    [
      "date\tantenna\tMHz\tSWR\tnotes\n2029-08-04\tbeam\t7.0\t1.6\twindy\n2029-08-04\tbeam\t7.1\t1.5\t\n2029-08-04\tbeam\t7.2\t1.4\t\n",
      "7:1.6 7.1:1.5 7.2:1.4",
    ],
    ["14.000 kHz : SWR 2,1\n14.050 kHz : SWR 1,7\n14.100 kHz : SWR 1,3\n", "14=2.1 14.05=1.7 14.1=1.3; spot-readings"],
    ["\u001b[1mMHz  SWR\u001b[0m\n7.0  \u001b[31m1.6\u001b[0m\n7.1  1.5\n7.2  1.4\n", "7:1.6 7.1:1.5 7.2:1.4"],
    ["  40: MHz  swr\n  41: 7.0  1.6\n  42: 7.1  1.5\n  43: 7.2  1.4\n", "7:1.6 7.1:1.5 7.2:1.4"],
    ["7000  1.6\n7100  1.5\n7200  1.4\n\ncolumns: frequency in kHz, SWR\n", "7:1.6 7.1:1.5 7.2:1.4; row-left-out"],
    ["MHz  SWR\n7.0  1.60 +- 0.05\n7.1  1.50 +/- 0.05\n7.2  1.40 +- 0.05\n", "7:1.6 7.1:1.5 7.2:1.4; cells-remarked"],
    ["sweep = {  # MHz: swr\n  7.0: 1.6,\n  7.1: 1.5,\n  7.2: 1.4,\n}\n", "7:1.6 7.1:1.5 7.2:1.4"],
    ["const hz = [7000000, 7100000, 7200000];\nconst swr = [1.6, 1.5, 1.4];\n", "7:1.6 7.1:1.5 7.2:1.4"],
    [
      "struct reading { long khz; float swr; };\nstatic const struct reading tab[3] = {\n { 7000, 1.6f },\n { 7100, 1.5f },\n { 7200, 1.4f },\n};\n",
      "7:1.6 7.1:1.5 7.2:1.4",
    ],
    [
      "create table reading (id integer, freq_khz integer, swr real);\ninsert into reading values (1, 7000, 1.6);\ninsert into reading values (2, 7100, 1.5);\n",
      "7:1.6 7.1:1.5",
    ],
    [
      "7.0 MHz: U forward 5.0 V, U reflected 1.0 V\n7.1 MHz: U forward 4.0 V, U reflected 0.4 V\n7.2 MHz: U forward 4.0 V, U reflected 0.8 V\n",
      "7:1.5 7.1:1.22 7.2:1.5",
    ],
    [
      "7.0 MHz  Vf=5.0 V  Vr=1.0 V\n7.1 MHz  Vf=4.0 V  Vr=0.4 V\n7.2 MHz  Vf=4.0 V  Vr=0.8 V\n",
      "7:1.5 7.1:1.22 7.2:1.5",
    ],
    [
      "7.0 MHz: fwd 30 dBm, refl 20 dBm\n7.1 MHz: fwd 30 dBm, refl 10 dBm\n7.2 MHz: fwd 30 dBm, refl 20 dBm\n",
      "7:1.92 7.1:1.22 7.2:1.92",
    ],
    ["MHz   R.O.S.\n7,0   1,6\n7,1   1,5\n7,2   1,4\n", "7:1.6 7.1:1.5 7.2:1.4"],
    ["pila 7,3 V\nen 7,0 MHz: R.O.E. 1,6\nen 7,1 MHz: R.O.E. 1,5\n", "7=1.6 7.1=1.5; spot-readings"],
    ["n=1, swr=1.6, f=7.0MHz\nf=7.1MHz n=2 swr=1.5\nswr=1.4, f=7.2MHz, n=3\n", "7:1.6 7.1:1.5 7.2:1.4"],
    ["loop, SWR\n7M000   1.6\n7M100   1.5\n7M200   1.4\n", "7=1.6 7.1=1.5 7.2=1.4; spot-readings"],
    ["f;SWR\n7M000;1.6\n7M100;1.5\n7M200;1.4\n", "7:1.6 7.1:1.5 7.2:1.4; frequency-unit-inferred"],
    ["loop: MHz, SWR\n7,000, 1,60\n7,100, 1,50\n7,200, 1,40\n", "7:1.6 7.1:1.5 7.2:1.4"],
    [
      "reflection coefficient\n7.0 MHz  0.2 at −24.1 degrees\n7.1 MHz  0.1 at 0.0 degrees\n7.2 MHz  0.2 at 24.1 degrees\n",
      "7:1.5 7.1:1.22 7.2:1.5",
    ],
    ["7.0 MHz: S11 –9.5 dB\n7.1 MHz: S11 –14.0 dB\n7.2 MHz: S11 –9.5 dB\n", "7:2.01 7.1:1.5 7.2:2.01"],
    ["Gamma of the loop\n7.0 MHz –0.2 – j0.0\n7.1 MHz –0.1 + j0.0\n7.2 MHz 0.2 + j0.0\n", "7:1.5 7.1:1.22 7.2:1.5"],
    ["Frequency kHz\tSWR\n144 100\t1.5\n145 200\t1.4\n146 300\t1.6\n", "144.1:1.5 145.2:1.4 146.3:1.6"],
    ["Test frequency, kHz\tVSWR\n14 000\t1.6\n14 050\t1.5\n14 100\t1.4\n", "14:1.6 14.05:1.5 14.1:1.4"],
    ["周波数（ＭＨｚ）　ＳＷＲ\n７．０　１．６\n７．１　１．５\n７．２　１．４\n", "7:1.6 7.1:1.5 7.2:1.4"],
    ["SWR by segment, kHz\n7000..7050 1.6\n7050..7100 1.5\n", "7=1.6 7.05=1.5"],
    [
      "you asked for my loop\n>  could you post SWR over the band?\nHere they are (MHz, SWR):\n\n| 7.0  1.6\n| 7.1  1.5\n| 7.2  1.4\n",
      "7:1.6 7.1:1.5 7.2:1.4",
    ],
    [
      "   MHz    SWR  |    MHz    SWR\n   7.000  1.6  |    7.150  1.4\n   7.050  1.5  |    7.200  1.5\n   7.100  1.5  |\n",
      "7:1.6 7.05:1.5 7.1:1.5 7.15:1.4 7.2:1.5",
    ],
    [
      "loop - SWR\n40m: 7000 kHz 1.1 / 7100 kHz 1.2\n20m: 14000 kHz 2.3, 14100 kHz 2.4\n",
      "7=1.1 7.1=1.2 14=2.3 14.1=2.4; spot-readings",
    ],
  ])("%j", (content, expected) => {
    expect(readInShort(content)).toBe(expected);
  });

  test("words for the sign of a reactance are read as such", () => {
    const [sweep] = readSweeps("7.0 MHz: R 33, X 7 neg.\n7.1 MHz: R 36, X 9 neg.\n7.2 MHz: R 38, X 11 neg.\n");
    expect(sweep?.kind === "vector" && sweep.reflectionImaginary.every((value) => value < 0)).toBe(true);
  });

  test("a sentence with a verb of another language is a reading as its neighbours are", () => {
    expect(
      readInShort(
        "7,0 MHz: λόγος στασίμων 1,6\n7,1 MHz: λόγος στασίμων 1,5\nΣτους 7,2 MHz ο λόγος στασίμων είναι 1,4.\n",
      ),
    ).toMatch(/^7[:=]1.6 7.1[:=]1.5 7.2[:=]1.4/);
  });
});
