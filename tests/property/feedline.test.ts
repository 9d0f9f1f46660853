/** Moving whole sweeps along a feedline, and what a check says of one; no source needed. Sweeps and lines are invented. */
import {
  check,
  type Equipment,
  type Feedline,
  feedlineFrom,
  matchedLossDb,
  modeOf,
  type Sweep,
  sampleImpedance,
  sectionAt,
  sweepAtAnalyser,
  sweepAtAntenna,
  throughLine,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { shapelessSweep } from "../support/arbitrary-antennas.js";
import { inventedPlan, rampSweep } from "../support/invented-plan.js";
import { fc } from "../support/property.js";
import { evenly, present, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const line: fc.Arbitrary<Feedline> = fc
  .record({
    lengthM: fc.double({ min: 0.1, max: 100, noNaN: true }),
    characteristicOhms: fc.constantFrom(50, 75, 300, 450),
    velocityFactor: fc.double({ min: 0.5, max: 1, noNaN: true }),
    dbPer100M: fc.double({ min: 0.01, max: 4, noNaN: true }),
  })
  .map(({ dbPer100M, ...details }) => feedlineFrom({ ...details, loss: [{ frequencyHz: 10e6, dbPer100M }] }));
const referenceOhms = fc.constantFrom(50, 75, 200);

describe("a whole sweep along a line", () => {
  test("there and back is the same, whatever the impedances of line and sweep", () => {
    fc.assert(
      fc.property(shapelessSweep, line, referenceOhms, ({ frequencyHz, reflections }, feedline, ohms) => {
        // Away from the open end, where a change of reference leaves no digits.
        const sweep = sweepOfReflections(
          frequencyHz,
          reflections.map(([real, imaginary]) => [0.9 * real, 0.9 * imaginary]),
          ohms,
        );
        const there = sweepAtAnalyser(sweep, feedline, 50);
        const back = sweepAtAnalyser(sweepAtAntenna(there, feedline), { ...feedline, lengthM: 0 }, ohms);
        expect(back.referenceOhms).toBe(ohms);
        for (let i = 0; i < frequencyHz.length; i++) {
          const distance = Math.hypot(
            (back.reflectionReal[i] ?? Number.NaN) - (sweep.reflectionReal[i] ?? Number.NaN),
            (back.reflectionImaginary[i] ?? Number.NaN) - (sweep.reflectionImaginary[i] ?? Number.NaN),
          );
          expect(distance).toBeLessThanOrEqual(1e-12);
        }
      }),
    );
  });

  test("shows at the analyser the impedance that voltage and current give", () => {
    fc.assert(
      fc.property(shapelessSweep, line, ({ frequencyHz, reflections }, feedline) => {
        const sweep = sweepOfReflections(
          frequencyHz,
          reflections.map(([real, imaginary]) => [0.9 * real, 0.9 * imaginary]),
          50,
        );
        const seen = sweepAtAnalyser(sweep, feedline, 50);
        const characteristic = { real: feedline.characteristicOhms, imaginary: 0 };
        frequencyHz.forEach((frequency, i) => {
          const load = sampleImpedance(sweep, i);
          const { inputImpedance } = throughLine(load, characteristic, sectionAt(feedline, frequency));
          const { real, imaginary } = sampleImpedance(seen, i);
          const size = Math.hypot(inputImpedance.real, inputImpedance.imaginary);
          expect(Math.hypot(real - inputImpedance.real, imaginary - inputImpedance.imaginary)).toBeLessThanOrEqual(
            1e-8 * size,
          );
        });
      }),
    );
  });
});

describe("what a check says of the feedline", () => {
  const PLAN = inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6 }]);
  const coax = feedlineFrom({ kind: "rg-58", lengthM: 10 });
  const checked = (sweep: Sweep, feedline: Feedline, equipment: Equipment = {}) =>
    check(sweep, { plan: PLAN, feedline, equipment, modes: [modeOf("ssb")] });
  const findings = (...args: Parameters<typeof checked>) =>
    checked(...args).findings.filter(({ code }) => code.startsWith("feedline-"));
  const codes = (...args: Parameters<typeof checked>) => findings(...args).map(({ code }) => code);
  const flat = (rho: number) => rampSweep([6.9e6, 7.3e6], [rho, rho]);

  test("loss of a kind is typical, and that is said; loss that is stated needs no word", () => {
    expect(codes(flat(0.3), coax)).toEqual(["feedline-loss-typical"]);
    const stated = feedlineFrom({ kind: "rg-58", lengthM: 10, loss: [{ frequencyHz: 7e6, dbPer100M: 3 }] });
    expect(codes(flat(0.3), stated)).toEqual([]);
    const balanced = feedlineFrom({ kind: "window-400", lengthM: 10 });
    expect(findings(rampSweep([6.9e6, 7.3e6], [0.3, 0.3]), balanced)[0]?.message).toContain("the least that it can be");
  });

  test("loss that the sweep contradicts: ρ at the antenna would pass 1.02", () => {
    // ρ at the antenna is ρ at the analyser · 10^(loss / 10).
    const gain = 10 ** (matchedLossDb(coax, 7.3e6) / 10);
    expect(codes(flat(1.03 / gain), coax)).toContain("feedline-loss-too-high");
    expect(codes(flat(1.01 / gain), coax)).not.toContain("feedline-loss-too-high");
    const [end] = checked(flat(1.03 / gain), coax).bands;
    expect(present(end?.feedline?.atBest, "antenna's end").antennaSwr).toBe(Number.POSITIVE_INFINITY);
  });

  test("loss that decides what is told of the antenna: a fifth more would leave one that reflects everything", () => {
    const unsure = (rho: number, feedline: Feedline) =>
      checked(flat(rho), feedline).findings.filter(({ code }) => code === "antenna-end-unsure").length;
    // ρ at the antenna is ρ at the analyser · 10^(loss / 10), the loss 1.2 times what is stated.
    const lossDb = matchedLossDb(coax, 7e6);
    expect(unsure(1.001 / 10 ** ((1.2 * lossDb) / 10), coax)).toBe(1);
    expect(unsure(0.98 / 10 ** ((1.2 * lossDb) / 10), coax)).toBe(0);
    const stated = feedlineFrom({ kind: "rg-58", lengthM: 10, loss: [{ frequencyHz: 7e6, dbPer100M: 3 }] });
    const statedDb = matchedLossDb(stated, 7e6);
    expect(unsure(0.99 / 10 ** (statedDb / 10), stated)).toBe(0);
    expect(unsure(1.001 / 10 ** (statedDb / 10), stated)).toBe(1);
  });

  test("a sweep without phase on a line of another impedance", () => {
    const frequencies = evenly(6.9e6, 7.3e6, 10_000);
    const scalar = sweepOfMagnitudes(
      frequencies,
      frequencies.map(() => 0.3),
    );
    const other = feedlineFrom({ kind: "rg-6", lengthM: 10 });
    expect(codes(scalar, other)).toContain("feedline-needs-phase");
    expect(checked(scalar, other).bands[0]?.feedline).toMatchObject({ atBest: null, atWorst: null, stress: null });
    expect(codes(scalar, coax)).not.toContain("feedline-needs-phase");
    expect(codes(flat(0.3), other)).not.toContain("feedline-needs-phase");
  });

  describe("voltage and current beyond the rating", () => {
    // 100 W at ρ = 1/3 on 50 ohm without loss: forward 75 V, at most 100 V and 2 A.
    const rated = (ratedVolts: number, ratedAmperes: number) =>
      feedlineFrom({ lengthM: 10, loss: [{ frequencyHz: 7e6, dbPer100M: 1e-9 }], ratedVolts, ratedAmperes });
    const power = (powerW: number) => ({ radio: { powerW, tuner: "built-in" as const } });

    test.each([
      [99, 2.1, "99 V are allowed"],
      [101, 1.9, "1.9 A are allowed"],
      [99, 1.9, " and "],
    ])("%d V and %d A", (volts, amperes, text) => {
      const [finding] = findings(flat(1 / 3), rated(volts, amperes), power(100));
      expect(finding).toMatchObject({ code: "feedline-overload", band: "40m" });
      expect(finding?.message).toContain(text);
    });

    test("is not said within the rating, of less power, and where no power is known", () => {
      expect(codes(flat(1 / 3), rated(101, 2.1), power(100))).toEqual([]);
      expect(codes(flat(1 / 3), rated(99, 1.9), power(90))).toEqual([]);
      expect(codes(flat(1 / 3), rated(99, 1.9))).toEqual([]);
    });

    test("the numbers are those of the closed form", () => {
      const stress = present(checked(flat(1 / 3), rated(1, 1), power(100)).bands[0]?.feedline?.stress, "stress");
      expect(stress.volts).toBeCloseTo(100, 6);
      expect(stress.amperes).toBeCloseTo(2, 6);
    });
  });
});
