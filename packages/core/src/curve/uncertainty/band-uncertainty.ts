import { mean, standardDeviation } from "simple-statistics";
import type { Sweep } from "../../sweep/sweep.js";
import { type Curve, isVectorCurve, noiseOrBound } from "../curve.js";
import { ASSUMED_NOISE } from "../noise/noise.js";
import { extremesOver, type Piece, type Span, totalWidth, widthWithin } from "../pieces.js";
import { isBeyondScale, spanAt, spansWithin, type Trace, traceOf } from "../trace.js";
import { FEATURE_NAMES, type Features, featuresOf } from "./features.js";
import { deviationsByFits } from "./first-order.js";
import { type Instrument, instrumentError } from "./instrument.js";
import { placesAsGood } from "./places-as-good.js";
import { type Replicates, replicatesOf } from "./replicates.js";

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
/** By how much copies understate how far a number varies from sweep to sweep. */
interface Understatement {
  readonly values: number;
  /** The place of a flat minimum follows the smoothing most */
  readonly place: number;
  /** How many times what further smoothing changes the smoothing itself may be off by; 0 where nothing was smoothed */
  readonly bySmoothing: number;
}
/**
 * Copies vary less than sweeps of the antenna do: those of smoothed samples start from a curve that has been smoothed already, by
 * windows that the antenna's bends are not quite cubic in; those of a fit leave out what its order cannot follow, and at low SWR the
 * noise of a scalar sweep is not even on both sides. Chosen on ten families of invented antennas; tests/accuracy/intervals.test.ts
 * holds them to their word on ten others, coverage.test.ts on modelled ones.
 */
const VECTOR_COPIES_UNDERSTATE: Understatement = { values: 1.4, place: 1.7, bySmoothing: 2 };
const SCALAR_COPIES_UNDERSTATE: Understatement = { values: 1.5, place: 1.7, bySmoothing: 1 };
const VECTOR_FITS_UNDERSTATE: Understatement = { values: 1.5, place: 1.5, bySmoothing: 0 };
const SCALAR_FITS_UNDERSTATE: Understatement = { values: 1.4, place: 1.7, bySmoothing: 0 };

function understatementOf(curve: Curve, { fits }: Replicates): Understatement {
  const isVector = isVectorCurve(curve);
  if (fits !== null) return isVector ? VECTOR_FITS_UNDERSTATE : SCALAR_FITS_UNDERSTATE;
  return isVector ? VECTOR_COPIES_UNDERSTATE : SCALAR_COPIES_UNDERSTATE;
}

/**
 * Halving the step lowers the error of the interpolation by about this much (its order is four, so by 16 in theory): what
 * leaving out every other sample changes, over this, is what the step itself may hide.
 */
const STEP_GAIN = 8;
/** A number that more copies than this share do not have is not sure to exist. */
const LARGEST_MISSING_SHARE = 0.1;
/** Samples needed for anything to be said. */
const FEWEST_SAMPLES = 5;

/** What the intervals of every band of a sweep start from. */
export interface Grounds {
  readonly trace: Trace;
  /** Standard deviation of ρ to reckon with */
  readonly noise: number;
  readonly replicatesBetween: (lowHz: number, highHz: number) => Replicates;
}

/** @returns null where the sweep has too few samples for anything to be said */
export function groundsOf(trace: Trace): Grounds | null {
  const { curve } = trace;
  if (curve.sweep.frequencyHz.length < FEWEST_SAMPLES || curve.sweep.continuity === "spots") return null;
  const noise = noiseOrBound(curve) ?? ASSUMED_NOISE;
  return { trace, noise, replicatesBetween: replicatesOf(curve, noise) };
}

/**
 * Tells how sure a band's numbers are: noise by looking at noisy copies of the curve (a parametric bootstrap), the step by
 * leaving out samples, the instrument by its greatest error.
 *
 * Source of the method: B. Efron, R. J. Tibshirani, An Introduction to the Bootstrap, 1993, chapter 6 (from memory).
 *
 * @param limit ρ of the SWR limit
 * @param bandwidth span around the best point, null where the best is not within the limit
 * @param errors the analyser's own, and half of what ρ may be off by the scatter of the set-up
 * @returns null where a number of the band may not exist
 */
export function bandUncertainty(
  { trace, noise, replicatesBetween }: Grounds,
  pieces: readonly Piece[],
  limit: number,
  bestHz: number,
  bandwidth: Span | null,
  errors: { readonly instrument: Instrument | null; readonly scatter: number },
): BandUncertainty | null {
  const low = Math.min(...pieces.map(({ lowHz }) => lowHz), bandwidth?.lowHz ?? Number.POSITIVE_INFINITY);
  const high = Math.max(...pieces.map(({ highHz }) => highHz), bandwidth?.highHz ?? 0);
  const look = (other: Curve) => featuresOf(traceOf(other), pieces, limit, bestHz);
  const replicates = replicatesBetween(low, high);
  const extremes = extremesOver(trace, pieces);
  const estimate = featuresOf(trace, pieces, limit, bestHz, extremes);
  const band = extremes && { trace, pieces, limit, lowHz: low, highHz: high, estimate, worst: extremes.worst };
  const deviations = replicates.fits === null || band === null ? null : deviationsByFits(replicates.fits, band);
  const looks: Looks = {
    estimate,
    spread: deviations === null ? spreadOfCopies(replicates, look) : spreadOfFits(deviations),
    thinned: replicates.thinned.map(look),
    understatement: understatementOf(trace.curve, replicates),
  };
  const random = Object.fromEntries(FEATURE_NAMES.map((name) => [name, intervalOf(looks, name)])) as Record<
    keyof Features,
    Interval | null
  >;
  return withInstrument(random, estimate, trace, pieces, limit, errors, noise);
}

/** How noise spreads a number. */
interface Spread {
  /** Standard deviation; NaN where the number may not exist */
  readonly deviation: number;
  /** By how much it is told too high on average */
  readonly bias: number;
  /** Of the curve that the copies start from; NaN where the number is not told by copies */
  readonly ofBase: number;
}

/** A band's numbers as they are, and what noise and step do to them. */
interface Looks {
  readonly estimate: Features;
  readonly spread: (name: keyof Features) => Spread;
  readonly thinned: readonly Features[];
  readonly understatement: Understatement;
}

const spreadOfFits =
  (deviations: Features) =>
  (name: keyof Features): Spread => ({ deviation: deviations[name], bias: 0, ofBase: Number.NaN });

function spreadOfCopies(replicates: Replicates, look: (curve: Curve) => Features): (name: keyof Features) => Spread {
  const base = look(replicates.base());
  const copies = replicates.copies().map(look);
  return (name) => {
    const known = copies.map((copy) => copy[name]).filter((copy) => !Number.isNaN(copy));
    const isSure = known.length >= (1 - LARGEST_MISSING_SHARE) * copies.length;
    const ofBase = base[name];
    return {
      deviation: isSure ? standardDeviation(known) : Number.NaN,
      // Copies of the estimate are biased as the estimate is (the least of several noisy values is too low, …).
      bias: Number.isNaN(ofBase) || !isSure ? 0 : mean(known) - ofBase,
      ofBase,
    };
  };
}

/** Interval of one number from its spread, the smoothing and what the step may hide; null where it may not exist. */
function intervalOf({ estimate, spread, thinned, understatement }: Looks, name: keyof Features): Interval | null {
  const value = estimate[name];
  const { deviation, bias, ofBase } = spread(name);
  if (Number.isNaN(value) || Number.isNaN(deviation)) return null;
  const understated = name === "bestHz" ? understatement.place : understatement.values;
  const fromNoise = COVERAGE_FACTOR * understated * deviation;
  const shifts = thinned.map((other) => Math.abs(other[name] - value)).filter((shift) => !Number.isNaN(shift));
  const fromStep = Math.max(0, ...shifts) / STEP_GAIN;
  const smoothed = Number.isNaN(ofBase) ? 0 : Math.abs(ofBase - value);
  const half = Math.hypot(fromNoise, fromStep, understatement.bySmoothing * smoothed);
  // A bias that is itself only estimated widens the interval to its side, and takes nothing off the other one.
  return { low: value - Math.max(0, bias) - half, high: value + Math.max(0, -bias) + half };
}

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
