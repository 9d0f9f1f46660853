import type { TextLines } from "../text/text-lines.js";
import { splitLines } from "./cells.js";
import type { Dialect } from "./dialect.js";
import type { Header } from "./header.js";

/** A dialect whose rows begin below the header, and have a column for each of its names where they have cells for them. */
export function below({ lineIndex, names }: Header, dialect: Dialect, lines: TextLines): Dialect {
  const firstDataLine = firstRowBelow(lineIndex, dialect, lines);
  if (dialect.delimiter === "space" || names.length <= dialect.columns || !lines.has(firstDataLine)) {
    return { ...dialect, firstDataLine };
  }
  const cells = splitLines([lines.text(firstDataLine)], dialect.delimiter)[0] ?? [];
  return { ...dialect, firstDataLine, columns: cells.length === names.length ? names.length : dialect.columns };
}

/** The first row below a header: above the first plain one stand those whose cells hold remarks, with as many cells. */
function firstRowBelow(lineIndex: number, dialect: Dialect, lines: TextLines): number {
  let first = Math.max(dialect.firstDataLine, lineIndex + 1);
  while (first > lineIndex + 1 && isRowLike(lines.text(first - 1), dialect)) first--;
  return first;
}

const isRowLike = (line: string, { delimiter, columns }: Dialect): boolean =>
  splitLines([line], delimiter)[0]?.length === columns && /^[\s"|]*\d[\d.,]*\s*(?:[kmg]?hz)?\s*["\s,;]/i.test(line);
