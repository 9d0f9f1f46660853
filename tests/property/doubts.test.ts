/** What may turn an answer is said beside it. All sweeps are invented. */
import { check, diff, feedlineFrom, groupGrades, modeOf, planById, readSweeps } from "@feedpoint/core";
import { parseStation } from "@feedpoint/core/schema";
import { describe, expect, test } from "vitest";
import { graded } from "../support/graded.js";
import { evenly, present, sweepOfMagnitudes } from "../support/sweeps.js";

const plan = present(planById("us-part97"), "us-part97");
const itu = present(planById("itu-r1"), "itu-r1");
const axis = evenly(3e6, 30e6, 50e3);
const flat = (rho: number) => sweepOfMagnitudes(axis, Array<number>(axis.length).fill(rho));
const codes = (findings: readonly { code: string }[]) => findings.map(({ code }) => code);
const read = (text: string) => present(readSweeps(new TextEncoder().encode(text))[0], "sweep");

describe("a verdict", () => {
  test("that the analyser's own error may turn is called unsure, another is not", () => {
    const unsure = (rho: number) =>
      codes(check(flat(rho), { plan: itu, bands: ["40m"], instrument: { directivityDb: 30 } }).findings).includes(
        "verdict-unsure",
      );
    // 30 dB is 0.032 in ρ; the limit of 2:1 lies at 0.333.
    expect([0.2, 0.29, 0.31, 0.36, 0.38].map(unsure)).toEqual([false, false, true, true, false]);
  });
});

describe("modes and power", () => {
  test("a mode that may not be sent where another may is named, with the bands", () => {
    // A technician may send Morse alone on 40 m and 15 m (47 CFR 97.301(e), 97.305).
    const { findings } = check(flat(0.1), {
      plan,
      licenceClass: "technician",
      bands: ["40m", "15m", "10m"],
      modes: [modeOf("ssb"), modeOf("cw")],
    });
    const said = findings.filter(({ code }) => code === "mode-not-permitted").map(({ message }) => message);
    expect(said).toEqual(["ssb may not be sent on 40m, 15m; what is told there is for the other modes."]);
  });

  test("power that no licence limit holds down, and a line of no known rating, are not left without a word", () => {
    const asked = { bands: ["40m"], modes: [modeOf("ssb")], equipment: { radio: { powerW: 1500 } } };
    const feedline = feedlineFrom({ kind: "rg-174", lengthM: 10 });
    const both = ["power-limit-unknown", "feedline-rating-unknown"];
    const at = (wanted: typeof plan, line: typeof feedline) =>
      codes(check(flat(0.1), { ...asked, plan: wanted, feedline: line }).findings).filter((code) =>
        both.includes(code),
      );
    expect(at(itu, feedline)).toEqual(both);
    expect(at(plan, { ...feedline, ratedVolts: 400 })).toEqual([]);
  });
});

describe("readings by hand", () => {
  test("beyond the scale are infinite, and what is no reading is named", () => {
    const sweep = read("80m >10\n40m 1.5\nlawn flooded\n20m off scale\n");
    expect(Array.from(sweep.reflectionMagnitude, (rho) => Number(rho.toFixed(3)))).toEqual([0.818, 0.2, 1]);
    const left = sweep.findings.filter(({ code }) => code === "row-left-out");
    expect(left.map(({ line }) => line)).toEqual([3]);
  });
});

describe("a reactance folded at zero", () => {
  const kindOf = (reactances: readonly number[]) =>
    read(`MHz,R,X\n${reactances.map((x, i) => `${(7 + i / 40).toFixed(3)},50,${x}`).join("\n")}\n`).kind;

  test("has lost its sign though no reading came close to zero", () => {
    expect(kindOf([25, 15, 5, 5, 15, 25])).toBe("scalar");
    expect(kindOf([32, 23, 13, 4, 6, 15, 26])).toBe("scalar");
  });

  test("is not seen in one that bends evenly, or only rises", () => {
    expect(kindOf([40, 34, 31, 30, 31, 34, 40])).toBe("vector");
    expect(kindOf([10, 14, 18, 22, 26, 30, 34])).toBe("vector");
  });
});

describe("a comparison", () => {
  test("of repeats that are unlike does not say that nothing changed", () => {
    const { headline } = diff([flat(0.2), flat(0.4)], [flat(0.21), flat(0.39)], { plan: itu, bands: ["40m"] });
    expect(headline).toBe("Nothing can be told on 40m: the sweeps of one side differ too much among themselves.");
  });

  test("names the bands that it leaves out though they were asked for", () => {
    const narrow = sweepOfMagnitudes(evenly(6.9e6, 7.3e6, 10e3), Array<number>(41).fill(0.2));
    const { findings } = diff(flat(0.2), narrow, { plan: itu, bands: ["40m", "20m"] });
    expect(findings.find(({ code }) => code === "band-not-compared")?.message).toContain(": 20m.");
  });
});

describe("groups", () => {
  test("are told apart by those that have enough sweeps, whatever a single one did", () => {
    const sweep = (value: string, bestSwr: number, i: number) =>
      graded(`${value}${i}.s1p`, { bestSwr, log: { shape: value } });
    const sweeps = [
      ...[1.2, 1.21, 1.22, 1.23, 1.24].map((swr, i) => sweep("sloper", swr, i)),
      ...[1.8, 1.81, 1.82, 1.83, 1.84].map((swr, i) => sweep("vee", swr, i)),
      sweep("roof", 2.5, 0),
    ];
    expect(groupGrades(sweeps, "shape").map(({ isBeyondSpread }) => isBeyondSpread)).toEqual([true]);
  });
});

describe("a station file", () => {
  test("with a wanted frequency in MHz, or a misspelt kind of line, is refused with what was meant", () => {
    expect(() => parseStation({ wantedHz: { "40m": 7.1 } })).toThrow("frequencies are in Hz: 7100000, not 7.1");
    expect(() => parseStation({ feedline: { kind: "rg58", lengthM: 5 } })).toThrow('Did you mean "rg-58"?');
  });
});

describe("a Touchstone file", () => {
  test("with every dB above zero is told that a sign is missing", () => {
    const sweep = read("# MHz S DB R 50\n7 9.1 10\n7.1 13.9 20\n7.2 19.1 30\n");
    expect(codes(sweep.findings)).toContain("s11-positive");
  });
});
