import type { BandSummary } from "../../bands/summary.js";
import { totalWidth } from "../../curve/pieces.js";
import { type Instrument, instrumentError } from "../../curve/uncertainty/instrument.js";
import { type GroupChange, groupChange } from "./repeats.js";
import { HIDDEN, type Seen } from "./verdict.js";

/** What a change must exceed to count, besides noise, instrument and the scatter of repeats. */
export interface Thresholds {
  /** Change of ρ: 0.03 tells SWR 1.50 from 1.60, 2.0 from 2.1, 5.0 from 5.6 (our own choice) */
  readonly reflectionMagnitude: number;
  /** Change of the share of a band within the limit (our own choice) */
  readonly fraction: number;
  /** Change of an SWR read off a scale by eye (common practice, no source) */
  readonly readingSwr: number;
}

/** The thresholds where nobody states others: 0.03 of ρ, 0.03 of the band, 0.2 of a reading. */
export const DEFAULT_THRESHOLDS: Thresholds = { reflectionMagnitude: 0.03, fraction: 0.03, readingSwr: 0.2 };

/** A difference of two points must exceed this many standard deviations of their noise. */
const SIGNIFICANCE = 3;
/** The same on intervals, which reach out 1.96 standard deviations and hold a band's best and worst point as a whole. */
const INTERVAL_SIGNIFICANCE = SIGNIFICANCE / 1.96;

/**
 * What two sweeps that differ by some scatter in Γ differ by in ρ at the most, 95 of 100 times: twice the share of it that lies along
 * Γ, 1/√2.
 */
const SCATTER_IN_RHO = Math.SQRT2;

/** Whether what was noted by hand changed: where the ranges do not touch, by more than a reading off a scale is sure to. */
export function readingSign(
  befores: readonly BandSummary[],
  afters: readonly BandSummary[],
  { readingSwr }: Thresholds,
): Seen {
  const [before, after] = [rangeOf(befores), rangeOf(afters)];
  const isBetter = after.high < before.low - readingSwr;
  const isWorse = after.low > before.high + readingSwr;
  return isBetter || isWorse
    ? { isBetter, isPerhaps: false, text: `SWR ${rangeText(before)} → ${rangeText(after)}, from readings` }
    : null;
}

interface SwrRange {
  readonly low: number;
  readonly high: number;
}

/** From the least to the greatest SWR of a side; what means "more than" has no end. */
function rangeOf(summaries: readonly BandSummary[]): SwrRange {
  const lows = summaries.map(({ best }) => best?.swr ?? Number.NaN);
  const highs = summaries.map(({ worst }) =>
    worst?.isAtLeast ? Number.POSITIVE_INFINITY : (worst?.swr ?? Number.NaN),
  );
  return { low: Math.min(...lows), high: Math.max(...highs) };
}

const rangeText = ({ low, high }: SwrRange): string => {
  if (high === Number.POSITIVE_INFINITY) return `≥${formatSwr(low)}`;
  return low === high ? formatSwr(low) : `${formatSwr(low)}-${formatSwr(high)}`;
};

interface Middles {
  readonly before: BandSummary;
  readonly after: BandSummary;
}

/** Whether the best or the worst point changed beyond noise, instrument, scatter and what matters; null where it did not. */
export function magnitudeSign(
  which: "best" | "worst",
  befores: readonly BandSummary[],
  afters: readonly BandSummary[],
  { before, after }: Middles,
  {
    noise,
    instrument,
    thresholds,
    scatter,
  }: { noise: number; instrument: Instrument | null; thresholds: Thresholds; scatter: number | null },
): Seen {
  const rho = (summary: BandSummary) => summary[which]?.reflectionMagnitude ?? Number.NaN;
  const group = groupChange(befores.map(rho), afters.map(rho));
  const { change } = group;
  const systematic =
    instrument === null
      ? 0
      : Math.max(instrumentError(rho(before), instrument), instrumentError(rho(after), instrument));
  const half = (summary: BandSummary) => {
    const { uncertainty } = summary;
    const interval = which === "best" ? uncertainty?.bestMagnitude : uncertainty?.worstMagnitude;
    // What means "at least" is open on the side that does not matter here.
    return interval === undefined || summary[which]?.isAtLeast ? 0 : (interval.high - interval.low) / 2;
  };
  const unsure = Math.max(SIGNIFICANCE * noise, INTERVAL_SIGNIFICANCE * Math.hypot(half(before), half(after)));
  // From "at least" it can only be told to have fallen, to "at least" only to have risen.
  if ((before[which]?.isAtLeast && !(change < 0)) || (after[which]?.isAtLeast && !(change > 0))) return null;
  const counts = Math.max(thresholds.reflectionMagnitude, unsure, systematic);
  if (isHidden(group, counts)) return HIDDEN;
  if (!(Math.abs(change) > counts)) return null;
  const swr = (summary: BandSummary) =>
    `${summary[which]?.isAtLeast ? "≥" : ""}${formatSwr(summary[which]?.swr ?? Number.NaN)}`;
  const isPerhaps = scatter !== null && Math.abs(change) <= SCATTER_IN_RHO * scatter;
  return { isBetter: change < 0, isPerhaps, text: `${which} SWR ${swr(before)} → ${swr(after)}` };
}

/** Whether the share within the limit changed in the same sense. */
export function fractionSign(
  befores: readonly BandSummary[],
  afters: readonly BandSummary[],
  { before, after }: Middles,
  { thresholds, scatter }: { thresholds: Thresholds; scatter: number | null },
): Seen {
  const fraction = ({ withinLimit }: BandSummary) => withinLimit.fraction;
  const group = groupChange(befores.map(fraction), afters.map(fraction));
  const { change } = group;
  const half = ({ uncertainty, pieces }: BandSummary) =>
    uncertainty === null ? 0 : (uncertainty.withinHz.high - uncertainty.withinHz.low) / 2 / totalWidth(pieces);
  const counts = Math.max(thresholds.fraction, Math.hypot(half(before), half(after)));
  if (isHidden(group, counts)) return HIDDEN;
  if (!(Math.abs(change) > counts)) return null;
  const kilohertz = Math.round((change * totalWidth(before.pieces)) / 1000);
  return {
    isBetter: change > 0,
    // A share follows from the reflection, whose best and worst point say whether it may be scatter.
    isPerhaps: scatter !== null,
    text: `${Math.abs(kilohertz)} kHz ${change > 0 ? "more" : "less"} within ${before.withinLimit.limitSwr}:1`,
  };
}

/** Whether the repeats scatter so that a change which counts may be made by it, or lie in it unseen. */
const isHidden = ({ change, margin, scatter }: GroupChange, counts: number): boolean =>
  Math.abs(change) <= margin && Math.max(Math.abs(change), scatter) > counts;

const formatSwr = (swr: number) => (swr === Number.POSITIVE_INFINITY ? "∞" : swr.toFixed(2));
