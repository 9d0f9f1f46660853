import { median } from "simple-statistics";
import { at, type Column } from "../column.js";
import type { Stretch } from "./stretches.js";

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
    if (!departures.some((size) => size >= LEAST_DEPARTURE)) continue;
    const usual = median(departures);
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

const neighbouring = (sizes: readonly number[], place: number) =>
  Math.max(sizes[place - 1] ?? 0, sizes[place + 1] ?? 0);

function departuresOf(position: Column, real: Column, imaginary: Column, first: number, last: number): number[] {
  const departures: number[] = [];
  for (let i = first; i <= last; i++) departures.push(departureAt(position, real, imaginary, i));
  return departures;
}

function departureAt(position: Column, real: Column, imaginary: Column, index: number): number {
  const x = at(real, index) - cubicAt(position, real, index);
  const y = at(imaginary, index) - cubicAt(position, imaginary, index);
  return Math.sqrt(x * x + y * y);
}

/** Value at a sample of the cubic through the two samples before it and the two after (Lagrange's form). */
function cubicAt(position: Column, values: Column, index: number): number {
  const x = at(position, index);
  const a = at(position, index - 2) - x;
  const b = at(position, index - 1) - x;
  const c = at(position, index + 1) - x;
  const d = at(position, index + 2) - x;
  return (
    (-at(values, index - 2) * (b * c * d)) / ((a - b) * (a - c) * (a - d)) +
    (-at(values, index - 1) * (a * c * d)) / ((b - a) * (b - c) * (b - d)) +
    (-at(values, index + 1) * (a * b * d)) / ((c - a) * (c - b) * (c - d)) +
    (-at(values, index + 2) * (a * b * c)) / ((d - a) * (d - b) * (d - c))
  );
}
