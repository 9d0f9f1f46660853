import { ReadError } from "../../input/read-error.js";
import type { ColumnRole } from "../options/column-role.js";
import { guessedColumns } from "../quantities/column-names.js";
import { readCell } from "./cell-grammar.js";
import { splitLine } from "./cells.js";
import type { TableInHz } from "./table-in-hz.js";
import type { TableText } from "./table-text.js";

/** More columns of numbers than names, or more names than columns, leaves open which name belongs to which. */
export function checkWidth(
  roles: readonly ColumnRole[],
  names: readonly string[],
  { columns, unit }: TableInHz,
  { lines, dialect, file }: TableText,
): void {
  const named = names.length > 0 ? names.findLastIndex((name) => name !== "") + 1 : roles.length;
  const count = names.length > 0 ? dialect.columns : columns.length;
  // Words at the end of some rows may have a name, and none in the others.
  const areOther = (more: readonly ColumnRole[]) =>
    names.length > 0 && more.every(({ quantity }) => quantity === "other");
  if (named === count || (named > count && areOther(roles.slice(count)))) return;
  // A first data row longer by empty cells, and text columns without a name, are harmless.
  const cells = splitLine(lines.text(dialect.firstDataLine), dialect.delimiter).slice(named, count);
  if (named < count && cells.every((cell) => readCell(cell, dialect).kind !== "number")) return;
  throw new ReadError({
    code: "ambiguous",
    file,
    line: dialect.firstDataLine + 1,
    found: `${count} columns of numbers, but names for ${named}`,
    expected: "a name for each column",
    remedy: `Say what the ${count} columns hold, "skip" for those to leave out, such as ${guessedColumns(asColumns(roles, count), unit)}.`,
  });
}

/** Roles for so many columns: what is known of the first ones, and nothing of the rest; with names too many, nothing but a frequency. */
const asColumns = (roles: readonly ColumnRole[], count: number): readonly ColumnRole[] =>
  roles.length > count
    ? Array.from({ length: count }, (_, c) => ({ quantity: c === 0 ? "frequency" : "other" }))
    : Array.from({ length: count }, (_, c) => roles[c] ?? { quantity: "other" });
