import { at, type Column } from "../../numbers/column.js";
import { copyOf, type LinearSystem } from "../../numbers/positive-system.js";
import { isEven, type Stretch } from "../samples/stretches.js";
import { condensedSamples } from "./condensed-samples.js";
import type { FitSamples } from "./fit-moments.js";
import { newFitRoom } from "./fit-room.js";
import { NOTHING, type Rational, unknownsOf, type Values, valuesOf } from "./rational.js";
import { approachFit, improveFit } from "./rational-fit.js";
import { areNoise, informationCriterion, sumOfSquares } from "./residuals.js";
import { type FitColumns, partsOf, residualsOf, samplesOf, scaleOf, squaresLeft, valuesIn } from "./samples-to-fit.js";

/** An antenna of a few resonances with its feedline needs no more. */
const HIGHEST_ORDER = 7;
/** Fewer samples than this for each unknown are too few. */
const SAMPLES_PER_UNKNOWN = 3;
/** An order that is too low shows on about this many samples, spread over the stretch, as it does on all. */
const SAMPLES_TO_REJECT = 48;
const STEPS_TO_APPROACH = 2;
const MOST_STEPS_TO_IMPROVE = 5;
/** Steps that differ by less than this share count as equal where samples are condensed. */
const EVEN_STEPS = 1e-3;
/** Steps end where the squares that are left, in units of the noise, are within this of what the step foretold. */
const SETTLED = 0.1;

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

/** Which function explains a stretch, or that none of low order does. */
export type Explanation = WholeFit | "none";

/** Where all fits of a thread work, one after the other. */
const room = newFitRoom();

/** A fit and its values at the samples, in columns that the next fit writes over. */
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
 * @returns null where no such function explains the samples
 */
export function fitWhole(columns: FitColumns, stretch: Stretch, noise: number): FittedStretch | null {
  const all = samplesOf(columns, stretch, noise, 1, room.all);
  const canCondense = columns.weights === null && isEven(columns.position, stretch, EVEN_STEPS);
  const samples = { all, condensed: canCondense ? condensedSamples(all, room) : all };
  const found = findFit(samples, columns, stretch, noise);
  if (found === null) return null;
  const { fit: rational, values, system } = found;
  const fit = { rational, system, ...scaleOf(columns.position, stretch), isReal: columns.imaginary === null };
  return { fit, values };
}

/** All samples of a stretch, and fewer that stand for them while a fit is looked for. */
interface Samples {
  readonly all: FitSamples;
  readonly condensed: FitSamples;
}

/** A fit with its values at all samples. */
interface Fitted {
  readonly fit: Rational;
  readonly values: Values;
  readonly isInFirstRoom: boolean;
  /** What tells it from fits of another order: the less, the better */
  readonly criterion: number;
  /** Of the squares that it leaves, those that condensed samples do not show: the same for every fit */
  readonly unseen: number;
  readonly system: LinearSystem;
}

function findFit(samples: Samples, columns: FitColumns, stretch: Stretch, noise: number): Fitted | null {
  const every = Math.ceil((stretch.last - stretch.first + 1) / SAMPLES_TO_REJECT);
  const some = every === 1 ? samples.all : samplesOf(columns, stretch, noise, every, room.some);
  const values = valuesIn(room.workingValues, some.place.length);
  let rough: Rational | null = NOTHING;
  let best: Fitted | null = null;
  for (let order = 1; order <= HIGHEST_ORDER; order++) {
    if (SAMPLES_PER_UNKNOWN * unknownsOf(order) > some.place.length) break;
    for (let step = 0; step < STEPS_TO_APPROACH && rough !== null; step++) {
      rough = approachFit(some, order, valuesOf(rough, some.place, values), room);
    }
    if (rough === null) break;
    if (best === null && !areNoise(residualsOf(valuesOf(rough, some.place, values), some, order, room), room)) continue;
    const next = improve(rough, samples, best);
    if (next !== null) best = next;
    else if (best !== null) break;
  }
  return best === null ? null : richer(best, samples);
}

/**
 * The fit of one order more. The order that explains a sweep best is the least that noise lets it tell; the antenna has more, and what
 * that order leaves out would be in no interval. One more lets the samples say it.
 */
function richer(best: Fitted, samples: Samples): Fitted {
  const order = best.fit.topReal.length;
  const { condensed } = samples;
  if (order > HIGHEST_ORDER || SAMPLES_PER_UNKNOWN * unknownsOf(order) > condensed.place.length) return best;
  const values = valuesIn(room.workingValues, condensed.place.length);
  const rough = approachFit(condensed, order, valuesOf(best.fit, condensed.place, values), room);
  const found = rough === null ? null : improve(rough, samples, best, "whatever it leaves");
  return found === null || isApart(found, best, samples.all) ? best : found;
}

/** Two fits that both leave noise alone are nowhere further apart than this, in units of the noise (our own choice). */
const GREATEST_APART = 1;

/** Whether two fits part somewhere, at the samples or between them: a pole and a zero side by side, which noise alone has made. */
function isApart(one: Fitted, other: Fitted, { place, precision }: FitSamples): boolean {
  if (partAt(one.values, other.values, precision)) return true;
  const [between] = room.between(place.length);
  between[0] = at(place, 0);
  for (let i = 1; i < place.length; i++) between[i] = (at(place, i) + at(place, i - 1)) / 2;
  const ofOne = valuesOf(one.fit, between, valuesIn(room.workingValues, between.length));
  return partAt(ofOne, valuesOf(other.fit, between, valuesIn(room.otherValues, between.length)), precision);
}

function partAt(one: Values, other: Values, precision: Column): boolean {
  for (let i = 0; i < precision.length; i++) {
    const real = at(one.real, i) - at(other.real, i);
    const imaginary = at(one.imaginary, i) - at(other.imaginary, i);
    const square = (real * real + imaginary * imaginary) * at(precision, i) ** 2;
    // Not what is apart, but what is not together: a pole on a sample is nowhere.
    if (!(square <= GREATEST_APART * GREATEST_APART)) return true;
  }
  return false;
}

/**
 * Steps of Gauss and Newton until they foretell what they leave, which is where the least has been reached.
 *
 * @param toBeat the fit that it has to be better than, if that is wanted
 * @returns null where it is not, or leaves more than noise
 */
function improve(
  from: Rational,
  { all, condensed }: Samples,
  toBeat: Fitted | null,
  wanted: "better" | "whatever it leaves" = "better",
): Fitted | null {
  const order = from.topReal.length - 1;
  const criterionOf = (squares: number) =>
    informationCriterion(squares, all.place.length, unknownsOf(order), partsOf(all));
  const isBetter = (squares: number) =>
    toBeat === null || wanted === "whatever it leaves" || criterionOf(squares) < toBeat.criterion;
  const unseen = toBeat?.unseen ?? 0;
  let fit = from;
  const values = valuesOf(from, condensed.place, valuesIn(room.workingValues, condensed.place.length));
  for (let step = 1; step <= MOST_STEPS_TO_IMPROVE; step++) {
    const next = improveFit(condensed, fit, values, room);
    if (next === null) return null;
    fit = next.fit;
    valuesOf(fit, condensed.place, values);
    const squares = squaresLeft(values, condensed);
    const isSettled = Math.abs(squares - next.foretold) < SETTLED;
    // Where it is not settled: not even what the step promised would do.
    if (!isBetter(unseen + (isSettled ? squares : next.foretold))) return null;
    if (isSettled || step === MOST_STEPS_TO_IMPROVE) {
      // Not where those of the fit to beat are, which may stay the best.
      const place = toBeat?.isInFirstRoom ? room.secondValues : room.firstValues;
      const valuesAtAll = valuesOf(fit, all.place, valuesIn(place, all.place.length));
      const residuals = residualsOf(valuesAtAll, all, order, room);
      const squaresOfAll = sumOfSquares(residuals);
      if (!isBetter(squaresOfAll) || !areNoise(residuals, room, squaresOfAll)) return null;
      return {
        fit,
        values: valuesAtAll,
        isInFirstRoom: place === room.firstValues,
        criterion: criterionOf(squaresOfAll),
        unseen: squaresOfAll - squares,
        system: copyOf(next.system),
      };
    }
  }
  return null;
}
