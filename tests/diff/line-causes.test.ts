/** Which causes a fit is told as, and with what numbers. Fits are invented. */
import { describe, expect, test } from "vitest";
import {
  excessLossCause,
  lengthCause,
  lossCause,
  lostPercent,
  referenceCause,
  scaleCause,
} from "../../packages/core/src/jobs/diff/cause-words.js";
import { isLineChange, isLonger, lineCauses } from "../../packages/core/src/jobs/diff/line-causes.js";
import type { LossLaw } from "../../packages/core/src/jobs/diff/line-change.js";
import type { LineFit } from "../../packages/core/src/jobs/diff/line-fit.js";
import { isAnotherReference } from "../../packages/core/src/jobs/diff/reference-fit.js";
import { bestScale } from "../../packages/core/src/jobs/diff/scale-search.js";
import { numbersIn, wordsOf } from "../support/messages.js";

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

  test("is told in numbers, and in words that turn with the sign", () => {
    const [longer, shorter] = [lengthCause(found(10, 0), 0.2).message, lengthCause(found(-10, 0), 0.2).message];
    // Metres of vacuum, and of coax with velocity factors of 0.66 and 0.82.
    expect(numbersIn(longer)).toEqual([10, 6.6, 8.2]);
    expect(numbersIn(shorter)).toEqual([10, 6.6, 8.2]);
    expect(wordsOf(longer)).not.toBe(wordsOf(shorter));
    const ofTelevision = lengthCause({ ...found(10, 0), characteristicOhms: 75 }, 0.2).message;
    expect(numbersIn(ofTelevision)).toEqual([10, 75, 6.6, 8.2]);
    for (const tell of [lossCause, excessLossCause]) {
      const [more, less] = [tell(found(10, 3.01), 0.2), tell(found(10, -3.01), 0.2)];
      expect([more.code, less.code]).toEqual(["loss-added", "loss-removed"]);
      expect(numbersIn(more.message)).toEqual([3.01, 10, 50]);
      expect(numbersIn(less.message)).toEqual([3.01, 10, 50]);
      expect(wordsOf(more.message)).not.toBe(wordsOf(less.message));
      expect(more.evidence.powerPercentAt10MHz).toBeCloseTo(50, 1);
      expect(more.evidence.electricalLengthM).toBeCloseTo(10, 9);
    }
    const [up, down] = [scaleCause({ scale: 1.25, residual: 0 }), scaleCause({ scale: 0.8, residual: 0 })];
    expect(numbersIn(up.message)).toEqual([25, 20]);
    expect(numbersIn(down.message)).toEqual([20, 25]);
    expect(wordsOf(up.message)).not.toBe(wordsOf(down.message));
  });

  test("tells by which law the loss grows, where it is one", () => {
    const grows = (...laws: readonly LossLaw[]) =>
      wordsOf(
        lossCause({ ...found(0, 1), loss: laws.map((law) => ({ law, at10MHzDb: 1 / laws.length })) }, 0.2).message,
      );
    const told = [grows("root"), grows("even"), grows("proportional"), grows("root", "even")];
    expect(new Set(told).size).toBe(4);
    expect(grows("root", "even")).toBe(grows("root", "proportional"));
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
