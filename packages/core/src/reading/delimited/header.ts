import { isReading } from "../options/column-role.js";
import type { TextLines } from "../text/text-lines.js";
import { beginsWithMark, COMMENT_MARK, DELIMITER_CHARACTERS, splitLine, splitLines } from "./cells.js";
import type { Dialect } from "./dialect.js";
import { holdsRow } from "./lines-of-table.js";
import { type ColumnNames, namesInLine, rolesOf } from "./names-in-line.js";
import { frequencyUnitIn } from "./preamble.js";
import { asUnits, asUnitsBelow } from "./row-of-units.js";

/** The header of a delimited text: what each column holds, as far as the text says. */
export interface Header extends ColumnNames {
  /** Index of the header's line */
  readonly lineIndex: number;
}

/** How far above the numbers a header is looked for. */
const REACH = 200;
/** Characters of a line that are looked at. */
const LONGEST_HEADER = 4000;
const RULE_LINE = /^[\s\-=_+|*~.]*$/;
/**
 * Finds the header: the nearest line of words above the numbers that names a frequency. It may be split otherwise than
 * the numbers are, stand behind a comment mark, and have a row of units below or above it. Where none stands above, one
 * below the first numbers is looked for: what stands above that was preamble.
 */
export function findHeader(lines: TextLines, dialect: Dialect, port: number): Header | null {
  let units: readonly string[] | null = null;
  for (let i = dialect.firstDataLine - 1; i >= Math.max(0, dialect.firstDataLine - REACH); i--) {
    const line = contentOf(lines, i, dialect);
    if (RULE_LINE.test(line)) continue;
    const rowOfUnits =
      asUnits(line, dialect) ?? (i > 0 ? asUnitsBelow(line, contentOf(lines, i - 1, dialect), dialect, port) : null);
    if (rowOfUnits !== null) {
      units = rowOfUnits;
      continue;
    }
    const split = namesInLine(line, dialect, port);
    // "frequency unit MHz" names a frequency, and heads no column.
    if (split === null || (!split.roles.some(isReading) && isStatement(line, dialect))) continue;
    const above = units ?? (i > 0 ? asUnits(contentOf(lines, i - 1, dialect), dialect) : null);
    if (above === null) return { ...split, lineIndex: i };
    const names = split.names.map((name, c) => (above[c] ? `${name} (${above[c]})` : name));
    return { roles: rolesOf(names, port), names, lineIndex: i };
  }
  for (let i = dialect.firstDataLine + 1; i < dialect.firstDataLine + REACH && lines.has(i); i++) {
    const split = namesInLine(contentOf(lines, i, dialect), dialect, port);
    if (split !== null) return { ...split, lineIndex: i };
  }
  return null;
}

/** Whether a line states the unit of frequency and is no row of names. */
const isStatement = (line: string, { delimiter, columns }: Dialect): boolean =>
  frequencyUnitIn([line]) !== null && (delimiter === "space" || splitLine(line, delimiter).length !== columns);

/** A line without its comment mark. A mark before a delimiter, or a delimiter itself, may head a column of row numbers. */
function contentOf(lines: TextLines, line: number, dialect: Dialect): string {
  const text = lines.text(line).slice(0, LONGEST_HEADER);
  const content = text.replace(COMMENT_MARK, "");
  const { delimiter } = dialect;
  if (delimiter === "bar" && content.startsWith(DELIMITER_CHARACTERS.bar)) return text;
  if (delimiter === "space" || !text.slice(0, -content.length).includes(DELIMITER_CHARACTERS[delimiter]))
    return content;
  const [header, first, second] = splitLines(
    [text, ...lines.texts(dialect.firstDataLine, dialect.firstDataLine + 2)],
    delimiter,
  );
  if (header?.length !== first?.length) return content;
  // A delimiter at the end of the rows may make up for the mark; row numbers then tell.
  return first?.at(-1) !== "" || Number(second?.[0]) === Number(first[0]) + 1 ? text : content;
}

/** A dialect whose rows begin below the header, and have a column for each of its names where they have cells for them. */
export function below({ lineIndex, names, roles }: Header, dialect: Dialect, lines: TextLines): Dialect {
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
  splitLine(line, dialect.delimiter).length === dialect.columns &&
  holdsRow(line, dialect);

/** Whether a line begins as a row of numbers does. */
const isRowLike = (line: string): boolean => /^[\s"|~>]*\d[\d.,]*\s*(?:[kmg]?hz)?\s*["\s,;|]/i.test(line);
