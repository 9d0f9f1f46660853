/** What a user has and does, drawn by chance: bands, lengths, lines, and the cut of the wire that brings the dip to the band. */

import { LIGHT_M_PER_S, type Line, type Response, type Transformer } from "./circuit.js";
import { magnitude } from "./complex.js";
import type { Wire } from "./wires.js";

export type Random = () => number;

export const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
export const logBetween = (random: Random, low: number, high: number): number => low * (high / low) ** random();

export function pick<Item>(random: Random, items: readonly [Item, ...Item[]]): Item {
  return items[Math.min(items.length - 1, Math.floor(random() * items.length))] ?? items[0];
}

export interface Band {
  readonly band: string;
  readonly lowHz: number;
  readonly highHz: number;
}

export const BANDS: readonly [Band, ...Band[]] = [
  { band: "160m", lowHz: 1.8e6, highHz: 2e6 },
  { band: "80m", lowHz: 3.5e6, highHz: 3.8e6 },
  { band: "60m", lowHz: 5.3515e6, highHz: 5.3665e6 },
  { band: "40m", lowHz: 7e6, highHz: 7.2e6 },
  { band: "30m", lowHz: 10.1e6, highHz: 10.15e6 },
  { band: "20m", lowHz: 14e6, highHz: 14.35e6 },
  { band: "17m", lowHz: 18.068e6, highHz: 18.168e6 },
  { band: "15m", lowHz: 21e6, highHz: 21.45e6 },
  { band: "12m", lowHz: 24.89e6, highHz: 24.99e6 },
  { band: "10m", lowHz: 28e6, highHz: 29.7e6 },
];

/** Where a user's dip ends up: within the band or somewhat beside it, as cutting goes; `beside` 0 for within, as tuning by hand does. */
export function nearBand(random: Random, lowestHz = 1.8e6, highestHz = 29.7e6, beside = 1): number {
  const open = BANDS.filter(({ lowHz, highHz }) => lowHz >= lowestHz && highHz <= highestHz);
  const { lowHz, highHz } = pick(random, open.length === 0 ? BANDS : (open as [Band, ...Band[]]));
  const margin = beside * (0.25 * (highHz - lowHz) + 0.004 * lowHz);
  return between(random, lowHz - margin, highHz + margin);
}

/** The response of the trial that is best at a frequency: what a user does who cuts and measures again. */
export function cutFor(targetHz: number, build: (scale: number) => Response, spread = 0.12, trials = 61): Response {
  const scales = Array.from({ length: trials }, (_, index) => 1 + spread * ((2 * index) / (trials - 1) - 1));
  const rated = scales.map((scale) => ({ scale, rho: magnitude(build(scale)(targetHz)) }));
  return build(rated.reduce((best, next) => (next.rho < best.rho ? next : best)).scale);
}

/** Coax as it is bought: thin and lossy, or thick. */
export const coax = (random: Random, lowM: number, highM: number, ohms = 50): Line => ({
  ohms: ohms * between(random, 0.97, 1.03),
  lengthM: between(random, lowM, highM),
  velocity: pick(random, [0.66, 0.695, 0.8, 0.85]),
  conductorDb: logBetween(random, 1.3, 5),
  insulationDb: between(random, 0.02, 0.4),
});

export const ladder = (random: Random, lowM: number, highM: number): Line => ({
  ohms: pick(random, [300, 370, 400, 450]),
  lengthM: between(random, lowM, highM),
  velocity: between(random, 0.82, 0.96),
  conductorDb: between(random, 0.15, 0.6),
  insulationDb: between(random, 0, 0.4),
});

export const transformer = (random: Random, ratio: number): Transformer => ({
  ratio,
  leakageHenry: between(random, 20e-9, 220e-9),
  magnetisingHenry: logBetween(random, 2.5e-6, 15e-6),
  relaxationHz: logBetween(random, 1.5e6, 15e6),
  compensationFarad: pick(random, [0, 68e-12, 100e-12, 150e-12]),
  copperOhms: between(random, 0.05, 0.4),
});

/** Wire at a height that belongs to a garden: the leg is set by the family. */
export function wire(random: Random, legM: number, legs: number): Wire {
  const radiusM = logBetween(random, 0.0005, 0.0025);
  const heightM = logBetween(random, 3, 16);
  return {
    legM,
    legs,
    characteristicOhms:
      legs === 1 ? 60 * Math.log((2 * heightM) / radiusM) : 120 * (Math.log((2 * legM) / radiusM) - 1),
    velocity: between(random, 0.93, 0.985),
    heightM,
    groundReflection: between(random, 0.4, 0.9),
    resistanceFactor: 1,
    lossOhms: logBetween(random, 1, 12),
  };
}

export const wavelengthM = (frequencyHz: number): number => LIGHT_M_PER_S / frequencyHz;
