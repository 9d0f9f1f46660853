import { type Part, partsOf } from "../../bands/parts.js";
import { type Overlap, overlapsOf } from "../../bands/scatter.js";
import type { BandPlan } from "../../facts/band-plan/band-plan.js";
import type { Limits } from "../../facts/limits.js";
import { asDeployment, type Deployment } from "../../sweep/deployment.js";
import type { Sweep } from "../../sweep/sweep.js";
import { commonAxis } from "./common-samples.js";
import { indexOfMiddle, scatterAround } from "./repeats.js";
import { type SideCurve, sideCurve } from "./side-curve.js";

/** What is known of a deployment on one side of a comparison. */
interface Repeat {
  readonly parts: readonly Part[];
  /** Where its parts overlap they are repeats of each other */
  readonly overlaps: readonly Overlap[];
  /** null where it holds nothing but readings by hand */
  readonly curve: SideCurve | null;
}

/** One side of a comparison: a deployment, or several repeats of it. */
export interface Side {
  readonly all: readonly Repeat[];
  /** The one that lies closest to all others, and what its intervals start from */
  readonly middle: Repeat;
  /** How far repeats, and parts that overlap, lie apart in the reflection; 0 where nothing was taken twice */
  readonly scatter: number;
}

/** A sweep, or all that is known of a deployment. */
export type Given = Sweep | Deployment;

/** One deployment or more, which is what a side of a comparison needs. */
export type Group = readonly [Deployment, ...Deployment[]];

/**
 * @param name the side as the caller knows it
 * @throws TypeError for what is neither a sweep nor a deployment
 * @throws RangeError where there is none
 */
export function groupOf(given: Given | readonly Given[], name: "before" | "after"): Group {
  if (!isList(given)) return [asDeployment(given, name)];
  const [first, ...others] = given.map((each, i) => asDeployment(each, `${name}[${i}]`));
  if (first === undefined) throw new RangeError("a comparison needs at least one sweep on each side");
  return [first, ...others];
}

const isList = (given: Given | readonly Given[]): given is readonly Given[] => Array.isArray(given);

/** Deployments with each part replaced by what a function makes of it. */
export function mapGroup([first, ...others]: Group, map: (sweep: Sweep, deployment: number) => Sweep): Group {
  const mapped = ({ parts: [part, ...parts], ...deployment }: Deployment, i: number): Deployment => ({
    ...deployment,
    parts: [map(part, i), ...parts.map((other) => map(other, i))],
  });
  return [mapped(first, 0), ...others.map((deployment, i) => mapped(deployment, i + 1))];
}

/** What a side is compared by. */
export function sideOf(deployments: readonly Deployment[], limits: Limits, plan: BandPlan): Side {
  const all = deployments.map((deployment): Repeat => {
    const parts = partsOf(deployment, limits, plan);
    return { parts, overlaps: overlapsOf(parts), curve: sideCurve(parts) };
  });
  const curves = all.map(({ curve }) => curve);
  const middle = all[indexOfMiddle(curves)];
  if (middle === undefined) throw new RangeError("a comparison needs at least one sweep on each side");
  const betweenParts = all.flatMap(({ overlaps }) => overlaps.map(({ distance }) => distance));
  return { all, middle, scatter: Math.max(scatterAround(middle.curve, curves), ...betweenParts) };
}

/** Whether repeats, or parts that overlap, tell how far sweeps of this side lie apart. */
export const isTakenTwice = ({ all }: Side): boolean =>
  all.length > 1 || all.some(({ overlaps }) => overlaps.length > 0);

/** Whether both were swept at the same frequencies over what both cover, so that nothing compared lies between samples. */
export function isSampledAlike({ middle: { curve: one } }: Side, { middle: { curve: other } }: Side): boolean {
  if (one === null || other === null) return false;
  const [first, second] = [samplesOf(one), samplesOf(other)];
  return commonAxis(one, other).every((frequency) => first.has(frequency) && second.has(frequency));
}

const samplesOf = ({ pieces }: SideCurve): ReadonlySet<number> =>
  new Set(pieces.flatMap(({ curve }) => [...curve.sweep.frequencyHz]));
