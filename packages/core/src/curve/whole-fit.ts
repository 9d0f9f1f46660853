import { at, type Column } from "../column.js";
import type { FitSamples } from "./fit-moments.js";
import type { LinearSystem } from "./positive-system.js";
import { NOTHING, type Rational, unknownsOf, type Values, valuesOf } from "./rational.js";
import { approachFit, improveFit, noisyFits } from "./rational-fit.js";
import { areNoise, informationCriterion, type Residuals, sumOfSquares } from "./residuals.js";
import type { Stretch } from "./stretches.js";

/** An antenna of a few resonances with its feedline needs no more. */
const HIGHEST_ORDER = 5;
/** Fewer samples than this for each unknown are too few. */
const SAMPLES_PER_UNKNOWN = 3;
/** An order that is too low shows on about this many samples, spread over the stretch, as it does on all. */
const SAMPLES_TO_REJECT = 48;
const STEPS_TO_APPROACH = 2;
const MOST_STEPS_TO_IMPROVE = 3;
/** Steps end where the squares that are left, in units of the noise, are within this of what the step foretold. */
const SETTLED = 0.1;

/** Columns to be fitted, of which a stretch is a part. */
export interface FitColumns {
  readonly position: Column;
  readonly real: Column;
  /** null for a quantity that is real */
  readonly imaginary: Column | null;
  /** Noise of each sample over the noise of one of weight 1; null where all are alike */
  readonly weights: Column | null;
}

/** The function that explains a stretch, and what it takes to say how noise moves it. */
export interface WholeFit {
  readonly rational: Rational;
  /** Positions are fitted as (position - middle) / half */
  readonly middle: number;
  readonly half: number;
  readonly isReal: boolean;
  /** The normal equations of the last step towards the fit, solved */
  readonly system: LinearSystem;
}

/** A fit and its values at the samples. */
export interface FittedStretch {
  readonly fit: WholeFit;
  readonly values: Values;
}

/**
 * A whole stretch as one rational function of low order: the impedance of a lumped circuit has that form, and that of an
 * antenna comes close to it. Every sample then helps to tell the curve everywhere.
 *
 * The order is the first that leaves nothing but noise and that the next one does not improve on by more than it costs.
 *
 * @param noise standard deviation of a sample of weight 1 in each column
 * @param known the fit to a sweep that differs from this one by its noise alone; null: none explains the samples
 * @returns null where no such function explains the samples
 */
export function fitWhole(
  columns: FitColumns,
  stretch: Stretch,
  noise: number,
  known?: WholeFit | null,
): FittedStretch | null {
  if (known === null) return null;
  const all = samplesOf(columns, stretch, noise, 1);
  const found =
    known === undefined
      ? findFit(all, columns, stretch, noise)
      : improve(known.rational, all, Number.POSITIVE_INFINITY);
  if (found === null) return null;
  const { fit: rational, values, system } = found;
  const fit = { rational, system, ...scaleOf(columns.position, stretch), isReal: columns.imaginary === null };
  return { fit, values };
}

/**
 * Values of a fit as other noise would have left it, and as the opposite noise would.
 *
 * @param position where to tell them
 * @param normal independent numbers of variance 1
 */
export function noisyValues(
  { rational, system, isReal, middle, half }: WholeFit,
  position: Column,
  normal: () => number,
): readonly Values[] {
  const place = position.map((x) => (x - middle) / half);
  return noisyFits(rational, system, normal, isReal).map((noisy) => valuesOf(noisy, place));
}

/** A fit with its values at the samples. */
interface Fitted {
  readonly fit: Rational;
  readonly values: Values;
  /** What tells it from fits of another order: the less, the better */
  readonly criterion: number;
  readonly system: LinearSystem;
}

function findFit(all: FitSamples, columns: FitColumns, stretch: Stretch, noise: number): Fitted | null {
  const every = Math.ceil((stretch.last - stretch.first + 1) / SAMPLES_TO_REJECT);
  const some = every === 1 ? all : samplesOf(columns, stretch, noise, every);
  let rough: Rational | null = NOTHING;
  let best: Fitted | null = null;
  for (let order = 1; order <= HIGHEST_ORDER; order++) {
    if (SAMPLES_PER_UNKNOWN * unknownsOf(order) > some.place.length) break;
    for (let step = 0; step < STEPS_TO_APPROACH && rough !== null; step++) rough = approachFit(some, order, rough);
    if (rough === null) break;
    if (best === null && !areNoise(residualsOf(valuesOf(rough, some.place), some, order))) continue;
    const next = improve(rough, all, best?.criterion ?? Number.POSITIVE_INFINITY);
    if (next !== null) best = next;
    else if (best !== null) break;
  }
  return best;
}

/**
 * Steps of Gauss and Newton until they foretell what they leave, which is where the least has been reached.
 *
 * @param toBeat criterion that the fit has to better
 * @returns null where it does not, or leaves more than noise
 */
function improve(from: Rational, samples: FitSamples, toBeat: number): Fitted | null {
  let fit = from;
  const values = valuesOf(from, samples.place);
  const order = from.topReal.length - 1;
  for (let step = 1; step <= MOST_STEPS_TO_IMPROVE; step++) {
    const next = improveFit(samples, fit, values);
    if (next === null) return null;
    fit = next.fit;
    valuesOf(fit, samples.place, values);
    const residuals = residualsOf(values, samples, order);
    const isSettled = Math.abs(sumOfSquares(residuals) - next.foretold) < SETTLED;
    if (isSettled || step === MOST_STEPS_TO_IMPROVE) {
      const criterion = informationCriterion(residuals);
      return criterion < toBeat && areNoise(residuals) ? { fit, values, criterion, system: next.system } : null;
    }
    // Not even what the step promised would do.
    if (informationCriterion(residuals, next.foretold) >= toBeat) return null;
  }
  return null;
}

function scaleOf(position: Column, { first, last }: Stretch): { middle: number; half: number } {
  const [low, high] = [at(position, first), at(position, last)];
  return { middle: (low + high) / 2, half: (high - low) / 2 };
}

/** Every so many samples of a stretch. */
function samplesOf(columns: FitColumns, stretch: Stretch, noise: number, every: number): FitSamples {
  const { position, real, imaginary, weights } = columns;
  const { first, last } = stretch;
  const { middle, half } = scaleOf(position, stretch);
  const column = () => new Float64Array(Math.floor((last - first) / every) + 1);
  const samples = {
    place: column(),
    real: column(),
    imaginary: column(),
    precision: column(),
    isReal: imaginary === null,
  };
  for (let k = 0; k < samples.place.length; k++) {
    const i = first + k * every;
    samples.place[k] = (at(position, i) - middle) / half;
    samples.real[k] = at(real, i);
    samples.imaginary[k] = imaginary === null ? 0 : at(imaginary, i);
    samples.precision[k] = 1 / (noise * (weights === null ? 1 : at(weights, i)));
  }
  return samples;
}

function residualsOf(values: Values, samples: FitSamples, order: number): Residuals {
  const real = new Float64Array(samples.place.length);
  const imaginary = new Float64Array(samples.place.length);
  for (let i = 0; i < real.length; i++) {
    const precision = at(samples.precision, i);
    real[i] = (at(samples.real, i) - at(values.real, i)) * precision;
    imaginary[i] = (at(samples.imaginary, i) - at(values.imaginary, i)) * precision;
  }
  return { real, imaginary, parts: samples.isReal ? 1 : 2, unknowns: unknownsOf(order) };
}
