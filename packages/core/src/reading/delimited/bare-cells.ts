import { quote, ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import {
  DECIMAL_MARKS,
  DELIMITERS,
  type DecimalMark,
  type Delimiter,
  type ReadOptions,
} from "../options/read-options.js";
import { roleFromHeader } from "../quantities/columns.js";
import { wordsOf } from "../quantities/name-words.js";
import { rewritten, type SourceText } from "../text/text.js";
import { linesOf } from "../text/text-lines.js";
import { DELIMITER_CHARACTERS, isComment, readCell, splitLines } from "./cells.js";
import { bareCell, type ColumnDress, type ColumnTitle, doubtIn, dressOf } from "./column-dress.js";
import type { Dialect } from "./dialect.js";
import { dressedNumber, mayBeDressed, withUnitsJoined } from "./dressed-number.js";
import { findHeader } from "./header.js";

/** Bytes at a text's end that are looked at first: a look that costs next to nothing. */
const SAMPLE = 500;
/** What stands before a number that is one's least. */
const BOUND = /^[>≥⩾]=?\s*/;

/** A text whose cells hold nothing beside their numbers, what there is to say of it, and how it is to be read. */
interface BareText {
  readonly text: SourceText;
  readonly options: ReadOptions;
  readonly findings: readonly Finding[];
}

/**
 * The same text without the units beside its numbers ("7.1 MHz") and the marks between their thousands ("7.100.000"), where they
 * stand throughout: below a header that names each column, or the user's word for them, all lines to the end are rows of the
 * same columns, each written in one way. Where rows have units of different size, all are brought to one by a power of
 * ten. No line is added or lost.
 *
 * @returns null for any other text
 * @throws ReadError `ambiguous` where a mark between the thousands of one column may be the decimal mark of another; `bad-row`
 *   where it does not stand before three digits
 */
export function withBareCells(text: SourceText, options: ReadOptions): BareText | null {
  const delimiter = delimiterOfDressedEnd(text, options);
  const table = delimiter === null ? null : tableOf(text, delimiter, options);
  if (table === null) return null;
  const columns = table.titles.map((_, c) => table.rows.map(({ cells }) => cells[c] as string));
  const dresses: ColumnDress[] = [];
  for (const [c, title] of table.titles.entries()) {
    const dress = dressOf(columns[c] as readonly string[], title, options.port ?? 1);
    if (dress === null) return null;
    dresses.push(dress);
  }
  const settled = withDoubtSettled(dresses, columns, options.decimal, text.file);
  return { text: rewritten(text, bareLines(table, settled, text.file).join("\n")), ...whatIsSaid(settled, options) };
}

/** How the last two rows of a text are split, where one of them holds such cells. */
function delimiterOfDressedEnd({ bytes, decode }: SourceText, options: ReadOptions): Delimiter | null {
  const start = Math.max(0, bytes.length - SAMPLE);
  const end = decode(start, bytes.length);
  if (!mayBeDressed(end)) return null;
  const lines = linesIn(end).slice(start === 0 ? 0 : 1);
  const last = lines.filter((line) => !isPassedOver(line)).slice(-2);
  const candidates = options.delimiter === undefined ? DELIMITERS : [options.delimiter];
  return candidates.find((delimiter) => split(last, delimiter).some((row) => isDressed(row, delimiter))) ?? null;
}

/** The lines of a text up to a Ctrl-Z, which ends it. */
const linesIn = (text: string): readonly string[] => (text.split("\u001a")[0] ?? "").split(/\r\n|\n|\r/);

const split = (lines: readonly string[], delimiter: Delimiter): readonly (readonly string[])[] =>
  splitLines(delimiter === "space" ? lines.map(withUnitsJoined) : lines, delimiter);

const isNumber = (cell: string): boolean =>
  dressedNumber(cell) !== null || DECIMAL_MARKS.some((decimal) => readCell(cell, decimal).kind === "number");

const isNumeric = (cell: string): boolean =>
  isNumber(cell) || DECIMAL_MARKS.some((decimal) => readCell(cell, decimal).kind !== "text");

const areNumbers = (row: readonly string[]): boolean =>
  row.length >= 2 && row.every(isNumeric) && isNumber(row[0] as string);

/** Whether cells are a row of numbers, with a unit or marked thousands in one of them. */
function isDressed(row: readonly string[], delimiter: Delimiter): boolean {
  if (!areNumbers(row)) return false;
  const numbers = row.map(dressedNumber).filter((number) => number !== null);
  // Blanks may split columns beside commas and tabs: "7,500 100,0" is no 500 100, and "144 100<tab>200" no 144 100.
  if (delimiter !== "semicolon" && numbers.some(({ mark }) => mark === " ")) return false;
  return numbers.some(({ unit, mark }) => unit !== null || mark !== null);
}

/** The lines of a text, the last ones of them a table. */
interface Table {
  readonly lines: readonly string[];
  readonly delimiter: Delimiter;
  /** Line of the header; null where the user says what the columns hold */
  readonly header: number | null;
  readonly titles: readonly ColumnTitle[];
  /** The rows of numbers, each with its line */
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
}

const isPassedOver = (line: string): boolean => line.trim() === "" || isComment(line);

/** null where not all lines below the first row are rows like it, or a header does not name each column. */
function tableOf(text: SourceText, delimiter: Delimiter, options: ReadOptions): Table | null {
  const lines = linesIn(text.decode(0, text.bytes.length));
  const cells = split(lines, delimiter);
  const first = cells.findIndex(areNumbers);
  const width = cells[first]?.length ?? 0;
  // A quote or a stray character may have joined lines.
  if (first < 0 || cells.length !== lines.length) return null;
  const rows = cells
    .map((row, line) => ({ line, cells: row }))
    .filter(({ line }) => line >= first && !isPassedOver(lines[line] as string));
  if (!rows.every((row) => row.cells.length === width && areNumbers(row.cells))) return null;
  const { columns, port } = options;
  if (columns !== undefined) {
    const titles = columns.map((role, c) => ({ name: `column ${c + 1}`, role, isNamed: false }));
    return titles.length === width ? { lines, delimiter, header: null, titles, rows } : null;
  }
  const header = headerOf(text, lines, { delimiter, decimal: "point", firstDataLine: first, columns: width }, port);
  if (header === null || isPlainOtherwise([lines[header] as string, lines[first] as string], delimiter)) return null;
  const names = cells[header] as readonly string[];
  const titles = names.map((name) => ({ name, role: roleFromHeader(name, port), isNamed: true }));
  return { lines, delimiter, header, titles, rows };
}

/** The line of the header, where that is the last one above the rows and the one that the names are read from later, as it is. */
function headerOf(text: SourceText, lines: readonly string[], dialect: Dialect, port = 1): number | null {
  const last = lines.slice(0, dialect.firstDataLine).findLastIndex((line) => line.trim() !== "");
  const source = linesOf(text);
  // Lines are found as they are asked for.
  const found = source.has(dialect.firstDataLine) ? findHeader(source, dialect, port) : null;
  const names = splitLines([lines[last] ?? ""], dialect.delimiter)[0] ?? [];
  if (found?.lineIndex !== last || names.length !== dialect.columns) return null;
  if (names.some((name) => /^[+-]?[.,]?\d/.test(name))) return null;
  return names.every((name, c) => wordsOf(name).join() === wordsOf(found.names[c] ?? "").join()) ? last : null;
}

/** Whether header and row are as wide as each other by another delimiter too, with nothing beside the numbers. */
function isPlainOtherwise(headerAndRow: readonly string[], delimiter: Delimiter): boolean {
  return DELIMITERS.filter((other) => other !== delimiter).some((other) => {
    const [names = [], row = []] = splitLines(headerAndRow, other);
    return names.length === row.length && areNumbers(row) && !isDressed(row, other);
  });
}

function bareLines(table: Table, dresses: readonly ColumnDress[], file: string): readonly string[] {
  const character = DELIMITER_CHARACTERS[table.delimiter];
  const joined = (cells: readonly string[]) =>
    cells.map((cell) => (cell.includes(character) ? `"${cell}"` : cell)).join(character);
  const lines = [...table.lines];
  if (table.header !== null) lines[table.header] = joined(dresses.map(({ name }) => name));
  for (const { line, cells } of table.rows) {
    lines[line] = joined(cells.map((cell, c) => bareCell(cell, dresses[c] as ColumnDress, { file, line: line + 1 })));
  }
  return lines;
}

/**
 * Settles by the user's word what may be a fraction or more than a thousand: "1.523" beside "7.100.000", "14.100 kHz", "1.234 ohm"
 * beside "980 ohm".
 */
function withDoubtSettled(
  dresses: readonly ColumnDress[],
  columns: readonly (readonly string[])[],
  decimal: DecimalMark | undefined,
  file: string,
): readonly ColumnDress[] {
  const certain = dresses.map(({ mark }) => mark).find((mark) => mark === "." || mark === ",") ?? null;
  return dresses.map((dress, c) => {
    const cells = (columns[c] as readonly string[]).map((cell) => cell.replace(BOUND, ""));
    const doubt = dress.mark === null ? doubtIn(cells, dress.unit, certain) : null;
    if (doubt === null || decimal === (doubt.mark === "." ? "point" : "comma")) return dress;
    if (decimal !== undefined) return { ...dress, mark: doubt.mark };
    throw new ReadError({
      code: "ambiguous",
      file,
      found: `${quote(doubt.cell)} may be a fraction or a number above a thousand`,
      remedy: "Say which mark fractions have: --decimal point or --decimal comma.",
    });
  });
}

/** The findings about what was taken out, and the options without a unit of frequency where the cells state one. */
function whatIsSaid(dresses: readonly ColumnDress[], options: ReadOptions): Omit<BareText, "text"> {
  const findings: Finding[] = [];
  const mark = dresses.find((dress) => dress.mark !== null)?.mark ?? null;
  if (mark !== null) {
    findings.push(finding("info", "thousands-marked", { mark }));
  }
  const units = [...new Set(dresses.flatMap(({ unit }) => unit?.name ?? []))];
  if (units.length > 0) {
    findings.push(finding("info", "units-in-cells", { units }));
  }
  const { frequencyUnit: asked, ...others } = options;
  const told = options.columns === undefined ? others : { ...others, columns: dresses.map(({ role }) => role) };
  const stated = dresses.find(({ role }) => role.quantity === "frequency")?.unit ?? null;
  if (stated === null) return { options: asked === undefined ? told : { ...told, frequencyUnit: asked }, findings };
  if (asked !== undefined && asked !== stated.name) {
    findings.push(finding("caution", "unit-stated", { where: "cells", unit: stated.name, given: asked }));
  }
  return { options: told, findings };
}
