/** What a cause is held against, and parts in series. Numbers are invented and exact. */
import { describe, expect, test } from "vitest";
import { isWithinCalibration } from "../../packages/core/src/jobs/diff/calibration.js";
import type { CommonSamples } from "../../packages/core/src/jobs/diff/common-samples.js";
import { fitSeries } from "../../packages/core/src/jobs/diff/series-fit.js";
import { changeOf, smoothChange } from "../../packages/core/src/jobs/diff/smooth-change.js";
import { againstSmooth } from "../../packages/core/src/jobs/diff/spare-numbers.js";
import { evenly, type Pair, present, reflectionOf } from "../support/sweeps.js";

/** Γ before and after at frequencies. */
const samplesOf = (
  frequencies: readonly number[],
  before: (hz: number) => Pair,
  after: (hz: number) => Pair,
): CommonSamples => ({
  frequencyHz: Float64Array.from(frequencies),
  beforeReal: Float64Array.from(frequencies, (hz) => before(hz)[0]),
  beforeImaginary: Float64Array.from(frequencies, (hz) => before(hz)[1]),
  afterReal: Float64Array.from(frequencies, (hz) => after(hz)[0]),
  afterImaginary: Float64Array.from(frequencies, (hz) => after(hz)[1]),
});
const ZERO = (): Pair => [0, 0];

describe("a smooth change", () => {
  const band = evenly(7e6, 7.2e6, 5e3);
  const share = (hz: number) => (hz - 7.1e6) / 0.1e6;

  test("needs two numbers for each power of frequency, and none for what is left anyway", () => {
    const needed = smoothChange(changeOf(samplesOf(band, ZERO, (hz) => [0.1 * share(hz) ** 3, 0])), 1e-6);
    expect(needed(0.2)).toBe(0);
    expect(needed(1e-6)).toBe(8);
    // A straight line leaves of x³ the root of 4/175, 0.15 of it, and a little more at samples that take in the ends.
    expect([needed(0.018), needed(0.013)]).toEqual([4, 8]);
  });

  test("needs its own numbers in each band", () => {
    const two = [...band, ...evenly(14e6, 14.35e6, 5e3)];
    const needed = smoothChange(changeOf(samplesOf(two, ZERO, (hz) => (hz < 10e6 ? [0.1, 0] : [0, 0.1]))), 1e-6);
    expect(needed(1e-6)).toBe(4);
  });
});

describe("an explanation against a smooth change", () => {
  // A smooth change needs 6 numbers for a residual of 0.004 or less, 2 for 0.02, none for 0.1.
  const needed = (residual: number) => (residual <= 0.004 ? 6 : residual <= 0.02 ? 2 : 0);
  const { spareOf, isExact } = againstSmooth(needed, 0.1, 0.004);
  const of = (numbers: number, residual: number) => ({ numbers, residual, nearly: { share: 0.2, spare: 8 } });

  test("is exact where it leaves noise and needs three numbers less", () => {
    expect([spareOf(of(1, 0.001)), spareOf(of(3, 0.004)), spareOf(of(1, 0.02))]).toEqual([5, 3, 1]);
    expect([isExact(of(3, 0.004)), isExact(of(4, 0.004)), isExact(of(1, 0.0041))]).toEqual([true, false, false]);
  });

  test("is near where it leaves its share of the difference and needs as many less as are asked for", () => {
    const { isNear } = againstSmooth(() => 10, 0.1, 0.004);
    expect([isNear(of(2, 0.02)), isNear(of(3, 0.02)), isNear(of(2, 0.021))]).toEqual([true, false, false]);
    expect(isNear({ numbers: 1, residual: 0, nearly: null })).toBe(false);
  });
});

describe("in series", () => {
  const axis = evenly(3e6, 30e6, 300e3);
  /** 60 Ω and a resonance at 10 MHz. */
  const reactance = (hz: number) => 700 * (hz / 10e6 - 10e6 / hz);
  const found = (added: (hz: number) => Pair) => {
    const samples = samplesOf(
      axis,
      (hz) => reflectionOf([60, reactance(hz)]),
      (hz) => reflectionOf([60 + added(hz)[0], reactance(hz) + added(hz)[1]]),
    );
    return present(fitSeries(samples, 50).toSorted((a, b) => a.residual - b.residual)[0], "a fit");
  };

  test("a resistance, a coil and a capacitor are found with their value", () => {
    expect(found(() => [12, 0])).toMatchObject({ part: "resistance", value: expect.closeTo(12, 2) });
    const coil = found((hz) => [0, 2 * Math.PI * hz * 1.5e-6]);
    expect([coil.part, coil.value * 1e6]).toEqual(["coil", expect.closeTo(1.5, 3)]);
    const capacitor = found((hz) => [0, -1 / (2 * Math.PI * hz * 200e-12)]);
    expect([capacitor.part, capacitor.value * 1e12]).toEqual(["capacitor", expect.closeTo(200, 1)]);
    expect(Math.max(coil.residual, capacitor.residual)).toBeLessThan(1e-4);
  });
});

test("another calibration makes as much as its directivity and a hand's breadth of line, at nine samples in ten", () => {
  const axis = evenly(7e6, 7.19e6, 10e3);
  const apart = (distance: number, far = 0) =>
    samplesOf(axis, ZERO, (hz) => [hz < 7e6 + far * 10e3 ? 0.06 : distance, 0]);
  // 30 dB are 0.0316; 0.15 m at 7 MHz turn the reflection by 0.044.
  expect([0.032, 0.034].map((distance) => isWithinCalibration(apart(distance), null))).toEqual([true, false]);
  expect(isWithinCalibration(apart(0.05), { directivityDb: 26 })).toBe(true);
  expect([2, 3].map((far) => isWithinCalibration(apart(0.01, far), null))).toEqual([true, false]);
  // Two that differ by far more are no calibration.
  const dip = samplesOf(axis, ZERO, (hz) => [hz < 7.02e6 ? 0.4 : 0.01, 0]);
  expect(isWithinCalibration(dip, null)).toBe(false);
});
