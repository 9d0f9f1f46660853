import { type Analysis, analyse } from "../../bands/analysis.js";
import { type Grounds, groundsOf } from "../../curve/uncertainty/band-uncertainty.js";
import type { Limits } from "../../facts/limits.js";
import type { Sweep } from "../../sweep/sweep.js";
import { checkSweep } from "../../sweep/sweep-check.js";
import { indexOfMiddle, scatterAround } from "./repeats.js";

/** The sweeps on one side of a comparison. */
export interface Side {
  readonly all: readonly Analysis[];
  /** The one that lies closest to all others, and what its intervals start from */
  readonly middle: Analysis;
  /** How far the sweeps lie apart in the reflection; 0 for one alone */
  readonly scatter: number;
  readonly grounds: Grounds | null;
}

/** One sweep or more, which is what a side of a comparison needs. */
export type Group = readonly [Sweep, ...Sweep[]];

/**
 * @param name the side as the caller knows it
 * @throws TypeError for what is no sweep
 * @throws RangeError where there is none
 */
export function groupOf(sweeps: Sweep | readonly Sweep[], name: "before" | "after"): Group {
  if (!isList(sweeps)) {
    checkSweep(sweeps, name);
    return [sweeps];
  }
  sweeps.forEach((sweep, i) => {
    checkSweep(sweep, `${name}[${i}]`);
  });
  const [first, ...others] = sweeps;
  if (first === undefined) throw new RangeError("a comparison needs at least one sweep on each side");
  return [first, ...others];
}

const isList = (sweeps: Sweep | readonly Sweep[]): sweeps is readonly Sweep[] => Array.isArray(sweeps);

/** What a side is compared by. */
export function sideOf(sweeps: readonly Sweep[], limits: Limits): Side {
  const all = sweeps.map((sweep) => analyse(sweep, limits));
  const curves = all.map(({ curve }) => curve);
  const middle = all[indexOfMiddle(curves)];
  if (middle === undefined) throw new RangeError("a comparison needs at least one sweep on each side");
  return { all, middle, scatter: scatterAround(middle.curve, curves), grounds: groundsOf(middle.trace) };
}
