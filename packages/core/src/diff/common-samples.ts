import { at } from "../column.js";
import { type Curve, reflectionAt } from "../curve/curve.js";

/** Two vector sweeps at the same frequencies: Γ before and after, over their common range. */
export interface CommonSamples {
  readonly frequencyHz: Float64Array;
  readonly beforeReal: Float64Array;
  readonly beforeImaginary: Float64Array;
  readonly afterReal: Float64Array;
  readonly afterImaginary: Float64Array;
}

const MOST_SAMPLES = 400;

/** Both curves at the first one's sample frequencies, thinned evenly, where both were swept. */
export function commonSamples(before: Curve, after: Curve): CommonSamples {
  const axis = before.sweep.frequencyHz;
  const rows: number[][] = [];
  const every = Math.max(1, Math.floor(axis.length / MOST_SAMPLES));
  for (let i = 0; i < axis.length; i += every) {
    const frequency = at(axis, i);
    const first = reflectionAt(before, frequency);
    const second = reflectionAt(after, frequency);
    if (first === null || second === null) continue;
    rows.push([frequency, first.real, first.imaginary, second.real, second.imaginary]);
  }
  return samplesFrom(rows);
}

/** The same samples with another curve in the place of `before`, where it is known. */
export function replaceBefore(
  samples: CommonSamples,
  reflection: (frequencyHz: number) => { real: number; imaginary: number } | null,
): CommonSamples {
  const rows: number[][] = [];
  samples.frequencyHz.forEach((frequency, i) => {
    const value = reflection(frequency);
    if (value !== null)
      rows.push([frequency, value.real, value.imaginary, at(samples.afterReal, i), at(samples.afterImaginary, i)]);
  });
  return samplesFrom(rows);
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
