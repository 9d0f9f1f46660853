import { roleFromHeader } from "../quantities/columns.js";
import { BAR, COMMA, POINT, SEMICOLON, SPACE, TAB } from "../text/ascii.js";
import { linesFrom, scanPlainRows } from "../text/plain-rows.js";
import { scanNumber } from "../text/scan-numbers.js";
import type { TextLines } from "../text/text-lines.js";
import { type CellValue, isComment, readCell, splitLines } from "./cells.js";
import type { Dialect } from "./dialect.js";
import { namesOtherColumns } from "./header.js";
import { frequencyInCell, remarkedNumber } from "./remarks.js";
import { type NumberTable, TableBuilder } from "./table-builder.js";

const LONGEST_HEADING = 1000;
/** Where numbers are scanned to before they are put into their column. */
const scanned = new Float64Array(1);
const DELIMITER_BYTES = { comma: COMMA, semicolon: SEMICOLON, tab: TAB, space: SPACE, bar: BAR } as const;

/**
 * Reads the rows from the first line of numbers to the end of their block.
 *
 * Plain rows are scanned from the bytes; any other row (quotes, missing cells, "> 10", text) is split by papaparse. Both
 * ways give the same numbers.
 *
 * @param header the header's cells; a line like it is a repeat, another one begins another table
 * @param shifts for each column, the power of ten that its values are multiplied by
 * @param hasOwnUnits whether frequencies may have their unit beside them
 */
export function readTable(
  lines: TextLines,
  dialect: Dialect,
  shifts: readonly number[],
  header: readonly string[],
  hasOwnUnits = false,
): NumberTable {
  const plain = plainTable(lines, dialect, shifts);
  if (plain !== null) return plain;
  const table = new TableBuilder(dialect.columns);
  let next: number | null = null;
  // Between blanks a cell that is missing cannot be told from the one after it.
  const fewest = dialect.delimiter === "space" ? numbersIn(lines.text(dialect.firstDataLine), dialect) : 0;
  for (let line = dialect.firstDataLine; lines.has(line); line++) {
    if (scanPlainRow(lines, line, dialect, shifts, table)) {
      table.endRow(line + 1);
      continue;
    }
    const text = lines.text(line).trim();
    if (text === "") continue;
    if (/^["']?\s*(begin|end)\b/i.test(text)) {
      next = lineOfMoreNumbers(lines, line + 1, dialect);
      if (next !== null) break;
      continue;
    }
    if (isAnotherHeading(text, dialect, header) && startsWithNumber(lines, line + 1)) {
      next = line + 1;
      break;
    }
    if (isComment(text)) {
      table.note(line + 1);
      continue;
    }
    readSplitRow(text, line + 1, dialect, { shifts, hasOwnUnits, fewest }, table);
  }
  return { ...table.build(), nextBlockLine: next };
}

/** The rest of the text, where it is nothing but full rows of numbers. */
function plainTable(lines: TextLines, dialect: Dialect, shifts: readonly number[]): NumberTable | null {
  const { firstDataLine, delimiter, decimal } = dialect;
  const plain = scanPlainRows(lines.bytes, lines.start(firstDataLine), {
    delimiter: delimiter === "space" ? null : DELIMITER_BYTES[delimiter],
    decimalMark: decimal === "comma" ? COMMA : POINT,
    shifts,
  });
  if (plain === null) return null;
  return {
    columns: plain.columns,
    lines: linesFrom(firstDataLine + 1, plain.count),
    atLeast: [],
    strange: [],
    notes: [],
    remarked: [],
    nextBlockLine: null,
  };
}

/**
 * Whether a line, behind a comment mark perhaps, names columns otherwise than the header does, so that another
 * table begins if numbers follow. So does one under words, as many as there are columns.
 */
function isAnotherHeading(text: string, dialect: Dialect, header: readonly string[]): boolean {
  if (header.length === 0 || text.length > LONGEST_HEADING) return false;
  if (!/^[#!%;*"'\s]*\p{L}|^#/u.test(text)) return false;
  const cells = splitLines([text], dialect.delimiter)[0] ?? [];
  if (cells.some((cell) => /(?:^|\s)\d/.test(cell))) return false;
  if (namesOtherColumns(text, dialect, header)) return true;
  const areWords = cells.length === dialect.columns && cells.every((cell) => /^\p{L}{2,}/u.test(cell));
  const isKnown = cells.some((cell) => roleFromHeader(cell).quantity !== "other");
  return areWords && !isKnown && dialect.delimiter !== "space" && !isComment(text);
}

const startsWithNumber = (lines: TextLines, line: number): boolean =>
  lines.has(line) && /^[\s"]*[+-]?[.,]?\d/.test(lines.text(line));

/** How many of a row's cells hold a number, or stand for one. */
const numbersIn = (text: string, { delimiter, decimal, columns }: Dialect): number =>
  (splitLines([text.trim()], delimiter)[0] ?? [])
    .slice(0, columns)
    .filter((cell) => readCell(cell, decimal).kind !== "text").length;

/** The first line from `from` on that is a plain row of numbers, counted from 1. */
function lineOfMoreNumbers(lines: TextLines, from: number, dialect: Dialect): number | null {
  const ignored = new TableBuilder(dialect.columns);
  const none = new Array<number>(dialect.columns).fill(0);
  for (let line = from; lines.has(line); line++) {
    if (scanPlainRow(lines, line, dialect, none, ignored)) return line + 1;
  }
  return null;
}

/** Scans a row that holds a number in every column and nothing else. @returns false, with nothing kept, for any other */
function scanPlainRow(
  lines: TextLines,
  line: number,
  dialect: Dialect,
  shifts: readonly number[],
  table: TableBuilder,
): boolean {
  const { bytes } = lines;
  const delimiter = DELIMITER_BYTES[dialect.delimiter];
  const mark = dialect.decimal === "comma" ? COMMA : POINT;
  const isSpaced = dialect.delimiter === "space";
  const end = lines.end(line);
  let position = lines.start(line);
  for (let column = 0; column < dialect.columns; column++) {
    while (position < end && isBlank(bytes[position] as number, delimiter)) position++;
    const next = scanNumber(bytes, position, shifts[column] ?? 0, mark, scanned, 0);
    if (next < 0 || !Number.isFinite(scanned[0] as number)) return false;
    table.put(column, scanned[0] as number);
    position = next;
    const before = position;
    while (position < end && isBlank(bytes[position] as number, delimiter)) position++;
    if (position >= end) return column === dialect.columns - 1;
    if (isSpaced) {
      if (position === before) return false;
    } else if (bytes[position++] !== delimiter) return false;
  }
  // What follows the last column may only be an empty cell or blanks.
  while (position < end && isBlank(bytes[position] as number, delimiter)) position++;
  return position >= end;
}

/** Blanks around a number; a tab is one unless it is the delimiter. With blanks as delimiter all of them are skipped. */
const isBlank = (byte: number, delimiter: number) => byte === SPACE || (byte === TAB && delimiter !== TAB);

function readSplitRow(
  text: string,
  line: number,
  dialect: Dialect,
  {
    shifts,
    hasOwnUnits,
    fewest,
  }: { readonly shifts: readonly number[]; readonly hasOwnUnits: boolean; readonly fewest: number },
  table: TableBuilder,
): void {
  const cells = splitLines([text], dialect.delimiter)[0] ?? [];
  const last = cells.findLastIndex((cell) => cell !== "");
  let numbers = 0;
  for (let column = 0; column < dialect.columns; column++) {
    const text = cells[column] ?? "";
    const hz = hasOwnUnits ? frequencyInCell(text, dialect.decimal) : null;
    const cell: CellValue =
      hz !== null
        ? { kind: "number", value: hz }
        : cellWithRemark(text, dialect, shifts[column] ?? 0, () => table.remark(line, text));
    if (cell.kind === "number") {
      numbers++;
      table.put(column, cell.value);
    } else if (cell.kind === "at-least") table.putAtLeast(column, cell.value);
    else table.put(column, Number.NaN);
  }
  // Words behind the last column are a remark on the row; numbers there belong to another kind of row.
  const more = cells.slice(dialect.columns).filter((cell) => cell !== "");
  const hasMoreNumbers = more.some(
    (cell) => dialect.delimiter === "space" || readCell(cell, dialect.decimal).kind !== "text",
  );
  const isShort = cells.length < dialect.columns && numbers < fewest;
  if (last < 0) table.dropRow();
  else if (numbers === 0 || hasMoreNumbers || isShort) table.dropStrange(line);
  else table.endRow(line);
}

/** A cell as it stands, or the number in it where it holds one and a remark, which is told. */
function cellWithRemark(text: string, dialect: Dialect, shift: number, tell: () => void): CellValue {
  const plain = readCell(text, dialect.decimal, shift);
  if (plain.kind !== "text" || !/\d/.test(text)) return plain;
  const remarked = remarkedNumber(text, dialect.decimal, dialect.delimiter === "comma");
  if (remarked === null) return plain;
  tell();
  return remarked.kind === "number" ? { ...remarked, value: remarked.value * 10 ** shift } : remarked;
}
