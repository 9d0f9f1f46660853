/** Why two sweeps differ: one invented pair for each explanation. */
import { type CauseCode, DEFAULT_LIMITS, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { explanationOf } from "../../packages/core/src/jobs/diff/explanation.js";
import { findCauses } from "../../packages/core/src/jobs/diff/find-causes.js";
import { magnitudeCauses } from "../../packages/core/src/jobs/diff/magnitude-causes.js";
import { sideOf } from "../../packages/core/src/jobs/diff/sides.js";
import { asDeployment } from "../../packages/core/src/sweep/deployment.js";
import { SOME_PLAN, sideCurveFor } from "../support/judged.js";
import { evenly, type Pair, present, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";
import { resonance, swept, sweptWithoutPhase } from "./resonances.js";

/** Forty samples do for what has no noise. */
const axis = evenly(5.5e6, 10e6, 112_500);
const vector = (changes: Parameters<typeof resonance>[0] = {}) => sideCurveFor(swept(resonance(changes), { axis }));
const scalar = (changes: Parameters<typeof resonance>[0] = {}) =>
  sideCurveFor(sweptWithoutPhase(resonance(changes), { axis }));
const told = (causes: readonly { code: CauseCode; confidence: string }[]) =>
  causes.map(({ code, confidence }) => `${confidence} ${code}`);

describe("of two vector sweeps", () => {
  const tolerances = { negligible: 0.0015, enough: 0.012, tight: 0.004 };
  const found = (after: Parameters<typeof resonance>[0], before: Parameters<typeof resonance>[0] = {}) =>
    findCauses(vector(before), vector(after), tolerances, null);

  test("nothing is nothing", () => {
    expect(found({})).toEqual({ causes: [], line: null });
    expect(found({ ohms: 60.1 })).toEqual({ causes: [], line: null });
  });

  test("a longer line", () => {
    const { causes, line } = found({ delayS: 160e-9 });
    expect(told(causes)[0]).toBe("likely line-length-changed");
    expect(line?.delayS).toBeCloseTo(60e-9, 12);
    expect(causes[0]?.evidence.electricalLengthM).toBeCloseTo(8.99, 2);
  });

  test("more loss, and less", () => {
    const more = found({ lossAt10MHzDb: 1.5 });
    expect(told(more.causes)).toEqual(["likely loss-added"]);
    expect(more.causes[0]?.evidence.lossAt10MHzDb).toBeCloseTo(1, 3);
    const less = found({ lossAt10MHzDb: 0.5 }, { lossAt10MHzDb: 1.5 });
    expect(told(less.causes)).toEqual(["likely loss-removed"]);
    expect(less.line?.delayS).toBeCloseTo(0, 12);
  });

  test("a shorter wire", () => {
    const { causes, line } = found({ resonanceHz: 7.1e6 * 1.02 });
    expect(told(causes)).toEqual(["likely resonance-moved"]);
    expect(causes[0]?.evidence.frequencyScale).toBeCloseTo(1.02, 3);
    expect(line).toBeNull();
  });

  test("a shorter wire on a longer line", () => {
    const { causes, line } = found({ resonanceHz: 7.1e6 * 1.02, delayS: 200e-9 });
    expect(told(causes)).toEqual(["likely resonance-moved", "likely line-length-changed"]);
    // What the bulk delay of a sweep is taken for goes into it: to less than counts as a change of length.
    expect(Math.abs((causes[1]?.evidence.electricalLengthM ?? 0) - 14.99)).toBeLessThan(0.25);
    expect(line?.delayS).toBeGreaterThan(0);
  });

  test("another antenna", () => {
    const { causes, line } = found({ ohms: 110, q: 7 });
    expect(told(causes)).toEqual(["likely antenna-changed"]);
    expect(line).toBeNull();
    expect(Object.keys(present(causes[0], "a cause").evidence)).toEqual(
      expect.arrayContaining(["differenceRms", "leastResidual", "dipHzBefore"]),
    );
  });

  test("another antenna on a line that is surely longer", () => {
    const { causes, line } = found({ ohms: 66, q: 11, delayS: 250e-9 });
    expect(told(causes)).toEqual(["likely line-length-changed", "possible antenna-changed"]);
    expect(line?.delayS).toBeCloseTo(150e-9, 8);
  });

  test("a change of the antenna not far beyond what is overlooked is possible only", () => {
    const before = vector();
    const after = vector({ ohms: 72, q: 10 });
    const causes = (enough: number) =>
      told(findCauses(before, after, { negligible: 0.0015, enough, tight: 0.004 }, null).causes);
    expect(causes(0.012)).toEqual(["likely antenna-changed"]);
    const difference =
      present(findCauses(before, after, tolerances, null).causes[0], "a cause").evidence.differenceRms ?? 0;
    expect(causes(difference / 1.51)).toEqual(["likely antenna-changed"]);
    expect(causes(difference / 1.49)).toEqual(["possible antenna-changed"]);
    expect(causes(difference * 1.01)).toEqual([]);
  });

  test("another reference", () => {
    const before = swept(resonance(), { axis });
    const after = sweepOfReflections(
      axis,
      axis.map((hz, i): Pair => {
        // Γb = (Γa - r) / (1 - r Γa) with r = 1/5, from 50 to 75 Ω.
        const [a, b] = [before.reflectionReal[i] ?? 0, before.reflectionImaginary[i] ?? 0];
        const [p, q, s, t] = [a - 0.2, b, 1 - 0.2 * a, -0.2 * b];
        const square = s * s + t * t;
        return hz > 0 ? [(p * s + q * t) / square, (q * s - p * t) / square] : [0, 0];
      }),
    );
    const { causes } = findCauses(vector(), sideCurveFor(after), tolerances, null);
    expect(told(causes)).toEqual(["likely reference-changed"]);
    expect(causes[0]?.evidence.referenceOhms).toBeCloseTo(75, 1);
  });

  test("a few samples that jump, and beneath them what changed", () => {
    /** Two and three samples in a row that are off; so many are no lone samples, and stay in the curve. */
    const dense = evenly(5.5e6, 10e6, 45_000);
    const before = sideCurveFor(swept(resonance(), { axis: dense }));
    const jumping = (changes: Parameters<typeof resonance>[0]) => {
      const { reflectionReal, reflectionImaginary } = swept(resonance(changes), { axis: dense });
      const pairs = [...reflectionReal].map((real, i): Pair => {
        const jump = [20, 21, 60, 61, 62].includes(i) ? 0.5 : 0;
        return [real - jump, reflectionImaginary[i] ?? 0];
      });
      return sideCurveFor(sweepOfReflections(dense, pairs));
    };
    expect(told(findCauses(before, jumping({}), tolerances, null).causes)).toEqual(["likely interference"]);
    expect(told(findCauses(before, jumping({ delayS: 160e-9 }), tolerances, null).causes)).toContain(
      "likely line-length-changed",
    );
  });

  test("too few samples in common say nothing", () => {
    const few = evenly(7.0e6, 7.5e6, 50_000);
    const short = (changes: Parameters<typeof resonance>[0]) => sideCurveFor(swept(resonance(changes), { axis: few }));
    expect(findCauses(short({}), short({ ohms: 120 }), tolerances, null)).toEqual({ causes: [], line: null });
  });
});

describe("of sweeps without phase", () => {
  const tolerances = { negligible: 0.0015, enough: 0.012, tight: 0.004 };
  const found = (after: Parameters<typeof resonance>[0], before: Parameters<typeof resonance>[0] = {}) =>
    magnitudeCauses(scalar(before), scalar(after), tolerances);

  test("nothing, loss, and a moved resonance are told", () => {
    expect(found({})).toEqual([]);
    expect(found({ delayS: 300e-9 })).toEqual([]);
    const [more] = found({ lossAt10MHzDb: 1.5 });
    expect(told(found({ lossAt10MHzDb: 1.5 }))).toEqual(["likely loss-added"]);
    expect(more?.evidence.lossAt10MHzDb).toBeCloseTo(1, 2);
    expect(more?.evidence.powerPercentAt10MHz).toBeCloseTo(100 * (1 - 10 ** -0.1), 1);
    expect(told(found({}, { lossAt10MHzDb: 1.5 }))).toEqual(["likely loss-removed"]);
    const moved = found({ resonanceHz: 7.1e6 * 1.02, lossAt10MHzDb: 0 }, { lossAt10MHzDb: 0 });
    expect(told(moved)).toEqual(["likely resonance-moved"]);
    expect(moved[0]?.evidence.frequencyScale).toBeCloseTo(1.02, 3);
  });

  test("another antenna is possible only", () => {
    const causes = found({ ohms: 110, q: 7 });
    expect(told(causes)).toEqual(["possible antenna-changed"]);
    expect(Object.keys(causes[0]?.evidence ?? {})).toEqual(["differenceRms", "residualOfLoss", "residualOfScaling"]);
  });

  test("loss that grows otherwise is told as loss", () => {
    const rho = (factor: (hz: number) => number) => {
      const sweep = sweptWithoutPhase(resonance(), { axis });
      return sideCurveFor(
        sweepOfMagnitudes(
          axis,
          axis.map((hz, i) => (sweep.reflectionMagnitude[i] ?? 0) * factor(hz)),
        ),
      );
    };
    const even = magnitudeCauses(
      scalar(),
      rho(() => 10 ** -0.1),
      tolerances,
    );
    expect(even[0]?.evidence.lossAt10MHzDb).toBeCloseTo(1, 2);
    const proportional = magnitudeCauses(
      scalar(),
      rho((hz) => 10 ** (-0.1 * (hz / 10e6))),
      tolerances,
    );
    expect(proportional[0]?.evidence.lossAt10MHzDb).toBeCloseTo(1, 2);
  });
});

describe("where no cause is sure", () => {
  const side = (sweep: Sweep) => sideOf([asDeployment(sweep)], DEFAULT_LIMITS, SOME_PLAN);
  const wide = evenly(3e6, 20e6, 340_000);

  test("loss may have changed as well", () => {
    const before = side(swept(resonance(), { axis: wide }));
    const after = side(swept(resonance({ ohms: 110, q: 7, lossAt10MHzDb: 1.5 }), { axis: wide }));
    expect(told(explanationOf(before, after, null).causes)).toEqual(["likely antenna-changed", "possible loss-added"]);
  });

  test("but not beside a sure one", () => {
    const before = side(swept(resonance(), { axis: wide }));
    const after = side(swept(resonance({ lossAt10MHzDb: 1.5 }), { axis: wide }));
    expect(told(explanationOf(before, after, null).causes)).toEqual(["likely loss-added"]);
  });

  test("a sweep without phase is held against one with it by its size", () => {
    const before = side(swept(resonance(), { axis }));
    const after = side(sweptWithoutPhase(resonance({ lossAt10MHzDb: 1.5 }), { axis }));
    expect(explanationOf(before, after, null).line).toBeNull();
    expect(told(explanationOf(before, after, null).causes)).toEqual(["likely loss-added"]);
    expect(told(explanationOf(after, before, null).causes)).toEqual(["likely loss-removed"]);
  });
});
