/** What a line between analyser and antenna does on a band. ρ and lines are invented; losses are chosen so that numbers come out even. */
import {
  antennaEndAt,
  curveOf,
  type Feedline,
  feedlineFrom,
  magnitudeAtLoad,
  type PowerResult,
  planById,
  type Sweep,
  sweepAtAnalyser,
  sweepAtAntenna,
  totalLossDb,
  withReference,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { type BandFeedline, bandFeedline, feedlineFindings } from "../../packages/core/src/bands/band-feedline.js";
import { answeringOn, partsOf } from "../../packages/core/src/bands/parts.js";
import { DEFAULT_LIMITS } from "../../packages/core/src/facts/limits.js";
import { asDeployment } from "../../packages/core/src/sweep/deployment.js";
import { rampSweep } from "../support/invented-plan.js";
import { bandOf } from "../support/judged.js";
import { numbersIn, wordsOf } from "../support/messages.js";
import { type Pair, present, sweepOfMagnitudes } from "../support/sweeps.js";

/** A line that loses so many dB one way at 7 MHz. */
const lineOf = (lossDb: number, details: object = {}): Feedline => ({
  ...feedlineFrom({ lengthM: 100, loss: [{ frequencyHz: 7e6, dbPer100M: lossDb }] }),
  ...details,
});
/** Half of the power is lost there and back. */
const HALF_DB = 5 * Math.log10(2);
const RAMP = rampSweep([7.0e6, 7.2e6], [0.25, 0.4]);
const SCALAR = sweepOfMagnitudes([...RAMP.frequencyHz], [...RAMP.reflectionMagnitude]);
const power = (...watts: readonly (number | null)[]) =>
  watts.map((bestWatts) => ({ watts: 1, bestWatts })) as unknown as PowerResult[];

describe("the antenna's end", () => {
  test("has ρ greater by the loss there and back", () => {
    // ρ² of 1/16 at the analyser is 1/8 at the antenna.
    const rho = Math.sqrt(1 / 8);
    const end = present(antennaEndAt(curveOf(RAMP), lineOf(HALF_DB), 7e6), "end");
    expect(end.matchedLossDb).toBeCloseTo(HALF_DB, 12);
    expect(end.antennaSwr).toBeCloseTo((1 + rho) / (1 - rho), 9);
    // Of 1 into the line 1 - 1/16 stays; forward power there is 1/√2, of which 1/8 comes back.
    const delivered = (Math.SQRT1_2 * (1 - 1 / 8)) / (1 - 1 / 16);
    expect(end.deliveredFraction).toBeCloseTo(delivered, 9);
    expect(end.totalLossDb).toBeCloseTo(-10 * Math.log10(delivered), 9);
    expect(end.extraLossDb).toBeCloseTo(end.totalLossDb - HALF_DB, 12);
  });

  test("is known without phase against the line's own impedance alone", () => {
    const curve = curveOf(SCALAR);
    const end = antennaEndAt(curve, lineOf(HALF_DB), 7e6);
    expect(end?.antennaSwr).toBeCloseTo(antennaEndAt(curveOf(RAMP), lineOf(HALF_DB), 7e6)?.antennaSwr ?? 0, 9);
    expect(antennaEndAt(curve, lineOf(HALF_DB, { characteristicOhms: 75 }), 7e6)).toBeNull();
    expect(antennaEndAt(curve, lineOf(HALF_DB), 8e6)).toBeNull();
    expect(antennaEndAt(curveOf(RAMP), lineOf(HALF_DB), 8e6)).toBeNull();
  });

  test("with phase is seen against the line's own impedance", () => {
    // Γ of 0.25 at 50 Ω is 83.3 Ω: against 75 Ω (83.3 - 75) / (83.3 + 75) = 1/19.
    const end = present(antennaEndAt(curveOf(RAMP), lineOf(0, { characteristicOhms: 75 }), 7e6), "end");
    expect(end.antennaSwr).toBeCloseTo(20 / 18, 9);
  });

  test("is where a sweep moved there and back comes from", () => {
    const line = lineOf(1, { characteristicOhms: 75, velocityFactor: 0.66 });
    const there = sweepAtAntenna(RAMP, line);
    expect(there.referenceOhms).toBe(75);
    const back = sweepAtAnalyser(there, line, 50);
    expect(back.referenceOhms).toBe(50);
    RAMP.reflectionReal.forEach((real, i) => {
      expect(back.reflectionReal[i]).toBeCloseTo(real, 12);
      expect(back.reflectionImaginary[i]).toBeCloseTo(0, 12);
    });
    const other = sweepAtAnalyser(sweepAtAntenna(withReference(RAMP, 60), line), line, 50);
    expect(other.reflectionReal[0]).toBeCloseTo(0.25, 12);
  });
});

/** What tells of a band. */
const answeringFor = (sweep: Sweep, band: Pair) => {
  const { pieces } = bandOf(band);
  return answeringOn(partsOf(asDeployment(sweep), DEFAULT_LIMITS, present(planById("itu-r1"), "a plan")), pieces);
};

describe("a line on a band", () => {
  const told = (line: Feedline, rows: readonly PowerResult[], sweep: Sweep = RAMP) =>
    present(bandFeedline(answeringFor(sweep, [7.0e6, 7.2e6]), line, rows), "the line");

  test("bears the power at the best SWR, the greatest of all modes, where it stands highest", () => {
    const line = told(lineOf(0), power(50, null, 100, 80));
    expect(line.powerW).toBe(100);
    expect(line.atBest?.frequencyHz).toBe(7.0e6);
    expect(line.atWorst?.frequencyHz).toBe(7.2e6);
    // Without loss: √(P Z (1 + ρ) / (1 - ρ)) and the same over Z.
    expect(line.stress?.volts).toBeCloseTo(Math.sqrt((100 * 50 * 1.4) / 0.6), 3);
    expect(line.stress?.amperes).toBeCloseTo(Math.sqrt((100 * 1.4) / 0.6 / 50), 4);
  });

  test("has no stress without a power, without knowing ρ on it, or where everything comes back", () => {
    expect(told(lineOf(0), power(null))).toMatchObject({ powerW: null, stress: null });
    expect(told(lineOf(0), [])).toMatchObject({ powerW: null, stress: null });
    const unknown = told(lineOf(0, { characteristicOhms: 75 }), power(100), SCALAR);
    expect(unknown).toEqual({ atBest: null, atWorst: null, losses: null, powerW: 100, stress: null });
    expect(told(lineOf(0), power(100), rampSweep([7.0e6, 7.2e6], [1, 1]))).toMatchObject({ stress: null });
  });

  test("bears what some tuner brings within reach, and no more", () => {
    const { stress } = told(lineOf(0), power(100), rampSweep([7.0e6, 7.2e6], [0.5, 1]));
    // A wide-range tuner reaches an SWR of 10: ρ = 9 / 11.
    expect(stress?.volts).toBeCloseTo(Math.sqrt(100 * 50 * 10), 0);
  });

  test("of another impedance bears most where it does, not at the worst SWR of the radio", () => {
    // Γ at 50 Ω: 25 Ω at the low end, SWR 2, and 200 Ω at the high one, SWR 4; of 450 Ω line they are 18 and 2.25.
    const sweep = rampSweep([7.0e6, 7.2e6], [-1 / 3, 0.6]);
    const { stress, atWorst } = told(lineOf(0, { characteristicOhms: 450, lengthM: 60 }), power(100), sweep);
    expect(atWorst?.frequencyHz).toBe(7.2e6);
    expect(stress?.volts).toBeCloseTo(Math.sqrt(100 * 450 * 18), -1);
  });

  test("of another impedance loses most where it does as well", () => {
    const sweep = rampSweep([7.0e6, 7.2e6], [-1 / 3, 0.6]);
    const { losses, atWorst, atBest } = told(lineOf(0.2, { characteristicOhms: 450 }), power(100), sweep);
    // At 25 Ω, the low end and neither the best nor the worst for the radio, the SWR on the line is 18.
    const ofLine = totalLossDb(0.2, magnitudeAtLoad(17 / 19, 0.2));
    expect(present(losses, "losses").greatestDb).toBeCloseTo(ofLine, 6);
    for (const end of [atBest, atWorst]) expect(ofLine).toBeGreaterThan(present(end, "an end").totalLossDb);
  });

  test("is nothing where nothing was swept", () => {
    expect(bandFeedline([], lineOf(0), [])).toBeNull();
    expect(bandFeedline(answeringFor(RAMP, [7.3e6, 7.4e6]), lineOf(0), [])).toBeNull();
  });
});

describe("said of a line", () => {
  const said = (
    line: Feedline,
    sweep: Sweep = RAMP,
    bands: readonly { band: string; feedline: BandFeedline | null }[] = [],
  ) => feedlineFindings([sweep], line, bands).map(({ code, severity }) => `${severity} ${code}`);

  test("its loss is that of its kind, or the least that it can be, or as stated", () => {
    const typical = ["info feedline-loss-typical"];
    expect(said(lineOf(0.5))).toEqual([]);
    expect(said(lineOf(0.5, { lossIs: "typical" }))).toEqual(typical);
    expect(said(lineOf(0.5, { lossIs: "at-least" }))).toEqual(typical);
  });

  test("a loss that is typical and one that is the least are told apart", () => {
    const message = (lossIs: string) => feedlineFindings([RAMP], lineOf(0.5, { lossIs }), [])[0]?.message;
    expect(wordsOf(message("typical"))).not.toBe(wordsOf(message("at-least")));
  });

  test("a loss that is too high is told where ρ shows it most", () => {
    // ρ from 0.5 to 0.9: the loss of 3.2 dB is the line's at 7 MHz; at 28 MHz, as the root of frequency, 6.4 dB.
    const [finding] = feedlineFindings([rampSweep([7.0e6, 28e6], [0.5, 0.9])], lineOf(3.2), []);
    expect(numbersIn(finding?.message)).toEqual([6.4, 28]);
    const [falling] = feedlineFindings([rampSweep([7.0e6, 7.1e6], [0.9, 0.2])], lineOf(3.2), []);
    expect(numbersIn(falling?.message)).toEqual([3.2, 7]);
  });

  test("a scalar sweep against another impedance cannot be followed", () => {
    expect(said(lineOf(0), SCALAR)).toEqual([]);
    expect(said(lineOf(0, { characteristicOhms: 75 }), SCALAR)).toEqual(["caution feedline-needs-phase"]);
    expect(said(lineOf(0, { characteristicOhms: 75 }))).toEqual([]);
  });

  test.each([
    // ρ of 0.5 at the antenna's end: 3.1 dB make it 1.02, which is tolerated.
    [3.08, []],
    [3.11, ["problem feedline-loss-too-high"]],
  ])("a loss of %d dB where ρ is 0.5: %j", (lossDb, expected) => {
    expect(said(lineOf(lossDb), rampSweep([7.0e6, 7.001e6], [0.5, 0.5]))).toEqual(expected);
    const elsewhere = lineOf(lossDb, { characteristicOhms: 75 });
    expect(said(elsewhere, rampSweep([7.0e6, 7.001e6], [0.5, 0.5]))).toEqual([]);
  });

  describe("its end is unsure", () => {
    /** ρ of 0.9 at the antenna's end of a line that loses so much. */
    const end = (matchedLossDb: number) => ({ antennaSwr: 19, matchedLossDb }) as BandFeedline["atBest"];
    const near = { antennaSwr: 1.5, matchedLossDb: 1 } as BandFeedline["atBest"];
    const on = (atBest: BandFeedline["atBest"], atWorst: BandFeedline["atBest"], lossIs = "typical") =>
      said(lineOf(0, { lossIs }), RAMP, [
        { band: "40m", feedline: { atBest, atWorst, losses: null, powerW: null, stress: null } },
      ]).filter((line) => line !== "info feedline-loss-typical");
    const unsure = ["caution antenna-end-unsure"];

    test("where a fifth more loss of a typical line would make it reflect everything", () => {
      // 10 log10(1 / 0.9) = 0.458 dB more, a fifth of 2.29 dB.
      expect(on(near, end(2.2))).toEqual([]);
      expect(on(near, end(2.4))).toEqual(unsure);
      expect(on(end(2.4), near)).toEqual(unsure);
      expect(on(end(2.2), end(2.2))).toEqual([]);
      expect(on(null, null)).toEqual([]);
    });

    test("with a stated loss only where it does reflect everything", () => {
      expect(on(near, end(2.4), "stated")).toEqual([]);
      const all = { antennaSwr: Number.POSITIVE_INFINITY, matchedLossDb: 1 } as BandFeedline["atBest"];
      expect(on(near, all, "stated")).toEqual(unsure);
    });
  });

  describe("it is overloaded", () => {
    const stress = { volts: 200, amperes: 3 };
    const on = (ratings: object, of: BandFeedline["stress"] = stress) =>
      feedlineFindings([RAMP], lineOf(0, ratings), [
        { band: "40m", feedline: { atBest: null, atWorst: null, losses: null, powerW: 100, stress: of } },
      ]).map(({ code, severity, band }) => `${severity} ${code} ${band}`);
    const overload = ["problem feedline-overload 40m"];

    test("beyond a rating of voltage or of current", () => {
      expect(on({ ratedVolts: 200, ratedAmperes: 3 })).toEqual([]);
      expect(on({ ratedVolts: 199, ratedAmperes: 3 })).toEqual(overload);
      expect(on({ ratedVolts: 200, ratedAmperes: 2.9 })).toEqual(overload);
      expect(on({ ratedVolts: 199 })).toEqual(overload);
      expect(on({ ratedAmperes: 2.9 })).toEqual(overload);
      expect(on({ ratedVolts: 199 }, null)).toEqual([]);
      expect(on({})).toEqual([]);
      expect(feedlineFindings([RAMP], lineOf(0, { ratedVolts: 1 }), [{ band: "40m", feedline: null }])).toEqual([]);
    });
  });
});
