import { csvCell } from "./escape.js";

type Value = string | number | boolean | null;

/** Rows of plain objects as CSV, the first one's keys as the header; numbers at full precision, nothing for unknown. */
export function csvTable(rows: readonly Readonly<Record<string, Value>>[]): string {
  const keys = Object.keys(rows[0] ?? {});
  return [keys.join(","), ...rows.map((row) => keys.map((key) => csvCell(row[key] ?? null)).join(","))].join("\n");
}
