/** What the step of a sweep, and samples that stand alone, leave open. Sweeps are invented. */
import type { Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import {
  coarsenessFindings,
  samplingFindings,
  spikeFindings,
  spotFindings,
} from "../../packages/core/src/bands/sampling.js";
import { inventedPlan, rampSweep } from "../support/invented-plan.js";
import { analysed, answeringFor, bandOf, limitEdges, partFor, resonanceSweep, summaryFor } from "../support/judged.js";
import { numbersIn } from "../support/messages.js";
import { evenly, type Pair, present, reflectionOf, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const BAND = bandOf([7.0e6, 7.2e6]);
const codes = (findings: readonly { readonly code: string }[]) => findings.map(({ code }) => code);
const sampling = (sweep: Sweep) => samplingFindings(answeringFor(sweep, BAND), BAND, summaryFor(sweep, BAND));
const ofSampling = (sweep: Sweep) => codes(sampling(sweep));
const coarseness = (sweep: Sweep) => coarsenessFindings(partFor(sweep), BAND, summaryFor(sweep, BAND));
const ofCoarseness = (sweep: Sweep) => codes(coarseness(sweep));

describe("samples that stand alone", () => {
  const axis = evenly(6e6, 9e6, 10_000);
  const smooth = axis.map((frequency) => reflectionOf([60, 60 * 5 * (frequency / 7.5e6 - 7.5e6 / frequency)]));
  const spikesOf = (...changes: readonly (readonly [number, Pair])[]) => {
    const changed = new Map(changes);
    return spikeFindings(
      analysed(
        sweepOfReflections(
          axis,
          smooth.map((pair, i) => changed.get(i) ?? pair),
        ),
      ).curve,
    );
  };
  const UP: Pair = [0, 0.99];
  const DOWN: Pair = [0, 0];

  test("are told, those that rise apart from those that dip", () => {
    expect(spikesOf()).toEqual([]);
    expect(spikesOf([140, UP]).map(({ code, severity }) => [code, severity])).toEqual([["spike", "caution"]]);
    expect(codes(spikesOf([40, DOWN]))).toEqual(["spike"]);
    expect(codes(spikesOf([140, UP], [170, UP]))).toEqual(["spike"]);
    expect(codes(spikesOf([140, UP], [40, DOWN]))).toEqual(["spike", "spike"]);
  });

  test("are named, those that rise first; of many the first three, and how many more", () => {
    const [rise, dip] = spikesOf([140, UP], [40, DOWN]);
    expect(numbersIn(rise?.message)).toEqual([7.4]);
    expect(numbersIn(dip?.message)).toEqual([6.4]);
    expect(numbersIn(spikesOf([20, UP], [140, UP], [170, UP])[0]?.message)).toEqual([6.2, 7.4, 7.7]);
    const five = spikesOf([20, UP], [80, UP], [110, UP], [140, UP], [170, UP]);
    expect(numbersIn(five[0]?.message)).toEqual([6.2, 6.8, 7.1, 2]);
  });
});

describe("readings by hand", () => {
  const plan = inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6 }]);
  const at = (continuity: Sweep["continuity"], ...frequencyHz: readonly number[]) =>
    codes(
      spotFindings(
        {
          ...sweepOfMagnitudes(
            frequencyHz,
            frequencyHz.map(() => 0.2),
          ),
          continuity,
        },
        plan,
      ),
    );

  test("outside all bands are told, on their edges not", () => {
    expect(at("spots", 7.0e6, 7.1e6, 7.2e6)).toEqual([]);
    expect(at("spots", 6.999e6, 7.1e6)).toEqual(["spot-outside-bands"]);
    expect(at("spots", 7.1e6, 7.201e6, 71e6)).toEqual(["spot-outside-bands"]);
  });

  test("are not what a sweep is made of", () => {
    expect(at("curve", 6.9e6, 7.3e6)).toEqual([]);
  });

  test("lie in any band of several", () => {
    const [forty] = plan.bands;
    const [thirty] = inventedPlan([{ lowHz: 10.1e6, highHz: 10.15e6 }]).bands;
    const both = { ...plan, bands: [forty, thirty].map((band) => present(band, "a band")) };
    const spots = (...frequencyHz: readonly number[]) =>
      spotFindings(
        { ...sweepOfMagnitudes(frequencyHz, Array(frequencyHz.length).fill(0.2)), continuity: "spots" },
        both,
      );
    expect(spots(7.1e6, 10.12e6)).toEqual([]);
    expect(numbersIn(spots(7.1e6, 8.05e6, 10.12e6)[0]?.message)).toEqual([8.05]);
  });
});

describe("a step", () => {
  test.each([
    // From sample to sample ρ goes by 0.31 or 0.29; at 7 MHz 2 % of the frequency are 140 kHz.
    ["over which ρ goes too far", [6.9e6, 7.2e6], [0.1, 1.03], 4, true],
    ["over which it goes less far", [6.9e6, 7.2e6], [0.1, 0.97], 4, false],
    ["longer than 2 % of the frequency", [6.5e6, 7.93e6], [0.1, 0.1], 11, true],
    ["shorter than that", [6.5e6, 7.87e6], [0.1, 0.1], 11, false],
  ] as const)("%s", (_, range, rho, points, isCoarse) => {
    const sweep = rampSweep(range, rho, points);
    expect(ofCoarseness(sweep).includes("step-too-coarse")).toBe(isCoarse);
    const scalar = sweepOfMagnitudes([...sweep.frequencyHz], [...sweep.reflectionMagnitude]);
    expect(ofCoarseness(scalar).includes("step-too-coarse")).toBe(isCoarse);
  });

  test.each([
    // By 0.31 in 100 kHz: 0.3 in 97 kHz, of which the half is told as 50 kHz; by 0.5: 30 kHz.
    ["ρ goes too far", [6.9e6, 7.2e6], [0.1, 1.03], 4, 50],
    ["ρ goes much too far", [6.9e6, 7.2e6], [0, 1.5], 4, 30],
    // Half of 2 % of 7 MHz.
    ["it is long", [6.5e6, 7.93e6], [0.1, 0.1], 11, 70],
    // By 0.4 in 200 kHz: 0.3 in 150 kHz, and 140 kHz is less.
    ["it is long and ρ goes far", [6.6e6, 7.4e6], [0.1, 1.7], 5, 70],
  ] as const)("over which %s is held against what would do", (_, range, rho, points, kilohertz) => {
    const [finding] = coarseness(rampSweep(range, rho, points));
    expect(finding).toMatchObject({ code: "step-too-coarse", severity: "caution", band: "40m" });
    expect(numbersIn(finding?.message).at(-1)).toBe(kilohertz);
  });

  test("counts where Γ turns though ρ stays", () => {
    const frequencies = evenly(6.8e6, 7.4e6, 100_000);
    // To and fro by 0.4 in the imaginary part: no line does that.
    const turning = frequencies.map((_, i): Pair => [0.3, i % 2 === 0 ? 0.2 : -0.2]);
    expect(ofCoarseness(sweepOfReflections(frequencies, turning))).toContain("step-too-coarse");
  });

  test("outside of the band does not count, the one that reaches into it does", () => {
    const fine = evenly(6.99e6, 7.21e6, 10_000);
    const beside = (...others: readonly number[]) =>
      ofCoarseness(
        sweepOfMagnitudes(
          [...others.filter((hz) => hz < 7e6), ...fine, ...others.filter((hz) => hz > 7e6)],
          [...others, ...fine].map(() => 0.2),
        ),
      );
    expect(beside(6.6e6, 6.79e6, 7.41e6, 7.6e6)).toEqual([]);
    const into = sweepOfMagnitudes([6.6e6, 6.8e6, ...evenly(7.01e6, 7.4e6, 10_000)], Array(42).fill(0.2));
    expect(ofCoarseness(into)).toEqual(["step-too-coarse"]);
    const outOf = sweepOfMagnitudes([...evenly(6.8e6, 7.19e6, 10_000), 7.4e6, 7.6e6], Array(42).fill(0.2));
    expect(ofCoarseness(outOf)).toEqual(["step-too-coarse"]);
  });

  test("is not asked about on a band that was not swept", () => {
    const elsewhere = rampSweep([14e6, 15.4e6], [0.1, 0.9], 3);
    expect(ofCoarseness(elsewhere)).toEqual([]);
    expect(ofSampling(elsewhere)).toEqual([]);
  });
});

describe("a dip", () => {
  /** ρ of 0.5 but for so many samples of 0.2 around 7.1 MHz; the limit is met between. */
  const dip = (samples: number) => {
    const axis = evenly(6.8e6, 7.4e6, 20_000);
    return sweepOfMagnitudes(
      axis,
      axis.map((_, i) => (i >= 14 && i < 14 + samples ? 0.2 : 0.45)),
    );
  };

  test.each([
    [2, true],
    [3, false],
    [4, false],
  ])("of %d samples within the limit rests on too few: %s", (samples, isThin) => {
    expect(ofCoarseness(dip(samples)).includes("dip-on-few-samples")).toBe(isThin);
  });

  test("that rests on too few is told with a fifth of its width as the step", () => {
    // ρ crosses the limit halfway and more: from 0.45 to 0.2 at 0.467 of 20 kHz, two samples and 37 kHz in all.
    const [finding] = coarseness(dip(2)).filter(({ code }) => code === "dip-on-few-samples");
    expect(finding).toMatchObject({ severity: "caution", band: "40m" });
    const numbers = numbersIn(finding?.message);
    expect(numbers).toContain(2);
    expect(numbers.at(-1)).toBeGreaterThanOrEqual(6);
    expect(numbers.at(-1)).toBeLessThanOrEqual(8);
  });

  test("that is none within the limit is not told of", () => {
    const axis = evenly(6.8e6, 7.4e6, 20_000);
    expect(coarseness(sweepOfMagnitudes(axis, Array(axis.length).fill(0.45)))).toEqual([]);
  });

  /** ρ of one resonance of so many kHz between its points of half the power, off 7.1 MHz by a third of a step; 0.95 far from it. */
  const resonant = (halfPowerKhz: number, least = 0.6) => {
    const axis = evenly(6.8e6, 7.4e6, 20_000);
    const magnitude = (hz: number) => {
      const share = 1 / (1 + ((hz - 7.1e6 - 6_000) / (500 * halfPowerKhz)) ** 2);
      return Math.sqrt(0.95 ** 2 - share * (0.95 ** 2 - least ** 2));
    };
    return sweepOfMagnitudes(axis, axis.map(magnitude));
  };

  test.each([
    [25, true],
    [40, true],
    [120, false],
  ])("beyond the limit, %d kHz wide in steps of 20 kHz, rests on too few: %s", (halfPowerKhz, isThin) => {
    expect(ofCoarseness(resonant(halfPowerKhz)).includes("dip-on-few-samples")).toBe(isThin);
  });

  test("that is a ripple is not told of", () => {
    expect(ofCoarseness(resonant(40, 0.9))).not.toContain("dip-on-few-samples");
  });

  test("of several samples at the beginning of the sweep counts them all", () => {
    const axis = evenly(7.0e6, 7.4e6, 20_000);
    const three = sweepOfMagnitudes(
      axis,
      axis.map((_, i) => (i < 3 ? 0.2 : 0.45)),
    );
    expect(ofCoarseness(three)).not.toContain("dip-on-few-samples");
  });
});

describe("a bandwidth", () => {
  test("of one resonance is that of its Q", () => {
    expect(ofSampling(resonanceSweep({ resonanceHz: 7.1e6, ohms: 60, q: 15 }))).toEqual([]);
  });

  /** Through four half waves of line at 7.1 MHz: the impedance there is the same, its slope is another. */
  function behindLine(ohms: number, q: number, axis: readonly number[] = evenly(6.0e6, 8.2e6, 10_000)) {
    const reflections = axis.map((frequency): Pair => {
      const [real, imaginary] = reflectionOf([ohms, ohms * q * (frequency / 7.1e6 - 7.1e6 / frequency)]);
      const angle = (-2 * Math.PI * 4 * frequency) / 7.1e6;
      return [
        real * Math.cos(angle) - imaginary * Math.sin(angle),
        real * Math.sin(angle) + imaginary * Math.cos(angle),
      ];
    });
    const sweep = sweepOfReflections(axis, reflections);
    return { summary: summaryFor(sweep, BAND), findings: sampling(sweep) };
  }

  test("of an antenna behind a line is not", () => {
    const { findings, summary } = behindLine(60, 8);
    expect(findings.map(({ code, severity, band }) => [code, severity, band])).toEqual([
      ["bandwidth-not-from-q", "info", "40m"],
    ]);
    // ρ is that of Q 8 at 60 Ω; one resonance of the Q that is seen would be narrower by their ratio.
    const [lowHz, highHz] = limitEdges({ resonanceHz: 7.1e6, ohms: 60, q: 8 }, 2);
    const widthKHz = (highHz - lowHz) / 1000;
    const numbers = numbersIn(findings[0]?.message);
    expect(numbers).toContain(Math.round(widthKHz));
    expect(numbers).toContain(Math.round((widthKHz * 8) / present(summary.impedanceQ, "Q")));
  });

  test("that is open, or never met, is held against no Q", () => {
    for (const [first, last] of [
      [7.0e6, 8.2e6],
      [6.0e6, 7.2e6],
    ] as const) {
      const { summary, findings } = behindLine(60, 8, evenly(first, last, 10_000));
      expect(summary.impedanceQ).not.toBeNull();
      expect(codes(findings)).not.toContain("bandwidth-not-from-q");
    }
    expect(codes(behindLine(150, 8).findings)).toEqual([]);
  });

  test("of a sweep without phase is held against no Q", () => {
    const sweep = resonanceSweep({ resonanceHz: 7.1e6, ohms: 60, q: 15 });
    expect(ofSampling(sweepOfMagnitudes([...sweep.frequencyHz], [...sweep.reflectionMagnitude]))).toEqual([]);
  });
});
