import { add, type Complex, complex, divide, magnitude, multiply, subtract } from "../../numbers/complex.js";
import type { NetworkParameter } from "./header.js";

/**
 * Reflection at one port of an n-port whose parameters are not S, with every other port ended in its own reference.
 *
 * @param matrix row by row, normalised to the references (Z / R, Y · R; H and G likewise)
 * @param port from 0
 * @returns Snn; NaN where the matrix is singular
 */
export function reflectionAtPort(
  matrix: readonly Complex[],
  ports: number,
  parameter: Exclude<NetworkParameter, "S">,
  port: number,
): Complex {
  if (parameter === "H" || parameter === "G") return reflectionOfHybrid(matrix, parameter, port);
  // S = (z + 1)⁻¹ (z - 1) = 1 - 2 (z + 1)⁻¹, and S = (1 + y)⁻¹ (1 - y) = 2 (1 + y)⁻¹ - 1.
  const shifted = matrix.map((value, i) => (i % (ports + 1) === 0 ? add(value, complex(1, 0)) : value));
  const inverse = diagonalOfInverse(shifted, ports, port);
  return parameter === "Z"
    ? complex(1 - 2 * inverse.real, -2 * inverse.imaginary)
    : complex(2 * inverse.real - 1, 2 * inverse.imaginary);
}

/** S11 or S22 of a two-port in normalised hybrid parameters (G is H with ports and kinds exchanged). */
function reflectionOfHybrid(matrix: readonly Complex[], parameter: "H" | "G", port: number): Complex {
  const [p11, p12, p21, p22] = matrix as [Complex, Complex, Complex, Complex];
  const one = complex(1, 0);
  const cross = multiply(p12, p21);
  const denominator = subtract(multiply(add(p11, one), add(p22, one)), cross);
  const first = subtract(multiply(subtract(p11, one), add(p22, one)), cross);
  const second = subtract(multiply(add(p11, one), subtract(p22, one)), cross);
  // H: port 1 is an impedance, port 2 an admittance; G the other way round. An admittance turns the sign of Γ.
  const isImpedance = (parameter === "H") === (port === 0);
  const value = divide(port === 0 ? first : second, denominator);
  return isImpedance ? value : complex(-value.real, -value.imaginary);
}

/** One diagonal entry of a matrix's inverse, by Gaussian elimination with row pivots on the matching unit column. */
function diagonalOfInverse(matrix: readonly Complex[], size: number, index: number): Complex {
  const rows = Array.from({ length: size }, (_, r) => [
    ...matrix.slice(r * size, (r + 1) * size),
    complex(r === index ? 1 : 0, 0),
  ]);
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let r = column + 1; r < size; r++) {
      if (magnitude(entry(rows, r, column)) > magnitude(entry(rows, pivot, column))) pivot = r;
    }
    [rows[column], rows[pivot]] = [rows[pivot] as Complex[], rows[column] as Complex[]];
    for (let r = 0; r < size; r++) {
      if (r === column) continue;
      const factor = divide(entry(rows, r, column), entry(rows, column, column));
      for (let c = column; c <= size; c++) {
        (rows[r] as Complex[])[c] = subtract(entry(rows, r, c), multiply(factor, entry(rows, column, c)));
      }
    }
  }
  return divide(entry(rows, index, size), entry(rows, index, index));
}

const entry = (rows: readonly Complex[][], row: number, column: number) => (rows[row] as Complex[])[column] as Complex;
