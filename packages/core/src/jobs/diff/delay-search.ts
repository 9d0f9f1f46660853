import { median } from "simple-statistics";
import { at, type Column } from "../../numbers/column.js";
import type { CommonSamples } from "./common-samples.js";

/** Longest change of delay looked for, s: about 100 m of coax, there and back. */
const GREATEST_DELAY_S = 1000e-9;
/** Delays are looked for in about this many samples. */
const SEARCHED_SAMPLES = 60;
/** Steps of the search to a turn of the fastest phase: at the peak between two of them 1 % is lost. */
const STEPS_PER_TURN = 24;
/** A narrow sweep hardly tells delays apart that differ by whole turns of its middle frequency; this many are tried. */
const MOST_CANDIDATES = 10;
/** A delay at which before and after add up to less than this share of the best is out of the question. */
const LEAST_SHARE_OF_BEST = 0.7;

/** The delays at which `before` may have become `after`, the most promising first. */
export function candidateDelays(samples: CommonSamples): readonly number[] {
  const { frequencyHz } = samples;
  const first = at(frequencyHz, 0);
  const last = at(frequencyHz, frequencyHz.length - 1);
  if (!(last > first)) return [];
  const reach = Math.min(GREATEST_DELAY_S, unambiguousDelay(frequencyHz));
  const step = 1 / (STEPS_PER_TURN * last);
  const steps = Math.ceil(reach / step);
  const sums = coherentSums(samples, -steps * step, step, 2 * steps + 1);
  const peaks = Array.from(sums, (sum, i) => ({ sum, delay: (i - steps) * step })).filter(
    ({ sum }, i) => sum >= (sums[i - 1] ?? sum) && sum >= (sums[i + 1] ?? sum),
  );
  const ranked = peaks.sort((a, b) => b.sum - a.sum);
  const best = ranked[0]?.sum ?? 0;
  return ranked
    .filter(({ sum }) => sum >= LEAST_SHARE_OF_BEST * best)
    .slice(0, MOST_CANDIDATES)
    .map(({ delay }) => delay);
}

/** Beyond this a delay turns the phase by more than half around from sample to sample, and looks like another one. */
function unambiguousDelay(frequencyHz: Column): number {
  const steps = Array.from(frequencyHz.subarray(1), (frequency, i) => frequency - at(frequencyHz, i));
  return 1 / (2 * median(steps));
}

/**
 * Real part of the sum of after · conj(before · exp(-j2πf delay)), at evenly spaced delays: greatest where the delay is right.
 * Each sample's phase is carried on from delay to delay by one multiplication.
 */
function coherentSums(samples: CommonSamples, firstDelay: number, step: number, count: number): Float64Array {
  const { frequencyHz, beforeReal, beforeImaginary, afterReal, afterImaginary } = samples;
  const every = Math.max(1, Math.floor(frequencyHz.length / SEARCHED_SAMPLES));
  const sums = new Float64Array(count);
  for (let i = 0; i < frequencyHz.length; i += every) {
    const turn = 2 * Math.PI * at(frequencyHz, i);
    const [cosine, sine] = [Math.cos(turn * firstDelay), Math.sin(turn * firstDelay)];
    const [turnReal, turnImaginary] = [Math.cos(turn * step), Math.sin(turn * step)];
    const productReal = at(afterReal, i) * at(beforeReal, i) + at(afterImaginary, i) * at(beforeImaginary, i);
    const productImaginary = at(afterImaginary, i) * at(beforeReal, i) - at(afterReal, i) * at(beforeImaginary, i);
    let real = productReal * cosine - productImaginary * sine;
    let imaginary = productReal * sine + productImaginary * cosine;
    for (let k = 0; k < count; k++) {
      sums[k] = at(sums, k) + real;
      const next = real * turnReal - imaginary * turnImaginary;
      imaginary = real * turnImaginary + imaginary * turnReal;
      real = next;
    }
  }
  return sums;
}
