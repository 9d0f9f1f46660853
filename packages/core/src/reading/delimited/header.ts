import { type ColumnRole, isReading } from "../options/column-role.js";
import { DELIMITERS, type Delimiter } from "../options/read-options.js";
import { frequencyUnitOf } from "../options/units.js";
import { wordsOf } from "../quantities/name-words.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { TextLines } from "../text/text-lines.js";
import { readCell } from "./cell-grammar.js";
import { COMMENT_MARK, DELIMITER_CHARACTERS, splitLine, splitLines } from "./cells.js";
import type { Dialect } from "./dialect.js";
import { frequencyUnitIn } from "./preamble.js";

/** The header of a delimited text: what each column holds, as far as the text says. */
export interface Header {
  readonly roles: readonly ColumnRole[];
  /** The cells as printed */
  readonly names: readonly string[];
  /** Index of the header's line */
  readonly lineIndex: number;
}

/** How far above the numbers a header is looked for. */
const REACH = 200;
/** Characters of a line that are looked at. */
const LONGEST_HEADER = 4000;
const RULE_LINE = /^[\s\-=_+|*~.]*$/;
const UNIT_WORDS = new Set([
  ...[
    "hz",
    "khz",
    "mhz",
    "ghz",
    "ohm",
    "ohms",
    "kohm",
    "db",
    "deg",
    "°",
    "rad",
    "%",
    "1",
    "siemens",
    "ms",
    "degrees",
    "gon",
    "w",
    "watt",
    "watts",
  ],
]);

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
    const split = bestSplit(line, dialect, port);
    // "frequency unit MHz" names a frequency, and heads no column.
    if (split === null || (!split.roles.some(isReading) && isStatement(line, dialect))) continue;
    const above = units ?? (i > 0 ? asUnits(contentOf(lines, i - 1, dialect), dialect) : null);
    if (above === null) return { ...split, lineIndex: i };
    const names = split.names.map((name, c) => (above[c] ? `${name} (${above[c]})` : name));
    return { roles: rolesOf(names, port), names, lineIndex: i };
  }
  for (let i = dialect.firstDataLine + 1; i < dialect.firstDataLine + REACH && lines.has(i); i++) {
    const split = bestSplit(contentOf(lines, i, dialect), dialect, port);
    if (split !== null) return { ...split, lineIndex: i };
  }
  return null;
}

/** Whether a line states the unit of frequency and is no row of names. */
const isStatement = (line: string, { delimiter, columns }: Dialect): boolean =>
  frequencyUnitIn([line]) !== null && (delimiter === "space" || splitLine(line, delimiter).length !== columns);

/** The first line below some others that names a frequency and a reading, with numbers below it; null where there is none. */
export function laterHeader(lines: TextLines, from: number, dialect: Dialect, port: number): number | null {
  for (let line = from; line < from + FURTHEST_HEADER && lines.has(line + 1); line++) {
    const text = lines.text(line).slice(0, LONGEST_HEADER);
    if (!/^[#!%;*"'|\s]*\p{L}/u.test(text) || !/^[\s"|]*[+-]?[.,]?\d/.test(lines.text(line + 1))) continue;
    const split = bestSplit(text.replace(COMMENT_MARK, ""), dialect, port);
    if (split?.roles.some(isReading)) return line;
  }
  return null;
}

const FURTHEST_HEADER = 400;

const rolesOf = (names: readonly string[], port: number) => names.map((name) => roleFromHeader(name, port));

/** A line without its comment mark. A mark before a delimiter, or a delimiter itself, may head a column of row numbers. */
function contentOf(lines: TextLines, line: number, dialect: Dialect): string {
  const text = lines.text(line).slice(0, LONGEST_HEADER);
  const content = text.replace(COMMENT_MARK, "");
  const { delimiter } = dialect;
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

/** Whether a line names columns, two known ones at the least: the same as some names do, or others; null where it names none. */
export function columnsNamedIn(line: string, dialect: Dialect, names: readonly string[]): "same" | "others" | null {
  const split = bestSplit(line.replace(COMMENT_MARK, ""), dialect, 1);
  if (split === null || split.roles.filter(({ quantity }) => quantity !== "other").length < 2) return null;
  const roles = rolesOf(names, 1);
  const areOthers = split.roles.some(({ quantity, frequencyUnit = null }, c) => {
    const { quantity: known = "other", frequencyUnit: knownUnit = null } = roles[c] ?? {};
    return quantity !== known || (frequencyUnit !== null && knownUnit !== null && frequencyUnit !== knownUnit);
  });
  return areOthers ? "others" : "same";
}

/** The split of a line that recognises the most columns; null where no frequency is among them, or numbers are. */
function bestSplit(line: string, dialect: Dialect, port: number): Omit<Header, "lineIndex"> | null {
  const delimiters: Delimiter[] = [dialect.delimiter, ...DELIMITERS.filter((other) => other !== dialect.delimiter)];
  let best: Omit<Header, "lineIndex"> | null = null;
  let bestScore = 0;
  for (const delimiter of delimiters) {
    // A line that the numbers' own delimiter splits is not taken apart otherwise: its blanks belong to the names.
    if (best !== null && (delimiter === "space" || best.roles.some(isReading))) break;
    if (delimiter === "space" && dialect.delimiter !== "space" && isSplitBy(line, dialect.delimiter)) break;
    for (const names of splitsOf(line, delimiter)) {
      if (names.length < 2 || names.some((name) => isNumber(name, dialect))) continue;
      const roles = rolesOf(names, port);
      if (!roles.some(({ quantity }) => quantity === "frequency")) continue;
      const known = new Set(roles.map(({ quantity }) => quantity).filter((quantity) => quantity !== "other")).size;
      const isSameWidth = names.length === dialect.columns;
      if (known < 2 && !isSameWidth) continue;
      const score = known + (isSameWidth ? 100 : 0);
      if (score > bestScore) {
        best = { roles, names };
        bestScore = score;
      }
    }
  }
  return best;
}

const isSplitBy = (line: string, delimiter: Delimiter) => splitLine(line, delimiter).length > 1;

function isNumber(name: string, dialect: Dialect): boolean {
  const cell = readCell(name, dialect);
  return cell.kind === "number" && !cell.isRemarked;
}

/** Blanks inside names ("Return Loss (dB)") make more than one split of a blank-separated header worth trying. */
function splitsOf(line: string, delimiter: Delimiter): readonly (readonly string[])[] {
  const strip = (cells: readonly string[]) => cells.map((cell) => cell.replace(/^(["'])(.*)\1$/, "$2").trim());
  if (delimiter !== "space") {
    const cells = strip(splitLine(line, delimiter));
    return [cells.at(-1) === "" ? cells.slice(0, -1) : cells];
  }
  const single = strip(line.trim().split(/\s+/));
  const wide = strip(line.trim().split(/\t|\s{2,}/));
  const joined: string[] = [];
  for (const word of single) {
    const before = joined.at(-1);
    if (before !== undefined && (/^[[({]/.test(word) || isUnitOf(before, word)))
      joined[joined.length - 1] += ` ${word}`;
    else joined.push(word);
  }
  return [joined, wide];
}

/** Whether a word is the unit of the frequency that the word before it names. */
function isUnitOf(name: string, word: string): boolean {
  const { quantity, frequencyUnit } = roleFromHeader(name);
  return quantity === "frequency" && frequencyUnit === null && frequencyUnitOf(word) !== null;
}

/** The cells of a row that holds nothing but units, or null. */
function asUnits(line: string, dialect: Dialect): readonly string[] | null {
  const cells = splitLine(line, dialect.delimiter).map((cell) =>
    cell.replace(/^[[(]|[\])]$/g, "").replace(/^[-–—]$/, ""),
  );
  const filled = cells.filter((cell) => cell !== "");
  if (filled.length === 1 && cells.length > 1 && frequencyUnitOf(filled[0] ?? "") !== null) return cells;
  if (filled.length === 0 || cells.length > dialect.columns + 1) return null;
  const isUnit = (cell: string) => wordsOf(cell).length === 1 && wordsOf(cell).every((word) => UNIT_WORDS.has(word));
  const hasFrequencyUnit = filled.some((cell) => /^(k|m|g)?hz$/i.test(cell));
  // A frequency's unit alone may be a header that is nothing but units ("MHz;SWR"); two units make a row of units.
  return hasFrequencyUnit && filled.length >= 2 && filled.every(isUnit) ? cells : null;
}

/** Whether a line holds units and nothing else. */
export const isRowOfUnits = (line: string, dialect: Dialect): boolean => asUnits(line, dialect) !== null;

/** The longest that a unit is written: "degrees". */
const LONGEST_UNIT = 8;

/** The same of a row some of whose units are not known, right below the names of its columns. */
function asUnitsBelow(line: string, above: string, dialect: Dialect, port: number): readonly string[] | null {
  const cells = splitLine(line, dialect.delimiter).map((cell) => cell.replace(/^[[(]|[\])]$/g, ""));
  const frequency = cells.findIndex((cell) => frequencyUnitOf(cell) !== null);
  if (frequency < 0 || cells.some((cell) => cell.length > LONGEST_UNIT || isNumber(cell, dialect))) return null;
  const names = bestSplit(above, dialect, port);
  if (names === null || names.names.length !== cells.length) return null;
  if (names.roles[frequency]?.quantity !== "frequency" || names.roles[frequency].frequencyUnit) return null;
  return cells.map((cell) => (UNIT_WORDS.has(wordsOf(cell).join(" ")) ? cell : ""));
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
  for (let line = lineIndex + 1; line < first; line++) if (isRowLike(lines.text(line))) return line;
  return first;
}

/** Whether a line begins as a row of numbers does. */
const isRowLike = (line: string): boolean => /^[\s"|~>]*\d[\d.,]*\s*(?:[kmg]?hz)?\s*["\s,;|]/i.test(line);
