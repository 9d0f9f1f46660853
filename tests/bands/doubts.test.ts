/** What is said beside the verdicts on bands: only codes, severities and bands, never the words. Everything is invented. */
import { DEFAULT_LIMITS, feedlineFrom, modeOf, type PowerResult } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import type { BandResult } from "../../packages/core/src/bands/band-result.js";
import {
  doubtFindings,
  lossFindings,
  modeFindings,
  powerFindings,
  referenceFindings,
} from "../../packages/core/src/bands/doubts.js";
import type { Equipment } from "../../packages/core/src/bands/power.js";
import { rampSweep } from "../support/invented-plan.js";
import { analysed, bandOf } from "../support/judged.js";

const codes = (findings: readonly { readonly code: string }[]) => findings.map(({ code }) => code);

describe("a verdict is unsure", () => {
  const point = (swr: number, swrLow: number, swrHigh: number) => ({ swr, swrLow, swrHigh });
  const isUnsure = (verdict: string, best: object | null, worst: object | null) => {
    const findings = doubtFindings([{ band: "40m", verdict, best, worst } as BandResult], DEFAULT_LIMITS);
    for (const { code, severity, band } of findings) {
      expect([code, severity, band]).toEqual(["verdict-unsure", "caution", "40m"]);
    }
    return findings.length === 1;
  };
  const good = point(1.2, 1.1, 1.3);
  const barelyGood = point(1.9, 1.8, 2.1);
  const barelyPoor = point(2.1, 1.9, 2.3);
  const poor = point(3, 2.8, 3.2);

  test.each([
    ["pass", good, good, false],
    ["pass", good, barelyGood, true],
    ["pass", barelyGood, good, false],
    ["pass", good, point(1.9, 1.8, 2), false],
    ["fail", poor, poor, false],
    ["fail", barelyPoor, poor, true],
    ["fail", poor, barelyPoor, false],
    ["fail", point(2.1, 2, 2.3), poor, false],
    ["partial", good, poor, false],
    ["partial", barelyGood, poor, true],
    ["partial", good, barelyPoor, true],
    // Swept in part: within the limit throughout, the worst may not turn the verdict to "pass".
    ["partial", good, barelyGood, false],
    ["not-swept", null, null, false],
    // What was not swept has no verdict to turn, whatever else is said of it.
    ["not-swept", barelyPoor, barelyPoor, false],
    ["pass", null, null, false],
    ["fail", null, null, false],
    ["fail", point(2, 1.9, 2.3), poor, false],
  ] as const)("%s with best %j and worst %j: %s", (verdict, best, worst, expected) => {
    expect(isUnsure(verdict, best, worst)).toBe(expected);
  });

  test.each([
    ["pass", good, barelyGood, [1.8, 2.1]],
    ["fail", barelyPoor, poor, [1.9, 2.3]],
    ["partial", good, barelyPoor, [1.9, 2.3]],
    ["partial", barelyGood, poor, [1.8, 2.1]],
    ["partial", barelyGood, barelyPoor, [1.9, 2.3]],
  ] as const)("%s with best %j and worst %j by the interval %j", (verdict, best, worst, interval) => {
    const [finding] = doubtFindings([{ band: "40m", verdict, best, worst } as BandResult], DEFAULT_LIMITS);
    // The interval is told in the message alone.
    const numbers = (finding?.message.match(/\d+\.\d+/g) ?? []).map(Number);
    expect(numbers).toEqual(interval);
  });

  test("only where its interval is known", () => {
    expect(isUnsure("pass", { swr: 1.99 }, { swr: 1.99 })).toBe(false);
    expect(isUnsure("fail", { swr: 2.01 }, { swr: 2.01 })).toBe(false);
  });
});

describe("what power leaves out", () => {
  const licence = [{ watts: 100, basis: "pep" }] as const;
  const RATED = { radio: { powerW: 100 } };
  const power = (
    watts: number | null,
    licenceLimits: PowerResult["licenceLimits"],
    more: Partial<PowerResult> = {},
  ) => ({
    watts,
    licenceLimits,
    isRatingCovered: null,
    exposure: null,
    ...more,
  });
  const result = (band: string, ...rows: readonly object[]) =>
    ({ band, power: rows, feedline: null }) as unknown as BandResult;
  const said = (...results: readonly BandResult[]) => codes(powerFindings(results, null, RATED));

  test("is the licence's limit where no row of a band has one", () => {
    expect(said(result("40m", power(50, []), power(50, [])))).toEqual(["power-limit-unknown"]);
    expect(said(result("40m", power(50, licence), power(50, licence)))).toEqual([]);
    expect(said(result("40m", power(50, licence)), result("20m", power(50, [])))).toEqual(["power-limit-unknown"]);
  });

  test("is told also of a band that has a limit for one of its modes", () => {
    expect(said(result("40m", power(50, []), power(50, licence)))).toEqual(["power-limit-unknown"]);
  });

  test("is what the equipment bears, where only the licence limits", () => {
    const bare = (equipment: Equipment) => codes(powerFindings([result("40m", power(100, licence))], null, equipment));
    expect(bare({})).toEqual(["no-rating-stated"]);
    expect(bare({ antenna: { gainDbi: 3 } })).toEqual(["no-rating-stated"]);
    expect(bare({ antenna: { ratedPowerW: 100 } })).toEqual([]);
  });

  test("is a rating that the SWR goes beyond", () => {
    expect(said(result("40m", power(50, licence, { isRatingCovered: false })))).toEqual(["rating-not-covered"]);
    expect(said(result("40m", power(50, licence, { isRatingCovered: true })))).toEqual([]);
  });

  test("is the length of the wire, where a distance for people is told", () => {
    const exposure = { averageWatts: 10, byRule: [], isExempt: null };
    const rows = [result("40m", power(50, licence, { exposure }))];
    expect(codes(powerFindings(rows, null, RATED))).toEqual(["wire-length-unknown"]);
    expect(codes(powerFindings(rows, null, { ...RATED, antenna: { wireLengthM: 20 } }))).toEqual([]);
  });

  test("is nothing where no power is told", () => {
    expect(said(result("40m", power(null, [])))).toEqual([]);
    expect(said(result("40m"))).toEqual([]);
    expect(said(result("40m", power(null, []), power(50, [])))).toEqual(["power-limit-unknown"]);
  });

  describe("is what the line bears", () => {
    const line = feedlineFrom({ kind: "rg-58", lengthM: 10 });
    const on = (stress: object | null) => ({ ...result("40m"), feedline: { stress } }) as unknown as BandResult;
    const stressed = on({ volts: 70, amperes: 1.4 });
    const rated = (ratings: object, ...results: readonly BandResult[]) =>
      codes(powerFindings(results, { ...line, ...ratings }, RATED));

    test("where a stress is told and no rating is known", () => {
      expect(rated({}, stressed)).toEqual(["feedline-rating-unknown"]);
      expect(rated({}, on(null), stressed)).toEqual(["feedline-rating-unknown"]);
      expect(rated({}, on(null))).toEqual([]);
      expect(rated({}, result("40m"))).toEqual([]);
      expect(codes(powerFindings([stressed], null, RATED))).toEqual([]);
    });

    test("but not where one of the two ratings is", () => {
      expect(rated({ ratedVolts: 400 }, stressed)).toEqual([]);
      expect(rated({ ratedAmperes: 3 }, stressed)).toEqual([]);
    });
  });
});

describe("a mode that was named", () => {
  const closed = { ...bandOf([7.0e6, 7.1e6]), band: "30m" };
  const forMorse = { ...closed, segments: closed.segments.map((segment) => ({ ...segment, use: "cw" })) };
  const open = bandOf([7.0e6, 7.1e6]);
  const swept = { best: { swr: 1 } } as unknown as BandResult;
  const said = (bands: Parameters<typeof modeFindings>[0], ...modes: readonly ("cw" | "ssb")[]) =>
    modeFindings(bands, { modes: modes.map((mode) => modeOf(mode)) });

  test("and may not be sent on a swept band is told, once for all bands", () => {
    const one = { band: forMorse, result: swept };
    expect(said([one, one], "ssb").map(({ code, severity }) => [code, severity])).toEqual([
      ["mode-not-permitted", "caution"],
    ]);
    expect(said([one], "cw")).toEqual([]);
    expect(said([one], "cw", "ssb")).toHaveLength(1);
    expect(said([{ band: open, result: swept }], "cw", "ssb")).toEqual([]);
  });

  test("is not told for a band that was not swept, nor for one with any segment that takes it", () => {
    const unswept = { ...swept, best: null };
    expect(said([{ band: forMorse, result: unswept }], "ssb")).toEqual([]);
    const mixed = { ...open, segments: [...forMorse.segments, ...open.segments] };
    expect(said([{ band: mixed, result: swept }], "ssb")).toEqual([]);
  });
});

describe("the sweep itself", () => {
  test("is doubted where it refers to anything but 50 Ω", () => {
    const sweep = rampSweep([7.0e6, 7.2e6], [0.1, 0.1]);
    expect(referenceFindings([sweep])).toEqual([]);
    const [other] = referenceFindings([{ ...sweep, referenceOhms: 75 }]);
    expect(other).toMatchObject({ code: "reference-not-50", severity: "problem" });
  });

  test.each([
    // Half of the return loss: ρ of 0.8 is 0.97 dB, of 0.79 it is 1.02 dB.
    [0.8, "loss-bound", "info"],
    [0.79, "low-swr-may-be-loss", "caution"],
  ] as const)("that reflects %d throughout: %s", (rho, code, severity) => {
    const { curve } = analysed(rampSweep([3e6, 30e6], [rho, rho]));
    expect(lossFindings([curve]).map((finding) => [finding.code, finding.severity])).toEqual([[code, severity]]);
  });

  test("bounds no loss over less than an octave", () => {
    expect(lossFindings([analysed(rampSweep([7.0e6, 7.2e6], [0.8, 0.8])).curve])).toEqual([]);
  });
});
