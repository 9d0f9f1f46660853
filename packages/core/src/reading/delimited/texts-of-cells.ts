import { once } from "../../numbers/once.js";
import { splitLines } from "./cells.js";
import type { TableInHz } from "./table-in-hz.js";
import type { TableText } from "./table-text.js";

/** What stands in the cells of each row, one for each column; split when first asked for. */
export type TextsOfCells = () => readonly (readonly string[])[];

/** Null where columns do not stand where their cells do, as those of complex numbers. */
export function textsOfCells({ rows, columns }: TableInHz, { lines, dialect }: TableText): TextsOfCells | null {
  if (columns.length !== dialect.columns) return null;
  return once(() => {
    const texts = Array.from(rows.lines, (line) => lines.text(line - 1));
    return splitLines(texts, dialect.delimiter);
  });
}
