import { csvTable, type Value } from "../text/csv.js";
import type { Table } from "../text/table.js";

/** One column of a job's table, said once for the terminal, Markdown, CSV and pages alike. */
export interface Column<Row> {
  /** What programs know it by; a number's unit ends it */
  readonly key: string;
  /** What it holds, for the JSON Schema and whoever reads the CSV */
  readonly about?: string;
  /** At full precision; absent where only people are shown the column */
  readonly value?: (row: Row) => Value;
  /** What stands above it for people; absent where only programs are */
  readonly title?: string;
  readonly text?: (row: Row) => string;
  readonly align?: "left" | "right";
  /** Order in which columns are left out of a table too wide, the highest first; none: never */
  readonly spare?: number;
}

/** The columns that people are shown, and their rows. */
export function shown<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): Table {
  const told = columns.flatMap(({ key, title, text, align, spare }) =>
    title === undefined || text === undefined
      ? []
      : [{ text, column: { key, title, ...(align && { align }), ...(spare !== undefined && { spare }) } }],
  );
  return {
    columns: told.map(({ column }) => column),
    rows: rows.map((row) => told.map(({ text }) => text(row))),
  };
}

/** The columns that programs read, as CSV. */
export function csvOf<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const told = columns.flatMap(({ key, value }) => (value === undefined ? [] : [{ key, value }]));
  return csvTable(
    told.map(({ key }) => key),
    rows.map((row) => told.map(({ value }) => value(row))),
  );
}

/** What a column of a table holds, by its key. @throws Error for a key of which nothing is said */
export const aboutIn =
  (columns: readonly Column<never>[]) =>
  (key: string): string => {
    const about = columns.find((column) => column.key === key)?.about;
    if (about === undefined) throw new Error(`no column says what "${key}" holds`);
    return about;
  };
