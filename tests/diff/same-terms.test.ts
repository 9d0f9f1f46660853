/** Two sides at one reference impedance, and at one place on the line. Loads are invented. */
import { type Deployment, diff, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { onSameTerms, type TermsOptions } from "../../packages/core/src/jobs/diff/same-terms.js";
import type { Given } from "../../packages/core/src/jobs/diff/sides.js";
import { inventedPlan } from "../support/invented-plan.js";
import { resonanceSweep, SOME_PLAN } from "../support/judged.js";
import { evenly, present, reflectionOf, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";
import { resonance, swept } from "./resonances.js";

const axis = evenly(5.5e6, 10e6, 45_000);

/** Both sides on the same terms, each deployment's sweeps by themselves. */
function termsOf(first: Given | readonly Given[], second: Given | readonly Given[], options: TermsOptions = {}) {
  const { before, after, ...terms } = onSameTerms(first, second, { plan: SOME_PLAN, ...options });
  return { ...terms, before: sweepsOf(before), after: sweepsOf(after) };
}
const sweepsOf = (side: readonly Deployment[]): readonly Sweep[] => side.flatMap(({ parts }) => parts);

describe("on the same terms", () => {
  const at50 = resonanceSweep({ resonanceHz: 7.1e6, ohms: 60, q: 15 });
  const at75 = sweepOfReflections(
    [...at50.frequencyHz],
    [...at50.frequencyHz].map((hz) => reflectionOf([60, 900 * (hz / 7.1e6 - 7.1e6 / hz)], 75)),
    75,
  );
  const withoutPhase = (sweep: typeof at50) =>
    sweepOfMagnitudes([...sweep.frequencyHz], [...sweep.reflectionMagnitude], sweep.referenceOhms);

  test("the second sweep is seen against the reference of the first, whichever that is", () => {
    for (const [first, second] of [
      [at50, at75],
      [at75, at50],
    ] as const) {
      const { before, after, isMatched, findings } = termsOf(first, second);
      expect(after.map(({ referenceOhms }) => referenceOhms)).toEqual([first.referenceOhms]);
      expect(before).toEqual([first]);
      expect(isMatched).toBe(true);
      expect(findings.map(({ code, severity }) => [code, severity])).toEqual([["different-reference", "info"]]);
      after[0]?.reflectionMagnitude.forEach((rho, i) => {
        expect(rho).toBeCloseTo(first.reflectionMagnitude[i] ?? Number.NaN, 12);
      });
    }
    expect(termsOf(at50, at50).findings).toEqual([]);
  });

  test("repeats of both sides are, and stay on theirs", () => {
    const { before, after } = termsOf([at50, at75], [at75, at50, at75]);
    expect([before.length, after.length]).toEqual([2, 3]);
    expect([...before, ...after].map(({ referenceOhms }) => referenceOhms)).toEqual([50, 50, 50, 50, 50]);
  });

  test("a sweep without phase cannot be", () => {
    for (const [first, second] of [
      [withoutPhase(at50), withoutPhase(at75)],
      [at50, withoutPhase(at75)],
      [withoutPhase(at75), withoutPhase(at50)],
    ] as const) {
      const { isMatched, findings } = termsOf(first, second);
      expect(isMatched).toBe(false);
      expect(findings.map(({ code, severity }) => [code, severity])).toEqual([["different-reference", "problem"]]);
    }
    expect(termsOf(withoutPhase(at75), at50).isMatched).toBe(true);
    expect(termsOf(withoutPhase(at75), at50).after[0]?.referenceOhms).toBe(75);
  });

  test("diff says not comparable, and judges what was converted", () => {
    const plan = inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6 }]);
    const verdicts = (first: Sweep, second: Sweep) => diff(first, second, { plan }).bands.map(({ verdict }) => verdict);
    expect(verdicts(at50, at75)).toEqual(["unchanged"]);
    expect(verdicts(withoutPhase(at50), withoutPhase(at75))).toEqual(["not-comparable"]);
  });

  test("a change of the line is taken out of the second sweep where that is asked for", () => {
    const [near, far] = [
      swept(resonance(), { axis }),
      swept(resonance({ delayS: 160e-9, lossAt10MHzDb: 0.9 }), { axis }),
    ];
    const asked = termsOf(near, far, { isSamePlane: true });
    expect(`${asked.takenOut[0]?.confidence} ${asked.takenOut[0]?.code}`).toBe("likely line-length-changed");
    const moved = present(asked.after[0], "after");
    if (moved.kind !== "vector") throw new Error("the sweep has lost its phase");
    for (const i of axis.keys()) {
      expect(moved.reflectionReal[i]).toBeCloseTo(near.reflectionReal[i] ?? 0, 4);
      expect(moved.reflectionImaginary[i]).toBeCloseTo(near.reflectionImaginary[i] ?? 0, 4);
    }
    const plain = termsOf(near, far);
    expect([plain.after[0], plain.takenOut]).toEqual([far, []]);
    expect(termsOf(near, near, { isSamePlane: true }).takenOut).toEqual([]);
  });
});
