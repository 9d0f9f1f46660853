import { at } from "../column.js";

/** A pivot that elimination leaves smaller than this share of what it was says that an unknown is not determined. */
const LEAST_PIVOT = 1e-13;

/** A system of linear equations with complex numbers; row r holds `size` factors from r · (size + 1) on, then its right side. */
export interface LinearSystem {
  readonly size: number;
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
}

export function emptySystem(size: number): LinearSystem {
  return { size, real: new Float64Array(size * (size + 1)), imaginary: new Float64Array(size * (size + 1)) };
}

/**
 * Solves normal equations in place: afterwards the right side of row r is unknown r. Their matrix is Hermitian and positive
 * definite, so that elimination needs no pivoting.
 *
 * @returns whether every unknown is determined
 */
export function solvePositive({ size, real, imaginary }: LinearSystem): boolean {
  const width = size + 1;
  const diagonals = Float64Array.from({ length: size }, (_, r) => at(real, r * width + r));
  for (let pivot = 0; pivot < size; pivot++) {
    const start = pivot * width;
    const diagonal = at(real, start + pivot);
    if (!(diagonal > LEAST_PIVOT * at(diagonals, pivot))) return false;
    for (let c = pivot; c < width; c++) {
      real[start + c] = at(real, start + c) / diagonal;
      imaginary[start + c] = at(imaginary, start + c) / diagonal;
    }
    for (let r = pivot + 1; r < size; r++) subtractRow(real, imaginary, r * width, start, pivot, width);
  }
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
  return true;
}

/** Takes the row at `start`, times what the row at `row` holds in column `pivot`, from that row. */
function subtractRow(
  real: Float64Array,
  imaginary: Float64Array,
  row: number,
  start: number,
  pivot: number,
  width: number,
): void {
  const factorReal = at(real, row + pivot);
  const factorImaginary = at(imaginary, row + pivot);
  for (let c = pivot; c < width; c++) {
    const x = at(real, start + c);
    const y = at(imaginary, start + c);
    real[row + c] = at(real, row + c) - factorReal * x + factorImaginary * y;
    imaginary[row + c] = at(imaginary, row + c) - factorReal * y - factorImaginary * x;
  }
}
