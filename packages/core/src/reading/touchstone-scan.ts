import { type Finding, finding } from "../finding.js";
import { quote, ReadError } from "../read-error.js";
import { type NumberRows, NumberRowsBuilder } from "./number-rows.js";
import { UNIT_EXPONENTS } from "./options.js";
import { scanPlainRows } from "./plain-rows.js";
import { POINT, scanNumber } from "./scan-numbers.js";
import type { SourceText } from "./text.js";
import { isOptionLine, parseOptionLine, type TouchstoneKeywords, type TouchstoneOptions } from "./touchstone-header.js";
import { KeywordReader } from "./touchstone-keywords.js";

/** A Touchstone file taken apart: header, rows of numbers, comments. Frequencies are not yet told from other numbers. */
export interface TouchstoneScan {
  readonly options: TouchstoneOptions;
  readonly optionLine: number;
  readonly keywords: TouchstoneKeywords;
  readonly twoPortOrder12First: boolean;
  /** One row per line of numbers */
  readonly rows: NumberRows;
  readonly comments: readonly string[];
  readonly findings: readonly Finding[];
}

const TAB = 0x09;
const LINE_FEED = 0x0a;
const FORM_FEED = 0x0c;
const CARRIAGE_RETURN = 0x0d;
const CONTROL_Z = 0x1a;
const SPACE = 0x20;
const EXCLAMATION = 0x21;
const HASH = 0x23;
const COMMA = 0x2c;
const BRACKET = 0x5b;
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
      else if (options === null) {
        options = parseOptionLine(withoutComment(content), text.file, line);
        optionLine = line;
        noteRepairs(options, line, findings);
      } else
        findings.push(
          finding("info", "second-option-line", "Ignored a second option line; the first one counts.", { line }),
        );
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
    twoPortOrder12First: keywords.order12First,
    rows: plain ?? (rows ?? new NumberRowsBuilder(0)).build(),
    comments,
    findings,
  };
}

/** What a text's first line that is no comment makes of it. */
export function touchstoneSigns(text: SourceText): "touchstone" | "numbers-first" | "other" {
  const { bytes } = text;
  let position = 0;
  while (position < bytes.length) {
    let end = position;
    while (end < bytes.length && bytes[end] !== LINE_FEED && bytes[end] !== CARRIAGE_RETURN) end++;
    while (position < end && isBlank(bytes[position] as number)) position++;
    const isContent = position < end && bytes[position] !== EXCLAMATION;
    const content = isContent ? text.decode(position, Math.min(end, position + LONGEST_FIRST_LINE)) : "";
    if (content !== "" && !/^#\d+!/.test(content) && !/^begin\s*$/i.test(content)) return signsOf(content);
    position = end + 1;
  }
  return "other";
}

function signsOf(content: string): "touchstone" | "numbers-first" | "other" {
  if (content.startsWith("#")) return isOptionLine(withoutComment(content)) ? "touchstone" : "other";
  if (/^\[\s*(version|begin information)/i.test(content)) return "touchstone";
  return /^[+-]?\.?\d[\d.eE+-]*\s/.test(content) ? "numbers-first" : "other";
}

const isBlank = (byte: number) => byte === SPACE || byte === TAB || byte === FORM_FEED || byte === 0;

function withoutComment(content: string): string {
  const mark = content.indexOf("!");
  return (mark < 0 ? content : content.slice(0, mark)).trim();
}

/** BEGIN or END alone on a line, as some exports put around the whole file. */
function isBlockMark(bytes: Uint8Array, start: number, end: number): boolean {
  return end - start < 12 && /^(begin|end)\s*$/i.test(String.fromCharCode(...bytes.subarray(start, end)));
}

/** The rest of the file, where it is nothing but rows of three numbers: a one-port as nearly every analyser writes it. */
function plainOnePort(bytes: Uint8Array, start: number, line: number, shift: number): NumberRows | null {
  const layout = { columns: 3, delimiter: null, decimalMark: POINT, shifts: [shift, 0, 0] };
  const values = scanPlainRows(bytes, start, layout);
  if (values === null || values.length === 0) return null;
  const count = values.length / 3;
  const starts = new Uint32Array(count + 1);
  const lines = new Uint32Array(count);
  const leadingHz = new Float64Array(count);
  for (let row = 0; row < count; row++) {
    starts[row + 1] = 3 * (row + 1);
    lines[row] = line + row;
    leadingHz[row] = values[3 * row] as number;
  }
  return { values, starts, lines, leadingHz };
}

/**
 * Scans a line that holds numbers and blanks only, without looking for its end first.
 *
 * The first number is scanned as a frequency. It may be none, in a line that goes on with a matrix: a line of an even
 * count, or any line of a version 2 file; then it is scanned once more as it stands.
 *
 * @returns index of the first byte of the next line; 0, with nothing kept, where the line holds anything else
 */
function scanPlainRow(
  bytes: Uint8Array,
  start: number,
  line: number,
  shift: number,
  isVersion1: boolean,
  rows: NumberRowsBuilder,
): number {
  const end = bytes.length;
  let leadingHz = Number.NaN;
  let firstAt = start;
  let i = start;
  for (;;) {
    let byte = i < end ? (bytes[i] as number) : LINE_FEED;
    while (byte === SPACE || byte === TAB) byte = ++i < end ? (bytes[i] as number) : LINE_FEED;
    if (byte === LINE_FEED || byte === CARRIAGE_RETURN) {
      if (rows.pending > 0) {
        if (!isVersion1 || rows.pending % 2 === 0) rows.replaceFirst(numberAt(bytes, firstAt, 0));
        rows.endRow(line, leadingHz);
      }
      return byte === CARRIAGE_RETURN && bytes[i + 1] === LINE_FEED ? i + 2 : i + 1;
    }
    const isFirst = rows.pending === 0;
    const next = scanNumber(bytes, i, isFirst ? shift : 0, POINT, scanned, 0);
    if (next < 0) break;
    const value = scanned[0] as number;
    // A number must end in a blank or at the end of its line.
    if (next < end && (bytes[next] as number) > SPACE) break;
    if (isFirst) {
      leadingHz = value;
      firstAt = i;
    }
    rows.add(value);
    i = next;
  }
  rows.dropPending();
  return 0;
}

/** Where numbers that are not put into a column right away are scanned to. */
const scanned = new Float64Array(1);

/** The number that is known to start at a byte. */
function numberAt(bytes: Uint8Array, start: number, shift: number): number {
  scanNumber(bytes, start, shift, POINT, scanned, 0);
  return scanned[0] as number;
}

function readRow(
  text: SourceText,
  start: number,
  end: number,
  line: number,
  shift: number,
  rows: NumberRowsBuilder,
): void {
  const { bytes } = text;
  let leadingHz = Number.NaN;
  let i = start;
  while (i < end) {
    const byte = bytes[i] as number;
    if (isBlank(byte)) {
      i++;
      continue;
    }
    if (byte === EXCLAMATION || byte === CONTROL_Z) break;
    // A comma that stands apart from the digits after it, or beside decimal points, separates; "7,1" alone stays an error.
    if (byte === COMMA && rows.pending > 0 && separates(bytes, i, start, end)) {
      i++;
      continue;
    }
    const next = scanNumber(bytes, i, 0, POINT, scanned, 0);
    if (next > 0 && endsWord(bytes, next, end)) {
      if (rows.pending === 0) leadingHz = numberAt(bytes, i, shift);
      rows.add(numberAt(bytes, i, 0));
      i = next;
      continue;
    }
    let wordEnd = i;
    while (wordEnd < end && !isBlank(bytes[wordEnd] as number) && bytes[wordEnd] !== EXCLAMATION) wordEnd++;
    const word = text.decode(i, wordEnd);
    if (!/^[+-]?(nan|inf|infinity|1\.#\w*|-+)(\([^)]*\))?$/i.test(word)) throw badWord(text.file, line, word);
    rows.add(Number.NaN);
    i = wordEnd;
  }
  if (rows.pending > 0) rows.endRow(line, leadingHz);
}

function endsWord(bytes: Uint8Array, next: number, end: number): boolean {
  if (next >= end) return true;
  const byte = bytes[next] as number;
  return (
    isBlank(byte) || byte === EXCLAMATION || byte === CONTROL_Z || (byte === COMMA && separates(bytes, next, 0, end))
  );
}

/** Whether the comma at `index` is followed by a blank, or its line also uses decimal points. */
function separates(bytes: Uint8Array, index: number, start: number, end: number): boolean {
  if (index + 1 >= end || isBlank(bytes[index + 1] as number)) return true;
  let from = Math.max(start, 0);
  for (let i = index; i >= from; i--) if (bytes[i] === LINE_FEED || bytes[i] === CARRIAGE_RETURN) from = i + 1;
  return bytes.subarray(from, end).includes(0x2e);
}

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

function badWord(file: string, line: number, word: string): ReadError {
  const decimalComma = /^[+-]?\d+,\d+/.test(word);
  return new ReadError({
    code: "bad-number",
    file,
    line,
    found: `${quote(word)} is not a number`,
    expected: decimalComma ? "a decimal point (Touchstone knows no decimal comma)" : "a number",
    remedy: decimalComma
      ? "Export it again with decimal points, or save it as CSV with semicolons."
      : "Correct the line, or put ! before it if it is a comment.",
  });
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
