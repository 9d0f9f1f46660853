/** Readings by hand in natural notation, as people keep them in a notebook. */
import { LINES } from "./by-hand-lines.js";
import { REMARKED } from "./by-hand-remarks.js";
import { TABLES } from "./by-hand-tables.js";
import { layoutOf } from "./layout.js";
import type { Rng } from "./random.js";
import type { Draft } from "./truth.js";

/** A page of such readings. */
export function byHand(rng: Rng): Draft {
  const [variant, make] = rng.pick(Object.entries({ ...LINES, ...REMARKED, ...TABLES }));
  const { lines, readings, layout, truth, clear = true, mustCaution = false } = make(rng);
  return {
    variant,
    lines,
    layout: layoutOf(rng, layout),
    truth: truth ?? { kind: "readings", readings },
    clear,
    mustCaution,
  };
}
