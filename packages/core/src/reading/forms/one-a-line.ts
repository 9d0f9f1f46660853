import { isReading } from "../options/column-role.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { FormTable } from "./form.js";

const NUMBER = /^[<>~]?[+−-]?\d+(?:[.,]\d+)?(?:e[+-]?\d+)?$/i;
const FEWEST_ROWS = 3;
const MOST_COLUMNS = 12;

interface Cell {
  readonly text: string;
  readonly line: number;
}

/** A table that fell apart into one cell a line, row by row or column by column; null where the text is none. */
export function oneALine(content: string): FormTable | null {
  const cells = content.split(/\r\n|\n|\r/).flatMap((line, i): readonly Cell[] => {
    const text = bare(line);
    return text === "" ? [] : [{ text, line: i + 1 }];
  });
  const start = cells.findIndex((cell) => isName(cell) && roleFromHeader(cell.text).quantity === "frequency");
  if (start < 0) return null;
  const table = byRows(cells, start) ?? byColumns(cells, start);
  return (
    table && {
      name: "a cell a line",
      comments: cells.slice(0, table.first).map(({ text }) => text),
      header: table.header,
      rows: table.rows.map((row) => ({ cells: row.map(({ text }) => text), line: row[0]?.line ?? null })),
    }
  );
}

/** A line without the marks of cells and lists: "! f/kHz", "| 14000", "- 143.0", "swr:". */
const bare = (line: string): string =>
  /^\s*(?:\{\||\|[-}]|---)/.test(line)
    ? ""
    : line
        .trim()
        .replace(/^(?:[|!]\s*|-\s+)/, "")
        .replace(/:$/, "");

interface Apart {
  readonly header: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** Index of the first name among the cells */
  readonly first: number;
}

const isNumber = ({ text }: Cell): boolean => NUMBER.test(text);
/** A name states no value. */
const isName = ({ text }: Cell): boolean => !/\d ?[kMG]?Hz/i.test(text);
const namesReading = ({ text }: Cell): boolean => isReading(roleFromHeader(text));

/** All names, then the numbers of each row. */
function byRows(cells: readonly Cell[], start: number): Apart | null {
  const end = cells.findIndex((cell, i) => i > start && isNumber(cell));
  const header = cells.slice(start, end);
  if (end < 0 || header.length < 2 || header.length > MOST_COLUMNS || !header.some(namesReading)) return null;
  const last = cells.findIndex((cell, i) => i > end && !isNumber(cell));
  const numbers = cells.slice(end, last < 0 ? cells.length : last);
  if (numbers.length % header.length !== 0 || numbers.length < FEWEST_ROWS * header.length) return null;
  const rows = Array.from({ length: numbers.length / header.length }, (_, r) =>
    numbers.slice(r * header.length, (r + 1) * header.length),
  );
  return { header: header.map(({ text }) => text), rows, first: start };
}

/** A name and its numbers, then the next. */
function byColumns(cells: readonly Cell[], start: number): Apart | null {
  const columns: { readonly name: Cell; readonly numbers: Cell[] }[] = [];
  for (const cell of cells.slice(start)) {
    if (!isNumber(cell)) columns.push({ name: cell, numbers: [] });
    else columns.at(-1)?.numbers.push(cell);
  }
  const length = columns[0]?.numbers.length ?? 0;
  const long = columns.filter(({ numbers }) => numbers.length === length);
  if (length < FEWEST_ROWS || !long.some(({ name }) => namesReading(name))) return null;
  const rows = Array.from({ length }, (_, r) => long.flatMap(({ numbers }) => numbers[r] ?? []));
  return { header: long.map(({ name }) => name.text), rows, first: start };
}
