/** Columns that are nothing of the sweep, beside it or before it: a reader must not take them for readings. */
import { type Layout, number } from "./layout.js";
import type { Rng } from "./random.js";

/** The part of a table that gets further columns. */
interface Widened {
  head: string[];
  rows: string[][];
  names: string[];
  units: string[];
  layout: Layout;
  valuesAt: number[];
}

const twoDigits = (value: number): string => String(value % 60).padStart(2, "0");

/** Adds one to three such columns. */
export function addFurther(rng: Rng, table: Widened): void {
  const { layout } = table;
  const cold = rng.between(4, 12);
  const makers: readonly (readonly [string, string, (row: number) => string])[] = [
    ["No.", "", (row) => String(row + 1)],
    ["Temperature", "°C", (row) => number(cold + row * 0.01, 1, layout)],
    ["Battery", "V", (row) => number(12.9 - row * 0.001, 2, layout)],
    ["Time", "", (row) => `14:${twoDigits(Math.floor(row / 60))}:${twoDigits(row)}`],
    ["Noise", "dBm", () => number(-rng.between(80, 95), 1, layout)],
    ["Water level", "m", () => number(1.42, 2, layout)],
    ["Mooring", "", () => "Reedmere"],
  ];
  for (const [name, unit, cell] of rng.some(makers, rng.int(1, 3))) {
    const before = name === "No." || (name === "Time" && rng.chance(0.5));
    const put = (row: string[], item: string): void => {
      row.splice(before ? 0 : row.length, 0, item);
    };
    put(table.head, unit === "" ? name : `${name} (${unit})`);
    put(table.names, name);
    put(table.units, unit);
    table.rows.forEach((row, i) => {
      put(row, cell(i));
    });
    if (before) table.valuesAt = table.valuesAt.map((index) => index + 1);
  }
}
