import { type ColumnRole, isReading } from "../options/column-role.js";
import { DELIMITERS, type Delimiter } from "../options/read-options.js";
import { frequencyUnitOf } from "../options/units.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import { readCell } from "./cell-grammar.js";
import { COMMENT_MARK, splitLine } from "./cells.js";
import type { Dialect } from "./dialect.js";

/** Names of columns, and what they say that each holds. */
export interface ColumnNames {
  readonly roles: readonly ColumnRole[];
  /** The cells as printed */
  readonly names: readonly string[];
}

/** What columns of such names hold. */
export const rolesOf = (names: readonly string[], port: number) => names.map((name) => roleFromHeader(name, port));

/** Whether a line names columns, two known ones at the least: the same as some names do, or others; null where it names none. */
export function columnsNamedIn(line: string, dialect: Dialect, names: readonly string[]): "same" | "others" | null {
  const split = namesInLine(line.replace(COMMENT_MARK, ""), dialect, 1);
  if (split === null || split.roles.filter(({ quantity }) => quantity !== "other").length < 2) return null;
  const roles = rolesOf(names, 1);
  const areOthers = split.roles.some(({ quantity, frequencyUnit = null }, c) => {
    const { quantity: known = "other", frequencyUnit: knownUnit = null } = roles[c] ?? {};
    return quantity !== known || (frequencyUnit !== null && knownUnit !== null && frequencyUnit !== knownUnit);
  });
  return areOthers ? "others" : "same";
}

/** The split of a line that recognises the most columns; null where no frequency is among them, or numbers are. */
export function namesInLine(line: string, dialect: Dialect, port: number): ColumnNames | null {
  const delimiters: Delimiter[] = [dialect.delimiter, ...DELIMITERS.filter((other) => other !== dialect.delimiter)];
  let best: ColumnNames | null = null;
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
      // A last column of remarks is empty in most rows.
      const isBesideRemarks = delimiter !== "space" && names.length === dialect.columns + 1;
      if (known < 2 && !isSameWidth && !(isBesideRemarks && delimiter === dialect.delimiter)) continue;
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

/** Whether a cell is a number and nothing else. */
export function isNumber(name: string, dialect: Dialect): boolean {
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
