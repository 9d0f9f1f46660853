/** Tables laid out otherwise: framed, turned, quoted, of fixed width, with units in the cells. */
import { COMPLEX_CELLS } from "./complex-cells.js";
import { JSON_LAYOUTS } from "./json-layouts.js";
import { joinRows, roomy } from "./layout.js";
import { IN_WORDS } from "./layouts-in-words.js";
import { plainestTable, swrTable } from "./plain-tables.js";
import { draftOf, linesOf, tableOf, type Variants } from "./printed-table.js";
import { at, type Rng } from "./random.js";
import type { Draft } from "./truth.js";

/** Upright, cross and level line of a frame. */
const FRAMES = [
  ["|", "+", "-"],
  ["│", "┼", "─"],
  ["║", "╬", "═"],
] as const;
const SIMPLE = ["swr", "return-loss", "r-x"];

const FRAMED: Variants = {
  Markdown: (rng) => {
    const table = plainestTable(rng, { delimiter: "|" });
    const line = (row: readonly string[]): string => `| ${row.join(" | ")} |`;
    const rule = line(table.head.map(() => rng.pick(["---", "---:", ":--", ":-:"])));
    const title = rng.chance(0.4) ? ["# Sweep at Withy Lock", ""] : [];
    const head = line(table.head.map((cell) => cell.replaceAll("|", "\\|")));
    return { table, lines: [...title, head, rule, ...table.rows.map(line)] };
  },
  "framed by signs": (rng) => {
    const table = plainestTable(rng, { delimiter: "|" }, rng.pick(SIMPLE));
    const widths = table.head.map((cell, i) => Math.max(cell.length, ...table.rows.map((row) => at(row, i).length)));
    const [upright, cross, level] = rng.pick(FRAMES);
    const rule = cross + widths.map((width) => level.repeat(width + 2)).join(cross) + cross;
    const line = (row: readonly string[]): string =>
      upright + row.map((cell, i) => ` ${cell.padStart(at(widths, i))} `).join(upright) + upright;
    return { table, lines: [rule, line(table.head), rule, ...table.rows.map(line), rule] };
  },
};

const LAID_OUT: Variants = {
  transposed: (rng) => {
    const kinds = [rng.pick(["swr", "r-x", "return-loss"])];
    const points = rng.pick([5, 8, 11, 21]);
    const table = tableOf(rng, { kinds, points, layout: { delimiter: rng.pick([",", ";", "\t"]) } });
    const turned = table.head.map((head, i) => [head, ...table.rows.map((row) => at(row, i))]);
    return { table, lines: joinRows(turned, table.layout) };
  },
  "all cells quoted": (rng) => {
    const table = plainestTable(rng, { delimiter: rng.pick([",", ";", "\t"]), decimal: rng.pick([".", ","]) });
    return { table, lines: linesOf(table, true) };
  },
  "decimal comma, quoted, by commas": (rng) => ({ table: plainestTable(rng, { delimiter: ",", decimal: "," }) }),
  "units in every cell": (rng) => {
    const kind = rng.pick(SIMPLE);
    const table = plainestTable(rng, roomy(rng), kind);
    const gap = rng.pick([" ", ""]);
    const unit = kind === "swr" ? "" : gap + (kind === "r-x" ? rng.pick(["Ω", "ohm"]) : "dB");
    table.head = [...table.names];
    table.rows = table.rows.map(([frequency = "", ...cells]) => [
      frequency + gap + table.layout.unit,
      ...cells.map((cell) => cell + unit),
    ]);
    return { table };
  },
  "a row of units, some unknown": (rng) => {
    const kinds = [rng.pick(["swr", "r-x"])];
    const layout = { delimiter: rng.pick([",", ";", "\t"] as const) };
    const table = tableOf(rng, { kinds, further: true, plainUnits: true, layout });
    const units = table.units.map((unit) => (unit === "" ? rng.pick(["-", "1", "", "n/u", "x:1"]) : unit));
    return { table, lines: joinRows([table.names, units, ...table.rows], table.layout) };
  },
  "fixed width": (rng) => {
    const table = plainestTable(rng, { delimiter: " " }, rng.pick(["swr", "r-x", "return-loss"]));
    const width = Math.max(24, rng.int(14, 22));
    const left = rng.chance(0.5);
    const line = (row: readonly string[]): string =>
      row.map((cell) => (left ? cell.padEnd(width) : cell.padStart(width))).join("");
    return { table, lines: [table.head, ...table.rows].map(line) };
  },
  "blanks around the delimiter": (rng) => {
    const layout = { delimiter: rng.pick([",", ";", "|"] as const), decimal: "." } as const;
    const table = plainestTable(rng, layout, rng.pick(["swr", "r-x", "return-loss"]));
    const line = (row: readonly string[]): string =>
      row.map((cell) => cell.padStart(12)).join(` ${table.layout.delimiter} `);
    return { table, lines: [table.head, ...table.rows].map(line) };
  },
  "continued in further columns": (rng) => {
    const table = swrTable(rng, { points: 40, layout: { delimiter: rng.pick([",", ";", "\t"]) } });
    const half = Math.ceil(table.rows.length / 2);
    const rows = table.rows.slice(0, half).map((row, i) => [...row, ...(table.rows[half + i] ?? ["", ""])]);
    return { table, lines: joinRows([[...table.head, ...table.head], ...rows], table.layout) };
  },
};

/** A plain sweep in a layout that is not a plain table. */
export function layouts(rng: Rng): Draft {
  return draftOf(rng, { ...FRAMED, ...LAID_OUT, ...JSON_LAYOUTS, ...IN_WORDS, ...COMPLEX_CELLS });
}
