import { type BandSummary, type Curve, type Sweep, type Trace, traceOfSweep } from "@feedpoint/core";

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

export function seriesOf(role: Role, sweep: Sweep, bands: readonly BandSummary[], valuesId?: string): Series {
  const trace = traceOfSweep(sweep);
  return { role, sweep, curve: trace.curve, trace, bands, ...(valuesId === undefined ? {} : { valuesId }) };
}
