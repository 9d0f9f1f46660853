import type { Pair } from "../sweeps.js";
import type { OverGround } from "./ground.js";
import type { Random } from "./random.js";

/** Impedance in ohms over frequency in Hz. */
export type Impedance = (hz: number) => Pair;

/** What of an antenna can change between two sweeps, and what decides how the change shows. */
export interface AntennaState extends OverGround {
  /** Factor on the length of every wire. */
  readonly scale: number;
  /** Factor on the length of each wire by itself. */
  readonly scatter: readonly number[];
  /** Extra resistance of a wet wire, ohms. */
  readonly waterOhms: number;
  /** Factor on one part: the trap, coil, capacitor or length that the family says. */
  readonly detune: number;
  readonly detuneIndex: number;
  /** Factors on the length and on the loss of the counterpoise. */
  readonly counterpoiseLength: number;
  readonly counterpoiseLoss: number;
  /** Loss of the wire, ohms. */
  readonly lossOhms: number;
  /** Velocity factor of the wire. */
  readonly velocity: number;
  /** Height of the feed of a vertical, metres. */
  readonly baseM?: number;
  /** Whether a part whose length stays the same holds the resonances back when the wire changes. */
  readonly heldBack: boolean;
}

/** One antenna: its state as first built, and its impedance at its plug in any state. */
export interface Antenna {
  readonly state: AntennaState;
  readonly impedance: (state: AntennaState) => Impedance;
}

/** What an antenna has, so that a change of it has a meaning. */
export type Trait = "height" | "counterpoise" | "detune" | "braid";

export interface Family {
  readonly traits: readonly Trait[];
  readonly make: (random: Random) => Antenna;
}

/** A wire as it was first hung, with its own loss and velocity factor. */
export function drawWire(
  random: Random,
): Omit<AntennaState, "heightM" | "reflection" | "groundLoss" | "vertical" | "firstHz" | "waveOhms"> {
  return {
    scale: 1,
    scatter: [1, 1, 1, 1, 1],
    waterOhms: 0,
    detune: 1,
    detuneIndex: 0,
    counterpoiseLength: 1,
    counterpoiseLoss: 1,
    lossOhms: random.range(0.5, 4),
    velocity: random.range(0.945, 0.985),
    heldBack: false,
  };
}
