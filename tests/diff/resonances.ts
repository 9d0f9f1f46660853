/** Sweeps of an invented resonance behind a line, for the tests of diff. */
import type { ScalarSweep, VectorSweep } from "@feedpoint/core";
import { seededNormal } from "../support/seeded-noise.js";
import { evenly, type Pair, reflectionOf, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

export interface Resonance {
  readonly resonanceHz: number;
  readonly ohms: number;
  readonly q: number;
  /** Round-trip delay of the line, s */
  readonly delayS: number;
  /** One-way loss at 10 MHz, growing with the root of frequency, dB */
  readonly lossAt10MHzDb: number;
}

export const resonance = (changes: Partial<Resonance> = {}): Resonance => ({
  resonanceHz: 7.1e6,
  ohms: 60,
  q: 12,
  delayS: 100e-9,
  lossAt10MHzDb: 0.5,
  ...changes,
});

/** Of the amateur bands only 40 m lies in it. */
const AXIS = evenly(5.5e6, 10e6, 20_000);

interface Sweeping {
  readonly noise?: number;
  readonly seed?: number;
  readonly axis?: readonly number[];
}

function reflections(
  { resonanceHz, ohms, q, delayS, lossAt10MHzDb }: Resonance,
  { noise = 0, seed = 1, axis = AXIS }: Sweeping,
) {
  const normal = seededNormal(seed);
  return axis.map((frequency): Pair => {
    const u = frequency / resonanceHz;
    const [real, imaginary] = reflectionOf([ohms, ohms * q * (u - 1 / u)]);
    const size = 10 ** ((-lossAt10MHzDb * Math.sqrt(frequency / 10e6)) / 10);
    const angle = -2 * Math.PI * frequency * delayS;
    const [cosine, sine] = [size * Math.cos(angle), size * Math.sin(angle)];
    return [real * cosine - imaginary * sine + noise * normal(), real * sine + imaginary * cosine + noise * normal()];
  });
}

export const swept = (of: Resonance, sweeping: Sweeping = {}): VectorSweep =>
  sweepOfReflections(sweeping.axis ?? AXIS, reflections(of, sweeping));

export const sweptWithoutPhase = (of: Resonance, sweeping: Sweeping = {}): ScalarSweep =>
  sweepOfMagnitudes(
    sweeping.axis ?? AXIS,
    reflections(of, sweeping).map(([real, imaginary]) => Math.hypot(real, imaginary)),
  );
