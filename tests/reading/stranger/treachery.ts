/** What the treacherous files have in common. */
import { gammaOf } from "./antenna.js";
import { joinRows, number } from "./layout.js";
import { type Made, type Table, tableOf } from "./printed-table.js";
import { rhoAt } from "./quantity.js";
import { at, type Rng } from "./random.js";

/** Cannot be known: a question is right, and so is a reading with a caution. */
export function ask(table: Table): Made {
  return { table, clear: false, truth: { kind: "refuse", cautionSuffices: true } };
}

/** The same without a header. */
export function askWithoutHeader(table: Table): Made {
  return { ...ask(table), lines: joinRows(table.rows, table.layout) };
}

/** No sweep at all. */
export function refuse(table: Table): Made {
  return { table, clear: false, truth: { kind: "refuse", cautionSuffices: false } };
}

/** From 3 to 30 MHz, rising, in plain units. */
export function wide(rng: Rng, ...kinds: string[]): Table {
  return tableOf(rng, { kinds, kHz: [3000, 30000], points: 61, plainUnits: true, layout: { down: false } });
}

/** Writes a column anew, each number from its row; where that changes how well Γ is known, `tol` says how. */
export function rewrite(table: Table, column: number, decimals: number, value: (row: number) => number, tol?: number) {
  table.rows.forEach((row, i) => {
    row[column] = number(value(i), decimals, table.layout);
    if (tol !== undefined) Object.assign(at(table.truth.points, i), { tol, tolRho: tol });
  });
}

/** |Γ| at a row, and its angle in radians, not rounded. */
export function rhoOfRow(table: Table, row: number): number {
  return rhoAt(at(table.swept.z, row), table.truth.reference);
}
export function angleOfRow(table: Table, row: number): number {
  const gamma = gammaOf(at(table.swept.z, row), table.truth.reference);
  return Math.atan2(gamma.im, gamma.re);
}
