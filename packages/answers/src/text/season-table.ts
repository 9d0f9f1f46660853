import type { TableColumn } from "./table.js";

/** A table with the sentence above it. */
export interface SeasonTable {
  readonly name: string;
  readonly above: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[])[];
}
