/**
 * Wires as lossy open lines (the theory of principal waves on antennas): a leg of length l has Z = Zc coth γl with the average
 * characteristic impedance of the wire, and the attenuation spreads the loop resistance over the leg: αl = R / Zc.
 *
 * Loop resistance of a wire n half-waves long: near 73 + 30 ln n for n ≥ 1 and falling with the square of n below 1, in one
 * smooth form. Height over ground multiplies it by 1 - |ρ| sin x / x with x = 4πH/λ (the image below ground).
 */

import { LIGHT_M_PER_S, omega } from "./circuit.js";
import { type Complex, complex, divided, tanh } from "./complex.js";

export interface Wire {
  /** Of the leg that is fed at one end and open at the other */
  readonly legM: number;
  /** How many times the leg the wire is, as it radiates: 2 for a dipole, 1 for an end-fed wire, 2 for a vertical with its image */
  readonly legs: number;
  readonly characteristicOhms: number;
  /** Slower than light by end effect and insulation */
  readonly velocity: number;
  readonly heightM: number;
  readonly groundReflection: number;
  /** Factor on the loop resistance: 0.5 for a vertical */
  readonly resistanceFactor: number;
  /** Loss of wire and surroundings at 10 MHz, growing with the root of frequency */
  readonly lossOhms: number;
}

function loopResistance(halfWaves: number): number {
  const square = halfWaves * halfWaves;
  return (73 + 15 * Math.log((1 + square) / 2)) * ((1.15 * square) / (square + 0.15));
}

function imageFactor(heightM: number, groundReflection: number, frequencyHz: number): number {
  const x = (4 * Math.PI * heightM * frequencyHz) / LIGHT_M_PER_S;
  return 1 - groundReflection * (x < 1e-6 ? 1 : Math.sin(x) / x);
}

export function lossNepers(wire: Wire, frequencyHz: number): number {
  const halfWaves = (2 * wire.legs * wire.legM * frequencyHz) / (LIGHT_M_PER_S * wire.velocity);
  const radiated =
    loopResistance(halfWaves) * wire.resistanceFactor * imageFactor(wire.heightM, wire.groundReflection, frequencyHz);
  return (radiated + wire.lossOhms * Math.sqrt(frequencyHz / 10e6)) / wire.characteristicOhms;
}

function legAngle(wire: Wire, frequencyHz: number): number {
  return (omega(frequencyHz) * wire.legM) / (LIGHT_M_PER_S * wire.velocity);
}

/** Impedance of an open wire at its fed end, or of a dipole in its middle. */
export function wireImpedance(wire: Wire, frequencyHz: number): Complex {
  return divided(
    complex(wire.characteristicOhms),
    tanh(complex(lossNepers(wire, frequencyHz), legAngle(wire, frequencyHz))),
  );
}

/** Leg of a wire that is a number of quarter waves long at a frequency. */
export const quarterWaves = (number: number, frequencyHz: number, velocity: number): number =>
  (number * LIGHT_M_PER_S * velocity) / (4 * frequencyHz);
