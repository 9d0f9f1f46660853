import { at } from "./column.js";

/** A pivot that elimination leaves smaller than this share of what it was says that an unknown is not determined. */
const LEAST_PIVOT = 1e-13;

/**
 * A system of linear equations with complex numbers whose matrix is Hermitian; row r holds `size` factors from r · (size + 1)
 * on, then its right side. What stands left of the diagonal is known from what stands above it, and not looked at.
 */
export interface LinearSystem {
  readonly size: number;
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  /** What each row was divided by in elimination */
  readonly pivots: Float64Array;
}

export function emptySystem(size: number): LinearSystem {
  const cells = size * (size + 1);
  return {
    size,
    real: new Float64Array(cells),
    imaginary: new Float64Array(cells),
    pivots: new Float64Array(size),
  };
}

export const copyOf = ({ size, real, imaginary, pivots }: LinearSystem): LinearSystem => ({
  size,
  real: real.slice(),
  imaginary: imaginary.slice(),
  pivots: pivots.slice(),
});

/**
 * Solves normal equations in place: afterwards the right side of row r is unknown r. Their matrix is positive definite, so
 * that elimination needs no pivoting.
 *
 * @returns whether every unknown is determined
 */
export function solvePositive(system: LinearSystem): boolean {
  if (!eliminate(system)) return false;
  substitute(system);
  return true;
}

/**
 * Variance of the real part of a weighted sum of the unknowns of a system that has been solved, where noise of variance 1 is in each part
 * of what it was made of.
 *
 * @param weights of the unknowns, in their order
 */
export function varianceOfSum(
  { size, real, imaginary, pivots }: LinearSystem,
  weights: { readonly real: Float64Array; readonly imaginary: Float64Array },
): number {
  const width = size + 1;
  // The triangle's equations with the conjugate weights on the right.
  const x = weights.real.slice();
  const y = weights.imaginary.map((value) => -value);
  let variance = 0;
  for (let k = 0; k < size; k++) {
    const [u, v] = [at(x, k), at(y, k)];
    variance += (u * u + v * v) / at(pivots, k);
    for (let j = k + 1; j < size; j++) {
      const [a, b] = [at(real, k * width + j), at(imaginary, k * width + j)];
      x[j] = at(x, j) - (a * u + b * v);
      y[j] = at(y, j) - (a * v - b * u);
    }
  }
  return variance;
}

function eliminate({ size, real, imaginary, pivots }: LinearSystem): boolean {
  const width = size + 1;
  for (let r = 0; r < size; r++) pivots[r] = at(real, r * width + r);
  for (let pivot = 0; pivot < size; pivot++) {
    const start = pivot * width;
    const diagonal = at(real, start + pivot);
    if (!(diagonal > LEAST_PIVOT * at(pivots, pivot))) return false;
    pivots[pivot] = diagonal;
    for (let r = pivot + 1; r < size; r++) subtractRow(real, imaginary, r, pivot, width);
    for (let c = start + pivot; c < start + width; c++) {
      real[c] = at(real, c) / diagonal;
      imaginary[c] = at(imaginary, c) / diagonal;
    }
  }
  return true;
}

function substitute({ size, real, imaginary }: LinearSystem): void {
  const width = size + 1;
  for (let pivot = size - 1; pivot > 0; pivot--) {
    for (let r = 0; r < pivot; r++) {
      const x = at(real, pivot * width + size);
      const y = at(imaginary, pivot * width + size);
      const u = at(real, r * width + pivot);
      const v = at(imaginary, r * width + pivot);
      real[r * width + size] = at(real, r * width + size) - u * x + v * y;
      imaginary[r * width + size] = at(imaginary, r * width + size) - u * y - v * x;
    }
  }
}

/** Takes from row `r` that of the pivot, times what would stand below the pivot there over the pivot. */
function subtractRow(real: Float64Array, imaginary: Float64Array, r: number, pivot: number, width: number): void {
  const start = pivot * width;
  const row = r * width;
  const diagonal = at(real, start + pivot);
  const factorReal = at(real, start + r) / diagonal;
  const factorImaginary = -at(imaginary, start + r) / diagonal;
  for (let c = r; c < width; c++) {
    const x = at(real, start + c);
    const y = at(imaginary, start + c);
    real[row + c] = at(real, row + c) - factorReal * x + factorImaginary * y;
    imaginary[row + c] = at(imaginary, row + c) - factorReal * y - factorImaginary * x;
  }
}
