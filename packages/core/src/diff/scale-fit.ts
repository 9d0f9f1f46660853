import { complex, multiply } from "../complex.js";
import { reflectionAt, type VectorCurve } from "../curve/curve.js";
import { leastBetween } from "../curve/search.js";
import { type CommonSamples, everyFew, FEWEST_SAMPLES, replaceBefore } from "./common-samples.js";
import { fitLine, type LineFit, withBestLaw } from "./line-fit.js";

/** Range and step of the frequency scale searched: a wire up to 8 % longer or shorter. */
export const GREATEST_SCALE = 0.08;
export const SCALE_STEP = 0.002;
/** A wire that seems longer or shorter by less than this is the same: sag, wind and warmth do as much (our own choice). */
export const LEAST_SCALE = 0.002;

export interface ScaleFit {
  /** Frequencies of the second sweep over those of the first */
  readonly scale: number;
  /** What the line did besides */
  readonly line: LineFit;
  readonly residual: number;
}

/** A scale is looked for in about this many samples, and refined on all. */
const SEARCHED_SAMPLES = 100;

/**
 * The same antenna with its frequency axis stretched, behind the same line or another: what a longer or shorter wire does.
 *
 * @param negligible a residual that needs no better explanation
 */
export function fitScale(samples: CommonSamples, before: VectorCurve, negligible: number): ScaleFit {
  const few = everyFew(samples, SEARCHED_SAMPLES);
  const residualIn = (compared: CommonSamples) => (scale: number) => {
    const stretched = stretch(compared, before, scale);
    return stretched.frequencyHz.length < FEWEST_SAMPLES ? Number.POSITIVE_INFINITY : fitLine(stretched).residual;
  };
  const residualInFew = residualIn(few);
  let best = 1;
  let bestResidual = Number.POSITIVE_INFINITY;
  for (let scale = 1 - GREATEST_SCALE; scale <= 1 + GREATEST_SCALE; scale += SCALE_STEP) {
    const residual = residualInFew(scale);
    if (residual < bestResidual) {
      bestResidual = residual;
      best = scale;
    }
  }
  const scale = leastBetween(residualIn(samples), best - SCALE_STEP, best + SCALE_STEP, 1e-5);
  const stretched = stretch(samples, before, scale);
  if (stretched.frequencyHz.length < FEWEST_SAMPLES) {
    return { scale: 1, line: fitLine(samples), residual: Number.POSITIVE_INFINITY };
  }
  const line = withBestLaw(stretched, fitLine(stretched), negligible);
  return { scale, line, residual: line.residual };
}

/** The samples as if the antenna had its frequency axis stretched, behind the same line. */
const stretch = (samples: CommonSamples, before: VectorCurve, scale: number): CommonSamples =>
  replaceBefore(samples, (frequencyHz) => {
    const reflection = reflectionAt(before, frequencyHz / scale);
    if (reflection === null) return null;
    // The line does not scale with the wire: its phase is moved from the old frequency to the new one.
    const angle = -2 * Math.PI * before.delayS * (frequencyHz - frequencyHz / scale);
    return multiply(reflection, complex(Math.cos(angle), Math.sin(angle)));
  });
