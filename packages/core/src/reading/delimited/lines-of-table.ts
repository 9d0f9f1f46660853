import { once } from "../../numbers/once.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { KindOfLine } from "../points/line-ledger.js";
import type { TextLines } from "../text/text-lines.js";
import { readCell } from "./cell-grammar.js";
import { splitLine } from "./cells.js";
import { isRowOfUnits } from "./heading-line.js";
import type { CutRows } from "./table-builder.js";
import type { Dialect, TableText } from "./table-text.js";

/** What each line, counted from 1, is to the table. */
export function kindsOfLines(
  { lines: data, leftOut, nextBlockLine }: CutRows,
  header: number,
  decidedFirst: number,
  { lines, dialect }: TableText,
): KindOfLine {
  const isData = once(() => new Set(data));
  const reasons = new Map(leftOut.map(({ line, reason }) => [line, reason]));
  return (line) => {
    if (isData().has(line)) return "data";
    if (line === header + 1 || (Math.abs(line - header - 1) === 1 && isRowOfUnits(lines.text(line - 1), dialect)))
      return "header";
    if (line > decidedFirst && line <= header && holdsRow(lines.text(line - 1), dialect)) return "above-header";
    if (nextBlockLine !== null && line >= nextBlockLine) return "another-table";
    return reasons.get(line) ?? null;
  };
}

/** Whether a line has as many numbers as the table has columns. */
export const holdsRow = (line: string, dialect: Dialect): boolean => {
  const cells = splitLine(line, dialect.delimiter).map((cell) => readCell(cell, dialect));
  return cells.length >= dialect.columns && cells.filter(({ kind }) => kind === "number").length >= 2;
};

/** Whether each cell of a line has a digit in it, and the first a decimal mark, as a slip of the pen leaves a row: "420.0O". */
function mayBeRow(line: string, { delimiter, columns }: Dialect): boolean {
  const cells = splitLine(line, delimiter);
  return cells.length === columns && /\d[.,][\dO]/.test(cells[0] ?? "") && cells.every((cell) => /\d/.test(cell));
}

/**
 * Rows that stand above a header, or below it above the first one that is read.
 *
 * @param start the first line that could be a row without the header
 * @param heading line of the header; -1 for none
 */
export function rowsBesideHeader(
  lines: TextLines,
  dialect: Dialect,
  start: number,
  heading: number,
): readonly Finding[] {
  const below = heading < 0 ? dialect.firstDataLine : heading + 1;
  const isLost = (text: string) => mayBeRow(text, dialect) || holdsRow(text, dialect);
  return [
    ...rowsLost(start, heading, (line) => holdsRow(lines.text(line), dialect)),
    ...rowsLost(below, dialect.firstDataLine, (line) => isLost(lines.text(line))),
  ];
}

function rowsLost(from: number, end: number, isRow: (line: number) => boolean): readonly Finding[] {
  const rows = Array.from({ length: Math.max(0, end - from) }, (_, i) => from + i).filter(isRow);
  const [first] = rows;
  if (first === undefined) return [];
  const params = { firstLine: first + 1, count: rows.length, text: null };
  return [finding("caution", "row-left-out", params, { line: first + 1 })];
}
