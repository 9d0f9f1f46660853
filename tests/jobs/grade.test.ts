/** Grades from known shares: ρ runs evenly, so that the share of the band under any SWR follows from it. */
import {
  DEFAULT_LIMITS,
  GRADE_CRITERIA,
  type GradeOptions,
  gradeSweep,
  type Sweep,
  scalarSweep,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { inventedPlan, rampSweep } from "../support/invented-plan.js";
import { resonanceSweep } from "../support/judged.js";
import { type Pair, present } from "../support/sweeps.js";

const BAND: Pair = [7.0e6, 7.2e6];
const PLAN = inventedPlan([{ lowHz: BAND[0], highHz: BAND[1] }]);
const graded = (sweep: Sweep, options: Partial<GradeOptions> = {}) => gradeSweep(sweep, { plan: PLAN, ...options });
const gradeOf = (sweep: Sweep, options: Partial<GradeOptions> = {}) => graded(sweep, options).bands[0]?.grade;

/** ρ rises evenly and meets each limit after such a share of the band: of 2:1 (1/3), 3:1 (1/2) or 10:1 (9/11). */
const meets = (limit: number, share: number, slope = 0.1) =>
  rampSweep(BAND, [limit - slope * share, limit + slope * (1 - share)]);

describe("a grade asks for shares of the band", () => {
  test.each([
    ["A", "all within 2:1", rampSweep(BAND, [0.1, 0.33])],
    ["B", "all but 2 % within 2:1", meets(1 / 3, 0.98)],
    ["B", "51 % within 2:1, all within 3:1", meets(1 / 3, 0.51)],
    ["C", "49 % within 2:1, all within 3:1", meets(1 / 3, 0.49)],
    ["C", "91 % within 3:1", meets(1 / 2, 0.91)],
    ["D", "89 % within 3:1", meets(1 / 2, 0.89)],
    ["D", "91 % within 10:1", meets(9 / 11, 0.91)],
    ["F", "89 % within 10:1", meets(9 / 11, 0.89)],
    // 55 % within 2:1, and no more than 85 % within 3:1: ρ by 1/6 on 30 % of the band.
    ["D", "55 % within 2:1, 85 % within 3:1", meets(1 / 3, 0.55, 1 / 6 / 0.3)],
  ] as const)("%s: %s", (grade, _, sweep) => {
    expect(graded(sweep)).toMatchObject({ grade, bands: [{ band: "40m", grade, sweptFraction: 1 }] });
  });

  test("or for the operator's own", () => {
    const criteria = GRADE_CRITERIA.map((each) => (each.grade === "A" ? { ...each, withoutTuner: 0.9 } : each));
    expect(gradeOf(meets(1 / 3, 0.95), { criteria })).toBe("A");
    expect(gradeOf(meets(1 / 3, 0.89), { criteria })).toBe("B");
    expect(gradeOf(rampSweep(BAND, [0.9, 0.95]), { criteria: criteria.slice(0, 2) })).toBeNull();
  });

  test("within the operator's own limits", () => {
    const limits = { swr: 1.5, builtInTunerSwr: 1.8, wideRangeTunerSwr: 2.2 };
    expect(gradeOf(rampSweep(BAND, [0.3, 0.33]), { limits })).toBe("D");
  });
});

describe("a grade is given", () => {
  test.each([
    [7.1801e6, "A"],
    [7.1799e6, null],
  ])("where 90 %% of the band was swept: up to %d Hz %s", (lastHz, grade) => {
    const limited = graded(rampSweep([7.0e6, lastHz], [0.1, 0.1]), {
      criteria: GRADE_CRITERIA.map((each) => ({
        ...each,
        withoutTuner: 0.1,
        withBuiltInTuner: 0,
        withWideRangeTuner: 0,
      })),
    });
    expect(limited.bands[0]?.grade).toBe(grade);
    expect(limited.grade).toBe(grade);
  });

  test("with what was not swept counted as bad", () => {
    expect(gradeOf(rampSweep([7.0e6, 7.19e6], [0.1, 0.1]))).toBe("B");
  });

  test("over the bands that have one", () => {
    const [forty] = PLAN.bands;
    const [thirty] = inventedPlan([{ lowHz: 10.1e6, highHz: 10.15e6 }]).bands;
    const plan = { ...PLAN, bands: [forty, thirty].map((band) => present(band, "a band")) };
    const result = gradeSweep(rampSweep(BAND, [0.4, 0.45]), { plan });
    expect([result.grade, ...result.bands.map(({ grade }) => grade)]).toEqual(["C", "C", null]);
  });

  test("to no band that was not swept", () => {
    expect(graded(rampSweep([14e6, 14.2e6], [0.1, 0.1]))).toMatchObject({
      grade: null,
      lossBoundDb: null,
      log: null,
      bands: [{ grade: null, bestSwr: null, bestHz: null, dipHz: null, withinLimitFraction: 0, need: "unknown" }],
    });
  });
});

describe("where the instrument's scale ended", () => {
  /** All at the end of a scale of so much ρ. */
  const atEnd = (ceiling: number) =>
    scalarSweep(
      { label: "end", source: { file: "end", format: "computed", description: "", comments: [] }, referenceOhms: 50 },
      { frequencyHz: Float64Array.from(BAND), reflectionMagnitude: Float64Array.of(ceiling, ceiling) },
      ceiling,
    );

  test.each([
    ["below 2:1 could be anything", 0.3, null],
    ["between 2:1 and 3:1 could still be matched by a tuner", 0.4, null],
    ["between 3:1 and 10:1 could be matched by a wide-range tuner", 0.6, null],
    ["at 10:1 is beyond it", 9 / 11, "F"],
    ["beyond 10:1 is beyond it", 0.9, "F"],
  ])("a reading that means at least an SWR %s", (_, ceiling, grade) => {
    expect(gradeOf(atEnd(ceiling))).toBe(grade);
  });

  test.each([
    // Half of the band at the end of a scale, the rest within 2:1; with tuners that match no more the grade is known.
    ["which a built-in tuner may match", 0.45, { builtInTunerSwr: 3 }, null],
    ["which it may not match", 0.55, { builtInTunerSwr: 3, wideRangeTunerSwr: 3.1 }, "F"],
    ["which nothing matches", 0.6, { builtInTunerSwr: 2, wideRangeTunerSwr: 4 }, "F"],
    ["that begins at the limit of the built-in tuner", 0.5, { builtInTunerSwr: 3, wideRangeTunerSwr: 3 }, "F"],
  ] as const)("half of the band at an SWR %s", (_, ceiling, limits, grade) => {
    const rho = Float64Array.from({ length: 101 }, (__, i) => (i < 50 ? 0.1 : ceiling));
    const sweep = scalarSweep(
      { label: "end", source: { file: "end", format: "computed", description: "", comments: [] }, referenceOhms: 50 },
      { frequencyHz: Float64Array.from(rho, (__, i) => 7.0e6 + 2000 * i), reflectionMagnitude: rho },
      ceiling,
    );
    expect(gradeOf(sweep, { limits: { ...DEFAULT_LIMITS, ...limits } })).toBe(grade);
  });

  test("what the rest of the band says may be enough", () => {
    // 5 % at the end of a scale up to 2.6:1: no A, and B already.
    const rho = Float64Array.from({ length: 101 }, (_, i) => (i < 95 ? 0.1 : 0.45));
    const sweep = scalarSweep(
      { label: "end", source: { file: "end", format: "computed", description: "", comments: [] }, referenceOhms: 50 },
      { frequencyHz: Float64Array.from(rho, (_, i) => 7.0e6 + 2000 * i), reflectionMagnitude: rho },
      0.45,
    );
    expect(graded(sweep).bands[0]).toMatchObject({ grade: "B", need: "unknown" });
  });
});

describe("over all bands", () => {
  const of = (...rhos: readonly number[]) => {
    const bands = rhos.map((_, i) => {
      const lowHz = (7 + i) * 1e6;
      const [band] = inventedPlan([{ lowHz, highHz: lowHz + 200_000 }]).bands;
      return { ...present(band, "band"), band: `${i}` };
    });
    const frequencyHz = rhos.flatMap((_, i) => Array.from({ length: 41 }, (__, k) => (7 + i) * 1e6 + 5000 * k));
    const reflectionMagnitude = rhos.flatMap((rho) => Array<number>(41).fill(rho));
    const sweep = scalarSweep(
      { label: "all", source: { file: "all", format: "computed", description: "", comments: [] }, referenceOhms: 50 },
      { frequencyHz: Float64Array.from(frequencyHz), reflectionMagnitude: Float64Array.from(reflectionMagnitude) },
    );
    const { grade, bands: each } = gradeSweep(sweep, { plan: { ...PLAN, bands } });
    return [grade, ...each.map((band) => band.grade)].join("");
  };

  test("the grade is the mean, a half to the better", () => {
    expect(of(0.1, 0.1)).toBe("AAA");
    // 4 and 2; 4 and 1, of 2.5; 4, 1 and 1; 1 and 0, of 0.5; 0 and 0.
    expect(of(0.1, 0.4)).toBe("BAC");
    expect(of(0.1, 0.6)).toBe("BAD");
    expect(of(0.1, 0.6, 0.6)).toBe("CADD");
    expect(of(0.6, 0.9)).toBe("DDF");
    expect(of(0.9, 0.9)).toBe("FFF");
  });
});

test("the best point is a dip, or an edge nearest to one, whose place is told as well where it is not another band's", () => {
  const dipAt = (resonanceHz: number) => graded(resonanceSweep({ resonanceHz, ohms: 60, q: 15 })).bands[0];
  const within = present(dipAt(7.1e6), "band");
  expect(present(within.dipHz, "dip") / 7.1e6).toBeCloseTo(1, 5);
  expect(within.bestHz).toBe(within.dipHz);
  expect(within.bestSwr).toBeCloseTo(1.2, 5);
  const beside = present(dipAt(6.9e6), "band");
  expect(beside.bestHz).toBe(7.0e6);
  expect(present(beside.dipHz, "dip") / 6.9e6).toBeCloseTo(1, 5);
  expect(dipAt(6.4e6)).toMatchObject({ bestHz: 7.0e6, dipHz: null });
});

test("the loss that the sweep allows is told", () => {
  expect(graded(rampSweep([3e6, 30e6], [0.5, 0.5])).lossBoundDb).toBeCloseTo(10 * Math.log10(2), 6);
});
