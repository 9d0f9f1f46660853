/** What is known of a file because it was made: what a careful person would read from it. */
import type { Layout } from "./layout.js";

/** The printed number is a bound of the SWR (">10", "<1.1"). */
type Bound = "atLeast" | "atMost";

/** One point as it was before printing, with what rounding may have done to it. */
export interface TruthPoint {
  hz: number;
  hzTol: number;
  re: number;
  im: number;
  /** How far Γ, and how far its magnitude, may be off by the rounding of what was printed. */
  tol: number;
  tolRho: number;
  bound?: Bound;
  /** May be left out if the reader gives a caution. */
  droppable?: boolean;
  /** May be left out in silence. */
  optional?: boolean;
}

export interface TruthSweep {
  /** Has a phase, has none, or may be read either way. */
  vector: boolean | "either";
  reference: number;
  points: TruthPoint[];
  /** Points beyond those of the truth that are let pass (a slipped row left where it was printed). */
  extra?: number;
}

/** A reading by hand: any frequency from low to high, one of these SWR values. */
export interface Reading {
  low: number;
  high: number;
  swr: number[];
  bound?: Bound;
  droppable?: boolean;
  optional?: boolean;
}

export type Truth =
  /** Any of the ways is right; with `doubt`, only with a caution (one of two ways otherwise). */
  | { kind: "sweeps"; ways: TruthSweep[][]; doubt?: boolean }
  /** In one sweep, or in one for each of the sets. */
  | { kind: "readings"; readings: Reading[]; sets?: Reading[][] }
  /** Cannot be told from the file; at times a caution does as well as a question. */
  | { kind: "refuse"; cautionSuffices: boolean };

/** A file as lines, with its truth. */
export interface Draft {
  /** Which habit of writing it shows. */
  variant: string;
  lines: string[];
  layout: Layout;
  truth: Truth;
  /** A person reads it without doubt. If not, a refusal (a question) is fair. */
  clear: boolean;
  /** Reading it without a caution is a fault even if the numbers are right. */
  mustCaution: boolean;
  /** Where the ending of the name belongs to the layout. */
  fileName?: string | undefined;
}

/** A file as bytes, ready to be read. */
export interface Case extends Draft {
  group: string;
  index: number;
  text: string;
  bytes: Uint8Array;
  fileName: string;
}
