import { CARRIAGE_RETURN, LINE_FEED, SPACE, TAB } from "./ascii.js";
import { doubled } from "./grow.js";
import { scanNumber } from "./scan-numbers.js";

/** How plain rows are written: so many numbers in each, and what stands between them. */
export interface PlainLayout {
  readonly columns: number;
  /** Byte between two numbers, besides blanks; null where blanks alone split them */
  readonly delimiter: number | null;
  readonly decimalMark: number;
  /** For each column, the power of ten that its values are multiplied by */
  readonly shifts: readonly number[];
}

/** Room is made for rows of this many bytes, and then for as many as come. */
const LIKELY_ROW_LENGTH = 24;
const FIRST_GUESS = 16;

/**
 * Reads rows of numbers and nothing else, from a byte on to the end of the text: what nearly every sweep file is below its
 * header.
 *
 * @returns the numbers row by row; null for anything that needs a closer look (a comment, a blank line, a missing cell)
 */
export function scanPlainRows(bytes: Uint8Array, start: number, layout: PlainLayout): Float64Array | null {
  const { columns, delimiter, decimalMark, shifts } = layout;
  const isTabbed = delimiter === TAB;
  let values = new Float64Array(columns * (FIRST_GUESS + Math.ceil((bytes.length - start) / LIKELY_ROW_LENGTH)));
  let i = start;
  let count = 0;
  while (i < bytes.length) {
    if (count === values.length) values = doubled(values);
    for (let column = 0; column < columns; column++) {
      let byte = bytes[i];
      while (byte === SPACE || (byte === TAB && !isTabbed)) byte = bytes[++i];
      if (column > 0 && delimiter !== null) {
        if (byte !== delimiter) return null;
        do byte = bytes[++i];
        while (byte === SPACE || (byte === TAB && !isTabbed));
      }
      const next = scanNumber(bytes, i, shifts[column] as number, decimalMark, values, count);
      if (next < 0) return null;
      // A number ends in a blank, the delimiter or the line; and one too large for a double needs a closer look.
      const after = bytes[next] as number;
      if ((after > SPACE && after !== delimiter) || !Number.isFinite(values[count++] as number)) return null;
      i = next;
    }
    while (bytes[i] === SPACE || (bytes[i] === TAB && !isTabbed)) i++;
    if (bytes[i] === CARRIAGE_RETURN && bytes[i + 1] === LINE_FEED) i++;
    if (i < bytes.length && bytes[i] !== LINE_FEED && bytes[i] !== CARRIAGE_RETURN) return null;
    i++;
  }
  return values.subarray(0, count);
}
