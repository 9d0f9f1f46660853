/** Changes a few cells of a table, as a person does who adds a word here and there. */
import { roomy } from "./layout.js";
import { swrTable } from "./plain-tables.js";
import type { Made, Table } from "./printed-table.js";
import { at, type Rng } from "./random.js";

const FEW = 0.12;

export interface Marking {
  column?: number;
  share?: number;
}

/** Changes the cells of a few rows, which may then be dropped with a caution; returns the rows changed. */
export function mark(
  rng: Rng,
  table: Table,
  change: (cell: string, row: number) => string,
  { column = 1, share = FEW }: Marking = {},
): number[] {
  const rows: number[] = [];
  table.rows.forEach((row, i) => {
    if (!rng.chance(share) && !(i === 3 && rows.length === 0)) return;
    rows.push(i);
    row[column] = change(at(row, column), i);
    at(table.truth.points, i).droppable = true;
  });
  return rows;
}

/** Cells of SWR in one of these styles, in which {} is the reading. */
export function marked(styles: readonly string[], share = FEW): (rng: Rng) => Made {
  return (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    const style = rng.pick(styles);
    mark(rng, table, (cell) => style.replace("{}", cell), { share });
    return { table };
  };
}
