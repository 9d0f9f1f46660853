import { reflectionAt, type VectorCurve } from "../curve/curve.js";
import { leastBetween } from "../curve/search.js";
import { type CommonSamples, FEWEST_SAMPLES, replaceBefore } from "./common-samples.js";
import { fitLine, type LineFit } from "./line-fit.js";

/** Range and step of the frequency scale searched: a wire up to 8 % longer or shorter. */
export const GREATEST_SCALE = 0.08;
export const SCALE_STEP = 0.002;
/** A wire that seems longer or shorter by less than this is the same. */
export const LEAST_SCALE = 0.001;

export interface ScaleFit {
  /** Frequencies of the second sweep over those of the first */
  readonly scale: number;
  /** What the line did besides */
  readonly line: LineFit;
  readonly residual: number;
}

/** The same antenna with its frequency axis stretched, behind the same line or another: what a longer or shorter wire does. */
export function fitScale(samples: CommonSamples, before: VectorCurve): ScaleFit {
  const fitAt = (scale: number): ScaleFit | null => {
    const scaled = replaceBefore(samples, (frequencyHz) => {
      const reflection = reflectionAt(before, frequencyHz / scale);
      if (reflection === null) return null;
      // The line does not scale with the wire: its phase is moved from the old frequency to the new one.
      const angle = -2 * Math.PI * before.delayS * (frequencyHz - frequencyHz / scale);
      return {
        real: reflection.real * Math.cos(angle) - reflection.imaginary * Math.sin(angle),
        imaginary: reflection.real * Math.sin(angle) + reflection.imaginary * Math.cos(angle),
      };
    });
    if (scaled.frequencyHz.length < FEWEST_SAMPLES) return null;
    const line = fitLine(scaled);
    return { scale, line, residual: line.residual };
  };
  const residualAt = (scale: number) => fitAt(scale)?.residual ?? Number.POSITIVE_INFINITY;
  let best = 1;
  let bestResidual = Number.POSITIVE_INFINITY;
  for (let scale = 1 - GREATEST_SCALE; scale <= 1 + GREATEST_SCALE; scale += SCALE_STEP) {
    const residual = residualAt(scale);
    if (residual < bestResidual) {
      bestResidual = residual;
      best = scale;
    }
  }
  const refined = leastBetween(residualAt, best - SCALE_STEP, best + SCALE_STEP, 1e-5);
  return fitAt(refined) ?? { scale: 1, line: fitLine(samples), residual: Number.POSITIVE_INFINITY };
}
