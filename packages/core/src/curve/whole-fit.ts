import { at, type Column } from "../column.js";
import {
  approachFit,
  type FitSamples,
  improveFit,
  NOTHING,
  type Rational,
  unknownsOf,
  valuesOf,
} from "./rational-fit.js";
import { areNoise, informationCriterion, type Residuals } from "./residuals.js";
import type { Stretch } from "./stretches.js";

/** An antenna of a few resonances with its feedline needs no more. */
const HIGHEST_ORDER = 5;
/** Fewer samples than this for each unknown are too few. */
const SAMPLES_PER_UNKNOWN = 3;
/** An order that is too low shows on about this many samples, spread over the stretch, as it does on all. */
const SAMPLES_TO_REJECT = 48;
const STEPS_TO_APPROACH = 2;
const STEPS_TO_IMPROVE = 2;

/** Columns to be fitted, of which a stretch is a part. */
export interface FitColumns {
  readonly position: Column;
  readonly real: Column;
  /** null for a quantity that is real */
  readonly imaginary: Column | null;
  /** Noise of each sample over the noise of one of weight 1; null where all are alike */
  readonly weights: Column | null;
}

/** Values at the samples of a stretch. */
export interface WholeFit {
  readonly order: number;
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
}

/**
 * A whole stretch as one rational function of low order: the impedance of a lumped circuit has that form, and that of an
 * antenna comes close to it. Every sample then helps to tell the curve everywhere.
 *
 * The order is the first that leaves nothing but noise and that the next one does not improve on by more than it costs.
 *
 * @param noise standard deviation of a sample of weight 1 in each column
 * @param known the order, where it is known beforehand; null: none explains the samples
 * @returns null where no such function explains the samples
 */
export function fitWhole(columns: FitColumns, stretch: Stretch, noise: number, known?: number | null): WholeFit | null {
  if (known === null) return null;
  const every = Math.ceil((stretch.last - stretch.first + 1) / SAMPLES_TO_REJECT);
  const all = samplesOf(columns, stretch, noise, 1);
  const some = every === 1 ? all : samplesOf(columns, stretch, noise, every);
  if (known !== undefined) return fitOfOrder(known, some, all);
  let rough: Rational | null = NOTHING;
  let best: Rational | null = null;
  let leastCriterion = Number.POSITIVE_INFINITY;
  for (let order = 1; order <= HIGHEST_ORDER; order++) {
    if (SAMPLES_PER_UNKNOWN * unknownsOf(order) > some.place.length) break;
    for (let step = 0; step < STEPS_TO_APPROACH && rough !== null; step++) rough = approachFit(some, order, rough);
    if (rough === null) break;
    if (best === null && !areNoise(residualsOf(rough, some))) continue;
    let fit: Rational | null = rough;
    for (let step = 0; step < STEPS_TO_IMPROVE && fit !== null; step++) fit = improveFit(all, fit);
    const residuals = fit && residualsOf(fit, all);
    const criterion = residuals && areNoise(residuals) ? informationCriterion(residuals) : Number.POSITIVE_INFINITY;
    if (criterion < leastCriterion) {
      best = fit;
      leastCriterion = criterion;
    } else if (best !== null) break;
  }
  return best && { order: orderOf(best), ...valuesOf(best, all.place) };
}

/** From nothing it takes this many steps to come close to a fit of an order that is known. */
const STEPS_FROM_NOTHING = 4;

function fitOfOrder(order: number, some: FitSamples, all: FitSamples): WholeFit | null {
  let fit: Rational | null = NOTHING;
  for (let step = 0; step < STEPS_FROM_NOTHING && fit !== null; step++) fit = approachFit(some, order, fit);
  for (let step = 0; step < STEPS_TO_IMPROVE && fit !== null; step++) fit = improveFit(all, fit);
  return fit !== null && areNoise(residualsOf(fit, all)) ? { order, ...valuesOf(fit, all.place) } : null;
}

const orderOf = ({ topReal }: Rational) => topReal.length - 1;

/** Every so many samples of a stretch. */
function samplesOf(columns: FitColumns, { first, last }: Stretch, noise: number, every: number): FitSamples {
  const { position, real, imaginary, weights } = columns;
  const middle = (at(position, first) + at(position, last)) / 2;
  const half = (at(position, last) - at(position, first)) / 2;
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

function residualsOf(fit: Rational, samples: FitSamples): Residuals {
  const { real, imaginary } = valuesOf(fit, samples.place);
  for (let i = 0; i < real.length; i++) {
    real[i] = (at(samples.real, i) - at(real, i)) * at(samples.precision, i);
    imaginary[i] = (at(samples.imaginary, i) - at(imaginary, i)) * at(samples.precision, i);
  }
  return { real, imaginary, parts: samples.isReal ? 1 : 2, unknowns: unknownsOf(orderOf(fit)) };
}
