import { at } from "../../numbers/column.js";
import { once } from "../../numbers/once.js";
import { normalNumbers } from "../../numbers/random.js";
import { type SweepDetails, scalarSweep, soundVectorSweep } from "../../sweep/sweep.js";
import { magnitudeOf } from "../between/scalar-interpolation.js";
import { type Curve, curveOf, isVectorCurve } from "../curve.js";
import { noisyValues, placesIn, type WholeFit } from "../fit/whole-fit.js";
import { inverseOf } from "../noise/scalar-noise.js";
import { smooth, smoothBy } from "../noise/smoothing.js";
import { findStretches } from "../samples/stretches.js";

/** A part of a curve, and what other noise would have made of it. */
export interface Replicates {
  readonly base: Curve;
  readonly copies: readonly Curve[];
  /** The base seen through every other sample: how much hangs on the step */
  readonly thinned: readonly Curve[];
  /** Whether the copies are of the functions that explain the curve, and not of its samples */
  readonly areOfFits: boolean;
}

/** Noisy copies that are made; they come in pairs of opposite noise. */
const PAIRS = 20;
const SEED = 20260501;
/** Samples beyond the frequencies of interest that are kept, so that smoothing windows reach as far as before. */
const MARGIN_SAMPLES = 40;
/** The same where nothing is smoothed: what the interpolation needs. */
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
      base: noiselessCurve(base, base),
      copies: fits === null ? copiesOfSamples(base, noise, numbers) : copiesOfFits(base, fits),
      thinned: base.frequencyHz.length < FEWEST_TO_THIN ? [] : [0, 1].map((offset) => thinnedCurve(base, offset)),
      areOfFits: fits !== null,
    };
  };
}

interface Columns {
  readonly frequencyHz: Float64Array;
  /** Γ without its bulk delay; ρ and nothing for a scalar sweep */
  readonly real: Float64Array;
  readonly imaginary: Float64Array | null;
}

/** Samples of a part of a curve, with their noise taken off as well as can be. */
interface Part extends Columns {
  readonly details: SweepDetails;
  /** Index of the first of them in the sweep */
  readonly start: number;
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
  const cut = (column: Readonly<Float64Array>) => Float64Array.from(column.subarray(start, end));
  const isVector = isVectorCurve(curve);
  return {
    details: curve.sweep,
    start,
    frequencyHz: cut(frequencyHz),
    real: isVector ? cut(curve.interpolation.real) : cut(curve.interpolation.inverse).map(magnitudeOf),
    imaginary: isVector ? cut(curve.interpolation.imaginary) : null,
  };
}

/** Wiggles that noise left in the curve would be copied as if they were the antenna's; the base is smoothed further. */
const BASE_AGREEMENT = 4;

function smootherCurve(curve: Curve): Curve {
  if (curve.noise === null) return curve;
  const known = isVectorCurve(curve) ? { noise: curve.noise, delayS: curve.delayS } : { noise: curve.noise };
  return curveOf(curve.sweep, { ...known, fits: curve.fits, agreement: BASE_AGREEMENT });
}

/** A curve through samples that are known to hold no noise. */
function noiselessCurve({ details }: Part, { frequencyHz, real, imaginary }: Columns): Curve {
  const sweep =
    imaginary === null
      ? scalarSweep(details, { frequencyHz, reflectionMagnitude: real })
      : soundVectorSweep(details, { frequencyHz, reflectionReal: real, reflectionImaginary: imaginary });
  return curveOf(sweep, { noise: null, delayS: 0, hasNoSpikes: true });
}

function thinnedCurve(base: Part, offset: number): Curve {
  const thin = (column: Float64Array) => column.filter((_, i) => i % 2 === offset);
  return noiselessCurve(base, {
    frequencyHz: thin(base.frequencyHz),
    real: thin(base.real),
    imaginary: base.imaginary && thin(base.imaginary),
  });
}

/** The function that explains a stretch, and the indices of its first and last sample. */
interface FitOfStretch {
  readonly fit: WholeFit;
  readonly first: number;
  readonly last: number;
}

/** What explains the stretches between two frequencies; null where there is one that nothing explains, or none. */
function fitsBetween({ sweep, stretches, fits }: Curve, lowHz: number, highHz: number): readonly FitOfStretch[] | null {
  const found: FitOfStretch[] = [];
  for (const [s, { first, last }] of stretches.entries()) {
    if (at(sweep.frequencyHz, first) > highHz || at(sweep.frequencyHz, last) < lowHz) continue;
    const fit = fits[s] ?? "none";
    if (fit === "none") return null;
    found.push({ fit, first, last });
  }
  return found.length === 0 ? null : found;
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

/** Copies smoothed by the windows that one of them calls for: all are of one curve, and differ by their noise alone. */
function copiesOfSamples(base: Part, noise: number, numbers: (count: number) => Float64Array): Curve[] {
  const { length } = base.real;
  const all = numbers(2 * (PAIRS + 1) * length);
  const noiseOfPair = (pair: number): Noise => {
    const start = 2 * pair * length;
    return { across: all.subarray(start, start + length), along: all.subarray(start + length, start + 2 * length) };
  };
  const smoothed = smootherOf(withNoise(base, noiseOfPair(0), 1), noise);
  const copies: Curve[] = [];
  for (let pair = 1; pair <= PAIRS; pair++) {
    for (const sign of [1, -1]) copies.push(noiselessCurve(base, smoothed(withNoise(base, noiseOfPair(pair), sign))));
  }
  return copies;
}

interface Noise {
  readonly along: Float64Array;
  readonly across: Float64Array;
}

/** Gives at least so many numbers of that noise: the same ones, from the first on, for every band. */
function noiseNumbers(noise: number): (count: number) => Float64Array {
  let made = new Float64Array(0);
  return (count) => {
    if (made.length >= count) return made;
    const normal = normalNumbers(SEED);
    made = new Float64Array(count);
    for (let i = 0; i < count; i++) made[i] = noise * normal();
    return made;
  };
}

function withNoise({ frequencyHz, real, imaginary }: Part, { along, across }: Noise, sign: number): Columns {
  const first = sumOf(real, along, sign);
  if (imaginary !== null) return { frequencyHz, real: first, imaginary: sumOf(imaginary, across, sign) };
  // What a scalar instrument shows is the size of Γ with both parts of its noise.
  return { frequencyHz, real: first.map((value, i) => Math.hypot(value, at(across, i))), imaginary: null };
}

function sumOf(values: Float64Array, noise: Float64Array, sign: number): Float64Array {
  const sum = new Float64Array(values.length);
  for (let i = 0; i < sum.length; i++) sum[i] = at(values, i) + sign * at(noise, i);
  return sum;
}

/** How columns of an example's shape are smoothed: by the windows that the example calls for. */
function smootherOf({ frequencyHz, real, imaginary }: Columns, noise: number): (columns: Columns) => Columns {
  const stretches = findStretches(frequencyHz);
  const options = { fits: stretches.map(() => "none" as const) };
  if (imaginary !== null) {
    const { halfWidths } = smooth(frequencyHz, real, imaginary, stretches, noise, null, options);
    return (copy) => ({ frequencyHz, ...smoothBy(halfWidths, frequencyHz, copy.real, copy.imaginary, stretches) });
  }
  const { inverse, weights } = inverseOf(real);
  const { halfWidths } = smooth(frequencyHz, inverse, null, stretches, noise, weights, options);
  return (copy) => {
    const smoothed = smoothBy(halfWidths, frequencyHz, inverseOf(copy.real).inverse, null, stretches);
    return { frequencyHz, real: smoothed.real.map(magnitudeOf), imaginary: null };
  };
}
