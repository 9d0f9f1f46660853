import type { Quantity } from "../options/column-role.js";

/** How far an instrument's scale may reach. */
export interface Scale {
  /** A scale does not end below this, but at a round number that a long run of finely printed readings keeps to */
  readonly leastEnd: number;
  /** Total reflection */
  readonly greatest: number;
}

/** What is true of a quantity, whatever a file calls it. Its words are those of its meanings (see header-words and role-of-meanings). */
export interface QuantityRecord {
  /** How `--columns` calls it; none for what only a header can hold */
  readonly columnName?: string;
  /** What units its cells may have */
  readonly unit?: "hertz" | "ohm" | "siemens" | "angle" | "decibel" | "share" | "power";
  /** A minus sign before its name turns it round */
  readonly isTurnable?: boolean;
  /** Where it falls to zero and rises again as a line does that was folded there, its signs are lost */
  readonly isFoldable?: boolean;
  /** Its instrument's scale may end. Of ρ equal values are no sign of that: much of a sweep may reflect everything */
  readonly scale?: Scale;
}

/** The quantities that a column can hold, in the order in which their names are listed. */
export const QUANTITIES: Readonly<Record<Quantity, QuantityRecord>> = {
  frequency: { columnName: "frequency", unit: "hertz" },
  resistance: { columnName: "r", unit: "ohm" },
  reactance: { columnName: "x", unit: "ohm", isTurnable: true },
  "reactance-magnitude": { columnName: "abs-x", unit: "ohm" },
  "impedance-magnitude": { columnName: "z", unit: "ohm" },
  "impedance-angle": { columnName: "z-angle", unit: "angle", isTurnable: true },
  "parallel-resistance": { columnName: "parallel-r", unit: "ohm" },
  "parallel-reactance": { columnName: "parallel-x", unit: "ohm", isTurnable: true, isFoldable: true },
  conductance: { columnName: "g", unit: "siemens" },
  susceptance: { columnName: "b", unit: "siemens", isTurnable: true, isFoldable: true },
  swr: { columnName: "swr", scale: { leastEnd: 4, greatest: Number.POSITIVE_INFINITY } },
  "return-loss": { columnName: "return-loss", unit: "decibel" },
  "s11-db": { columnName: "s11-db", unit: "decibel" },
  "reflection-magnitude": {
    columnName: "rho",
    unit: "share",
    scale: { leastEnd: Number.POSITIVE_INFINITY, greatest: 1 },
  },
  "reflection-angle": { columnName: "angle", unit: "angle", isTurnable: true },
  "reflection-real": { columnName: "real", isFoldable: true },
  "reflection-imaginary": { columnName: "imaginary", isTurnable: true, isFoldable: true },
  "reflected-power": { columnName: "reflected-power", unit: "share" },
  "forward-power": { columnName: "forward-power", unit: "power" },
  "accepted-power": { columnName: "accepted-power", unit: "share" },
  "reflected-voltage": { columnName: "reflected-voltage" },
  "forward-voltage": { columnName: "forward-voltage" },
  "mismatch-loss": { columnName: "mismatch-loss", unit: "decibel" },
  "admittance-magnitude": { columnName: "y", unit: "siemens" },
  "admittance-angle": { columnName: "y-angle", unit: "angle" },
  other: { columnName: "skip" },
  "impedance-angle-magnitude": {},
  "reflection-angle-magnitude": {},
  angle: { unit: "angle", isTurnable: true },
  real: {},
  imaginary: { isTurnable: true },
  reflection: { scale: { leastEnd: Number.POSITIVE_INFINITY, greatest: 1 } },
  transmission: {},
};
