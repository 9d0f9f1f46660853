import { at, type Column } from "../../numbers/column.js";

/**
 * Weights that give the value of a cubic, fitted to a sample and its neighbours on both sides, at that sample: least
 * squares by polynomials orthogonal over the samples.
 *
 * Source: G. E. Forsythe, J. SIAM 5, 1957, p. 74 (generation and use of orthogonal polynomials; from memory).
 */
export function unevenWindow(position: Column, index: number, halfWidth: number): Float64Array {
  const count = 2 * halfWidth + 1;
  const start = index - halfWidth;
  const centre = at(position, index);
  const scale = (at(position, index + halfWidth) - at(position, start)) / 2;
  const t = Float64Array.from({ length: count }, (_, k) => (at(position, start + k) - centre) / scale);
  const coefficients = new Float64Array(count);
  let previous = new Float64Array(count);
  let current = new Float64Array(count).fill(1);
  let previousAtCentre = 0;
  let currentAtCentre = 1;
  let previousNorm = 1;
  for (let degree = 0; degree <= 3; degree++) {
    let norm = 0;
    let mean = 0;
    for (let k = 0; k < count; k++) {
      const square = at(current, k) ** 2;
      norm += square;
      mean += square * at(t, k);
    }
    for (let k = 0; k < count; k++) {
      coefficients[k] = at(coefficients, k) + (currentAtCentre * at(current, k)) / norm;
    }
    const shift = mean / norm;
    const ratio = degree === 0 ? 0 : norm / previousNorm;
    const next = Float64Array.from(t, (value, k) => (value - shift) * at(current, k) - ratio * at(previous, k));
    const nextAtCentre = -shift * currentAtCentre - ratio * previousAtCentre;
    previous = current;
    current = next;
    previousAtCentre = currentAtCentre;
    currentAtCentre = nextAtCentre;
    previousNorm = norm;
  }
  return coefficients;
}
