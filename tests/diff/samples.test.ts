/** Two sweeps at the same frequencies, and what is taken for a jump among them. Numbers are invented and exact. */
import { describe, expect, test } from "vitest";
import {
  type CommonSamples,
  commonAxis,
  commonSamples,
  everyFew,
  inReference,
  meanDifference,
  replaceBefore,
  thinnedAxis,
  withoutJumps,
} from "../../packages/core/src/jobs/diff/common-samples.js";
import { sideCurveFor } from "../support/judged.js";
import { evenly, type Pair, present, reflectionOf, sweepOfReflections } from "../support/sweeps.js";

const flat = (first: number, last: number, step: number, pair: Pair = [0.1, 0.2]) => {
  const axis = evenly(first, last, step);
  return sideCurveFor(
    sweepOfReflections(
      axis,
      axis.map(() => pair),
    ),
  );
};
/** Samples 1 Hz apart with these differences between before and after, in the real part. */
const samplesOf = (differences: readonly number[], before: Pair = [0.1, 0.2]): CommonSamples => ({
  frequencyHz: Float64Array.from(differences, (_, i) => i + 1),
  beforeReal: Float64Array.from(differences, () => before[0]),
  beforeImaginary: Float64Array.from(differences, () => before[1]),
  afterReal: Float64Array.from(differences, (difference) => before[0] + difference),
  afterImaginary: Float64Array.from(differences, () => before[1]),
});

describe("the common axis", () => {
  const coarse = flat(1000, 3000, 100);
  const fine = flat(2000, 4000, 10);

  test("is that of the sweep with fewer samples over what both cover, whichever comes first", () => {
    const wide = flat(2000, 6000, 50);
    expect(commonAxis(flat(1000, 4000, 100), wide)).toEqual(Float64Array.from(evenly(2000, 4000, 100)));
    expect(commonAxis(wide, flat(1000, 4000, 100))).toEqual(Float64Array.from(evenly(2000, 4000, 100)));
  });

  test("is the finer one where the other has fewer than twelve", () => {
    expect(commonAxis(coarse, fine)).toEqual(Float64Array.from(evenly(2000, 3000, 10)));
    expect(commonAxis(fine, coarse)).toEqual(Float64Array.from(evenly(2000, 3000, 10)));
    const twelve = commonAxis(flat(1900, 3000, 100), flat(1900, 4000, 10));
    expect(twelve).toEqual(Float64Array.from(evenly(1900, 3000, 100)));
  });

  test("of as many samples is that of the sweep which begins lower", () => {
    const [low, high] = [flat(1000, 3000, 100), flat(1050, 3050, 100)];
    // From 1050 to 3000: twenty of each.
    expect(commonAxis(high, low)[0]).toBe(1100);
    expect(commonAxis(low, high)[0]).toBe(1100);
  });

  test("is thinned evenly to some hundreds", () => {
    expect(thinnedAxis(flat(1000, 1798, 1), flat(1000, 1798, 1))).toHaveLength(799);
    const thinned = thinnedAxis(flat(1000, 2199, 1), flat(1000, 2199, 1));
    expect(thinned).toEqual(Float64Array.from(evenly(1000, 2197, 3)));
  });
});

describe("samples of both", () => {
  test("are Γ before and Γ after, where both were swept", () => {
    const axis = [...evenly(1000, 1200, 10), ...evenly(1800, 2000, 10)];
    const gap = sideCurveFor(
      sweepOfReflections(
        axis,
        axis.map((): Pair => [-0.3, 0.4]),
      ),
    );
    const samples = commonSamples(flat(1000, 2000, 10), gap);
    expect(samples.frequencyHz).toEqual(Float64Array.from(axis));
    expect(samples.beforeReal[3]).toBeCloseTo(0.1, 9);
    expect(samples.beforeImaginary[3]).toBeCloseTo(0.2, 9);
    expect(samples.afterReal[3]).toBeCloseTo(-0.3, 9);
    expect(samples.afterImaginary[3]).toBeCloseTo(0.4, 9);
    const back = commonSamples(gap, flat(1000, 2000, 10));
    expect(back.frequencyHz).toEqual(Float64Array.from(axis));
  });

  test("differ by the root mean square of |Γ after - Γ before|", () => {
    expect(meanDifference(samplesOf([0.3, 0, 0, 0.4]))).toBeCloseTo(0.25, 12);
    const turned = { ...samplesOf([0.3, 0.3]), afterImaginary: Float64Array.of(0.6, 0.6) };
    expect(meanDifference(turned)).toBeCloseTo(0.5, 12);
  });

  test("are thinned to every so many", () => {
    expect(everyFew(samplesOf(Array(10).fill(0)), 5).frequencyHz).toEqual(Float64Array.of(1, 3, 5, 7, 9));
    expect(everyFew(samplesOf(Array(11).fill(0)), 5).frequencyHz).toEqual(Float64Array.of(1, 3, 5, 7, 9, 11));
    expect(everyFew(samplesOf(Array(4).fill(0)), 5).frequencyHz).toEqual(Float64Array.of(1, 2, 3, 4));
  });

  test("are seen against another impedance, both of them", () => {
    const samples = {
      frequencyHz: Float64Array.of(1),
      beforeReal: Float64Array.of(reflectionOf([80, 30])[0]),
      beforeImaginary: Float64Array.of(reflectionOf([80, 30])[1]),
      afterReal: Float64Array.of(reflectionOf([20, -40])[0]),
      afterImaginary: Float64Array.of(reflectionOf([20, -40])[1]),
    };
    const other = inReference(samples, 50, 75);
    const [before, after] = [reflectionOf([80, 30], 75), reflectionOf([20, -40], 75)];
    expect(other.beforeReal[0]).toBeCloseTo(before[0], 12);
    expect(other.beforeImaginary[0]).toBeCloseTo(before[1], 12);
    expect(other.afterReal[0]).toBeCloseTo(after[0], 12);
    expect(other.afterImaginary[0]).toBeCloseTo(after[1], 12);
    expect(other.frequencyHz).toBe(samples.frequencyHz);
  });

  test("have another curve put in the place of the first, where that is known", () => {
    const replaced = replaceBefore(samplesOf([1, 2, 3]), (frequency) =>
      frequency === 2 ? null : { real: frequency, imaginary: -frequency },
    );
    expect(replaced).toEqual({
      frequencyHz: Float64Array.of(1, 3),
      beforeReal: Float64Array.of(1, 3),
      beforeImaginary: Float64Array.of(-1, -3),
      afterReal: Float64Array.of(1.1, 3.1),
      afterImaginary: Float64Array.of(0.2, 0.2),
    });
  });
});

describe("jumps", () => {
  /** Differences of 0.01 but for some of more than six times that. */
  const among = (count: number, ...jumps: readonly number[]) =>
    withoutJumps(samplesOf(Array.from({ length: count }, (_, i) => (jumps.includes(i) ? 0.07 : 0.01))));

  test("are taken out, one here and one there, and counted", () => {
    expect(among(40)).toBeNull();
    const one = present(among(40, 5), "a jump");
    expect(one.jumps).toBe(1);
    expect(one.calm.frequencyHz).toHaveLength(39);
    expect([...one.calm.frequencyHz]).not.toContain(6);
    expect(among(40, 0, 20, 39)?.jumps).toBe(3);
    expect(among(40, 0, 1, 2)?.jumps).toBe(1);
    expect(among(40, 37, 38, 39)?.jumps).toBe(1);
    expect(among(40, 10, 11, 20)?.jumps).toBe(2);
  });

  test("are none where more than three in a row, or more than a tenth, stand out", () => {
    expect(among(60, 10, 11, 12, 13)).toBeNull();
    expect(among(60, 0, 1, 2, 3)).toBeNull();
    expect(among(60, 56, 57, 58, 59)).toBeNull();
    expect(among(60, 10, 11, 12)?.jumps).toBe(1);
    expect(among(40, 5, 10, 15, 20)?.jumps).toBe(4);
    expect(among(40, 5, 10, 15, 20, 25)).toBeNull();
  });

  test("stand out by more than six times the usual difference", () => {
    const difference = (of: number) =>
      withoutJumps(samplesOf(Array.from({ length: 40 }, (_, i) => (i === 7 ? of : 0.01))));
    expect(difference(0.059)).toBeNull();
    expect(difference(0.061)?.jumps).toBe(1);
    const across = samplesOf(Array(40).fill(0.01));
    across.afterImaginary[7] = 0.3;
    expect(withoutJumps(across)?.jumps).toBe(1);
  });
});
