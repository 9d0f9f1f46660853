import type { Random } from "./random.js";
import type { Station } from "./station.js";

/** What a change was, in numbers; each change gives its own few. Ohms, H, F, metres, dB. */
export interface ChangeFacts {
  readonly addedMetres?: number;
  readonly addedDb?: number;
  readonly addedDbAt10MHz?: number;
  /** How the added loss goes with frequency. */
  readonly law?: "sqrt(f)" | "f" | "flat";
  /** The part of the added loss in the series resistance of the line. */
  readonly seriesShare?: number;
  readonly velocity?: number;
  readonly ohms?: number;
  readonly henry?: number;
  readonly farad?: number;
  readonly q?: number;
  readonly at?: "plug" | "feed";
  /** Factor on the length of the wire. */
  readonly scale?: number;
  /** Factor on the resonances; null where another part of the antenna holds them back. */
  readonly frequencyFactor?: number | null;
  /** Factor on the length of each wire by itself. */
  readonly scatter?: readonly number[];
  readonly heightFactor?: number;
  readonly heightBeforeM?: number;
  readonly heightAfterM?: number;
  readonly perBand?: readonly HeightEffect[];
  readonly counterpoiseLengthFactor?: number;
  readonly counterpoiseResistanceFactor?: number;
  /** The part that was detuned, which one of several, and the factor on it. */
  readonly what?: string;
  readonly index?: number;
  readonly detuneFactor?: number;
  readonly directivityDb?: number;
  readonly directivityReal?: number;
  readonly directivityImaginary?: number;
  readonly directivityTurnRadAt30MHz?: number;
  readonly planeShiftM?: number;
  /** How often an error vector was drawn again. */
  readonly redraws?: number;
}

/** What another height does in the middle of a band: factor on the resistance, relative shift of the resonance. */
export interface HeightEffect {
  readonly label: string;
  readonly resistanceFactor: number;
  readonly shift: number;
}

/** A changed station and what was changed. */
export interface Changed {
  readonly after: Station;
  readonly facts: ChangeFacts;
}

export type Change = (before: Station, random: Random) => Changed;

/** Factors well away from 1, below or above it. */
export function awayFromOne(
  random: Random,
  below: readonly [number, number],
  above: readonly [number, number],
): number {
  return random.uniform() < 0.5 ? random.range(...below) : random.range(...above);
}

/** A station whose antenna is in another state. */
export function withAntenna(station: Station, state: Partial<Station["antenna"]>): Station {
  return { ...station, antenna: { ...station.antenna, ...state } };
}
