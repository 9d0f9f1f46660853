import { median } from "simple-statistics";
import { at, type Column } from "../../numbers/column.js";
import type { Complex } from "../../numbers/complex.js";
import { changeReference } from "../../reflection/impedance.js";
import { type CurvePiece, reflectionAt, type SideCurve } from "./side-curve.js";

/** Two vector sweeps at the same frequencies: Γ before and after, over their common range. */
export interface CommonSamples {
  readonly frequencyHz: Float64Array;
  readonly beforeReal: Float64Array;
  readonly beforeImaginary: Float64Array;
  readonly afterReal: Float64Array;
  readonly afterImaginary: Float64Array;
}

const MOST_SAMPLES = 400;
/** Fewer common samples than this explain nothing. */
export const FEWEST_SAMPLES = 12;

/**
 * Frequencies at which two sides are compared, the same ones whichever comes first: those of the sweep with fewer samples
 * over what both cover (of the one that begins lower, where they have as many), since between them the other one tells more;
 * of the other one where these are too few to explain anything.
 */
export function commonAxis(one: SideCurve, other: SideCurve): Column {
  const axes = one.pieces.flatMap((first) => other.pieces.map((second) => axisOf(first, second)));
  return axes.length === 1 ? (axes[0] as Float64Array) : Float64Array.from(new Set(axes.flatMap((axis) => [...axis])));
}

/** The same of two curves where both answer; empty where that is nowhere. */
function axisOf(one: CurvePiece, other: CurvePiece): Float64Array {
  const low = Math.max(one.lowHz, other.lowHz);
  const high = Math.min(one.highHz, other.highHz);
  const [coarser, finer] = [one, other]
    .map(({ curve }) => curve.sweep.frequencyHz)
    .sort((a, b) => at(a, 0) - at(b, 0))
    .map((axis) => axis.filter((frequency) => frequency >= low && frequency <= high))
    .sort((a, b) => a.length - b.length) as [Float64Array, Float64Array];
  return coarser.length < FEWEST_SAMPLES ? finer : coarser;
}

/** The same, thinned evenly to a few hundred. */
export function thinnedAxis(one: SideCurve, other: SideCurve): Column {
  const axis = commonAxis(one, other);
  const every = Math.max(1, Math.floor(axis.length / MOST_SAMPLES));
  return axis.filter((_, i) => i % every === 0);
}

/** Both sides at the same frequencies, thinned evenly, where both were swept. */
export function commonSamples(before: SideCurve, after: SideCurve): CommonSamples {
  const rows: number[][] = [];
  for (const frequency of thinnedAxis(before, after)) {
    const first = reflectionAt(before, frequency);
    const second = reflectionAt(after, frequency);
    if (first === null || second === null) continue;
    rows.push([frequency, first.real, first.imaginary, second.real, second.imaginary]);
  }
  return samplesFrom(rows);
}

/** The samples thinned evenly to about so many. */
export function everyFew(samples: CommonSamples, few: number): CommonSamples {
  const every = Math.max(1, Math.floor(samples.frequencyHz.length / few));
  return pick(
    samples,
    Array.from({ length: Math.ceil(samples.frequencyHz.length / every) }, (_, k) => k * every),
  );
}

/** The samples against another reference impedance. */
export function inReference(samples: CommonSamples, fromOhms: number, toOhms: number): CommonSamples {
  const converted = (real: Float64Array, imaginary: Float64Array) =>
    Array.from(real, (value, i) => changeReference({ real: value, imaginary: at(imaginary, i) }, fromOhms, toOhms));
  const before = converted(samples.beforeReal, samples.beforeImaginary);
  const after = converted(samples.afterReal, samples.afterImaginary);
  return {
    frequencyHz: samples.frequencyHz,
    beforeReal: Float64Array.from(before, ({ real }) => real),
    beforeImaginary: Float64Array.from(before, ({ imaginary }) => imaginary),
    afterReal: Float64Array.from(after, ({ real }) => real),
    afterImaginary: Float64Array.from(after, ({ imaginary }) => imaginary),
  };
}

/** The same samples with another curve in the place of `before`, where it is known. */
export function replaceBefore(
  samples: CommonSamples,
  reflection: (frequencyHz: number, sample: number) => { real: number; imaginary: number } | null,
): CommonSamples {
  const rows: number[][] = [];
  samples.frequencyHz.forEach((frequency, i) => {
    const value = reflection(frequency, i);
    if (value !== null)
      rows.push([frequency, value.real, value.imaginary, at(samples.afterReal, i), at(samples.afterImaginary, i)]);
  });
  return samplesFrom(rows);
}

/** Root mean square of |Γ after - Γ before|. */
export const meanDifference = (samples: CommonSamples): number => residualOf(samples, (i) => beforeAt(samples, i));

/** Γ before of a sample. */
export const beforeAt = ({ beforeReal, beforeImaginary }: CommonSamples, i: number): Complex => ({
  real: at(beforeReal, i),
  imaginary: at(beforeImaginary, i),
});

/** Γ after of a sample. */
export const afterAt = ({ afterReal, afterImaginary }: CommonSamples, i: number): Complex => ({
  real: at(afterReal, i),
  imaginary: at(afterImaginary, i),
});

/** How far Γ after of a sample lies from something. */
export const distanceFromAfter = (
  { afterReal, afterImaginary }: CommonSamples,
  i: number,
  { real, imaginary }: Complex,
): number => Math.hypot(at(afterReal, i) - real, at(afterImaginary, i) - imaginary);

/** |Γ after - Γ before| of a sample. */
export const differenceAt = (samples: CommonSamples, i: number): number =>
  distanceFromAfter(samples, i, beforeAt(samples, i));

/** Root mean square of what is left of Γ after, where something turns that before of each sample into another. */
export function residualOf(samples: CommonSamples, turned: (i: number) => Complex): number {
  const count = samples.frequencyHz.length;
  let square = 0;
  for (let i = 0; i < count; i++) square += distanceFromAfter(samples, i, turned(i)) ** 2;
  return Math.sqrt(square / count);
}

/** Differences that many times the usual are a jump, not a change, if no more than this share of samples make one. */
const OUTLIER_RATIO = 6;
const MOST_OUTLIERS = 0.1;
/** A jump touches no more samples than these in a row: a narrow resonance that moved touches more. */
const LONGEST_JUMP = 3;

/**
 * The samples without the few whose difference stands far out from that of most, one here and one there, as interference
 * leaves them; null where there are none such.
 */
export function withoutJumps(samples: CommonSamples): { calm: CommonSamples; jumps: number } | null {
  const differences = Array.from(samples.frequencyHz, (_, i) => differenceAt(samples, i));
  const limit = OUTLIER_RATIO * median(differences);
  const kept = differences.flatMap((difference, i) => (difference <= limit ? [i] : []));
  if (kept.length === differences.length || kept.length < (1 - MOST_OUTLIERS) * differences.length) return null;
  const jumps = kept.map((i, k) => i - (kept[k - 1] ?? -1) - 1).concat(differences.length - 1 - (kept.at(-1) ?? -1));
  if (Math.max(...jumps) > LONGEST_JUMP) return null;
  return { calm: pick(samples, kept), jumps: jumps.filter((length) => length > 0).length };
}

/** The samples at some indices. */
function pick(samples: CommonSamples, indices: readonly number[]): CommonSamples {
  const from = (column: Float64Array) => Float64Array.from(indices, (i) => at(column, i));
  return {
    frequencyHz: from(samples.frequencyHz),
    beforeReal: from(samples.beforeReal),
    beforeImaginary: from(samples.beforeImaginary),
    afterReal: from(samples.afterReal),
    afterImaginary: from(samples.afterImaginary),
  };
}

/** @param rows frequency, Γ before and Γ after, each as real and imaginary part */
function samplesFrom(rows: readonly (readonly number[])[]): CommonSamples {
  const column = (c: number) => Float64Array.from(rows, (row) => row[c] as number);
  return {
    frequencyHz: column(0),
    beforeReal: column(1),
    beforeImaginary: column(2),
    afterReal: column(3),
    afterImaginary: column(4),
  };
}
