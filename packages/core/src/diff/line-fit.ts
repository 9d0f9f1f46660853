import { at } from "../column.js";
import { type Complex, complex, multiply } from "../complex.js";
import { DECIBELS_PER_NEPER, SPEED_OF_LIGHT } from "../constants.js";
import type { CommonSamples } from "./common-samples.js";

/** How a loss grows with frequency: with its root (conductors), not at all (a pad), in proportion (a wet dielectric). */
export type LossLaw = "root" | "even" | "proportional";

/** A change of the line alone, by which the second sweep would follow from the first. */
export interface LineChange {
  /** Added round-trip delay, s; negative for a shorter line */
  readonly delayS: number;
  /** Added one-way loss at 10 MHz, dB */
  readonly lossAt10MHzDb: number;
  readonly law: LossLaw;
}

export interface LineFit extends LineChange {
  /** Root mean square of what is left of |Γ after - Γ model| */
  readonly residual: number;
}

/** Longest change of delay looked for, s: about 60 m of coax, there and back. */
const GREATEST_DELAY_S = 600e-9;
const REFINEMENTS = 12;
/** A delay is looked for in about this many samples, and refined on all. */
const SEARCHED_SAMPLES = 60;

/** Loss over that at 10 MHz. */
export const LOSS_LAWS: Readonly<Record<LossLaw, (frequencyHz: number) => number>> = {
  root: (frequencyHz) => Math.sqrt(frequencyHz / 10e6),
  even: () => 1,
  proportional: (frequencyHz) => frequencyHz / 10e6,
};

/** One-way electrical length of a round-trip delay, with its sign, m. */
export const electricalLengthM = (delayS: number): number => (delayS * SPEED_OF_LIGHT) / 2;

/** What a change of the line makes of Γ at a frequency; with sign -1, what it was made of. */
export function throughChange(
  reflection: Complex,
  frequencyHz: number,
  { delayS, lossAt10MHzDb, law }: LineChange,
  sign: 1 | -1 = 1,
): Complex {
  const size = 10 ** ((-sign * lossAt10MHzDb * LOSS_LAWS[law](frequencyHz)) / 10);
  const angle = -sign * 2 * Math.PI * frequencyHz * delayS;
  return multiply(reflection, complex(size * Math.cos(angle), size * Math.sin(angle)));
}

/**
 * Fits after ≈ before · 10^(-2 loss(f) / 20) · exp(-j2πf delay): a coherent search over the delay, then least squares in delay
 * and loss together (Gauss and Newton).
 */
export function fitLine(samples: CommonSamples, law: LossLaw = "root"): LineFit {
  const unmoved = refine(samples, law, 0);
  const moved = refine(samples, law, coarseDelay(samples));
  return moved.residual < unmoved.residual ? moved : unmoved;
}

/** The delay at which before and after add up best; 0 where none stands out. */
function coarseDelay(samples: CommonSamples): number {
  const { frequencyHz } = samples;
  const last = at(frequencyHz, frequencyHz.length - 1);
  const span = last - at(frequencyHz, 0);
  if (!(span > 0)) return 0;
  // Fine enough that no turn of the fastest phase is stepped over.
  const step = Math.min(GREATEST_DELAY_S / 4, 1 / (6 * span), 1 / (6 * last));
  let best = 0;
  let bestSum = -1;
  for (let delay = -GREATEST_DELAY_S; delay <= GREATEST_DELAY_S; delay += step) {
    const sum = coherentSum(samples, delay);
    if (sum > bestSum) {
      bestSum = sum;
      best = delay;
    }
  }
  return best;
}

/** Real part of the sum of after · conj(before · exp(-j2πf delay)): greatest where the delay is right. */
function coherentSum(samples: CommonSamples, delay: number): number {
  const { frequencyHz, beforeReal, beforeImaginary, afterReal, afterImaginary } = samples;
  const every = Math.max(1, Math.floor(frequencyHz.length / SEARCHED_SAMPLES));
  let sum = 0;
  for (let i = 0; i < frequencyHz.length; i += every) {
    const angle = -2 * Math.PI * at(frequencyHz, i) * delay;
    const cosine = Math.cos(angle);
    const sine = Math.sin(angle);
    const real = at(beforeReal, i) * cosine - at(beforeImaginary, i) * sine;
    const imaginary = at(beforeReal, i) * sine + at(beforeImaginary, i) * cosine;
    sum += at(afterReal, i) * real + at(afterImaginary, i) * imaginary;
  }
  return sum;
}

/** Least squares from a first guess of the delay; the best of all rounds, since a bad guess may lead astray. */
function refine(samples: CommonSamples, law: LossLaw, startDelay: number): LineFit {
  const { frequencyHz, beforeReal, beforeImaginary, afterReal, afterImaginary } = samples;
  let delay = startDelay;
  const lossOver10MHz = LOSS_LAWS[law];
  // Attenuation of Γ at 10 MHz in neper, there and back.
  let attenuation = 0;
  let best: LineFit = { delayS: startDelay, lossAt10MHzDb: 0, law, residual: Number.POSITIVE_INFINITY };
  for (let round = 0; round < REFINEMENTS; round++) {
    let aa = 0;
    let dd = 0;
    let ra = 0;
    let rd = 0;
    let square = 0;
    for (let i = 0; i < frequencyHz.length; i++) {
      const frequency = at(frequencyHz, i);
      const growth = lossOver10MHz(frequency);
      const size = Math.exp(-attenuation * growth);
      const angle = -2 * Math.PI * frequency * delay;
      const cosine = Math.cos(angle) * size;
      const sine = Math.sin(angle) * size;
      const real = at(beforeReal, i) * cosine - at(beforeImaginary, i) * sine;
      const imaginary = at(beforeReal, i) * sine + at(beforeImaginary, i) * cosine;
      const leftReal = at(afterReal, i) - real;
      const leftImaginary = at(afterImaginary, i) - imaginary;
      square += leftReal * leftReal + leftImaginary * leftImaginary;
      // The model moves along itself with the attenuation and across itself with the delay, so the two do not mix.
      const power = real * real + imaginary * imaginary;
      const turn = 2 * Math.PI * frequency;
      aa += growth * growth * power;
      dd += turn * turn * power;
      ra -= growth * (leftReal * real + leftImaginary * imaginary);
      rd += turn * (leftReal * imaginary - leftImaginary * real);
    }
    const residual = Math.sqrt(square / frequencyHz.length);
    if (!(residual < Number.POSITIVE_INFINITY) || aa === 0 || dd === 0) break;
    if (residual < best.residual) {
      best = { delayS: delay, lossAt10MHzDb: (attenuation * DECIBELS_PER_NEPER) / 2, law, residual };
    }
    attenuation += ra / aa;
    delay += rd / dd;
  }
  return best;
}
