/** What diff says beside its verdicts: codes and severities, a pair of invented sweeps for each and one without. */
import { CAUTIONS, DEFAULT_THRESHOLDS, type DiffOptions, diff, planById, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { DEFAULT_LIMITS } from "../../packages/core/src/facts/limits.js";
import type { BandDiff } from "../../packages/core/src/jobs/diff/band-diff.js";
import type { Cause } from "../../packages/core/src/jobs/diff/cause.js";
import {
  causesAlike,
  lossNotTold,
  notCompared,
  repeatFindings,
  samePlaneFindings,
  sameSweeps,
  samplingDoubts,
} from "../../packages/core/src/jobs/diff/diff-findings.js";
import { sideOf } from "../../packages/core/src/jobs/diff/sides.js";
import { asDeployment } from "../../packages/core/src/sweep/deployment.js";
import { inventedPlan, rampSweep } from "../support/invented-plan.js";
import { bandOf, resonanceSweep } from "../support/judged.js";
import { numbersIn } from "../support/messages.js";
import { evenly, type Pair, present, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const PLAN = inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6 }]);
const BAND: Pair = [7.0e6, 7.2e6];
const flat = (rho: number, range: Pair = BAND) => rampSweep(range, [rho, rho]);
const result = (
  before: Sweep | readonly Sweep[],
  after: Sweep | readonly Sweep[],
  options: Partial<DiffOptions> = {},
) => diff(before, after, { plan: PLAN, ...options });
const sideWith = (sweep: Sweep) => sideOf([asDeployment(sweep)], DEFAULT_LIMITS, PLAN);
const said = (findings: readonly { code: string; severity: string }[]) =>
  findings.map(({ code, severity }) => `${severity} ${code}`);

describe("a comparison", () => {
  test("holds what it was made of", () => {
    const { before, after, plan, limits, thresholds, cautions } = result([flat(0.1), flat(0.12)], flat(0.3));
    expect([before.length, after.length, plan.id]).toEqual([2, 1, "invented"]);
    expect(limits).toEqual(DEFAULT_LIMITS);
    expect(thresholds).toEqual({ reflectionMagnitude: 0.03, fraction: 0.03, readingSwr: 0.2 });
    expect(cautions).toBe(CAUTIONS);
  });

  test("has the first sweeps before and the second after", () => {
    // Another resistance and another Q: neither loss nor another reference makes the one of the other.
    const [good, poor] = [
      resonanceSweep({ resonanceHz: 7.1e6, ohms: 55, q: 8 }),
      resonanceSweep({ resonanceHz: 7.1e6, ohms: 100, q: 6 }),
    ];
    const [band] = result(good, poor).bands;
    expect(band?.verdict).toBe("worse");
    expect(band?.before.best?.swr).toBeCloseTo(1.1, 6);
    expect(band?.after.best?.swr).toBeCloseTo(2, 6);
    expect(band?.change.bestSwr).toBeCloseTo(0.9, 6);
    expect(result(poor, good).bands[0]?.verdict).toBe("improved");
  });

  test("goes by the operator's own thresholds and limits", () => {
    const thresholds = { ...DEFAULT_THRESHOLDS, reflectionMagnitude: 0.1, fraction: 0.03 };
    expect(result(flat(0.1), flat(0.19), { thresholds }).bands[0]?.verdict).toBe("unchanged");
    const limits = { ...DEFAULT_LIMITS, swr: 1.5 };
    expect(result(flat(0.1), flat(0.3), { limits }).bands[0]?.change.withinLimitFraction).toBe(-1);
  });

  test("of nothing in common says so, and nothing else", () => {
    const nothing = result(flat(0.1), flat(0.1, [14e6, 14.2e6]));
    expect(nothing.bands).toEqual([]);
    expect(said(nothing.findings)).toEqual(["problem no-overlap"]);
  });

  test("names bands that were asked for and are not in it, where others are", () => {
    const plan = present(planById("itu-common"), "plan");
    const saidOf = (bands: string[]) => said(result(flat(0.1), flat(0.2), { plan, bands }).findings);
    expect(saidOf(["40m", "20m"])).toContain("caution band-not-compared");
    expect(saidOf(["40m"])).not.toContain("caution band-not-compared");
  });

  test("without phase says what it cannot tell, on whichever side", () => {
    const scalar = (rho: number) => sweepOfMagnitudes(evenly(7.0e6, 7.2e6, 2000), Array(101).fill(rho));
    const code = "info scalar-comparison";
    expect(said(result(scalar(0.1), flat(0.1)).findings)).toContain(code);
    expect(said(result(flat(0.1), scalar(0.1)).findings)).toContain(code);
    expect(said(result(flat(0.1), flat(0.12)).findings)).not.toContain(code);
  });

  test("asks for the class of a plan that has some", () => {
    const plan = inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6, grants: [{ classes: ["full"] }] }], ["full"]);
    expect(said(result(flat(0.1), flat(0.12), { plan }).findings)).toContain("caution class-not-stated");
  });

  test("names what of the plan rests on memory, of compared bands alone", () => {
    const [read] = PLAN.bands;
    const [unread] = inventedPlan([{ lowHz: 10.1e6, highHz: 10.15e6, confirmed: false }]).bands;
    const plan = {
      ...PLAN,
      bands: [present(read, "40m"), { ...present(read, "x"), band: "x" }, { ...present(unread, "30m"), band: "30m" }],
    };
    expect(said(result(flat(0.1), flat(0.12), { plan }).findings)).not.toContain("caution plan-from-memory");
    const wide: Pair = [7.0e6, 10.15e6];
    expect(said(result(flat(0.1, wide), flat(0.12, wide), { plan }).findings)).toContain("caution plan-from-memory");
  });
});

describe("samples and steps", () => {
  const axis = evenly(6.5e6, 7.8e6, 10_000);
  const sweep = (ohms: number, spike: number | null) => {
    const { reflectionReal, reflectionImaginary } = resonanceSweep({ resonanceHz: 7.1e6, ohms, q: ohms > 60 ? 6 : 8 });
    return sweepOfReflections(
      axis,
      axis.map((_, i): Pair => (i === spike ? [0, 0.99] : [reflectionReal[i] ?? 0, reflectionImaginary[i] ?? 0])),
    );
  };
  const changed = [{ band: "40m", verdict: "worse" } as BandDiff];
  const spikesIn = (before: Sweep, after: Sweep) =>
    samplingDoubts(sideWith(before), sideWith(after), changed, []).length;

  test("that stand alone are told of either side, where a band changed", () => {
    expect(spikesIn(sweep(55, 60), sweep(100, null))).toBe(1);
    expect(spikesIn(sweep(55, null), sweep(100, 60))).toBe(1);
    expect(spikesIn(sweep(55, 60), sweep(100, 60))).toBe(2);
    expect(spikesIn(sweep(55, null), sweep(100, null))).toBe(0);
    expect(said(result(sweep(55, 60), sweep(100, null)).findings)).toContain("caution spike");
  });

  test("that are too coarse are told of the band that changed, and leave the antenna possible only", () => {
    const coarse = (rho: number) => rampSweep([6.8e6, 7.4e6], [rho, rho], 4);
    const band = bandOf(BAND);
    const of = (verdict: string) => {
      const [summary] = result(coarse(0.1), coarse(0.3)).bands;
      return [{ ...present(summary, "40m"), verdict } as BandDiff];
    };
    const doubts = (verdict: string) =>
      said(samplingDoubts(sideWith(coarse(0.1)), sideWith(coarse(0.3)), of(verdict), [band]));
    const both = ["caution step-too-coarse", "caution step-too-coarse"];
    expect(["improved", "worse", "mixed"].map(doubts)).toEqual([both, both, both]);
    expect(["unchanged", "not-comparable"].map(doubts)).toEqual([[], []]);
    expect(samplingDoubts(sideWith(coarse(0.1)), sideWith(coarse(0.3)), of("worse"), [])).toEqual([]);
  });
});

describe("repeats", () => {
  test("that differ by more than counts are told, of their side", () => {
    const alone = sideWith(flat(0.1));
    const side = { ...alone, all: [alone.middle, alone.middle], scatter: 0.031 };
    const thresholds = { ...DEFAULT_THRESHOLDS, reflectionMagnitude: 0.03, fraction: 0.03 };
    expect(said(repeatFindings("before", side, thresholds))).toEqual(["caution repeats-differ"]);
    expect(repeatFindings("before", { ...side, scatter: 0.03 }, thresholds)).toEqual([]);
    expect(numbersIn(repeatFindings("before", side, thresholds)[0]?.message)).toEqual([2, 0.03]);
    const code = "caution repeats-differ";
    expect(said(result([flat(0.1), flat(0.2)], flat(0.1)).findings)).toContain(code);
    expect(said(result(flat(0.1), [flat(0.1), flat(0.2)]).findings)).toContain(code);
    expect(said(result([flat(0.1), flat(0.11)], flat(0.12)).findings)).not.toContain(code);
  });
});

describe("the same sweep on both sides", () => {
  const sameIn = (befores: readonly Sweep[], afters: readonly Sweep[]) =>
    sameSweeps(
      befores.map((sweep) => asDeployment(sweep)),
      afters.map((sweep) => asDeployment(sweep)),
    );

  test("is one with the same frequencies and the same readings", () => {
    const code = ["caution same-sweep"];
    expect(said(sameIn([flat(0.1)], [flat(0.1)]))).toEqual(code);
    expect(said(sameIn([flat(0.2), flat(0.1)], [flat(0.3), flat(0.1)]))).toEqual(code);
    expect(sameIn([flat(0.1)], [flat(0.2)])).toEqual([]);
    expect(sameIn([flat(0.1)], [flat(0.1, [7.0e6, 7.3e6])])).toEqual([]);
    expect(sameIn([flat(0.1)], [rampSweep(BAND, [0.1, 0.1], 51)])).toEqual([]);
    const named = sameIn([flat(0.1), { ...flat(0.2), label: "lock 7" }], [{ ...flat(0.2), label: "other" }]);
    expect(named[0]?.message).toContain("lock 7");
    expect(named[0]?.message).not.toContain("computed");
    expect(sameIn([rampSweep(BAND, [0.1, 0.2])], [rampSweep(BAND, [0.1, 0.3])])).toEqual([]);
  });
});

describe("loss", () => {
  const band = (verdict: string) => ({ band: "40m", verdict }) as BandDiff;
  const cause = (confidence: Cause["confidence"]): Cause => ({
    code: "loss-added",
    confidence,
    evidence: {},
    message: "",
  });
  const told = (verdict: string, causes: readonly Cause[] = []) => said(lossNotTold([band(verdict)], causes));

  test("is not told of a better SWR, where no likely cause says that it is none", () => {
    expect(told("improved")).toEqual(["caution loss-not-told"]);
    const both = ["worse", "improved"].map((verdict, i) => ({ ...band(verdict), band: `${20 * (i + 1)}m` }));
    const [finding] = lossNotTold(both, []);
    expect(numbersIn(finding?.message)).toEqual([40]);
    expect(told("improved", [cause("possible")])).toEqual(["caution loss-not-told"]);
    expect(told("improved", [cause("likely")])).toEqual([]);
    expect(told("improved", [cause("possible"), cause("likely")])).toEqual([]);
    // Another antenna, another line and interference leave open whether it is loss; a wire of another length does not.
    for (const code of ["antenna-changed", "line-length-changed", "interference"] as const)
      expect(told("improved", [{ ...cause("likely"), code }])).toEqual(["caution loss-not-told"]);
    expect(told("improved", [{ ...cause("likely"), code: "resonance-moved" }])).toEqual([]);
    for (const verdict of ["worse", "mixed", "unchanged", "not-comparable"]) expect(told(verdict)).toEqual([]);
  });
});

test("what was taken out of the second sweep is told, cause by cause", () => {
  const cause = (code: Cause["code"]): Cause => ({ code, confidence: "likely", evidence: {}, message: "" });
  const all = ["line-length-changed", "loss-added", "loss-removed", "resonance-moved", "antenna-changed"] as const;
  expect(said(samePlaneFindings(all.map(cause)))).toEqual(Array(3).fill("caution same-plane"));
});

test("several possible causes are named together, unless a likely one parts them", () => {
  const cause = (code: Cause["code"], confidence: Cause["confidence"] = "possible"): Cause => ({
    code,
    confidence,
    evidence: {},
    message: "",
  });
  const messages = (...causes: readonly Cause[]) => causesAlike(causes).map(({ message }) => message);
  expect(messages(cause("capacitor-added"), cause("line-length-changed"), cause("antenna-changed"))).toEqual([
    expect.stringMatching(/^Either a capacitor in series, or another length of line: /),
  ]);
  expect(messages(cause("capacitor-added"), cause("antenna-changed", "likely"))).toEqual([]);
  expect(messages(cause("loss-added", "likely"), cause("capacitor-added"), cause("coil-added"))).toEqual([]);
});

test("bands that were named and are not compared are told once", () => {
  const compared = [{ band: "40m" } as BandDiff];
  expect(said(notCompared(["40m", "20m", "15m"], compared))).toEqual(["caution band-not-compared"]);
  expect(numbersIn(notCompared(["40m", "20m", "15m"], compared)[0]?.message)).toEqual([20, 15]);
  expect(notCompared(["40m"], compared)).toEqual([]);
  expect(notCompared([], compared)).toEqual([]);
});
