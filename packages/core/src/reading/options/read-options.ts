import type { ColumnRole } from "./column-role.js";
import type { FrequencyUnit } from "./units.js";

/** What splits the columns of delimited text. Any number of blanks counts as one space. Bars may also frame the rows. */
export type Delimiter = "comma" | "semicolon" | "tab" | "space" | "bar";

/** What stands before the fraction of a number. */
export type DecimalMark = "point" | "comma";

/** In the order in which they are tried. */
export const DELIMITERS: readonly Delimiter[] = ["tab", "semicolon", "comma", "space", "bar"];
export const DECIMAL_MARKS: readonly DecimalMark[] = ["point", "comma"];

/** What the user says about a file. Each one settles its question before anything is guessed. */
export interface ReadOptions {
  /** The file's name, for messages, the label, a date in it, and to break ties; never the source of truth */
  readonly fileName?: string;
  /** Port whose reflection is wanted from an n-port Touchstone file, from 1 (default 1) */
  readonly port?: number;
  /** Reference impedance, Ω, where the file states none (default 50) */
  readonly referenceOhms?: number;
  /** Delimited text only, as all that follow: what splits its columns */
  readonly delimiter?: Delimiter;
  /** What stands before the fraction of its numbers */
  readonly decimal?: DecimalMark;
  /** What its frequencies are in, where the file does not say */
  readonly frequencyUnit?: FrequencyUnit;
  /** What each column holds, from the left; {@link parseColumnRoles} makes it of a text */
  readonly columns?: readonly ColumnRole[];
  /** The reactance column carries its sign although no value in it is negative */
  readonly signedReactance?: boolean;
}

/** Reference impedance where neither file nor user states one, Ω. */
export const DEFAULT_REFERENCE_OHMS = 50;
