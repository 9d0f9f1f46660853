import { doubled } from "./grow.js";

/** Rows of numbers of any length, without an object per row: all values in one array, with where each row starts. */
export interface NumberRows {
  readonly values: Float64Array;
  /** Index of each row's first value; one more entry than there are rows, the last being the count of values */
  readonly starts: Uint32Array;
  /** Line of each row in the file, counted from 1 */
  readonly lines: Uint32Array;
  /** What each row's first number is in Hz, should it be a frequency. (Where it is one, `values` may hold it in Hz too.) */
  readonly leadingHz: Float64Array;
}

/** Grows as rows come in. `add` puts a number into the row being filled, `endRow` closes it. */
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
    return {
      values: this.#values.subarray(0, this.#count),
      starts: this.#starts.subarray(0, this.#rows + 1),
      lines: this.#lines.subarray(0, this.#rows),
      leadingHz: this.#leadingHz.subarray(0, this.#rows),
    };
  }
}
