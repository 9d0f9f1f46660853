import { at, type Column } from "../../numbers/column.js";

/**
 * A complex quantity known at ascending positions, ready to be interpolated within one stretch of samples.
 *
 * Every inner sample carries the interpolant through itself and its two neighbours: the rational function of degree
 * one over one (a circle in the complex plane, which is what an R, L, C load draws as the frequency moves), or a
 * parabola where the rational one cannot be trusted. Between two samples the interpolants of both are blended.
 */
export interface Interpolation {
  readonly position: Column;
  readonly real: Column;
  readonly imaginary: Column;
  /** 1 where the rational interpolant centred on the sample is used, 0 where the parabola is */
  readonly rational: Uint8Array;
}

/** A pole nearer to the three samples than this share of their spacing is an accident, not a resonance. */
const POLE_MARGIN = 0.1;

/**
 * Prepares the interpolation.
 *
 * @param curvatureFloor second differences below this are noise: there the parabola serves, since a rational function
 *   through three almost straight, noisy samples may put a pole anywhere
 */
export function prepareInterpolation(
  position: Column,
  real: Column,
  imaginary: Column,
  curvatureFloor: number,
): Interpolation {
  const rational = new Uint8Array(position.length);
  for (let i = 1; i < position.length - 1; i++) {
    rational[i] = isRationalSound(position, real, imaginary, i, curvatureFloor) ? 1 : 0;
  }
  return { position, real, imaginary, rational };
}

/** Where the last interpolation left its result; a shared pair of numbers, so that evaluating allocates nothing. */
export interface ComplexResult {
  real: number;
  imaginary: number;
}

/**
 * Value between samples `index` and `index + 1`, both of one stretch `first` to `last`.
 *
 * At the ends of a stretch the one interpolant there is serves alone; a stretch of two samples gives a straight line.
 */
export function interpolateBetween(
  interpolation: Interpolation,
  stretch: { readonly first: number; readonly last: number },
  index: number,
  position: number,
  result: ComplexResult,
): void {
  const hasLeft = index > stretch.first;
  const hasRight = index + 1 < stretch.last;
  if (!hasLeft && !hasRight) {
    interpolateStraight(interpolation, index, position, result);
    return;
  }
  if (!hasLeft) {
    interpolateAround(interpolation, index + 1, position, result);
    return;
  }
  interpolateAround(interpolation, index, position, result);
  if (!hasRight) return;
  const { real, imaginary } = result;
  interpolateAround(interpolation, index + 1, position, result);
  // Neville's weights, from the outer samples: two parabolas blended so are the cubic through all four.
  const start = at(interpolation.position, index - 1);
  const weight = (position - start) / (at(interpolation.position, index + 2) - start);
  result.real = real + weight * (result.real - real);
  result.imaginary = imaginary + weight * (result.imaginary - imaginary);
}

function interpolateStraight(
  { position, real, imaginary }: Interpolation,
  index: number,
  x: number,
  result: ComplexResult,
) {
  const start = at(position, index);
  const weight = (x - start) / (at(position, index + 1) - start);
  result.real = at(real, index) * (1 - weight) + at(real, index + 1) * weight;
  result.imaginary = at(imaginary, index) * (1 - weight) + at(imaginary, index + 1) * weight;
}

/** The interpolant through sample `centre` and its two neighbours, in barycentric form. */
function interpolateAround(
  { position, real, imaginary, rational }: Interpolation,
  centre: number,
  x: number,
  result: ComplexResult,
): void {
  const d0 = x - at(position, centre - 1);
  const d1 = x - at(position, centre);
  const d2 = x - at(position, centre + 1);
  const real0 = at(real, centre - 1);
  const real1 = at(real, centre);
  const real2 = at(real, centre + 1);
  const imaginary0 = at(imaginary, centre - 1);
  const imaginary1 = at(imaginary, centre);
  const imaginary2 = at(imaginary, centre + 1);
  if (rational[centre] === 0) {
    const span01 = d0 - d1;
    const span12 = d1 - d2;
    const w0 = (d1 * d2) / (span01 * (span01 + span12));
    const w1 = -(d0 * d2) / (span01 * span12);
    const w2 = (d0 * d1) / (span12 * (span01 + span12));
    result.real = w0 * real0 + w1 * real1 + w2 * real2;
    result.imaginary = w0 * imaginary0 + w1 * imaginary1 + w2 * imaginary2;
    return;
  }
  // r(x) = Σ wk yk / (x - xk) over Σ wk / (x - xk) with w = (1, 1, 1) × (y0, y1, y2): the only weights that leave both
  // numerator and denominator of degree one. Multiplied through by all (x - xk), so that a sample's own place is no pole.
  const weight0 = d1 * d2;
  const weight1 = d0 * d2;
  const weight2 = d0 * d1;
  const u0 = weight0 * (real2 - real1);
  const v0 = weight0 * (imaginary2 - imaginary1);
  const u1 = weight1 * (real0 - real2);
  const v1 = weight1 * (imaginary0 - imaginary2);
  const u2 = weight2 * (real1 - real0);
  const v2 = weight2 * (imaginary1 - imaginary0);
  const bottomReal = u0 + u1 + u2;
  const bottomImaginary = v0 + v1 + v2;
  const topReal = u0 * real0 - v0 * imaginary0 + u1 * real1 - v1 * imaginary1 + u2 * real2 - v2 * imaginary2;
  const topImaginary = u0 * imaginary0 + v0 * real0 + u1 * imaginary1 + v1 * real1 + u2 * imaginary2 + v2 * real2;
  const norm = bottomReal * bottomReal + bottomImaginary * bottomImaginary;
  result.real = (topReal * bottomReal + topImaginary * bottomImaginary) / norm;
  result.imaginary = (topImaginary * bottomReal - topReal * bottomImaginary) / norm;
}

/**
 * Value at a position of the rational function of degree one over one through three samples.
 *
 * @returns how much larger than a sample's own noise the noise of (value - sample there) is, as for a parabola
 */
export function rationalThrough(
  position: Column,
  real: Column,
  imaginary: Column,
  [i0, i1, i2]: readonly [number, number, number],
  x: number,
  result: ComplexResult,
): number {
  const pick = (column: Column) => Float64Array.of(at(column, i0), at(column, i1), at(column, i2));
  const places = pick(position);
  const three = { position: places, real: pick(real), imaginary: pick(imaginary) };
  interpolateAround({ ...three, rational: Uint8Array.of(0, 1, 0) }, 1, x, result);
  const [x0, x1, x2] = places as unknown as [number, number, number];
  const w0 = ((x - x1) * (x - x2)) / ((x0 - x1) * (x0 - x2));
  const w1 = ((x - x0) * (x - x2)) / ((x1 - x0) * (x1 - x2));
  const w2 = ((x - x0) * (x - x1)) / ((x2 - x0) * (x2 - x1));
  return Math.sqrt(1 + w0 * w0 + w1 * w1 + w2 * w2);
}

/** Whether the rational interpolant around a sample has enough curvature to be defined and no pole near its samples. */
function isRationalSound(position: Column, real: Column, imaginary: Column, centre: number, floor: number): boolean {
  const x0 = at(position, centre - 1) - at(position, centre);
  const x2 = at(position, centre + 1) - at(position, centre);
  const real0 = at(real, centre - 1);
  const real1 = at(real, centre);
  const real2 = at(real, centre + 1);
  const imaginary0 = at(imaginary, centre - 1);
  const imaginary1 = at(imaginary, centre);
  const imaginary2 = at(imaginary, centre + 1);
  const share = -x0 / (x2 - x0);
  const bendReal = real0 + share * (real2 - real0) - real1;
  const bendImaginary = imaginary0 + share * (imaginary2 - imaginary0) - imaginary1;
  if (!(bendReal * bendReal + bendImaginary * bendImaginary > floor * floor)) return false;
  // The denominator, with the centre at 0, is slope·x + offset: w0 = y2 - y1, w1 = y0 - y2, w2 = y1 - y0, Σ w = 0.
  const slopeReal = (real2 - real1) * x0 + (real1 - real0) * x2;
  const slopeImaginary = (imaginary2 - imaginary1) * x0 + (imaginary1 - imaginary0) * x2;
  const offsetReal = (real0 - real2) * x0 * x2;
  const offsetImaginary = (imaginary0 - imaginary2) * x0 * x2;
  const norm = slopeReal * slopeReal + slopeImaginary * slopeImaginary;
  if (norm === 0) return true;
  const poleReal = -(offsetReal * slopeReal + offsetImaginary * slopeImaginary) / norm;
  const poleImaginary = -(offsetImaginary * slopeReal - offsetReal * slopeImaginary) / norm;
  const beyond = Math.max(0, x0 - poleReal, poleReal - x2);
  const margin = (POLE_MARGIN * (x2 - x0)) / 2;
  return beyond * beyond + poleImaginary * poleImaginary > margin * margin;
}
