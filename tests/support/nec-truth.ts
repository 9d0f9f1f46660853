import { readFileSync } from "node:fs";
import type { Pair } from "./sweeps.js";

/** A modelled antenna on its fine grid, as the files in tests/nec hold it. */
export interface NecAntenna {
  readonly frequencyHz: readonly number[];
  readonly impedance: readonly Pair[];
}

export function readNec(name: string): NecAntenna {
  const text = readFileSync(new URL(`../nec/${name}.csv`, import.meta.url), "utf8");
  const rows = text
    .split("\n")
    .filter((line) => /^\d/.test(line))
    .map((line) => line.split(",").map(Number));
  return {
    frequencyHz: rows.map(([frequencyHz = Number.NaN]) => frequencyHz),
    impedance: rows.map(([, resistance = Number.NaN, reactance = Number.NaN]) => [resistance, reactance]),
  };
}

/** What a sweep is taken through. */
export interface Line {
  readonly lengthM: number;
  readonly velocityFactor: number;
  readonly lossDbPer100M: (frequencyMhz: number) => number;
}

/** Γ against 50 ohm as magnitude and angle in radians, at the antenna or at the near end of a 50 ohm line. */
export function polarReflection([resistance, reactance]: Pair, line: Line | null, frequencyHz: number): Pair {
  const magnitude = Math.hypot(resistance - 50, reactance) / Math.hypot(resistance + 50, reactance);
  const angle = Math.atan2(reactance, resistance - 50) - Math.atan2(reactance, resistance + 50);
  if (line === null) return [magnitude, angle];
  const matchedLossDb = (line.lossDbPer100M(frequencyHz / 1e6) * line.lengthM) / 100;
  const wavelengthM = (299_792_458 * line.velocityFactor) / frequencyHz;
  return [magnitude * 10 ** (-matchedLossDb / 10), angle - (4 * Math.PI * line.lengthM) / wavelengthM];
}

export interface FinePoint {
  readonly frequencyHz: number;
  readonly rho: number;
}

const FINE_STEP_HZ = 1000;

/** ρ every kilohertz: R and X lie on straight lines between the points of the model's grid. */
export function finePoints({ frequencyHz, impedance }: NecAntenna, line: Line | null): FinePoint[] {
  return impedance.slice(0, -1).flatMap(([r0, x0], i) => {
    const low = frequencyHz[i] ?? Number.NaN;
    const high = frequencyHz[i + 1] ?? Number.NaN;
    const [r1, x1] = impedance[i + 1] ?? [Number.NaN, Number.NaN];
    return Array.from({ length: Math.round((high - low) / FINE_STEP_HZ) }, (_, k): FinePoint => {
      const at = low + k * FINE_STEP_HZ;
      const share = (at - low) / (high - low);
      const [rho] = polarReflection([r0 + share * (r1 - r0), x0 + share * (x1 - x0)], line, at);
      return { frequencyHz: at, rho };
    });
  });
}

/** SWR as what it means: the largest over the smallest voltage on the line. */
export const swrOf = (rho: number) => (1 + rho) / (1 - rho);

/** What the fine grid says of one band. */
export interface BandTruth {
  readonly bestHz: number;
  readonly bestRho: number;
  readonly worstRho: number;
  readonly lowEdgeHz: number;
  readonly highEdgeHz: number;
  /** Share of the band between the two edges */
  readonly coverage: number;
}

/** The best point within a band, and the edges around it where the SWR is 2, by straight lines between fine points. */
export function bandTruth(points: readonly FinePoint[], lowHz: number, highHz: number): BandTruth {
  const inBand = points.filter(({ frequencyHz }) => frequencyHz >= lowHz && frequencyHz <= highHz);
  const best = inBand.reduce((least, point) => (point.rho < least.rho ? point : least));
  const crossings = points.slice(0, -1).flatMap((point, i) => {
    const next = points[i + 1] ?? point;
    if (point.rho <= 1 / 3 === next.rho <= 1 / 3) return [];
    const share = (2 - swrOf(point.rho)) / (swrOf(next.rho) - swrOf(point.rho));
    return [{ frequencyHz: point.frequencyHz + share * FINE_STEP_HZ }];
  });
  const below = crossings.filter(({ frequencyHz }) => frequencyHz < best.frequencyHz).at(-1);
  const above = crossings.find(({ frequencyHz }) => frequencyHz > best.frequencyHz);
  if (below === undefined || above === undefined) throw new Error("the model has no 2:1 edges around this band's dip");
  const width = Math.min(highHz, above.frequencyHz) - Math.max(lowHz, below.frequencyHz);
  return {
    bestHz: best.frequencyHz,
    bestRho: best.rho,
    worstRho: inBand.reduce((most, { rho }) => Math.max(most, rho), 0),
    lowEdgeHz: below.frequencyHz,
    highEdgeHz: above.frequencyHz,
    coverage: width / (highHz - lowHz),
  };
}

/** Grid points on either side of the best one that its frequency is told from. */
const BEST_REACH = 8;

/**
 * Where ρ is least, to a small part of the grid's step: straight lines between grid points meet in corners, and the least
 * of them is always one. Told by the polynomial of degree four that fits ρ² best around the least grid point.
 *
 * Source of the polynomials, orthogonal over 2m + 1 points: derived (they are those of Gram).
 */
export function bestFrequencyHz(antenna: NecAntenna, line: Line | null, lowHz: number, highHz: number): number {
  const squares = antenna.impedance.map(
    (load, i) => polarReflection(load, line, antenna.frequencyHz[i] ?? Number.NaN)[0] ** 2,
  );
  const inBand = antenna.frequencyHz.flatMap((frequencyHz, i) =>
    frequencyHz >= lowHz && frequencyHz <= highHz ? [i] : [],
  );
  const best = inBand.reduce((least, i) => ((squares[i] ?? 1) < (squares[least] ?? 1) ? i : least));
  const m = BEST_REACH;
  const polynomials = [
    () => 1,
    (k: number) => k,
    (k: number) => k ** 2 - (m * (m + 1)) / 3,
    (k: number) => k ** 3 - (k * (3 * m * (m + 1) - 1)) / 5,
    (k: number) => k ** 4 - (k ** 2 * (6 * m * (m + 1) - 5)) / 7 + (3 * (m - 1) * m * (m + 1) * (m + 2)) / 35,
  ];
  const places = Array.from({ length: 2 * m + 1 }, (_, i) => i - m);
  const sum = (of: (k: number) => number) => places.reduce((total, k) => total + of(k), 0);
  const shares = polynomials.map((p) => sum((k) => (squares[best + k] ?? Number.NaN) * p(k)) / sum((k) => p(k) ** 2));
  const fitted = (k: number) =>
    shares.reduce((total, share, j) => total + share * (polynomials[j]?.(k) ?? Number.NaN), 0);
  const between = Array.from({ length: 2001 }, (_, i) => i / 1000 - 1);
  const least = between.reduce((lowest, k) => (fitted(k) < fitted(lowest) ? k : lowest));
  const stepHz = (antenna.frequencyHz[1] ?? Number.NaN) - (antenna.frequencyHz[0] ?? Number.NaN);
  return (antenna.frequencyHz[best] ?? Number.NaN) + least * stepHz;
}
