import { at, type Column, medianOf } from "../../numbers/column.js";
import type { Stretch } from "../samples/stretches.js";

/** A sample must depart from its neighbours by this many times the usual departure, and by this much in Γ, to stand alone. */
const DEPARTURE_RATIO = 12;
const LEAST_DEPARTURE = 0.03;
/** With the sample put right, its neighbours must be calm: within this many times the usual, or this share of its size. */
const CALM_RATIO = 5;
const CALM_SHARE = 0.15;
const FEWEST_SAMPLES = 12;

/**
 * Samples that stand alone: broadcast interference, a contact that opened for a moment. Put right in the columns given, by
 * the cubic through two neighbours on each side.
 *
 * A dip of the antenna, however narrow, takes its neighbours along; what touches one sample only is named and left out,
 * and a finer sweep would tell.
 *
 * @returns indices of the samples put right
 */
export function mendSpikes(
  position: Column,
  real: Float64Array,
  imaginary: Float64Array,
  stretches: readonly Stretch[],
): readonly number[] {
  const mended: number[] = [];
  for (const { first, last } of stretches) {
    if (last - first + 1 < FEWEST_SAMPLES) continue;
    const departures = departuresOf(position, real, imaginary, first + 2, last - 2);
    if (departures === null) continue;
    const usual = medianOf(departures.slice());
    const limit = Math.max(LEAST_DEPARTURE, DEPARTURE_RATIO * usual);
    for (let i = first + 2; i <= last - 2; i++) {
      const size = departures[i - first - 2] as number;
      if (size < limit || size < neighbouring(departures, i - first - 2)) continue;
      const before = { real: at(real, i), imaginary: at(imaginary, i) };
      real[i] = cubicAt(position, real, i);
      imaginary[i] = cubicAt(position, imaginary, i);
      const calm = Math.max(CALM_SHARE * size, CALM_RATIO * usual);
      const neighbours = [i - 2, i - 1, i + 1, i + 2].filter((k) => k >= first + 2 && k <= last - 2);
      if (neighbours.every((k) => departureAt(position, real, imaginary, k) <= calm)) mended.push(i);
      else {
        real[i] = before.real;
        imaginary[i] = before.imaginary;
      }
    }
  }
  return mended;
}

/**
 * The same for ρ alone, by its square: where Γ passes by 0, ρ turns sharply from one sample to the next and its square does not, also
 * where few digits were printed.
 */
export function mendScalarSpikes(
  position: Column,
  reflectionMagnitude: Float64Array,
  stretches: readonly Stretch[],
): readonly number[] {
  const square = reflectionMagnitude.map((rho) => rho * rho);
  const mended = mendSpikes(position, square, new Float64Array(square.length), stretches);
  for (const i of mended) reflectionMagnitude[i] = Math.sqrt(Math.max(0, at(square, i)));
  return mended;
}

const neighbouring = (sizes: Column, place: number) => Math.max(sizes[place - 1] ?? 0, sizes[place + 1] ?? 0);

/** null where none is large enough for a sample to stand alone. */
function departuresOf(
  position: Column,
  real: Column,
  imaginary: Column,
  first: number,
  last: number,
): Float64Array | null {
  let i = first;
  while (i <= last && !(departureAt(position, real, imaginary, i) >= LEAST_DEPARTURE)) i++;
  if (i > last) return null;
  return Float64Array.from({ length: last - first + 1 }, (_, k) => departureAt(position, real, imaginary, first + k));
}

function departureAt(position: Column, real: Column, imaginary: Column, index: number): number {
  setCubicWeights(position, index);
  const x = at(real, index) - weightedAround(real, index);
  const y = at(imaginary, index) - weightedAround(imaginary, index);
  return Math.sqrt(x * x + y * y);
}

function cubicAt(position: Column, values: Column, index: number): number {
  setCubicWeights(position, index);
  return weightedAround(values, index);
}

/**
 * Weights of the two samples before one and of the two after it, and where those four lie beside it; kept, so that looking
 * at a sample allocates nothing.
 */
const cubic = { twoBefore: 0, before: 0, after: 0, twoAfter: 0, a: 0, b: 0, c: 0, d: 0 };

/** Sets them to what gives the cubic through those four at the sample (Lagrange's form). */
function setCubicWeights(position: Column, index: number): void {
  const x = at(position, index);
  const a = at(position, index - 2) - x;
  const b = at(position, index - 1) - x;
  const c = at(position, index + 1) - x;
  const d = at(position, index + 2) - x;
  // Of evenly spaced samples all have the same.
  if (a === cubic.a && b === cubic.b && c === cubic.c && d === cubic.d) return;
  cubic.a = a;
  cubic.b = b;
  cubic.c = c;
  cubic.d = d;
  cubic.twoBefore = (b * c * d) / ((b - a) * (a - c) * (a - d));
  cubic.before = (a * c * d) / ((a - b) * (b - c) * (b - d));
  cubic.after = (a * b * d) / ((a - c) * (c - b) * (c - d));
  cubic.twoAfter = (a * b * c) / ((a - d) * (d - b) * (d - c));
}

const weightedAround = (values: Column, index: number): number =>
  cubic.twoBefore * at(values, index - 2) +
  cubic.before * at(values, index - 1) +
  cubic.after * at(values, index + 1) +
  cubic.twoAfter * at(values, index + 2);
