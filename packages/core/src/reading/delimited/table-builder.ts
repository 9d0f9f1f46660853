import { doubled } from "../../numbers/grow.js";

/** The rows of numbers of a delimited text, column by column. */
export interface NumberTable {
  /** NaN where a cell holds no number */
  readonly columns: readonly Float64Array[];
  /** Line of each row in the file, counted from 1 */
  readonly lines: Uint32Array;
  /** Cells that say "more than": the bound they state (null where they state none) */
  readonly atLeast: readonly { readonly row: number; readonly column: number; readonly bound: number | null }[];
  /** Lines among the rows that are no rows of numbers, counted from 1 */
  readonly strange: readonly number[];
  /** Lines of comments among the rows and below them, counted from 1 */
  readonly notes: readonly number[];
  /** Cells that hold a number and a remark, and their lines, counted from 1 */
  readonly remarked: readonly { readonly line: number; readonly text: string }[];
  /** Line at which another block of numbers begins, counted from 1; null where there is none */
  readonly nextBlockLine: number | null;
}

/** A table as its rows are read, cell by cell. */
export class TableBuilder {
  #columns: Float64Array<ArrayBuffer>[];
  #lines = new Uint32Array(1024);
  #rows = 0;
  readonly #atLeast: { row: number; column: number; bound: number | null }[] = [];
  readonly #strange: number[] = [];
  readonly #notes: number[] = [];
  readonly #remarked: { line: number; text: string }[] = [];

  constructor(columns: number) {
    this.#columns = Array.from({ length: columns }, () => new Float64Array(1024));
  }

  put(column: number, value: number): void {
    (this.#columns[column] as Float64Array)[this.#rows] = value;
  }

  putAtLeast(column: number, bound: number | null): void {
    this.put(column, Number.NaN);
    this.#atLeast.push({ row: this.#rows, column, bound });
  }

  endRow(line: number): void {
    this.#lines[this.#rows++] = line;
    if (this.#rows < this.#lines.length) return;
    this.#lines = doubled(this.#lines);
    this.#columns = this.#columns.map(doubled);
  }

  dropRow(): void {
    while (this.#atLeast.at(-1)?.row === this.#rows) this.#atLeast.pop();
  }

  dropStrange(line: number): void {
    this.dropRow();
    this.#strange.push(line);
  }

  remark(line: number, text: string): void {
    this.#remarked.push({ line, text });
  }

  note(line: number): void {
    this.#notes.push(line);
  }

  build() {
    return {
      columns: this.#columns.map((column) => column.subarray(0, this.#rows)),
      lines: this.#lines.subarray(0, this.#rows),
      atLeast: this.#atLeast,
      strange: this.#strange,
      notes: this.#notes,
      remarked: this.#remarked,
    };
  }
}
