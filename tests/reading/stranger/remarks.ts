/** Remarks, marks, bounds and notes: in cells, between rows, in columns of their own. */
import { joinRows, number, roomy, UNIT_HZ } from "./layout.js";
import { OTHERWISE } from "./numbers-otherwise.js";
import { swrTable } from "./plain-tables.js";
import { draftOf, linesOf, type Variants } from "./printed-table.js";
import { at, type Rng, words } from "./random.js";
import { IN_CELLS } from "./remarks-in-cells.js";
import { FOOT } from "./talk.js";
import type { Draft } from "./truth.js";

const NOTES = words(
  "boat went by; rain began; rope tightened a little; * second half after the break *; wind from the west, 4 knots; 12:30 lunch",
);

const BETWEEN_ROWS: Variants = {
  "duplicated rows": (rng) => {
    const table = swrTable(rng);
    const doubled = new Set([rng.int(1, table.rows.length - 1), rng.int(1, table.rows.length - 1)]);
    const rows = table.rows.flatMap((row, i) => (doubled.has(i) ? [row, row] : [row]));
    return { table, lines: joinRows([table.head, ...rows], table.layout) };
  },
  "a row of averages within": (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    const half = Math.floor(table.rows.length / 2);
    const [before, after] = [table.rows.slice(0, half), table.rows.slice(half)];
    const sum = before.reduce((total, row) => total + Number(at(row, 1).replace(",", ".")), 0);
    const word = rng.pick(["average", "mean", "avg.", "Average so far"]);
    const average = [word, number(sum / half, 2, table.layout)];
    return { table, lines: joinRows([table.head, ...before, average, ...after], table.layout) };
  },
  "notes between rows": (rng) => {
    const table = swrTable(rng);
    const noted = (line: string, i: number): string[] => (i > 2 && rng.chance(0.07) ? [rng.pick(NOTES), line] : [line]);
    return { table, lines: linesOf(table).flatMap(noted) };
  },
  "a notes column without a header": (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    for (const row of table.rows) {
      if (rng.chance(0.15)) row.push(rng.pick(["dip", "gust", "again", "best", "?", "hand on the mast"]));
    }
    return { table };
  },
  "a notes column": (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    table.head.push(rng.pick(["Note", "Remarks", "Comment"]));
    for (const row of table.rows) {
      row.push(rng.chance(0.2) ? rng.pick(["dip", "gust, 5 s", "7 m rope", "best of all 3"]) : "");
    }
    return { table };
  },
  "delimiter at the line's end": (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    const [head = "", ...rows] = linesOf(table);
    const { delimiter } = table.layout;
    return { table, lines: [rng.chance(0.5) ? head + delimiter : head, ...rows.map((line) => line + delimiter)] };
  },
  "words after the last row": (rng) => {
    const table = swrTable(rng);
    const step = (at(table.swept.hz, 1) - at(table.swept.hz, 0)) / UNIT_HZ.kHz;
    return { table, lines: [...linesOf(table), rng.pick(FOOT), `Points ${table.rows.length}, step ${step} kHz`] };
  },
};

/** A table with words or slips where only numbers belong. */
export function remarks(rng: Rng): Draft {
  return draftOf(rng, { ...IN_CELLS, ...OTHERWISE, ...BETWEEN_ROWS });
}
