import type { Remarked } from "./table-builder.js";
import type { TableOfSeries } from "./table-of-series.js";
import type { TextsOfCells } from "./texts-of-cells.js";

/** Names of columns that say of each row whether it counts, and the words for one that does not (from memory). */
const TELLS = /^\W*(?:valid(?:ity)?|usable|gültig|valide)\W*$/iu;
const IS_NOT = /^(?:n|no|false|0|nein|non|f|✗|✘)$/iu;

/** Rows that are told not to count; they were read. */
export function flaggedRows({ columns, rows }: TableOfSeries, cells: TextsOfCells | null): readonly Remarked[] {
  const place = columns.findIndex(({ name, isNamed }) => isNamed && TELLS.test(name));
  if (place < 0 || cells === null) return [];
  const texts = cells();
  return [...rows.lines].flatMap((line, row) =>
    IS_NOT.test(texts[row]?.[place] ?? "") ? [{ line, text: texts[row]?.join(" ") ?? "" }] : [],
  );
}
