import { quote, ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { UNIT_EXPONENTS } from "../options/units.js";
import { BRACKET, CARRIAGE_RETURN, CONTROL_Z, EXCLAMATION, HASH, LINE_FEED } from "../text/ascii.js";
import { type NumberRows, NumberRowsBuilder } from "../text/number-rows.js";

import type { SourceText } from "../text/text.js";
import {
  isOptionLine,
  isWholeOptionLine,
  parseOptionLine,
  type TouchstoneKeywords,
  type TouchstoneOptions,
} from "./header.js";
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
const LONGEST_FIRST_LINE = 200;

/** Walks the file once. @throws ReadError for a broken header, or a word where a number should be. */
export function scanTouchstone(text: SourceText): TouchstoneScan {
  const { bytes } = text;
  let rows: NumberRowsBuilder | null = null;
  const comments: string[] = [];
  const findings: Finding[] = [];
  const keywords = new KeywordReader(text.file, findings);
  let options: TouchstoneOptions | null = null;
  let optionLine = 0;
  let line = 0;
  let position = 0;
  let plain: NumberRows | null = null;
  while (position < bytes.length) {
    line++;
    if (options !== null && keywords.expectsData) {
      if (rows === null && keywords.result.version === null) {
        plain = plainOnePort(bytes, position, line, UNIT_EXPONENTS[options.unit]);
        if (plain !== null) break;
      }
      const isVersion1 = keywords.result.version === null;
      rows ??= new NumberRowsBuilder(bytes.length);
      const next = scanPlainRow(bytes, position, line, UNIT_EXPONENTS[options.unit], isVersion1, rows);
      if (next > 0) {
        position = next;
        continue;
      }
    }
    let end = position;
    while (end < bytes.length && bytes[end] !== LINE_FEED && bytes[end] !== CARRIAGE_RETURN) end++;
    let start = position;
    while (start < end && isBlank(bytes[start] as number)) start++;
    position = bytes[end] === CARRIAGE_RETURN && bytes[end + 1] === LINE_FEED ? end + 2 : end + 1;
    if (start === end) continue;
    const first = bytes[start] as number;
    if (first === CONTROL_Z) break;
    const comment = bytes.subarray(start, end).indexOf(EXCLAMATION);
    if (comment >= 0 && comments.length < MOST_COMMENTS) comments.push(text.decode(start + comment + 1, end).trim());
    if (comment === 0) continue;
    if (keywords.skipsInformation(first, () => text.decode(start, end))) continue;
    if (first === HASH) {
      const content = text.decode(start, end);
      if (/^#\d+!/.test(content)) comments.push(content.slice(content.indexOf("!") + 1).trim());
      else if (options !== null) {
        findings.push(secondOptionLine(options, withoutComment(content), line, (rows?.count ?? 0) > 0));
      } else if (keywords.result.version === null && !isOptionLine(withoutComment(content))) {
        comments.push(content.slice(1).trim());
      } else {
        options = parseOptionLine(withoutComment(content), text.file, line);
        optionLine = line;
        noteRepairs(options, line, findings);
      }
      continue;
    }
    if (first === BRACKET) {
      if (keywords.take(withoutComment(text.decode(start, end)), line)) break;
      continue;
    }
    if (keywords.ended) {
      findings.push(finding("caution", "text-after-end", "Ignored what follows [End].", { line }));
      break;
    }
    if (keywords.takesReference(() => withoutComment(text.decode(start, end)), line)) continue;
    if (isBlockMark(bytes, start, end)) continue;
    if (options === null) throw missingOptionLine(text, line, start, end);
    rows ??= new NumberRowsBuilder(bytes.length);
    readRow(text, start, end, line, UNIT_EXPONENTS[options.unit], rows);
  }
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

/** What a text's first line that is no comment makes of it; a title behind # counts as one where an option line follows. */
export function touchstoneSigns(text: SourceText): "touchstone" | "numbers-first" | "other" {
  const { bytes } = text;
  let position = 0;
  let hasTitle = false;
  while (position < bytes.length) {
    let end = position;
    while (end < bytes.length && bytes[end] !== LINE_FEED && bytes[end] !== CARRIAGE_RETURN) end++;
    while (position < end && isBlank(bytes[position] as number)) position++;
    const isContent = position < end && bytes[position] !== EXCLAMATION;
    const content = isContent ? text.decode(position, Math.min(end, position + LONGEST_FIRST_LINE)) : "";
    position = end + 1;
    if (content === "" || /^#\d+!/.test(content) || /^begin\s*$/i.test(content)) continue;
    if (hasTitle) {
      if (!content.startsWith("#")) return "other";
      if (isWholeOptionLine(withoutComment(content))) return "touchstone";
    } else if (content.startsWith("#") && !isOptionLine(withoutComment(content))) hasTitle = true;
    else return signsOf(content);
  }
  return "other";
}

function signsOf(content: string): "touchstone" | "numbers-first" | "other" {
  if (content.startsWith("#")) return "touchstone";
  if (/^\[\s*(version|begin information)/i.test(content)) return "touchstone";
  return /^[+-]?\.?\d[\d.eE+-]*\s/.test(content) ? "numbers-first" : "other";
}

function withoutComment(content: string): string {
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
  if (!isAfterRows || !differs)
    return finding("info", "second-option-line", "Ignored a second option line; the first one counts.", { line });
  const message = `A second option line, ${quote(content)}, states something else than the first. By the rule it is ignored, so that what follows it is misread if it holds: were two sweeps put into one file? Give each a file of its own.`;
  return finding("problem", "second-option-line", message, { line });
}

const OPTION_WORDS: ReadonlySet<string> = new Set("hz khz mhz ghz s y z h g ri ma db".split(" "));

function noteRepairs(options: TouchstoneOptions, line: number, findings: Finding[]): void {
  for (const word of options.repaired) {
    findings.push(
      finding(
        "caution",
        "option-line-repaired",
        `A blank is missing in the option line at ${quote(word)}; read as meant.`,
        { line },
      ),
    );
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
