/** A linear fit: values ≈ Σ coefficient · column. */
export interface LinearFit {
  readonly coefficients: readonly number[];
  /** Variances of the coefficients for residuals of variance 1 */
  readonly variances: readonly number[];
  readonly residuals: readonly number[];
  readonly residualSquares: number;
}

/** A column of which less than this share of its square is new beside those before it is one of their kind. */
const ALIKE = 1e-9;

/**
 * Least squares by columns, through the QR decomposition of Gram and Schmidt with reorthogonalisation.
 *
 * @param columns each as long as `values`
 * @returns null where a column follows from those before it
 */
export function leastSquares(columns: readonly (readonly number[])[], values: readonly number[]): LinearFit | null {
  const basis: number[][] = [];
  // Upper triangle: what of each column lies along each vector of the basis.
  const along = columns.map(() => columns.map(() => 0));
  for (const [k, column] of columns.entries()) {
    const left = [...column];
    const before = dot(left, left);
    for (let round = 0; round < 2; round++) {
      for (const [j, vector] of basis.entries()) {
        const share = dot(vector, left);
        (along[j] as number[])[k] = (along[j]?.[k] ?? 0) + share;
        takeOff(left, share, vector);
      }
    }
    const norm = Math.sqrt(dot(left, left));
    if (!(norm * norm > ALIKE * before)) return null;
    (along[k] as number[])[k] = norm;
    basis.push(left.map((value) => value / norm));
  }
  const residuals = [...values];
  const projections = basis.map((vector) => {
    const share = dot(vector, residuals);
    takeOff(residuals, share, vector);
    return share;
  });
  const inverse = invertedTriangle(along);
  return {
    coefficients: inverse.map((row) => dot(row, projections)),
    variances: inverse.map((row) => dot(row, row)),
    residuals,
    residualSquares: dot(residuals, residuals),
  };
}

/**
 * The small-sample criterion of Akaike for a fit by a constant and some columns: n ln(RSS / n) + 2K + 2K (K + 1) / (n - K - 1), K with
 * the variance. Source: C. M. Hurvich, C.-L. Tsai, Biometrika 76, 1989 (from memory; a test holds it to a table).
 *
 * @returns Infinity where there are too few values, or a column follows from others
 */
export function criterionOf(columns: readonly (readonly number[])[], values: readonly number[]): number {
  const fit = leastSquares([values.map(() => 1), ...columns], values);
  const n = values.length;
  const numbers = columns.length + 2;
  if (fit === null || n - numbers - 1 <= 0) return Number.POSITIVE_INFINITY;
  const squares = Math.max(fit.residualSquares, Number.MIN_VALUE);
  return n * Math.log(squares / n) + 2 * numbers + (2 * numbers * (numbers + 1)) / (n - numbers - 1);
}

/** The inverse of an upper triangle. */
function invertedTriangle(triangle: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const size = triangle.length;
  const inverse = triangle.map(() => triangle.map(() => 0));
  for (let k = 0; k < size; k++) {
    for (let i = k; i >= 0; i--) {
      let sum = i === k ? 1 : 0;
      for (let j = i + 1; j <= k; j++) sum -= (triangle[i]?.[j] ?? 0) * (inverse[j]?.[k] ?? 0);
      (inverse[i] as number[])[k] = sum / (triangle[i]?.[i] ?? 1);
    }
  }
  return inverse;
}

function dot(one: readonly number[], other: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += (one[i] as number) * (other[i] as number);
  return sum;
}

function takeOff(from: number[], share: number, vector: readonly number[]): void {
  for (let i = 0; i < from.length; i++) from[i] = (from[i] as number) - share * (vector[i] as number);
}
