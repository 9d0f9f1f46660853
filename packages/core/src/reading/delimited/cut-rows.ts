import { once } from "../../numbers/once.js";
import { BAR, COMMA, POINT, SEMICOLON, SPACE, TAB } from "../text/ascii.js";
import { linesFrom, scanPlainRows } from "../text/plain-rows.js";
import { scanNumber } from "../text/scan-numbers.js";
import type { TextLines } from "../text/text-lines.js";
import { goesOn, isAnotherHeading } from "./another-heading.js";
import { type Cell, readCell } from "./cell-grammar.js";
import { beginsWithMark, isComment, splitLine, trimmedRow } from "./cells.js";
import { holdsRow } from "./lines-of-table.js";
import { type CutRows, TableBuilder } from "./table-builder.js";
import type { Dialect } from "./table-text.js";

/** Where numbers are scanned to before they are put into their column. */
const scanned = new Float64Array(1);
const DELIMITER_BYTES = { comma: COMMA, semicolon: SEMICOLON, tab: TAB, space: SPACE, bar: BAR } as const;

/**
 * Cuts the rows from the first line of numbers to the end of their block.
 *
 * Plain rows are scanned from the bytes; any other row (quotes, missing cells, units, "> 10", text) is split by papaparse and
 * read cell by cell. Both ways give the same numbers.
 *
 * @param shifts for each column, the power of ten that plain numbers are multiplied by
 * @param header the header's cells; a line like it is a repeat, another one begins another table
 */
export function cutRows(
  lines: TextLines,
  dialect: Dialect,
  shifts: readonly number[],
  header: readonly string[],
): CutRows {
  const plain = plainRows(lines, dialect, shifts);
  if (plain !== null) return plain;
  const table = new TableBuilder(dialect.columns);
  // Between blanks a cell that is missing cannot be told from the one after it.
  const fewest = dialect.delimiter === "space" ? numbersIn(lines.text(dialect.firstDataLine), dialect) : 0;
  for (let line = dialect.firstDataLine; lines.has(line); line++) {
    if (scanPlainRow(lines, line, dialect, shifts, table)) {
      table.endRow(line + 1);
      continue;
    }
    const text = trimmedRow(lines.text(line), dialect.delimiter);
    if (text.trim() === "") continue;
    if (/^["']?\s*(begin|end)\b/i.test(text) && !holdsRow(text, dialect)) {
      const next = lineOfMoreNumbers(lines, line + 1, dialect);
      if (next !== null) return table.build(next);
    } else if (isAnotherHeading(lines, line, dialect, header)) {
      return table.build(line + 1);
    } else if (!isComment(text) || beginsWithMark(text, dialect.delimiter, dialect.columns)) {
      readSplitRow(lines, line, text, dialect, fewest, table);
    } else if (isStarred(text, dialect)) {
      table.remark(line + 1, text);
      readSplitRow(lines, line, text.replace(STAR, ""), dialect, fewest, table);
    } else table.comment(line + 1);
  }
  return table.build(null);
}

const STAR = /^[*!]\s*/;

/** Whether a row between blanks is marked with a star or the like, as a best one may be. */
const isStarred = (text: string, dialect: Dialect): boolean =>
  dialect.delimiter === "space" && STAR.test(text) && numbersIn(text.replace(STAR, ""), dialect) === dialect.columns;

/** The rest of the text, where it is nothing but full rows of numbers. */
function plainRows(lines: TextLines, dialect: Dialect, shifts: readonly number[]): CutRows | null {
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
    cells: new Map(),
    leftOut: [],
    comments: [],
    remarked: [],
    nextBlockLine: null,
  };
}

/** How many of a row's cells hold a number, or stand for one. */
const numbersIn = (text: string, dialect: Dialect): number =>
  splitLine(text.trim(), dialect.delimiter)
    .slice(0, dialect.columns)
    .filter((cell) => readCell(cell, dialect).kind !== "text").length;

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

/** What stands beside the sum, the mean or the number of what is above (from memory). */
const SUMS_UP =
  /^(?:sums?|summen?|(?:sub|grand )?totals?|totale|totaal|gesamt|somme|suma|soma|somma|summa|razem|celkem|yhteensä|összesen|toplam|сумма|сума|итого|всего|всього|разом|σύνολο|合計|合计|總計|总计|小計|합계|∑|Σ|mean|average|avg\.?|mittel(?:wert)?|durchschnitt|moyenne|promedio|media|média|gemiddelde|medel|średnia|průměr|keskiarvo|átlag|ortalama|среднее|середнє|μέσος|平均|평균|counts?|anzahl|bandwidth|bandbreite)\s*[:=]?$/iu;

const sumsUp = (cells: readonly string[]): boolean => cells.some((cell) => SUMS_UP.test(cell));

/** Whether no row of readings follows on a line; names of a series may be words for a mean as well. */
function isLastOf(lines: TextLines, line: number, dialect: Dialect): boolean {
  for (let below = line; below < line + LINES_BELOW && lines.has(below); below++) {
    const cells = splitLine(lines.text(below).trim(), dialect.delimiter);
    if (!sumsUp(cells) && cells.filter((cell) => holdsNumber(readCell(cell, dialect))).length > 1) return false;
  }
  return true;
}

/** How many lines below a sum are looked at. */
const LINES_BELOW = 10;

/** @param text of the line at `index`, without the blanks around it */
function readSplitRow(
  lines: TextLines,
  index: number,
  text: string,
  dialect: Dialect,
  fewest: number,
  table: TableBuilder,
): void {
  const { columns, delimiter } = dialect;
  const line = index + 1;
  const texts = splitLine(text, delimiter);
  if (texts.every((cell) => cell === "")) return;
  const cells = Array.from({ length: columns }, (_, c) => readCell(texts[c] ?? "", dialect));
  const numbers = cells.filter(holdsNumber).length;
  // Words behind the last column are a remark on the row; numbers there belong to another kind of row.
  const hasMoreNumbers = texts
    .slice(columns)
    .some((cell) => cell !== "" && (delimiter === "space" || holdsNumber(readCell(cell, dialect))));
  if (numbers === 0) table.leaveOut(line, "no-number");
  else if (
    sumsUp(texts) &&
    isLastOf(lines, line, dialect) &&
    (sumsUp(texts.slice(columns)) || !goesOn(lines, [index - 2, index - 1, index]))
  )
    table.leaveOut(line, "sums-up");
  else if (hasMoreNumbers) table.leaveOut(line, "too-many-cells");
  else if (texts.length < columns && numbers < fewest) table.leaveOut(line, "too-few-cells");
  else {
    for (const [c, cell] of cells.entries()) {
      if (("isRemarked" in cell && cell.isRemarked) || voidMark().test(texts[c] ?? ""))
        table.remark(line, texts[c] ?? "");
    }
    const behind = texts.slice(columns).find((cell) => CORRECTS.test(cell));
    if (behind !== undefined) table.remark(line, behind);
    table.addCells(line, cells);
  }
}

/** Behind a row: its reading was another (from memory). */
const CORRECTS =
  /^\W*(?:no|not|nein|non|should be|must be|correct(?:ed|ion|ly)?|really|actually|rather|instead|recte|richtig|sorry|was|meant)(?!\p{L}).*\d/iu;

/** What is written beside a reading that does not count (from memory). */
const voidMark = once(
  () =>
    /^(?:error|err|invalid|void|bad|wrong|do not use|ignore|discard|reject|outlier|suspect|fail(?:ed|ure)?|over(?:load|range)|ungültig|fehler\p{L}*|erreur|errore|ошибка)(?!\p{L})/iu,
);

const holdsNumber = ({ kind }: Cell): boolean => kind === "number" || kind === "complex";
