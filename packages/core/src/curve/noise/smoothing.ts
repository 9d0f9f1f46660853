import { at, type Column } from "../../numbers/column.js";
import { type Explanation, fitWhole } from "../fit/whole-fit.js";
import type { Stretch } from "../samples/stretches.js";
import { type WindowFit, windowFit } from "./window-fit.js";

/** Half-widths of the windows tried, in samples, after the sample by itself. */
const HALF_WIDTHS = [3, 4, 6, 8, 11, 15, 20, 28, 40, 56];
export const WIDEST_HALF_WIDTH = Math.max(...HALF_WIDTHS);
/** A cubic through fewer samples than its window has is no fit. */
const LEAST_HALF_WIDTH = 2;
/** Two windows agree while their results differ by no more than this many standard deviations of that difference. */
const AGREEMENT = 2.5;
/** Wiggles that noise leaves in the curve would pass for the antenna's where it is asked what noise does to that; this takes them off. */
const FURTHER_AGREEMENT = 4;
/** The difference of two windows varies by no less than this share of the narrower one's variance. */
const LEAST_SPREAD = 0.1;

interface Columns {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
}

/** Columns with their noise reduced where the samples lie close enough together to allow it. */
export interface Smoothed extends Columns {
  /** What explains each stretch */
  readonly fits: readonly Explanation[];
  /** Samples on either side that the window of each one takes in; 0 where it is as measured, or on a whole fit */
  readonly halfWidths: Uint8Array;
  /** The same smoothed further, by windows that may differ more */
  readonly further: Columns;
}

/**
 * Reduces noise: by one function for a whole stretch where one explains it (see whole-fit.ts), elsewhere by fitting a cubic
 * to a window of samples around each one.
 *
 * The window grows for as long as its result agrees, within the noise, with those of all the narrower ones: on a flat
 * part of the curve it grows wide, in a sharp dip or a coarse sweep it does not open at all and the sample is kept as
 * measured. (The rule is that of O. Lepski, Theory of Probability and Its Applications 35, 1990: on adapting to unknown
 * smoothness; from memory.)
 *
 * @param imaginary null for a quantity that is real
 * @param noise standard deviation of a sample of weight 1 in each column, as found by estimateNoise
 * @param weights noise of each sample over `noise`; null where all are alike
 */
export function smooth(
  position: Column,
  real: Column,
  imaginary: Column | null,
  stretches: readonly Stretch[],
  noise: number,
  weights: Column | null,
): Smoothed {
  const second = imaginary ?? new Float64Array(position.length);
  const unit = noise * (imaginary === null ? 1 : Math.SQRT2);
  const result = { real: real.slice(), imaginary: second.slice(), halfWidths: new Uint8Array(position.length) };
  let further: Columns | null = null;
  const accepted = noWindows();
  const fits: Explanation[] = [];
  for (const stretch of stretches) {
    const whole = fitWhole({ position, real, imaginary, weights }, stretch, noise);
    fits.push(whole?.fit ?? "none");
    if (whole !== null) {
      for (const columns of further === null ? [result] : [result, further]) {
        columns.real.set(whole.values.real, stretch.first);
        columns.imaginary.set(whole.values.imaginary, stretch.first);
      }
      continue;
    }
    const fit = windowFit(position, stretch, real, second, weights);
    // Of many samples some lie far off by noise alone; their windows must not end with them.
    const farthest = Math.sqrt(2 * Math.log(stretch.last - stretch.first + 1));
    const limits = {
      close: { ofSample: unit * Math.max(AGREEMENT, farthest), ofWindow: unit * AGREEMENT },
      loose: { ofSample: unit * Math.max(FURTHER_AGREEMENT, farthest), ofWindow: unit * FURTHER_AGREEMENT },
    };
    further ??= { real: result.real.slice(), imaginary: result.imaginary.slice() };
    const smoothed = { ...result, further };
    for (let i = stretch.first; i <= stretch.last; i++) smoothSample(fit, stretch, limits, i, accepted, smoothed);
  }
  return { ...result, further: further ?? result, fits };
}

/**
 * Smooths columns by windows that were chosen on others of the same shape.
 *
 * @param halfWidths of each sample's window, as {@link smooth} tells them
 */
export function smoothBy(
  halfWidths: Uint8Array,
  position: Column,
  real: Column,
  imaginary: Column | null,
  stretches: readonly Stretch[],
): Columns {
  const second = imaginary ?? new Float64Array(position.length);
  const result = { real: real.slice(), imaginary: second.slice() };
  for (const stretch of stretches) {
    const fit = windowFit(position, stretch, real, second, null);
    for (let i = stretch.first; i <= stretch.last; i++) {
      const halfWidth = Math.min(halfWidths[i] ?? 0, i - stretch.first, stretch.last - i);
      if (halfWidth < LEAST_HALF_WIDTH) continue;
      fit.begin(i);
      fit.widen(i, halfWidth);
      result.real[i] = fit.real;
      result.imaginary[i] = fit.imaginary;
    }
  }
  return result;
}

/** What the fits to one sample's windows have given so far: one entry per accepted window, the sample itself first. */
interface Accepted extends Columns {
  readonly variance: Float64Array;
}

const noWindows = (): Accepted => ({
  real: new Float64Array(HALF_WIDTHS.length + 1),
  imaginary: new Float64Array(HALF_WIDTHS.length + 1),
  variance: new Float64Array(HALF_WIDTHS.length + 1),
});

/** By how much a window's result may differ from the sample itself, and from a narrower window's. */
interface Agreement {
  readonly ofSample: number;
  readonly ofWindow: number;
}

/** For the curve, and for what is smoothed further. */
interface Agreements {
  readonly close: Agreement;
  readonly loose: Agreement;
}

/** Both in one go: every window that agrees closely agrees loosely. */
function smoothSample(
  fit: WindowFit,
  stretch: Stretch,
  limits: Agreements,
  index: number,
  accepted: Accepted,
  result: Columns & { readonly halfWidths: Uint8Array; readonly further: Columns },
): void {
  const widest = Math.min(index - stretch.first, stretch.last - index);
  fit.begin(index);
  accept(fit, accepted, 0);
  let best = 0;
  let bestClose = 0;
  let isClose = true;
  let count = 1;
  for (const halfWidth of HALF_WIDTHS) {
    if (halfWidth > widest) break;
    fit.widen(index, halfWidth);
    if (!agreesWithAll(fit, accepted, count, limits.loose)) break;
    isClose &&= agreesWithAll(fit, accepted, count, limits.close);
    accept(fit, accepted, count);
    if (at(accepted.variance, count) < at(accepted.variance, best)) best = count;
    if (isClose) bestClose = best;
    count++;
  }
  put(accepted, bestClose, result, index);
  put(accepted, best, result.further, index);
  result.halfWidths[index] = bestClose === 0 ? 0 : (HALF_WIDTHS[bestClose - 1] ?? 0);
}

function put(accepted: Accepted, window: number, columns: Columns, index: number): void {
  columns.real[index] = at(accepted.real, window);
  columns.imaginary[index] = at(accepted.imaginary, window);
}

function accept({ real, imaginary, variance }: WindowFit, accepted: Accepted, place: number): void {
  accepted.real[place] = real;
  accepted.imaginary[place] = imaginary;
  accepted.variance[place] = variance;
}

function agreesWithAll(
  { real, imaginary, variance }: WindowFit,
  accepted: Accepted,
  count: number,
  { ofSample, ofWindow }: Agreement,
): boolean {
  for (let k = 0; k < count; k++) {
    const tolerance = k === 0 ? ofSample : ofWindow;
    const narrower = at(accepted.variance, k);
    const spread = Math.max(narrower - variance, LEAST_SPREAD * narrower);
    const square = (real - at(accepted.real, k)) ** 2 + (imaginary - at(accepted.imaginary, k)) ** 2;
    if (square > tolerance * tolerance * spread) return false;
  }
  return true;
}
