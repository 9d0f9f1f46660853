import { ReadError, unlessRefused } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { isReading } from "../options/column-role.js";
import type { ReadOptions } from "../options/read-options.js";
import type { SourceText } from "../text/text.js";
import { linesOf, type TextLines } from "../text/text-lines.js";
import { COMMENT_MARK } from "./cells.js";
import { type DelimitedColumns, readTable } from "./delimited-columns.js";
import type { Dialect } from "./dialect.js";
import { namesInLine } from "./heading-line.js";

/**
 * The columns of the table in a text. Of several tables it is the first, or a longer one below a first one that is no sweep: a
 * few markers, limits, settings.
 *
 * @throws ReadError where there are no two columns of numbers, or what they hold is not stated
 */
export function readColumns(text: SourceText, options: ReadOptions, findings: Finding[]): DelimitedColumns {
  const lines = linesOf(text);
  const said: Finding[] = [];
  try {
    const first = readTable(lines, 0, text.file, options, said);
    const { rest } = first;
    const above = rest === null || isLongSweep(first) ? null : rest;
    const fewest = first.roles.some(isReading) ? MUCH_LONGER * first.frequencyHz.length : first.frequencyHz.length;
    const other = above === null ? null : laterTable(lines, { ...above, fewest }, text.file, options, findings);
    if (other !== null) return other;
    findings.push(...said);
    return first;
  } catch (error) {
    const other = error instanceof ReadError ? laterTable(lines, null, text.file, options, findings) : null;
    if (other === null) throw error;
    return other;
  }
}

/** Fewer rows than these above a table this many times longer are markers or the like. */
const FEWEST_OF_SWEEP = 8;
const MUCH_LONGER = 3;

const isLongSweep = ({ roles, frequencyHz }: DelimitedColumns): boolean =>
  frequencyHz.length >= FEWEST_OF_SWEEP && roles.some(isReading);

/** A table below another one that is no sweep; null where there is none that is longer. */
function laterTable(
  lines: TextLines,
  above: { readonly line: number; readonly fewest: number; readonly dialect: Dialect } | null,
  file: string,
  options: ReadOptions,
  findings: Finding[],
): DelimitedColumns | null {
  if (options.columns !== undefined) return null;
  const dialect = above?.dialect ?? {
    delimiter: "comma",
    decimal: "point",
    isDecimalStated: false,
    firstDataLine: 0,
    columns: 0,
  };
  const line = laterHeader(lines, above?.line ?? 1, dialect, options.port ?? 1);
  if (line === null) return null;
  const said: Finding[] = [];
  const table = unlessRefused(() => readTable(lines, line, file, options, said));
  if (table === null || table.frequencyHz.length <= (above?.fewest ?? 0)) return null;
  findings.push(finding("caution", "block-left-out", {}, { line: 1 }), ...said);
  return table;
}

/** The first line below some others that names a frequency and a reading, with numbers below it; null where there is none. */
function laterHeader(lines: TextLines, from: number, dialect: Dialect, port: number): number | null {
  for (let line = from; line < from + FURTHEST_HEADER && lines.has(line + 1); line++) {
    const text = lines.text(line).slice(0, LONGEST_HEADING);
    if (!/^[#!%;*"'|\s]*\p{L}/u.test(text) || !/^[\s"|]*[+-]?[.,]?\d/.test(lines.text(line + 1))) continue;
    const split = namesInLine(text.replace(COMMENT_MARK, ""), dialect, port);
    if (split?.roles.some(isReading)) return line;
  }
  return null;
}

const FURTHEST_HEADER = 400;
/** Characters of a line that are looked at. */
const LONGEST_HEADING = 4000;
