import type { BandSummary, Curve, Judgement, Sweep, Trace } from "@feedpoint/core";

/** before and after: the two sides of a comparison. */
export type Role = "only" | "before" | "after";

/** A sweep as it is drawn. */
export interface Series {
  readonly role: Role;
  readonly sweep: Sweep;
  readonly curve: Curve;
  readonly trace: Trace;
  /** What is marked on each band that was judged */
  readonly bands: readonly BandSummary[];
  /** Name of the table in the page that holds its values; absent in a picture on its own */
  readonly valuesId?: string;
}

export function seriesOf(
  role: Role,
  { curve, trace }: Judgement,
  bands: readonly BandSummary[],
  valuesId?: string,
): Series {
  return { role, sweep: curve.sweep, curve, trace, bands, ...(valuesId === undefined ? {} : { valuesId }) };
}
