/** What is said of a line by a sweep of it alone. Lines are invented. */
import { feedlineKindById, type LineOptions, measureLine, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { LINE_AXIS, type LineLoss, lineSweep } from "../support/line-sweep.js";
import { numbersIn } from "../support/messages.js";
import { evenly, present, reflectionOf, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const RG58 = present(feedlineKindById("rg-58"), "rg-58");
const measured = (sweep: Sweep, options: Partial<LineOptions> = {}) => measureLine(sweep, { endOhms: 0, ...options });
const said = (sweep: Sweep, options: Partial<LineOptions> = {}) =>
  measured(sweep, options).findings.map(({ code, severity }) => `${severity} ${code}`);

describe("a measured line", () => {
  const loss: LineLoss = (f) => 0.2 * Math.sqrt(f);
  const sweep = lineSweep(30, loss);

  test("is as long as its velocity factor makes it, or has that of a known length", () => {
    expect(measured(sweep)).toMatchObject({ velocityFactor: null, lengthM: null, characteristicOhms: 50, endOhms: 0 });
    const ofKind = measured(sweep, { kind: RG58 });
    expect(ofKind.velocityFactor).toBe(RG58.velocityFactor);
    expect(ofKind.lengthM).toBeCloseTo(30 * RG58.velocityFactor, 6);
    const known = measured(sweep, { kind: RG58, lengthM: 24 });
    expect(known.velocityFactor).toBeCloseTo(0.8, 9);
    expect(known.lengthM).toBe(24);
    expect(measured(lineSweep(30, loss, 1), { endOhms: Number.POSITIVE_INFINITY }).endOhms).toBeNull();
  });

  test("is told at the foot of each band that was swept, or at both ends of the sweep", () => {
    const { losses } = measured(sweep, { lengthM: 20 });
    expect(losses.map(({ frequencyHz }) => frequencyHz / 1e6)).toEqual([1.8, 3.5, 7, 10, 14, 21, 28, 50]);
    expect(losses[2]?.matchedLossDb).toBeCloseTo(loss(7), 6);
    expect(losses[2]?.dbPer100M).toBeCloseTo(5 * loss(7), 6);
    expect(losses[2]?.expectedDb).toBeNull();
    expect(measured(sweep).losses[0]?.dbPer100M).toBeNull();
    const edges = measured(lineSweep(30, loss, -1, evenly(7e6, 10e6, 50_000))).losses;
    expect(edges.map(({ frequencyHz }) => frequencyHz / 1e6)).toEqual([7, 10]);
    const between = measured(lineSweep(30, loss, -1, evenly(7.1e6, 9.9e6, 50_000))).losses;
    expect(between.map(({ frequencyHz }) => frequencyHz / 1e6)).toEqual([7.1, 9.9]);
  });

  test.each([
    [1.24, "as-expected"],
    [1.5, "lossy"],
    [0.76, "as-expected"],
    [0.6, "low-loss"],
  ] as const)("that loses %d times what its kind does is %s", (factor, verdict) => {
    const k = RG58.loss;
    const kindLoss = (f: number) => ((k.k0 + k.k1 * Math.sqrt(f) + k.k2 * f) * 30) / 100;
    const options = { kind: RG58, lengthM: 30 };
    expect(
      measured(
        lineSweep(45, (f) => factor * kindLoss(f)),
        options,
      ).verdict,
    ).toBe(verdict);
    expect(measured(lineSweep(45, (f) => factor * kindLoss(f))).verdict).toBe("unknown");
  });

  test("is seen against its own impedance", () => {
    expect(measured(sweep, { characteristicOhms: 75 }).characteristicOhms).toBe(75);
    const ladder = present(feedlineKindById("rg-59"), "rg-59");
    // The line is one of 50 Ω, whatever it is taken for.
    expect(measured(sweep, { kind: ladder }).characteristicOhms).toBeCloseTo(50, 2);
    // A short in place of the line: Γ of -1 against any impedance.
    const short = lineSweep(0, () => 0);
    expect(measured(short, { characteristicOhms: 75 }).losses[0]?.matchedLossDb).toBeCloseTo(0, 6);
  });

  test("of 75 Ω that was swept against 50 Ω is measured as it is", () => {
    const at75 = lineSweep(30, loss);
    // Γ against 50 Ω by way of the impedance: Z = 75 Ω (1 + Γ) / (1 - Γ).
    const at50 = LINE_AXIS.map((_, i) => {
      const [a, b] = [at75.reflectionReal[i] ?? 0, at75.reflectionImaginary[i] ?? 0];
      const square = (1 - a) ** 2 + b ** 2;
      return reflectionOf([(75 * (1 - a * a - b * b)) / square, (75 * 2 * b) / square]);
    });
    const result = measured(sweepOfReflections(LINE_AXIS, at50), { characteristicOhms: 75, lengthM: 24 });
    expect(result.electricalLengthM).toBeCloseTo(30, 6);
    expect(result.losses[2]?.matchedLossDb).toBeCloseTo(loss(7), 6);
    expect(result.findings).toEqual([]);
  });

  test("swept without phase has no velocity factor but its kind's, and the length that was stated", () => {
    const { frequencyHz, reflectionMagnitude } = sweep;
    const scalar = sweepOfMagnitudes([...frequencyHz], [...reflectionMagnitude]);
    const nothing = { electricalLengthM: null, velocityFactor: null };
    expect(measured(scalar, { lengthM: 24 })).toMatchObject({ ...nothing, lengthM: 24 });
    expect(measured(scalar)).toMatchObject({ ...nothing, lengthM: null });
    const ofKind = measured(scalar, { kind: RG58 });
    expect(ofKind).toMatchObject({ velocityFactor: RG58.velocityFactor, lengthM: null, verdict: "unknown" });
    expect(ofKind.losses[2]).toMatchObject({ dbPer100M: null, expectedDb: null });
  });

  test.each([
    [45, /matched/],
    [40.9, null],
    [61.2, null],
    [55, /matched/],
  ])("with %d Ω at its end sends back enough or not", (endOhms, refusal) => {
    const end = (endOhms - 50) / (endOhms + 50);
    const measure = () =>
      measured(
        lineSweep(30, () => 0, end),
        { endOhms },
      );
    if (refusal === null) expect(measure().losses[0]?.matchedLossDb).toBeCloseTo(0, 6);
    else expect(measure).toThrow(RangeError);
  });

  test("needs five points", () => {
    expect(() => measured(lineSweep(3, () => 0, -1, evenly(1e6, 4e6, 1e6)))).toThrow(RangeError);
    expect(measured(lineSweep(3, () => 0, -1, evenly(1e6, 5e6, 1e6))).losses).toHaveLength(2);
  });
});

describe("said of a line is", () => {
  test("nothing where all is well", () => {
    expect(
      said(
        lineSweep(30, (f) => 0.1 * Math.sqrt(f)),
        { kind: RG58 },
      ),
    ).toEqual([]);
  });

  test("a step over which the phase turns too far", () => {
    // 0.4 of a turn in 500 kHz, there and back: 119.9 m.
    expect(said(lineSweep(119, (f) => 0.05 * Math.sqrt(f)))).toEqual([]);
    expect(said(lineSweep(121, (f) => 0.05 * Math.sqrt(f)))).toEqual(["caution step-too-coarse"]);
    // Longer by half a wavelength at 500 kHz looks the same.
    const [finding] = measured(lineSweep(121, (f) => 0.05 * Math.sqrt(f))).findings;
    expect(numbersIn(finding?.message)).toEqual([500, 300]);
    const scalar = sweepOfMagnitudes(LINE_AXIS, Array(LINE_AXIS.length).fill(0.9));
    expect(said(scalar)).toEqual(["caution flat-loss"]);
    const uneven = lineSweep(100, (f) => 0.05 * Math.sqrt(f), -1, [
      ...evenly(1e6, 20e6, 400_000),
      20.65e6,
      ...evenly(21e6, 30e6, 400_000),
    ]);
    expect(said(uneven)).toEqual(["caution step-too-coarse"]);
  });

  test("an end that was not as stated", () => {
    expect(
      said(
        lineSweep(30, (f) => 0.05 * Math.sqrt(f)),
        { endOhms: Number.POSITIVE_INFINITY },
      ),
    ).toEqual(["problem line-implausible"]);
  });

  test("a velocity factor that no line has", () => {
    expect(
      said(
        lineSweep(30, (f) => 0.05 * Math.sqrt(f)),
        { lengthM: 29.9 },
      ),
    ).toEqual([]);
    expect(
      said(
        lineSweep(30, (f) => 0.05 * Math.sqrt(f)),
        { lengthM: 30.1 },
      ),
    ).toEqual(["problem line-implausible"]);
  });

  test("a gain beyond what may be overlooked", () => {
    // 0.007 √50 = 0.0495 dB, 0.0072 √50 = 0.0509 dB.
    expect(said(lineSweep(30, (f) => -0.007 * Math.sqrt(f)))).toEqual([]);
    expect(said(lineSweep(30, (f) => -0.0072 * Math.sqrt(f)))).toEqual(["problem line-implausible"]);
  });

  test("that it is none, where its loss does not grow evenly", () => {
    const antenna = lineSweep(30, (f) => 6 / (1 + ((f - 7) / 2) ** 2));
    expect(said(antenna)).toContain("problem line-implausible");
    expect(measured(antenna, { kind: RG58 }).verdict).toBe("unknown");
  });
});
