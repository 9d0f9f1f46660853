import { isReading } from "../options/column-role.js";
import type { TextLines } from "../text/text-lines.js";
import { COMMENT_MARK, DELIMITER_CHARACTERS, splitLine } from "./cells.js";
import { frequencyUnitIn } from "./frequency-statement.js";
import { asUnits, type Header, namesInLine, rolesOf, splitsOf, unitsIn } from "./heading-line.js";
import type { Dialect } from "./table-text.js";

/** How far above the numbers a header is looked for. */
export const REACH = 200;
/** Characters of a line that are looked at. */
const LONGEST_HEADER = 4000;
const RULE_LINE = /^[\s\-=_+|*~.]*$/;
/**
 * Finds the header: the nearest line of words above the numbers that names a frequency. It may be split otherwise than
 * the numbers are, stand behind a comment mark, and have a row of units below or above it. Where none stands above, one
 * below the first numbers is looked for: what stands above that was preamble.
 */
export function findHeader(lines: TextLines, dialect: Dialect, port: number): Header | null {
  let units: readonly string[] | null = null;
  for (const { lineIndex, line, above } of linesAround(lines, dialect)) {
    if (RULE_LINE.test(line)) continue;
    const isAbove = lineIndex < dialect.firstDataLine;
    const rowOfUnits = isAbove ? unitsIn(line, above, dialect, port) : null;
    if (rowOfUnits !== null) {
      units = rowOfUnits;
      continue;
    }
    const split = namesInLine(line, dialect, port);
    // "frequency unit MHz" names a frequency, and heads no column.
    if (
      split === null ||
      (isAbove && !split.roles.some(isReading) && split.names.length !== dialect.columns && isStatement(line, dialect))
    )
      continue;
    const unitsAbove = isAbove ? (units ?? (above === null ? null : asUnits(above, dialect))) : null;
    const named = split.names.map((name, c) => (unitsAbove?.[c] ? `${name} (${unitsAbove[c]})` : name));
    const names = isAbove && areCounted(lines, dialect, named.length) ? ["", ...named] : named;
    const roles = names === split.names ? split.roles : rolesOf(names, port);
    return { names, roles, lineIndex, titles: titlesOver(lines, lineIndex, dialect) };
  }
  return null;
}

/** Whether the rows between blanks are counted from the left, in a column more than there are names: as programs print tables. */
function areCounted(lines: TextLines, { delimiter, columns, firstDataLine }: Dialect, names: number): boolean {
  if (delimiter !== "space" || columns !== names + 1 || !lines.has(firstDataLine + 1)) return false;
  const [first, second] = [0, 1].map((i) => splitLine(lines.text(firstDataLine + i), delimiter)[0]);
  return (first === "0" && second === "1") || (first === "1" && second === "2");
}

/** Whether a line states the unit of frequency and is no row of names. */
const isStatement = (line: string, { delimiter, columns }: Dialect): boolean =>
  frequencyUnitIn([line]) !== null && (delimiter === "space" || splitLine(line, delimiter).length !== columns);

/** The lines where a header may stand: those above the numbers from the nearest on, then those below the first numbers. */
function* linesAround(
  lines: TextLines,
  dialect: Dialect,
): Generator<{ readonly lineIndex: number; readonly line: string; readonly above: string | null }> {
  const { firstDataLine } = dialect;
  let above = firstDataLine > 0 ? contentOf(lines, firstDataLine - 1, dialect) : null;
  for (let i = firstDataLine - 1; above !== null && i >= firstDataLine - REACH; i--) {
    const line = above;
    above = i > 0 ? contentOf(lines, i - 1, dialect) : null;
    yield { lineIndex: i, line, above };
  }
  for (let i = firstDataLine + 1; i < firstDataLine + REACH && lines.has(i); i++) {
    yield { lineIndex: i, line: contentOf(lines, i, dialect), above: null };
  }
}

/** A line without its comment mark. A mark before a delimiter, or a delimiter itself, may head a column of row numbers. */
function contentOf(lines: TextLines, line: number, { firstDataLine, delimiter, columns }: Dialect): string {
  const given = lines.text(line).slice(0, LONGEST_HEADER);
  const text = delimiter === "bar" ? withBars(given) : given;
  const content = text.replace(COMMENT_MARK, "");
  if (delimiter === "bar" && content.startsWith(DELIMITER_CHARACTERS.bar)) return text;
  if (delimiter === "space") return areNumberedUnder(text, lines, columns, firstDataLine) ? text : content;
  if (!text.slice(0, -content.length).includes(DELIMITER_CHARACTERS[delimiter])) return content;
  const first = splitLine(lines.text(firstDataLine), delimiter);
  if (splitLine(text, delimiter).length !== first.length) return content;
  const numberOf = (row: number) =>
    lines.has(row) ? Number(splitLine(lines.text(row), delimiter)[0] ?? "") : Number.NaN;
  // A delimiter at the end of the rows may make up for the mark; row numbers then tell.
  return first.at(-1) !== "" || numberOf(firstDataLine + 1) === numberOf(firstDataLine) + 1 ? text : content;
}

/** A row of titles as some pages mark it, "! f (MHz) !! SWR" over "| 7.05 || 1.5" and "^ f (MHz) ^ SWR ^" over "| 7.05 | 1.5 |". */
function withBars(line: string): string {
  if (line.includes("!!")) return line.replace(/^\s*!|!!/g, (mark) => mark.trim().replaceAll("!", "|"));
  return /^\s*\^.*\^\s*$/.test(line) ? line.replaceAll("^", "|") : line;
}

/** Whether a mark by itself is the name of the first of so many columns: that of row numbers. */
function areNumberedUnder(line: string, lines: TextLines, columns: number, firstDataLine: number): boolean {
  if (!/^\s*#\s/.test(line) || !lines.has(firstDataLine + 1)) return false;
  const [first, second] = [0, 1].map((i) => Number.parseFloat(lines.text(firstDataLine + i)));
  return (
    (first === 0 || first === 1) &&
    second === first + 1 &&
    splitsOf(line, "space").some((names) => names.length === columns)
  );
}

/** The cells straight above the names of columns; none where nothing stands there. */
function titlesOver(lines: TextLines, lineIndex: number, { delimiter }: Dialect): readonly string[] {
  if (lineIndex < 1 || delimiter === "space") return [];
  const cells = splitLine(lines.text(lineIndex - 1), delimiter);
  return cells.length > 1 ? cells : [];
}
