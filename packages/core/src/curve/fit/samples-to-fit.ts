import { at, type Column } from "../../numbers/column.js";
import type { Room } from "../../numbers/work-columns.js";
import type { Stretch } from "../samples/stretches.js";
import type { FitSamples } from "./fit-moments.js";
import type { FitRoom } from "./fit-room.js";
import { unknownsOf, type Values } from "./rational.js";
import type { Residuals } from "./residuals.js";

/** Columns to be fitted, of which a stretch is a part. */
export interface FitColumns {
  readonly position: Column;
  readonly real: Column;
  /** null for a quantity that is real */
  readonly imaginary: Column | null;
  /** Noise of each sample over the noise of one of weight 1; null where all are alike */
  readonly weights: Column | null;
}

/** How positions in a stretch are fitted: as (position - middle) / half. */
export function scaleOf(position: Column, { first, last }: Stretch): { middle: number; half: number } {
  const [low, high] = [at(position, first), at(position, last)];
  return { middle: (low + high) / 2, half: (high - low) / 2 };
}

/** Every so many samples of a stretch, copied into columns to work in. */
export function samplesOf(
  columns: FitColumns,
  stretch: Stretch,
  noise: number,
  every: number,
  columnsFor: Room<4>,
): FitSamples {
  const { weights } = columns;
  const { first, last } = stretch;
  const { middle, half } = scaleOf(columns.position, stretch);
  const [place, real, imaginary, precision] = columnsFor(Math.floor((last - first) / every) + 1);
  const even = 1 / noise;
  for (let k = 0; k < place.length; k++) {
    const i = first + k * every;
    place[k] = (at(columns.position, i) - middle) / half;
    real[k] = at(columns.real, i);
    imaginary[k] = columns.imaginary === null ? 0 : at(columns.imaginary, i);
    precision[k] = weights === null ? even : 1 / (noise * at(weights, i));
  }
  return { place, real, imaginary, precision, isReal: columns.imaginary === null };
}

/** Columns for values in a room that is kept. */
export function valuesIn(columnsFor: Room<4>, length: number): Values {
  const [real, imaginary, bottomReal, bottomImaginary] = columnsFor(length);
  return { real, imaginary, bottomReal, bottomImaginary };
}

/** What a fit leaves of each sample, in units of the noise. */
export function residualsOf(values: Values, samples: FitSamples, order: number, room: FitRoom): Residuals {
  const [real, imaginary] = room.residuals(samples.place.length);
  for (let i = 0; i < real.length; i++) {
    const precision = at(samples.precision, i);
    real[i] = (at(samples.real, i) - at(values.real, i)) * precision;
    imaginary[i] = (at(samples.imaginary, i) - at(values.imaginary, i)) * precision;
  }
  return { real, imaginary, parts: partsOf(samples), unknowns: unknownsOf(order) };
}

/** Sum of the squares that a fit leaves, in units of the noise. */
export function squaresLeft(values: Values, samples: FitSamples): number {
  let sum = 0;
  for (let i = 0; i < samples.place.length; i++) {
    const real = at(samples.real, i) - at(values.real, i);
    const imaginary = at(samples.imaginary, i) - at(values.imaginary, i);
    const precision = at(samples.precision, i);
    sum += (real * real + imaginary * imaginary) * precision * precision;
  }
  return sum;
}

/** Numbers for each sample. */
export const partsOf = ({ isReal }: FitSamples): 1 | 2 => (isReal ? 1 : 2);
