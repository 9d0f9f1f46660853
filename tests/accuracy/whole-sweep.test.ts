/**
 * Noise is averaged over a whole sweep where one resonance explains it, and what one resonance does not explain stays: a
 * narrow trap, a step, samples disturbed together. The antenna is a series resonance of 60 ohm, Q 12, in closed form.
 */
import { curveOf, reflectionMagnitudeAt } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { seededNormal } from "../support/seeded-noise.js";
import { evenly, type Pair, reflectionOf, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const NOISE = 0.001;
const SEEDS = Array.from({ length: 20 }, (_, i) => i + 1);
const FREQUENCIES = evenly(6_500_000, 7_700_000, 3000);
const RESONANCE = 7_100_000;

const resonance = (hz: number) => reflectionOf([60, 12 * 60 * (hz / RESONANCE - RESONANCE / hz)]);
const size = ([real, imaginary]: Pair) => Math.hypot(real, imaginary);

/** Of the error of ρ at the samples, over all seeds: its root mean square and the largest, in standard deviations of the noise. */
function errorsOf(shape: (hz: number) => Pair, kind: "vector" | "scalar") {
  const errors = SEEDS.flatMap((seed) => {
    const normal = seededNormal(seed);
    const noisy = FREQUENCIES.map((hz): Pair => [shape(hz)[0] + NOISE * normal(), shape(hz)[1] + NOISE * normal()]);
    const curve = curveOf(
      kind === "vector" ? sweepOfReflections(FREQUENCIES, noisy) : sweepOfMagnitudes(FREQUENCIES, noisy.map(size)),
    );
    return FREQUENCIES.map((hz) => Math.abs(reflectionMagnitudeAt(curve, hz) - size(shape(hz))) / NOISE);
  });
  const square = errors.reduce((sum, error) => sum + error * error, 0) / errors.length;
  return { typical: Math.sqrt(square), largest: Math.max(...errors) };
}

describe.each(["vector", "scalar"] as const)("a %s sweep of 401 samples", (kind) => {
  test("of one resonance loses nearly all of its noise", () => {
    const { typical, largest } = errorsOf(resonance, kind);
    // A function of order 2 has 5 unknowns in each part: √(5 / 401) = 0.11 of the noise is what least squares leave.
    expect(typical).toBeLessThan(0.15);
    expect(largest).toBeLessThan(1);
  });

  const shapes: Record<string, (hz: number) => Pair> = {
    "a step of 0.01": (hz) => [resonance(hz)[0] + (hz > 7_200_000 ? 0.01 : 0), resonance(hz)[1]],
    "five samples off by 0.01": (hz) => [
      resonance(hz)[0] + (Math.abs(hz - 7_103_000) < 7000 ? 0.01 : 0),
      resonance(hz)[1],
    ],
    "a trap 6 kHz wide": (hz) => {
      const [real, imaginary] = resonance(hz);
      const off = (hz - 7_000_000) / 3000;
      const [a, b] = [1 - 0.1 / (1 + off * off), (0.1 * off) / (1 + off * off)];
      return [real * a - imaginary * b, real * b + imaginary * a];
    },
  };
  test.each(Object.keys(shapes))("keeps %s", (name) => {
    const { typical, largest } = errorsOf(shapes[name] ?? resonance, kind);
    expect(typical).toBeLessThan(0.5);
    // The noise itself reaches 4.5 standard deviations among these; what is smoothed away would be off by ten and more.
    expect(largest).toBeLessThan(6);
  });
});
