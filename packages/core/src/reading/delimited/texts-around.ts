import { quote, ReadError } from "../../input/read-error.js";
import type { Delimiter } from "../options/read-options.js";
import { isReferenceName } from "../quantities/reference-statement.js";
import type { TextLines } from "../text/text-lines.js";
import { splitLine } from "./cells.js";
import type { CutRows } from "./table-builder.js";
import type { TableColumn } from "./table-column.js";
import type { Dialect, TableText } from "./table-text.js";

/** Lines that are no rows, looked at for what they state. */
const MOST_TEXTS = 40;

/**
 * What stands above, below and beside the rows of a table, and may state the reference impedance.
 *
 * @param comments the lines above it
 * @param frequency which column holds the frequencies
 */
export function textsAround(
  comments: readonly string[],
  rows: CutRows,
  columns: readonly TableColumn[],
  frequency: number,
  { lines, dialect, file }: TableText,
): readonly string[] {
  const apart = [...rows.leftOut.map(({ line }) => line), ...rows.comments, ...linesWithoutFrequency(rows, frequency)];
  return [
    ...comments,
    ...factsIn(comments, dialect),
    ...apart.slice(0, MOST_TEXTS).map((line) => lines.text(line - 1)),
    ...referenceColumn(columns, file),
    ...besideRows(rows, columns, lines, dialect.delimiter),
    ...rows.remarked.slice(0, 1).map(({ text }) => text),
  ];
}

/** Lines of rows that have words in the place of a frequency, counted from 1: "Ref. impedance,450". */
const linesWithoutFrequency = ({ cells, lines }: CutRows, frequency: number): readonly number[] =>
  [...cells].flatMap(([row, of]) => (of[frequency]?.kind === "text" ? [lines[row] as number] : []));

/** What stands in cells behind the last column that is understood, as notes beside a table do. */
function besideRows(
  { cells, lines }: CutRows,
  columns: readonly TableColumn[],
  text: TextLines,
  delimiter: Delimiter,
): readonly string[] {
  if (delimiter === "space") return [];
  const behind = columns.findLastIndex(({ role }) => role.quantity !== "other") + 1;
  return [...cells.keys()]
    .slice(0, MOST_TEXTS)
    .flatMap((row) => splitLine(text.text((lines[row] as number) - 1), delimiter).slice(behind))
    .filter((cell) => /\p{L}/u.test(cell));
}

/** Names of a reference with the values below them, in a small table of facts above the sweep. */
function factsIn(comments: readonly string[], { delimiter }: Dialect): readonly string[] {
  if (delimiter === "space" || comments.length > MOST_TEXTS) return [];
  const cells = comments.map((comment) => splitLine(comment, delimiter));
  return cells.flatMap((names, i) => {
    const values = cells[i + 1] ?? [];
    return names.flatMap((name, c) =>
      values.length === names.length && isReferenceName(name) ? [`${name}: ${values[c]}`] : [],
    );
  });
}

/** What a column of reference impedances states. @throws ReadError `ambiguous` where they differ from row to row */
function referenceColumn(columns: readonly TableColumn[], file: string): readonly string[] {
  const column = columns.find(({ name, role }) => role.quantity === "other" && isReferenceName(name));
  const values = column?.values.filter((value) => Number.isFinite(value)) ?? [];
  const [first] = values;
  if (column === undefined || first === undefined) return [];
  const other = values.find((value) => value !== first);
  if (other === undefined) return [`${column.name} = ${first}`];
  throw new ReadError({
    code: "ambiguous",
    file,
    found: `the column ${quote(column.name)} holds several reference impedances, ${first} and ${other}`,
    remedy: "Say which one the readings refer to, such as --reference-ohms 50, or split the file.",
  });
}
