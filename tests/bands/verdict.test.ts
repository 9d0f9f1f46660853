/** The verdict on a band and on each of its segments, and what is told beside it. ρ runs evenly, so every share is known. */
import { feedlineFrom, modeOf, type Sweep, swrFromReflectionMagnitude } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { type BandContext, checkBand } from "../../packages/core/src/bands/band-result.js";
import { knownOf } from "../../packages/core/src/bands/known.js";
import { asDeployment } from "../../packages/core/src/sweep/deployment.js";
import { rampSweep } from "../support/invented-plan.js";
import { bandOf, SOME_PLAN } from "../support/judged.js";
import { type Pair, present } from "../support/sweeps.js";

const BAND: Pair = [7.0e6, 7.2e6];
/** ρ at the limit of 2:1. */
const LIMIT = 1 / 3;
const judged = (sweep: Sweep, context: BandContext = {}, ...segments: readonly Pair[]) => {
  const [first = BAND, ...others] = segments;
  return checkBand(knownOf(asDeployment(sweep), { plan: SOME_PLAN }), bandOf(first, ...others), context);
};

describe("a band", () => {
  test.each([
    ["all within the limit", BAND, [0.1, 0.3], 1, 1, "pass"],
    ["all beyond it", BAND, [0.4, 0.5], 1, 0, "fail"],
    ["half within it", BAND, [LIMIT - 0.1, LIMIT + 0.1], 1, 0.5, "partial"],
    // Less than 1 % is still something: a fail says that nothing at all is within the limit.
    ["a four-hundredth within it", BAND, [LIMIT - 0.001, LIMIT + 0.399], 1, 0.0025, "partial"],
    ["all but a four-hundredth within it", BAND, [LIMIT - 0.399 + 0.1, LIMIT + 0.00075], 1, 0.9975, "partial"],
    ["swept by half and within it", [7.0e6, 7.1e6], [0.1, 0.1], 0.5, 0.5, "partial"],
    ["swept by half and beyond it", [7.1e6, 7.2e6], [0.5, 0.5], 0.5, 0, "fail"],
    ["swept beyond both ends", [6.9e6, 7.3e6], [0.1, 0.1], 1, 1, "pass"],
    ["not swept", [14e6, 14.2e6], [0.1, 0.1], 0, 0, "not-swept"],
  ] as const)("%s", (_, range, rho, swept, within, verdict) => {
    const result = judged(rampSweep(range, rho));
    expect(result.verdict).toBe(verdict);
    expect(result.sweptFraction).toBeCloseTo(swept, 9);
    expect(result.withinLimit.fraction).toBeCloseTo(within, 3);
  });

  test("whose segments differ has a verdict for each", () => {
    // ρ rises by 0.02 each 10 kHz and meets the limit at 7.1 MHz.
    const { segments, verdict } = judged(
      rampSweep([7.0e6, 7.18e6], [LIMIT - 0.2, LIMIT + 0.16]),
      {},
      [7.0e6, 7.05e6],
      [7.05e6, 7.14e6],
      [7.14e6, 7.16e6],
      [7.16e6, 7.2e6],
      [7.2e6, 7.25e6],
    );
    expect(verdict).toBe("partial");
    const told = segments.map((segment) => [
      segment.lowHz / 1e6,
      segment.highHz / 1e6,
      segment.verdict,
      Number(segment.sweptFraction.toFixed(6)),
      Number(segment.withinLimitFraction.toFixed(6)),
    ]);
    expect(told).toEqual([
      [7.0, 7.05, "pass", 1, 1],
      [7.05, 7.14, "partial", 1, 0.555556],
      [7.14, 7.16, "fail", 1, 0],
      [7.16, 7.2, "fail", 0.5, 0],
      [7.2, 7.25, "not-swept", 0, 0],
    ]);
    const worst = segments.map(({ worstSwr }) => worstSwr && Number(worstSwr.toFixed(4)));
    const swrAt = (hz: number) => Number(swrFromReflectionMagnitude(LIMIT + (hz - 7.1e6) * 2e-6).toFixed(4));
    expect(worst).toEqual([swrAt(7.05e6), swrAt(7.14e6), swrAt(7.16e6), swrAt(7.18e6), null]);
  });
});

describe("power", () => {
  const modesOf = (context: BandContext) => judged(rampSweep(BAND, [0.1, 0.1]), context).power.map(({ mode }) => mode);

  test("is told for the commonest modes where equipment limits it, for those that were named in any case", () => {
    expect(modesOf({})).toEqual([]);
    expect(modesOf({ equipment: { radio: { tuner: "built-in" } } })).toEqual([]);
    expect(modesOf({ equipment: { radio: { powerW: 50 } } })).toEqual(["cw", "ssb", "data"]);
    expect(modesOf({ equipment: { radio: { powerW: 50 } }, modes: [modeOf("fm")] })).toEqual(["fm"]);
    expect(modesOf({ modes: [modeOf("fm")] })).toEqual(["fm"]);
  });
});

describe("the feedline", () => {
  const feedline = feedlineFrom({ kind: "rg-58", lengthM: 20 });

  test("is told of where it is known and the band was swept", () => {
    const sweep = rampSweep(BAND, [0.1, 0.2]);
    expect(judged(sweep).feedline).toBeNull();
    expect(judged(rampSweep([14e6, 14.2e6], [0.1, 0.2]), { feedline }).feedline).toBeNull();
    const told = present(judged(sweep, { feedline }).feedline, "the feedline");
    expect(present(told.atBest, "best").frequencyHz).toBe(7.0e6);
    expect(present(told.atWorst, "worst").frequencyHz).toBe(7.2e6);
  });

  test("bears the greatest power of all modes", () => {
    const equipment = { radio: { powerW: 500 }, antenna: { ratedPowerW: { cw: 100, ssb: 200, data: 50 } } };
    const told = judged(rampSweep(BAND, [0.1, 0.2]), { feedline, equipment }).feedline;
    expect(told?.powerW).toBe(200);
    expect(judged(rampSweep(BAND, [0.1, 0.2]), { feedline }).feedline).toMatchObject({ powerW: null, stress: null });
  });
});
