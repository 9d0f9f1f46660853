/** Nodes of the quadrature; with them sums of polynomials up to degree 2 · 4 - 1 are exact. */
export const GAUSS_NODES = 4;
const HIGHEST_DEGREE = GAUSS_NODES + 1;

/** Polynomials that are orthogonal over evenly spaced samples, and the quadrature that belongs to them. */
export interface GramBlock {
  readonly length: number;
  /** Values at the samples, one degree after the other from 0 to 5, each with squares that add up to 1 */
  readonly polynomials: Float64Array;
  /** Places of the nodes, in steps from the first sample */
  readonly nodes: Float64Array;
  /** A sum over the samples is the sum over the nodes with these weights, for polynomials of degree 7 or less */
  readonly weights: Float64Array;
  /** Values at each node, of the degrees 0 to 3, one node after the other */
  readonly atNodes: Float64Array;
}

const blocks = new Map<number, GramBlock>();

/** The polynomials over a number of samples, 8 or more; made once. */
export function gramBlock(length: number): GramBlock {
  const known = blocks.get(length);
  if (known !== undefined) return known;
  const made = makeBlock(length);
  blocks.set(length, made);
  return made;
}

/*
 * Over the places x from -(L - 1) / 2 to (L - 1) / 2 the polynomials of leading coefficient 1 follow
 * p(k + 1) = x p(k) - b(k) p(k - 1), b(k) = k² (L² - k²) / (4 (4k² - 1)), and the squares of p(k) add up to L b(1) … b(k).
 *
 * Source: NIST Digital Library of Mathematical Functions, 18.19-18.22 (Hahn polynomials, of which these are the case
 * α = β = 0; from memory; a test holds the sums to what they should be).
 */
function makeBlock(length: number): GramBlock {
  const middle = (length - 1) / 2;
  const polynomials = new Float64Array((HIGHEST_DEGREE + 1) * length);
  for (let i = 0; i < length; i++) {
    for (const [degree, value] of normalisedAt(i - middle, length).entries()) polynomials[degree * length + i] = value;
  }
  // p(4) = x⁴ - (b1 + b2 + b3) x² + b1 b3
  const sum = ratioAt(1, length) + ratioAt(2, length) + ratioAt(3, length);
  const root = Math.sqrt(sum * sum - 4 * ratioAt(1, length) * ratioAt(3, length));
  const [inner, outer] = [Math.sqrt((sum - root) / 2), Math.sqrt((sum + root) / 2)];
  const places = [-outer, -inner, inner, outer];
  const values = places.map((place) => normalisedAt(place, length).subarray(0, GAUSS_NODES));
  return {
    length,
    polynomials,
    nodes: Float64Array.from(places, (place) => place + middle),
    // Christoffel's numbers.
    weights: Float64Array.from(values, (row) => 1 / row.reduce((squares, value) => squares + value * value, 0)),
    atNodes: Float64Array.from(values.flatMap((row) => [...row])),
  };
}

const ratioAt = (degree: number, length: number): number =>
  (degree ** 2 * (length ** 2 - degree ** 2)) / (4 * (4 * degree ** 2 - 1));

/** The polynomials of all degrees at a place, counted from the middle. */
function normalisedAt(place: number, length: number): Float64Array {
  const values = new Float64Array(HIGHEST_DEGREE + 1);
  let squares = length;
  let before = 0;
  let current = 1;
  for (let degree = 0; degree <= HIGHEST_DEGREE; degree++) {
    if (degree > 0) squares *= ratioAt(degree, length);
    values[degree] = current / Math.sqrt(squares);
    const next = place * current - (degree === 0 ? 0 : ratioAt(degree, length)) * before;
    before = current;
    current = next;
  }
  return values;
}
