/** More habits of writers whom the reader did not know, all invented: what each file says, in short (as in by-others.test.ts). */
import { readSweeps, type Sweep, type VectorSweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { readInShort as read } from "../support/read-in-short.js";
import { present } from "../support/sweeps.js";

const sweepIn = (content: string): Sweep =>
  present(readSweeps(new TextEncoder().encode(content), { fileName: "made.txt" })[0], "a sweep");
describe("a sentence", () => {
  test.each([
    [
      "At 21.0 MHz I read an SWR of 1.31, at 21.2 MHz the SWR was 1.23, and 1.43 at 21.4 MHz.\n",
      "21=1.31 21.2=1.23 21.4=1.43",
    ],
    ["À 28.0 MHz le ROS est de 2.23, à 28.5 MHz il est de 4.33, et 5.25 à 29.0 MHz.\n", "28=2.23 28.5=4.33 29=5.25"],
    ["A 21.0 MHz il ROS è 1.82, a 21.1 MHz è 2.10, e 3.07 a 21.2 MHz.\n", "21=1.82 21.1=2.1 21.2=3.07"],
    [
      "Resonant at 14.2 MHz with an SWR of 1.4. The SWR reaches 2.0 at 14.06 MHz and at 14.34 MHz.\n",
      "14.2=1.4 14.06=2 14.34=2",
    ],
  ])("may turn place and value round at its end: %j", (content, expected) => {
    expect(read(content).replace(/; .*/, "")).toBe(expected);
  });

  test("of each frequency may have words of its own", () => {
    expect(
      read("A 3.64 MHz la ROE es 1.30.\nROE 1.5 a 14.14 MHz.\nA 24.97 MHz la ROE es 1.7.\n").replace(/; .*/, ""),
    ).toBe("3.64=1.3 14.14=1.5 24.97=1.7");
  });

  test("may state a ratio from the other end", () => {
    expect(read("Vid 3,615 MHz är SWR 1:1,7.\nVid 10,13 MHz är SWR 1:1,2.\n").replace(/; .*/, "")).toBe(
      "3.62=1.7 10.13=1.2",
    );
  });
});

describe("notes", () => {
  test.each([
    ["SWR 1.3: 160m and 6m\nSWR 1.2: 40m and 15m\nSWR 2.3: 17m\n", "40m=1.2 15m=1.2 160m=1.3 6m=1.3 17m=2.3"],
    ["antenna;band;SWR\nend-fed wire;15m;1.2\nend-fed wire;6m;1.1\ndipole;160m;3.2\n", "15m=1.2 6m=1.1 160m=3.2"],
  ])("of several bands: %j", (content, expected) => {
    const bands = (text: string) => text.replace(/; .*/, "").split(" ").toSorted();
    expect(bands(read(content))).toEqual(bands(expected));
  });

  test("in a table whose rows end early keep those rows", () => {
    expect(read("Band\tloop\tdoublet\n30m\t1.6\t2.1\n15m\t1.3\t1.4\n10m\t1.3\t\n").replace(/; .*/, "")).toBe(
      "30m=1.6 15m=1.3 10m=1.3 | 30m=2.1 15m=1.4",
    );
  });

  test("with a slip that may be two things leave it out, and say so", () => {
    expect(read("40m 1.2\n20m 1..4\n10m 1.5\n")).toBe("40m=1.2 10m=1.5; row-left-out");
  });

  test("of places without as many values are no readings", () => {
    expect(read("40/20/15m 1.5/1.8\n10m 1.3\n80m 1.2\n")).toContain("row-left-out");
  });

  test.each([
    ["wishes", "What I would like to reach:\n160m: SWR under 1.5\n20m: SWR under 1.8\n"],
    ["powers", "Forward set to 100, then switched to REV:\n6.9 MHz  46.7\n7.0 MHz  36.5\n7.1 MHz  24.4\n"],
    ["as many as are not there", "start 10 MHz, stop 10.2 MHz, 21 points\nSWR:\n1.77\n1.76\n1.75\n1.74\n1.73\n"],
    ["impedances", "Z(1.76 MHz) = 38.4\nZ(1.77 MHz) = 36.7\n"],
  ])("that tell of %s are no readings", (_, content) => {
    expect(read(content)).toBe("refused");
  });
});

describe("values with their names", () => {
  test("have their bars: |X| tells no sign", () => {
    const rows = [11, 8, 5].map((x, i) => `[${7000 + 10 * i} kHz]\nR = ${40 + i} ohm\n|X| = ${x} ohm\n`);
    expect(sweepIn(rows.join("")).kind).toBe("scalar");
  });

  test.each([
    ["R=64.5  X=38.2 cap.", -38.2],
    ["R=64.5  X=38.2 ind.", 38.2],
  ])("may tell the sign in a word: %s", (cells, reactance) => {
    const { reflectionReal, reflectionImaginary } = sweepIn(
      [50, 52, 54].map((mhz) => `${mhz} MHz\n  ${cells}\n`).join("\n"),
    ) as VectorSweep;
    // Γ = (Z - 50) / (Z + 50), written out.
    const size = 114.5 ** 2 + reactance ** 2;
    expect(reflectionReal[0]).toBeCloseTo((64.5 ** 2 - 50 ** 2 + reactance ** 2) / size, 10);
    expect(reflectionImaginary[0]).toBeCloseTo((100 * reactance) / size, 10);
  });

  test("may be a size with its angle", () => {
    const sweep = sweepIn("Z(1.76 MHz) = 50/_ -90°\nZ(1.77 MHz) = 50/_ -80°\nZ(1.78 MHz) = 50/_ -70°\n") as VectorSweep;
    expect(sweep.kind).toBe("vector");
    // 50 Ω at -90° is -j50: Γ = -j.
    expect(sweep.reflectionImaginary[0]).toBeCloseTo(-1, 10);
  });
});

describe("a table to be typeset", () => {
  test("has its cells between ampersands", () => {
    const rows =
      "1 & 18 062,5 & -8,26 & 2,26 \\\\\n2 & 18 075,0 & -10,80 & 1,81 \\\\\n3 & 18 087,5 & -14,65 & 1,45 \\\\\n";
    const sweep = sweepIn(
      `\\begin{tabular}{rrrr}\n\\hline\npt & Freq. (kHz) & S11 (dB) & SWR \\\\ \\hline\n${rows}\\end{tabular}\n`,
    );
    expect([...sweep.frequencyHz]).toEqual([18_062_500, 18_075_000, 18_087_500]);
  });

  test("writes its units as commands", () => {
    const sweep = sweepIn(
      "$f$ (MHz) & $R$ ($\\Omega$) & $X$ ($\\Omega$) \\\\\n7.0 & 40 & -30 \\\\\n7.1 & 45 & 2 \\\\\n7.2 & 50 & 31 \\\\\n",
    );
    expect(sweep).toMatchObject({ kind: "vector" });
    expect(sweep.frequencyHz.length).toBe(3);
  });
});

describe("a column of angles", () => {
  test("is that of |Z| where |Z| agrees with the SWR at the reference that is stated", () => {
    const rows = "50.0 329.85 -49.7 3.17\n50.2 315.41 -47.6 2.94\n50.4 301.50 -45.2 2.71\n";
    const { reflectionReal } = sweepIn(`; Z0 = 200 Ω\nMHz |Z| Phase SWR\n${rows}`) as VectorSweep;
    // Z = 329.85 Ω at -49.7°, against 200 Ω, reckoned by hand.
    expect(reflectionReal[0]).toBeCloseTo(0.294, 2);
  });

  test.each(["phase/deg.", "phase of S11 in deg."])("may end its unit with a point: %s", (name) => {
    const rows = "7.0 MHz,-5.8 dB,-52 deg.\n7.1 MHz,-6.4 dB,-54 deg.\n7.2 MHz,-7.0 dB,-56 deg.\n";
    expect(sweepIn(`f,S11,${name}\n${rows}`).kind).toBe("vector");
  });
});

describe("a reference", () => {
  test("is that of the line where all values are against it", () => {
    expect(
      sweepIn("line: 75 ohm twin-lead, all values against it\nMHz,SWR\n7,1.5\n7.1,1.3\n7.2,1.6\n").referenceOhms,
    ).toBe(75);
  });

  test("below the readings contradicts the one above, whatever form they have", () => {
    expect(read("ref. Z 450 ohm\nf(kHz) VSWR\n18000 6.3191\n18006 6.3041\n18012 6.2891\nZo: 100 ohm\n")).toBe(
      "refused",
    );
  });

  test("that a note on the readings contradicts is asked for", () => {
    expect(read("# Z0 = 50 ohm\n# note: bridge and values are for 75 ohm\nMHz,SWR\n7,1.5\n7.1,1.3\n7.2,1.6\n")).toBe(
      "refused",
    );
  });
});

describe("rows and names that slipped", () => {
  test("rows above the first that is a number are said to be left out", () => {
    expect(read("f (MHz)\tSWR\n420.0O\t4.0\n422.5O\t3.6\n425.00\t3.2\n427.50\t2.8\n430.00\t2.5\n")).toBe(
      "425:3.2 427.5:2.8 430:2.5; row-left-out",
    );
  });

  test("a reading in even steps within a band, beside frequencies that are in none, is the frequency", () => {
    expect(read("SWR,MHz\n7.00,4.029\n7.05,3.179\n7.10,2.464\n7.15,1.880\n7.20,1.418\n")).toBe("refused");
  });

  test("with a decimal comma a number in brackets is negative, and no pair", () => {
    const rows = "3500;23,23;(27,55)\n3530;26,50;(25,23)\n3560;30,58;(23,12)\n";
    const { reflectionImaginary } = sweepIn(`f/kHz;R/ohm;X/ohm\n${rows}`) as VectorSweep;
    // Γ of 23.23 - j27.55 Ω against 50 Ω, reckoned by hand.
    expect(reflectionImaginary[0]).toBeCloseTo(-0.45, 3);
  });

  test("the share of power that comes back may be in % behind a stroke", () => {
    const { reflectionMagnitude } = sweepIn("freq/kHz;P refl/P fwd/%\n49500;81\n49690;64\n49880;49\n");
    expect([...reflectionMagnitude].map((rho) => Number(rho.toFixed(9)))).toEqual([0.9, 0.8, 0.7]);
  });
});
