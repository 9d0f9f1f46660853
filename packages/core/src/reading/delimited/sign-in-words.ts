import type { TableColumn } from "./table-column.js";
import type { TableOfSeries } from "./table-of-series.js";
import type { TextsOfCells } from "./texts-of-cells.js";

/** Words and marks for the sign of a reactance (from memory). */
const CAPACITIVE = /^(?:cap(?:acitive|\.)?|c|kap(?:azitiv)?|capacitif|capacitivo|[-−])$/i;
const INDUCTIVE = /^(?:ind(?:uctive|\.)?|l|induktiv|inductif|induttivo|inductivo|\+)$/i;

/** A table whose reactances have their sign in a column of words, "capacitive" or "inductive", with these signs. */
export function withSignsInWords(table: TableOfSeries, cells: TextsOfCells | null): TableOfSeries {
  const { columns } = table;
  const place = columns.findIndex(
    ({ role, values }) =>
      (role.quantity === "reactance-magnitude" || role.quantity === "reactance") && values.some(Number.isFinite),
  );
  const { values, role } = columns[place] ?? {};
  if (cells === null || values === undefined || role === undefined || values.some((value) => value < 0)) return table;
  const texts = cells();
  const isSign = (cell: string) => CAPACITIVE.test(cell) || INDUCTIVE.test(cell);
  // A reactance of nothing has none.
  const needsNone = (row: number, cell: string) => cell === "" && values[row] === 0;
  const words = columns.findIndex(
    (_, c) =>
      c !== place &&
      texts.every((cells, row) => isSign(cells[c] ?? "") || needsNone(row, cells[c] ?? "")) &&
      texts.some((cells) => isSign(cells[c] ?? "")),
  );
  if (words < 0) return table;
  const signed = values.map((value, row) => (CAPACITIVE.test(texts[row]?.[words] ?? "") ? -value : value));
  return {
    ...table,
    columns: columns.map(
      (column, c): TableColumn =>
        c === place ? { ...column, role: { ...role, quantity: "reactance" }, values: signed } : column,
    ),
  };
}
