import { at } from "../column.js";
import { type Curve, curveOf, isVectorCurve } from "../curve/curve.js";
import { magnitudeOf } from "../curve/scalar-interpolation.js";
import { type Sweep, type SweepDetails, scalarSweep, vectorSweep } from "../sweep.js";
import type { Features } from "./features.js";
import { normalNumbers } from "./random.js";

/** Samples beyond the frequencies of interest that are kept, so that smoothing windows reach as far as before. */
const MARGIN_SAMPLES = 40;
/** Noisy copies that are made; they come in pairs of opposite noise. */
const PAIRS = 20;
const SEED = 20260501;

/** Part of a curve with its noise taken off as well as can be: the base of the copies, and what they need. */
export interface ReplicateBase {
  readonly frequencyHz: Float64Array;
  /** Γ without its bulk delay; ρ and nothing for a scalar sweep */
  readonly real: Float64Array;
  readonly imaginary: Float64Array | null;
  readonly noise: number;
  readonly details: SweepDetails;
}

/** The samples of a curve around some frequencies. */
export function replicateBase(curve: Curve, lowHz: number, highHz: number, noise: number): ReplicateBase {
  const { frequencyHz } = curve.sweep;
  let first = 0;
  while (first < frequencyHz.length && at(frequencyHz, first) < lowHz) first++;
  let last = frequencyHz.length - 1;
  while (last > 0 && at(frequencyHz, last) > highHz) last--;
  const from = Math.max(0, first - MARGIN_SAMPLES);
  const to = Math.min(frequencyHz.length, last + 1 + MARGIN_SAMPLES);
  const cut = (column: Readonly<Float64Array>) => Float64Array.from(column.subarray(from, to));
  const isVector = isVectorCurve(curve);
  return {
    frequencyHz: cut(frequencyHz),
    real: isVector ? cut(curve.interpolation.real) : cut(curve.interpolation.inverse).map(magnitudeOf),
    imaginary: isVector ? cut(curve.interpolation.imaginary) : null,
    noise,
    details: curve.sweep,
  };
}

/** Wiggles that noise left in the curve would be copied as if they were the antenna's; the base is smoothed further. */
const BASE_AGREEMENT = 4;

/** The curve that copies start from. */
export function smootherCurve(curve: Curve): Curve {
  if (curve.noise === null) return curve;
  const known = isVectorCurve(curve) ? { noise: curve.noise, delayS: curve.delayS } : { noise: curve.noise };
  return curveOf(curve.sweep, { ...known, agreement: BASE_AGREEMENT });
}

/** A curve through samples that are known to hold no noise. */
function noiselessCurve(
  details: SweepDetails,
  frequencyHz: Float64Array,
  real: Float64Array,
  imaginary: Float64Array | null,
): Curve {
  const sweep =
    imaginary === null
      ? scalarSweep(details, { frequencyHz, reflectionMagnitude: real })
      : vectorSweep(details, { frequencyHz, reflectionReal: real, reflectionImaginary: imaginary });
  return curveOf(sweep, { noise: null, delayS: 0, hasNoSpikes: true });
}

/** The base itself as a curve. */
export const baseCurve = ({ details, frequencyHz, real, imaginary }: ReplicateBase): Curve =>
  noiselessCurve(details, frequencyHz, real, imaginary);

/** Features of copies of the base with fresh noise, always the same for the same base. */
export function replicateFeatures(base: ReplicateBase, features: (curve: Curve) => Features): readonly Features[] {
  const normal = normalNumbers(SEED);
  const results: Features[] = [];
  // All copies are of one curve, so what explains the first explains the others.
  let orders: Curve["orders"] | undefined;
  for (let pair = 0; pair < PAIRS; pair++) {
    const across = base.real.map(() => base.noise * normal());
    const along = base.real.map(() => base.noise * normal());
    for (const sign of [1, -1]) {
      const known = { noise: base.noise, delayS: 0, hasNoSpikes: true, ...(orders === undefined ? {} : { orders }) };
      const curve = curveOf(withNoise(base, along, across, sign), known);
      orders ??= curve.orders;
      results.push(features(curve));
    }
  }
  return results;
}

function withNoise(base: ReplicateBase, along: Float64Array, across: Float64Array, sign: number): Sweep {
  const { frequencyHz, real, imaginary, details } = base;
  const first = real.map((value, i) => value + sign * at(along, i));
  if (imaginary !== null) {
    const second = imaginary.map((value, i) => value + sign * at(across, i));
    return vectorSweep(details, { frequencyHz, reflectionReal: first, reflectionImaginary: second });
  }
  // What a scalar instrument shows is the size of Γ with both parts of its noise.
  const size = first.map((value, i) => Math.hypot(value, at(across, i)));
  return scalarSweep(details, { frequencyHz, reflectionMagnitude: size });
}

/** Features of the base seen through every other sample: how much hangs on the step. */
export function thinnedFeatures(base: ReplicateBase, features: (curve: Curve) => Features): readonly Features[] {
  return [0, 1].map((offset) => {
    const thin = (column: Float64Array) => column.filter((_, i) => i % 2 === offset);
    const imaginary = base.imaginary && thin(base.imaginary);
    return features(noiselessCurve(base.details, thin(base.frequencyHz), thin(base.real), imaginary));
  });
}
