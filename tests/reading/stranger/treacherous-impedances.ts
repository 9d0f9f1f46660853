/** Impedances and admittances in other units than the header says, without signs, or at odds with other columns. */
import { inverse, swrOf } from "./antenna.js";
import type { Made, Variants } from "./printed-table.js";
import { rhoAt } from "./quantity.js";
import { at, type Rng } from "./random.js";
import { ask, rewrite, wide } from "./treachery.js";

function signsLost(rng: Rng): Made {
  const table = wide(rng, "r-x");
  // Without a negative reactance there is no sign to lose.
  if (!table.swept.z.some((z) => z.im < -5)) return signsLost(rng);
  for (const row of table.rows) row[2] = at(row, 2).replace("-", "");
  const truth = { ...table.truth, vector: false };
  return { table, clear: false, truth: { kind: "sweeps", ways: [[truth]] }, mustCaution: true };
}

export const TREACHEROUS_IMPEDANCES: Variants = {
  "kilohm under ohm": (rng) => {
    const table = wide(rng, "r-x");
    table.head.splice(1, 2, "R (ohm)", "X (ohm)");
    rewrite(table, 1, 4, (row) => at(table.swept.z, row).re / 1000);
    rewrite(table, 2, 4, (row) => at(table.swept.z, row).im / 1000);
    return ask(table);
  },
  "millisiemens under siemens": (rng) => {
    const table = wide(rng, "g-b");
    table.head.splice(1, 2, "G (S)", "B (S)");
    rewrite(table, 1, 3, (row) => inverse(at(table.swept.z, row)).re * 1000);
    rewrite(table, 2, 3, (row) => inverse(at(table.swept.z, row)).im * 1000);
    return ask(table);
  },
  "conductance without a unit": (rng) => {
    const table = wide(rng, "g-b");
    table.head.splice(1, 2, "G", "B");
    return ask(table);
  },
  "normalised and not said": (rng) => {
    const table = wide(rng, "r-x");
    const names = rng.pick([
      ["R", "X"],
      ["Resistance", "Reactance"],
      ["Re(Z)", "Im(Z)"],
    ]);
    table.head.splice(1, 2, ...names);
    rewrite(table, 1, 3, (row) => at(table.swept.z, row).re / 50);
    rewrite(table, 2, 3, (row) => at(table.swept.z, row).im / 50);
    return ask(table);
  },
  "signs of X lost": signsLost,
  "size of X by name": (rng) => ({ table: wide(rng, "r-and-size-of-x") }),
  "X turned against gamma": (rng) => {
    const table = wide(rng, "gamma-re-im", "r-x");
    for (const row of table.rows) row[4] = `-${at(row, 4)}`.replace(/^--/, "");
    return ask(table);
  },
  "SWR against R and X at odds": (rng) => {
    const table = wide(rng, "swr", "r-x");
    rewrite(table, 1, 2, (row) => swrOf(rhoAt(at(table.swept.z, row), 300)));
    return ask(table);
  },
  "resistance below nought": (rng) => {
    const table = wide(rng, "r-x");
    for (const row of table.rows) row[1] = `-${at(row, 1)}`;
    return ask(table);
  },
};
