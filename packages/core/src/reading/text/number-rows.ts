import { at } from "../../numbers/column.js";
import { doubled } from "../../numbers/grow.js";
import type { PlainRows } from "./plain-rows.js";

/** Rows of numbers of any length, one per line that holds any. */
export interface NumberRows {
  readonly count: number;
  /** Line of a row in the file, counted from 1 */
  readonly line: (row: number) => number;
  /** How many numbers a row holds */
  readonly width: (row: number) => number;
  /** The number at a place of a row; places beyond its last are those of the rows after it */
  readonly value: (row: number, place: number) => number;
  /** What a row's first number is in Hz, should it be a frequency. (Where it is one, `value` may have it in Hz too.) */
  readonly leadingHz: (row: number) => number;
  /** The same numbers as columns, all finite, where the rows are plain; null where they are not */
  readonly plain: PlainRows | null;
}

/** Rows that are plain from a line on to the end of the file, their first column in Hz. */
export function numberRowsOf(plain: PlainRows, firstLine: number): NumberRows {
  const { columns, count } = plain;
  const value = (row: number, place: number) => at(columns[place] as Float64Array, row);
  return {
    count,
    line: (row) => firstLine + row,
    width: () => columns.length,
    value,
    leadingHz: (row) => value(row, 0),
    plain,
  };
}

/**
 * Grows as rows come in: all values in one array, with where each row starts, so that no row is an object. `add` puts a
 * number into the row being filled, `endRow` closes it.
 */
export class NumberRowsBuilder {
  #values: Float64Array<ArrayBuffer>;
  #count = 0;
  #starts: Uint32Array<ArrayBuffer>;
  #lines: Uint32Array<ArrayBuffer>;
  #leadingHz: Float64Array<ArrayBuffer>;
  #rows = 0;

  /** @param bytes length of the text, from which the first size is guessed */
  constructor(bytes: number) {
    const rows = 16 + Math.ceil(bytes / 24);
    this.#values = new Float64Array(3 * rows);
    this.#starts = new Uint32Array(rows);
    this.#lines = new Uint32Array(rows);
    this.#leadingHz = new Float64Array(rows);
  }

  add(value: number): void {
    if (this.#count === this.#values.length) this.#values = doubled(this.#values);
    this.#values[this.#count++] = value;
  }

  endRow(line: number, leadingHz: number): void {
    if (this.#rows + 1 >= this.#starts.length) {
      this.#starts = doubled(this.#starts);
      this.#lines = doubled(this.#lines);
      this.#leadingHz = doubled(this.#leadingHz);
    }
    this.#leadingHz[this.#rows] = leadingHz;
    this.#lines[this.#rows++] = line;
    this.#starts[this.#rows] = this.#count;
  }

  /** Rows that have been ended. */
  get count(): number {
    return this.#rows;
  }

  /** Numbers in the row being filled. */
  get pending(): number {
    return this.#count - (this.#starts[this.#rows] as number);
  }

  /** Puts another number in the place of the first one of the row being filled. */
  replaceFirst(value: number): void {
    this.#values[this.#starts[this.#rows] as number] = value;
  }

  /** Forgets what was put into the row being filled. */
  dropPending(): void {
    this.#count = this.#starts[this.#rows] as number;
  }

  build(): NumberRows {
    const values = this.#values.subarray(0, this.#count);
    const starts = this.#starts;
    const lines = this.#lines;
    const leadingHz = this.#leadingHz;
    const startOf = (row: number) => starts[row] as number;
    return {
      count: this.#rows,
      line: (row) => lines[row] as number,
      width: (row) => startOf(row + 1) - startOf(row),
      value: (row, place) => at(values, startOf(row) + place),
      leadingHz: (row) => at(leadingHz, row),
      plain: null,
    };
  }
}
