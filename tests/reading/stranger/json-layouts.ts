/** Sweeps as JSON, with names of their own: short, with units. */
import { plainestTable } from "./plain-tables.js";
import type { Made, Table, Variants } from "./printed-table.js";
import { at, type Rng } from "./random.js";

interface Recorded {
  table: Table;
  keys: string[];
  records: Record<string, number>[];
}

function quantityKeys(rng: Rng, kind: string): string[] {
  if (kind === "swr") return [rng.pick(["swr", "vswr", "SWR"])];
  if (kind === "return-loss") return [rng.pick(["return_loss_db", "returnLossDb", "rl_db"])];
  return rng.pick([
    ["r", "x"],
    ["resistance_ohm", "reactance_ohm"],
    ["R", "X"],
  ]);
}

function recorded(rng: Rng): Recorded {
  const kind = rng.pick(["swr", "return-loss", "r-x"]);
  const table = plainestTable(rng, { delimiter: ",", decimal: "." }, kind);
  const { unit } = table.layout;
  const small = unit.toLowerCase();
  const frequency = rng.pick([`frequency_${small}`, `freq_${small}`, `f_${small}`, `frequency${unit}`]);
  const keys = [frequency, ...quantityKeys(rng, kind)];
  const records = table.rows.map((row) => Object.fromEntries(row.map((cell, i) => [at(keys, i), Number(cell)])));
  return { table, keys, records };
}

/** A file that holds what is made of the records, on one line or on many. */
const jsonOf =
  (content: (made: Recorded) => unknown) =>
  (rng: Rng): Made => {
    const made = recorded(rng);
    const lines = JSON.stringify(content(made), null, rng.pick([0, 1, 2])).split("\n");
    return { table: made.table, lines, fileName: "sweep.json" };
  };

export const JSON_LAYOUTS: Variants = {
  "JSON, an array of objects": jsonOf(({ records }) => records),
  "JSON, an array of arrays": jsonOf(({ keys, records }) => [keys, ...records.map((each) => Object.values(each))]),
  "JSON, an object of columns": jsonOf(({ keys, records }) =>
    Object.fromEntries(keys.map((key) => [key, records.map((each) => each[key])])),
  ),
  "JSON, points within an object": jsonOf(({ records }) => ({ place: "Withy Lock", wire_m: 20.6, points: records })),
  "JSON, an object on each line": (rng) => {
    const { table, records } = recorded(rng);
    return { table, lines: records.map((each) => JSON.stringify(each)), fileName: "sweep.ndjson" };
  },
};
