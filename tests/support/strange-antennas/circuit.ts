/**
 * Lumped parts and lines, all as impedances in Ω at a frequency in Hz.
 *
 * - coil and capacitor of finite Q: reactance divided by Q stands in series as resistance;
 * - reflection coefficient: (Z - 50) / (Z + 50);
 * - impedance through a line: Z0 (ZL + Z0 tanh γl) / (Z0 + ZL tanh γl), γ = α + jβ; α grows with the root of frequency
 *   (conductor) and in proportion to it (insulation), and the conductor's part makes Z0 slightly capacitive;
 * - transformer: load divided by the ratio, leakage inductance in series, and in parallel with the primary the magnetising
 *   inductance of a ferrite whose permeability relaxes as 1 / (1 + jf/fr), which is the core's loss.
 */
import { add, type Complex, complex, divided, inverse, parallel, scaled, subtract, tanh, times } from "./complex.js";

export const LIGHT_M_PER_S = 299_792_458;
export type Impedance = (frequencyHz: number) => Complex;
export type Response = (frequencyHz: number) => Complex;

export const omega = (frequencyHz: number): number => 2 * Math.PI * frequencyHz;

const reflection = (z: Complex): Complex => divided(subtract(z, complex(50)), add(z, complex(50)));
export const responseOf =
  (impedance: Impedance): Response =>
  (frequencyHz) =>
    reflection(impedance(frequencyHz));

export const coil =
  (henry: number, q = Number.POSITIVE_INFINITY): Impedance =>
  (frequencyHz) =>
    complex((omega(frequencyHz) * henry) / q, omega(frequencyHz) * henry);

export const capacitor =
  (farad: number, q = Number.POSITIVE_INFINITY): Impedance =>
  (frequencyHz) => {
    const reactance = 1 / (omega(frequencyHz) * farad);
    return complex(reactance / q, -reactance);
  };

export interface Line {
  readonly ohms: number;
  readonly lengthM: number;
  readonly velocity: number;
  /** Matched loss at 10 MHz of 100 m, dB: of the conductor (grows with the root) and of the insulation (in proportion) */
  readonly conductorDb: number;
  readonly insulationDb: number;
}

export function throughLine(load: Complex, line: Line, frequencyHz: number): Complex {
  const tens = frequencyHz / 10e6;
  const neperPerM = (db: number): number => db / 8.685889638 / 100;
  const conductor = neperPerM(line.conductorDb) * Math.sqrt(tens);
  const alpha = conductor + neperPerM(line.insulationDb) * tens;
  const beta = omega(frequencyHz) / (LIGHT_M_PER_S * line.velocity);
  const z0 = complex(line.ohms, (-line.ohms * conductor) / beta);
  const t = tanh(complex(alpha * line.lengthM, beta * line.lengthM));
  return divided(times(z0, add(load, times(z0, t))), add(z0, times(load, t)));
}

export interface Transformer {
  /** Of impedances: 49 for one that takes 2450 Ω down to 50 Ω */
  readonly ratio: number;
  /** Both as seen on the side of the analyser */
  readonly leakageHenry: number;
  readonly magnetisingHenry: number;
  readonly relaxationHz: number;
  /** Across the primary; 0 for none */
  readonly compensationFarad: number;
  readonly copperOhms: number;
}

export function throughTransformer(load: Complex, transformer: Transformer, frequencyHz: number): Complex {
  const { ratio, leakageHenry, magnetisingHenry, relaxationHz, compensationFarad, copperOhms } = transformer;
  const ideal = add(scaled(load, 1 / ratio), complex(copperOhms, omega(frequencyHz) * leakageHenry));
  const core = divided(complex(0, omega(frequencyHz) * magnetisingHenry), complex(1, frequencyHz / relaxationHz));
  const seen = parallel(ideal, core);
  return compensationFarad === 0 ? seen : parallel(seen, capacitor(compensationFarad)(frequencyHz));
}

/** Resonances: of a series circuit by its resistance and reactance at resonance, of a parallel one by its resistance and Q. */
export const seriesResonance = (ohms: number, reactance: number, resonanceHz: number, frequencyHz: number): Complex =>
  complex(ohms, reactance * (frequencyHz / resonanceHz - resonanceHz / frequencyHz));
export const parallelResonance = (ohms: number, q: number, resonanceHz: number, frequencyHz: number): Complex =>
  divided(complex(ohms), complex(1, q * (frequencyHz / resonanceHz - resonanceHz / frequencyHz)));

/** Two-port in T form: series, shunt, series; seen from the first. */
export const throughT = (load: Complex, first: Complex, shunt: Complex, second: Complex): Complex =>
  add(first, parallel(shunt, add(second, load)));

export const shuntAdmittance = (z: Complex, admittance: Complex): Complex => inverse(add(inverse(z), admittance));
