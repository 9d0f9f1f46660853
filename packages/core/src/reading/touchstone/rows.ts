import { quote, ReadError } from "../../input/read-error.js";
import {
  CARRIAGE_RETURN,
  COMMA,
  CONTROL_Z,
  EXCLAMATION,
  FORM_FEED,
  LINE_FEED,
  POINT,
  SPACE,
  TAB,
} from "../text/ascii.js";
import { type NumberRows, type NumberRowsBuilder, numberRowsOf } from "../text/number-rows.js";
import { scanPlainRows } from "../text/plain-rows.js";
import { scanNumber } from "../text/scan-numbers.js";
import type { SourceText } from "../text/text.js";

/** What separates the words of a Touchstone line. */
export const isBlank = (byte: number) => byte === SPACE || byte === TAB || byte === FORM_FEED || byte === 0;

/** The rest of the file, where it is nothing but rows of three numbers: a one-port as nearly every analyser writes it. */
export function plainOnePort(bytes: Uint8Array, start: number, line: number, shift: number): NumberRows | null {
  const plain = scanPlainRows(bytes, start, { delimiter: null, decimalMark: POINT, shifts: [shift, 0, 0] });
  return plain && numberRowsOf(plain, line);
}

/**
 * Scans a line that holds numbers and blanks only, without looking for its end first.
 *
 * The first number is scanned as a frequency. It may be none, in a line that goes on with a matrix: a line of an even
 * count, or any line of a version 2 file; then it is scanned once more as it stands.
 *
 * @returns index of the first byte of the next line; 0, with nothing kept, where the line holds anything else
 */
export function scanPlainRow(
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

/**
 * Reads a line of numbers that holds more than numbers and blanks: a comment, commas, words for no number.
 *
 * @throws ReadError `bad-number` for any other word
 */
export function readRow(
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
  return bytes.subarray(from, end).includes(POINT);
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
