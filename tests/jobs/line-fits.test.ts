/** Loss as k1 √f + k2 f and the delay of a length, made from closed form and found again. Lines are invented. */
import { describe, expect, test } from "vitest";
import { measuredLength } from "../../packages/core/src/jobs/line/measured-length.js";
import { fittedLoss } from "../../packages/core/src/jobs/line/measured-loss.js";
import { LINE_AXIS, lineSweep } from "../support/line-sweep.js";
import { type Pair, sweepOfReflections } from "../support/sweeps.js";

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
      lineSweep(20, (f) => 0.5 * Math.sqrt(f) - 0.003 * f),
      -1,
    );
    expect(bent.lossDbAt(4e6) / bent.lossDbAt(1e6)).toBeCloseTo(2, 9);
    const steep = fittedLoss(
      lineSweep(20, (f) => 0.1 * f - 0.1 * Math.sqrt(f)),
      -1,
    );
    expect(steep.lossDbAt(4e6) / steep.lossDbAt(1e6)).toBeCloseTo(4, 9);
    // Σ f y / Σ f² over the samples.
    const squares = LINE_AXIS.reduce((sum, hz) => sum + (hz / 1e6) ** 2, 0);
    const products = LINE_AXIS.reduce(
      (sum, hz) => sum + (hz / 1e6) * ((0.1 * hz) / 1e6 - 0.1 * Math.sqrt(hz / 1e6)),
      0,
    );
    expect(steep.lossDbAt(1e6)).toBeCloseTo(products / squares, 6);
    const roots = LINE_AXIS.reduce((sum, hz) => sum + hz / 1e6, 0);
    const rooted = LINE_AXIS.reduce(
      (sum, hz) => sum + Math.sqrt(hz / 1e6) * (0.5 * Math.sqrt(hz / 1e6) - (0.003 * hz) / 1e6),
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
      const pairs = LINE_AXIS.map((_, i): Pair => {
        const [a, b] = [reflectionReal[i] ?? 0, reflectionImaginary[i] ?? 0];
        return [a * Math.cos(radians) - b * Math.sin(radians), a * Math.sin(radians) + b * Math.cos(radians)];
      });
      return measuredLength(sweepOfReflections(LINE_AXIS, pairs), -1);
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
