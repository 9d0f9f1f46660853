import { printableText } from "@feedpoint/core/for-command";

/** Text fit for a terminal. */
export const printable = printableText;

/** A cell of delimited text: quoted where it must be, and defused where a spreadsheet would run it as a formula. */
export function csvCell(value: string | number | boolean | null, delimiter = ","): string {
  if (value === null) return "";
  if (typeof value === "number") return Number.isFinite(value) ? String(value) : "";
  if (typeof value === "boolean") return String(value);
  const safe = printable(value).replace(/^[=+\-@]/, "'$&");
  return safe.includes('"') || safe.includes(delimiter) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** A cell of a Markdown table. */
export function markdownCell(text: string): string {
  return printable(text).replace(/[\\|<>`*_[\]]/g, "\\$&");
}
