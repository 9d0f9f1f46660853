import type { CellUnit } from "./cell-units.js";
import type { ColumnTitle } from "./column-unit.js";
import type { CutRows } from "./table-builder.js";
import type { TableText } from "./table-text.js";

/** A column of numbers: what its name and its cells say of it. */
export interface TableColumn extends ColumnTitle {
  /** NaN where a cell holds no number */
  readonly values: Float64Array;
  /** Cells that say "more than": the bound they state (null where they state none) */
  readonly atLeast: readonly { readonly row: number; readonly bound: number | null }[];
  /** Half of one unit in the last printed place, the median over some rows */
  readonly halfUnit: () => number;
  /** What the cells state; null where they state none */
  readonly unit: CellUnit | null;
  /** Between thousands; null where there is none */
  readonly mark: string | null;
  /** Its cells held complex numbers, of which this is a part */
  readonly isPart: boolean;
  /** Its cells state watts */
  readonly isInWatts?: boolean;
}

/** Where columns come from. */
export interface Cut extends TableText {
  readonly rows: CutRows;
  /** Powers of ten that numbers without a unit of their own are multiplied by */
  readonly shifts: readonly number[];
}
