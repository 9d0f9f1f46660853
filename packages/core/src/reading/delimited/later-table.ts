import { ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { isReading } from "../options/column-role.js";
import type { ReadOptions } from "../options/read-options.js";
import type { TextLines } from "../text/text-lines.js";
import { COMMENT_MARK } from "./cells.js";
import type { DelimitedColumns } from "./delimited-columns.js";
import { namesInLine } from "./heading-line.js";
import type { Dialect } from "./table-text.js";

/** A table, and what there is to say of how it was read. */
export interface TableRead {
  readonly table: DelimitedColumns;
  readonly said: readonly Finding[];
}

/** Where what stands above a later table ends, how it is written, and how many rows the later one must have more of. */
export interface Above {
  readonly line: number;
  readonly dialect: Dialect;
  readonly fewest: number;
}

/** Only a line that is no table. */
export const NO_TABLE: Above = {
  line: 1,
  dialect: {
    delimiter: "comma",
    decimal: "point",
    isDecimalStated: false,
    isDelimiterStated: false,
    firstDataLine: 0,
    columns: 0,
  },
  fewest: 0,
};

/** A table below something else; null where there is none that is longer. */
export function laterTable(
  lines: TextLines,
  above: Above,
  options: ReadOptions,
  tableFrom: (line: number) => TableRead,
): TableRead | null {
  if (options.columns !== undefined) return null;
  const line = laterHeader(lines, above, options.port ?? 1);
  const read = line === null ? null : unlessRefused(() => tableFrom(line));
  if (read === null || read.table.frequencyHz.length <= above.fewest) return null;
  return { ...read, said: [finding("caution", "block-left-out", {}, { line: 1 }), ...read.said] };
}

/** The first line below some others that names a frequency and a reading, with numbers below it; null where there is none. */
function laterHeader(lines: TextLines, { line: from, dialect }: Above, port: number): number | null {
  for (let line = from; line < from + FURTHEST_HEADER && lines.has(line + 1); line++) {
    const text = lines.text(line).slice(0, LONGEST_HEADING);
    if (!/^[#!%;*"'|\s]*\p{L}/u.test(text) || !/^[\s"|]*[+-]?[.,]?\d/.test(lines.text(line + 1))) continue;
    const split = namesInLine(text.replace(COMMENT_MARK, ""), dialect, port);
    if (split?.roles.some(isReading)) return line;
  }
  return null;
}

const FURTHEST_HEADER = 400;
/** Characters of a line that are looked at. */
const LONGEST_HEADING = 4000;

/** What is read; null where a {@link ReadError} refuses it. */
function unlessRefused<T>(read: () => T): T | null {
  try {
    return read();
  } catch (error) {
    if (error instanceof ReadError) return null;
    throw error;
  }
}
