import type { Pair } from "../sweeps.js";
import type { AntennaState, Impedance } from "./antenna.js";
import { at } from "./at.js";
import {
  add,
  exponential,
  gammaOfImpedance,
  hyperbolicCotangent,
  impedanceOfGamma,
  inverse,
  multiply,
  scaled,
} from "./complex.js";
import { groundEffect, halfWavesOhms } from "./ground.js";
import { LIGHT } from "./lines.js";

/** One current mode of a wire: a series resonance of `hz`, with its inductance (H) and its resistances (ohms). */
interface Mode {
  readonly number: number;
  readonly weight: number;
  readonly hz: number;
  readonly inductance: number;
  readonly radiation: number;
  readonly loss: number;
}

interface ModalOptions {
  /** Factor on the length of the first arm alone. */
  readonly firstArm?: number;
  /** How strongly a mode is fed, `place` being the feed's place along the wire. */
  readonly weight?: (number: number, place: number) => number;
  /** What a neighbour makes of the first mode's impedance. */
  readonly firstMode?: (hz: number, z: Pair, mode: Mode) => Pair;
}

/** Length in metres of a wire of half a wave at its first resonance. */
export const halfWaveM = (state: Pick<AntennaState, "velocity" | "firstHz">): number =>
  ((LIGHT * state.velocity) / (2 * state.firstHz)) * 0.98;

/** Radiation resistance of a mode off its resonance, as a factor; `ratio` is frequency over resonance. */
export const radiationGrowth = (ratio: number): number => (1.3 * ratio * ratio) / (1 + 0.3 * ratio * ratio);

/** A wire fed between two arms (metres): the sum of the series resonances of its current modes sin(nπx/l). */
export function modalWire(state: AntennaState, arms: readonly [number, number], options: ModalOptions = {}): Impedance {
  const first = arms[0] * at(state.scatter, 0) * state.scale * (options.firstArm ?? 1);
  const length = first + arms[1] * at(state.scatter, 1) * state.scale;
  const place = first / length;
  const seconds = length / (LIGHT * state.velocity);
  const inductance = (state.waveOhms * seconds) / 4;
  const weightOf = options.weight ?? ((number: number) => Math.sin(number * Math.PI * place) ** 2);
  const modes: Mode[] = [];
  for (let number = 1; number <= 24; number++) {
    const weight = weightOf(number, place);
    if (weight < 1e-5) continue;
    const hz = (number / (2 * seconds)) * (1 - 0.02 / number);
    const ground = groundEffect(state, hz);
    const ohms = halfWavesOhms(number);
    const loss = ohms * ground.loss + state.lossOhms * Math.sqrt(number) + state.waterOhms;
    modes.push({ number, weight, hz: hz * (1 + ground.shift), inductance, radiation: ohms * ground.radiation, loss });
  }
  // Modes far above the sweep are only a capacitance.
  let rest = 0;
  for (let number = 25; number < 300; number++) {
    rest += weightOf(number, place) / (inductance * ((2 * Math.PI * number) / (2 * seconds)) ** 2);
  }
  return (hz) => {
    let y: Pair = [1e-9, 2 * Math.PI * hz * rest];
    for (const mode of modes) {
      const ratio = hz / mode.hz;
      const own: Pair = [
        mode.radiation * radiationGrowth(ratio) + mode.loss,
        2 * Math.PI * hz * mode.inductance * (1 - 1 / (ratio * ratio)),
      ];
      const z = options.firstMode && mode.number === 1 ? options.firstMode(hz, own, mode) : own;
      y = add(y, scaled(inverse(z), mode.weight));
    }
    return inverse(y);
  };
}

/** A radiating wire taken as a lossy line: metres, ohms. */
export interface RadiatingWire {
  readonly lengthM: number;
  readonly velocity: number;
  readonly waveOhms: number;
  /** Radiation resistance at a quarter wave. */
  readonly quarterOhms: number;
  readonly lossOhms: number;
}

/** Attenuation by radiation as a factor: that of the quarter wave at `ratio` 1, and as its fourth power far below. */
export function radiationAttenuation(ratio: number): number {
  const fourth = ratio ** 4;
  return (1.9 * fourth) / (0.9 + fourth);
}

/** Attenuation (nepers) and electrical length (radians) of a radiating wire. */
export function wireAngles(hz: number, wire: RadiatingWire): { readonly nepers: number; readonly radians: number } {
  const ratio = (4 * wire.lengthM * hz) / (LIGHT * wire.velocity);
  return {
    nepers:
      (wire.quarterOhms / wire.waveOhms) * radiationAttenuation(ratio) +
      (wire.lossOhms / wire.waveOhms) * Math.sqrt(ratio),
    radians: (Math.PI / 2) * ratio,
  };
}

/** The impedance in ohms of a wire with an open end. */
export function openWire(hz: number, wire: RadiatingWire): Pair {
  const { nepers, radians } = wireAngles(hz, wire);
  return scaled(hyperbolicCotangent(nepers, radians), wire.waveOhms);
}

/** The impedance in ohms seen through a piece of wire that ends in `z`. */
export function alongWire(z: Pair, waveOhms: number, nepers: number, radians: number): Pair {
  const turned = multiply(gammaOfImpedance(z, waveOhms), exponential([-2 * nepers, -2 * radians]));
  return impedanceOfGamma(turned, waveOhms);
}
