import type { Finding } from "../../sweep/finding.js";
import type { Reading } from "../../sweep/reading.js";
import type { Points } from "./arrange.js";
import type { KindOfLine } from "./line-ledger.js";

/** What a reader hands on: points in the file's order, and how they were understood. */
export interface ReadPoints {
  readonly format: "touchstone" | "delimited";
  readonly points: Points;
  /** The series that each point belongs to, by its place among the names; where there are none, their order tells sweeps apart */
  readonly series?: { readonly names: readonly string[]; readonly of: Uint32Array } | null;
  /** What was noted by hand, of each series by itself; absent for tables and sweeps */
  readonly readings?: readonly (readonly Reading[])[];
  /** What became of each line; not told of Touchstone, and of tables in other forms than rows */
  readonly kindOf?: KindOfLine;
  /** Below its header the text is nothing but rows of numbers */
  readonly isPlain?: boolean;
  readonly referenceOhms: number;
  readonly description: string;
  readonly comments: readonly string[];
  readonly findings: readonly Finding[];
}
