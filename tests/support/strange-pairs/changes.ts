import type { Family, Trait } from "./antenna.js";
import {
  anotherSweep,
  counterpoise,
  elementDetuned,
  height,
  waterOnWire,
  wireAndLine,
  wireLonger,
  wireShorter,
} from "./antenna-changes.js";
import { FAMILIES, type FamilyName } from "./antennas.js";
import {
  dielectricLoss,
  fixedLoss,
  line75Added,
  lineLonger,
  lineShorter,
  lossyLine,
  referenceChanged,
} from "./line-changes.js";
import {
  braidChoked,
  capacitorAcrossPlug,
  capacitorSeriesPlug,
  chokeFeed,
  coilSeriesPlug,
  resistanceParallel,
  resistanceSeriesFeed,
  resistanceSeriesPlug,
} from "./part-changes.js";
import type { Change } from "./truth.js";

const unchanged: Change = (before) => ({ after: before, facts: {} });

/** Every change by its name. The order is part of what a seed gives. */
export const MAKE_CHANGE = {
  nothing: unchanged,
  "another-sweep": anotherSweep,
  // The station stays the same: the errors of the calibration are laid over what the analyser sees.
  "another-calibration": unchanged,
  "line-longer": lineLonger,
  "line-shorter": lineShorter,
  "line-75-added": line75Added,
  "lossy-line": lossyLine,
  "dielectric-loss": dielectricLoss,
  "fixed-loss": fixedLoss,
  "reference-changed": referenceChanged,
  "wire-longer": wireLonger,
  "wire-shorter": wireShorter,
  "wire-and-line": wireAndLine,
  height,
  counterpoise,
  "coil-series-plug": coilSeriesPlug,
  "capacitor-series-plug": capacitorSeriesPlug,
  "capacitor-across-plug": capacitorAcrossPlug,
  "resistance-series-plug": resistanceSeriesPlug,
  "resistance-series-feed": resistanceSeriesFeed,
  "resistance-parallel": resistanceParallel,
  "choke-feed": chokeFeed,
  "braid-choked": braidChoked,
  "water-on-wire": waterOnWire,
  "element-detuned": elementDetuned,
} as const satisfies Readonly<Record<string, Change>>;

export type ChangeName = keyof typeof MAKE_CHANGE;

export const CHANGES = Object.keys(MAKE_CHANGE) as readonly ChangeName[];

const NEEDS: Readonly<Partial<Record<ChangeName, Trait>>> = {
  height: "height",
  counterpoise: "counterpoise",
  "element-detuned": "detune",
  "braid-choked": "braid",
};

/** Whether the change has a meaning for the family: a dipole has no trap, a whip on the ground no height. */
export function applicable(familyName: FamilyName, change: ChangeName): boolean {
  const need = NEEDS[change];
  const family: Family = FAMILIES[familyName];
  return need === undefined || family.traits.includes(need);
}
