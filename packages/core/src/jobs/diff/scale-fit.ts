import { at } from "../../numbers/column.js";
import { type Complex, complex, multiply } from "../../numbers/complex.js";
import {
  beforeAt,
  type CommonSamples,
  differenceAt,
  distanceFromAfter,
  everyFew,
  FEWEST_SAMPLES,
  meanDifference,
  replaceBefore,
} from "./common-samples.js";
import { throughChange } from "./line-change.js";
import { fitLine, type LineFit, withBestLaw } from "./line-fit.js";
import { bestScale, GREATEST_SCALE, LEAST_REACHED } from "./scale-search.js";
import { bulkDelayOf, reflectionAround, reflectionAt, type SideCurve } from "./side-curve.js";

export interface ScaleFit {
  /** Frequencies of the second sweep over those of the first */
  readonly scale: number;
  /** What the line did besides */
  readonly line: LineFit;
  readonly residual: number;
  /** Of the stretches of frequency that changed, the share in which it leaves less than half: what is true of a wire is so everywhere */
  readonly throughout: number;
  /** Wires up to this share longer or shorter were tried; narrow sweeps reach less far */
  readonly reach: number;
}

/** A scale is looked for in about this many samples, and refined on all. */
const SEARCHED_SAMPLES = 100;

/**
 * The same antenna with its frequency axis stretched, behind the same line or another: what a longer or shorter wire does. What it
 * leaves is a share of the difference, told by the samples that the stretched axis reaches, of the difference of all.
 *
 * @param negligible a residual that needs no better explanation
 */
export function fitScale(samples: CommonSamples, before: SideCurve, negligible: number): ScaleFit {
  const few = everyFew(samples, SEARCHED_SAMPLES);
  const residualIn = (compared: CommonSamples) => (scale: number) => {
    const stretched = stretch(compared, before, scale);
    return stretched === null ? Number.POSITIVE_INFINITY : fitLine(stretched.samples).residual * stretched.share;
  };
  const residualOfFew = residualIn(few);
  let reach = GREATEST_SCALE;
  const roughly = (scale: number) => {
    const residual = residualOfFew(scale);
    if (residual === Number.POSITIVE_INFINITY) reach = Math.min(reach, Math.abs(scale - 1));
    return residual;
  };
  const scale = bestScale(roughly, residualIn(samples));
  const stretched = stretch(samples, before, scale);
  if (stretched === null)
    return { scale: 1, line: fitLine(samples), residual: Number.POSITIVE_INFINITY, throughout: 0, reach };
  const line = withBestLaw(stretched.samples, fitLine(stretched.samples), negligible);
  const throughout = explainedThroughout(samples, stretched, line, before.referenceOhms);
  return { scale, line, residual: line.residual * stretched.share, throughout, reach };
}

/** Stretches are thirds of an octave with some samples, that changed by some part of what all did. */
const STRETCHES_PER_OCTAVE = 3;
const FEWEST_IN_STRETCH = 6;
const CHANGED_SHARE = 0.2;

function explainedThroughout(
  samples: CommonSamples,
  stretched: Stretched,
  line: LineFit,
  referenceOhms: number,
): number {
  const stretches = new Map<number, { count: number; was: number; left: number }>();
  for (const [k, i] of stretched.from.entries()) {
    const hz = at(samples.frequencyHz, i);
    const key = Math.floor(STRETCHES_PER_OCTAVE * Math.log2(hz));
    const stretch = stretches.get(key) ?? { count: 0, was: 0, left: 0 };
    const through = throughChange(beforeAt(stretched.samples, k), hz, referenceOhms, line);
    stretch.count++;
    stretch.was += differenceAt(samples, i) ** 2;
    stretch.left += distanceFromAfter(stretched.samples, k, through) ** 2;
    stretches.set(key, stretch);
  }
  const usual = meanDifference(samples) ** 2;
  const changed = [...stretches.values()].filter(
    ({ count, was }) => count >= FEWEST_IN_STRETCH && was / count >= CHANGED_SHARE ** 2 * usual,
  );
  return changed.filter(({ was, left }) => left < was / 4).length / Math.max(1, changed.length);
}

/** Samples on a stretched axis. */
interface Stretched {
  readonly samples: CommonSamples;
  /** Which of all samples each is */
  readonly from: readonly number[];
  /** The difference of all over that of these */
  readonly share: number;
}

/** Γ of a side at a frequency; null where it does not tell. */
type ReflectionOf = (side: SideCurve, frequencyHz: number) => Complex | null;

/**
 * The samples as if the antenna had its frequency axis stretched, behind the same line: by what was swept, or where that reaches
 * too little, by how the curve goes on beyond it.
 *
 * @returns null where both reach too little
 */
const stretch = (samples: CommonSamples, before: SideCurve, scale: number): Stretched | null =>
  stretchBy(reflectionAt, samples, before, scale) ?? stretchBy(reflectionAround, samples, before, scale);

function stretchBy(
  reflectionOf: ReflectionOf,
  samples: CommonSamples,
  before: SideCurve,
  scale: number,
): Stretched | null {
  const delayS = bulkDelayOf(before);
  const reached: number[] = [];
  const stretched = replaceBefore(samples, (frequencyHz, i) => {
    const reflection = reflectionOf(before, frequencyHz / scale);
    if (reflection === null) return null;
    reached.push(i);
    // The line does not scale with the wire: its phase is moved from the old frequency to the new one.
    const angle = -2 * Math.PI * delayS * (frequencyHz - frequencyHz / scale);
    return multiply(reflection, complex(Math.cos(angle), Math.sin(angle)));
  });
  const squareOf = (indices: readonly number[]) => indices.reduce((sum, i) => sum + differenceAt(samples, i) ** 2, 0);
  const all = squareOf([...samples.frequencyHz.keys()]);
  const here = squareOf(reached);
  if (reached.length < FEWEST_SAMPLES || here < LEAST_REACHED * all) return null;
  return {
    samples: stretched,
    from: reached,
    share: Math.sqrt(all / samples.frequencyHz.length / (here / reached.length)),
  };
}
