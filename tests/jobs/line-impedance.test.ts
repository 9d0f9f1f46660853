/**
 * A line whose own impedance is not what it is made for, one whose far end is not seen, and one whose stated length is wrong. Lines are
 * invented; the truth is their closed form, with noise, and the conversion to another reference is checked elsewhere.
 */
import {
  changeReference,
  feedlineKindById,
  type LineOptions,
  measureLine,
  scalarSweep,
  type VectorSweep,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { seededNormal } from "../support/seeded-noise.js";
import { evenly, type Pair, present, sweepOfReflections } from "../support/sweeps.js";

const LIGHT = 299_792_458;
const AXIS = evenly(1e6, 41e6, 100_000);
const RG58 = present(feedlineKindById("rg-58"), "rg-58");

interface Line {
  readonly ohms: number;
  readonly electricalM: number;
  /** dB one way at 10 MHz, growing with the root of frequency */
  readonly lossDb: number;
  readonly endOhms: number;
}

const lossAt = ({ lossDb }: Line, hz: number) => lossDb * Math.sqrt(hz / 1e7);

function sweepOf(line: Line, noise = 0.002, axis: readonly number[] = AXIS): VectorSweep {
  const normal = seededNormal(Math.round(line.ohms * 100 + line.electricalM));
  const { ohms, electricalM, endOhms } = line;
  const end = endOhms === Number.POSITIVE_INFINITY ? 1 : (endOhms - ohms) / (endOhms + ohms);
  const reflections = axis.map((hz): Pair => {
    const size = end * 10 ** (-lossAt(line, hz) / 10);
    const angle = (-4 * Math.PI * hz * electricalM) / LIGHT;
    const seen = changeReference({ real: size * Math.cos(angle), imaginary: size * Math.sin(angle) }, ohms, 50);
    return [seen.real + noise * normal(), seen.imaginary + noise * normal()];
  });
  return sweepOfReflections(axis, reflections);
}

const codes = (sweep: Parameters<typeof measureLine>[0], options: LineOptions) =>
  measureLine(sweep, options).findings.map(({ code }) => code);

describe("a line of another impedance than it is made for", () => {
  const lines = [0.92, 0.95, 0.97, 1.03, 1.05, 1.08].flatMap((share) =>
    [0, Number.POSITIVE_INFINITY, 150, 16].flatMap((endOhms) =>
      [9, 33].map((electricalM): Line => ({ ohms: 50 * share, electricalM, lossDb: electricalM / 20, endOhms })),
    ),
  );

  test.each(lines)("$ohms Ω, $electricalM m, end $endOhms Ω: its impedance is told, and its loss to 0.1 dB", (line) => {
    const result = measureLine(sweepOf(line), { endOhms: line.endOhms });
    expect(Math.abs(result.characteristicOhms / line.ohms - 1)).toBeLessThan(0.005);
    for (const { frequencyHz, matchedLossDb } of result.losses)
      expect(Math.abs(matchedLossDb - lossAt(line, frequencyHz))).toBeLessThan(0.1);
    expect(result.findings.map(({ code, severity }) => [code, severity])).toEqual([["line-impedance", "info"]]);
  });

  test("is only said to be so where another was stated", () => {
    const line = { ohms: 47, electricalM: 30, lossDb: 1, endOhms: 150 };
    const result = measureLine(sweepOf(line), { endOhms: 150, characteristicOhms: 50 });
    expect(result.characteristicOhms).toBe(50);
    expect(result.findings).toMatchObject([
      { code: "line-impedance", severity: "caution", params: { nominalOhms: 50 } },
    ]);
  });

  test("is not told without phase, and the doubt is said where the loss hangs on it", () => {
    const { frequencyHz, reflectionMagnitude } = sweepOf({ ohms: 50, electricalM: 30, lossDb: 1, endOhms: 150 });
    const columns = {
      frequencyHz: Float64Array.from(frequencyHz),
      reflectionMagnitude: Float64Array.from(reflectionMagnitude),
    };
    const scalar = scalarSweep({ label: "invented", referenceOhms: 50 }, columns);
    expect(codes(scalar, { endOhms: 150 })).toEqual(["line-impedance-unknown"]);
    // Taken for a short, what the resistor swallows is the same at all frequencies.
    expect(codes(scalar, { endOhms: 0 })).toEqual(["flat-loss"]);
  });
});

test.each([49.7, 50, 50.3])("a line of %d Ω is one of 50", (ohms) => {
  const result = measureLine(sweepOf({ ohms, electricalM: 30, lossDb: 1, endOhms: 0 }), { endOhms: 0 });
  expect(result.characteristicOhms).toBe(50);
  expect(result.findings).toEqual([]);
});

describe("a line that loses so much that its far end is not seen", () => {
  // 34 dB one way at the top of the sweep.
  const line = { ohms: 50, electricalM: 330, lossDb: 17, endOhms: 0 };
  const result = measureLine(sweepOf(line, 0.002, evenly(1e6, 41e6, 50_000)), { endOhms: 0 });

  test("says so, and is measured where it is seen", () => {
    expect(result.findings.map(({ code }) => code)).toEqual(["far-end-unseen"]);
    expect(Math.abs(present(result.electricalLengthM, "length") / 330 - 1)).toBeLessThan(0.01);
    expect(result.losses.every(({ frequencyHz }) => frequencyHz < 20e6)).toBe(true);
    for (const { frequencyHz, matchedLossDb } of result.losses)
      expect(Math.abs(matchedLossDb / lossAt(line, frequencyHz) - 1)).toBeLessThan(0.05);
  });

  test("is refused where it is not seen at all", () => {
    const sweep = sweepOf({ ...line, lossDb: 100 }, 0.002);
    expect(() => measureLine(sweep, { endOhms: 0 })).toThrow("nothing of the far end is seen");
  });
});

describe("a poor short, of 2 Ω", () => {
  test.each([12, 30, 60])("of %d m: what it swallows is told apart, and the line's loss to 0.1 dB", (electricalM) => {
    const line = { ohms: 50, electricalM, lossDb: electricalM / 25, endOhms: 2 };
    const result = measureLine(sweepOf(line), { endOhms: 0 });
    expect(result.findings.map(({ code }) => code)).toEqual(["flat-loss"]);
    for (const { frequencyHz, matchedLossDb } of result.losses)
      expect(Math.abs(matchedLossDb - lossAt(line, frequencyHz))).toBeLessThan(0.1);
  });
});

describe("a long line of another impedance", () => {
  test.each([47, 53, 78])("of %d Ω: 450 m electrical are told, although the near end drowns the far one", (ohms) => {
    const line = { ohms, electricalM: 450, lossDb: 9, endOhms: Number.POSITIVE_INFINITY };
    const result = measureLine(sweepOf(line, 0.002, evenly(1e6, 30e6, 50_000)), { endOhms: line.endOhms });
    expect(Math.abs(present(result.electricalLengthM, "length") / 450 - 1)).toBeLessThan(0.005);
    for (const { frequencyHz, matchedLossDb } of result.losses)
      expect(Math.abs(matchedLossDb / lossAt(line, frequencyHz) - 1)).toBeLessThan(0.05);
    expect(result.findings.map(({ code }) => code)).toEqual(["line-impedance"]);
  });
});

describe("a stated length", () => {
  const sweep = sweepOf({ ohms: 50, electricalM: 30, lossDb: 1, endOhms: 0 });

  test.each([
    [19.8, []],
    [18.4, []],
    [21.2, []],
    [15, ["length-unlike"]],
    [25, ["length-unlike"]],
  ])("of %d m for a line of 19.8 m of its kind: %j", (lengthM, expected) => {
    expect(codes(sweep, { endOhms: 0, kind: RG58, lengthM })).toEqual(expected);
  });

  test("is held against any usual velocity factor where no kind is known", () => {
    expect(codes(sweep, { endOhms: 0, lengthM: 25 })).toEqual([]);
    expect(codes(sweep, { endOhms: 0, lengthM: 12 })).toEqual(["length-unlike"]);
  });
});
