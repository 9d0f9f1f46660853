import { doubled } from "../../numbers/grow.js";
import { CARRIAGE_RETURN, LINE_FEED, SPACE, TAB } from "./ascii.js";
import { scanNumber } from "./scan-numbers.js";

/** How plain rows are written: so many numbers in each, and what stands between them. */
export interface PlainLayout {
  /** Byte between two numbers, besides blanks; null where blanks alone split them */
  readonly delimiter: number | null;
  readonly decimalMark: number;
  /** For each column, the power of ten that its values are multiplied by */
  readonly shifts: readonly number[];
}

/** Rows that are all alike: a column of finite numbers for each place in them. */
export interface PlainRows {
  readonly columns: readonly Float64Array[];
  readonly count: number;
}

/** Room for this many rows more than there would be if all were as long as the first. */
const SPARE_ROWS = 16;

/**
 * Reads rows of numbers and nothing else, from a byte on to the end of the text: what nearly every sweep file is below its
 * header.
 *
 * @returns null for anything that needs a closer look (a comment, a blank line, a missing cell), and for no rows at all
 */
export function scanPlainRows(bytes: Uint8Array, start: number, layout: PlainLayout): PlainRows | null {
  const { delimiter, decimalMark, shifts } = layout;
  const isTabbed = delimiter === TAB;
  const firstEnd = bytes.indexOf(LINE_FEED, start);
  let room = SPARE_ROWS + (firstEnd < 0 ? 0 : Math.ceil((bytes.length - start) / (firstEnd + 1 - start)));
  let columns = emptyColumns(shifts.length, room);
  let i = start;
  let count = 0;
  while (i < bytes.length) {
    if (count === room) {
      columns = columns.map(doubled);
      room *= 2;
    }
    for (let c = 0; c < columns.length; c++) {
      let byte = bytes[i];
      while (byte === SPACE || (byte === TAB && !isTabbed)) byte = bytes[++i];
      if (c > 0 && delimiter !== null) {
        if (byte !== delimiter) return null;
        do byte = bytes[++i];
        while (byte === SPACE || (byte === TAB && !isTabbed));
      }
      const column = columns[c] as Float64Array;
      const next = scanNumber(bytes, i, shifts[c] as number, decimalMark, column, count);
      if (next < 0) return null;
      // A number ends in a blank, the delimiter or the line; and one too large for a double needs a closer look.
      const after = bytes[next] as number;
      if ((after > SPACE && after !== delimiter) || !Number.isFinite(column[count] as number)) return null;
      i = next;
    }
    count++;
    while (bytes[i] === SPACE || (bytes[i] === TAB && !isTabbed)) i++;
    if (bytes[i] === CARRIAGE_RETURN && bytes[i + 1] === LINE_FEED) i++;
    if (i < bytes.length && bytes[i] !== LINE_FEED && bytes[i] !== CARRIAGE_RETURN) return null;
    i++;
  }
  return count === 0 ? null : { columns: firstOf(columns, count), count };
}

// Outside the scan: a counter that a closure holds is no longer kept in a register.
const emptyColumns = (count: number, room: number) => Array.from({ length: count }, () => new Float64Array(room));
const firstOf = (columns: readonly Float64Array[], count: number) => columns.map((column) => column.subarray(0, count));

/** 0, 1, 2...: as far as was asked for, and kept, since files are many. */
let naturals = new Uint32Array(0);

/** The lines of plain rows in their file: one after the other, to be read only. */
export function linesFrom(first: number, count: number): Uint32Array {
  const end = first + count;
  if (naturals.length < end) naturals = Uint32Array.from({ length: 2 * end }, (_, number) => number);
  return naturals.subarray(first, end);
}
