import { at } from "../column.js";
import { DECIBELS_PER_NEPER } from "../constants.js";
import type { CommonSamples } from "./common-samples.js";

/** How the second sweep follows from the first through a change of the line alone. */
export interface LineFit {
  /** Added round-trip delay, s; negative for a shorter line */
  readonly delayS: number;
  /** Added one-way loss at 10 MHz, dB; it grows with the root of frequency, as skin effect has it */
  readonly lossAt10MHzDb: number;
  /** Root mean square of what is left of |Γ after - Γ model| */
  readonly residual: number;
}

/** Longest change of delay looked for, s: about 60 m of coax, there and back. */
const GREATEST_DELAY_S = 600e-9;
const REFINEMENTS = 12;

/**
 * Fits after ≈ before · 10^(-2 loss(f) / 20) · exp(-j2πf delay) with loss ∝ √f: a coherent search over the delay, then
 * least squares in delay and loss together (Gauss and Newton).
 */
export function fitLine(samples: CommonSamples): LineFit {
  const unmoved = refine(samples, 0);
  const moved = refine(samples, coarseDelay(samples));
  return moved.residual < unmoved.residual ? moved : unmoved;
}

/** The delay at which before and after add up best; 0 where none stands out. */
function coarseDelay(samples: CommonSamples): number {
  const { frequencyHz } = samples;
  const span = at(frequencyHz, frequencyHz.length - 1) - at(frequencyHz, 0);
  if (!(span > 0)) return 0;
  const step = Math.min(GREATEST_DELAY_S / 4, 1 / (6 * span));
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
  let sum = 0;
  for (let i = 0; i < frequencyHz.length; i++) {
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
function refine(samples: CommonSamples, startDelay: number): LineFit {
  const { frequencyHz, beforeReal, beforeImaginary, afterReal, afterImaginary } = samples;
  let delay = startDelay;
  // Attenuation of Γ in neper per √Hz, there and back.
  let attenuation = 0;
  let best: LineFit = { delayS: startDelay, lossAt10MHzDb: 0, residual: Number.POSITIVE_INFINITY };
  for (let round = 0; round < REFINEMENTS; round++) {
    let aa = 0;
    let dd = 0;
    let ra = 0;
    let rd = 0;
    let square = 0;
    for (let i = 0; i < frequencyHz.length; i++) {
      const frequency = at(frequencyHz, i);
      const root = Math.sqrt(frequency);
      const size = Math.exp(-attenuation * root);
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
      aa += root * root * power;
      dd += turn * turn * power;
      ra -= root * (leftReal * real + leftImaginary * imaginary);
      rd += turn * (leftReal * imaginary - leftImaginary * real);
    }
    const residual = Math.sqrt(square / frequencyHz.length);
    if (!(residual < Number.POSITIVE_INFINITY) || aa === 0 || dd === 0) break;
    if (residual < best.residual) best = { delayS: delay, lossAt10MHzDb: lossAt10MHz(attenuation), residual };
    attenuation += ra / aa;
    delay += rd / dd;
  }
  return best;
}

/** One-way loss in dB at 10 MHz of an attenuation of Γ (there and back) in neper per √Hz. */
const lossAt10MHz = (attenuation: number) => (attenuation * Math.sqrt(10e6) * DECIBELS_PER_NEPER) / 2;
