import { at } from "../../numbers/column.js";
import {
  add,
  type Complex,
  complex,
  divide,
  exponential,
  multiply,
  scale,
  squareRoot,
  subtract,
} from "../../numbers/complex.js";
import { DECIBELS_PER_NEPER } from "../../numbers/constants.js";
import { leastBetween } from "../../numbers/search.js";
import { afterAt, beforeAt, type CommonSamples, everyFew, residualOf } from "./common-samples.js";
import { LOSS_LAWS, type LossLaw } from "./line-change.js";
import type { LineFit } from "./line-fit.js";

/**
 * Where on the line loss sits: in its conductors, which are resistance (and as much reactance, by the skin effect) in series, or in
 * its dielectric, which is conductance across it. Either also mismatches the line, each in the other sense.
 */
interface Place {
  readonly law: LossLaw;
  readonly reactance: number;
  readonly sense: 1 | -1;
}

const PLACES: readonly Place[] = [
  { law: "root", reactance: 1, sense: 1 },
  { law: "proportional", reactance: 0, sense: -1 },
];

/** A loss along a line: its delay, s one way, and the matched loss at 10 MHz, nepers one way. */
interface AlongLine {
  readonly place: Place;
  readonly delayS: number;
  readonly nepers: number;
}

/** Delays of the lossy line that are tried, s one way; what a longer one mismatches evens out. */
const LEAST_DELAY_S = 2e-9;
const GREATEST_DELAY_S = 100e-9;
/** Radians at the highest frequency from one to the next. */
const STEP_RADIANS = 0.4;
/** It is looked for in about this many samples. */
const SEARCHED_SAMPLES = 100;
/** The loss is looked for between these shares of what its first order is. */
const LOSS_SHARES = [0.4, 2.5] as const;
/** Loss is told to this share of itself, delay to this share of a step. */
const PRECISION = 0.01;

/**
 * Loss that is spread along a line as one law has it, with what that makes of the line's impedance. On a short line, and where the
 * antenna is matched, that is as much as the loss itself.
 */
export function fitLossAlongLine(samples: CommonSamples): LineFit {
  const few = everyFew(samples, SEARCHED_SAMPLES);
  const left = (of: CommonSamples, { place, delayS, nepers }: AlongLine) =>
    residualOf(of, (i) => withLossAlong(beforeAt(of, i), at(of.frequencyHz, i), delayS, nepers, place));
  const step = STEP_RADIANS / (2 * Math.PI * at(samples.frequencyHz, samples.frequencyHz.length - 1));
  const delays = Array.from({ length: Math.ceil(GREATEST_DELAY_S / step) }, (_, i) => LEAST_DELAY_S + i * step);
  const { roughly } = PLACES.flatMap((place) =>
    delays.map((delayS) => ({ place, delayS, nepers: firstOrder(few, delayS, place) })),
  )
    .map((tried) => ({ roughly: tried, residual: left(few, tried) }))
    .reduce((best, next) => (next.residual < best.residual ? next : best));
  const ends = LOSS_SHARES.map((share) => share * roughly.nepers).sort((a, b) => a - b) as [number, number];
  // Delay and loss do much the same, so that one is fitted anew for each that is tried of the other.
  const lossFor = (delayS: number) =>
    leastBetween((nepers) => left(few, { ...roughly, delayS, nepers }), ...ends, PRECISION * Math.abs(roughly.nepers));
  const delayS = leastBetween(
    (tried) => left(few, { ...roughly, delayS: tried, nepers: lossFor(tried) }),
    Math.max(LEAST_DELAY_S / 2, roughly.delayS - step),
    roughly.delayS + step,
    PRECISION * step,
  );
  const nepers = lossFor(delayS);
  return {
    delayS: 0,
    loss: [{ law: roughly.place.law, at10MHzDb: nepers * DECIBELS_PER_NEPER }],
    characteristicOhms: null,
    residual: left(samples, { ...roughly, delayS, nepers }),
  };
}

/** A loss that is taken for small. */
const SMALL_NEPERS = 1e-3;

/** The loss that explains most of the difference as if it did twice as much where it is twice as great, nepers at 10 MHz. */
function firstOrder(samples: CommonSamples, delayS: number, place: Place): number {
  let along = 0;
  let square = 0;
  for (let i = 0; i < samples.frequencyHz.length; i++) {
    const before = beforeAt(samples, i);
    const moved = subtract(withLossAlong(before, at(samples.frequencyHz, i), delayS, SMALL_NEPERS, place), before);
    const changed = subtract(afterAt(samples, i), before);
    along += moved.real * changed.real + moved.imaginary * changed.imaginary;
    square += moved.real ** 2 + moved.imaginary ** 2;
  }
  return square > 0 ? (SMALL_NEPERS * along) / square : 0;
}

/**
 * Γ at the near end of a line of the reference impedance, after a loss was spread along it: that of the line's end, through a line
 * whose impedance and constant of propagation are those of so much resistance or conductance. Source: the telegrapher's equations.
 *
 * @param delayS of the line, one way
 * @param nepers loss at 10 MHz, one way
 */
function withLossAlong(
  reflection: Complex,
  frequencyHz: number,
  delayS: number,
  nepers: number,
  { law, reactance, sense }: Place,
): Complex {
  const angle = 2 * Math.PI * frequencyHz * delayS;
  const loss = nepers * LOSS_LAWS[law](frequencyHz);
  // What is in series (or across) over what was: jωL, with the resistance and reactance of the loss.
  const root = squareRoot(complex(1 + (2 * loss * reactance) / angle, (-2 * loss) / angle));
  const step = scale(divide(subtract(root, ONE), add(root, ONE)), sense);
  const atEnd = multiply(reflection, exponential(complex(0, 2 * angle)));
  const onLine = divide(subtract(atEnd, step), subtract(ONE, multiply(step, atEnd)));
  const back = multiply(onLine, exponential(complex(2 * angle * root.imaginary, -2 * angle * root.real)));
  return divide(add(step, back), add(ONE, multiply(step, back)));
}

const ONE = complex(1, 0);
