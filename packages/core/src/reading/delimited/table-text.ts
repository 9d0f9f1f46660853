import type { TextLines } from "../text/text-lines.js";
import type { CellDialect } from "./cell-grammar.js";

/** The dialect of a delimited text and where its numbers stand, decided together from whole lines. */
export interface Dialect extends CellDialect {
  /** Index of the first line of numbers */
  readonly firstDataLine: number;
  /** Cells in most lines of numbers */
  readonly columns: number;
}

/** A text with a table, and how it is written. */
export interface TableText {
  readonly lines: TextLines;
  readonly dialect: Dialect;
  readonly file: string;
  /** Whose reflection is wanted */
  readonly port: number;
}
