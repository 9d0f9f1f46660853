import { type Complex, complex, divide, multiply, scale, subtract } from "../numbers/complex.js";

/**
 * The impedance at the end of a line and the reflection coefficient Γ that it makes.
 * All reference impedances are real. Formulas: D. M. Pozar, Microwave Engineering, 4th ed., section 2.3 (the section
 * number from memory); IEC 60050-726 for the terms.
 */

/**
 * Reflection coefficient of an impedance: Γ = (Z - Z0) / (Z + Z0). An infinite impedance gives +1, NaN NaN.
 *
 * Source: Pozar, as above.
 *
 * @param impedance Ω
 * @param referenceOhms the reference impedance Z0, Ω, above 0
 * @example
 * ```ts
 * import { reflectionFromImpedance } from "@feedpoint/core";
 *
 * reflectionFromImpedance({ real: 100, imaginary: 0 }, 50).real; // → 0.333
 * ```
 */
export function reflectionFromImpedance(impedance: Complex, referenceOhms: number): Complex {
  const { real, imaginary } = impedance;
  const difference = real - referenceOhms;
  const sum = real + referenceOhms;
  const square = sum * sum + imaginary * imaginary;
  if (square > 0 && square < Number.POSITIVE_INFINITY) {
    return complex((difference * sum + imaginary * imaginary) / square, (imaginary * (sum - difference)) / square);
  }
  if (Math.abs(real) + Math.abs(imaginary) === Number.POSITIVE_INFINITY) return complex(1, 0);
  return divide(complex(difference, imaginary), complex(sum, imaginary));
}

/**
 * Impedance behind a reflection coefficient: Z = Z0 (1 + Γ) / (1 - Γ). Γ = 1 gives an infinite resistance.
 *
 * Source: Pozar, as above.
 *
 * @param referenceOhms the reference impedance Z0, Ω, above 0
 * @returns Ω
 */
export function impedanceFromReflection(reflection: Complex, referenceOhms: number): Complex {
  if (reflection.real === 1 && reflection.imaginary === 0) return complex(Number.POSITIVE_INFINITY, 0);
  const ratio = divide(
    complex(1 + reflection.real, reflection.imaginary),
    complex(1 - reflection.real, -reflection.imaginary),
  );
  return scale(ratio, referenceOhms);
}

/**
 * Reflection coefficient of an admittance: Γ = (1 - Y·Z0) / (1 + Y·Z0).
 *
 * @param admittance S
 * @param referenceOhms the reference impedance Z0, Ω, above 0
 */
export function reflectionFromAdmittance(admittance: Complex, referenceOhms: number): Complex {
  const normalised = scale(admittance, referenceOhms);
  return divide(
    complex(1 - normalised.real, -normalised.imaginary),
    complex(1 + normalised.real, normalised.imaginary),
  );
}

/**
 * Admittance of an impedance: 1 / Z.
 *
 * @param impedance Ω
 * @returns S; infinities or NaN for an impedance of 0
 */
export function admittanceFromImpedance(impedance: Complex): Complex {
  return divide(complex(1, 0), impedance);
}

/**
 * The same load seen against another reference impedance.
 *
 * With r = (Zb - Za) / (Zb + Za): Γb = (Γa - r) / (1 - r·Γa). Total reflection stays total reflection.
 *
 * Follows from {@link impedanceFromReflection} and {@link reflectionFromImpedance}.
 *
 * @param fromOhms the reference impedance that `reflection` refers to, Ω
 * @param toOhms the wanted reference impedance, Ω
 */
export function changeReference(reflection: Complex, fromOhms: number, toOhms: number): Complex {
  if (fromOhms === toOhms) return reflection;
  const step = complex((toOhms - fromOhms) / (toOhms + fromOhms), 0);
  return divide(subtract(reflection, step), subtract(complex(1, 0), multiply(step, reflection)));
}
