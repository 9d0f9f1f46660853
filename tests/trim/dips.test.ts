/** What counts as a dip that a wire may be cut for, and what does not. Sweeps invented. */
import { planById, type Sweep, trim } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { seededNormal } from "../support/seeded-noise.js";
import { evenly, type Pair, present, reflectionOf, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const plan = present(planById("itu-r1"), "itu-r1");
const AXIS = evenly(5e6, 9e6, 10_000);

const dipIn = (sweep: Sweep) => trim(sweep, { plan, band: "40m" });
const codesOf = ({ findings }: ReturnType<typeof dipIn>) => findings.map(({ code }) => code);

/** A resonance of so many ohms, with noise. */
function resonant(resonanceHz: number, ohms: number, q: number, noise: number, seed: number): Sweep {
  const normal = seededNormal(seed);
  const reflections = AXIS.map((frequency): Pair => {
    const [real, imaginary] = reflectionOf([ohms, ohms * q * (frequency / resonanceHz - resonanceHz / frequency)]);
    return [real + noise * normal(), imaginary + noise * normal()];
  });
  return sweepOfReflections(AXIS, reflections);
}

describe("no dip, whatever the noise", () => {
  const seeds = Array.from({ length: 20 }, (_, i) => i + 1);

  test.each([0.0005, 0.002, 0.005])("on the slope of a curve, noise %d", (noise) => {
    for (const seed of seeds) {
      const result = dipIn(resonant(12e6, 60, 3, noise, seed));
      expect(result.dip, `seed ${seed}`).toBeNull();
      expect(codesOf(result)).toContain("no-dip");
    }
  });

  test.each([0.0005, 0.002, 0.005])("in a load that is matched everywhere, noise %d", (noise) => {
    for (const seed of seeds) {
      const normal = seededNormal(seed);
      const load = sweepOfReflections(
        AXIS,
        AXIS.map((): Pair => [0.005 + noise * normal(), noise * normal()]),
      );
      expect(dipIn(load).dip, `seed ${seed}`).toBeNull();
      const sizes = AXIS.map(() => Math.hypot(0.005 + noise * normal(), noise * normal()));
      expect(dipIn(sweepOfMagnitudes(AXIS, sizes)).dip, `seed ${seed}, no phase`).toBeNull();
    }
  });
});

test.each([1, 2, 3, 4, 5])(
  "a dip as shallow as that of a heavily loaded wire is one, in noise of 0.002, seed %d",
  (seed) => {
    const { dip } = dipIn(resonant(7.3e6, 80, 1.2, 0.002, seed));
    expect(present(dip, "dip").frequencyHz / 7.3e6).toBeCloseTo(1, 1);
  },
);

describe("a reading that stands alone below all others near it", () => {
  // So coarse that one sample lies within the dip.
  const axis = evenly(3e6, 12e6, 500_000);
  const coarse = (resonanceHz: number) =>
    sweepOfReflections(
      axis,
      axis.map((frequency) => reflectionOf([50, 50 * 200 * (frequency / resonanceHz - resonanceHz / frequency)])),
    );

  test("gives no length to cut, but the advice to sweep there", () => {
    const result = dipIn(coarse(7.02e6));
    expect(result.sweep.points).toBe(axis.length);
    expect(result.lengthChange).toBeNull();
    const { message } = present(
      result.findings.find(({ code }) => code === "no-dip"),
      "no-dip",
    );
    expect(message).toContain("at 7.000 MHz, stands alone");
  });

  test("far from the wanted frequency does not matter", () => {
    expect(
      trim(coarse(7.02e6), { plan, band: "30m" })
        .findings.map(({ message }) => message)
        .join(),
    ).not.toContain("stands alone: a dip");
  });
});
