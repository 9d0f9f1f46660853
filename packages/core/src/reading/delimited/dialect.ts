import { quote, ReadError } from "../../input/read-error.js";
import type { Delimiter, ReadOptions } from "../options/read-options.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { TextLines } from "../text/text-lines.js";
import { type CellDialect, hasUnitBeside } from "./cell-grammar.js";
import { DELIMITER_CHARACTERS } from "./cells.js";
import { bestReadings, type Evidence, numbersOf } from "./dialect-evidence.js";
import type { Dialect } from "./table-text.js";

/** Every way of writing that is tried. */
const CANDIDATES: readonly Pick<CellDialect, "delimiter" | "decimal">[] = [
  { delimiter: "tab", decimal: "point" },
  { delimiter: "semicolon", decimal: "point" },
  { delimiter: "comma", decimal: "point" },
  { delimiter: "tab", decimal: "comma" },
  { delimiter: "semicolon", decimal: "comma" },
  { delimiter: "space", decimal: "point" },
  { delimiter: "space", decimal: "comma" },
  { delimiter: "bar", decimal: "point" },
  { delimiter: "bar", decimal: "comma" },
  { delimiter: "comma", decimal: "comma" },
];
/** Lines looked at to decide: few where they leave no doubt, else many. The rest is read so, and checked. */
const FEW_LINES = 24;
const MANY_LINES = 2000;

/**
 * Decides delimiter, decimal mark and the place of the numbers together: the reading under which the most lines are
 * rows of numbers of one width wins.
 *
 * @param from line from which on numbers are looked for
 * @throws ReadError `no-data` where no reading gives two columns of numbers; `ambiguous` where two different ones are
 *   equally good
 */
export function decideDialect(lines: TextLines, options: ReadOptions, file: string, from = 0): Dialect {
  const start = firstPossibleRow(lines, from);
  const firstLines = lines.texts(start, start + FEW_LINES);
  refuseShortened(firstLines, file);
  // A line that begins with a number may still be a title: one further down is looked at as well.
  const looked = [firstLines[0] ?? "", firstLines[firstLines.length >> 1] ?? ""];
  const stated = lines.delimiter ?? options.delimiter;
  const isByTabs = areThousandsBetweenTabs(start > 0 ? lines.text(start - 1) : "", firstLines);
  const candidates = CANDIDATES.filter(
    ({ delimiter, decimal }) =>
      (stated === undefined || delimiter === stated) &&
      (options.decimal === undefined || decimal === options.decimal) &&
      looked.some((line) => occurs(delimiter, line)) &&
      // Only quotes tell the comma within a number from the one behind it.
      (delimiter !== "comma" || decimal !== "comma" || looked.some((line) => line.includes('"'))),
  ).map((candidate) => ({
    ...candidate,
    isDecimalStated: options.decimal !== undefined,
    isDelimiterStated: stated !== undefined || (candidate.delimiter === "tab" && isByTabs),
  }));
  const strict = bestReadings(candidates, lines, start, FEW_LINES, false);
  // Where every row holds a remark, numbers with one are all there is.
  const isLoose = strict.length === 0 && bestReadings(candidates, lines, start, MANY_LINES, false).length === 0;
  const few = isLoose ? bestReadings(candidates, lines, start, FEW_LINES, true) : strict;
  // Whole numbers at the start may hide a decimal comma that comes later.
  const isClear = few.length === 1 && (few[0]?.dataLines ?? 0) >= FEW_LINES / 2 && few[0]?.hasFractions === true;
  const best = isClear ? few : bestReadings(candidates, lines, start, MANY_LINES, isLoose);
  // Blanks beside tabs stand within the cells.
  const areTabbed = best.some(({ dialect }) => dialect.delimiter === "tab");
  // A comma within quotes is the decimal one where no point stands in any number.
  const isQuoted =
    (mark: "point" | "comma") =>
    ({ dialect }: Evidence) =>
      dialect.delimiter === "comma" && dialect.decimal === mark;
  const hasDecimalComma =
    best.some(isQuoted("comma")) && best.some((evidence) => isQuoted("point")(evidence) && !evidence.hasFractions);
  const [first, ...others] = best.filter(
    (evidence) =>
      !(areTabbed && evidence.dialect.delimiter === "space") && !(hasDecimalComma && isQuoted("point")(evidence)),
  );
  if (first === undefined) throw noNumbers(lines, options, file);
  const rival = others.find((other) => {
    const from = Math.max(first.dialect.firstDataLine, other.dialect.firstDataLine);
    return numbersOf(other, from) !== numbersOf(first, from);
  });
  if (rival !== undefined) throw ambiguous(first, rival, lines, file);
  return first.dialect;
}

/** Refuses numbers of which only the decimals are written where the rest is that of the row above: 10.100, .110, .120. */
function refuseShortened(lines: readonly string[], file: string): void {
  const starts = lines.map((line) => /^[\s"]*(\d*)[.,](\d+)/.exec(line)).filter((match) => match !== null);
  const [first, ...others] = starts;
  if (first === undefined || first[1] === "" || !others.some(([, whole]) => whole === "")) return;
  throw new ReadError({
    code: "ambiguous",
    file,
    found: "numbers at the start of the rows that begin with their decimal mark, below others that do not",
    remedy: "Write each frequency with all its digits.",
  });
}

/** "14 068" */
const BLANK_THOUSANDS = /^\s*[1-9]\d{0,2}(?: \d{3})+(?:[.,]\d+)?\s*$/;

/** Whether rows have as many tabs as the names above them, and thousands apart by blanks in the cells below that of a frequency in kHz or Hz. */
function areThousandsBetweenTabs(heading: string, rows: readonly string[]): boolean {
  if (!heading.includes("\t")) return false;
  const names = heading.split("\t");
  const column = names.findIndex((name) => /^k?Hz$/.test(roleFromHeader(name).frequencyUnit ?? ""));
  const cells = rows.filter((row) => row.trim() !== "").map((row) => row.split("\t"));
  return (
    column >= 0 &&
    cells.length > 0 &&
    cells.every((row) => row.length === names.length && BLANK_THOUSANDS.test(row[column] ?? ""))
  );
}

/** Whether a delimiter stands in a row at all; a comma as decimal mark beside it needs quotes. */
function occurs(delimiter: Delimiter, row: string): boolean {
  if (delimiter === "space") return /\S\s+\S/.test(row);
  return row.includes(DELIMITER_CHARACTERS[delimiter]);
}

/** "7;" */
const SHORTEST_ROW = 2;

/** The first line that may hold two numbers: what stands above is preamble, however long. */
function firstPossibleRow(lines: TextLines, from: number): number {
  for (let line = from; lines.has(line); line++) {
    if (lines.end(line) - lines.start(line) >= SHORTEST_ROW && mayHoldNumbers(lines.text(line))) return line;
  }
  return from;
}

/** What stands for a reading that there is none of: marks, nothing, or a word. */
const OFF_SCALE =
  /^["\s]*[;,\t]["\s]*(?:[^\p{L}]*|[-+]?inf.*|over|ol|err|nan|n\/?a)["\s;,]*$|^\s+(?:[>\u2265\u221e]|-{2,}|inf\b|ol\b|over\b)/iu;

/** Begins like a number, and has digits, or what stands for a reading, after something that could split columns. */
function mayHoldNumbers(line: string): boolean {
  const start = /^[\s"|]*[+-]?[.,]?\d[\d.,]*/.exec(line);
  if (start === null) return false;
  const rest = line.slice(start[0].length);
  return /\d/.test(rest) || start[0].includes(",") || OFF_SCALE.test(rest);
}

function noNumbers(lines: TextLines, options: ReadOptions, file: string): ReadError {
  const shown = lines.texts(0, MANY_LINES);
  const example = shown.find((line) => /^\s*"?[+-]?\d/.test(line)) ?? shown.find((line) => line.trim() !== "") ?? "";
  const forced = options.delimiter !== undefined || options.decimal !== undefined;
  const inTheWay = hasUnitBeside(example)
    ? "units beside them"
    : /\d,\d/.test(example) && /\d\.\d/.test(example)
      ? "marks between thousands"
      : null;
  return new ReadError({
    code: "no-data",
    file,
    found: `no two columns of numbers${example === "" ? "" : `; a line reads ${quote(example.trim())}`}`,
    expected: "rows with a frequency and a reading, split by comma, semicolon, tab, bars or blanks",
    remedy: forced
      ? "Try it without --delimiter and --decimal."
      : inTheWay === null
        ? "Export the sweep as Touchstone (.s1p) or as CSV with a header line."
        : `Export the numbers without ${inTheWay}, or the sweep as Touchstone (.s1p).`,
  });
}

function ambiguous(first: Evidence, second: Evidence, lines: TextLines, file: string): ReadError {
  const name = ({ dialect }: Evidence) => `--delimiter ${dialect.delimiter} --decimal ${dialect.decimal}`;
  return new ReadError({
    code: "ambiguous",
    file,
    line: first.dialect.firstDataLine + 1,
    found: `${quote(lines.text(first.dialect.firstDataLine).trim())} can be read in two ways`,
    remedy: `Say which one is meant: ${name(first)} or ${name(second)}.`,
  });
}

export const DELIMITER_WORDS: Readonly<Record<Delimiter, string>> = {
  comma: "commas",
  semicolon: "semicolons",
  tab: "tabs",
  space: "blanks",
  bar: "bars",
};
