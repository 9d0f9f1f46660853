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
    const departures: number[] = [];
    for (let i = first + 2; i <= last - 2; i++) departures.push(departureAt(position, real, imaginary, i));
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

function departureAt(position: Column, real: Column, imaginary: Column, index: number): number {
  return Math.hypot(
    at(real, index) - cubicAt(position, real, index),
    at(imaginary, index) - cubicAt(position, imaginary, index),
  );
}

/** Value at a sample of the cubic through the two samples before it and the two after. */
function cubicAt(position: Column, values: Column, index: number): number {
  const places = [index - 2, index - 1, index + 1, index + 2];
  const x = at(position, index);
  let sum = 0;
  for (const k of places) {
    let weight = 1;
    for (const other of places) {
      if (other !== k) weight *= (x - at(position, other)) / (at(position, k) - at(position, other));
    }
    sum += weight * at(values, k);
  }
  return sum;
}
