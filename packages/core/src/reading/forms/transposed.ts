import { splitLine } from "../delimited/cells.js";
import { DELIMITERS } from "../options/read-options.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { FormTable } from "./form.js";

const FEWEST_POINTS = 3;
const MOST_LINES = 60;

/** A table lying on its side: each line a name and then its values, from left to right. */
export function transposed(content: string): FormTable | null {
  const lines = content.split(/\r\n|\n|\r/);
  if (lines.length > MOST_LINES) return null;
  for (const delimiter of DELIMITERS) {
    const rows = lines.map((line) => namedRow(splitLine(line, delimiter)));
    const frequency = rows.find((row) => row !== null && roleFromHeader(row.name).quantity === "frequency");
    if (frequency === undefined || frequency === null) continue;
    const count = frequency.values.length;
    const found = rows.filter((row) => row !== null && row.values.length === count).map((row) => row as NamedRow);
    const isKnown = found.some(({ name }) => !["frequency", "other"].includes(roleFromHeader(name).quantity));
    if (count < FEWEST_POINTS || !isKnown) continue;
    return {
      name: "a table on its side",
      comments: lines.filter((line, i) => line.trim() !== "" && !found.includes(rows[i] as NamedRow)),
      header: found.map(({ name }) => name),
      rows: Array.from({ length: count }, (_, i) => ({
        cells: found.map(({ values }) => values[i] ?? ""),
        line: null,
      })),
    };
  }
  return null;
}

interface NamedRow {
  readonly name: string;
  readonly values: readonly string[];
}

/** Words, and then cells that begin like numbers. Blanks may split the words. */
function namedRow(given: readonly string[]): NamedRow | null {
  const cells = given.at(-1) === "" ? given.slice(0, -1) : given;
  const first = cells.findIndex((cell, i) => i > 0 && /^[<>~]?[+−-]?[.,]?\d/.test(cell));
  if (first < 1 || !/\p{L}/u.test(cells[0] ?? "")) return null;
  const unit = cells.slice(1, first).filter((cell) => cell !== "");
  return { name: [cells[0], ...unit].join(" "), values: cells.slice(first) };
}
