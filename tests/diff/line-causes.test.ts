/** Which causes a fit is told as, and with what numbers. Fits are invented. */
import { describe, expect, test } from "vitest";
import {
  lengthCause,
  lossCause,
  lostPercent,
  referenceCause,
  scaleCause,
} from "../../packages/core/src/jobs/diff/cause-words.js";
import { isLineChange, isLonger, lineCauses } from "../../packages/core/src/jobs/diff/line-causes.js";
import type { LineFit } from "../../packages/core/src/jobs/diff/line-fit.js";
import { isAnotherReference } from "../../packages/core/src/jobs/diff/reference-fit.js";
import { bestScale } from "../../packages/core/src/jobs/diff/scale-search.js";

describe("as a cause", () => {
  const found = (lengthM: number, lossDb: number): LineFit => ({
    delayS: (2 * lengthM) / 299_792_458,
    loss: [{ law: "root", at10MHzDb: lossDb }],
    characteristicOhms: null,
    residual: 0.001,
  });
  const codes = (lengthM: number, lossDb: number, leastM?: number) =>
    lineCauses(found(lengthM, lossDb), 0.1, leastM).map(({ code, confidence }) => `${code} ${confidence}`);

  test.each([
    [0.24, 0.09, []],
    [-0.24, -0.09, []],
    [0.26, 0, ["line-length-changed likely"]],
    [-0.26, 0, ["line-length-changed likely"]],
    [0, 0.11, ["loss-added likely"]],
    [0, -0.11, ["loss-removed likely"]],
    [10, 0.3, ["line-length-changed likely"]],
    [10, 5, ["line-length-changed likely", "loss-added likely"]],
    [10, -0.09, ["line-length-changed likely"]],
    [10, -0.11, ["line-length-changed likely", "loss-removed likely"]],
    [-10, -0.3, ["line-length-changed likely"]],
    [-10, -5, ["line-length-changed likely", "loss-removed likely"]],
    [-10, 0.11, ["line-length-changed likely", "loss-added likely"]],
  ])("%d m and %d dB are %j", (lengthM, lossDb, expected) => {
    expect(codes(lengthM, lossDb)).toEqual(expected);
    expect(isLineChange(found(lengthM, lossDb))).toBe(expected.length > 0);
  });

  test("a length below what may be made up is none", () => {
    expect(codes(0.5, 0, 0.6)).toEqual([]);
    expect(codes(0.5, 0.2, 0.6)).toEqual(["loss-added likely"]);
    expect([isLonger(found(0.5, 0), 0.49), isLonger(found(-0.5, 0), 0.49), isLonger(found(0.5, 0), 0.51)]).toEqual([
      true,
      true,
      false,
    ]);
  });

  test("carries its numbers", () => {
    expect(lostPercent(10 * Math.log10(2))).toBeCloseTo(50, 9);
    expect(lostPercent(-10)).toBeCloseTo(90, 9);
    const { electricalLengthM: lengthM, ...length } = lengthCause(found(10, 1), 0.2).evidence;
    expect(lengthM).toBeCloseTo(10, 9);
    expect(length).toEqual({ lossAt10MHzDb: 1, residualRms: 0.001, differenceRms: 0.2 });
    expect(lossCause(found(0, 10), 0.2).evidence.powerPercentAt10MHz).toBeCloseTo(90, 9);
    expect(referenceCause({ ohms: 75, residual: 0.01 }, 50).evidence).toEqual({ referenceOhms: 75, residualRms: 0.01 });
    const moved = scaleCause({ scale: 1.25, residual: 0.01 }).evidence;
    expect(moved).toEqual({
      frequencyScale: 1.25,
      frequencyPercent: 25,
      wireLengthPercent: expect.closeTo(-20, 9),
      residualRms: 0.01,
    });
  });

  test("another reference is one that differs by a tenth", () => {
    expect([54.9, 55.1, 45.5, 45.4].map((ohms) => isAnotherReference(ohms, 50))).toEqual([false, true, false, true]);
  });
});

describe("the scale of a moved curve", () => {
  test.each([0.93, 0.99, 1, 1.013, 1.079])("of least residual is found: %d", (truth) => {
    expect(bestScale((scale) => Math.abs(scale - truth))).toBeCloseTo(truth, 4);
  });

  test("is looked for roughly, then finely", () => {
    const rough = (scale: number) => Math.abs(scale - 1.01);
    expect(bestScale(rough, (scale) => (scale - 1.0107) ** 2)).toBeCloseTo(1.0107, 4);
  });
});
