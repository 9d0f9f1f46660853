import { at, firstIndexAbove } from "../numbers/column.js";
import { zeroBetween } from "../numbers/search.js";
import { reflectionAt } from "./curve.js";
import type { Trace } from "./trace.js";

/**
 * Frequencies between two others where Γ is real, which is where the reactance is 0: the resonances as seen at the
 * place where the sweep was taken.
 *
 * @returns ascending; empty for a scalar sweep
 */
export function reflectiveCrossings(trace: Trace, lowHz: number, highHz: number): readonly number[] {
  const { curve, frequencyHz } = trace;
  if (curve.sweep.kind === "scalar") return [];
  const imaginaryAt = (frequency: number) => reflectionAt(curve, frequency)?.imaginary ?? Number.NaN;
  const crossings: number[] = [];
  for (const { first, last } of trace.stretches) {
    const begin = Math.max(lowHz, at(frequencyHz, first));
    const end = Math.min(highHz, at(frequencyHz, last));
    if (begin >= end) continue;
    let previous = begin;
    let previousValue = imaginaryAt(begin);
    for (let k = firstIndexAbove(frequencyHz, begin); k <= last; k++) {
      const next = Math.min(at(frequencyHz, k), end);
      const nextValue = imaginaryAt(next);
      if (previousValue < 0 !== nextValue < 0) crossings.push(zeroBetween(imaginaryAt, previous, next));
      if (next === end) break;
      previous = next;
      previousValue = nextValue;
    }
  }
  return crossings;
}
