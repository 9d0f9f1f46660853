import { roleFromHeader } from "../quantities/role-from-header.js";
import type { TextLines } from "../text/text-lines.js";
import { COMMENT_MARK, isComment, splitLine } from "./cells.js";
import { namesInLine, rolesOf } from "./heading-line.js";
import type { Dialect } from "./table-text.js";

const LONGEST_HEADING = 1000;

/**
 * Whether a line above numbers, behind a comment mark perhaps, names columns otherwise than the header does, so that another
 * table begins. So does one of unknown words, as many as there are columns, and one of any number of words below a blank line.
 */
export function isAnotherHeading(lines: TextLines, line: number, dialect: Dialect, header: readonly string[]): boolean {
  const text = lines.text(line).trim();
  if (header.length === 0 || text.length > LONGEST_HEADING || !startsWithNumber(lines, line + 1)) return false;
  if (!/^[#!%;*"'\s]*\p{L}|^#/u.test(text)) return false;
  const cells = splitLine(text, dialect.delimiter);
  if (cells.some((cell) => /(?:^|\s)\d/.test(cell))) return false;
  const named = columnsNamedIn(text, dialect, header);
  if (named !== null) return named === "others";
  if (isComment(text) || cells.length < 2 || !cells.every((cell) => /^\p{L}{2,}/u.test(cell))) return false;
  const quantities = (names: readonly string[]) => names.map((name) => roleFromHeader(name).quantity);
  const isKnown = quantities(cells).some((quantity) => quantity !== "other");
  if (isKnown && quantities(cells).join() === quantities(header).join()) return false;
  const isApart = [line - 1, line - 2].some(
    (above) => above > dialect.firstDataLine && lines.text(above).trim() === "",
  );
  if (dialect.delimiter === "space") return isApart && isKnown;
  return isApart || (cells.length === dialect.columns && !isKnown && !goesOn(lines, [line - 2, line - 1, line + 1]));
}

/** A row goes on where its first number is at most so many steps beyond that of the last one. */
const MOST_STEPS = 3;

/** Whether the first number of the last of three lines goes on where those of the two above it ended, in the same direction. */
export function goesOn(lines: TextLines, [before, above, line]: readonly [number, number, number]): boolean {
  const numberAt = (other: number) => (other < 0 ? Number.NaN : Number.parseFloat(lines.text(other).replace(",", ".")));
  const steps = (numberAt(line) - numberAt(above)) / (numberAt(above) - numberAt(before));
  return steps > 0 && steps <= MOST_STEPS;
}

const startsWithNumber = (lines: TextLines, line: number): boolean =>
  lines.has(line) && /^[\s"]*[+-]?[.,]?\d/.test(lines.text(line));

/** Whether a line names columns, two known ones at the least: the same as some names do, or others; null where it names none. */
function columnsNamedIn(line: string, dialect: Dialect, names: readonly string[]): "same" | "others" | null {
  const split = namesInLine(line.replace(COMMENT_MARK, ""), dialect, 1);
  if (split === null || split.roles.filter(({ quantity }) => quantity !== "other").length < 2) return null;
  const roles = rolesOf(names, 1);
  const areOthers = split.roles.some(({ quantity, frequencyUnit = null }, c) => {
    const { quantity: known = "other", frequencyUnit: knownUnit = null } = roles[c] ?? {};
    return quantity !== known || (frequencyUnit !== null && knownUnit !== null && frequencyUnit !== knownUnit);
  });
  return areOthers ? "others" : "same";
}
