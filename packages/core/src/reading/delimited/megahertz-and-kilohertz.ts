import { frequencyUnitOf, UNIT_EXPONENTS } from "../options/units.js";
import type { TableColumn } from "./table-column.js";
import type { TableInHz } from "./table-in-hz.js";

/** Frequencies whose kilohertz stand in a column of their own behind the whole megahertz, as sums of both. */
export function withKilohertz(table: TableInHz): TableInHz {
  const { columns, index, unit } = table;
  const whole = columns[index] as TableColumn;
  const rest = columns[index + 1];
  const restUnit = rest === undefined ? null : (rest.role.frequencyUnit ?? frequencyUnitOf(rest.name));
  if (unit !== "MHz" || rest?.role.quantity !== "frequency" || restUnit !== "kHz") return table;
  const megahertz = 10 ** UNIT_EXPONENTS.MHz;
  const hertzOfRest = rest.values.map((value) => value * 10 ** UNIT_EXPONENTS.kHz);
  const areWhole = whole.values.every((value) => Number.isInteger(value / megahertz));
  const areRests = hertzOfRest.every((value) => value >= 0 && value < megahertz);
  if (!areWhole || !areRests) return table;
  const values = whole.values.map((value, row) => value + (hertzOfRest[row] ?? 0));
  const other: TableColumn = { ...rest, role: { quantity: "other" } };
  return {
    ...table,
    columns: columns.map((column, c) => (c === index ? { ...whole, values } : c === index + 1 ? other : column)),
  };
}
