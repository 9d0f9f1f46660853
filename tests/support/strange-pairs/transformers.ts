import type { Pair } from "../sweeps.js";
import { add, inverse, parallel, scaled } from "./complex.js";
import type { Random } from "./random.js";

/** A transformer at the feed, seen from its low side: ohms, H and F. */
export interface Transformer {
  /** Impedance ratio. */
  readonly ratio: number;
  readonly leakH: number;
  readonly magH: number;
  readonly coreOhms: number;
  /** Capacitor across the low side; 0 for none. */
  readonly capF: number;
}

type Limits = readonly [number, number];

/** A transformer of a ratio, with leakage (H), magnetising inductance (H) and core loss (ohms) between limits. */
export function drawTransformer(random: Random, ratio: number, leak: Limits, mag: Limits, core: Limits): Transformer {
  return { ratio, leakH: random.log(...leak), magH: random.log(...mag), coreOhms: random.log(...core), capF: 0 };
}

export const drawBalun = (random: Random): Transformer =>
  drawTransformer(random, 1, [2e-8, 1.5e-7], [2e-5, 8e-5], [2500, 8000]);

/** A balun, or none, with the given chance of one. */
export const perhapsBalun = (random: Random, chance: number): Transformer | null =>
  random.uniform() < chance ? drawBalun(random) : null;

/** The impedance in ohms on the low side: ideal ratio, core and magnetising inductance across, leakage in series. */
export function throughTransformer(z: Pair, hz: number, transformer: Transformer | null): Pair {
  if (!transformer) return z;
  const { ratio, coreOhms, magH, leakH, capF } = transformer;
  const w = 2 * Math.PI * hz;
  const y = add(scaled(inverse(z), ratio), [1 / (coreOhms * (hz / 7e6) ** 0.4), -1 / (w * magH)]);
  const low = add(inverse(y), [0.1 + 0.02 * Math.sqrt(hz / 1e6), w * leakH]);
  return capF === 0 ? low : parallel(low, [0.02, -1 / (w * capF)]);
}
