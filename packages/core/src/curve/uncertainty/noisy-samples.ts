import { at, type Column, firstIndexAbove } from "../../numbers/column.js";
import { add, type Complex, complex, scale, subtract } from "../../numbers/complex.js";
import { once } from "../../numbers/once.js";
import type { ScalarSweep } from "../../sweep/sweep.js";
import { type ComplexResult, type Interpolation, interpolateBetween } from "../between/interpolation.js";
import { type Curve, isVectorCurve } from "../curve.js";
import { ceilingOf, inverseOf } from "../noise/scalar-noise.js";
import { WIDEST_HALF_WIDTH } from "../noise/smoothing.js";
import { windowWeights } from "../noise/window-fit.js";
import type { NoisyPoint, Sensitivity } from "../noisy-point.js";
import { isEven, type Stretch } from "../samples/stretches.js";
import type { NoisyPart } from "./noisy-parts.js";

/** What interpolation looks at on either side, and the widest window. */
const REACH = 2 + WIDEST_HALF_WIDTH;

/**
 * The stretches of a curve between two frequencies as smoothed and interpolated samples.
 *
 * @param noise standard deviation of ρ of a sample
 * @returns gives them for two frequencies
 */
export function samplesByPart(curve: Curve, noise: number): (lowHz: number, highHz: number) => readonly NoisyPart[] {
  const { sweep, stretches } = curve;
  const axis = sweep.frequencyHz;
  const noisy = once(() => ({
    curve,
    noise,
    weights: sweep.kind === "vector" ? null : weightsOf(sweep, curve.reflectionMagnitude),
    areEven: stretches.map((stretch) => isEven(axis, stretch)),
  }));
  return (lowHz, highHz) =>
    stretches.flatMap((stretch, s) => {
      if (at(axis, stretch.first) > highHz || at(axis, stretch.last) < lowHz) return [];
      const first = Math.max(stretch.first, firstIndexAbove(axis, lowHz) - REACH);
      const last = Math.min(stretch.last, firstIndexAbove(axis, highHz) + REACH);
      return [partOfSamples(noisy(), s, { first, last })];
    });
}

/** Noise of u at samples over that of ρ; what means "at least" is no reading, and has none. */
function weightsOf(sweep: ScalarSweep, smoothed: Column): Column {
  const ceiling = ceilingOf(sweep);
  return inverseOf(smoothed).weights.map((weight, i) => (at(sweep.reflectionMagnitude, i) < ceiling ? weight : 0));
}

interface NoisySamples {
  readonly curve: Curve;
  readonly noise: number;
  /** Of each sample over `noise`, where it is of u */
  readonly weights: Column | null;
  /** Of each stretch */
  readonly areEven: readonly boolean[];
}

/** @param samples those that count, of a stretch */
function partOfSamples(noisy: NoisySamples, s: number, samples: Stretch): NoisyPart {
  const { curve, noise, weights, areEven } = noisy;
  const axis = curve.sweep.frequencyHz;
  const stretch = curve.stretches[s] as Stretch;
  return {
    lowHz: at(axis, stretch.first),
    highHz: at(axis, stretch.last),
    isInverse: weights !== null,
    sampleNoise: noise,
    at: (hz) => {
      const index = Math.max(Math.min(firstIndexAbove(axis, hz), stretch.last) - 1, stretch.first);
      const stepHz = stretch.first === stretch.last ? 1 : SMALL_STEP * (at(axis, index + 1) - at(axis, index));
      const local = interpolationAround(curve, stretch, index);
      return smoothedPoint(curve, areEven[s] ?? false, samples, local, hz, stepHz);
    },
    varianceOf: ({ real, imaginary }) => {
      let sum = 0;
      for (let k = 0; k < real.length; k++) {
        const weight = weights === null ? 1 : at(weights, samples.first + k);
        sum += weight * weight * (at(real, k) ** 2 + at(imaginary, k) ** 2);
      }
      return noise * noise * sum;
    },
  };
}

/** The interpolation at a frequency, and by how much it and its slope move with each of the samples that were smoothed. */
function smoothedPoint(
  curve: Curve,
  areEven: boolean,
  { first, last }: Stretch,
  local: LocalInterpolation,
  hz: number,
  stepHz: number,
): NoisyPoint {
  const [before, here, after] = [local.at(hz - stepHz), local.at(hz), local.at(hz + stepHz)];
  const column = () => new Float64Array(last - first + 1);
  const ofValue = { real: column(), imaginary: column() };
  const ofSlope = { real: column(), imaginary: column() };
  for (const [k, weight] of here.weights.entries()) {
    const index = local.from + k;
    const halfWidth = curve.halfWidths[index] ?? 0;
    const window = halfWidth === 0 ? ONE : windowWeights(curve.sweep.frequencyHz, areEven, index, halfWidth);
    const start = index - halfWidth - first;
    addWindow(ofValue, window, start, weight);
    addWindow(ofSlope, window, start, slopeOf(before.weights[k] as Complex, after.weights[k] as Complex, stepHz));
  }
  const bend = subtract(add(before.value, after.value), scale(here.value, 2));
  return {
    value: here.value,
    slope: slopeOf(before.value, after.value, stepHz),
    bend: scale(bend, 1 / (stepHz * stepHz)),
    ofValue,
    ofSlope,
  };
}

const slopeOf = (before: Complex, after: Complex, stepHz: number): Complex =>
  scale(subtract(after, before), 1 / (2 * stepHz));

function addWindow(sum: Sensitivity, window: Float64Array, start: number, { real, imaginary }: Complex): void {
  for (let k = 0; k < window.length; k++) {
    sum.real[start + k] = at(sum.real, start + k) + at(window, k) * real;
    sum.imaginary[start + k] = at(sum.imaginary, start + k) + at(window, k) * imaginary;
  }
}

const ONE = Float64Array.of(1);
/** Derivatives are taken over this share of the step between samples, and of this much in a sample. */
const SMALL_STEP = 0.02;
const SMALL_MOVE = 1e-7;

/** A value, and by how much it moves with each of the samples that it is interpolated from. */
interface Interpolated {
  readonly value: Complex;
  readonly weights: readonly Complex[];
}

/** The interpolation between a sample and the next, by what it looks at alone: the samples from the index `from` on. */
interface LocalInterpolation {
  readonly from: number;
  readonly at: (hz: number) => Interpolated;
}

function interpolationAround(curve: Curve, stretch: Stretch, index: number): LocalInterpolation {
  const from = Math.max(stretch.first, index - 1);
  const end = Math.min(stretch.last, index + 2) + 1;
  const count = end - from;
  const { position, ...columns } = isVectorCurve(curve)
    ? curve.interpolation
    : // Nearly the spline of a scalar sweep is the cubic through four samples.
      { position: curve.interpolation.position, real: curve.interpolation.inverse, imaginary: null, rational: null };
  const real = columns.real.slice(from, end);
  const local: Interpolation = {
    position: position.slice(from, end),
    real,
    imaginary: columns.imaginary?.slice(from, end) ?? new Float64Array(count),
    rational: columns.rational?.slice(from, end) ?? new Uint8Array(count),
  };
  const valueAt = (hz: number): Complex => {
    // A reading by itself.
    if (count === 1) return complex(at(local.real, 0), at(local.imaginary, 0));
    const result: ComplexResult = { real: 0, imaginary: 0 };
    interpolateBetween(local, { first: 0, last: count - 1 }, index - from, hz, result);
    return result;
  };
  const weightAt = (hz: number, value: Complex, k: number): Complex => {
    const own = at(real, k);
    const move = SMALL_MOVE * Math.max(1, own);
    real[k] = own + move;
    const moved = valueAt(hz);
    real[k] = own;
    return scale(subtract(moved, value), 1 / move);
  };
  return {
    from,
    at: (hz) => {
      const value = valueAt(hz);
      return { value, weights: Array.from({ length: count }, (_, k) => weightAt(hz, value, k)) };
    },
  };
}
