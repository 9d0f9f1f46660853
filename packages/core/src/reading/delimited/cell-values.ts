import type { ColumnRole } from "../options/column-role.js";
import { type Cell, type NumberCell, numberOf } from "./cell-grammar.js";
import type { CellUnit } from "./cell-units.js";

/** The one in the middle of some sizes; 0 for none. */
export const medianOf = (sizes: number[]): number => sizes.sort((a, b) => a - b)[sizes.length >> 1] ?? 0;

/** Whether it is a unit of a quantity, and not a word like another. */
export const isUnit = (unit: CellUnit | null): unit is CellUnit => unit !== null && unit.kind !== "other";

/** The mark between thousands in a cell; null where there is none. */
export const markIn = (cell: Cell): string | null => (cell.kind === "number" ? cell.mark : null);

/** Whether a number may be one of a column: "40m" is no frequency. */
export const belongs = ({ unit }: NumberCell, { quantity }: ColumnRole): boolean =>
  unit?.kind !== "other" || quantity === "other" || quantity === "forward-power" || quantity === "reflected-power";

/** What a cell says that it is more than. */
export const boundOf = (digits: string | null): number | null => (digits === null ? null : numberOf({ digits }));
