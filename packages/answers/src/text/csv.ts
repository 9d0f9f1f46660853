import { csvCell } from "./escape.js";

export type Value = string | number | boolean | null;

/** A table as CSV: numbers at full precision, nothing for what is not known. */
export const csvTable = (header: readonly string[], rows: readonly (readonly Value[])[]): string =>
  [header, ...rows].map((cells) => cells.map((cell) => csvCell(cell)).join(",")).join("\n");
