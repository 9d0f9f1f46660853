/** What stands between the rows of a table and below it: blank lines, headers again, totals, closing words. */
import { abs, swrOf } from "./antenna.js";
import { joinRows, number } from "./layout.js";
import { plainTable, swrsOf } from "./plain-tables.js";
import { linesOf, tableOf, type Variants } from "./printed-table.js";
import { FOOT } from "./talk.js";

export const PAGES: Variants = {
  "blank lines scattered": (rng) => {
    const table = plainTable(rng);
    return { table, lines: linesOf(table).flatMap((line, i) => (i > 0 && rng.chance(0.15) ? ["", line] : [line])) };
  },
  "header repeated on each page": (rng) => {
    const table = plainTable(rng);
    const [head = "", ...rows] = linesOf(table);
    const per = rng.int(8, 25);
    const title = rng.chance(0.5);
    const above = (row: number): string[] => (title ? ["", `Page ${row / per + 1}`] : row > 0 ? [""] : []);
    const lines = rows.flatMap((line, i) => (i % per === 0 ? [...above(i), head, line] : [line]));
    return { table, lines };
  },
  "footer of words": (rng) => {
    const table = plainTable(rng);
    return { table, lines: [...linesOf(table), ...rng.maybe(""), ...rng.some(FOOT, rng.int(1, 3))] };
  },
  "footer with totals": (rng) => {
    const table = plainTable(rng, { kinds: ["swr"] });
    const best = table.truth.points.reduce((a, b) => (abs(a) < abs(b) ? a : b));
    const swr = number(swrOf(abs(best)), 2, table.layout);
    const foot = rng.pick([
      [`Lowest SWR: ${swr} at ${number(best.hz / 1e6, 3, table.layout)} MHz`, `Points: ${table.rows.length}`],
      [`Total rows: ${table.rows.length}`],
      [`${table.rows.length} points`, `best ${swr}`],
      joinRows(
        [
          ["Points", String(table.rows.length)],
          ["Minimum", swr],
        ],
        table.layout,
      ),
    ]);
    return { table, lines: [...linesOf(table), "", ...foot] };
  },
  "mean and extremes below in the columns": (rng) => {
    const table = tableOf(rng, { kinds: ["swr"], layout: { delimiter: rng.pick([",", ";", "\t"] as const) } });
    const values = swrsOf(table);
    const mean = values.reduce((a, b) => a + b, 0) / values.length;
    const rows = [
      ["Mean", number(mean, 2, table.layout)],
      ["Min", number(Math.min(...values), 2, table.layout)],
      ["Max", number(Math.max(...values), 2, table.layout)],
    ];
    return { table, lines: [...linesOf(table), ...rng.maybe(""), ...joinRows(rows, table.layout)] };
  },
};
