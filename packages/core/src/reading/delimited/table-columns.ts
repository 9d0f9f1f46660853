import { quote, ReadError } from "../../input/read-error.js";
import { once } from "../../numbers/once.js";
import type { ColumnRole } from "../options/column-role.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { TextLines } from "../text/text-lines.js";
import { type Cell, halfUnitOf, type NumberCell, numberOf, readCell, TEXT } from "./cell-grammar.js";
import type { CellUnit } from "./cell-units.js";
import { splitLines } from "./cells.js";
import { type ColumnTitle, type TitleWithUnit, titleWithUnit } from "./column-unit.js";
import { partsOf } from "./complex-columns.js";
import type { Dialect } from "./dialect.js";
import { medianOf } from "./half-units.js";
import type { CutRows } from "./table-builder.js";
import type { TableColumn } from "./table-column.js";
import { grouped, isDecimalMark, refuseDoubt, refuseOtherMarks, withoutFewMarks } from "./thousands.js";

/** What the columns are called, from the left. */
export interface Titles {
  /** The header's cells; empty where there is none */
  readonly names: readonly string[];
  /** What user or preamble say that they hold; null where the names tell it */
  readonly roles: readonly ColumnRole[] | null;
}

/** Where columns come from. */
interface Cut {
  readonly rows: CutRows;
  readonly dialect: Dialect;
  readonly lines: TextLines;
  /** Powers of ten that numbers without a unit of their own are multiplied by */
  readonly shifts: readonly number[];
  readonly port: number;
  readonly file: string;
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
    Array.from(wanted, (line) => lines.text(line - 1).trim()),
    dialect.delimiter,
  ).map((texts) => Array.from({ length: dialect.columns }, (_, c) => readCell(texts[c] ?? "", dialect)));

const isDressed = (cell: Cell): boolean => cell.kind === "number" && (isUnit(cell.unit) || cell.mark !== null);
const isUnit = (unit: CellUnit | null): unit is CellUnit => unit !== null && unit.kind !== "other";
const markIn = (cell: Cell): string | null => (cell.kind === "number" ? cell.mark : null);

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
  return { ...title, values, atLeast, halfUnit, unit: null, mark: null, isPart: false };
}

/** Whether a number may be one of a column: "40m" is no frequency. */
const belongs = ({ unit }: NumberCell, { quantity }: ColumnRole): boolean =>
  unit?.kind !== "other" || quantity === "other" || quantity === "forward-power" || quantity === "reflected-power";

const boundOf = (digits: string | null): number | null => (digits === null ? null : numberOf({ digits }));

const halfUnitIn = (cell: Cell | undefined): number => (cell?.kind === "number" ? halfUnitOf(cell.digits) : 0);

/** A column of a table in some of whose cells more stands than the digits of a number. */
function dressedColumn(
  c: number,
  given: ColumnTitle,
  all: readonly (readonly Cell[])[],
  sample: () => readonly (readonly Cell[])[],
  certain: () => string | null,
  { rows, dialect, shifts, port, file }: Cut,
): TableColumn {
  const printed = withoutFewMarks(
    withoutFewUnits(
      all.map((row) => row[c] as Cell),
      given,
      port,
    ),
  );
  const mark = printed.map(markIn).find((found) => found !== null) ?? null;
  if (mark !== null) refuseOtherMarks(printed, mark, rows.lines, file);
  const ofColumn = printed.map((cell) => (cell.kind === "number" && !belongs(cell, given.role) ? TEXT : cell));
  const cells = mark === null ? ofColumn : ofColumn.map((cell) => grouped(cell, mark));
  const numbers = cells.filter((cell) => cell.kind === "number");
  const unit = numbers.map((number) => number.unit).find(isUnit) ?? null;
  const title = unit === null ? { ...given, power: 0 } : agreed(given, unit, numbers, port, file);
  if (mark === null && !dialect.isDecimalStated) refuseDoubt(numbers, unit, certain(), file);
  const bare = unit?.kind === "frequency" ? title.power : (shifts[c] ?? 0);
  const shiftOf = (cell: NumberCell) => {
    if (unit?.kind === "frequency") return cell.unit?.power ?? bare;
    return isUnit(cell.unit) ? cell.unit.power - title.power : bare;
  };
  const atLeast = cells.flatMap((cell, row) =>
    cell.kind === "at-least" ? [{ row, bound: boundOf(cell.digits) }] : [],
  );
  return {
    name: title.name,
    role: title.role,
    isNamed: title.isNamed,
    values: Float64Array.from(cells, (cell) => (cell.kind === "number" ? numberOf(cell, shiftOf(cell)) : Number.NaN)),
    atLeast,
    halfUnit: () =>
      medianOf(
        sample().map((row) => {
          const cell = row[c];
          return cell?.kind === "number" ? halfUnitOf(cell.digits) * 10 ** (unit === null ? 0 : shiftOf(cell)) : 0;
        }),
      ),
    unit: title.role.quantity === "other" ? null : unit,
    mark,
    isPart: false,
  };
}

/** Less than this share of a column's numbers may have a unit that the others do without. */
const FEW = 0.5;

/** A column without the numbers of a few rows whose unit is not the one of the others: "1.5 dB" among SWR, a line below the table. */
function withoutFewUnits(cells: readonly Cell[], title: ColumnTitle, port: number): readonly Cell[] {
  const numbers = cells.filter((cell) => cell.kind === "number");
  const withUnit = numbers.filter((number) => isUnit(number.unit));
  const unit = withUnit[0]?.unit ?? null;
  if (unit === null || withUnit.length >= FEW * numbers.length) return cells;
  // Where the title states no unit, that of the first row counts for all that are of its size.
  const isStated = unit.kind !== "frequency" || Boolean(title.role.frequencyUnit);
  const isFirst = numbers[0]?.unit === unit;
  if (!isStated && isFirst && titleWithUnit(title, unit, port) !== null) return cells;
  return cells.map((cell) => (cell.kind === "number" && isUnit(cell.unit) ? TEXT : cell));
}

/** The column's title with the unit of its cells. @throws ReadError `ambiguous` where they differ, or cells do among them */
function agreed(
  title: ColumnTitle,
  unit: CellUnit,
  numbers: readonly NumberCell[],
  port: number,
  file: string,
): TitleWithUnit {
  const other = numbers.find((number) => number.unit !== null && number.unit.kind !== unit.kind)?.unit;
  const found = other === undefined ? titleWithUnit(title, unit, port) : null;
  if (found !== null && areAlike(numbers)) return found;
  const extent = found === null ? "" : ", and not beside all of them";
  throw new ReadError({
    code: "ambiguous",
    file,
    found: `the unit ${quote((other ?? unit).name)} stands beside numbers of ${quote(title.name)}${extent}`,
    remedy: "Say what each column holds with --columns, from the left, and skip for those to leave out.",
  });
}

/** Whether numbers without a unit are of the size of those with one. */
function areAlike(numbers: readonly NumberCell[]): boolean {
  const sizes = (isWanted: (number: NumberCell) => boolean) =>
    numbers.filter(isWanted).map((number) => Math.abs(numberOf(number)));
  const bare = sizes(({ unit }) => unit === null);
  const named = sizes(({ unit }) => unit !== null);
  if (bare.length === 0) return true;
  return Math.max(...bare) < MOST_SPREAD * Math.max(...named) && Math.max(...named) < MOST_SPREAD * Math.max(...bare);
}

/** Readings of one sweep in one unit differ by less than this factor. */
const MOST_SPREAD = 200;
