import { at, type Column, firstIndexAbove, magnitudesOf } from "../numbers/column.js";
import { type Complex, complex } from "../numbers/complex.js";
import type { ScalarSweep, Sweep, VectorSweep } from "../sweep/sweep.js";
import {
  type ComplexResult,
  type Interpolation,
  interpolateBetween,
  prepareInterpolation,
} from "./between/interpolation.js";
import {
  magnitudeOf,
  prepareScalarInterpolation,
  type ScalarInterpolation,
  scalarBetween,
} from "./between/scalar-interpolation.js";
import { valuesOf } from "./fit/rational.js";
import type { Explanation } from "./fit/whole-fit.js";
import { estimateNoise, greatestNoise } from "./noise/noise.js";
import { ceilingOf, inverseAt, inverseOf, runsWithin, scalarNoise } from "./noise/scalar-noise.js";
import { smooth } from "./noise/smoothing.js";
import { mendScalarSpikes, mendSpikes } from "./noise/spikes.js";
import { bulkDelay, withoutDelay } from "./samples/delay.js";
import { findStretches, type Stretch } from "./samples/stretches.js";

interface CurveCommon {
  readonly stretches: readonly Stretch[];
  /** ρ at every sample; the curve runs through what smoothing has left of them */
  readonly reflectionMagnitude: Column;
  /** Standard deviation of the noise in ρ (in each part of Γ) told from the sweep itself or from repeated readings; null where neither can tell */
  readonly noise: number | null;
  /** Indices of samples that stood alone and were put right before anything else */
  readonly spikes: readonly number[];
  /** What explains each stretch; empty where nothing was smoothed */
  readonly fits: readonly Explanation[];
  /** Samples on either side that smoothing took in for each one, 0 where it is as measured or on a fit; empty where nothing was smoothed */
  readonly halfWidths: Uint8Array;
  /** Its samples smoothed further than the curve: Γ without its bulk delay, or 1 / (1 - ρ²) and nothing */
  readonly further: { readonly real: Column; readonly imaginary: Column | null };
}

/** Γ with its bulk delay taken out (ρ does not feel it), blended from three-point rational functions. */
export interface VectorCurve extends CurveCommon {
  readonly sweep: VectorSweep;
  /** Round-trip delay taken out before interpolating, s */
  readonly delayS: number;
  /** What it is blended from; internal */
  readonly interpolation: Interpolation;
}

/** ρ by way of 1 / (1 - ρ²), the inverse of the share of power accepted. */
export interface ScalarCurve extends CurveCommon {
  readonly sweep: ScalarSweep;
  /** What it is blended from; internal */
  readonly interpolation: ScalarInterpolation;
}

/** A sweep as a continuous function of frequency, within its stretches and nowhere else. */
export type Curve = VectorCurve | ScalarCurve;

export const isVectorCurve = (curve: Curve): curve is VectorCurve => curve.sweep.kind === "vector";

/** Second differences below this many standard deviations are not told from noise. */
const CURVATURE_SIGNIFICANCE = 8;

const asMeasured = <Columns>(columns: Columns) => ({
  ...columns,
  further: columns,
  fits: [],
  halfWidths: new Uint8Array(0),
});

/** What is known of a sweep beforehand, and then not estimated from it. Everything may be left out. */
export interface KnownOfSweep {
  /** Standard deviation of ρ; null: not known, and nothing is smoothed */
  readonly noise?: number | null;
  /** Round-trip delay on the line, s */
  readonly delayS?: number;
  /** No sample stands alone */
  readonly hasNoSpikes?: boolean;
}

/**
 * The curve of a sweep: ρ, and Γ where the sweep knows it, at every frequency that was swept.
 *
 * Samples that stand alone are put right, noise is smoothed as far as it can be told from the sweep, and what lies between
 * samples is interpolated. Between two stretches that a gap divides there is no curve.
 *
 * @example
 * ```ts
 * import { curveOf, readSweeps, reflectionMagnitudeAt } from "@feedpoint/core";
 *
 * const [sweep] = readSweeps("# MHz S RI R 50\n7.0 0.2 0\n7.1 0.1 0\n7.2 0 0\n7.3 -0.1 0\n");
 * const curve = curveOf(sweep);
 * reflectionMagnitudeAt(curve, 7.05e6); // → 0.15
 * reflectionMagnitudeAt(curve, 6.9e6); // → NaN
 * ```
 */
export function curveOf(sweep: Sweep, known: KnownOfSweep = {}): Curve {
  const stretches =
    sweep.continuity === "spots"
      ? Array.from(sweep.frequencyHz, (_, i) => ({ first: i, last: i }))
      : findStretches(sweep.frequencyHz);
  return sweep.kind === "vector" ? vectorCurve(sweep, stretches, known) : scalarCurve(sweep, stretches, known);
}

function vectorCurve(sweep: VectorSweep, stretches: readonly Stretch[], known: KnownOfSweep): VectorCurve {
  const { frequencyHz } = sweep;
  const delayS = known.delayS ?? bulkDelay(sweep, stretches);
  // Where nothing is to be taken out, the curve does without columns of its own.
  const own = delayS === 0 && known.hasNoSpikes ? null : withoutDelay(sweep, delayS);
  const real: Column = own?.real ?? sweep.reflectionReal;
  const imaginary: Column = own?.imaginary ?? sweep.reflectionImaginary;
  const spikes = own === null || known.hasNoSpikes ? [] : mendSpikes(frequencyHz, own.real, own.imaginary, stretches);
  const noise =
    known.noise === undefined
      ? withRounding(estimateNoise([real, imaginary], stretches) ?? sweep.repeatNoise, sweep, 2)
      : known.noise;
  const smoothed =
    noise === null || noise === 0
      ? asMeasured({ real, imaginary })
      : smooth(frequencyHz, real, imaginary, stretches, noise, null);
  const floor = CURVATURE_SIGNIFICANCE * (noise ?? 0);
  return {
    sweep,
    stretches,
    reflectionMagnitude:
      smoothed.real === sweep.reflectionReal
        ? sweep.reflectionMagnitude
        : magnitudesOf(smoothed.real, smoothed.imaginary),
    delayS,
    noise,
    spikes,
    fits: smoothed.fits,
    halfWidths: smoothed.halfWidths,
    further: smoothed.further,
    interpolation: prepareInterpolation(frequencyHz, smoothed.real, smoothed.imaginary, floor),
  };
}

function scalarCurve(sweep: ScalarSweep, stretches: readonly Stretch[], known: KnownOfSweep): ScalarCurve {
  const { frequencyHz, reflectionMagnitude } = sweep;
  const isKnown = (i: number) => at(reflectionMagnitude, i) < ceilingOf(sweep);
  // What means "at least" is no reading: beside it no sample stands alone, and none is smoothed by it.
  const runs = sweep.ceilingMagnitude === null ? stretches : runsWithin(stretches, isKnown);
  const mended = reflectionMagnitude.slice();
  const spikes = known.hasNoSpikes ? [] : mendScalarSpikes(frequencyHz, mended, runs);
  const { inverse, weights } = inverseOf(mended);
  const noise =
    known.noise === undefined
      ? withRounding(scalarNoise(sweep, mended, inverse, weights, stretches) ?? sweep.repeatNoise, sweep, 1)
      : known.noise;
  const smoothed =
    noise === null || noise === 0
      ? asMeasured({ real: inverse })
      : smooth(frequencyHz, inverse, null, runs, noise, weights);
  // No known reading is beyond the scale.
  const end = inverseAt(ceilingOf(sweep));
  const settle = (column: Column) => column.map((value, i) => (isKnown(i) ? Math.min(value, end) : value));
  const settled = settle(smoothed.real);
  return {
    sweep,
    stretches,
    reflectionMagnitude: settled.map(magnitudeOf),
    noise,
    spikes,
    fits: runs === stretches ? smoothed.fits : [],
    halfWidths: smoothed.halfWidths,
    further: { real: settle(smoothed.further.real), imaginary: null },
    interpolation: prepareScalarInterpolation(frequencyHz, settled, runs),
  };
}

/** Readings fewer than this are not averaged for their rounding alone: they show no steps (our own choice). */
const FEWEST_TO_AVERAGE = 40;

/** Noise with that of rounding to the printed digits, which equal readings in a row do not show. */
function withRounding(noise: number | null, { rounding, frequencyHz }: Sweep, parts: 1 | 2): number | null {
  if (rounding === 0 || frequencyHz.length < FEWEST_TO_AVERAGE) return noise;
  // Of an error that is anywhere within ± a.
  return Math.max(noise ?? 0, rounding / Math.sqrt(3 * parts));
}

/** Noise of a curve, or where it cannot be told, the most that it can be; null for a handful of samples. */
export function noiseOrBound(curve: Curve): number | null {
  if (curve.noise !== null) return curve.noise;
  const { frequencyHz, reflectionMagnitude } = curve.sweep;
  if (isVectorCurve(curve)) {
    return greatestNoise(frequencyHz, [curve.interpolation.real, curve.interpolation.imaginary], curve.stretches);
  }
  const { inverse, weights } = inverseOf(reflectionMagnitude);
  return greatestNoise(frequencyHz, [inverse], curve.stretches, weights);
}

const scratch: ComplexResult = { real: 0, imaginary: 0 };

/** The stretch that holds a frequency, or null in a gap and beyond the ends. */
function stretchAt(curve: Curve, frequencyHz: number): Stretch | null {
  const axis = curve.sweep.frequencyHz;
  for (const stretch of curve.stretches) {
    if (frequencyHz >= at(axis, stretch.first) && frequencyHz <= at(axis, stretch.last)) return stretch;
  }
  return null;
}

/** ρ at a frequency within a stretch that the caller knows; see {@link reflectionMagnitudeAt}. */
export function magnitudeWithin(curve: Curve, stretch: Stretch, frequencyHz: number): number {
  const axis: Column = curve.sweep.frequencyHz;
  if (stretch.first === stretch.last) return at(curve.sweep.reflectionMagnitude, stretch.first);
  const index = Math.min(Math.max(firstIndexAbove(axis, frequencyHz) - 1, stretch.first), stretch.last - 1);
  return magnitudeBetween(curve, stretch, index, frequencyHz);
}

/** ρ between samples `index` and `index + 1` of a stretch. */
export function magnitudeBetween(curve: Curve, stretch: Stretch, index: number, frequencyHz: number): number {
  if (!isVectorCurve(curve)) {
    return scalarMagnitudeBetween(curve, index, frequencyHz);
  }
  interpolateBetween(curve.interpolation, stretch, index, frequencyHz, scratch);
  return Math.sqrt(scratch.real * scratch.real + scratch.imaginary * scratch.imaginary);
}

/**
 * Between a reading and one that means "at least", ρ is taken to rise to total reflection, up to the end of the scale: where
 * it leaves a limit is then told too early rather than too late.
 */
function scalarMagnitudeBetween({ sweep, interpolation }: ScalarCurve, index: number, frequencyHz: number): number {
  const { ceilingMagnitude } = sweep;
  if (ceilingMagnitude === null) return scalarBetween(interpolation, index, frequencyHz);
  const low = magnitudeOf(at(interpolation.inverse, index));
  const high = magnitudeOf(at(interpolation.inverse, index + 1));
  const isLowKnown = at(sweep.reflectionMagnitude, index) < ceilingMagnitude;
  const isHighKnown = at(sweep.reflectionMagnitude, index + 1) < ceilingMagnitude;
  if (isLowKnown && isHighKnown) return Math.min(scalarBetween(interpolation, index, frequencyHz), ceilingMagnitude);
  const start = at(sweep.frequencyHz, index);
  const share = (frequencyHz - start) / (at(sweep.frequencyHz, index + 1) - start);
  const risen = (1 - share) * (isLowKnown ? low : 1) + share * (isHighKnown ? high : 1);
  return Math.min(risen, Math.max(low, high));
}

/**
 * ρ at a frequency.
 *
 * @returns ρ, or NaN in a gap and beyond the ends of the sweep: nothing is ever extrapolated
 */
export function reflectionMagnitudeAt(curve: Curve, frequencyHz: number): number {
  const stretch = stretchAt(curve, frequencyHz);
  return stretch === null ? Number.NaN : magnitudeWithin(curve, stretch, frequencyHz);
}

/** Γ at a frequency; null for a scalar sweep, in a gap and beyond the ends. */
export function reflectionAt(curve: Curve, frequencyHz: number): Complex | null {
  if (!isVectorCurve(curve)) return null;
  const stretch = stretchAt(curve, frequencyHz);
  if (stretch === null) return null;
  const axis = curve.sweep.frequencyHz;
  if (stretch.first === stretch.last) {
    scratch.real = at(curve.interpolation.real, stretch.first);
    scratch.imaginary = at(curve.interpolation.imaginary, stretch.first);
  } else {
    const index = Math.min(firstIndexAbove(axis, frequencyHz) - 1, stretch.last - 1);
    interpolateBetween(curve.interpolation, stretch, index, frequencyHz, scratch);
  }
  return delayed(scratch, frequencyHz, curve.delayS);
}

/** Γ behind a round-trip delay. */
function delayed({ real, imaginary }: ComplexResult, frequencyHz: number, delayS: number): Complex {
  const angle = -2 * Math.PI * frequencyHz * delayS;
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  return complex(real * cosine - imaginary * sine, real * sine + imaginary * cosine);
}

/**
 * Γ beyond the ends of a stretch, as the function that explains all of it goes on: a guess to test others by, never an answer.
 *
 * @param reach how far, in halves of the stretch
 * @returns null where no one function explains the stretch, and further out
 */
export function continuedAt(curve: VectorCurve, frequencyHz: number, reach: number): Complex | null {
  for (const fit of curve.fits) {
    if (fit === "none") continue;
    const place = (frequencyHz - fit.middle) / fit.half;
    if (Math.abs(place) > 1 + reach) continue;
    const { real, imaginary } = valuesOf(fit.rational, Float64Array.of(place));
    return delayed({ real: at(real, 0), imaginary: at(imaginary, 0) }, frequencyHz, curve.delayS);
  }
  return null;
}
