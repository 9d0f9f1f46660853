import { type ColumnRole, isReading } from "../options/column-role.js";
import { DELIMITERS, type Delimiter } from "../options/read-options.js";
import { frequencyUnitOf } from "../options/units.js";
import { wordsOf } from "../quantities/name-words.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import { readCell } from "./cell-grammar.js";
import { splitLine } from "./cells.js";
import type { Dialect } from "./table-text.js";

/** Names of columns, and what they say that each holds. */
export interface ColumnNames {
  readonly roles: readonly ColumnRole[];
  /** The cells as printed */
  readonly names: readonly string[];
}

/** The header of a delimited text: what each column holds, as far as the text says. */
export interface Header extends ColumnNames {
  /** Index of the header's line; -1 where the names stand in none */
  readonly lineIndex: number;
  /** What stands straight above the names, cell by cell */
  readonly titles: readonly string[];
}

/** What columns of such names hold. */
export const rolesOf = (names: readonly string[], port: number) => names.map((name) => roleFromHeader(name, port));

/** The split of a line that recognises the most columns; null where no frequency is among them, or numbers are. */
export function namesInLine(line: string, dialect: Dialect, port: number): ColumnNames | null {
  const delimiters: Delimiter[] = [dialect.delimiter, ...DELIMITERS.filter((other) => other !== dialect.delimiter)];
  let best: ColumnNames | null = null;
  let bestScore = 0;
  let bestDelimiter: Delimiter | null = null;
  let leastTorn = 0;
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
      // A last column of remarks is empty in most rows.
      const isBesideRemarks = delimiter !== "space" && names.length === dialect.columns + 1;
      if (known < 2 && !isSameWidth && !(isBesideRemarks && delimiter === dialect.delimiter)) continue;
      // A name that blanks tear apart leaves words that say nothing.
      const torn = roles.filter(({ quantity }) => quantity === "other").length;
      const score = known + (isSameWidth ? 100 : 0);
      if (score > bestScore || (score === bestScore && delimiter === bestDelimiter && torn < leastTorn)) {
        best = { roles, names };
        bestScore = score;
        bestDelimiter = delimiter;
        leastTorn = torn;
      }
    }
  }
  return best;
}

const isSplitBy = (line: string, delimiter: Delimiter) => splitLine(line, delimiter).length > 1;

/** Whether a cell is a number and nothing else: "5 m" may be the name of what is that high. */
function isNumber(name: string, dialect: Dialect): boolean {
  const cell = readCell(name, dialect);
  return cell.kind === "number" && !cell.isRemarked && cell.unit?.kind !== "other";
}

/** Blanks inside names ("Return Loss (dB)") make more than one split of a blank-separated header worth trying. */
export function splitsOf(line: string, delimiter: Delimiter): readonly (readonly string[])[] {
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
  const [, inBrackets = ""] = LISTED_IN_WORDS.exec(line) ?? [];
  return [joined, wide, ...(inBrackets === "" ? [] : [strip(inBrackets.split(/\s*[,;/|]\s*/))])];
}

/** "Here they are (MHz, SWR):" */
const LISTED_IN_WORDS = /\(([^()]*[,;/|][^()]*)\)\s*[:.]?\s*$/;

/** Whether a word is the unit of the frequency that the word before it names. */
function isUnitOf(name: string, word: string): boolean {
  const { quantity, frequencyUnit } = roleFromHeader(name);
  return quantity === "frequency" && frequencyUnit === null && frequencyUnitOf(word) !== null;
}

const UNIT_WORDS: ReadonlySet<string> = new Set(
  "hz khz mhz ghz ohm ohms kohm db deg ° rad % 1 siemens ms degrees gon w watt watts".split(" "),
);

/** The cells of a row that holds nothing but units, or null. */
export function asUnits(line: string, dialect: Dialect): readonly string[] | null {
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

/** In the place of a unit, what a reading is against: "re 120 ohm" */
const SAYS_REFERENCE =
  /^(?:(?:re|ref\.?|rel\.?|@|at|in|z0 ?=)\s*\d{2,4}(?:[.,]\d+)?\s*(?:ohms?|Ω)?|\d{2,4}\s*(?:ohms?|Ω))$/iu;
/** The longest that a unit is written: "degrees". */
const LONGEST_UNIT = 8;

/** The same, and of a row some of whose units are not known, right below the names of its columns. */
export function unitsIn(line: string, above: string | null, dialect: Dialect, port: number): readonly string[] | null {
  return asUnits(line, dialect) ?? (above === null ? null : asUnitsBelow(line, above, dialect, port));
}

function asUnitsBelow(line: string, above: string, dialect: Dialect, port: number): readonly string[] | null {
  const cells = splitLine(line, dialect.delimiter).map((cell) => cell.replace(/^[[(]|[\])]$/g, ""));
  const frequency = cells.findIndex((cell) => frequencyUnitOf(cell) !== null);
  const isLong = (cell: string) => cell.length > LONGEST_UNIT && !SAYS_REFERENCE.test(cell);
  if (frequency < 0 || cells.some((cell) => isLong(cell) || isNumber(cell, dialect))) return null;
  // Names of series may stand above names of readings.
  if (cells.some((cell) => roleFromHeader(cell, port).quantity === "swr")) return null;
  const names = namesInLine(above, dialect, port);
  if (names === null || names.names.length !== cells.length) return null;
  if (names.roles[frequency]?.quantity !== "frequency" || names.roles[frequency].frequencyUnit) return null;
  return cells.map((cell) => (UNIT_WORDS.has(wordsOf(cell).join(" ")) || SAYS_REFERENCE.test(cell) ? cell : ""));
}
