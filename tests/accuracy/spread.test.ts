/**
 * Whether an interval is as wide as sweeps of one antenna with fresh noise spread the number it is of, times what is left as a margin: of
 * sweeps that one function explains, and of those that are smoothed.
 */
import { type BandUncertainty, check, curveOf, type Interval, planById, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { seededNormal } from "../support/seeded-noise.js";
import { evenly, type Pair, present, reflectionOf, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const plan = present(planById("itu-common"), "a plan");
/** 80 m of this plan is 3.5 to 3.8 MHz or more: all of the dip lies in it. */
const bandOf = (sweep: Sweep) => present(check(sweep, { plan, bands: ["80m"] }).bands[0], "80 m");

/** A series resonance: 65 Ω and a Q of 25 at 3.62 MHz. Invented. */
const impedanceAt = (hz: number): Pair => [65, 65 * 25 * (hz / 3.62e6 - 3.62e6 / hz)];
const frequencyHz = evenly(3e6, 4.4e6, 5e3);
const explained = frequencyHz.map((hz) => reflectionOf(impedanceAt(hz)));

/** The same with an echo from a long way behind, whose ripple over a wide sweep no function of low order follows. */
const wideHz = evenly(2e6, 16e6, 5e3);
const rippled = wideHz.map((hz): Pair => {
  const [real, imaginary] = reflectionOf(impedanceAt(hz));
  const turn = (2 * Math.PI * hz) / 1.3e6;
  return [0.9 * real + 0.08 * Math.cos(turn), 0.9 * imaginary + 0.08 * Math.sin(turn)];
});

const SWEEPS = 200;
const NOISE = 0.001;
const sweepWith = {
  vector: (axis: readonly number[], reflections: readonly Pair[], normal: () => number) =>
    sweepOfReflections(
      axis,
      reflections.map(([real, imaginary]) => [real + NOISE * normal(), imaginary + NOISE * normal()] as const),
    ),
  scalar: (axis: readonly number[], reflections: readonly Pair[], normal: () => number) =>
    sweepOfMagnitudes(
      axis,
      reflections.map(([real, imaginary]) => Math.hypot(real, imaginary) + NOISE * normal()),
    ),
};

/**
 * Half of a 95 % interval by what is left as a margin, over that many standard deviations. What smoothing may hide comes to that; and that
 * each sweep chooses its windows by its own noise, which no derivative sees, moves the place of the best point most.
 */
const MARGINS = [
  { how: "explained", kind: "vector", axis: frequencyHz, reflections: explained, margin: 1.5, about: [0.85, 1.15] },
  { how: "explained", kind: "scalar", axis: frequencyHz, reflections: explained, margin: 1.1, about: [0.85, 1.15] },
  { how: "smoothed", kind: "vector", axis: wideHz, reflections: rippled, margin: 1.2, about: [0.75, 2] },
  { how: "smoothed", kind: "scalar", axis: wideHz, reflections: rippled, margin: 1, about: [0.75, 2] },
] as const;

const standardDeviation = (values: readonly number[]): number => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
};

type Told = ReturnType<typeof bandOf>;
const NUMBERS: readonly [string, keyof BandUncertainty & string, (band: Told) => number | undefined][] = [
  ["the best ρ", "bestMagnitude", ({ best }) => best?.reflectionMagnitude],
  ["its place", "bestHz", ({ best }) => best?.frequencyHz],
  ["the worst ρ", "worstMagnitude", ({ worst }) => worst?.reflectionMagnitude],
  ["the width within the limit", "withinHz", ({ withinLimit }) => withinLimit.widthHz],
  ["the lower edge", "lowEdgeHz", ({ bandwidth }) => bandwidth?.lowHz],
  ["the upper edge", "highEdgeHz", ({ bandwidth }) => bandwidth?.highHz],
];

describe.each(MARGINS)(
  "of a $kind sweep that is $how, the interval",
  ({ how, kind, axis, reflections, margin, about: [atLeast, atMost] }) => {
    const normal = seededNormal(7);
    const sweeps = Array.from({ length: SWEEPS }, () => sweepWith[kind](axis, reflections, normal));
    const bands = sweeps.map(bandOf);

    test("is of such sweeps", () => {
      const fits = sweeps.slice(0, 20).flatMap((sweep) => curveOf(sweep).fits);
      expect(fits.filter((fit) => (fit === "none") === (how === "explained"))).toEqual([]);
    });

    test.each(NUMBERS)("of %s is as wide as sweeps spread it", (_, name, numberOf) => {
      const values = bands.map((band) => present(numberOf(band), name));
      const halves = bands.map(({ uncertainty }) => {
        const { low, high } = present(uncertainty?.[name] as Interval | null | undefined, name);
        return (high - low) / 2;
      });
      const median = present(halves.toSorted((a, b) => a - b)[SWEEPS / 2], "a median");
      const expected = margin * 1.96 * standardDeviation(values);
      // 200 sweeps tell a standard deviation to 5 %; three times that.
      expect(median / expected).toBeGreaterThan(atLeast);
      expect(median / expected).toBeLessThan(atMost);
    });
  },
);

describe("the place of the best point", () => {
  const dips = [3.58e6, 3.72e6] as const;
  /** ρ from 0.2 to 0.36, with dips that may differ and a gentle slope where there are none. */
  const placeWith = (rhoAt: (hz: number) => number) => {
    const normal = seededNormal(11);
    const rho = frequencyHz.map((hz) => rhoAt(hz) + NOISE * normal());
    return present(bandOf(sweepOfMagnitudes(frequencyHz, rho)).uncertainty, "an interval").bestHz;
  };
  const twoDips = (deeper: number) =>
    placeWith((hz) => 0.28 + 0.08 * Math.cos((2 * Math.PI * (hz - 3.65e6)) / 140e3) - (deeper * (hz - 3.65e6)) / 70e3);

  test("may be either of two dips that are as deep", () => {
    const { low, high } = twoDips(0);
    expect(low).toBeLessThanOrEqual(dips[0]);
    expect(high).toBeGreaterThanOrEqual(dips[1]);
  });

  test("is not a dip that is less deep than noise allows", () => {
    const { low, high } = twoDips(0.01);
    expect(low).toBeGreaterThan(dips[1] - 10e3);
    expect(high).toBeLessThan(dips[1] + 10e3);
  });

  test("at an end of the band may be whatever is level with it", () => {
    const flat = placeWith((hz) => 0.2 + 1e-3 * ((hz - 3.5e6) / 300e3));
    const steep = placeWith((hz) => 0.2 + 0.1 * ((hz - 3.5e6) / 300e3));
    expect(flat.low).toBe(3.5e6);
    expect(flat.high).toBeGreaterThan(3.53e6);
    expect(steep.high).toBeLessThan(3.51e6);
  });
});
