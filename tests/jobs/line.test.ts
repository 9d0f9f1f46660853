/** A line alone, from closed form: loss as k1 √f + k2 f, and the delay of its length. Lines are invented. */
import { feedlineKindById, type LineOptions, measureLine, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { measuredLength } from "../../packages/core/src/jobs/line/measured-length.js";
import { fittedLoss } from "../../packages/core/src/jobs/line/measured-loss.js";
import { evenly, type Pair, present, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const LIGHT = 299_792_458;
const AXIS = evenly(1e6, 50e6, 500_000);
const RG58 = present(feedlineKindById("rg-58"), "rg-58");
/** dB one way. */
type Loss = (megahertz: number) => number;

function lineSweep(electricalM: number, loss: Loss, end = -1, axis: readonly number[] = AXIS) {
  const reflections = axis.map((frequency): Pair => {
    const size = end * 10 ** (-loss(frequency / 1e6) / 10);
    const angle = (-4 * Math.PI * frequency * electricalM) / LIGHT;
    return [size * Math.cos(angle), size * Math.sin(angle)];
  });
  return sweepOfReflections(axis, reflections);
}
const measured = (sweep: Sweep, options: Partial<LineOptions> = {}) => measureLine(sweep, { endOhms: 0, ...options });
const said = (sweep: Sweep, options: Partial<LineOptions> = {}) =>
  measured(sweep, options).findings.map(({ code, severity }) => `${severity} ${code}`);

describe("the loss", () => {
  test.each([
    [0.2, 0.03],
    [0.3, 0],
    [0, 0.05],
  ])("is %d √f + %d f, as it was made", (k1, k2) => {
    const { lossDbAt, isEven } = fittedLoss(
      lineSweep(20, (f) => k1 * Math.sqrt(f) + k2 * f),
      -1,
    );
    for (const megahertz of [2, 9, 40])
      expect(lossDbAt(megahertz * 1e6)).toBeCloseTo(k1 * Math.sqrt(megahertz) + k2 * megahertz, 6);
    expect(isEven).toBe(true);
  });

  test("has no part that gains: where both together would, one of them alone is fitted", () => {
    // √f with a little taken off in proportion: 0.3 √f alone lies above; the least squares of √f alone are below it.
    const bent = fittedLoss(
      lineSweep(20, (f) => 0.5 * Math.sqrt(f) - 0.01 * f),
      -1,
    );
    expect(bent.lossDbAt(4e6) / bent.lossDbAt(1e6)).toBeCloseTo(2, 9);
    const steep = fittedLoss(
      lineSweep(20, (f) => 0.1 * f - 0.1 * Math.sqrt(f)),
      -1,
    );
    expect(steep.lossDbAt(4e6) / steep.lossDbAt(1e6)).toBeCloseTo(4, 9);
    // Σ f y / Σ f² over the samples.
    const squares = AXIS.reduce((sum, hz) => sum + (hz / 1e6) ** 2, 0);
    const products = AXIS.reduce((sum, hz) => sum + (hz / 1e6) * ((0.1 * hz) / 1e6 - 0.1 * Math.sqrt(hz / 1e6)), 0);
    expect(steep.lossDbAt(1e6)).toBeCloseTo(products / squares, 6);
    const roots = AXIS.reduce((sum, hz) => sum + hz / 1e6, 0);
    const rooted = AXIS.reduce(
      (sum, hz) => sum + Math.sqrt(hz / 1e6) * (0.5 * Math.sqrt(hz / 1e6) - (0.01 * hz) / 1e6),
      0,
    );
    expect(bent.lossDbAt(1e6)).toBeCloseTo(rooted / roots, 6);
  });

  test("is what the line adds to that of its end", () => {
    expect(
      fittedLoss(
        lineSweep(20, () => 0, 1 / 3),
        1 / 3,
      ).lossDbAt(7e6),
    ).toBeCloseTo(0, 9);
    expect(
      fittedLoss(
        lineSweep(20, (f) => 0.1 * f, -1 / 3),
        -1 / 3,
      ).lossDbAt(7e6),
    ).toBeCloseTo(0.7, 6);
  });

  test("is even that lies within 0.7 dB of its fit, or within 30 % of its mean", () => {
    /** Up and down by so much around 0.1 dB or 3 dB. */
    const swinging = (mean: number, swing: number) =>
      fittedLoss(
        lineSweep(20, (f) => mean * Math.sqrt(f / 25) + (Math.round(2 * f) % 2 === 0 ? swing : -swing)),
        -1,
      ).isEven;
    expect(swinging(0.8, 0.66)).toBe(true);
    expect(swinging(0.8, 0.74)).toBe(false);
    expect(swinging(5, 1.2)).toBe(true);
    expect(swinging(5, 1.6)).toBe(false);
  });
});

describe("the length", () => {
  test.each([0.5, 20, 90])("of %d m is told from the phase, without any loss or with it", (lengthM) => {
    for (const loss of [() => 0, (f: number) => 0.2 * Math.sqrt(f)]) {
      const { electricalLengthM, isSure } = measuredLength(lineSweep(lengthM, loss), -1);
      expect(electricalLengthM).toBeCloseTo(lengthM, 9);
      expect(isSure).toBe(true);
    }
  });

  test("is not sure where the phase does not lead back to the far end", () => {
    expect(
      measuredLength(
        lineSweep(20, () => 0),
        1,
      ).isSure,
    ).toBe(false);
    const turned = (radians: number) => {
      const { reflectionReal, reflectionImaginary } = lineSweep(20, () => 0);
      const pairs = AXIS.map((_, i): Pair => {
        const [a, b] = [reflectionReal[i] ?? 0, reflectionImaginary[i] ?? 0];
        return [a * Math.cos(radians) - b * Math.sin(radians), a * Math.sin(radians) + b * Math.cos(radians)];
      });
      return measuredLength(sweepOfReflections(AXIS, pairs), -1);
    };
    expect([0.79, -0.79, 0.81, -0.81].map((angle) => turned(angle).isSure)).toEqual([true, true, false, false]);
    // Not steered to 0 Hz where that is not sure: the slope is that of the phase alone.
    expect(turned(0.81).electricalLengthM).toBeCloseTo(20, 9);
    expect(Math.abs(turned(0.79).electricalLengthM - 20)).toBeGreaterThan(0.1);
  });

  test("of less than none is not sure", () => {
    expect(
      measuredLength(
        lineSweep(-20, () => 0),
        -1,
      ),
    ).toEqual({ electricalLengthM: expect.closeTo(-20, 9), isSure: false });
  });
});

describe("a measured line", () => {
  const loss: Loss = (f) => 0.2 * Math.sqrt(f);
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
    expect(measured(sweep, { kind: ladder }).characteristicOhms).toBe(ladder.characteristicOhms);
    // A short in place of the line: Γ of -1 against any impedance.
    const short = lineSweep(0, () => 0);
    expect(measured(short, { characteristicOhms: 75 }).losses[0]?.matchedLossDb).toBeCloseTo(0, 6);
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
    expect(said(lineSweep(119, () => 0.2))).toEqual([]);
    expect(said(lineSweep(121, () => 0.2))).toEqual(["caution step-too-coarse"]);
    const scalar = sweepOfMagnitudes(AXIS, Array(AXIS.length).fill(0.9));
    expect(said(scalar)).toEqual([]);
    const uneven = lineSweep(100, () => 0.2, -1, [
      ...evenly(1e6, 20e6, 400_000),
      20.65e6,
      ...evenly(21e6, 30e6, 400_000),
    ]);
    expect(said(uneven)).toEqual(["caution step-too-coarse"]);
  });

  test("an end that was not as stated", () => {
    expect(
      said(
        lineSweep(30, () => 0.2),
        { endOhms: Number.POSITIVE_INFINITY },
      ),
    ).toEqual(["problem line-implausible"]);
  });

  test("a velocity factor that no line has", () => {
    expect(
      said(
        lineSweep(30, () => 0.2),
        { lengthM: 29.9 },
      ),
    ).toEqual([]);
    expect(
      said(
        lineSweep(30, () => 0.2),
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
