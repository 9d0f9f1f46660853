import { quote, ReadError } from "../../input/read-error.js";
import { type Cell, halfUnitOf, type NumberCell, numberOf, TEXT } from "./cell-grammar.js";
import type { CellUnit } from "./cell-units.js";
import { belongs, boundOf, isUnit, markIn, medianOf } from "./cell-values.js";
import { type ColumnTitle, type TitleWithUnit, titleWithUnit } from "./column-unit.js";
import type { Cut, TableColumn } from "./table-column.js";
import { grouped, refuseDoubt, refuseOtherMarks, withoutFewMarks } from "./thousands.js";

/** A column of a table in some of whose cells more stands than the digits of a number. */
export function dressedColumn(
  c: number,
  given: ColumnTitle,
  all: readonly (readonly Cell[])[],
  sample: () => readonly (readonly Cell[])[],
  certain: () => string | null,
  { rows, dialect, shifts, port, file }: Cut,
): TableColumn {
  const read = all.map((row) => row[c] as Cell);
  const inUnit = withoutFewUnits(read, given, port);
  const printed = withoutFewMarks(inUnit);
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
    isInWatts: numbers.some((number) => number.unit?.kind === "other" && IN_WATTS.test(number.unit.name)),
  };
}

const IN_WATTS = /^[mk]?w(?:atts?)?$/i;

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
