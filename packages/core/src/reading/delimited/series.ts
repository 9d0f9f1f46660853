import { type Finding, finding } from "../../sweep/finding.js";
import type { ColumnRole } from "../options/column-role.js";
import type { TextLines } from "../text/text-lines.js";
import { splitLines } from "./cells.js";
import type { Dialect } from "./dialect.js";
import type { NumberTable } from "./table-builder.js";

/** Of the rows this share repeats a frequency where a table holds several series. */
const LEAST_REPEATED_SHARE = 0.3;
/** More values than these name no series. */
const MOST_SERIES = 20;
/** Rows of a longer table are not looked at for what tells series apart. */
const MOST_ROWS = 50_000;
const FEWEST_ROWS = 6;

/** A table with its rows in the order of the series that a column tells apart, and what is said of it. */
export interface SeriesInOrder {
  readonly table: NumberTable;
  readonly findings: readonly Finding[];
}

/**
 * Puts the rows of each series together where a table holds several, one row of each at every frequency, told apart by a column:
 * the antenna, its height, before and after. Each then begins the frequencies anew.
 *
 * @returns null where no column tells series apart
 */
export function seriesInOrder(
  table: NumberTable,
  frequencyIndex: number,
  roles: readonly ColumnRole[],
  names: readonly string[],
  dialect: Dialect,
  lines: TextLines,
): SeriesInOrder | null {
  const frequency = table.columns[frequencyIndex];
  const rows = frequency?.length ?? 0;
  if (frequency === undefined || rows < FEWEST_ROWS || rows > MOST_ROWS) return null;
  if (isAscending(frequency) || rows - new Set(frequency).size < LEAST_REPEATED_SHARE * rows) return null;
  const texts = splitLines(
    Array.from(table.lines, (line) => lines.text(line - 1)),
    dialect.delimiter,
  );
  for (const [c, name] of names.entries()) {
    if (c === frequencyIndex || roles[c]?.quantity !== "other") continue;
    const keys = texts.map((cells) => cells[c] ?? "");
    const values = [...new Set(keys)];
    if (values.length < 2 || values.length > MOST_SERIES || values.includes("")) continue;
    const places = new Set(keys.map((key, row) => `${key}\n${frequency[row]}`));
    if (places.size < rows) continue;
    return {
      table: inOrder(table, keys, values),
      findings: [finding("info", "series-told-apart", { column: name, values })],
    };
  }
  return null;
}

function isAscending(values: Float64Array): boolean {
  for (let i = 1; i < values.length; i++) if (!((values[i] as number) > (values[i - 1] as number))) return false;
  return true;
}

function inOrder(table: NumberTable, keys: readonly string[], values: readonly string[]): NumberTable {
  const order = keys
    .map((key, row) => ({ row, place: values.indexOf(key) }))
    .sort((a, b) => a.place - b.place || a.row - b.row)
    .map(({ row }) => row);
  const places = new Map(order.map((row, place) => [row, place]));
  return {
    ...table,
    columns: table.columns.map((column) => Float64Array.from(order, (row) => column[row] ?? Number.NaN)),
    lines: Uint32Array.from(order, (row) => table.lines[row] ?? 0),
    atLeast: table.atLeast.map((cell) => ({ ...cell, row: places.get(cell.row) ?? cell.row })),
  };
}
