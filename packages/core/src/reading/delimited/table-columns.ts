import { once } from "../../numbers/once.js";
import type { ColumnRole } from "../options/column-role.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import { type Cell, halfUnitOf, numberOf, readCell } from "./cell-grammar.js";
import { belongs, boundOf, isUnit, markIn, medianOf } from "./cell-values.js";
import { splitLines, trimmedRow } from "./cells.js";
import type { ColumnTitle } from "./column-unit.js";
import { partsOf } from "./complex-columns.js";
import { dressedColumn } from "./dressed-column.js";
import type { Cut, TableColumn } from "./table-column.js";
import { isDecimalMark } from "./thousands.js";

/** What the columns are called, from the left. */
export interface Titles {
  /** The header's cells; empty where there is none */
  readonly names: readonly string[];
  /** What user or preamble say that they hold; null where the names tell it */
  readonly roles: readonly ColumnRole[] | null;
}

/** A column is one of complex numbers where at least this share of its rows hold one; "7<100" alone is a slip. */
const MOST = 0.5;
/** Rows looked at to see how many digits a column is printed with. */
const ROWS_FOR_DIGITS = 30;

/**
 * The columns of a table. A column whose cells hold complex numbers becomes two, real and imaginary part or magnitude and angle.
 * Units in cells are held against the names of their columns, and marks between thousands are taken out where they stand
 * throughout.
 *
 * @throws ReadError `ambiguous` where a unit or a mark contradicts its column
 */
export function tableColumns(cut: Cut, titles: Titles): readonly TableColumn[] {
  const columns: TableColumn[] = [];
  const sample = once(() => cellsOfRows(cut, cut.rows.lines.subarray(0, ROWS_FOR_DIGITS)));
  const all = once(() => cellsOfRows(cut, cut.rows.lines));
  const special = [...cut.rows.cells.values()];
  const isAnyDressed = special.some((cells) => cells.some(isDressed));
  const certain = once(() => all().flat().map(markIn).find(isDecimalMark) ?? null);
  for (let c = 0; c < cut.dialect.columns; c++) {
    const titleAt = (place: number, name = titles.names[c]): ColumnTitle => ({
      name: name ?? `column ${place + 1}`,
      role:
        titles.roles === null ? roleFromHeader(name ?? "", cut.port) : (titles.roles[place] ?? { quantity: "other" }),
      isNamed: titles.roles === null,
    });
    if (special.filter((cells) => cells[c]?.kind === "complex").length >= MOST * cut.rows.lines.length) {
      columns.push(...partsOf(c, titles.names[c], all, sample, (i, name) => titleAt(columns.length + i, name)));
      continue;
    }
    const title = titleAt(columns.length);
    columns.push(
      isAnyDressed ? dressedColumn(c, title, all(), sample, certain, cut) : bareColumn(c, title, sample, cut),
    );
  }
  return columns;
}

/** The cells of some lines, row by row. */
const cellsOfRows = ({ lines, dialect }: Cut, wanted: Uint32Array): readonly (readonly Cell[])[] =>
  splitLines(
    Array.from(wanted, (line) => trimmedRow(lines.text(line - 1), dialect.delimiter)),
    dialect.delimiter,
  ).map((texts) => Array.from({ length: dialect.columns }, (_, c) => readCell(texts[c] ?? "", dialect)));

const isDressed = (cell: Cell): boolean => cell.kind === "number" && (isUnit(cell.unit) || cell.mark !== null);

function bareColumn(
  c: number,
  title: ColumnTitle,
  sample: () => readonly (readonly Cell[])[],
  { rows, shifts }: Cut,
): TableColumn {
  const plain = rows.columns[c] as Float64Array;
  const values = rows.cells.size === 0 ? plain : Float64Array.from(plain);
  const atLeast: { row: number; bound: number | null }[] = [];
  for (const [row, cells] of rows.cells) {
    const cell = cells[c];
    if (cell?.kind === "number") values[row] = belongs(cell, title.role) ? numberOf(cell, shifts[c]) : Number.NaN;
    else if (cell?.kind === "at-least") atLeast.push({ row, bound: boundOf(cell.digits) });
  }
  const halfUnit = () => medianOf(sample().map((cells) => halfUnitIn(cells[c])));
  const { name, role, isNamed } = title;
  return { name, role, isNamed, values, atLeast, halfUnit, unit: null, mark: null, isPart: false };
}

const halfUnitIn = (cell: Cell | undefined): number => (cell?.kind === "number" ? halfUnitOf(cell.digits) : 0);
