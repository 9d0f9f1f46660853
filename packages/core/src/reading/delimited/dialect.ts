import { quote, ReadError } from "../../input/read-error.js";
import type { DecimalMark, Delimiter, ReadOptions } from "../options/read-options.js";
import type { TextLines } from "../text/text-lines.js";
import { type CellDialect, DELIMITER_CHARACTERS, readCell, splitLines } from "./cells.js";
import { hasUnitBeside } from "./dressed-number.js";

/** The dialect of a delimited text and where its numbers stand, decided together from whole lines. */
export interface Dialect extends CellDialect {
  /** Index of the first line of numbers */
  readonly firstDataLine: number;
  /** Cells in most lines of numbers */
  readonly columns: number;
}

/** Every way of writing that is tried. */
const CANDIDATES: readonly CellDialect[] = [
  { delimiter: "tab", decimal: "point" },
  { delimiter: "semicolon", decimal: "point" },
  { delimiter: "comma", decimal: "point" },
  { delimiter: "tab", decimal: "comma" },
  { delimiter: "semicolon", decimal: "comma" },
  { delimiter: "space", decimal: "point" },
  { delimiter: "space", decimal: "comma" },
  { delimiter: "bar", decimal: "point" },
  { delimiter: "bar", decimal: "comma" },
  // Only quotes make this one possible: "6,900","3,62".
  { delimiter: "comma", decimal: "comma" },
];
/** Lines looked at to decide: few where they leave no doubt, else many. The rest is read so, and checked. */
const FEW_LINES = 40;
const MANY_LINES = 2000;
/** Rows in which readings that are equally good are compared. */
const COMPARED_ROWS = 50;

interface Evidence {
  readonly dialect: Dialect;
  readonly dataLines: number;
  /** Whether any number is written with the decimal mark */
  readonly hasFractions: boolean;
  /** The cells of the rows of numbers that were looked at, to see whether another reading says the same */
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
}

/**
 * Decides delimiter, decimal mark and the place of the numbers together: the reading under which the most lines are
 * rows of numbers of one width wins.
 *
 * @throws ReadError `no-data` where no reading gives two columns of numbers; `ambiguous` where two different ones are
 *   equally good
 */
export function decideDialect(lines: TextLines, options: ReadOptions, file: string): Dialect {
  const start = firstPossibleRow(lines);
  const firstLines = lines.texts(start, start + FEW_LINES);
  // A line that begins with a number may still be a title: one further down is looked at as well.
  const looked = [firstLines[0] ?? "", firstLines[firstLines.length >> 1] ?? ""];
  const candidates = CANDIDATES.filter(
    ({ delimiter, decimal }) =>
      (options.delimiter === undefined || delimiter === options.delimiter) &&
      (options.decimal === undefined || decimal === options.decimal) &&
      looked.some((line) => occurs(delimiter, line)),
  );
  const few = bestReadings(candidates, lines, start, FEW_LINES);
  // Whole numbers at the start may hide a decimal comma that comes later.
  const isClear = few.length === 1 && (few[0]?.dataLines ?? 0) >= FEW_LINES / 2 && few[0]?.hasFractions === true;
  const best = isClear ? few : bestReadings(candidates, lines, start, MANY_LINES);
  // Blanks beside tabs stand within the cells.
  const areTabbed = best.some(({ dialect }) => dialect.delimiter === "tab");
  const [first, ...others] = best.filter(({ dialect }) => !(areTabbed && dialect.delimiter === "space"));
  if (first === undefined) throw noNumbers(lines, options, file);
  const rival = others.find((other) => {
    const from = Math.max(first.dialect.firstDataLine, other.dialect.firstDataLine);
    return numbersOf(other, from) !== numbersOf(first, from);
  });
  if (rival !== undefined) throw ambiguous(first, rival, lines, file);
  return first.dialect;
}

/** Whether a delimiter stands in a row at all; a comma as decimal mark beside it needs quotes. */
function occurs(delimiter: Delimiter, row: string): boolean {
  if (delimiter === "space") return /\S[ \t]+\S/.test(row);
  return row.includes(DELIMITER_CHARACTERS[delimiter]);
}

/** The readings of the lines from `start` on under which most of them are rows of numbers. */
function bestReadings(
  candidates: readonly CellDialect[],
  lines: TextLines,
  start: number,
  count: number,
): readonly Evidence[] {
  const sample = lines.texts(start, start + count);
  const splits = new Map<Delimiter, readonly (readonly string[])[]>();
  for (const { delimiter } of candidates) {
    if (!splits.has(delimiter)) splits.set(delimiter, splitLines(sample, delimiter));
  }
  const found = candidates
    .map((candidate) => weigh(candidate, splits.get(candidate.delimiter) ?? [], start))
    .filter((evidence) => evidence !== null);
  const most = Math.max(0, ...found.map(({ dataLines }) => dataLines));
  return found.filter(({ dataLines }) => dataLines === most);
}

/** "7;" */
const SHORTEST_ROW = 2;

/** The first line that may hold two numbers: what stands above is preamble, however long. */
function firstPossibleRow(lines: TextLines): number {
  for (let line = 0; lines.has(line); line++) {
    if (lines.end(line) - lines.start(line) >= SHORTEST_ROW && mayHoldNumbers(lines.text(line))) return line;
  }
  return 0;
}

/** What stands for a reading that there is none of: marks, nothing, or a word. */
const OFF_SCALE =
  /^["\s]*[;,\t]["\s]*(?:[^\p{L}]*|[-+]?inf.*|over|ol|err|nan|n\/?a)["\s;,]*$|^\s+(?:[>\u2265]|-{2,}|inf\b|ol\b|over\b)/iu;

/** Begins like a number, and has digits, or what stands for a reading, after something that could split columns. */
function mayHoldNumbers(line: string): boolean {
  const start = /^[\s"|]*[+-]?[.,]?\d[\d.,]*/.exec(line);
  if (start === null) return false;
  const rest = line.slice(start[0].length);
  return /\d/.test(rest) || start[0].includes(",") || OFF_SCALE.test(rest);
}

function weigh(candidate: CellDialect, rows: readonly (readonly string[])[], offset: number): Evidence | null {
  const widths = rows.map((cells) => dataWidth(cells, candidate.decimal));
  const counts = new Map<number, number>();
  for (const width of widths) if (width > 0) counts.set(width, (counts.get(width) ?? 0) + 1);
  const [columns, dataLines] = [...counts].reduce((a, b) => (b[1] > a[1] ? b : a), [0, 0]);
  if (columns < 2) return null;
  const mark = candidate.decimal === "comma" ? "," : ".";
  const hasFractions = rows.some((cells, i) => widths[i] === columns && cells.some((cell) => cell.includes(mark)));
  // The last cells of the first rows may be empty, or hold words that those of the others do not.
  const isNumber = (cell: string) => readCell(cell, candidate.decimal).kind === "number";
  const isRow = (cells: readonly string[], i: number) =>
    widths[i] === columns ||
    (candidate.delimiter !== "space" &&
      cells.length >= columns &&
      !cells.slice(columns).some(isNumber) &&
      ((widths[i] ?? 0) > 0 || (isNumber(cells[0] ?? "") && cells.slice(1).every((cell) => cell === ""))));
  const first = rows.findIndex(isRow);
  return {
    dialect: { ...candidate, firstDataLine: offset + first, columns },
    dataLines,
    hasFractions,
    rows: rows.map((cells, i) => ({ cells, line: offset + i })).filter((_, i) => i >= first && (widths[i] ?? 0) > 0),
  };
}

/** The numbers of the first rows from a line on as a reading has them; texts beside them may be split in any way. */
function numbersOf({ rows, dialect }: Evidence, from: number): string {
  return rows
    .filter(({ line }) => line >= from)
    .slice(0, COMPARED_ROWS)
    .map(({ cells }) =>
      cells
        .map((cell) => readCell(cell, dialect.decimal))
        .flatMap((cell) => (cell.kind === "number" ? [cell.value] : []))
        .join("|"),
    )
    .join("\n");
}

/** A date, a time or both: a text like another. */
const DATE_OR_TIME = /^(?:\d{4}-\d\d-\d\d(?:[T ]\d\d:\d\d(?::\d\d(?:\.\d+)?)?)?Z?|\d\d?:\d\d(?::\d\d(?:\.\d+)?)?)$/;
const BLANK = 0;
const NOT_DATA = -1;

/**
 * Number of cells of a row of numbers, an empty last cell not counted; BLANK for a blank line, NOT_DATA for anything
 * else, such as prose with a number in it.
 */
function dataWidth(cells: readonly string[], decimal: DecimalMark): number {
  let width = cells.length;
  while (width > 0 && cells[width - 1] === "") width--;
  if (width === 0) return BLANK;
  let numbers = 0;
  for (let i = 0; i < width; i++) {
    const { kind } = readCell(cells[i] as string, decimal);
    if (kind === "number") numbers++;
    // Digits that are no number, or a mark alone, show that the line was split in the wrong place.
    else if (
      kind === "text" &&
      /^[^\p{L}]*\d|^[,;|]$/u.test(cells[i] as string) &&
      !DATE_OR_TIME.test(cells[i] as string)
    )
      return NOT_DATA;
  }
  if (2 * numbers < width) return NOT_DATA;
  const startsWithNumber = () => readCell(cells.find((cell) => cell !== "") ?? "", decimal).kind === "number";
  return numbers >= 2 || (numbers === 1 && width > 1 && startsWithNumber()) ? width : NOT_DATA;
}

function noNumbers(lines: TextLines, options: ReadOptions, file: string): ReadError {
  const shown = lines.texts(0, MANY_LINES);
  const example = shown.find((line) => /^\s*"?[+-]?\d/.test(line)) ?? shown.find((line) => line.trim() !== "") ?? "";
  const forced = options.delimiter !== undefined || options.decimal !== undefined;
  const inTheWay = hasUnitBeside(example)
    ? "units beside them"
    : /\d,\d/.test(example) && /\d\.\d/.test(example)
      ? "marks between thousands"
      : null;
  return new ReadError({
    code: "no-data",
    file,
    found: `no two columns of numbers${example === "" ? "" : `; a line reads ${quote(example.trim())}`}`,
    expected: "rows with a frequency and a reading, split by comma, semicolon, tab, bars or blanks",
    remedy: forced
      ? "Try it without --delimiter and --decimal."
      : inTheWay === null
        ? "Export the sweep as Touchstone (.s1p) or as CSV with a header line."
        : `Export the numbers without ${inTheWay}, or the sweep as Touchstone (.s1p).`,
  });
}

function ambiguous(first: Evidence, second: Evidence, lines: TextLines, file: string): ReadError {
  const name = ({ dialect }: Evidence) => `--delimiter ${dialect.delimiter} --decimal ${dialect.decimal}`;
  return new ReadError({
    code: "ambiguous",
    file,
    line: first.dialect.firstDataLine + 1,
    found: `${quote(lines.text(first.dialect.firstDataLine).trim())} can be read in two ways`,
    remedy: `Say which one is meant: ${name(first)} or ${name(second)}.`,
  });
}

export const DELIMITER_WORDS: Readonly<Record<Delimiter, string>> = {
  comma: "commas",
  semicolon: "semicolons",
  tab: "tabs",
  space: "blanks",
  bar: "bars",
};
