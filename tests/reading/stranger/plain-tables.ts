/** Tables that several groups begin with. */
import { abs, swrOf } from "./antenna.js";
import type { Layout } from "./layout.js";
import { linesOf, type Table, type TableOptions, tableOf } from "./printed-table.js";
import type { Rng } from "./random.js";

const PLAIN = ["swr", "return-loss", "r-x", "gamma-re-im", "s11-db"];

/** A table of a plain quantity. */
export function plainTable(rng: Rng, options: TableOptions = {}): Table {
  return tableOf(rng, { kinds: [rng.pick(PLAIN)], ...options });
}

/** A table of SWR with rising frequencies. */
export function swrTable(rng: Rng, options: TableOptions = {}): Table {
  return tableOf(rng, { kinds: ["swr"], ...options, layout: { down: false, ...options.layout } });
}

/** The SWR at each point, not rounded. */
export function swrsOf(table: Table): number[] {
  return table.truth.points.map((point) => swrOf(abs(point)));
}

/** A table with lines above it. */
export function under(lines: readonly string[], table: Table): { table: Table; lines: string[] } {
  return { table, lines: [...lines, ...linesOf(table)] };
}

const PLAINEST = ["swr", "return-loss", "r-x", "gamma-re-im"];

/** A table of a plain quantity, or of a given one, in plain units. */
export function plainestTable(rng: Rng, layout: Partial<Layout> = {}, kind = rng.pick(PLAINEST)): Table {
  return tableOf(rng, { kinds: [kind], layout, plainUnits: true });
}
