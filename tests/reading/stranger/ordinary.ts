/** Ordinary tables of every quantity and pair, alone or several at once, with further columns beside. */
import { linesOf, tableOf } from "./printed-table.js";
import { KINDS } from "./quantities.js";
import type { Rng } from "./random.js";
import type { Draft } from "./truth.js";

/** Quantities that programs print side by side. */
const TOGETHER: readonly (readonly string[])[] = [
  ["swr", "return-loss"],
  ["swr", "r-x"],
  ["r-x", "swr"],
  ["return-loss", "swr", "r-x"],
  ["gamma-re-im", "swr"],
  ["db-angle", "swr", "r-x"],
  ["swr", "z-angle"],
  ["swr", "rho"],
  ["r-x", "g-b"],
  ["swr", "return-loss", "rho", "r-x"],
  ["swr", "mismatch-loss", "reflected-share"],
  ["swr", "z-and-r"],
  ["r-x", "parallel"],
  ["rho", "reflected-fraction"],
  ["gamma-re-im", "r-x"],
];

/** A table with a header that names what is in it: a person has no doubt about any of these. */
export function ordinary(rng: Rng): Draft {
  const together = rng.chance(0.3);
  const kinds = together ? rng.pick(TOGETHER) : [rng.pick([...KINDS.keys()])];
  const table = tableOf(rng, { kinds, further: rng.chance(0.3) });
  return {
    variant: `${together ? "several: " : ""}${kinds.join(" + ")}`,
    lines: linesOf(table, rng.chance(0.08)),
    layout: table.layout,
    truth: { kind: "sweeps", ways: [[table.truth]] },
    clear: true,
    mustCaution: false,
  };
}
