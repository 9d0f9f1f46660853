import type { Finding } from "../../sweep/finding.js";
import type { TextLines } from "../text/text-lines.js";
import type { Dialect } from "./dialect.js";
import { byPartOfName, sideBySide, withOwnFrequencies } from "./series-beside.js";
import { byColumn } from "./series-by-column.js";
import type { TableInHz } from "./table-in-hz.js";
import type { TableOfSeries } from "./table-of-series.js";

/**
 * Tells several series in a table apart: side by side, or by a column (the antenna, its height, before and after).
 *
 * @param titles what stands above the names of the columns, cell by cell
 */
export function tableOfSeries(
  table: TableInHz,
  titles: readonly string[],
  dialect: Dialect,
  lines: TextLines,
  findings: Finding[],
): TableOfSeries {
  const found =
    withOwnFrequencies(table, titles, findings) ??
    sideBySide(table, titles, findings) ??
    byColumn(table, dialect, lines, findings) ??
    byPartOfName(table, findings);
  return found ?? { ...table, series: null };
}
