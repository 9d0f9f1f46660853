import type { Cell } from "./cell-grammar.js";

/** A number without a remark: one with a remark may be prose. */
export const isNumber = (cell: Cell | undefined): boolean =>
  cell?.kind === "complex" || (cell?.kind === "number" && !cell.isRemarked);

/** Whether more than the digits of a number stands in a cell. */
const isDressed = (cell: Cell): boolean =>
  cell.kind === "complex" ||
  (cell.kind === "number" && ((cell.unit !== null && cell.unit.kind !== "other") || cell.mark !== null));

/** How many texts of a row hold digits: numbers torn apart, perhaps. */
export const tornIn = (row: readonly Cell[], cells: readonly string[]): number =>
  row.filter(({ kind }, c) => {
    const text = cells[c] ?? "";
    return kind === "text" && /\d/.test(text) && !DATE_OR_TIME.test(text) && !NUMBERED_WORD.test(text);
  }).length;

/** "Mast 1", "height 3 m" */
const NUMBERED_WORD = /^\p{L}{2}[\p{L} ]*\d+(?:[.,]\d+)?(?: ?\p{L}{1,3})?$/u;

/** A date, a time or both: a text like another. */
const DATE_OR_TIME =
  /^(?:\d{1,2}([./-])\d{1,2}\1(?:\d{2}|\d{4})|\d{4}([./])\d{1,2}\2\d{1,2}|\d{4}-\d\d-\d\d(?:[T ]\d\d:\d\d(?::\d\d(?:\.\d+)?)?)?Z?|\d\d?:\d\d(?::\d\d(?:\.\d+)?)?)$/;
/** The commonest of them, told without a look at alphabets. */
const PLAIN_DIGITS = /^[+-]?\d[\d.,;]*$/;
/** Digits without a word beside them: "2nd try" and "40m dipole" are texts like others. */
const isTorn = (text: string): boolean =>
  (PLAIN_DIGITS.test(text) || /^[^\p{L}]*\d[^\p{L}]*$/u.test(text) || /^[,;|]$/.test(text)) && !DATE_OR_TIME.test(text);

const isRemarkedNumber = (cell: Cell, text: string): boolean =>
  "isRemarked" in cell && cell.isRemarked && /^[^\p{L}]*\d/u.test(text) && !DATE_OR_TIME.test(text);

const BLANK = 0;
const NOT_DATA = -1;

/**
 * Number of cells of a row of numbers, an empty last cell not counted; BLANK for a blank line, NOT_DATA for anything
 * else, such as prose with a number in it.
 */
export function dataWidth(cells: readonly string[], read: readonly Cell[]): number {
  let width = cells.length;
  while (width > 0 && cells[width - 1] === "") width--;
  if (width === 0) return BLANK;
  let numbers = 0;
  for (let i = 0; i < width; i++) {
    const cell = read[i] as Cell;
    if (isNumber(cell)) numbers++;
    // Digits that are no number, or a mark alone, show that the line was split in the wrong place.
    else if (cell.kind === "text" ? isTorn(cells[i] as string) : isRemarkedNumber(cell, cells[i] as string))
      return NOT_DATA;
  }
  if (2 * numbers < width) return NOT_DATA;
  const first = cells.findIndex((cell) => cell !== "");
  const startsWithNumber = isNumber(read[first]);
  // Numbers with units stand in prose as well.
  if (read.some(isDressed) && !startsWithNumber && !DATE_OR_TIME.test(cells[first] ?? "")) return NOT_DATA;
  return numbers >= 2 || (numbers === 1 && width > 1 && startsWithNumber) ? width : NOT_DATA;
}
