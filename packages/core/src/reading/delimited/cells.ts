import Papa from "papaparse";
import type { DecimalMark, Delimiter } from "../options/read-options.js";
import { numberFromText } from "../text/scan-numbers.js";

/** How the cells of a delimited text are told apart and written. */
export interface CellDialect {
  readonly delimiter: Delimiter;
  readonly decimal: DecimalMark;
}

export const DELIMITER_CHARACTERS: Readonly<Record<Delimiter, string>> = {
  comma: ",",
  semicolon: ";",
  tab: "\t",
  space: " ",
  bar: "|",
};

/** A quote counts behind blanks as well: "7.0", "1.5". */
const LATE_QUOTES: Readonly<Record<Delimiter, RegExp>> = {
  comma: /(^|,) +"/g,
  semicolon: /(^|;) +"/g,
  tab: /(^|\t) +"/g,
  space: /(^| ) +"/g,
  bar: /(^|\|) +"/g,
};

const asIs = (line: string) => line;

/** What is done to a line before it is split: any number of blanks is one; bars frame a row, and the name of a size. */
const PREPARED: Readonly<Partial<Record<Delimiter, (line: string) => string>>> = {
  space: (line) => line.trim().replace(/[ \t]+/g, " "),
  bar: (line) => {
    const row = line.trim().replace(/^\||\|$/g, "");
    return / \| /.test(row) ? row.replace(/(^|\| )\|(\p{L}\w*)\|/gu, '$1"|$2|"') : row;
  },
};

/** Whether a line among rows of numbers is a comment. */
export const isComment = (line: string): boolean => /^["']?\s*(?:[!#%;*]|\/\/)/.test(line);

/**
 * Splits lines into trimmed cells. papaparse does the splitting and is told everything: it never guesses.
 *
 * A quoted cell ends on its own line at the latest: a stray quote or inch mark is text, and cannot swallow the file.
 */
export function splitLines(lines: readonly string[], delimiter: Delimiter): readonly (readonly string[])[] {
  const prepared = lines.map(PREPARED[delimiter] ?? asIs);
  if (prepared.some((line) => line.includes('"'))) {
    const late = LATE_QUOTES[delimiter];
    return prepared.map((line) => splitText(line.replace(late, '$1"'), delimiter, hasPairedQuotes(line))[0] ?? [""]);
  }
  return splitText(prepared.join("\n"), delimiter, false);
}

function splitText(text: string, delimiter: Delimiter, quotes: boolean): string[][] {
  const { data } = Papa.parse<string[]>(text, {
    delimiter: DELIMITER_CHARACTERS[delimiter],
    newline: "\n",
    header: false,
    dynamicTyping: false,
    skipEmptyLines: false,
    // A quote character that cannot occur in a line of text switches quoting off.
    quoteChar: quotes ? '"' : "\u0000",
  });
  for (const row of data) for (let i = 0; i < row.length; i++) row[i] = (row[i] as string).trim();
  return data;
}

const hasPairedQuotes = (line: string) => (line.split('"').length - 1) % 2 === 0;

/** What a cell holds where a number is expected. */
export type CellValue =
  | { readonly kind: "number"; readonly value: number }
  /** "more than" a number, or off the scale altogether (value null) */
  | { readonly kind: "at-least"; readonly value: number | null }
  | { readonly kind: "missing" }
  | { readonly kind: "text" };

/** No special form of a number ("> 10", "---", "1.5:1") is longer than this. */
const LONGEST_SPECIAL = 24;
/** Digits and marks that make no number in one dialect but may in another; no special form is written so. */
const MARKED_DIGITS = /^[+-]?\d[\d.,]*$/;
const MISSING: CellValue = { kind: "missing" };
const TEXT: CellValue = { kind: "text" };
const OFF_SCALE: CellValue = { kind: "at-least", value: null };

/** Reads a cell: a number, "> 10" and its like, nothing ("", "---", "NaN"), or text. */
export function readCell(cell: string, decimal: DecimalMark, shift = 0): CellValue {
  if (/^[−–]\d/.test(cell)) return readCell(`-${cell.slice(1)}`, decimal, shift);
  const value = numberFromText(cell, shift, decimal === "comma" ? "," : ".");
  if (Number.isFinite(value)) return { kind: "number", value };
  if (!Number.isNaN(value)) return OFF_SCALE;
  if (cell === "") return MISSING;
  if (cell.length > LONGEST_SPECIAL || MARKED_DIGITS.test(cell)) return TEXT;
  if (/^([-–—.*]+|[+-]?nan|n\/?a|null|none|#n\/a|-?1\.#(ind|qnan|snan)\w*)$/i.test(cell)) return MISSING;
  if (/^(\+?inf(inity)?|∞|1\.#inf\w*|ol|over)$/i.test(cell)) return OFF_SCALE;
  const bound = /^(?:>=?|≥|⩾)\s*(.+)$/.exec(cell);
  if (bound !== null) {
    const limit = numberFromText((bound[1] as string).replace(/:1$/, ""), 0, decimal === "comma" ? "," : ".");
    if (!Number.isNaN(limit)) return { kind: "at-least", value: limit };
  }
  const ratio = /^(?:([\d.,]+)\s*:\s*1|1\s*:\s*([\d.,]+))$/.exec(cell);
  if (ratio !== null) return readCell((ratio[1] ?? ratio[2]) as string, decimal);
  return TEXT;
}

/** Half of one unit in the last place that a column is printed with, what rounding may hide: the median over some rows. */
export function halfUnitOf(rows: readonly (readonly string[])[], column: number, decimal: DecimalMark): number {
  const halves = rows.map((cells) => printedHalfUnit(cells[column] ?? "", decimal)).sort((a, b) => a - b);
  return halves[halves.length >> 1] ?? 0;
}

function printedHalfUnit(cell: string, decimal: DecimalMark): number {
  const match = /^[+-]?\d*(?:[.,](\d*))?(?:[ed]([+-]?\d+))?$/i.exec(
    decimal === "comma" ? cell.replace(",", ".") : cell,
  );
  if (match === null) return 0;
  return 0.5 * 10 ** (Number(match[2] ?? 0) - (match[1]?.length ?? 0));
}
