import { ReadError } from "../../input/read-error.js";
import type { Finding } from "../../sweep/finding.js";
import { isReading } from "../options/column-role.js";
import type { ReadOptions } from "../options/read-options.js";
import type { SourceText } from "../text/text.js";
import { linesOf } from "../text/text-lines.js";
import { type DelimitedColumns, readTable } from "./delimited-columns.js";
import { type Above, laterTable, NO_TABLE, type TableRead } from "./later-table.js";

/**
 * The columns of the table in a text. Of several tables it is the first, or a longer one below a first one that is no sweep: a
 * few markers, limits, settings.
 *
 * @throws ReadError where there are no two columns of numbers, or what they hold is not stated
 */
export function readColumns(text: SourceText, options: ReadOptions, findings: Finding[]): DelimitedColumns {
  const lines = linesOf(text);
  const tableFrom = (line: number): TableRead => {
    const said: Finding[] = [];
    return { table: readTable(lines, line, text.file, options, said), said };
  };
  const laterThan = (above: Above) => laterTable(lines, above, options, tableFrom);
  let read: TableRead;
  try {
    const first = tableFrom(0);
    const above = asAbove(first.table);
    read = (above === null ? null : laterThan(above)) ?? first;
  } catch (error) {
    const later = error instanceof ReadError ? laterThan(NO_TABLE) : null;
    if (later === null) throw error;
    read = later;
  }
  findings.push(...read.said);
  return read.table;
}

/** Fewer rows than these above a table this many times longer are markers or the like. */
const FEWEST_OF_SWEEP = 8;
const MUCH_LONGER = 3;

/** A table that may be no sweep, as what stands above another one; null where it is one, or nothing stands below it. */
function asAbove({ roles, frequencyHz, rest }: DelimitedColumns): Above | null {
  const hasReading = roles.some(isReading);
  if (rest === null || (hasReading && frequencyHz.length >= FEWEST_OF_SWEEP)) return null;
  return { ...rest, fewest: hasReading ? MUCH_LONGER * frequencyHz.length : frequencyHz.length };
}
