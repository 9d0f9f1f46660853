import type { UsableBand } from "../facts/band-plan/band-plan.js";
import { type Limits, limitsWith } from "../facts/limits.js";
import type { Deployment } from "../sweep/deployment.js";
import { readingsOf } from "../sweep/sweep.js";
import { type SweepInfo, sweepInfo } from "../sweep/sweep-info.js";
import { type Part, partsOf } from "./parts.js";
import { type Overlap, overlapsOf, scatterOn } from "./scatter.js";
import type { Scope } from "./scope.js";

/** What is known of a deployment where bands are checked. */
export interface Known {
  readonly deployment: Deployment;
  /** In the order in which they answer */
  readonly parts: readonly Part[];
  readonly limits: Limits;
  readonly overlaps: readonly Overlap[];
  /** Half of what ρ may be off on a band because parts of the deployment differ where they overlap */
  readonly scatterOn: (band: UsableBand) => number;
}

/** Prepares a deployment for being checked, band after band. */
export function knownOf(deployment: Deployment, { plan, limits: given }: Scope): Known {
  const limits = limitsWith(given);
  const parts = partsOf(deployment, limits, plan);
  const overlaps = overlapsOf(parts);
  return { deployment, parts, limits, overlaps, scatterOn: (band) => scatterOn(overlaps, band) };
}

/** A sweep or a list of readings of a deployment. */
export interface PartInfo extends SweepInfo {
  /** Whether it was noted by hand */
  readonly isByHand: boolean;
  /** The bands on which it answers, in the order of the plan */
  readonly bands: readonly string[];
}

/** What is said of each part of a deployment, and on which bands it answers. */
export const partInfos = (
  { parts }: Deployment,
  bands: readonly { readonly band: string; readonly answeredBy: readonly number[] }[],
): readonly PartInfo[] =>
  parts.map((sweep, place) => ({
    ...sweepInfo(sweep),
    isByHand: readingsOf(sweep).length > 0,
    bands: bands.filter(({ answeredBy }) => answeredBy.includes(place)).map(({ band }) => band),
  }));
