import type { Pair } from "../sweeps.js";
import { add, divide, exponential, multiply, scaled, squareRoot, subtract } from "./complex.js";
import type { Random } from "./random.js";

/** Metres per second. */
export const LIGHT = 299792458;

const DB_PER_NEPER = 8.685889638;

/** A two-wire line. Matched loss in dB per 100 m is k1 √f + k2 f, f in MHz; extra loss follows the same laws. */
export interface Line {
  /** Characteristic impedance without loss, ohms. */
  readonly z0: number;
  /** Velocity factor. */
  readonly velocity: number;
  readonly k1: number;
  readonly k2: number;
  readonly extraK1?: number;
  readonly extraK2?: number;
  /** The part of the extra √f loss that sits in the series resistance; the rest is in the shunt conductance. */
  readonly seriesShare?: number;
}

/** A coaxial cable with the words for its kind. */
export interface Cable extends Line {
  readonly kind: string;
}

/** Propagation constant per metre and characteristic impedance in ohms, from R, L, G and C per metre. */
function lineAt(line: Line, hz: number): { readonly gamma: Pair; readonly zc: Pair } {
  const mhz = hz / 1e6;
  const root = Math.sqrt(mhz);
  const w = 2 * Math.PI * hz;
  const nepers = 1 / (100 * DB_PER_NEPER);
  const extra = (line.extraK1 ?? 0) * root * nepers;
  const share = line.seriesShare ?? 1;
  const seriesLoss = line.k1 * root * nepers + extra * share;
  const shuntLoss = (line.k2 + (line.extraK2 ?? 0)) * mhz * nepers + extra * (1 - share);
  const resistance = 2 * seriesLoss * line.z0;
  const conductance = (2 * shuntLoss) / line.z0;
  const inductance = line.z0 / (line.velocity * LIGHT);
  const capacitance = 1 / (line.z0 * line.velocity * LIGHT);
  // Skin effect: the inner reactance of the conductor equals its resistance.
  const series: Pair = [resistance, w * inductance + resistance];
  const shunt: Pair = [conductance, w * capacitance];
  return { gamma: squareRoot(multiply(series, shunt)), zc: squareRoot(divide(series, shunt)) };
}

/** The impedance in ohms at the near end of a line of `lengthM` metres that ends in `z`. */
export function throughLine(z: Pair, line: Line, lengthM: number, hz: number): Pair {
  const { gamma, zc } = lineAt(line, hz);
  const turned = multiply(divide(subtract(z, zc), add(z, zc)), exponential(scaled(gamma, -2 * lengthM)));
  return multiply(zc, divide(add([1, 0], turned), subtract([1, 0], turned)));
}

/** Matched loss of `lengthM` metres at 10 MHz, dB. */
export const dbAt10MHz = (line: Line, lengthM: number): number => lineAt(line, 1e7).gamma[0] * lengthM * DB_PER_NEPER;

const CABLES = [
  { kind: "very thin solid 50", z0: 50, velocity: 0.66, k1: [2.7, 3.3], k2: [0.02, 0.05] },
  { kind: "thin solid 50", z0: 50, velocity: 0.66, k1: [1.25, 1.6], k2: [0.01, 0.03] },
  { kind: "thin foam 50", z0: 50, velocity: 0.82, k1: [0.95, 1.2], k2: [0.004, 0.012] },
  { kind: "thick solid 50", z0: 50, velocity: 0.66, k1: [0.56, 0.7], k2: [0.004, 0.01] },
  { kind: "thick foam 50", z0: 50, velocity: 0.84, k1: [0.37, 0.48], k2: [0.001, 0.004] },
] as const;

/** A cable of a common kind, with the spread of its making. */
export function drawCable(random: Random): Cable {
  const { kind, z0, velocity, k1, k2 } = random.pick(CABLES);
  return {
    kind,
    z0: z0 * random.range(0.985, 1.015),
    velocity: velocity * random.range(0.99, 1.01),
    k1: random.range(k1[0], k1[1]),
    k2: random.range(k2[0], k2[1]),
  };
}
