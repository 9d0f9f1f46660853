/** What columns hold and how they are named, in several languages; spot readings; reference and date in the text. */
import { describe, expect, test } from "vitest";
import {
  expectLoad,
  expectMagnitudes,
  expectRefusal,
  LOAD,
  messageOf,
  notesOf,
  ROUNDING,
  RX_ROWS,
  readOne,
  rewritten,
  SWR_LOAD,
  SWR_ROWS,
  textOf,
} from "../support/known-load.js";
import type { Pair } from "../support/sweeps.js";

const PLAIN = ["reference-assumed"];
const degrees = ([real, imaginary]: Pair) => (Math.atan2(imaginary, real) * 180) / Math.PI;
const size = (value: Pair) => Math.hypot(...value);
const square = ([r, x]: Pair) => r * r + x * x;

describe("pairs that give the reflection with its phase", () => {
  // A reactance of zero has no parallel reactance; that point is left out everywhere here.
  const points = LOAD.filter(({ ohms: [, x] }) => x !== 0);

  test.each<[string, (ohms: Pair, reflection: Pair) => Pair]>([
    ["|Z| (Ohm),Phase (deg)", (ohms) => [size(ohms), degrees(ohms)]],
    ["|Z|,theta (rad)", (ohms) => [size(ohms), Math.atan2(ohms[1], ohms[0])]],
    ["Impedance (Ohm),Impedance angle (°)", (ohms) => [size(ohms), degrees(ohms)]],
    ["Rp (Ohm),Xp (Ohm)", (ohms) => [square(ohms) / ohms[0], square(ohms) / ohms[1]]],
    ["Parallel R,Parallel X", (ohms) => [square(ohms) / ohms[0], square(ohms) / ohms[1]]],
    ["G (S),B (S)", (ohms) => [ohms[0] / square(ohms), -ohms[1] / square(ohms)]],
    ["G (mS),B (mS)", (ohms) => [(1000 * ohms[0]) / square(ohms), (-1000 * ohms[1]) / square(ohms)]],
    ["R (kOhm),X (kOhm)", ([r, x]) => [r / 1000, x / 1000]],
    ["R (kΩ),X (kΩ)", ([r, x]) => [r / 1000, x / 1000]],
    ["|Z| (kOhm),Phase (deg)", (ohms) => [size(ohms) / 1000, degrees(ohms)]],
    ["|S11|,S11 angle (deg)", (_, reflection) => [size(reflection), degrees(reflection)]],
    ["S11 (dB),S11 angle (deg)", (_, reflection) => [20 * Math.log10(size(reflection)), degrees(reflection) - 720]],
    ["re(Γ),im(Γ)", (_, reflection) => reflection],
    ["real part of S11 (Ohm),imaginary part of S11 (Ohm)", (ohms) => ohms],
  ])("%s", (header, cells) => {
    const rows = points.map(({ mhz, ohms, reflection }) => [mhz, ...cells(ohms, reflection)].join(","));
    const sweep = readOne(textOf(`Frequency (MHz),${header}`, rows));
    expectLoad(sweep, { tolerance: 4e-15, points });
    expect(notesOf(sweep)).toEqual(PLAIN);
  });
});

describe("single readings", () => {
  const magnitudes = [0.5, 0.2, 0.1, 0.8].map((rho, i) => ({ frequencyHz: 7_000_000 + i * 50_000, rho }));

  test.each<[string, string, readonly number[]]>([
    ["reflected power in per cent", "Reflected power (%)", [25, 4, 1, 64]],
    ["ρ", "|Γ|", [0.5, 0.2, 0.1, 0.8]],
    ["ρ in per cent", "|Γ| (%)", [50, 20, 10, 80]],
    ["SWR", "SWR", [3, 1.5, 11 / 9, 9]],
  ])("%s", (_, header, values) => {
    const sweep = readOne(
      textOf(
        `Frequency (Hz),${header}`,
        magnitudes.map(({ frequencyHz }, i) => `${frequencyHz},${values[i]}`),
      ),
    );
    expectMagnitudes(sweep, magnitudes);
    expect(notesOf(sweep)).toEqual(PLAIN);
  });

  const LOSSES = [10, 20, 40, 20].map((db, i) => ({ db, frequencyHz: 7_000_000 + i * 50_000, rho: 10 ** -(db / 20) }));

  test.each([
    ["Return loss (dB)", 1, PLAIN],
    ["S11 (dB)", -1, PLAIN],
    ["Return loss (dB)", -1, ["reference-assumed", "return-loss-negative"]],
    ["S11 (dB)", 1, ["reference-assumed", "s11-positive"]],
  ])("%s with sign %i: one reading, and the odd ones are said", (header, sign, notes) => {
    const rows = LOSSES.map(({ frequencyHz, db }) => `${frequencyHz},${sign * db}`);
    const sweep = readOne(textOf(`Frequency (Hz),${header}`, rows));
    expectMagnitudes(sweep, LOSSES);
    expect(notesOf(sweep)).toEqual(notes);
  });
});

describe("header words", () => {
  test.each([
    ["English", "Frequency", ["SWR", "VSWR", "S.W.R."], "Resistance", "Reactance"],
    ["German", "Frequenz", ["SWV", "Stehwellenverhältnis"], "Wirkwiderstand", "Blindwiderstand"],
    ["French", "Fréquence", ["ROS", "TOS"], "Résistance", "Réactance"],
    ["Spanish", "Frecuencia", ["ROE"], "Resistencia", "Reactancia"],
    ["Italian", "Frequenza", ["ROS"], "Resistenza", "Reattanza"],
    ["Portuguese", "Frequência", ["ROE"], "Resistência", "Reatância"],
  ])("%s", (_, frequency, names, resistance, reactance) => {
    const rx = readOne(textOf(`${frequency} (MHz);${resistance};${reactance}`, rewritten(RX_ROWS, ";", ",")));
    expectLoad(rx, { tolerance: ROUNDING });
    expect(notesOf(rx)).toEqual(PLAIN);
    for (const name of names) {
      const swr = readOne(textOf(`${frequency} (MHz);${name}`, rewritten(SWR_ROWS, ";", ",")));
      expectMagnitudes(swr);
      expect(notesOf(swr)).toEqual(PLAIN);
    }
  });

  test.each(["Standing wave ratio", "Standing Wave Ratio (SWR)"])("SWR written out: %s", (name) => {
    expectMagnitudes(readOne(textOf(`Frequency (MHz),${name}`, SWR_ROWS)));
  });

  test.each([
    ["English", "Return loss (dB)"],
    ["German", "Rückflussdämpfung (dB)"],
    ["French", "Perte de retour (dB)"],
    ["Spanish", "Pérdida de retorno (dB)"],
    ["Italian", "Perdita di ritorno (dB)"],
    ["Portuguese", "Perda de retorno (dB)"],
  ])("return loss in %s: %s", (_, header) => {
    const sweep = readOne(textOf(`MHz;${header}`, "7;20", "7,1;40", "7,2;20"));
    expectMagnitudes(
      sweep,
      [0.1, 0.01, 0.1].map((rho, i) => ({ frequencyHz: 7_000_000 + i * 100_000, rho })),
    );
    expect(notesOf(sweep)).toEqual(PLAIN);
  });
});

describe("an SWR whose scale ends", () => {
  const expected = [9 / 11, 9 / 11, 9 / 11, 0.5, 0.2, 0.5].map((rho, i) => ({
    frequencyHz: 7_000_000 + i * 50_000,
    rho,
  }));

  test.each([
    ["three equal greatest values", ["10", "10", "10", "3", "1.5", "3"]],
    ["greater-than marks", [">10", "> 10", "≥10", "3", "1.5", "3"]],
    ["marks and an equal number", ["OL", "10", "inf", "3", "1.5", "3"]],
  ])("by %s means at least, and that is said", (_, cells) => {
    const rows = expected.map(({ frequencyHz }, i) => `${frequencyHz},${cells[i]}`);
    const sweep = readOne(textOf("Frequency (Hz),SWR", rows));
    expectMagnitudes(sweep, expected);
    expect(sweep).toMatchObject({ ceilingMagnitude: 9 / 11 });
    expect(notesOf(sweep)).toEqual(["reference-assumed", "saturated"]);
    expect(messageOf(sweep, "saturated")).toContain("at least 10");
  });
});

describe("spot readings", () => {
  // Middles of the bands that all ITU Regions share: 7.0-7.2, 14.0-14.35 and 28.0-29.7 MHz.
  const BANDS = [
    { frequencyHz: 7_100_000, rho: 0.2 },
    { frequencyHz: 14_175_000, rho: 0.5 },
    { frequencyHz: 28_850_000, rho: 1 / 3 },
  ];

  test.each([
    ["40m 1.5\n20m 3\n10m 2\n"],
    ["Band;SWR\n40 m;1,5\n20 m;3,0:1\n10 m;2\n"],
    ["10m: SWR 2\n20m: SWR 3\n40m: SWR 1.5:1"],
  ])("%j names bands: each stands for its whole band, and that is said", (text) => {
    const sweep = readOne(text);
    expectMagnitudes(sweep, BANDS);
    expect(sweep.continuity).toBe("spots");
    const codes = sweep.findings.map(({ code }) => code);
    expect(codes).toContain("spot-band");
    expect(codes).not.toContain("spot-readings");
  });

  test("by frequency are no curve, and that is said", () => {
    const sweep = readOne(textOf("Frequency (MHz),SWR", "7.1,1.5", "14.175,3", "28.85,2"));
    expectMagnitudes(sweep, BANDS);
    expect(sweep.continuity).toBe("spots");
    expect(notesOf(sweep)).toEqual(["reference-assumed", "spot-readings"]);
  });
});

describe("a reference impedance in the text", () => {
  test.each([
    ["# Z0 = 75 Ohm", "SWR"],
    ["% Ref Impedances: Z01: 75, Z02: 75", "SWR"],
    ["# Reference impedance Z0 = 75 Ohm", "SWR"],
    ["Impedance,75", "SWR"],
    ["# reference impedance 75 ohm", "SWR"],
    ["# at the lock", "SWR (75 Ohm)"],
    ["# Bezugswiderstand: 75 Ω", "SWR"],
    ["# impedancia de referencia 75 ohm", "SWR"],
    ["# all readings relative to 75 Ω", "SWR"],
  ])("%j, %j: is what the readings refer to, and that is said", (line, header) => {
    const text = textOf(line, `Frequency (MHz),${header}`, SWR_ROWS);
    const sweep = readOne(text);
    expectMagnitudes(sweep, SWR_LOAD, ROUNDING, 75);
    expect(notesOf(sweep)).toEqual(["reference-read"]);
    expect(messageOf(sweep, "reference-read")).toContain("75 Ω");
  });

  test("of 50 ohm is what the readings refer to as well", () => {
    expect(notesOf(readOne(textOf("# Z0 = 50 Ohm", "Frequency (MHz),SWR", SWR_ROWS)))).toEqual(["reference-read"]);
  });

  test("stands back behind the user's word", () => {
    const told = readOne(textOf("# Z0 = 75 Ohm", "Frequency (MHz),SWR", SWR_ROWS), { referenceOhms: 50 });
    expect(told.referenceOhms).toBe(50);
    expect(notesOf(told)).toEqual([]);
  });

  test("that may be of something else is only mentioned", () => {
    const sweep = readOne(textOf("# feedline impedance is about 75", "Frequency (MHz),SWR", SWR_ROWS));
    expect(sweep.referenceOhms).toBe(50);
    expect(notesOf(sweep)).toEqual(["reference-assumed", "reference-mentioned"]);
  });

  test("of two values is for the user to say", () => {
    const text = textOf("# Z0 = 75 Ohm", "# system impedance 50 ohm", "Frequency (MHz),SWR", SWR_ROWS);
    expectRefusal(text, { code: "ambiguous", says: /two reference impedances/ });
    expect(readOne(text, { referenceOhms: 75 }).referenceOhms).toBe(75);
  });

  test("tells what R and X are, through the closed form of Γ", () => {
    // 75 ohm at Z0 = 75 is a match; at 50 it would be Γ = 0.2.
    const sweep = readOne(textOf("# Z0 = 75 Ohm", "Freq (MHz),R,X", "7,75,0", "7.1,75,0", "7.2,75,0"));
    expect([...sweep.reflectionMagnitude]).toEqual([0, 0, 0]);
  });
});

describe("the date of a sweep", () => {
  test.each([
    ["# Date: 2031-05-04 10:30", "mooring.csv", "2031-05-04T10:30"],
    ["# Date: 2031/05/04", "mooring.csv", "2031-05-04"],
    ["# taken 20310504_1030", "mooring.csv", "2031-05-04T10:30"],
    ["# at the lock", "mooring-2031-05-04.csv", "2031-05-04"],
    ["# at the lock", "20310504 lock 7.csv", "2031-05-04"],
    ["# Date: 2031-05-04", "mooring-2030-01-01.csv", "2031-05-04"],
    ["# Date: 04.05.2031", "mooring.csv", null],
    ["# Date: 2031-13-04", "mooring-20319999.csv", null],
    ["# serial 1203105041", "mooring.csv", null],
  ])("%j in a file called %j: %j", (line, fileName, takenAt) => {
    const sweep = readOne(textOf(line, "Frequency (MHz),SWR", SWR_ROWS), { fileName });
    expectMagnitudes(sweep);
    expect(sweep.takenAt).toBe(takenAt);
  });

  test("is read from comments of a Touchstone text as well", () => {
    expect(readOne(textOf("! 2031-05-04 10:30", "# MHz S RI R 50", "7 0.5 0", "7.1 0.5 0")).takenAt).toBe(
      "2031-05-04T10:30",
    );
  });

  test("is none where only numbers look like one", () => {
    const rows = SWR_LOAD.map(({ swr }, i) => `${20_310_504 + i * 1000},${swr}`);
    expect(readOne(textOf("Frequency (Hz),SWR", rows)).takenAt).toBeNull();
  });
});
