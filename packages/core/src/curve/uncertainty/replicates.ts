import { at } from "../../numbers/column.js";
import { once } from "../../numbers/once.js";
import { normalNumbers } from "../../numbers/random.js";
import { magnitudeOf } from "../between/scalar-interpolation.js";
import { type Curve, curveOf, isVectorCurve } from "../curve.js";
import { noisyValues, placesIn } from "../fit/whole-fit.js";
import { copiesOfSamples, noiseNumbers } from "./copies-of-samples.js";
import { type FitOfStretch, fitsBetween } from "./fits-of-stretches.js";
import { type Columns, cut, noiselessCurve, PAIRS, type Part, SEED } from "./part.js";

/** A part of a curve, and what other noise would have made of it. */
export interface Replicates {
  /** The functions that explain the curve there; null where none do */
  readonly fits: readonly FitOfStretch[] | null;
  /** The base seen through every other sample: how much hangs on the step */
  readonly thinned: readonly Curve[];
  /** The part by itself, and copies of it; made when they are asked for */
  readonly base: () => Curve;
  readonly copies: () => readonly Curve[];
}

/** Samples beyond the frequencies of interest that are kept, so that smoothing windows reach as far as before. */
const MARGIN_SAMPLES = 40;
/** Of these the nearest are copied: what the interpolation needs, and an edge that noise moves. */
const COPIED_MARGIN_SAMPLES = 4;
/** The same where nothing is smoothed. */
const FIT_MARGIN_SAMPLES = 2;
/** Every other one of fewer samples than this says nothing. */
const FEWEST_TO_THIN = 10;

/**
 * Copies of a curve around two frequencies with fresh noise, always the same for the same curve: where one function explains
 * each stretch there, by moving its coefficients as noise does; elsewhere by adding noise to the samples and smoothing them.
 *
 * @param noise standard deviation of ρ that the copies have
 * @returns makes them for two frequencies
 */
export function replicatesOf(curve: Curve, noise: number): (lowHz: number, highHz: number) => Replicates {
  const smoother = once(() => smootherCurve(curve));
  const numbers = noiseNumbers(noise);
  return (lowHz, highHz) => {
    const fits = fitsBetween(curve, lowHz, highHz);
    const base = partOf(fits === null ? smoother() : curve, lowHz, highHz, fits === null);
    return {
      fits,
      base: () => noiselessCurve(base, cut(base, base.copied)),
      copies: () => (fits === null ? copiesOfSamples(base, noise, numbers) : copiesOfFits(base, fits)),
      thinned: base.frequencyHz.length < FEWEST_TO_THIN ? [] : [0, 1].map((offset) => thinnedCurve(base, offset)),
    };
  };
}

function partOf(curve: Curve, lowHz: number, highHz: number, isSmoothed: boolean): Part {
  const { frequencyHz } = curve.sweep;
  const margin = isSmoothed ? MARGIN_SAMPLES : FIT_MARGIN_SAMPLES;
  let first = 0;
  while (first < frequencyHz.length && at(frequencyHz, first) < lowHz) first++;
  let last = frequencyHz.length - 1;
  while (last > 0 && at(frequencyHz, last) > highHz) last--;
  const start = Math.max(0, first - margin);
  const end = Math.min(frequencyHz.length, last + 1 + margin);
  const some = (column: Readonly<Float64Array>) => Float64Array.from(column.subarray(start, end));
  const isVector = isVectorCurve(curve);
  return {
    details: curve.sweep,
    start,
    copied: {
      first: Math.max(0, first - COPIED_MARGIN_SAMPLES - start),
      last: Math.min(end - 1, last + COPIED_MARGIN_SAMPLES) - start,
    },
    frequencyHz: some(frequencyHz),
    real: isVector ? some(curve.interpolation.real) : some(curve.interpolation.inverse).map(magnitudeOf),
    imaginary: isVector ? some(curve.interpolation.imaginary) : null,
  };
}

/** Wiggles that noise left in the curve would be copied as if they were the antenna's; the base is smoothed further. */
const BASE_AGREEMENT = 4;

function smootherCurve(curve: Curve): Curve {
  if (curve.noise === null) return curve;
  const known = isVectorCurve(curve) ? { noise: curve.noise, delayS: curve.delayS } : { noise: curve.noise };
  return curveOf(curve.sweep, { ...known, fits: curve.fits, agreement: BASE_AGREEMENT });
}

function thinnedCurve(base: Part, offset: number): Curve {
  const thin = (column: Float64Array) => column.filter((_, i) => i % 2 === offset);
  return noiselessCurve(base, {
    frequencyHz: thin(base.frequencyHz),
    real: thin(base.real),
    imaginary: base.imaginary && thin(base.imaginary),
  });
}

function copiesOfFits(base: Part, fits: readonly FitOfStretch[]): Curve[] {
  const { frequencyHz, start } = base;
  const normal = normalNumbers(SEED);
  const copies: Curve[] = [];
  const placed = fits.map(({ fit, first, last }) => {
    const from = Math.max(0, first - start);
    return { fit, from, places: placesIn(fit, frequencyHz.subarray(from, Math.max(from, last + 1 - start))) };
  });
  for (let pair = 0; pair < PAIRS; pair++) {
    const moved = [0, 1].map(() => ({ ...base, real: base.real.slice(), imaginary: base.imaginary?.slice() ?? null }));
    for (const { fit, from, places } of placed) {
      for (const [k, values] of noisyValues(fit, places, normal).entries()) {
        // A pole that noise has moved onto a sample tells nothing.
        if (!values.real.every(Number.isFinite) || !values.imaginary.every(Number.isFinite)) continue;
        const copy = moved[k] as Columns;
        copy.real.set(copy.imaginary === null ? values.real.map(magnitudeOf) : values.real, from);
        copy.imaginary?.set(values.imaginary, from);
      }
    }
    copies.push(...moved.map((copy) => noiselessCurve(base, copy)));
  }
  return copies;
}
