import type { ColumnRole } from "../options/column-role.js";
import type { TableColumn } from "./table-column.js";
import type { TableInHz } from "./table-in-hz.js";
import type { TableOfSeries } from "./table-of-series.js";

/** Series, or parts of one sweep, that stand side by side. */
export interface SeriesBeside {
  /** The columns of each, its frequencies first */
  readonly sets: readonly (readonly TableColumn[])[];
  /** What the columns of a set hold */
  readonly roles: readonly ColumnRole[];
  /** One for each set; null where they are parts of one sweep */
  readonly names: readonly string[] | null;
}

/** The rows of the first set of columns, then those of the next; rows without a frequency are none. */
export function stacked(table: TableInHz, { sets, roles, names }: SeriesBeside): TableOfSeries {
  // Of the first set a row without a frequency counts, unless it is empty because another set is longer.
  const isEmpty = (set: readonly TableColumn[], row: number) =>
    sets.length > 1 && set.every(({ values }) => !Number.isFinite(values[row]));
  const rows = sets.flatMap((set, s) =>
    Array.from(set[0]?.values ?? [], (value, row) => ({
      set: s,
      row,
      isOne: Number.isFinite(value) || (s === 0 && !isEmpty(set, row)),
    })),
  );
  const kept = rows.filter(({ isOne }) => isOne);
  const frequencyOf = ({ set, row }: { set: number; row: number }) => sets[set]?.[0]?.values[row] ?? Number.NaN;
  if (names === null) kept.sort((a, b) => frequencyOf(a) - frequencyOf(b));
  const place = new Map(kept.map(({ set, row }, i) => [`${set} ${row}`, i]));
  const columns = roles.map((role, c): TableColumn => {
    const first = sets[0]?.[c] as TableColumn;
    return {
      ...first,
      role,
      values: Float64Array.from(kept, ({ set, row }) => sets[set]?.[c]?.values[row] ?? Number.NaN),
      atLeast: sets.flatMap((set, s) =>
        (set[c]?.atLeast ?? []).flatMap((cell) => {
          const row = place.get(`${s} ${cell.row}`);
          return row === undefined ? [] : [{ ...cell, row }];
        }),
      ),
    };
  });
  const lines = Uint32Array.from(kept, ({ row }) => table.rows.lines[row] ?? 0);
  const series = names === null ? null : { names, of: Uint32Array.from(kept, ({ set }) => set) };
  return { ...table, index: 0, columns, rows: { ...table.rows, lines }, series };
}
