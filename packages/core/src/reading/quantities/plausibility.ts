import { median } from "simple-statistics";
import { at, type Column } from "../../numbers/column.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { Determination } from "./assemble.js";

/** No antenna has an SWR beyond this throughout a sweep (our own choice). */
const ABSURD_SWR = 100;
/** Nor an impedance below this at most frequencies, Ω: such numbers are multiples of the reference, or thousands of ohms. */
const ABSURD_OHMS = 5;
/** Nor a conductance above this, S: such numbers are thousandths. */
const ABSURD_SIEMENS = 0.5;
const FEWEST = 3;
const MOST_LOOKED_AT = 64;

/** What the readings are as they were read that no antenna has: another unit, or multiples of the reference. */
export function absurdReadings({ columns: [first, second] }: Determination): readonly Finding[] {
  if (first === undefined || first.values.length < FEWEST) return [];
  // What holds throughout a sweep, or at most of its points, holds at some of them.
  const every = Math.ceil(first.values.length / MOST_LOOKED_AT);
  const known = first.values.filter((value, i) => i % every === 0 && Number.isFinite(value));
  if (first.quantity === "swr" && known.length > 0 && known.every((value) => value > ABSURD_SWR))
    return [finding("problem", "readings-absurd", { what: "swr" })];
  if (first.quantity === "swr" && known.length > 0 && known.every((value) => value < 1))
    return [finding("problem", "readings-absurd", { what: "swr-below-1" })];
  if (first.quantity === "conductance" && known.length > 0 && median(Array.from(known, Math.abs)) > ABSURD_SIEMENS)
    return [finding("problem", "readings-absurd", { what: "siemens" })];
  if (first.quantity !== "resistance" && first.quantity !== "impedance-magnitude") return [];
  const isPolar = first.quantity === "impedance-magnitude";
  const sizes: number[] = [];
  for (let i = 0; i < first.values.length; i += every) {
    const value = at(first.values, i);
    const size = isPolar || second === undefined ? Math.abs(value) : Math.hypot(value, at(second.values, i));
    if (Number.isFinite(size)) sizes.push(size);
  }
  return sizes.length > 0 && median(sizes) < ABSURD_OHMS
    ? [finding("problem", "readings-absurd", { what: "ohms" })]
    : [];
}

/** How near a frequency lies to ten times its neighbours, or a tenth of them, for a slip of the decimal point. */
const SLIP_TOLERANCE = 0.1;
/** A slip is more than this factor: most rows need no closer look. */
const LEAST_SLIP = 5;

/** A frequency that is ten times what its neighbours let expect, or a tenth: the decimal point may have slipped. */
export function slippedFrequencies(frequencyHz: Column): readonly Finding[] {
  for (let i = 1; i < frequencyHz.length - 1; i++) {
    const before = at(frequencyHz, i - 1);
    const here = at(frequencyHz, i);
    if (here > LEAST_SLIP * before === here * LEAST_SLIP < before) continue;
    const after = at(frequencyHz, i + 1);
    const expected = (before + after) / 2;
    const areNeighbours = Math.abs(after - before) < SLIP_TOLERANCE * expected;
    const isSlip = [10, 0.1].some((factor) => Math.abs(here / (factor * expected) - 1) < SLIP_TOLERANCE);
    if (areNeighbours && isSlip)
      return [finding("caution", "frequency-slipped", { frequencyHz: here, expectedHz: expected })];
  }
  return [];
}
