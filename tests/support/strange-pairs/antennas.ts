import type { Family } from "./antenna.js";
import { dipole, endFed, fan, foldedDipole, ladderDoublet, offCentre, parasitic } from "./dipoles.js";
import { loadedWhip, smallLoop, trapDipole } from "./loaded-antennas.js";
import { fullLoop, randomWire, terminated, verticalRadials } from "./long-wires.js";

/** Every family of antennas by its name. The order is part of what a seed gives. */
export const FAMILIES = {
  dipole,
  "end-fed": endFed,
  "trap-dipole": trapDipole,
  "loaded-whip": loadedWhip,
  "ladder-doublet": ladderDoublet,
  "off-centre": offCentre,
  fan,
  parasitic,
  "small-loop": smallLoop,
  "random-wire": randomWire,
  terminated,
  "vertical-radials": verticalRadials,
  "full-loop": fullLoop,
  "folded-dipole": foldedDipole,
} as const satisfies Readonly<Record<string, Family>>;

export type FamilyName = keyof typeof FAMILIES;

export const ANTENNA_FAMILIES = Object.keys(FAMILIES) as readonly FamilyName[];
