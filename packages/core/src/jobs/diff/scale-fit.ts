import { complex, multiply } from "../../numbers/complex.js";
import { type CommonSamples, everyFew, FEWEST_SAMPLES, replaceBefore } from "./common-samples.js";
import { fitLine, type LineFit, withBestLaw } from "./line-fit.js";
import { bestScale } from "./scale-search.js";
import { bulkDelayOf, reflectionAt, type SideCurve } from "./side-curve.js";

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
export function fitScale(samples: CommonSamples, before: SideCurve, negligible: number): ScaleFit {
  const few = everyFew(samples, SEARCHED_SAMPLES);
  const residualIn = (compared: CommonSamples) => (scale: number) => {
    const stretched = stretch(compared, before, scale);
    return stretched.frequencyHz.length < FEWEST_SAMPLES ? Number.POSITIVE_INFINITY : fitLine(stretched).residual;
  };
  const scale = bestScale(residualIn(few), residualIn(samples));
  const stretched = stretch(samples, before, scale);
  if (stretched.frequencyHz.length < FEWEST_SAMPLES) {
    return { scale: 1, line: fitLine(samples), residual: Number.POSITIVE_INFINITY };
  }
  const line = withBestLaw(stretched, fitLine(stretched), negligible);
  return { scale, line, residual: line.residual };
}

/** The samples as if the antenna had its frequency axis stretched, behind the same line. */
const stretch = (samples: CommonSamples, before: SideCurve, scale: number): CommonSamples => {
  const delayS = bulkDelayOf(before);
  return replaceBefore(samples, (frequencyHz) => {
    const reflection = reflectionAt(before, frequencyHz / scale);
    if (reflection === null) return null;
    // The line does not scale with the wire: its phase is moved from the old frequency to the new one.
    const angle = -2 * Math.PI * delayS * (frequencyHz - frequencyHz / scale);
    return multiply(reflection, complex(Math.cos(angle), Math.sin(angle)));
  });
};
