/**
 * Families of antennas, invented, that no threshold of the tool was set on. Each draws one antenna and gives its reflection
 * coefficient at 50 Ω at any frequency: a passive circuit, smooth, and exactly known.
 *
 * What a family models and by which formulas stands above its function, in `antennas/`; lumped parts, lines and transformers are in
 * `circuit.ts`, wires as lossy open lines in `wires.ts`, what a user is likely to have in `draws.ts`.
 */
import {
  behind75,
  behindLadder,
  fixedNetwork,
  loadedWhip,
  longCoax,
  lossyTwoPort,
  resonanceSum,
  smallLoop,
  stubMatched,
} from "./circuit-antennas.js";
import type { Random } from "./draws.js";
import {
  coupledElements,
  dipoleModes,
  doublet,
  endFed,
  fanDipoles,
  fullWaveLoop,
  offCentreFed,
  randomWire,
  terminatedWire,
  trapDipole,
  verticalOverGround,
} from "./wire-antennas.js";

export interface Family {
  readonly name: string;
  /** @param random uniform, 0 up to 1 */
  readonly draw: (random: Random) => (frequencyHz: number) => { re: number; im: number };
}

/** Ascending by name: those that intervals were tuned on and those held out take turns. */
const FAMILIES: readonly Family[] = [
  { name: "behind-75-ohm", draw: behind75 },
  { name: "behind-ladder", draw: behindLadder },
  { name: "coupled-elements", draw: coupledElements },
  { name: "dipole-modes", draw: dipoleModes },
  { name: "doublet", draw: doublet },
  { name: "end-fed-49", draw: endFed },
  { name: "fan-dipoles", draw: fanDipoles },
  { name: "fixed-network", draw: fixedNetwork },
  { name: "full-wave-loop", draw: fullWaveLoop },
  { name: "loaded-whip", draw: loadedWhip },
  { name: "long-coax", draw: longCoax },
  { name: "lossy-two-port", draw: lossyTwoPort },
  { name: "off-centre-fed", draw: offCentreFed },
  { name: "random-wire", draw: randomWire },
  { name: "resonance-sum", draw: resonanceSum },
  { name: "small-loop", draw: smallLoop },
  { name: "stub", draw: stubMatched },
  { name: "terminated-wire", draw: terminatedWire },
  { name: "trap-dipole", draw: trapDipole },
  { name: "vertical-ground", draw: verticalOverGround },
];

/** Families that the factors of the intervals were chosen on, and those held out: every other one. */
export const antennaFamilies = (which: "tuned" | "held-out"): readonly Family[] =>
  FAMILIES.filter((_, i) => (i % 2 === 0) === (which === "tuned"));
