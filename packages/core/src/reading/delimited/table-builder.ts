import { doubled } from "../../numbers/grow.js";
import type { LeftOutReason } from "../points/line-ledger.js";
import type { Cell } from "./cell-grammar.js";

/** What stands beside a number, and in which line, counted from 1. */
export interface Remarked {
  readonly line: number;
  readonly text: string;
}

/** Rows of a delimited text as they were cut: their plain numbers, and the cells of those rows that hold anything else. */
export interface CutRows {
  /** NaN in rows whose cells stand in `cells` */
  readonly columns: readonly Float64Array[];
  /** Line of each row in the file, counted from 1 */
  readonly lines: Uint32Array;
  /** By row, the cells of those that are not plain numbers throughout */
  readonly cells: ReadonlyMap<number, readonly Cell[]>;
  /** Lines among the rows that are no rows of numbers, counted from 1 */
  readonly leftOut: readonly { readonly line: number; readonly reason: LeftOutReason }[];
  /** Lines of comments among the rows and below them, counted from 1 */
  readonly comments: readonly number[];
  /** Cells that hold a number and a remark */
  readonly remarked: readonly Remarked[];
  /** Line at which another block of numbers begins, counted from 1; null where there is none */
  readonly nextBlockLine: number | null;
}

/** Grows as rows are read. `put` fills the row that `endRow` closes. */
export class TableBuilder {
  #columns: Float64Array<ArrayBuffer>[];
  #lines = new Uint32Array(1024);
  #rows = 0;
  readonly #cells = new Map<number, readonly Cell[]>();
  readonly #leftOut: { line: number; reason: LeftOutReason }[] = [];
  readonly #comments: number[] = [];
  readonly #remarked: Remarked[] = [];

  constructor(columns: number) {
    this.#columns = Array.from({ length: columns }, () => new Float64Array(1024));
  }

  put(column: number, value: number): void {
    (this.#columns[column] as Float64Array)[this.#rows] = value;
  }

  endRow(line: number): void {
    this.#lines[this.#rows++] = line;
    if (this.#rows < this.#lines.length) return;
    this.#lines = doubled(this.#lines);
    this.#columns = this.#columns.map(doubled);
  }

  /** A row whose cells are not plain numbers throughout. */
  addCells(line: number, cells: readonly Cell[]): void {
    this.#cells.set(this.#rows, cells);
    for (let c = 0; c < this.#columns.length; c++) this.put(c, Number.NaN);
    this.endRow(line);
  }

  leaveOut(line: number, reason: LeftOutReason): void {
    this.#leftOut.push({ line, reason });
  }

  remark(line: number, text: string): void {
    this.#remarked.push({ line, text });
  }

  comment(line: number): void {
    this.#comments.push(line);
  }

  build(nextBlockLine: number | null): CutRows {
    return {
      columns: this.#columns.map((column) => column.subarray(0, this.#rows)),
      lines: this.#lines.subarray(0, this.#rows),
      cells: this.#cells,
      leftOut: this.#leftOut,
      comments: this.#comments,
      remarked: this.#remarked,
      nextBlockLine,
    };
  }
}
