import Papa from "papaparse";
import type { Delimiter } from "../options/read-options.js";
import { withNumbersJoined } from "./cell-grammar.js";

export const DELIMITER_CHARACTERS: Readonly<Record<Delimiter, string>> = {
  comma: ",",
  semicolon: ";",
  tab: "\t",
  space: " ",
  bar: "|",
};

/** A quote counts behind blanks as well: "7.0", "1.5". */
const lateQuotes = (delimiter: Delimiter) => new RegExp(`(^|[${DELIMITER_CHARACTERS[delimiter]}]) +"`, "g");

/** Tabs and blanks of any width. */
const BLANKS = /[ \t\u00a0\u2000-\u200a\u202f\u3000]+/g;
const asIs = (line: string) => line;

/** "|Z|" or "\\|Z\\|" in a row of cells between bars, and the sign that its bars have while the row is split. */
const SIZE_IN_ROW = /(^|\| *|\p{L} )\\?\|(\p{L}\w*)\\?\|(?= ?[[(/\s]|$)/gu;
const STANDS_FOR_BAR = "\u2223";

/** What is done to a line before it is split: any number of blanks is one; bars frame a row, and the name of a size. */
const PREPARED: Readonly<Partial<Record<Delimiter, (line: string) => string>>> = {
  space: (line) => withNumbersJoined(line.trim()).replace(BLANKS, " "),
  bar: (line) => {
    const row = line.trim().replace(/^\||\|$/g, "");
    return / \| /.test(row) ? row.replace(SIZE_IN_ROW, `$1${STANDS_FOR_BAR}$2${STANDS_FOR_BAR}`) : row;
  },
};

/** What stands before a comment. */
export const COMMENT_MARK = /^[\s"']*(?:(?:[!#%;*']|\/\/)+|REM\b)\s*/i;

/** Whether a line among rows of numbers is a comment. */
export const isComment = (line: string): boolean => /^["']?\s*(?:[!#%;*]|\/\/)/.test(line);

/** What stands before a comment may also be the first cell of a row, or, where it is a semicolon, behind an empty one. */
export const beginsWithMark = (line: string, delimiter: Delimiter, columns: number): boolean =>
  delimiter !== "space" &&
  /^\s*(?:;|[*#!%"']+\s*[,;\t|]).*\d/.test(line) &&
  splitLine(line, delimiter).length === columns;

/**
 * Splits lines into trimmed cells; where there are quotes papaparse does it, and is told everything: it never guesses.
 *
 * A quoted cell ends on its own line at the latest: a stray quote or inch mark is text, and cannot swallow the file.
 */
export function splitLines(lines: readonly string[], delimiter: Delimiter): readonly (readonly string[])[] {
  const prepared = lines.map(PREPARED[delimiter] ?? asIs);
  if (prepared.some((line) => line.includes('"'))) {
    const late = lateQuotes(delimiter);
    return prepared.map((line) => splitQuoted(line.replace(late, '$1"'), delimiter, hasPairedQuotes(line)));
  }
  // A line by itself that holds nothing has no cells.
  if (prepared.length === 1 && prepared[0] === "") return [];
  return prepared.map((line) => line.split(DELIMITER_CHARACTERS[delimiter]).map(trimmed));
}

/** A row without the blanks around it; a tab at its start may end an empty cell. */
export const trimmedRow = (line: string, delimiter: Delimiter): string =>
  delimiter === "tab" ? line.replace(/^ +|\s+$/g, "") : line.trim();

const trimmed = (cell: string): string => cell.trim().replaceAll(STANDS_FOR_BAR, "|");

/** The cells of one line. */
export const splitLine = (line: string, delimiter: Delimiter): readonly string[] =>
  splitLines([line], delimiter)[0] ?? [];

function splitQuoted(line: string, delimiter: Delimiter, quotes: boolean): readonly string[] {
  const { data } = Papa.parse<string[]>(line, {
    delimiter: DELIMITER_CHARACTERS[delimiter],
    newline: "\n",
    header: false,
    dynamicTyping: false,
    skipEmptyLines: false,
    // A quote character that cannot occur in a line of text switches quoting off.
    quoteChar: quotes ? '"' : "\u0000",
  });
  return (data[0] ?? [""]).map(trimmed);
}

const hasPairedQuotes = (line: string) => (line.split('"').length - 1) % 2 === 0;
