import { at, type Column } from "../../numbers/column.js";

/** A run of samples without a gap: indices of its first and last sample. A lone sample has first = last. */
export interface Stretch {
  /** Index of the first sample, from 0 */
  readonly first: number;
  /** Index of the last one, itself included */
  readonly last: number;
}

/** A step this many times longer than both of its neighbours is a gap (common practice, no source). */
const GAP_RATIO = 4;

/**
 * Splits a frequency axis at its gaps.
 *
 * A gap is judged against the steps beside it, so that a file of band-by-band sweeps splits between the bands, while a
 * logarithmic axis, a change of step or a missing row do not.
 */
export function findStretches(frequencyHz: Column): readonly Stretch[] {
  const stretches: Stretch[] = [];
  const last = frequencyHz.length - 1;
  let first = 0;
  for (let i = 0; i < last; i++) {
    if (!isGap(frequencyHz, i)) continue;
    stretches.push({ first, last: i });
    first = i + 1;
  }
  stretches.push({ first, last });
  return stretches;
}

function isGap(frequencyHz: Column, index: number): boolean {
  const step = at(frequencyHz, index + 1) - at(frequencyHz, index);
  const before = index > 0 ? at(frequencyHz, index) - at(frequencyHz, index - 1) : 0;
  const after = index + 2 < frequencyHz.length ? at(frequencyHz, index + 2) - at(frequencyHz, index + 1) : 0;
  const neighbour = Math.max(before, after);
  return neighbour > 0 && step > GAP_RATIO * neighbour;
}

/** Steps that differ by less than this share count as equal: frequencies rounded in print. */
const EVEN_STEPS = 0.02;

/**
 * Whether the samples of a stretch lie evenly spaced.
 *
 * @param tolerance share of the mean step by which one may differ
 */
export function isEven(position: Column, { first, last }: Stretch, tolerance = EVEN_STEPS): boolean {
  const mean = (at(position, last) - at(position, first)) / (last - first);
  for (let i = first; i < last; i++) {
    if (Math.abs(at(position, i + 1) - at(position, i) - mean) > tolerance * mean) return false;
  }
  return true;
}
