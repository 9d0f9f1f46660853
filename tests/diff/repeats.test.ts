/** Groups of repeated sweeps: which one stands for them, what their scatter may make of a change, and what it hides. */
import { diff, planById } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { groupChange, indexOfMiddle, scatterAround } from "../../packages/core/src/jobs/diff/repeats.js";
import { rampSweep } from "../support/invented-plan.js";
import { sideCurveFor } from "../support/judged.js";
import { present, sweepOfMagnitudes } from "../support/sweeps.js";
import { resonance, swept } from "./resonances.js";

const plan = present(planById("itu-r1"), "itu-r1");

describe("a change of one number", () => {
  test("has no margin where nothing was repeated", () => {
    expect(groupChange([1.5], [1.2])).toEqual({ change: expect.closeTo(-0.3, 12), margin: 0, scatter: 0 });
  });

  test("has a margin by Student's t with the scatter of both groups pooled", () => {
    // Variances 1 and 1, 4 degrees of freedom: t = 2.78; standard error √(1 · (1/3 + 1/3)).
    const { change, margin } = groupChange([1, 2, 3], [4, 5, 6]);
    expect(change).toBe(3);
    expect(margin).toBeCloseTo(2.776445 * Math.sqrt(2 / 3), 4);
  });

  test("takes the scatter from the other group where one has a single member", () => {
    // Variance 0.02 of two, 1 degree of freedom: t = 12.7062; standard error √(0.02 · (1/2 + 1)).
    expect(groupChange([1, 1.2], [2]).margin).toBeCloseTo(12.7062 * Math.sqrt(0.02 * 1.5), 4);
  });

  test("needs less of a change the more repeats there are", () => {
    const few = groupChange([1, 1.1], [1, 1.1]);
    const many = groupChange([1, 1.1, 1, 1.1, 1, 1.1], [1, 1.1, 1, 1.1, 1, 1.1]);
    expect(many.margin).toBeLessThan(few.margin / 3);
  });
});

describe("of several repeats", () => {
  const curves = [7.05e6, 7.1e6, 7.3e6].map((resonanceHz) => sideCurveFor(swept(resonance({ resonanceHz }))));

  test("the one closest to all others stands for them", () => {
    expect(indexOfMiddle(curves)).toBe(1);
  });

  test("scatter is what lies between it and the others, and none for one alone", () => {
    const [first, middle] = [present(curves[0], "first"), present(curves[1], "middle")];
    expect(scatterAround(middle, [middle])).toBe(0);
    expect(scatterAround(middle, curves)).toBeGreaterThan(scatterAround(middle, [first, middle]));
  });
});

describe("the scatter of flat sweeps", () => {
  const flat = (real: number) => rampSweep([7.0e6, 7.2e6], [real, real]);
  const curveWithout = (real: number) =>
    sideCurveFor(sweepOfMagnitudes([...flat(real).frequencyHz], Array(101).fill(Math.abs(real))));

  test("is the root mean square of what lies between Γ of the middle one and of the others", () => {
    const middle = sideCurveFor(flat(0.1));
    expect(scatterAround(middle, [middle, sideCurveFor(flat(0.4)), sideCurveFor(flat(-0.3))])).toBeCloseTo(
      Math.sqrt(0.125),
      9,
    );
  });

  test("is that of ρ where one of them has no phase", () => {
    const middle = sideCurveFor(flat(0.1));
    expect(scatterAround(middle, [middle, curveWithout(-0.3)])).toBeCloseTo(0.2, 9);
    const without = curveWithout(0.1);
    expect(scatterAround(without, [without, sideCurveFor(flat(-0.3))])).toBeCloseTo(0.2, 9);
  });

  test("is none where the sweeps have nothing in common", () => {
    const middle = sideCurveFor(flat(0.1));
    const elsewhere = sideCurveFor(rampSweep([14e6, 14.2e6], [0.5, 0.5]));
    expect(scatterAround(middle, [middle, elsewhere])).toBe(0);
    expect(indexOfMiddle([elsewhere, middle, sideCurveFor(flat(0.3))])).toBe(0);
  });
});

describe("repeats before and after", () => {
  const group = (ohms: readonly number[], seed: number) =>
    ohms.map((value, i) => swept(resonance({ ohms: value, lossAt10MHzDb: 0 }), { noise: 0.001, seed: seed + i }));

  test("a change within their scatter is unchanged and has no cause, though one sweep against one would tell it", () => {
    const before = group([50, 70, 95], 1);
    const after = group([60, 80, 105], 11);
    const { bands, causes } = diff(before, after, { plan });
    expect(bands.map(({ band, verdict }) => `${band} ${verdict}`)).toEqual(["40m unchanged"]);
    // The scatter is more than what counts as a change, so that nothing can be told, and that is said.
    expect(bands.map(({ isHidden }) => isHidden)).toEqual([true]);
    expect(causes).toEqual([]);
    const alone = diff(present(before[0], "first"), present(after[2], "last"), { plan });
    expect(alone.bands.map(({ verdict }) => verdict)).toEqual(["worse"]);
  });

  test("a change beyond their scatter is told, from the means", () => {
    const { bands, causes } = diff(group([50, 51, 52], 1), group([100, 102, 104], 11), { plan });
    const { verdict, change } = present(bands[0], "40m");
    expect(verdict).toBe("worse");
    // Means of 50 / 50, 51 / 50, 52 / 50 and of 100 / 50, 102 / 50, 104 / 50.
    expect(change.bestSwr).toBeCloseTo(2.04 - 1.02, 1);
    expect(causes.map(({ code }) => code)).toContain("antenna-changed");
  });

  test("one sweep against three is held against the scatter of the three", () => {
    const many = group([50, 70, 95], 1);
    expect(diff(many, group([88], 21), { plan }).bands.map(({ verdict }) => verdict)).toEqual(["unchanged"]);
    expect(diff(group([88], 21), many, { plan }).bands.map(({ verdict }) => verdict)).toEqual(["unchanged"]);
  });

  test("a side without any sweep is refused", () => {
    expect(() => diff([], group([50], 1), { plan })).toThrow(RangeError);
  });
});
