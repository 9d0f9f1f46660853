/** The rules that every sweep keeps, whoever builds it, and the small helpers beside them. */
import {
  COMMON_PLAN_ID,
  criteriaWith,
  greatestPowersIn,
  planById,
  referredTo,
  type SweepDetails,
  scalarSweep,
  vectorSweep,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { nearestName, suggestion } from "../../packages/core/src/input/nearest.js";
import { present, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const details = (more: Partial<SweepDetails> = {}): SweepDetails => ({
  label: "invented",
  source: { file: "invented", format: "delimited", description: "invented", comments: [] },
  referenceOhms: 50,
  takenAt: null,
  ...more,
});
const column = (...values: readonly number[]) => Float64Array.from(values);

describe("a sweep", () => {
  test.each<[string, () => unknown, RegExp]>([
    [
      "without points",
      () => scalarSweep(details(), { frequencyHz: column(), reflectionMagnitude: column() }),
      /at least one point/,
    ],
    [
      "against 0 Ω",
      () => scalarSweep(details({ referenceOhms: 0 }), { frequencyHz: column(1), reflectionMagnitude: column(0) }),
      /positive number/,
    ],
    [
      "against an infinite reference",
      () =>
        scalarSweep(details({ referenceOhms: Number.POSITIVE_INFINITY }), {
          frequencyHz: column(1),
          reflectionMagnitude: column(0),
        }),
      /positive number/,
    ],
    [
      "out of order",
      () => scalarSweep(details(), { frequencyHz: column(2, 1), reflectionMagnitude: column(0, 0) }),
      /index 1 holds 1/,
    ],
    [
      "at 0 Hz",
      () => scalarSweep(details(), { frequencyHz: column(0), reflectionMagnitude: column(0) }),
      /index 0 holds 0/,
    ],
    [
      "with columns of two lengths",
      () => scalarSweep(details(), { frequencyHz: column(1, 2), reflectionMagnitude: column(0) }),
      /has 1 values/,
    ],
    [
      "with a negative magnitude",
      () => scalarSweep(details(), { frequencyHz: column(1), reflectionMagnitude: column(-0.1) }),
      /negative/,
    ],
    [
      "with a value that is no number",
      () =>
        vectorSweep(details(), {
          frequencyHz: column(1),
          reflectionReal: column(Number.NaN),
          reflectionImaginary: column(0),
        }),
      /NaN at index 0/,
    ],
  ])("%s cannot be built", (_, build, says) => {
    expect(build).toThrow(says);
  });

  test("is the same against its own reference, and where it has no phase to convert", () => {
    const vector = sweepOfReflections(
      [7e6, 7.1e6],
      [
        [0.1, 0.2],
        [0.2, 0.1],
      ],
    );
    expect(referredTo(vector, 50)).toBe(vector);
    const scalar = sweepOfMagnitudes([7e6, 7.1e6], [0.1, 0.2]);
    expect(referredTo(scalar, 75)).toBe(scalar);
    // A load of 75 Ω is matched there: Γ at 50 Ω is 0.2.
    const matched = referredTo(
      sweepOfReflections(
        [7e6, 7.1e6],
        [
          [0.2, 0],
          [0.2, 0],
        ],
      ),
      75,
    );
    expect(matched.reflectionMagnitude[0]).toBeCloseTo(0, 12);
  });
});

describe("names", () => {
  test("a beginning that only one has, or a slip, finds the name; anything else none", () => {
    expect(nearestName("count", ["counterpoise", "height"])).toBe("counterpoise");
    expect(nearestName("hieght", ["counterpoise", "height"])).toBe("height");
    expect(nearestName("weather", ["counterpoise", "height"])).toBeNull();
    expect(nearestName("x", [])).toBeNull();
    expect(suggestion("hieght", ["height"])).toBe(' Did you mean "height"?');
    expect(suggestion("weather", ["height"])).toBe("");
  });
});

describe("grades of one's own", () => {
  test("keep what was not stated, and say what they are", () => {
    const [a, b] = criteriaWith({ B: { withoutTuner: 0.6 } });
    expect(a?.meaning).toBe("no tuner needed on all of the band");
    expect(b).toMatchObject({ withoutTuner: 0.6, withBuiltInTuner: 0.9 });
    expect(b?.meaning).toContain("no tuner on 60 %");
  });
});

describe("the greatest power in a segment", () => {
  const segmentAt = (plan: string, hz: number) =>
    present(
      present(planById(plan), plan)
        .bands.flatMap(({ segments }) => segments)
        .find(({ lowHz, highHz }) => hz >= lowHz && hz < highHz),
      "segment",
    );

  test("is that of the class, or the greatest of all classes", () => {
    // 47 CFR 97.313(c)(2): 200 W PEP for the technician class on 40 m; (a): 1500 W for the others there.
    const segment = segmentAt("us-part97", 7.05e6);
    expect(greatestPowersIn(segment, "technician").limits).toEqual([{ watts: 200, basis: "pep" }]);
    expect(greatestPowersIn(segment, "general").limits).toEqual([{ watts: 1500, basis: "pep" }]);
    expect(greatestPowersIn(segment, null).limits).toEqual([{ watts: 1500, basis: "pep" }]);
  });

  test("is not known where the plan does not say", () => {
    expect(greatestPowersIn(segmentAt(COMMON_PLAN_ID, 14.1e6), null).limits).toEqual([]);
    expect(greatestPowersIn(segmentAt("us-part97", 7.05e6), "no such class").limits).toEqual([]);
  });

  test("is the segment's own where it has one", () => {
    const segment = { ...segmentAt("us-part97", 7.05e6), maxPower: { watts: 5, basis: "pep" as const } };
    expect(greatestPowersIn(segment, "general").limits).toEqual([{ watts: 5, basis: "pep" }]);
    const { grants: _, ...bare } = segment;
    expect(greatestPowersIn(bare, null).limits).toEqual([{ watts: 5, basis: "pep" }]);
  });
});
