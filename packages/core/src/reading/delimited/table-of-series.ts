import type { TableInHz } from "./table-in-hz.js";

/** More values than these name no series. */
export const MOST_SERIES = 20;

/** A table whose rows belong to one series or several. */
export interface TableOfSeries extends TableInHz {
  /** The series of each row, by its place among the names; null where there is only one */
  readonly series: { readonly names: readonly string[]; readonly of: Uint32Array } | null;
}
