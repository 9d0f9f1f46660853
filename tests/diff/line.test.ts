/** A change of the line between two sweeps: made from closed form, and found again. Loads and lines are invented. */
import { describe, expect, test } from "vitest";
import type { CommonSamples } from "../../packages/core/src/jobs/diff/common-samples.js";
import { candidateDelays } from "../../packages/core/src/jobs/diff/delay-search.js";
import {
  electricalLengthM,
  type LineChange,
  LOSS_LAWS,
  lossAt10MHzDb,
  throughChange,
} from "../../packages/core/src/jobs/diff/line-change.js";
import { fitLine, fitLineOf, withBestLaw } from "../../packages/core/src/jobs/diff/line-fit.js";
import { fitReference } from "../../packages/core/src/jobs/diff/reference-fit.js";
import { evenly, type Pair, present, reflectionOf } from "../support/sweeps.js";

const AXIS = evenly(4e6, 16e6, 100_000);
const load = (frequency: number): Pair => reflectionOf([60, 300 * (frequency / 7.1e6 - 7.1e6 / frequency)]);
const line = (change: Partial<LineChange> = {}): LineChange => ({
  delayS: 0,
  loss: [],
  characteristicOhms: null,
  ...change,
});
/** The load before, and through a change of the line after. */
function samplesThrough(change: LineChange, axis: readonly number[] = AXIS): CommonSamples {
  const before = axis.map(load);
  const after = before.map(([real, imaginary], i) => throughChange({ real, imaginary }, axis[i] ?? 0, 50, change));
  return {
    frequencyHz: Float64Array.from(axis),
    beforeReal: Float64Array.from(before, ([real]) => real),
    beforeImaginary: Float64Array.from(before, ([, imaginary]) => imaginary),
    afterReal: Float64Array.from(after, ({ real }) => real),
    afterImaginary: Float64Array.from(after, ({ imaginary }) => imaginary),
  };
}

describe("a change of the line", () => {
  test("turns Γ by its delay and lessens it by its loss there and back", () => {
    // A quarter of a turn back at 10 MHz; 3.01 dB one way halve Γ.
    const change = line({ delayS: 25e-9, loss: [{ law: "even", at10MHzDb: 10 * Math.log10(2) }] });
    const { real, imaginary } = throughChange({ real: 0.6, imaginary: 0.2 }, 10e6, 50, change);
    expect(real).toBeCloseTo(0.1, 12);
    expect(imaginary).toBeCloseTo(-0.3, 12);
  });

  test("of another impedance turns Γ as that line does: a quarter wave of 75 Ω makes 75²/Z of Z", () => {
    const [from] = reflectionOf([50, 0]);
    const quarter = line({ delayS: 50e-9, characteristicOhms: 75 });
    const { real, imaginary } = throughChange({ real: from, imaginary: 0 }, 10e6, 50, quarter);
    expect(real).toBeCloseTo(reflectionOf([112.5, 0])[0], 12);
    expect(imaginary).toBeCloseTo(0, 12);
  });

  test("undone gives what was before", () => {
    const change = line({ delayS: 33e-9, loss: [{ law: "root", at10MHzDb: 0.7 }], characteristicOhms: 75 });
    const there = throughChange({ real: 0.3, imaginary: -0.4 }, 7e6, 50, change);
    const back = throughChange(there, 7e6, 50, change, -1);
    expect(back.real).toBeCloseTo(0.3, 12);
    expect(back.imaginary).toBeCloseTo(-0.4, 12);
    expect(there.real).not.toBeCloseTo(0.3, 2);
  });

  test("loses by its laws, added up", () => {
    expect(LOSS_LAWS.root(40e6)).toBe(2);
    expect(LOSS_LAWS.even(40e6)).toBe(1);
    expect(LOSS_LAWS.proportional(40e6)).toBe(4);
    const both = line({
      loss: [
        { law: "root", at10MHzDb: 1 },
        { law: "proportional", at10MHzDb: 0.25 },
      ],
    });
    expect(lossAt10MHzDb(both)).toBe(1.25);
    // 2 dB and 1 dB at 40 MHz: 3 dB one way, 6 dB of Γ.
    expect(throughChange({ real: 1, imaginary: 0 }, 40e6, 50, both).real).toBeCloseTo(10 ** -0.3, 12);
  });

  test("is as long one way as half of its delay", () => {
    expect(electricalLengthM(100e-9)).toBeCloseTo(14.99, 2);
    expect(electricalLengthM(-100e-9)).toBeCloseTo(-14.99, 2);
  });
});

describe("found again is", () => {
  test.each([
    [0, 0],
    [60e-9, 0],
    [-45e-9, 0.5],
    [300e-9, 1.5],
    [2e-9, -0.3],
  ])("a delay of %d s with a loss of %d dB", (delayS, at10MHzDb) => {
    const fit = fitLine(samplesThrough(line({ delayS, loss: [{ law: "root", at10MHzDb }] })));
    expect(fit.delayS).toBeCloseTo(delayS, 14);
    expect(lossAt10MHzDb(fit)).toBeCloseTo(at10MHzDb, 6);
    expect(fit.residual).toBeLessThan(1e-6);
    expect(fit.characteristicOhms).toBeNull();
  });

  test.each([
    ["even", ["even"]],
    ["proportional", ["proportional"]],
  ] as const)("loss that grows otherwise: %s", (law, laws) => {
    const samples = samplesThrough(line({ delayS: 30e-9, loss: [{ law, at10MHzDb: 2 }] }));
    const root = fitLine(samples);
    const best = withBestLaw(samples, root, 1e-6);
    expect(best.loss.map((part) => part.law)).toEqual(laws);
    expect(lossAt10MHzDb(best)).toBeCloseTo(2, 6);
    expect(best.residual).toBeLessThan(root.residual / 100);
    expect(withBestLaw(samples, root, root.residual)).toBe(root);
  });

  test("loss that grows in two ways, but not where one of them would be a gain", () => {
    const mixed = (root: number, even: number) => {
      const samples = samplesThrough(
        line({
          loss: [
            { law: "root", at10MHzDb: root },
            { law: "even", at10MHzDb: even },
          ],
        }),
      );
      return withBestLaw(samples, fitLine(samples), 1e-6);
    };
    expect(mixed(1.5, 1.5).loss.map(({ law, at10MHzDb }) => [law, Number(at10MHzDb.toFixed(4))])).toEqual([
      ["root", 1.5],
      ["even", 1.5],
    ]);
    expect(mixed(-1.5, -1.5).loss).toHaveLength(2);
    for (const { loss } of [mixed(2, -1), mixed(-2, 1)]) {
      const signs = new Set(loss.map(({ at10MHzDb }) => Math.sign(at10MHzDb)));
      expect(signs.size).toBe(1);
    }
  });

  test("line of another impedance", () => {
    const samples = samplesThrough(line({ delayS: 70e-9, characteristicOhms: 75 }));
    const fit = fitLineOf(75, samples, 50);
    expect(fit.delayS).toBeCloseTo(70e-9, 13);
    expect(fit.characteristicOhms).toBe(75);
    expect(fit.residual).toBeLessThan(1e-6);
    expect(fitLine(samples).residual).toBeGreaterThan(0.01);
  });

  test("another reference impedance", () => {
    const after = AXIS.map((frequency) => reflectionOf([60, 300 * (frequency / 7.1e6 - 7.1e6 / frequency)], 75));
    const samples = {
      ...samplesThrough(line()),
      afterReal: Float64Array.from(after, ([real]) => real),
      afterImaginary: Float64Array.from(after, ([, imaginary]) => imaginary),
    };
    const fit = fitReference(samples, 50);
    expect(fit.ohms).toBeCloseTo(75, 1);
    expect(fit.residual).toBeLessThan(1e-3);
    // Root mean square of |Γ after - Γ before|.
    const same = fitReference(samplesThrough(line()), 50);
    expect(same.ohms).toBeCloseTo(50, 1);
    expect(fitReference({ ...samples, afterReal: samples.afterReal.map(() => 5) }, 50).residual).toBeGreaterThan(4);
  });
});

describe("delays to begin with", () => {
  test("have the right one first, to a step of the search", () => {
    const [first] = candidateDelays(samplesThrough(line({ delayS: 120e-9 })));
    expect(Math.abs(present(first, "a delay") - 120e-9)).toBeLessThan(1 / (24 * 16e6));
    const [shorter] = candidateDelays(samplesThrough(line({ delayS: -120e-9 })));
    expect(Math.abs(present(shorter, "a delay") + 120e-9)).toBeLessThan(1 / (24 * 16e6));
  });

  test("of a narrow sweep are several, a turn of its frequency apart", () => {
    const delays = candidateDelays(samplesThrough(line({ delayS: 100e-9 }), evenly(7.0e6, 7.2e6, 5000)));
    expect(delays.length).toBeGreaterThan(3);
    expect(delays.length).toBeLessThanOrEqual(10);
    const turn = 1 / 7.1e6;
    for (const delay of delays) {
      const turns = (delay - 100e-9) / turn;
      expect(Math.abs(turns - Math.round(turns))).toBeLessThan(0.1);
    }
  });

  test("are no longer than the step of the sweep tells, nor than 1 µs", () => {
    // In steps of 2 MHz a turn from sample to sample is 500 ns, half of that the most.
    for (const delay of candidateDelays(samplesThrough(line({ delayS: 100e-9 }), evenly(4e6, 30e6, 2e6))))
      expect(Math.abs(delay)).toBeLessThan(256e-9);
    for (const delay of candidateDelays(samplesThrough(line({ delayS: 100e-9 }), evenly(7.0e6, 7.2e6, 5000))))
      expect(Math.abs(delay)).toBeLessThan(1010e-9);
  });

  test("are none of a single frequency", () => {
    expect(candidateDelays(samplesThrough(line(), [7e6]))).toEqual([]);
  });
});
