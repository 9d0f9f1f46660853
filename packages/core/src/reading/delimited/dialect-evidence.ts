import type { Delimiter } from "../options/read-options.js";
import type { TextLines } from "../text/text-lines.js";
import { type Cell, type CellDialect, readCell } from "./cell-grammar.js";
import { splitLines } from "./cells.js";
import { dataWidth, isNumber, tornIn } from "./row-width.js";
import type { Dialect } from "./table-text.js";

/** What speaks for a way of writing. */
export interface Evidence {
  readonly dialect: Dialect;
  readonly dataLines: number;
  /** Whether any number is written with the decimal mark */
  readonly hasFractions: boolean;
  /** Texts in its rows that hold digits: numbers torn apart, perhaps */
  readonly torn: number;
  /** The cells of the rows of numbers that were looked at, to see whether another reading says the same */
  readonly rows: readonly { readonly line: number; readonly cells: readonly Cell[] }[];
}

/** The readings of the lines from `start` on under which most of them are rows of numbers. */
export function bestReadings(
  candidates: readonly CellDialect[],
  lines: TextLines,
  start: number,
  count: number,
  isLoose: boolean,
): readonly Evidence[] {
  const sample = lines.texts(start, start + count);
  const splits = new Map<Delimiter, readonly (readonly string[])[]>();
  for (const { delimiter } of candidates) {
    if (!splits.has(delimiter)) splits.set(delimiter, splitLines(sample, delimiter));
  }
  const rowsOf = ({ delimiter }: CellDialect) => splits.get(delimiter) ?? [];
  const isPromising = (candidate: CellDialect): boolean => {
    const row = rowsOf(candidate)[sample.length >> 1] ?? [];
    return dataWidth(row, readRow(row, candidate, isLoose)) > 1;
  };
  const promising = candidates.length === 1 ? candidates : candidates.filter(isPromising);
  // Those first: how many rows they make of the lines tells soon of another that it makes fewer.
  const readings = new Map<CellDialect, Evidence | null>();
  let enough = 0;
  for (const candidate of new Set([...promising, ...candidates])) {
    const evidence = weigh(candidate, rowsOf(candidate), start, isLoose, enough);
    enough = Math.max(enough, evidence?.dataLines ?? 0);
    readings.set(candidate, evidence);
  }
  const found = candidates.map((candidate) => readings.get(candidate) ?? null).filter((evidence) => evidence !== null);
  const most = Math.max(0, ...found.map(({ dataLines }) => dataLines));
  const best = found.filter(({ dataLines }) => dataLines === most);
  const leastTorn = Math.min(...best.map(({ torn }) => torn));
  return best.filter(({ torn }) => torn === leastTorn);
}

/** Rows in which readings that are equally good are compared. */
const COMPARED_ROWS = 50;

/** The cells of a row as a way of writing has them. */
function readRow(cells: readonly string[], dialect: CellDialect, isLoose: boolean): readonly Cell[] {
  const row = cells.map((text) => readCell(text, dialect));
  // Prose with numbers in it holds commas and blanks, but seldom other delimiters.
  const isSure = dialect.delimiter !== "comma" && dialect.delimiter !== "space";
  const mayHaveRemarks = isLoose || (isSure && cells.length > 1 && isNumber(row[0]));
  const isSlip = (cell: Cell) => cell.kind === "number" && cell.isSlipped && !isLoose;
  return mayHaveRemarks
    ? row.map((cell) => ("isRemarked" in cell && !isSlip(cell) ? { ...cell, isRemarked: false } : cell))
    : row;
}

/** What speaks for a way of writing; null where it makes fewer rows of the lines than another, or none of two columns. */
function weigh(
  candidate: CellDialect,
  rows: readonly (readonly string[])[],
  offset: number,
  isLoose: boolean,
  enough: number,
): Evidence | null {
  const read: (readonly Cell[])[] = [];
  const widths: number[] = [];
  let left = rows.length;
  for (const cells of rows) {
    const row = readRow(cells, candidate, isLoose);
    const width = dataWidth(cells, row);
    if (width <= 0) left -= 1;
    if (left < enough) return null;
    read.push(row);
    widths.push(width);
  }
  const counts = new Map<number, number>();
  for (const width of widths) if (width > 0) counts.set(width, (counts.get(width) ?? 0) + 1);
  const [columns, dataLines] = [...counts].reduce((a, b) => (b[1] > a[1] ? b : a), [0, 0]);
  if (columns < 2) return null;
  const mark = candidate.decimal === "comma" ? "," : ".";
  const hasFractions = rows.some((cells, i) => widths[i] === columns && cells.some((cell) => cell.includes(mark)));
  // The last cells of the first rows may be empty, or hold words that those of the others do not.
  const isRow = (cells: readonly string[], i: number) =>
    widths[i] === columns ||
    (candidate.delimiter !== "space" &&
      cells.length >= columns &&
      !(read[i] ?? []).slice(columns).some(isNumber) &&
      ((widths[i] ?? 0) > 0 || (isNumber(read[i]?.[0]) && cells.slice(1).every((cell) => cell === ""))));
  const first = rows.findIndex(isRow);
  return {
    dialect: { ...candidate, firstDataLine: offset + first, columns },
    dataLines,
    hasFractions,
    torn: read.reduce((sum, row, i) => (widths[i] === columns ? sum + tornIn(row, rows[i] ?? []) : sum), 0),
    rows: read.map((cells, i) => ({ cells, line: offset + i })).filter((_, i) => i >= first && (widths[i] ?? 0) > 0),
  };
}

/** The numbers of the first rows from a line on as a reading has them; texts beside them may be split in any way. */
export function numbersOf({ rows }: Evidence, from: number): string {
  return rows
    .filter(({ line }) => line >= from)
    .slice(0, COMPARED_ROWS)
    .map(({ cells }) => cells.flatMap(digitsIn).map(Number).join("|"))
    .join("\n");
}

function digitsIn(cell: Cell): readonly string[] {
  if (cell.kind === "number") return [cell.digits.replace(/d/i, "e")];
  return cell.kind === "complex" ? cell.parts : [];
}
