import { LEAST_FREQUENCY } from "../quantities/frequency-unit.js";
import { splitLines } from "./cells.js";
import type { CutRows } from "./table-builder.js";
import type { TableColumn } from "./table-column.js";
import type { TableText } from "./table-text.js";

/** Rows in which marks are looked for. */
const ROWS_FOR_MARKS = 50;

/**
 * Columns of which the one of frequencies was taken for fractions and holds thousands: "21,000" beside "5.97".
 *
 * @param index of the frequencies among the columns
 * @param place of the frequencies among the cells of a row
 */
export function withThousands(
  columns: readonly TableColumn[],
  index: number,
  place: number,
  rows: CutRows,
  { lines, dialect }: TableText,
): readonly TableColumn[] {
  if (dialect.delimiter === "comma" || dialect.delimiter === "space") return columns;
  const texts = Array.from(rows.lines.subarray(0, ROWS_FOR_MARKS), (line) => lines.text(line - 1));
  const cells = splitLines(texts, dialect.delimiter);
  const beside = cells.flatMap((row) => row.filter((_, c) => c !== place));
  const ofFrequency = cells.map((row) => row[place] ?? "");
  const thousands = markIn(ofFrequency, beside);
  if (thousands === null) return columns;
  const isTaken = ({ mark, values }: TableColumn) => mark === null && (values[0] ?? 0) < LEAST_FREQUENCY;
  const inOnes = (column: TableColumn): TableColumn => ({
    ...column,
    values: column.values.map((value) => value * 1000),
    mark: thousands,
  });
  return columns.map((column, c) => (c === index && isTaken(column) ? inOnes(column) : column));
}

/** The mark between the thousands of numbers, as printed, which the decimal marks of others tell; null where there is none. */
function markIn(printed: readonly string[], beside: readonly string[]): "," | "." | null {
  const [points, commas] = [/^[+-]?\d*\.\d+$/, /^[+-]?\d+,\d+$/].map((fraction) =>
    beside.some((text) => fraction.test(text)),
  );
  const grouped = points ? /^[1-9]\d{0,2},\d{3}(?: ?[kmg]?Hz)?$/i : /^[1-9]\d{0,2}\.\d{3}(?: ?[kmg]?Hz)?$/i;
  if (points === commas || printed.length === 0 || !printed.every((text) => grouped.test(text))) return null;
  return points ? "," : ".";
}
