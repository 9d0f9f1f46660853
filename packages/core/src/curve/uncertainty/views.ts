import { at } from "../../numbers/column.js";
import { magnitudeOf } from "../between/scalar-interpolation.js";
import type { Curve } from "../curve.js";
import { inverseOf } from "../noise/scalar-noise.js";
import { smoothBy } from "../noise/smoothing.js";
import { findStretches } from "../samples/stretches.js";
import { fitsBetween } from "./fits-of-stretches.js";
import { type NoisyPart, partOfFit } from "./noisy-parts.js";
import { samplesByPart } from "./noisy-samples.js";
import { type Columns, cut, noiselessCurve, type Part } from "./part.js";

/** A part of a curve, and the same seen in other ways: how far those differ tells how sure it is. */
export interface Views {
  /** By what noise moves: the unknowns of the functions that explain the curve there, or its samples */
  readonly parts: readonly NoisyPart[];
  /** What smoothing does to it; null where functions explain the curve, and nothing was smoothed */
  readonly smoothing: Smoothing | null;
  /** Through every other sample: how much hangs on the step */
  readonly thinned: readonly Curve[];
}

interface Smoothing {
  /** Smoothed further than the curve, so that no wiggles are left that noise has made */
  readonly further: Curve;
  /** That, smoothed once more by the curve's own windows: by how much they flatten what bends */
  readonly again: Curve;
}

/** Samples beyond the frequencies of interest that are kept, so that smoothing windows reach as far as before. */
const MARGIN_SAMPLES = 40;
/** Of these the nearest are looked at: what the interpolation needs, and an edge that moves. */
const LOOKED_AT_MARGIN_SAMPLES = 4;
/** The same where nothing is smoothed. */
const FIT_MARGIN_SAMPLES = 2;
/** Every other one of fewer samples than this says nothing. */
const FEWEST_TO_THIN = 10;

/**
 * Views of a curve around two frequencies.
 *
 * @param noise standard deviation of ρ to reckon with
 * @returns gives them for two frequencies
 */
export function viewsOf(curve: Curve, noise: number): (lowHz: number, highHz: number) => Views {
  const partsOfSamples = samplesByPart(curve, noise);
  return (lowHz, highHz) => {
    const fits = fitsBetween(curve, lowHz, highHz);
    const part = partOf(curve, lowHz, highHz, fits === null);
    return {
      parts: fits?.map((fit) => partOfFit(fit, noise)) ?? partsOfSamples(lowHz, highHz),
      smoothing: fits === null ? smoothingOf(part, curve.halfWidths) : null,
      thinned: part.frequencyHz.length < FEWEST_TO_THIN ? [] : [0, 1].map((offset) => thinnedCurve(part, offset)),
    };
  };
}

function partOf(curve: Curve, lowHz: number, highHz: number, isSmoothed: boolean): Part {
  const { frequencyHz } = curve.sweep;
  const margin = isSmoothed ? MARGIN_SAMPLES : FIT_MARGIN_SAMPLES;
  let first = 0;
  while (first < frequencyHz.length && at(frequencyHz, first) < lowHz) first++;
  let last = frequencyHz.length - 1;
  while (last > 0 && at(frequencyHz, last) > highHz) last--;
  const start = Math.max(0, first - margin);
  const end = Math.min(frequencyHz.length, last + 1 + margin);
  const some = (column: Readonly<Float64Array>) => Float64Array.from(column.subarray(start, end));
  const { real, imaginary } = curve.further;
  return {
    details: curve.sweep,
    start,
    lookedAt: {
      first: Math.max(0, first - LOOKED_AT_MARGIN_SAMPLES - start),
      last: Math.min(end - 1, last + LOOKED_AT_MARGIN_SAMPLES) - start,
    },
    frequencyHz: some(frequencyHz),
    real: imaginary === null ? some(real).map(magnitudeOf) : some(real),
    imaginary: imaginary && some(imaginary),
  };
}

/** @param halfWidths of the curve's windows */
function smoothingOf(part: Part, halfWidths: Uint8Array): Smoothing {
  const { start, lookedAt, frequencyHz } = part;
  const windows = halfWidths.subarray(start, start + frequencyHz.length);
  const reach = windows.subarray(lookedAt.first, lookedAt.last + 1).reduce((most, own) => Math.max(most, own), 0);
  const first = Math.max(0, lookedAt.first - reach);
  const last = Math.min(frequencyHz.length - 1, lookedAt.last + reach);
  const smoothed = smoothedBy(windows.subarray(first, last + 1), cut(part, { first, last }));
  return {
    further: noiselessCurve(part, cut(part, lookedAt)),
    again: noiselessCurve(part, cut(smoothed, { first: lookedAt.first - first, last: lookedAt.last - first })),
  };
}

/** Columns smoothed by chosen windows, by u where they are ρ. */
function smoothedBy(windows: Uint8Array, columns: Columns): Columns {
  const { frequencyHz, real, imaginary } = columns;
  const stretches = findStretches(frequencyHz);
  if (imaginary !== null) return { frequencyHz, ...smoothBy(windows, frequencyHz, real, imaginary, stretches) };
  const inverse = smoothBy(windows, frequencyHz, inverseOf(real).inverse, null, stretches).real;
  return { frequencyHz, real: inverse.map(magnitudeOf), imaginary: null };
}

function thinnedCurve(part: Part, offset: number): Curve {
  const thin = (column: Float64Array) => column.filter((_, i) => i % 2 === offset);
  return noiselessCurve(part, {
    frequencyHz: thin(part.frequencyHz),
    real: thin(part.real),
    imaginary: part.imaginary && thin(part.imaginary),
  });
}
