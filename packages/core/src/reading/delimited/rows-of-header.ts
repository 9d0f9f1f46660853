import type { TextLines } from "../text/text-lines.js";
import { beginsWithMark, splitLine } from "./cells.js";
import { REACH } from "./header.js";
import { type Header, rolesOf } from "./heading-line.js";
import { holdsRow } from "./lines-of-table.js";
import { namesIn } from "./listed-columns.js";
import type { Dialect } from "./table-text.js";

/** A header that was found below the last of the numbers as the names of the columns above it; any other as it is. */
export function namingAbove(header: Header, lines: TextLines, dialect: Dialect, port: number): Header {
  const { lineIndex, names } = header;
  if (lineIndex < dialect.firstDataLine || hasRowBelow(lines, lineIndex, dialect)) return header;
  const listed = namesIn([lines.text(lineIndex)], dialect.columns) ?? names;
  return { names: listed, roles: rolesOf(listed, port), lineIndex: -1, titles: [] };
}

function hasRowBelow(lines: TextLines, lineIndex: number, dialect: Dialect): boolean {
  for (let line = lineIndex + 1; line < lineIndex + REACH && lines.has(line); line++) {
    if (holdsRow(lines.text(line), dialect)) return true;
  }
  return false;
}

/** A dialect whose rows begin below the header, and have a column for each of its names where they have cells for them. */
export function below({ lineIndex, names, roles }: Header, dialect: Dialect, lines: TextLines): Dialect {
  if (lineIndex < 0) return dialect;
  const firstDataLine = firstRowBelow(lineIndex, dialect, lines);
  if (dialect.delimiter === "space" || names.length <= dialect.columns || !lines.has(firstDataLine)) {
    return { ...dialect, firstDataLine };
  }
  const cells = splitLine(lines.text(firstDataLine), dialect.delimiter);
  const areRemarks = roles.slice(dialect.columns).every(({ quantity }) => quantity === "other");
  const hasAll = cells.length === names.length || areRemarks;
  return { ...dialect, firstDataLine, columns: hasAll ? names.length : dialect.columns };
}

/** The first line below a header that begins as a row of numbers does; above the first plain one stand those with remarks. */
function firstRowBelow(lineIndex: number, dialect: Dialect, lines: TextLines): number {
  const first = Math.max(dialect.firstDataLine, lineIndex + 1);
  for (let line = lineIndex + 1; line < first; line++) {
    const text = lines.text(line);
    if (isRowLike(text) || beginsWithMark(text, dialect.delimiter, dialect.columns) || isNamedRow(text, dialect))
      return line;
  }
  return first;
}

/** Whether numbers stand behind a word in as many cells as there are columns: of a column that is filled in some rows only. */
const isNamedRow = (line: string, dialect: Dialect): boolean =>
  dialect.delimiter !== "space" &&
  splitLine(line, dialect.delimiter).length >= dialect.columns &&
  holdsRow(line, dialect);

/** Whether a line begins as a row of numbers does. */
const isRowLike = (line: string): boolean => /^[\s"|~>]*\d[\d.,]*\s*(?:[kmg]?hz)?\s*["\s,;|]/i.test(line);
