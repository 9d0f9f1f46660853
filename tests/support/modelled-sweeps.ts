import type { Sweep } from "@feedpoint/core";
import { type FinePoint, finePoints, type Line, type NecAntenna, polarReflection } from "./nec-truth.js";
import { seededNormal } from "./seeded-noise.js";
import { type Pair, sweepOfMagnitudes, sweepOfReflections } from "./sweeps.js";

/** 18 m of RG-58 type coax: a fit to 10 MHz and 100 MHz of the Belden 8262 data sheet (second-hand). */
export const COAX: Line = {
  lengthM: 18,
  velocityFactor: 0.66,
  lossDbPer100M: (frequencyMhz) => 1.35826 * Math.sqrt(frequencyMhz) + 0.0259431 * frequencyMhz,
};

/** An antenna of tests/nec as an analyser would see it, without noise, on its fine grid. */
export interface Modelled {
  readonly frequencyHz: readonly number[];
  readonly reflections: readonly Pair[];
  readonly fine: readonly FinePoint[];
}

export function modelled(antenna: NecAntenna, line: Line | null): Modelled {
  const reflections = antenna.impedance.map((impedance, i): Pair => {
    const [rho, angle] = polarReflection(impedance, line, antenna.frequencyHz[i] ?? Number.NaN);
    return [rho * Math.cos(angle), rho * Math.sin(angle)];
  });
  return { frequencyHz: antenna.frequencyHz, reflections, fine: finePoints(antenna, line) };
}

/** How a modelled antenna is swept. */
export interface Sweeping {
  readonly kind: "vector" | "scalar";
  readonly stepHz: number;
  /** Standard deviation in each part of Γ */
  readonly noise: number;
  /** Where on the grid the sweep starts, and its noise */
  readonly seed: number;
}

/** Every so many points of the grid, with noise. */
export function sweepModelled({ frequencyHz, reflections }: Modelled, { kind, stepHz, noise, seed }: Sweeping): Sweep {
  const gridHz = (frequencyHz[1] ?? 0) - (frequencyHz[0] ?? 0);
  const every = Math.max(1, Math.round(stepHz / gridHz));
  const normal = seededNormal(seed);
  const isTaken = (i: number) => i % every === seed % every;
  const noisy = reflections.map(([real, imaginary]): Pair => [real + noise * normal(), imaginary + noise * normal()]);
  const frequencies = frequencyHz.filter((_, i) => isTaken(i));
  const taken = noisy.filter((_, i) => isTaken(i));
  return kind === "vector"
    ? sweepOfReflections(frequencies, taken)
    : sweepOfMagnitudes(
        frequencies,
        taken.map(([real, imaginary]) => Math.hypot(real, imaginary)),
      );
}
