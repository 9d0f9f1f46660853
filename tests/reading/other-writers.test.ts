/** Habits of writers whom the reader did not know, all invented: what each file says, in short (as in by-others.test.ts). */
import { lineLedger, readSweeps, sampleReflection, type VectorSweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { readInShort as read } from "../support/read-in-short.js";

const [FIRST, SECOND] = ["7.05:1.6 7.1:1.3 7.15:1.5", "14.05:2.1 14.1:1.7 14.15:2"];
const BOTH = `${FIRST} | ${SECOND}`;
const [ROWS, OTHERS] = ["7.05,1.6\n7.1,1.3\n7.15,1.5\n", "14.05,2.1\n14.1,1.7\n14.15,2\n"];

describe("sections under titles of their own", () => {
  test.each([
    `[Dipole]\nMHz,SWR\n${ROWS}\n[Loop]\nMHz,SWR\n${OTHERS}`,
    `Z0 = 50 ohm\n# Dipole\n# MHz,SWR\n${ROWS}\n\n# Loop\n# MHz,SWR\n${OTHERS}`,
    `Dipole\nMHz,SWR\n${ROWS}\nLoop\nMHz,SWR\n${OTHERS}`,
    `== Antenna: dipole, 8 m\nMHz,SWR\n${ROWS}\nAntenna: loop\nMHz,SWR\n${OTHERS}`,
    `## Dipole\n\n| MHz | SWR |\n|---|---|\n| 7.05 | 1.6 |\n| 7.1 | 1.3 |\n| 7.15 | 1.5 |\n\n## Loop\n\n| MHz | SWR |\n|---|---|\n| 14.05 | 2.1 |\n| 14.1 | 1.7 |\n| 14.15 | 2 |\n`,
    "[GP]\nmhz = 7.05, 7.1, 7.15\nswr = 1.6, 1.3, 1.5\n\n[Loop]\nmhz = 14.05, 14.1, 14.15\nswr = 2.1, 1.7, 2\n",
    "dipole:\n  - {mhz: 7.05, swr: 1.6}\n  - {mhz: 7.1, swr: 1.3}\n  - {mhz: 7.15, swr: 1.5}\nloop:\n  - {mhz: 14.05, swr: 2.1}\n  - {mhz: 14.1, swr: 1.7}\n  - {mhz: 14.15, swr: 2}\n",
    "<html><body><h2>Dipole</h2><table><tr><th>MHz</th><th>SWR</th></tr><tr><td>7.05</td><td>1.6</td></tr><tr><td>7.1</td><td>1.3</td></tr><tr><td>7.15</td><td>1.5</td></tr></table><h2>Loop</h2><table><tr><th>MHz</th><th>SWR</th></tr><tr><td>14.05</td><td>2.1</td></tr><tr><td>14.1</td><td>1.7</td></tr><tr><td>14.15</td><td>2</td></tr></table></body></html>",
  ])("are sweeps of their own: %j", (content) => {
    expect(read(content)).toBe(BOTH);
  });

  test("have references of their own", () => {
    expect(read(`[Dipole]\nZ0 = 75 ohm\nMHz,SWR\n${ROWS}\n[Loop]\nZ0 = 450 ohm\nMHz,SWR\n${OTHERS}`)).toBe(
      `(75) ${FIRST} | (450) ${SECOND}`,
    );
  });

  test.each([
    ["of a band", `[40m]\nMHz,SWR\n${ROWS}\n[20m]\nMHz,SWR\n${OTHERS}`],
    ["of a part", `# first part\n# MHz,SWR\n${ROWS}\n# second part\n# MHz,SWR\n${OTHERS}`],
  ])("are one sweep where the titles are those %s", (_, content) => {
    expect(read(content).replace(/; .*/, "")).toBe(`${FIRST} ${SECOND}`);
  });

  test("are one sweep where each goes on where the one before ended", () => {
    expect(read("[Start]\nMHz,SWR\n7,1.6\n7.05,1.3\n[Rest]\nMHz,SWR\n7.1,1.5\n7.15,1.7\n").replace(/; .*/, "")).toBe(
      "7:1.6 7.05:1.3 7.1:1.5 7.15:1.7",
    );
  });

  test.each([
    "80m 1.3\ntea\n40m 3.3\n20m 2.3\n15m 2.2\nthen it rained\n12m 1.5\n10m 2.6\n",
    "today\n80m 1.3\n40m 3.3\ntea\n20m 2.3\n15m 2.2\n12m 1.5\n10m 2.6\n",
  ])("are not begun by talk among notes: %j", (content) => {
    expect(read(content).replace(/; .*/, "")).toBe("80m=1.3 40m=3.3 20m=2.3 15m=2.2 12m=1.5 10m=2.6");
  });

  test("of notes are told apart where titles are set off, whatever their bands", () => {
    expect(read("[Loop]\n40m 1.7\n30m 1.2\n[Beam]\n20m 3.5\n15m 1.4\n")).toBe("40m=1.7 30m=1.2 | 20m=3.5 15m=1.4");
  });

  test("of notes are antennas of their own", () => {
    expect(read("Loop\n17m SWR 1.7\n6m SWR 1.2\n\nDoublet\n80m SWR 3.5\n6m SWR 1.4\n")).toBe(
      "17m=1.7 6m=1.2 | 80m=3.5 6m=1.4",
    );
  });

  test("keep the numbers of their lines in the ledger", () => {
    const ledger = lineLedger(`[Dipole]\nMHz,SWR\n${ROWS}no number\n[Loop]\nMHz,SWR\n${OTHERS}`);
    expect(ledger).toMatchObject({ lines: 11, data: 6, header: 2, comments: 2 });
    expect(ledger?.leftOut).toEqual([{ line: 6, reason: "no-number", text: "no number" }]);
  });
});

describe("antennas in a column", () => {
  test.each(["Antenne", "Антенна", "アンテナ", "Antena"])("of rows in bands of their own: %s", (name) => {
    const rows = "Dipole;7.05;1.6\nDipole;7.1;1.3\nLoop;28.1;1.2\nLoop;28.2;1.4\nWhip;14.05;2.1\nWhip;14.1;1.7\n";
    expect(read(`${name};MHz;SWR\n${rows}`)).toBe("7.05:1.6 7.1:1.3 | 28.1:1.2 28.2:1.4 | 14.05:2.1 14.1:1.7");
  });

  test("as elements that hold those of their points", () => {
    const points = (rows: string) => rows.replace(/(\S+),(\S+)\n/g, '<p mhz="$1" swr="$2"/>');
    expect(
      read(
        `<all><antenna name="Dipole">${points(ROWS)}</antenna><antenna name="Loop">${points(OTHERS)}</antenna></all>`,
      ),
    ).toBe(BOTH);
  });

  test("as titles over tables side by side that have the same names", () => {
    const content =
      "Dipole\t\t\tLoop\t\nQRG (MHz)\tSWR\t\tQRG (MHz)\tSWR\n7.05\t1.6\t\t14.05\t2.1\n7.1\t1.3\t\t14.1\t1.7\n";
    expect(read(content)).toBe("7.05:1.6 7.1:1.3 | 14.05:2.1 14.1:1.7");
  });
});

describe("tables as programs write them", () => {
  test.each([
    "/* f_mhz, swr */\nstatic const float sweep[][2] = {\n  {7.05, 1.6},\n  {7.1, 1.3},\n  {7.15, 1.5}\n};\n",
    "# f_mhz vswr\n[[7.05  1.6]\n [7.1  1.3]\n [7.15 1.5]]\n",
    "{'f_mhz': 7.05, 'swr': 1.6}\n{'f_mhz': 7.1, 'swr': 1.3}\n{'f_mhz': 7.15, 'swr': 1.5}\n",
    "sweep = {\n  {f_mhz=7.05, swr=1.6},\n  {f_mhz=7.1, swr=1.3},\n  {f_mhz=7.15, swr=1.5},\n}\n",
    "f_mhz <- c(7.05, 7.1,\n  7.15)\nswr <- c(1.6, 1.3,\n  1.5)\n",
    "- f_hz: 7.05e+06\n  swr: 1.6\n- f_hz: 7.1e+06\n  swr: 1.3\n- f_hz: 7.15e+06\n  swr: 1.5\n",
    "    f_mhz   swr\n0   7.05   1.6\n1   7.1   1.3\n2   7.15   1.5\n",
    "<rows><Row><Cell>MHz</Cell><Cell>SWR</Cell></Row><Row><Cell>7.05</Cell><Cell>1.6</Cell></Row><Row><Cell>7.1</Cell><Cell>1.3</Cell></Row><Row><Cell>7.15</Cell><Cell>1.5</Cell></Row></rows>",
    "[table][tr][th]MHz[/th][th]SWR[/th][/tr][tr][td]7.05[/td][td]1.6[/td][/tr][tr][td]7.1[/td][td]1.3[/td][/tr][tr][td]7.15[/td][td]1.5[/td][/tr][/table]",
    '{"antenna": "loop", "height_m": 8}\n{"mhz": 7.05, "swr": 1.6}\n{"mhz": 7.1, "swr": 1.3}\n{"mhz": 7.15, "swr": 1.5}\n',
    '{"units": {"f": "MHz"}, "points": [{"f": 7.05, "swr": 1.6}, {"f": 7.1, "swr": 1.3}, {"f": 7.15, "swr": 1.5}]}',
    "# columns are f (MHz) / SWR\n7.05;1.6\n7.1;1.3\n7.15;1.5\n",
    "[10:00:07] INFO point f_mhz=7.05 swr=1.6\n[10:00:09] INFO point f_mhz=7.1 swr=1.3\n[10:00:11] INFO point f_mhz=7.15 swr=1.5\n",
  ])("are read: %j", (content) => {
    expect(read(content)).toBe(FIRST);
  });

  test("on their side in blocks are one", () => {
    expect(read("MHz:  7.05  7.1  7.15\nSWR:  1.6  1.3  1.5\n\nMHz   7.2\nSWR   1.7\n")).toBe(`${FIRST} 7.2:1.7`);
  });
});

describe("tables that were sent", () => {
  test.each([
    "Hello,\n\n> > MHz   SWR\n> > 7.05   1.6\n> > 7.1   1.3\n> > 7.15   1.5\n",
    "Fr=C3=A9quence (MHz);SWR=20\n7,05;1,6=20\n7,1;1,3=20\n7,15;1,5=20\n",
    "MHz&nbsp;SWR\n7.05&nbsp;1.6\n7.1&nbsp;1.3\n7.15&nbsp;1.5\n",
    'MHz,SWR\n="7.05",="1.6"\n="7.1",="1.3"\n="7.15",="1.5"\n',
    "MHz\nSWR\n7.05\n1.6\n7.1\n1.3\n7.15\n1.5\n",
    "MHz\n7.05\n7.1\n7.15\nSWR\n1.6\n1.3\n1.5\n",
    "MHz~SWR\n7.05~1.6\n7.1~1.3\n7.15~1.5\n",
    "f [MHz] : SWR\n7.05 : 1.6\n7.1 : 1.3\n7.15 : 1.5\n",
  ])("are read: %j", (content) => {
    expect(read(content)).toBe(FIRST);
  });

  test.each([
    "<html><body><ul><li>40m: 1.5</li><li>20m: 2.1</li></ul></body></html>",
    "<html><body><table><tr><th>Band</th><th>SWR</th></tr><tr><td>40m</td><td>1.5</td></tr><tr><td>20m</td><td>2.1</td></tr></table></body></html>",
    '<swr antenna="loop"><band name="40m">1.5</band><band name="20m">2.1</band></swr>',
    '[{"band": "40m", "swr": 1.5}, {"band": "20m", "swr": 2.1}]',
    "40m: SWR=3D1.5=20\n20m: SWR=3D2.1=20\n",
  ])("hold notes: %j", (content) => {
    expect(read(content)).toBe("40m=1.5 20m=2.1");
  });
});

describe("notes", () => {
  test.each([
    "forty metres SWR one point five\ntwenty metres two point one\n",
    "40 meters 1 point 5\n20 meters 2 point 1\n",
    "vierzig Meter SWR eins Komma fünf\nzwanzig Meter zwei Komma eins\n",
    "quarante mètres ROS un virgule cinq\nvingt mètres ROS deux virgule un\n",
    "cuarenta metros ROE uno coma cinco\nveinte metros ROE dos coma uno\n",
    "forty metres one to one point five\ntwenty metres one to two point one\n",
    "op 40 m staandegolf 1,5\nop 20 m staandegolf 2,1\n",
  ])("in words: %j", (content) => {
    expect(read(content)).toBe("40m=1.5 20m=2.1");
  });

  test.each([
    ["Antenna;3.65 MHz;14.1 MHz\ndipole;1.6;2.1\nloop;1.3;1.7\n", "3.65=1.6 14.1=2.1 | 3.65=1.3 14.1=1.7"],
    ["Antenna;5 MHz;24 MHz\ndipole;1.6;2.1\nloop;1.3;1.7\n", "60m=1.6 12m=2.1 | 60m=1.3 12m=1.7"],
    ["Antenne (SWR);40m;20m;\ndipôle;1,6;2,1;\nlong fil;1,3;1,7;\n", "40m=1.6 20m=2.1 | 40m=1.3 20m=1.7"],
    ["band\treturn loss dB\n40m\t14\n20m\t9.54\n", "40m=1.5 20m=2"],
    ["3.650.000 Hz: SWR 1,8\n14.100.000 Hz: SWR 1,5\n", "3.65=1.8 14.1=1.5"],
    ["3.65 Mc 1.8 to 1\n14.1 Mc 1.5 to 1\n", "3.65=1.8 14.1=1.5"],
    ["Raised the beam by 2 m. On 15 m the SWR is 1.3. On 20 m the SWR is 1.5.\n", "15m=1.3 20m=1.5"],
  ])("of further kinds: %j", (content, expected) => {
    expect(read(content).replace(/; (?:spot|frequency|last).*/, "")).toBe(expected);
  });

  test.each(["band;MHz;SWR\n80m;7.05;1.4\n40m;3.65;1.6\n", "40m 14.200 MHz 1.5\n20m 7.050 MHz 1.3\n"])(
    "whose band and frequency differ are doubted: %j",
    (content) => {
      expect(read(content)).toContain("band-contradicted");
    },
  );

  test("an antenna for another band is no contradiction", () => {
    expect(read("80m loop 14.2 MHz 1.5\n80m loop 7.05 MHz 1.3\n")).not.toContain("band-contradicted");
  });
});

describe("what tells the phase beside an SWR", () => {
  test.each([
    "f = 7.05 MHz, SWR = 2, R = 40 ohm, X = -30 ohm\nf = 7.1 MHz, SWR = 2, R = 25 ohm, X = 0 ohm\n",
    "7.05 MHz: Z = 40 - 30j\n7.1 MHz: Z = 25 + 0j\n",
    "7.05 MHz: Z = 50 ohms at -36.87 degrees\n7.1 MHz: Z = 25 ohms at 0 degrees\n",
    "7.05 megahertz, resistance 40 ohms, reactance minus 30 ohms\n7.1 megahertz, resistance 25 ohms, reactance 0 ohms\n",
    "Z in ohms\n7.05 MHz  40-30j\n7.1 MHz  25+0j\n",
    "f MHz\tR ohm\tsign of X\t|X| ohm\n7.05\t40\t-\t30\n7.1\t25\t+\t0\n",
    "f MHz,R (ohm),|X| (ohm),L/C\n7.05,40,30,C\n7.1,25,0.0,\n",
  ])("is read: %j", (content) => {
    const [sweep] = readSweeps(content);
    expect(sweep.kind).toBe("vector");
    const phases = Array.from(sweep.frequencyHz, (_, i) => {
      const { real, imaginary } = sampleReflection(sweep as VectorSweep, i);
      return [real, imaginary].map((part) => (Math.round(1000 * part) / 1000 + 0).toFixed(3)).join(" ");
    });
    // Γ = (Z - 50) / (Z + 50) of 40 - j30 and of 25 ohm.
    expect(phases).toEqual(["0.000 -0.333", "-0.333 0.000"]);
  });
});

describe("names and units", () => {
  test.each([
    ["MHz;v_fwd;v_refl\n7.05;4;2\n7.1;4;1\n", "7.05:3 7.1:1.67"],
    ["MHz;refl_pct_power\n7.05;25\n7.1;4\n", "7.05:3 7.1:1.5"],
    ["f;P refl/P fwd\n7.05 MHz;25%\n7.1 MHz;4%\n", "7.05:3 7.1:1.5"],
    ["MHz;|Γ| (% of voltage)\n7.05;50\n7.1;20\n", "7.05:3 7.1:1.5"],
    ["MHz;returnLossDb\n7.05;6.0206\n7.1;13.9794\n", "7.05:3 7.1:1.5"],
    ["MHz;SWR;± SWR\n7.05;3;0.1\n7.1;1.5;0.1\n", "7.05:3 7.1:1.5"],
    ["freq (x 1000 Hz);SWR\n7050;3\n7100;1.5\n", "7.05:3 7.1:1.5"],
    ["kHz;SWR\n7.050;3,0\n7.100;1,5\n", "7.05:3 7.1:1.5; cells-remarked"],
    ["impedance divided by 200 ohm\nMHz\tr\tx\n7.05\t3\t0\n7.1\t1.5\t0\n", "(200) 7.05:3 7.1:1.5"],
    ["MHz;SWR(50);SWR(75)\n7.05;3;2\n7.1;1.5;1.9\n", "7.05:3 7.1:1.5"],
    [
      "| MHz | Impedance \\|Z\\| (ohm) | Z phase (°) |\n|---|---|---|\n| 7.05 | 150 | 0 |\n| 7.1 | 75 | 0 |\n",
      "7.05:3 7.1:1.5",
    ],
  ])("are understood: %j", (content, expected) => {
    expect(read(content).replace("; remark-may-change", "")).toBe(expected);
  });

  test("frequencies counted in steps are asked about", () => {
    expect(read("f in steps of 10 kHz (700 = 7000 kHz); SWR\n700;1.68\n701;1.55\n702;1.44\n")).toBe("refused");
  });
});
