import type { Table } from "./table.js";

/** A table with what it is about, and what must be said ahead of it and after. */
export interface NamedTable extends Table {
  readonly name: string;
  readonly intro: string | null;
  readonly outro: string | null;
}
