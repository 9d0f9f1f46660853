import { quote, ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { UNIT_EXPONENTS } from "../options/units.js";
import { BRACKET, CARRIAGE_RETURN, CONTROL_Z, EXCLAMATION, HASH, LINE_FEED } from "../text/ascii.js";
import { type NumberRows, NumberRowsBuilder } from "../text/number-rows.js";

import type { SourceText } from "../text/text.js";
import { isOptionLine, parseOptionLine, type TouchstoneKeywords, type TouchstoneOptions } from "./header.js";
import { KeywordReader } from "./keywords.js";
import { isBlank, plainOnePort, readRow, scanPlainRow } from "./rows.js";

/** A Touchstone file taken apart: header, rows of numbers, comments. Frequencies are not yet told from other numbers. */
export interface TouchstoneScan {
  readonly options: TouchstoneOptions;
  readonly optionLine: number;
  readonly keywords: TouchstoneKeywords;
  /** One row per line of numbers */
  readonly rows: NumberRows;
  readonly comments: readonly string[];
  readonly findings: readonly Finding[];
}

const MOST_COMMENTS = 200;

/** What has been found so far while the file is walked. */
interface Progress {
  readonly text: SourceText;
  readonly keywords: KeywordReader;
  readonly comments: string[];
  readonly findings: Finding[];
  options: TouchstoneOptions | null;
  optionLine: number;
  /** null: no row of numbers yet */
  rows: NumberRowsBuilder | null;
  /** The rows of a file that holds nothing else from its first row on, which are read at once */
  plain: NumberRows | null;
}

/** Walks the file once. @throws ReadError for a broken header, or a word where a number should be. */
export function scanTouchstone(text: SourceText): TouchstoneScan {
  const { bytes } = text;
  const findings: Finding[] = [];
  const keywords = new KeywordReader(text.file, findings);
  const found: Progress = {
    text,
    keywords,
    comments: [],
    findings,
    options: null,
    optionLine: 0,
    rows: null,
    plain: null,
  };
  let line = 0;
  let position = 0;
  while (position < bytes.length) {
    line++;
    const next = takeNumbers(found, position, line);
    if (next > 0) {
      position = next;
      continue;
    }
    const { start, end, nextLine } = lineAt(bytes, position);
    position = nextLine;
    if (start < end && takeLine(found, start, end, line) === "last") break;
  }
  const { options, optionLine, comments, plain, rows } = found;
  if (options === null) throw missingOptionLine(text, line, 0, 0);
  keywords.finish();
  return {
    options,
    optionLine,
    keywords: keywords.result,
    rows: plain ?? (rows ?? new NumberRowsBuilder(0)).build(),
    comments,
    findings,
  };
}

/** Where a line begins, blanks before it left out, where it ends, and where the next one begins. */
function lineAt(bytes: Uint8Array, position: number): { start: number; end: number; nextLine: number } {
  let end = position;
  while (end < bytes.length && bytes[end] !== LINE_FEED && bytes[end] !== CARRIAGE_RETURN) end++;
  let start = position;
  while (start < end && isBlank(bytes[start] as number)) start++;
  const nextLine = bytes[end] === CARRIAGE_RETURN && bytes[end + 1] === LINE_FEED ? end + 2 : end + 1;
  return { start, end, nextLine };
}

/**
 * Takes a line that holds numbers and nothing else, or all that is left of the file where it is a plain one-port.
 *
 * @returns where to go on; 0 where the line holds anything else
 */
function takeNumbers(found: Progress, position: number, line: number): number {
  const { options, keywords } = found;
  if (options === null || !keywords.expectsData) return 0;
  const { bytes } = found.text;
  const shift = UNIT_EXPONENTS[options.unit];
  const isVersion1 = keywords.result.version === null;
  if (found.rows === null && isVersion1) {
    found.plain = plainOnePort(bytes, position, line, shift);
    if (found.plain !== null) return bytes.length;
  }
  found.rows ??= new NumberRowsBuilder(bytes.length);
  return scanPlainRow(bytes, position, line, shift, isVersion1, found.rows);
}

/** Takes a line of any kind; "last" where nothing after it counts. */
function takeLine(found: Progress, start: number, end: number, line: number): "more" | "last" {
  const { text, keywords } = found;
  const { bytes } = text;
  const first = bytes[start] as number;
  const content = () => text.decode(start, end);
  if (first === CONTROL_Z) return "last";
  keepComment(found, start, end);
  if (first === EXCLAMATION || keywords.skipsInformation(first, content)) return "more";
  if (first === HASH) {
    takeHashLine(found, content(), line);
    return "more";
  }
  if (first === BRACKET) return keywords.take(withoutComment(content()), line) ? "last" : "more";
  if (keywords.ended) {
    found.findings.push(finding("caution", "text-after-end", {}, { line }));
    return "last";
  }
  if (keywords.takesReference(() => withoutComment(content()), line) || isBlockMark(bytes, start, end)) return "more";
  if (found.options === null) throw missingOptionLine(text, line, start, end);
  found.rows ??= new NumberRowsBuilder(bytes.length);
  readRow(text, start, end, line, UNIT_EXPONENTS[found.options.unit], found.rows);
  return "more";
}

function keepComment({ text, comments }: Progress, start: number, end: number): void {
  const comment = text.bytes.subarray(start, end).indexOf(EXCLAMATION);
  if (comment >= 0 && comments.length < MOST_COMMENTS) comments.push(text.decode(start + comment + 1, end).trim());
}

/** A line that begins with #: the option line, one too many, or a title. */
function takeHashLine(found: Progress, content: string, line: number): void {
  const { text, keywords, comments, findings, options, rows } = found;
  if (NUMBERED_COMMENT.test(content)) comments.push(content.slice(content.indexOf("!") + 1).trim());
  else if (options !== null) {
    findings.push(secondOptionLine(options, withoutComment(content), line, (rows?.count ?? 0) > 0));
  } else if (keywords.result.version === null && !isOptionLine(withoutComment(content), text.file)) {
    comments.push(content.slice(1).trim());
  } else {
    found.options = parseOptionLine(withoutComment(content), text.file, line);
    found.optionLine = line;
    noteRepairs(found.options, line, findings);
  }
}

/** A comment behind a mark and its number. */
export const NUMBERED_COMMENT = /^#\d+!/;

/** A line up to its comment. */
export function withoutComment(content: string): string {
  const mark = content.indexOf("!");
  return (mark < 0 ? content : content.slice(0, mark)).trim();
}

/** BEGIN or END alone on a line, as some exports put around the whole file. */
function isBlockMark(bytes: Uint8Array, start: number, end: number): boolean {
  return end - start < 12 && /^(begin|end)\s*$/i.test(String.fromCharCode(...bytes.subarray(start, end)));
}

/** A second option line is ignored; after numbers, one that states something else says that two sweeps were put together. */
function secondOptionLine(first: TouchstoneOptions, content: string, line: number, isAfterRows: boolean): Finding {
  const stated = /^#\s*(.*?)\s*$/.exec(content)?.[1] ?? "";
  const said = [first.unit, first.parameter, first.format].map((word) => word.toLowerCase());
  const differs = stated
    .toLowerCase()
    .split(/\s+/)
    .some((word) => OPTION_WORDS.has(word) && !said.includes(word));
  if (!isAfterRows || !differs) return finding("info", "second-option-line", { text: null }, { line });
  return finding("problem", "second-option-line", { text: quote(content) }, { line });
}

const OPTION_WORDS: ReadonlySet<string> = new Set("hz khz mhz ghz s y z h g ri ma db".split(" "));

function noteRepairs(options: TouchstoneOptions, line: number, findings: Finding[]): void {
  for (const word of options.repaired) {
    findings.push(finding("caution", "option-line-repaired", { word: quote(word) }, { line }));
  }
}

function missingOptionLine(text: SourceText, line: number, start: number, end: number): ReadError {
  return new ReadError({
    code: "bad-option-line",
    file: text.file,
    line,
    found: end > start ? `data (${quote(text.decode(start, end))}) before any option line` : "there is no option line",
    expected: "a line such as # MHz S RI R 50 before the data",
    remedy: "Without it units and format are unknown; add the line that the analyser should have written.",
  });
}
