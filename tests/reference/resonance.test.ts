/**
 * Resonance and the resistance there, from thinned and noisy sweeps of modelled antennas.
 *
 * Source: the table of tests/nec/README.md (NEC-2 as in Debian's nec2c 1.3), whose X = 0 are placed by a straight line
 * between grid points. Tolerance on the grid itself: half of the last printed digit, 0.05 kHz and 0.005 ohm; the table's
 * impedances have five digits, which is up to 0.0043 ohm of 85 ohm more.
 */
import { check, type Point, planById } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { polarReflection, readNec } from "../support/nec-truth.js";
import { seededNormal } from "../support/seeded-noise.js";
import { type Pair, present, sweepOfReflections } from "../support/sweeps.js";

const GRID_HZ = 10_000;
const plan = present(planById("us-part97"), "us-part97");

const TABLE = [
  { antenna: "dipole-20m", band: "20m", megahertz: 14.151, ohms: 85.22 },
  { antenna: "vee-40m", band: "40m", megahertz: 7.104, ohms: 64.84 },
  { antenna: "vee-40m-drooped", band: "40m", megahertz: 7.1729, ohms: 50.43 },
  { antenna: "fan-dipole-40-20m", band: "40m", megahertz: 7.022, ohms: 56.35 },
  { antenna: "fan-dipole-40-20m", band: "20m", megahertz: 14.2129, ohms: 42.38 },
] as const;

function resonance(antenna: string, band: string, stepHz: number, noise: number, seed = 0): Point {
  const { frequencyHz, impedance } = readNec(antenna);
  const isKept = (_: unknown, i: number) => i % (stepHz / GRID_HZ) === 0;
  const normal = seededNormal(seed);
  const frequencies = frequencyHz.filter(isKept);
  const reflections = impedance.filter(isKept).map((load): Pair => {
    const [magnitude, angle] = polarReflection(load, null, 1);
    return [magnitude * Math.cos(angle) + noise * normal(), magnitude * Math.sin(angle) + noise * normal()];
  });
  const [result] = check(sweepOfReflections(frequencies, reflections), { plan, bands: [band] }).bands;
  expect(result?.resonances, `resonances of ${antenna} on ${band}`).toHaveLength(1);
  return present(result?.resonances[0], "resonance");
}

describe.each(TABLE)("$antenna on $band", ({ antenna, band, megahertz, ohms }) => {
  test("resonates where the table says, on the grid itself", () => {
    const { frequencyHz, resistanceOhms, reactanceOhms } = resonance(antenna, band, GRID_HZ, 0);
    expect(Math.abs(frequencyHz - megahertz * 1e6)).toBeLessThanOrEqual(50);
    expect(Math.abs(present(resistanceOhms, "R") - ohms)).toBeLessThanOrEqual(0.005 + 5e-5 * ohms);
    expect(Math.abs(present(reactanceOhms, "X"))).toBeLessThan(1e-3);
  });

  test.each([50_000, 100_000])("resonates within 0.1 kHz of it in steps of %d Hz, R within 0.1 %%", (stepHz) => {
    const { frequencyHz, resistanceOhms } = resonance(antenna, band, stepHz, 0);
    expect(Math.abs(frequencyHz - megahertz * 1e6)).toBeLessThanOrEqual(100);
    expect(Math.abs(present(resistanceOhms, "R") / ohms - 1)).toBeLessThanOrEqual(0.001);
  });

  test.each([10_000, 50_000, 100_000])(
    "resonates within 4 kHz of it under noise of 0.001 in steps of %d Hz, R within one per cent",
    (stepHz) => {
      for (let seed = 1; seed <= 10; seed++) {
        const { frequencyHz, resistanceOhms } = resonance(antenna, band, stepHz, 0.001, seed);
        expect(Math.abs(frequencyHz - megahertz * 1e6), `seed ${seed}`).toBeLessThanOrEqual(4000);
        expect(Math.abs(present(resistanceOhms, "R") / ohms - 1), `seed ${seed}`).toBeLessThanOrEqual(0.01);
      }
    },
  );
});
