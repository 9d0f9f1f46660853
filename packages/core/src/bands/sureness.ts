import { totalWidth } from "../curve/pieces.js";
import { type BandUncertainty, bandUncertainty, type Interval } from "../curve/uncertainty/band-uncertainty.js";
import type { Instrument } from "../curve/uncertainty/instrument.js";
import type { Limits } from "../facts/limits.js";
import { reflectionMagnitudeFromSwr, swrFromReflectionMagnitude } from "../reflection/swr.js";
import type { Answering } from "./parts.js";
import type { Point } from "./point.js";
import { extremesIn } from "./reach.js";
import type { BandSummary, Summarised } from "./summary.js";

/** What makes the numbers of a band unsure beside noise and step. */
export interface SystematicErrors {
  readonly instrument: Instrument | null;
  /** Half of what ρ may be off because parts of the deployment differ where they overlap; 0 where none do */
  readonly scatter: number;
}

/** The same summary with both ends of what its numbers may be. Costs some dozens of times the summary itself. */
export function withUncertainty(
  { summary, extremes }: Summarised,
  answering: readonly Answering[],
  limits: Limits,
  errors: SystematicErrors,
): BandSummary {
  const { best, worst } = summary;
  // Where even the best point is beyond any tuner, nobody needs to know by how much.
  if (extremes === null || best === null || worst === null || best.swr > limits.wideRangeTunerSwr) return summary;
  const told = answering.map((each) => uncertaintyOf(each, summary, limits, errors));
  const of = (point: { readonly part: Answering["part"] }) =>
    told[answering.findIndex(({ part }) => part === point.part)];
  const [ofBest, ofWorst] = [of(extremes.best), of(extremes.worst)];
  if (ofBest == null || ofWorst == null) return summary;
  const widths = answering.map(({ pieces }, i) => told[i]?.withinHz ?? { low: 0, high: totalWidth(pieces) });
  const uncertainty: BandUncertainty = {
    ...ofBest,
    worstMagnitude: ofWorst.worstMagnitude,
    withinHz: {
      low: widths.reduce((sum, { low }) => sum + low, 0),
      high: widths.reduce((sum, { high }) => sum + high, 0),
    },
  };
  return {
    ...summary,
    best: withRange(best, uncertainty.bestMagnitude),
    worst: withRange(worst, uncertainty.worstMagnitude),
    uncertainty,
  };
}

/** How sure a part is of its own pieces; null where that is not known. */
function uncertaintyOf(
  each: Answering,
  { bandwidth }: BandSummary,
  limits: Limits,
  errors: SystematicErrors,
): BandUncertainty | null {
  const { part, pieces } = each;
  const best = extremesIn([each])?.best ?? null;
  const grounds = part.knows === "stretch" || best === null ? null : part.grounds();
  if (grounds === null || best === null) return null;
  const limit = reflectionMagnitudeFromSwr(limits.swr);
  return bandUncertainty(grounds, pieces, limit, best.frequencyHz, bandwidth, errors);
}

/** A point with both ends of what its SWR may be; spelled out, as it is done for each band of a season. */
const withRange = (point: Point, { low, high }: Interval): Point => ({
  frequencyHz: point.frequencyHz,
  swr: point.swr,
  isAtLeast: point.isAtLeast,
  returnLossDb: point.returnLossDb,
  reflectionMagnitude: point.reflectionMagnitude,
  resistanceOhms: point.resistanceOhms,
  reactanceOhms: point.reactanceOhms,
  swrLow: swrFromReflectionMagnitude(low),
  swrHigh: swrFromReflectionMagnitude(high),
});
