import type { Sweep } from "../../sweep/sweep.js";
import { type Curve, isVectorCurve, noiseOrBound } from "../curve.js";
import { ASSUMED_NOISE } from "../noise/noise.js";
import { extremesOver, type Piece, type Span, totalWidth, widthWithin } from "../pieces.js";
import { isBeyondScale, spanAt, spansWithin, type Trace, traceOf } from "../trace.js";
import { FEATURE_NAMES, type Features, featuresOf } from "./features.js";
import { type Instrument, instrumentError } from "./instrument.js";
import type { Offsets } from "./local-point.js";
import { noiseOffsets } from "./noise-offsets.js";
import { placesAsGood } from "./places-as-good.js";
import { type Views, viewsOf } from "./views.js";

/** Both ends of what a number may be, with 95 % probability as far as noise goes. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** How sure the numbers of a band are. */
export interface BandUncertainty {
  /** Standard deviation of ρ that was reckoned with */
  readonly noise: number;
  /** Of ρ at the best point */
  readonly bestMagnitude: Interval;
  /** Of the frequency of the best point */
  readonly bestHz: Interval;
  /** Of ρ at the worst point */
  readonly worstMagnitude: Interval;
  /** Of the width within the limit */
  readonly withinHz: Interval;
  /** Of the lower edge of the span around the best point; null where there is none, it is open there, or it may not exist */
  readonly lowEdgeHz: Interval | null;
  /** Of its upper edge; null likewise */
  readonly highEdgeHz: Interval | null;
}

/** Standard deviations on either side that hold 95 %. */
const COVERAGE_FACTOR = 1.96;

/** By how much what noise does by first derivatives understates how far a number varies from sweep to sweep. */
interface Understatement {
  readonly byNoise: number;
  /** How many times what further smoothing changes the smoothing itself may be off by; 0 where nothing was smoothed */
  readonly bySmoothing: number;
}

/**
 * Smoothing windows follow noise that they take for the antenna's bends; a fit leaves out what its order cannot follow; the noise itself
 * is only estimated. Chosen on ten families of invented antennas; tests/accuracy/intervals.test.ts holds them to their word on ten others,
 * coverage.test.ts on modelled ones.
 */
const VECTOR_SMOOTHED: Understatement = { byNoise: 1.2, bySmoothing: 2 };
const SCALAR_SMOOTHED: Understatement = { byNoise: 1, bySmoothing: 0.5 };
const VECTOR_FITTED: Understatement = { byNoise: 1.5, bySmoothing: 0 };
const SCALAR_FITTED: Understatement = { byNoise: 1.1, bySmoothing: 0 };

function understatementOf(curve: Curve, isSmoothed: boolean): Understatement {
  const isVector = isVectorCurve(curve);
  if (isSmoothed) return isVector ? VECTOR_SMOOTHED : SCALAR_SMOOTHED;
  return isVector ? VECTOR_FITTED : SCALAR_FITTED;
}

/**
 * Halving the step lowers the error of the interpolation by about this much (its order is four, so by 16 in theory): what
 * leaving out every other sample changes, over this, is what the step itself may hide.
 */
const STEP_GAIN = 8;
/** Samples needed for anything to be said. */
const FEWEST_SAMPLES = 5;

/** What the intervals of every band of a sweep start from. */
export interface Grounds {
  readonly trace: Trace;
  /** Standard deviation of ρ to reckon with */
  readonly noise: number;
  readonly viewsBetween: (lowHz: number, highHz: number) => Views;
}

/** @returns null where the sweep has too few samples for anything to be said */
export function groundsOf(trace: Trace): Grounds | null {
  const { curve } = trace;
  if (curve.sweep.frequencyHz.length < FEWEST_SAMPLES || curve.sweep.continuity === "spots") return null;
  const noise = noiseOrBound(curve) ?? ASSUMED_NOISE;
  return { trace, noise, viewsBetween: viewsOf(curve, noise) };
}

/**
 * Tells how sure a band's numbers are: noise by first derivatives (see noise-offsets.ts), smoothing by smoothing more, the step by
 * leaving out samples, the instrument by its greatest error.
 *
 * @param limit ρ of the SWR limit
 * @param bandwidth span around the best point, null where the best is not within the limit
 * @param errors the analyser's own, and half of what ρ may be off by the scatter of the set-up
 * @returns null where a number of the band may not exist
 */
export function bandUncertainty(
  { trace, noise, viewsBetween }: Grounds,
  pieces: readonly Piece[],
  limit: number,
  bestHz: number,
  bandwidth: Span | null,
  errors: { readonly instrument: Instrument | null; readonly scatter: number },
): BandUncertainty | null {
  const low = Math.min(...pieces.map(({ lowHz }) => lowHz), bandwidth?.lowHz ?? Number.POSITIVE_INFINITY);
  const high = Math.max(...pieces.map(({ highHz }) => highHz), bandwidth?.highHz ?? 0);
  const look = (other: Curve) => featuresOf(traceOf(other), pieces, limit, bestHz);
  const { parts, smoothing, thinned } = viewsBetween(low, high);
  const extremes = extremesOver(trace, pieces);
  if (extremes === null) return null;
  const estimate = featuresOf(trace, pieces, limit, bestHz, extremes);
  const band = { trace, pieces, limit, lowHz: low, highHz: high, estimate, worst: extremes.worst, noise };
  const understatement = understatementOf(trace.curve, smoothing !== null);
  const offsets = noiseOffsets(parts, band, COVERAGE_FACTOR * understatement.byNoise);
  if (offsets === null) return null;
  const looks: Looks = {
    estimate,
    offsets,
    smoothing: smoothing && { further: look(smoothing.further), again: look(smoothing.again) },
    thinned: thinned.map(look),
    understatement,
  };
  const random = Object.fromEntries(FEATURE_NAMES.map((name) => [name, intervalOf(looks, name)])) as Record<
    keyof Features,
    Interval | null
  >;
  return withInstrument(random, estimate, trace, pieces, limit, errors, noise);
}

/** A band's numbers as they are, and what noise, smoothing and step do to them. */
interface Looks {
  readonly estimate: Features;
  readonly offsets: Record<keyof Features, Offsets | null>;
  readonly smoothing: { readonly further: Features; readonly again: Features } | null;
  readonly thinned: readonly Features[];
  readonly understatement: Understatement;
}

/** Interval of one number; null where it may not exist. */
function intervalOf(looks: Looks, name: keyof Features): Interval | null {
  const { estimate, smoothing, thinned, understatement } = looks;
  const value = estimate[name];
  const offsets = looks.offsets[name];
  if (Number.isNaN(value) || offsets === null) return null;
  const shifts = thinned.map((other) => Math.abs(other[name] - value)).filter((shift) => !Number.isNaN(shift));
  const fromStep = Math.max(0, ...shifts) / STEP_GAIN;
  const smoothed = known(smoothing && understatement.bySmoothing * (smoothing.further[name] - value));
  // What the same smoothing does to it once more: it widens the interval to its side, and takes nothing off the other one.
  const flattened = known(smoothing && smoothing.again[name] - smoothing.further[name]);
  return {
    low: value - Math.max(0, flattened) - Math.hypot(offsets.below, fromStep, smoothed),
    high: value + Math.max(0, -flattened) + Math.hypot(offsets.above, fromStep, smoothed),
  };
}

const known = (difference: number | null): number => (difference === null || Number.isNaN(difference) ? 0 : difference);

function withInstrument(
  random: Record<keyof Features, Interval | null>,
  estimate: Features,
  trace: Trace,
  pieces: readonly Piece[],
  limit: number,
  { instrument, scatter }: { readonly instrument: Instrument | null; readonly scatter: number },
  noise: number,
): BandUncertainty | null {
  const { bestMagnitude, bestHz, worstMagnitude, withinHz, lowEdgeHz, highEdgeHz } = random;
  if (bestMagnitude === null || bestHz === null || worstMagnitude === null || withinHz === null) return null;
  const roundingAt = roundingOf(trace.curve.sweep);
  const error = (rho: number) =>
    roundingAt(rho) + scatter + (instrument === null ? 0 : instrumentError(Math.max(0, rho), instrument));
  const widen = ({ low, high }: Interval): Interval => ({
    low: Math.max(0, low - error(low)),
    high: high + error(high),
  });
  // What means "at least" may be anything beyond.
  const told = (interval: Interval, magnitude: number): Interval =>
    isBeyondScale(trace.curve, magnitude) ? { low: magnitude, high: Math.max(1, magnitude) } : widen(interval);
  // The instrument may have read too high or too low all along: the limit is then met elsewhere on the same curve.
  const generous = spansWithin(trace, limit + error(limit));
  const strict = spansWithin(trace, Math.max(0, limit - error(limit)));
  const swing = {
    low: Math.max(0, estimate.withinHz - widthWithin(strict, pieces)),
    high: Math.max(0, widthWithin(generous, pieces) - estimate.withinHz),
  };
  const outer = spanAt(generous, estimate.bestHz);
  const inner = spanAt(strict, estimate.bestHz);
  const edge = (interval: Interval | null, shifts: readonly (number | undefined)[], value: number): Interval | null => {
    if (interval === null || shifts.some((shift) => shift === undefined)) return null;
    const moves = shifts.map((shift) => (shift ?? value) - value);
    return { low: interval.low + Math.min(0, ...moves), high: interval.high + Math.max(0, ...moves) };
  };
  // Among readings that rounding makes equal the best may be anywhere.
  const rounding = roundingAt(estimate.bestMagnitude);
  const level =
    rounding === 0 ? undefined : spanAt(spansWithin(trace, estimate.bestMagnitude + rounding), estimate.bestHz);
  const asGood = placesAsGood(trace, pieces, estimate, (bestMagnitude.high - bestMagnitude.low) / 2);
  return {
    noise,
    bestMagnitude: told(bestMagnitude, estimate.bestMagnitude),
    bestHz: {
      low: Math.min(bestHz.low, level?.lowHz ?? bestHz.low, ...asGood),
      high: Math.max(bestHz.high, level?.highHz ?? bestHz.high, ...asGood),
    },
    worstMagnitude: told(worstMagnitude, estimate.worstMagnitude),
    withinHz: {
      low: Math.max(0, withinHz.low - swing.low),
      high: Math.min(totalWidth(pieces), withinHz.high + swing.high),
    },
    lowEdgeHz: edge(lowEdgeHz, [outer?.lowHz, inner?.lowHz], estimate.lowEdgeHz),
    highEdgeHz: edge(highEdgeHz, [outer?.highHz, inner?.highHz], estimate.highEdgeHz),
  };
}

/**
 * How far rounding in print may have moved ρ, by ρ. That of an SWR falls with (1 - ρ)² from where the sweep is best matched;
 * of other readings no more is said than for them as a rule.
 */
function roundingOf({ kind, rounding, greatestRounding, reflectionMagnitude }: Sweep): (rho: number) => number {
  if (greatestRounding === 0) return () => 0;
  if (kind === "vector") return () => greatestRounding;
  const least = reflectionMagnitude.reduce((lowest, rho) => Math.min(lowest, rho), 1);
  if (least === 1) return () => rounding;
  return (rho) => Math.max(rounding, greatestRounding * ((1 - Math.min(rho, 1)) / (1 - least)) ** 2);
}
