import { ReadError } from "../../input/read-error.js";
import { doubled } from "../../numbers/grow.js";
import type { Delimiter } from "../options/read-options.js";
import { CARRIAGE_RETURN, CONTROL_Z, LINE_FEED } from "./ascii.js";
import type { SourceText } from "./text.js";

/** The lines of a text as ranges of its bytes, found as they are asked for; only those looked at become strings. */
export interface TextLines {
  readonly bytes: Uint8Array;
  /** Between the cells of a line, where it is known */
  readonly delimiter: Delimiter | undefined;
  /** Whether there is a line of this number; lines are counted from 0 */
  has(line: number): boolean;
  /** Index of a line's first byte, and of the one after its last; of lines that there are */
  start(line: number): number;
  end(line: number): number;
  /** The line's characters without line end and zero bytes */
  text(line: number): string;
  /** Lines from `from` up to, not including, `to` */
  texts(from: number, to: number): readonly string[];
}

/** Lines whose characters are kept (our own choice). */
const KEPT_LINES = 100;

/** The lines of a text: ended by LF, CR LF or CR, in any mixture, and all before a Ctrl-Z. */
export function linesOf(text: SourceText): TextLines {
  const { bytes, delimiter } = text;
  let starts = new Uint32Array(256);
  let ends = new Uint32Array(256);
  let count = 0;
  let position = 0;
  const findNext = () => {
    let end = position;
    let byte = bytes[end] as number;
    // Every byte that ends a line or the text is below 0x20: one comparison for the others.
    while (end < bytes.length && (byte >= 0x20 || !isEnd(byte))) byte = bytes[++end] as number;
    if (end - position > LONGEST_LINE) throw tooLong(text, count + 1, end - position);
    if (count === starts.length) {
      starts = doubled(starts);
      ends = doubled(ends);
    }
    starts[count] = position;
    ends[count++] = end;
    const isLast = byte === CONTROL_Z;
    position = isLast ? bytes.length : byte === CARRIAGE_RETURN && bytes[end + 1] === LINE_FEED ? end + 2 : end + 1;
  };
  const has = (line: number) => {
    while (count <= line && position < bytes.length && bytes[position] !== CONTROL_Z) findNext();
    return line < count;
  };
  // The first lines are asked for again and again until it is settled how the text is written.
  const first: string[] = [];
  const decoded = (line: number) => text.decode(starts[line] as number, ends[line] as number).replaceAll("\0", "");
  const textOf = (line: number) => {
    // Rows of nothing but numbers are read without their lines being found.
    if (!has(line)) return "";
    if (line >= KEPT_LINES) return decoded(line);
    first[line] ??= decoded(line);
    return first[line];
  };
  /** Puts the lines of a range that are kept into `first`, decoding all at once. */
  const decodeTogether = (from: number, to: number) => {
    const end = Math.min(to, KEPT_LINES);
    if (end - from < 2 || first[end - 1] !== undefined) return;
    const start = starts[from] as number;
    const whole = text.decode(start, ends[end - 1] as number);
    // A character of several bytes moves those behind it.
    if (whole.length !== (ends[end - 1] as number) - start || whole.includes("\0")) return;
    for (let line = from; line < end; line++) {
      first[line] ??= whole.slice((starts[line] as number) - start, (ends[line] as number) - start);
    }
  };
  return {
    bytes,
    delimiter,
    has,
    start: (line) => starts[line] as number,
    end: (line) => ends[line] as number,
    text: textOf,
    texts: (from, to) => {
      let end = from;
      while (end < to && has(end)) end++;
      decodeTogether(from, end);
      return Array.from({ length: end - from }, (_, i) => textOf(from + i));
    },
  };
}

/** No row of a sweep comes near this; whole pictures and archives written as text do. */
const LONGEST_LINE = 32768;

function tooLong({ file }: SourceText, line: number, length: number): ReadError {
  return new ReadError({
    code: "too-large",
    file,
    line,
    found: `the line is ${length} characters long`,
    expected: "one row of a sweep in a line",
    remedy: "Export the sweep from the analyser as Touchstone (.s1p) or CSV and read that.",
  });
}

const isEnd = (byte: number) => byte === LINE_FEED || byte === CARRIAGE_RETURN || byte === CONTROL_Z;
