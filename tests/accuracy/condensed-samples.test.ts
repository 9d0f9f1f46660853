/**
 * Samples condensed to nodes leave the sums of a fit as they are: held against the plain sums over all samples, and the
 * polynomials behind them against their definition (orthogonal over even places, their quadrature exact to degree 7).
 */
import { describe, expect, test } from "vitest";
import { condensedSamples } from "../../packages/core/src/curve/fit/condensed-samples.js";
import { newFitRoom } from "../../packages/core/src/curve/fit/fit-room.js";
import { GAUSS_NODES, gramBlock } from "../../packages/core/src/numbers/gram-polynomials.js";
import { seededNormal } from "../support/seeded-noise.js";

const sumOf = (numbers: Iterable<number>) => [...numbers].reduce((sum, value) => sum + value, 0);
const indices = (count: number) => Array.from({ length: count }, (_, i) => i);

describe.each([8, 16, 32])("over a block of %i samples", (length) => {
  const { polynomials, nodes, weights, atNodes } = gramBlock(length);
  const valueAt = (degree: number, i: number) => polynomials[degree * length + i] as number;

  test("the polynomials of degree 0 to 5 are orthogonal, and their squares add up to 1", () => {
    for (const a of indices(6)) {
      for (const b of indices(6)) {
        const product = sumOf(indices(length).map((i) => valueAt(a, i) * valueAt(b, i)));
        expect(product).toBeCloseTo(a === b ? 1 : 0, 12);
      }
    }
  });

  test.each(indices(8))("the nodes give the sum of the powers of degree %i", (degree) => {
    const power = (place: number) => ((2 * place) / (length - 1) - 1) ** degree;
    const atAll = sumOf(indices(length).map(power));
    const atFew = sumOf(Array.from(nodes, (node, k) => (weights[k] as number) * power(node)));
    expect(atFew).toBeCloseTo(atAll, 11);
  });

  test("a cubic told by its parts has its own values at the nodes", () => {
    const cubic = (place: number) => 1 + 0.5 * place - 0.1 * place ** 2 + 0.01 * place ** 3;
    const parts = indices(GAUSS_NODES).map((degree) =>
      sumOf(indices(length).map((i) => valueAt(degree, i) * cubic(i))),
    );
    nodes.forEach((node, k) => {
      const told = sumOf(parts.map((part, degree) => part * (atNodes[k * GAUSS_NODES + degree] as number)));
      expect(told / cubic(node)).toBeCloseTo(1, 10);
    });
  });
});

describe("condensed samples", () => {
  const COUNT = 801;
  const NOISE = 0.001;
  /** A dip of Q 20 as seen from the ends of its sweep. */
  const dip = (place: number) => ({
    real: 1 / (1 + (8 * place) ** 2) - 0.5,
    imaginary: (8 * place) / (1 + (8 * place) ** 2),
  });
  const normal = seededNormal(4);
  const place = Float64Array.from({ length: COUNT }, (_, i) => (2 * i) / (COUNT - 1) - 1);
  const samples = {
    place,
    real: place.map((x) => dip(x).real + NOISE * normal()),
    imaginary: place.map((x) => dip(x).imaginary + NOISE * normal()),
    precision: place.map(() => 1 / NOISE),
    isReal: false,
  };
  const condensed = condensedSamples(samples, newFitRoom());
  type Samples = typeof samples | typeof condensed;

  /** Squares that a function leaves, the dip moved and deepened a little. */
  const squaresOf = ({ place: places, real, imaginary, precision }: Samples, shift: number, scale: number) =>
    sumOf(
      Array.from(places, (x, i) => {
        const { real: wantedReal, imaginary: wantedImaginary } = dip(x - shift);
        const square =
          ((real[i] as number) - scale * wantedReal) ** 2 + ((imaginary[i] as number) - scale * wantedImaginary) ** 2;
        return square * (precision[i] as number) ** 2;
      }),
    );

  test("are a fraction of them", () => {
    expect(condensed.place.length).toBeLessThan(COUNT / 3);
  });

  test("miss one function by as much more than another as all samples do", () => {
    const moves: readonly [number, number][] = [
      [0.0005, 1],
      [-0.001, 1],
      [0, 1.002],
      [0.001, 0.998],
    ];
    const gain = (of: Samples, [shift, scale]: readonly [number, number]) =>
      squaresOf(of, shift, scale) - squaresOf(of, 0, 1);
    for (const move of moves) {
      const wanted = gain(samples, move);
      expect(Math.abs(gain(condensed, move) - wanted)).toBeLessThan(0.02 * Math.abs(wanted) + 0.1);
    }
  });

  test("keep samples as they are where the curve is too sharp for a block", () => {
    const sharp = samples.real.slice();
    sharp[400] = (sharp[400] as number) + 0.1;
    const kept = condensedSamples({ ...samples, real: sharp }, newFitRoom());
    expect(Array.from(kept.place)).toContain(place[400]);
    expect(Array.from(kept.real)).toContain(sharp[400]);
  });

  test("of a sweep too short for many blocks are the samples themselves", () => {
    const few = (column: Float64Array) => column.slice(0, 101);
    const short = {
      place: few(place),
      real: few(samples.real),
      imaginary: few(samples.imaginary),
      precision: few(samples.precision),
      isReal: false,
    };
    expect(Array.from(condensedSamples(short, newFitRoom()).real)).toEqual(Array.from(short.real));
  });
});
