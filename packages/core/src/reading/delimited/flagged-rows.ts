import { quote } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { splitLines } from "./cells.js";
import type { TableOfSeries } from "./table-of-series.js";
import type { TableText } from "./table-text.js";

/** Names of columns that say of each row whether it counts, and the words for one that does not (from memory). */
const TELLS = /^\W*(?:valid(?:ity)?|usable|gültig|valide)\W*$/iu;
const IS_NOT = /^(?:n|no|false|0|nein|non|f|✗|✘)$/iu;

/** That some rows are told not to count; they were read. */
export function flaggedRows({ columns, rows }: TableOfSeries, { lines, dialect }: TableText): readonly Finding[] {
  const place = columns.findIndex(({ name, isNamed }) => isNamed && TELLS.test(name));
  if (place < 0 || columns.length !== dialect.columns) return [];
  const texts = splitLines(
    Array.from(rows.lines, (line) => lines.text(line - 1)),
    dialect.delimiter,
  );
  const flagged = [...rows.lines].filter((_, row) => IS_NOT.test(texts[row]?.[place] ?? ""));
  const [first] = flagged;
  if (first === undefined) return [];
  const text = quote(lines.text(first - 1).trim());
  return [finding("caution", "cells-remarked", { text, count: flagged.length }, { line: first })];
}
