import type { FormTable } from "./form.js";

/** A row that is put into a table of a data base: the names of columns and their values (SQL, ISO/IEC 9075; from memory). */
const INSERT = /^\s*insert\s+into\s+[^\s(]+\s*(?:\(([^()]+)\)\s*)?values\s*\(([^()]+)\)\s*;?\s*$/i;
/** What names the columns once, with what they hold. */
const CREATE = /create\s+table\s+[^(]+\(([^;]*)\)\s*;/i;
const FEWEST_ROWS = 2;

/** A table written as statements that fill one; null where the text is none. */
export function insertStatements(content: string): FormTable | null {
  const lines = content.split(/\r\n|\n|\r/);
  const created = cut(CREATE.exec(content)?.[1] ?? "").map((column) => column.split(/\s+/)[0] ?? "");
  const rows = lines.flatMap((line, i) => {
    const [, names, values] = INSERT.exec(line) ?? [];
    return values === undefined
      ? []
      : [{ names: names === undefined ? created : cut(names), cells: cut(values), line: i + 1 }];
  });
  const [first] = rows;
  if (first === undefined || rows.length < FEWEST_ROWS) return null;
  if (!rows.every(({ names, cells }) => names.join() === first.names.join() && cells.length === names.length))
    return null;
  return {
    name: "statements",
    comments: lines.filter((line) => !INSERT.test(line) && line.trim() !== ""),
    header: first.names,
    rows: rows.map(({ cells, line }) => ({ cells, line })),
  };
}

const cut = (list: string): readonly string[] =>
  list.split(",").map((cell) => cell.trim().replace(/^(['"`])(.*)\1$/, "$2"));
