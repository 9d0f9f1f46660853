import type { TableColumn } from "./table.js";

/** A table with the sentence above it. */
export interface SeasonTable {
  readonly name: string;
  readonly above: string;
  readonly columns: readonly TableColumn[];
  /** It answers what was asked, which deployment to take, and not only what the log teaches */
  readonly isRanking?: true;
  readonly rows: readonly (readonly string[])[];
}
