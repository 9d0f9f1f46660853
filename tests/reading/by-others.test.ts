/**
 * Files as others than their readers write them, all invented: what each says, in short. `7.05:1.62` is an SWR at MHz, `40m=1.5-2` one noted
 * for a band; series stand apart by bars; findings that are no info stand behind.
 */
import { readSweeps } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { readInShort as read } from "../support/read-in-short.js";

const ROWS = "MHz;SWR\n7.05;1.6\n7.1;1.3\n7.15;1.5\n";
const READ = "7.05:1.6 7.1:1.3 7.15:1.5";

describe("the reference impedance", () => {
  test.each([
    "Reference plane: 12 cm behind the plug",
    "Reference: file 27",
    "Reference level 10 dB",
    "Reference date: 12 May 2026",
    "ref. temperature 20 C",
    "SWR 1.5 ref 200 W",
    "Z0 see file 12",
    "Referenz: Lauf 12",
    "ZL=100",
  ])("is none of these numbers: %s", (line) => {
    expect(read(`# ${line}\n${ROWS}`)).toBe(READ);
  });

  test.each([
    "Coax Z0 = 75 ohm",
    "Line: Z0 450, length 10 m",
    "Balun secondary Z0 = 200 ohm",
    "Wellenwiderstand der Leitung: 450 Ohm",
    "Impédance caractéristique du câble : 75 ohms",
    "Волновое сопротивление кабеля 75 Ом",
    "Wellenwiderstand Hühnerleiter 450 Ohm",
    "Z0 changed from 50 to 75 ohm",
    "Référence : mesure 12, câble 75 ohms",
    "Koax: Z0 = 75 Ohm",
    "open-wire: Z0 = 600 ohm",
    "Twin lead Z0 = 300 ohm, 8 m long; bridge 50 ohm",
  ])("is not that of a line, which is asked about: %s", (line) => {
    expect(read(`# ${line}\n${ROWS}`)).toBe(`${READ}; reference-mentioned`);
  });

  test.each([
    ["# Z0 = 75\n", "(75) "],
    ["Reference;75\n", "(75) "],
    ["# Reference: 75\n", "(75) "],
    ["# SWR (Z0=75), coax 12 m\n", "(75) "],
  ])("is what states it: %j", (above, reference) => {
    expect(read(above + ROWS)).toBe(reference + READ);
  });

  test.each([
    "MHz;SWR 50;SWR 75\n7.05;1.6;1.1\n7.1;1.3;1.4\n7.15;1.5;1.6\n",
    "MHz;SWR;SWR at 75 ohm\n7.05;1.6;1.1\n7.1;1.3;1.4\n7.15;1.5;1.6\n",
  ])("may be two, and then one has to be chosen: %j", (content) => {
    expect(read(content)).toBe("refused");
  });
});

describe("tables", () => {
  test.each([
    [
      "Loop MHz;Loop SWR;Dipole MHz;Dipole SWR\n7.05;1.6;14.05;2.1\n7.1;1.3;14.1;1.7\n",
      "7.05:1.6 7.1:1.3 | 14.05:2.1 14.1:1.7",
    ],
    [
      "Dipole;;Vertical;\nMHz;SWR;MHz;SWR\n7.05;1.6;7.07;2.1\n7.1;1.3;7.12;1.7\n",
      "7.05:1.6 7.1:1.3 | 7.07:2.1 7.12:1.7",
    ],
    ["MHz;SWR;MHz;SWR\n7.0;1.5;14.0;1.2\n7.1;1.3;14.2;1.4\n", "7:1.5 7.1:1.3 14:1.2 14.2:1.4"],
    ["MHz;SWR;MHz;SWR\n7.0;1.5;7.05;1.2\n7.1;1.3;7.15;1.4\n", "7:1.5 7.1:1.3 | 7.05:1.2 7.15:1.4"],
    ["MHz;SWR;MHz;RL dB\n7.0;1.5;14.0;20\n7.1;1.3;14.2;25\n7.2;1.6;14.35;14\n", "refused"],
    [
      "Ant;MHz;SWR\nA;7.05;1.6\nA;7.1;1.3\nA;7.2;1.9\nB;7.2;2.4\nB;7.25;2\nB;7.3;1.7\n",
      "7.05:1.6 7.1:1.3 7.2:1.9 | 7.2:2.4 7.25:2 7.3:1.7",
    ],
    ["MHz;State;SWR\n7.05;dry;1.6\n;wet;2.1\n7.1;dry;1.3\n;wet;1.7\n", "7.05:1.6 7.1:1.3 | 7.05:2.1 7.1:1.7"],
    ["MHz;R1;X1;R2;X2\n7.05;40;-30;40;-30\n7.1;25;1;75;3\n", "7.05:2 7.1:2 | 7.05:2 7.1:1.5"],
  ])("beside or below each other: %j", (content, expected) => {
    expect(read(content)).toBe(expected);
  });

  test.each(["Summe;21.3;4.4", "Total;21.3;4.4", "Итого;21.3;4.4", "Mean;7.1;1.47"])("a row sums up: %s", (row) => {
    expect(read(`Nr;MHz;SWR\n1;7.05;1.6\n2;7.1;1.3\n3;7.15;1.5\n${row}\n`)).toBe(`${READ}; row-left-out`);
  });

  test("a word for a mean may name a series", () => {
    const content = "Which;MHz;SWR\nmean;7.0;1.5\nbest;7.0;1.2\nmean;7.1;1.7\nbest;7.1;1.4\n";
    expect(read(content)).toBe("7:1.5 7.1:1.7 | 7:1.2 7.1:1.4");
  });

  test.each(["RL (0.1 dB)", "RL [dB/10]", "SWR (x10)"])(
    "what was reckoned with the numbers is not read plain: %s",
    (name) => {
      expect(read(`MHz;${name}\n7.0;21\n7.1;13\n7.2;18\n`)).toBe("refused");
    },
  );

  test.each(["2f (MHz)", "f/2 (MHz)", "10*f (MHz)", "Freq MHz x100"])("nor are frequencies: %s", (name) => {
    expect(read(`${name};SWR\n7.0;2.1\n7.1;1.3\n7.2;1.8\n`)).toBe("refused");
  });

  test.each([
    ["Forward voltage;Reflected voltage", "3.0;1.0"],
    ["Vfwd (V);Vrefl (V)", "3.0;1.0"],
    ["Fwd/W;Ref/W", "36;4"],
  ])("what goes out and comes back: %s", (names, values) => {
    expect(read(`MHz;${names}\n7.0;${values}\n7.1;${values}\n7.2;${values}\n`)).toBe("7:2 7.1:2 7.2:2");
  });

  test.each(["SWR Soll", "SWR max allowed", "SWR threshold", "SWR rank"])("a limit is no sweep: %s", (name) => {
    expect(read(`MHz;SWR;${name}\n7.05;1.6;2\n7.1;1.3;2\n7.15;1.5;2\n`)).toBe(READ);
  });

  test.each([
    "No;MHz;SWR\n;MHz;\n1;7.05;1.6\n2;7.1;1.3\n3;7.15;1.5\n",
    "Note;MHz;SWR\n;7.05;1.6\n5W;7.1;1.3\n;7.15;1.5\n",
    "Date;MHz;SWR\n03.05.2026;7.05;1.6\n03.05.2026;7.1;1.3\n03.05.2026;7.15;1.5\n",
    "Try;MHz;SWR\n2nd try;7.05;1.6\n2nd try;7.1;1.3\n2nd try;7.15;1.5\n",
    "MHz;SWR;Remark\n7.05;1.6;\n7.1;1.3;\n7.15;1.5;total\n",
    "MHz;SWR (at shack)\n7.05;1.6\n7.1;1.3\n7.15;1.5\n",
    "MHz;SWR (100 W)\n7.05;1.6\n7.1;1.3\n7.15;1.5\n",
    "# choke Z 2000 ohm at 7 MHz\nMHz;SWR\n7.05;1.6\n7.1;1.3\n7.15;1.5\n",
    ";MHz;SWR;\n;7.05;1.6;\n;7.1;1.3;\n;7.15;1.5;\n",
    "Freq,SWR\n7.05M,1.6\n7.1M,1.3\n7.15M,1.5\n",
    "MHz;SWR\n7.05;1.6/1\n7.1;1.3/1\n7.15;1.5/1\n",
  ])("in a dress of their own: %j", (content) => {
    expect(read(content)).toBe(READ);
  });

  test.each(["angle/π", "S11 phase+180 (°)", "sgn X", "S11 delay (ns)"])(
    "a phase that is not understood is named: %s",
    (name) => {
      expect(read(`MHz;S11 (dB);${name}\n7.05;-9.54;0.1\n7.1;-20;0.2\n7.15;-12;0.3\n`)).toMatch(
        /; phase-not-understood$/,
      );
    },
  );

  test.each(["10*SWR", "SWR*10"])("what is told to be ten times as much is read as a tenth: %s", (name) => {
    expect(read(`MHz;${name}\n7.0;21\n7.1;13\n7.2;18\n`)).toBe("7:2.1 7.1:1.3 7.2:1.8");
  });

  test.each(["R (0.1 Ω);X (0.1 Ω)", "Modelled SWR", "SWR limit", "SWR in dB", "Insertion loss (dB)"])(
    "no reading by a part of its name: %s",
    (name) => {
      const row = (value: number) =>
        name
          .split(";")
          .map(() => value)
          .join(";");
      expect(read(`MHz;${name}\n7.0;${row(21)}\n7.1;${row(13)}\n7.2;${row(18)}\n`)).toBe("refused");
    },
  );

  test("X with its j", () => {
    expect(read("MHz;R;X\n7.0;40;-j30\n7.1;25;-j1\n7.2;40;+j30\n")).toBe("7:2 7.1:2 7.2:2");
  });

  test.each([
    [";before;after\nMHz;SWR;SWR\n7.05;1.6;2.1\n7.1;1.3;1.7\n", "7.05:1.6 7.1:1.3 | 7.05:2.1 7.1:1.7"],
    [";before;;after;\nMHz;R;X;R;X\n7.05;40;-30;40;30\n7.1;25;-1;75;3\n", "7.05:2 7.1:2 | 7.05:2 7.1:1.5"],
    ["MHz;SWR;SWR\n7.05;1.6;2.1\n7.1;1.3;1.7\n", "refused"],
  ])("columns of one name under titles: %j", (content, expected) => {
    expect(read(content)).toBe(expected);
  });

  // Bytes of "Опорное сопротивление 75 Ом" and of "参考阻抗 75", by the tables of the WHATWG Encoding Standard.
  test.each([
    ["windows-1251", "ceefeef0edeee520f1eeeff0eef2e8e2ebe5ede8e520373520ceec"],
    ["koi8-r", "efd0cfd2cecfc520d3cfd0d2cfd4c9d7ccc5cec9c520373520efcd"],
    ["gbk", "b2cebfbcd7e8bfb9203735"],
  ])("a statement in %s", (_, hex) => {
    const said = Buffer.from(hex, "hex");
    const bytes = Buffer.concat([Buffer.from("# "), said, Buffer.from(`\n${ROWS}`)]);
    expect(readSweeps(new Uint8Array(bytes))[0].referenceOhms).toBe(75);
  });
});

describe("JSON", () => {
  const points = (rows: readonly (readonly [number, number])[]) => rows.map(([MHz, SWR]) => ({ MHz, SWR }));
  const dry = points([
    [7.05, 1.6],
    [7.1, 1.3],
    [7.15, 1.5],
  ]);
  const wet = points([
    [7.05, 2.1],
    [7.1, 1.7],
    [7.15, 1.9],
  ]);
  const BOTH = `${READ} | 7.05:2.1 7.1:1.7 7.15:1.9`;

  test.each([
    [{ before: dry, after: wet }],
    [
      {
        series: [
          { name: "dry", points: dry },
          { name: "wet", points: wet },
        ],
      },
    ],
    [{ sweeps: [dry, wet] }],
    [[dry, wet]],
    [{ columns: ["MHz", "SWR"], dry: dry.map(Object.values), wet: wet.map(Object.values) }],
  ])("several sweeps: %j", (content) => {
    expect(read(JSON.stringify(content))).toBe(BOTH);
  });

  test.each(["limits", "markers", "calibration"])("%s before the sweep are left out", (key) => {
    expect(read(JSON.stringify({ [key]: wet, table: dry }))).toBe(`${READ}; block-left-out`);
  });

  test.each([
    [{ meta: { z0: 75 }, columns: ["MHz", "SWR"], rows: dry.map(Object.values) }],
    [{ reference: { value: 75, unit: "ohm" }, data: dry }],
    [{ z0: { re: 75, im: 0 }, data: dry }],
    [{ z0: [75, 0], data: dry }],
    [{ reference_ohms: 75, feedline: { impedance: 50 }, data: dry }],
    [{ z0: 75, coax: { z0: 50 }, data: dry }],
    [{ data: dry, settings: { reference_impedance: 75 } }],
  ])("a reference anywhere: %j", (content) => {
    expect(read(JSON.stringify(content))).toBe(`(75) ${READ}`);
  });
});

describe("notes by hand", () => {
  test.each([
    ["Band;Fwd W;Ref W\n40m;36;4\n20m;50;0\n", "40m=2 20m=1"],
    ["Band,Height m,SWR\n40m,10,1.5\n20m,10,1.2\n", "40m=1.5 20m=1.2"],
    ["Band,Power W,SWR\n40m,40,1.6\n20m,50,1.3\n", "40m=1.6 20m=1.3"],
    ["Band;SWR dry;SWR wet\n40m;1.5;1.7\n20m;1.3;1.4\n", "40m=1.5 20m=1.3 | 40m=1.7 20m=1.4"],
    ["Band;Freq (MHz);SWR\n40m;7.1;1.5\n20m;14.1;1.1\n", "7.1=1.5 14.1=1.1; spot-readings"],
    ["Band;Freq (MHz);R (ohm);X (ohm)\n80m;3.65;40;-30\n40m;7.1;25;1\n", "3.65:2 7.1:2; spot-readings"],
    ["Band;MHz;SWR\n40m;7.0;1.5\n;7.1;1.3\n20m;14.1;1.1\n", "7=1.5 7.1=1.3 14.1=1.1; spot-readings"],
    ["Band;MHz;SWR;Temp (C)\n40m;7.1;1.5;12\n20m;14.1;1.1;9\n", "7.1=1.5 14.1=1.1; spot-readings"],
    ["Band,R (ohm),X (ohm)\n80m,40,-12\n40m,60,10\n", "refused"],
    ["Band;40m;20m\nRL (dB);12;14\n", "refused"],
    ["Band;40m;20m\nSWR;1.2;1.4\nPower (W);50;50\n", "40m=1.2 20m=1.4"],
    ["Band;L uH;C pF\n40m;12;30\n20m;6;20\n", "refused"],
    ["Band;Turns;Tap\n40m;12;3\n20m;6;2\n", "refused"],
    ["Band;Length m\n40m;10.1\n20m;5.05\n", "refused"],
  ])("a table of bands goes by its names: %j", (content, expected) => {
    expect(read(content)).toBe(expected);
  });

  test.each([
    ["Band,SWR min,SWR max\n40m,1.2,1.9\n20m,1.1,1.4\n", "40m=1.2-1.9 20m=1.1-1.4"],
    ["40m: 1.6 dry, 1.9 wet\n20m 1.2\n", "40m=1.6-1.9 20m=1.2"],
    ["Band|low end|centre|high end\n40m|1.5|2.2|1.8\n20m|1.3|1.1|1.4\n", "40m=1.5-2.2 20m=1.1-1.4"],
    ["Band;SWR low end;SWR middle;SWR high end\n40m;1.5;1.2;1.8\n20m;1.3;1.1;1.4\n", "40m=1.2-1.8 20m=1.1-1.4"],
  ])("several of one band are its range: %j", (content, expected) => {
    expect(read(content)).toMatch(new RegExp(`^${expected}; frequency-repeated`));
  });

  test.each([
    ["40m 1½\n20m 2¼\n", "40m=1.5 20m=2.25"],
    ["20m 3 elements 1.2\n40m 1.5\n", "40m=1.5; row-left-out"],
    ["40m 1:9 balun 2.4\n20m 1.3\n", "20m=1.3; row-left-out"],
    ["40m 1.5 (was 2.5)\n20m 1.8 @ 18 C\n", "40m=1.5 20m=1.8"],
    ["40m 1.2, 20m same\n", "40m=1.2 20m=1.2"],
    ["# Counterpoise 10 m, 2 pieces\n40m 1.5\n20m 1.8\n", "40m=1.5 20m=1.8"],
    ["20m of coax: 40m 1.5, 15m 1.2\n", "40m=1.5 15m=1.2"],
    ["Wire 20 m, SWR:\n40m 1.8\n15m 2.2\n", "40m=1.8 15m=2.2"],
    ["Mast 6 m: 3 guys\n40m 1.5\n20m 1.8\n", "40m=1.5 20m=1.8"],
    ["Height (m);SWR\n6 m;1.5\n10 m;1.3\n", "refused"],
    ["80m 1.2, 40m, 20m\n", "80m=1.2; row-left-out"],
    ["CB 27.205 1.4\n10m 28.5 1.8\n40m 7.1 1.3\n", "28.5=1.8 7.1=1.3; row-left-out; spot-readings"],
    ["40m 1.5 at 7.2, 20m 1.2 at 14.1\n", "7.2=1.5 14.1=1.2; spot-readings"],
    ["80m: 2.1 at 3.5, 1.4 at 3.6, 1.9 at 3.8\n", "3.5=2.1 3.6=1.4 3.8=1.9; spot-readings"],
    ["7.0=1.5, 7.1=1.3, 7.2=1.4\n", "7=1.5 7.1=1.3 7.2=1.4; spot-readings"],
    ["on 40 1.5, on 20 1.2, on 15 1.8\n", "40m=1.5 20m=1.2 15m=1.8"],
    ["SWR = 1.5 (40m), SWR = 1.3 (20m)\n", "40m=1.5 20m=1.3"],
    ["F=7050 kHz; SWR=1.6; Z0=75\nF=7100 kHz; SWR=1.3; Z0=75\n", "(75) 7.05=1.6 7.1=1.3; spot-readings"],
    ["| Band | SWR | Remark |\n|---|---|---|\n| 40m | 1.6-1.9 | |\n| 20m | 1.2 | good |\n", "40m=1.6-1.9 20m=1.2"],
  ])("lines: %j", (content, expected) => {
    expect(read(content)).toBe(expected);
  });
});

describe("long runs of one thing end, read or refused", () => {
  test.each([" ", "a b ", "40m ", "ref ", "Z0 ", ";", "=", "1.5,"])("of %j", (piece) => {
    const run = piece.repeat(Math.floor(1900 / piece.length));
    for (const content of [
      `${run}\n`,
      `MHz;SWR ${run}\n7.0;1.5\n7.1;1.4\n`,
      `# Z0 ${run} x\nMHz;SWR\n7.0;1.5\n7.1;1.4\n`,
      `wire${run}x,2026-04-11,9 m,${run}\n`,
      `40m 1.5 ${run}\n20m 1.2 ${run}x\n`,
    ])
      expect(read(content)).not.toBe("");
  });
});
