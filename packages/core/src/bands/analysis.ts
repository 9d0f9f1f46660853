import type { Curve } from "../curve/curve.js";
import { type LimitSpan, spansWithin, type Trace, traceOfSweep } from "../curve/trace.js";
import type { Limits } from "../facts/limits.js";
import { reflectionMagnitudeFromSwr } from "../reflection/swr.js";
import type { Sweep } from "../sweep/sweep.js";

/** A trace and the spans within each limit, found once and shared by all bands. */
export interface Analysis {
  readonly curve: Curve;
  readonly trace: Trace;
  readonly limits: Limits;
  /** Spans over the whole sweep with SWR within `limits.swr`, and within what each kind of tuner matches */
  readonly spans: readonly LimitSpan[];
  readonly builtInTunerSpans: readonly LimitSpan[];
  readonly wideRangeTunerSpans: readonly LimitSpan[];
}

/** Prepares a sweep for being summarised, band after band. */
export function analyse(sweep: Sweep, limits: Limits): Analysis {
  const trace = traceOfSweep(sweep);
  const within = (swr: number) => spansWithin(trace, reflectionMagnitudeFromSwr(swr));
  return {
    curve: trace.curve,
    trace,
    limits,
    spans: within(limits.swr),
    builtInTunerSpans: within(limits.builtInTunerSwr),
    wideRangeTunerSpans: within(limits.wideRangeTunerSwr),
  };
}
