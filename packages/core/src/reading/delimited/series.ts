import { quote, ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { UNIT_EXPONENTS } from "../options/units.js";
import { columnsText } from "../quantities/column-names.js";
import { byPartOfName } from "./names-in-part.js";
import { sideBySide, withOwnFrequencies } from "./series-beside.js";
import { byColumn } from "./series-by-column.js";
import { underQuantity } from "./series-under-quantity.js";
import { stacked } from "./stacked.js";
import type { TableColumn } from "./table-column.js";
import type { TableInHz } from "./table-in-hz.js";
import type { TableOfSeries } from "./table-of-series.js";
import type { TextsOfCells } from "./texts-of-cells.js";

/**
 * Tells several series in a table apart: side by side, or by a column (the antenna, its height, before and after).
 *
 * @param titles what stands above the names of the columns, cell by cell
 * @param comments the lines above the table
 * @throws ReadError `ambiguous` where other frequencies belong to no series
 */
export function tableOfSeries(
  table: TableInHz,
  titles: readonly string[],
  comments: readonly string[],
  cells: TextsOfCells | null,
  file: string,
  findings: Finding[],
): TableOfSeries {
  const told = withOwnFrequencies(table, titles) ?? sideBySide(table, titles);
  const inRows = told === null ? (byColumn(table, cells, findings) ?? byPartOfName(table, findings)) : null;
  const beside = told ?? (inRows === null ? underQuantity(table, comments) : null);
  const found = beside === null ? inRows : stacked(table, beside);
  const names = beside?.names ?? [];
  if (beside?.names === null) findings.push(finding("info", "tables-joined", { count: beside.sets.length }));
  if (names.length > 1) findings.push(finding("info", "series-told-apart", { column: "the header", values: names }));
  if (found === null || found.columns.length === table.columns.length) refuseOtherFrequencies(table, file);
  return found ?? { ...table, series: null };
}

/** Frequencies of one row differ by less than this share where two columns state them. */
const SAME_FREQUENCY = 1e-3;

/** Refuses a second column of frequencies that are not those of the first. One that has other words in its name says of what. */
function refuseOtherFrequencies({ columns, index, unit }: TableInHz, file: string): void {
  const first = columns[index] as TableColumn;
  const other = columns.findIndex(
    ({ role, name }, c) => c > index && role.quantity === "frequency" && NAMES_FREQUENCY.test(name),
  );
  const second = columns[other];
  if (second === undefined) return;
  const exponent = second.unit === null ? UNIT_EXPONENTS[second.role.frequencyUnit ?? unit] : 0;
  const apart = first.values.filter((value, row) => {
    const stated = (second.values[row] ?? Number.NaN) * 10 ** exponent;
    return Math.abs(stated - value) > SAME_FREQUENCY * value;
  });
  const known = second.values.filter((value) => Number.isFinite(value)).length;
  if (known < first.values.length || apart.length < known / 2) return;
  const roles = columns.map(({ role }) => role);
  // What stands behind the other frequencies belongs to them.
  const skipped = (from: number) =>
    columnsText(roles, unit, new Map(roles.slice(from).map((_, place) => [from + place, "skip"])));
  throw new ReadError({
    code: "ambiguous",
    file,
    found: `the columns ${quote(first.name)} and ${quote(second.name)} hold different frequencies`,
    remedy: `Say which one counts: ${skipped(other)}.`,
  });
}

/** Words for a frequency and nothing else. */
const NAMES_FREQUENCY = /^\W*(?:f\p{L}*\.?\W*(?:in\W+)?[kmg]?(?:hz)?|[kmg]?hz)\W*$/iu;
