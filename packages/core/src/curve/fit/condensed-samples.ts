import { at } from "../../numbers/column.js";
import { GAUSS_NODES, type GramBlock, gramBlock } from "../../numbers/gram-polynomials.js";
import type { FitSamples } from "./fit-moments.js";
import type { FitRoom } from "./fit-room.js";

/** Blocks tried, the longest first; where none serves, samples are kept as they are. */
const BLOCK_LENGTHS = [32, 16, 8];
/** Blocks are so short that a sweep has more than this many of them: far more nodes than a fit has unknowns. */
const FEWEST_BLOCKS = 24;
/**
 * The next two polynomials that a block's nodes do not follow may hold this much, in units of the noise; noise alone passes
 * it once in a hundred thousand times (χ² with four degrees of freedom).
 */
const MOST_LEFT_OUT = 28;

/**
 * Fewer samples that stand for evenly spaced ones in a fit: a block in which the samples follow a cubic, within the noise, is
 * replaced by the values of that cubic at the nodes of Gauss's quadrature over the block. Any function that is a polynomial of
 * low degree within each block then misses the nodes by the same sum of squares as the samples, but for a constant.
 *
 * Blocks are shorter where the curve is more bent; in a sharp dip the samples stay.
 *
 * @param samples evenly spaced, of equal precision
 * @returns columns of the room
 */
export function condensedSamples(samples: FitSamples, room: FitRoom): FitSamples {
  const total = samples.place.length;
  const [places, reals, imaginaries, precisions] = room.condensed(total);
  const parts = room.blockParts;
  let kept = 0;
  const keep = (place: number, real: number, imaginary: number, precision: number) => {
    places[kept] = place;
    reals[kept] = real;
    imaginaries[kept] = imaginary;
    precisions[kept] = precision;
    kept++;
  };
  for (let start = 0; start < total; ) {
    const block = longestBlock(samples, start, parts);
    const precision = at(samples.precision, start);
    if (block === null) {
      keep(at(samples.place, start), at(samples.real, start), at(samples.imaginary, start), precision);
      start++;
      continue;
    }
    const { length, nodes, weights, atNodes } = block;
    const first = at(samples.place, start);
    const step = (at(samples.place, start + length - 1) - first) / (length - 1);
    for (let node = 0; node < GAUSS_NODES; node++) {
      let real = 0;
      let imaginary = 0;
      for (let degree = 0; degree < GAUSS_NODES; degree++) {
        const polynomial = at(atNodes, node * GAUSS_NODES + degree);
        real += polynomial * at(parts.real, degree);
        imaginary += polynomial * at(parts.imaginary, degree);
      }
      keep(first + at(nodes, node) * step, real, imaginary, precision * Math.sqrt(at(weights, node)));
    }
    start += length;
  }
  return {
    place: places.subarray(0, kept),
    real: reals.subarray(0, kept),
    imaginary: imaginaries.subarray(0, kept),
    precision: precisions.subarray(0, kept),
    isReal: samples.isReal,
  };
}

type Parts = FitRoom["blockParts"];

/** The longest block from a sample on that its nodes can stand for, with what of each polynomial it holds put into `parts`; null where none does. */
function longestBlock(samples: FitSamples, start: number, parts: Parts): GramBlock | null {
  const total = samples.place.length;
  for (const length of BLOCK_LENGTHS) {
    if (start + length > total || FEWEST_BLOCKS * length > total) continue;
    const block = gramBlock(length);
    tellParts(samples, start, block, parts);
    let leftOut = 0;
    for (let degree = GAUSS_NODES; degree < parts.real.length; degree++) {
      leftOut += at(parts.real, degree) ** 2 + at(parts.imaginary, degree) ** 2;
    }
    if (leftOut * at(samples.precision, start) ** 2 <= MOST_LEFT_OUT) return block;
  }
  return null;
}

/** The polynomials are even and odd in turn, so that two samples as far from the middle are looked at together. */
function tellParts(
  { real, imaginary }: FitSamples,
  start: number,
  { length, polynomials }: GramBlock,
  parts: Parts,
): void {
  const end = start + length - 1;
  for (let degree = 0; degree < parts.real.length; degree += 2) {
    let evenReal = 0;
    let evenImaginary = 0;
    let oddReal = 0;
    let oddImaginary = 0;
    for (let i = 0; 2 * i < length; i++) {
      const even = at(polynomials, degree * length + i);
      const odd = at(polynomials, (degree + 1) * length + i);
      const firstReal = at(real, start + i);
      const lastReal = at(real, end - i);
      const firstImaginary = at(imaginary, start + i);
      const lastImaginary = at(imaginary, end - i);
      evenReal += even * (firstReal + lastReal);
      evenImaginary += even * (firstImaginary + lastImaginary);
      oddReal += odd * (firstReal - lastReal);
      oddImaginary += odd * (firstImaginary - lastImaginary);
    }
    parts.real[degree] = evenReal;
    parts.imaginary[degree] = evenImaginary;
    parts.real[degree + 1] = oddReal;
    parts.imaginary[degree + 1] = oddImaginary;
  }
}
