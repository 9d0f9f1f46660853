import { type Complex, complex, divide, multiply, scale, subtract } from "../numbers/complex.js";

/**
 * Reflection at the end of a line: the reflection coefficient Γ, its magnitude ρ, and what follows from them.
 * All reference impedances are real. Formulas: D. M. Pozar, Microwave Engineering, 4th ed., section 2.3 (the section
 * number from memory); IEC 60050-726 for the terms.
 */

/**
 * Standing wave ratio that belongs to a reflection magnitude: (1 + ρ) / (1 - ρ).
 *
 * Source: D. M. Pozar, Microwave Engineering, 4th ed., section 2.3 (the number from memory).
 *
 * @param reflectionMagnitude ρ, 0 or more
 * @returns SWR, 1 to Infinity; Infinity for total reflection and beyond (ρ ≥ 1: noise or calibration error)
 * @see {@link reflectionMagnitudeFromSwr}, its inverse
 * @example
 * ```ts
 * import { swrFromReflectionMagnitude } from "@feedpoint/core";
 *
 * swrFromReflectionMagnitude(0.5); // → 3
 * ```
 */
export function swrFromReflectionMagnitude(reflectionMagnitude: number): number {
  return reflectionMagnitude >= 1 ? Number.POSITIVE_INFINITY : (1 + reflectionMagnitude) / (1 - reflectionMagnitude);
}

/**
 * Reflection magnitude that belongs to a standing wave ratio: (SWR - 1) / (SWR + 1).
 *
 * Source: Pozar, as of {@link swrFromReflectionMagnitude}.
 *
 * @param swr 1 or more; Infinity is total reflection
 * @returns ρ, 0 to 1
 * @example
 * ```ts
 * import { reflectionMagnitudeFromSwr } from "@feedpoint/core";
 *
 * reflectionMagnitudeFromSwr(3); // → 0.5
 * ```
 */
export function reflectionMagnitudeFromSwr(swr: number): number {
  return swr === Number.POSITIVE_INFINITY ? 1 : (swr - 1) / (swr + 1);
}

/**
 * Return loss: how far the reflected power lies below the incident power, -20 log10 ρ.
 *
 * Positive for a passive load; 0 dB is total reflection, Infinity a perfect match.
 *
 * Source: Pozar, as of {@link swrFromReflectionMagnitude}.
 *
 * @param reflectionMagnitude ρ, 0 or more (above 1 the result is negative)
 * @returns return loss, dB
 * @example
 * ```ts
 * import { returnLossDb } from "@feedpoint/core";
 *
 * returnLossDb(1 / 3); // → 9.54
 * ```
 */
export function returnLossDb(reflectionMagnitude: number): number {
  // 0 - x, so that total reflection gives 0 and not -0.
  return 0 - 20 * Math.log10(reflectionMagnitude);
}

/**
 * Reflection magnitude that belongs to a return loss: 10^(-dB / 20), the inverse of {@link returnLossDb}.
 *
 * @param lossDb dB, positive for a passive load
 * @returns ρ, 0 or more
 */
export function reflectionMagnitudeFromReturnLoss(lossDb: number): number {
  return 10 ** (-lossDb / 20);
}

/**
 * Mismatch loss: the part of the available power that a mismatch keeps from the load, -10 log10(1 - ρ²).
 *
 * Follows from {@link reflectedPowerFraction}: what is not reflected is accepted.
 *
 * @param reflectionMagnitude ρ, 0 or more
 * @returns mismatch loss, dB; Infinity for ρ ≥ 1
 * @example
 * ```ts
 * import { mismatchLossDb } from "@feedpoint/core";
 *
 * mismatchLossDb(0.5); // → 1.249
 * ```
 */
export function mismatchLossDb(reflectionMagnitude: number): number {
  return reflectionMagnitude >= 1
    ? Number.POSITIVE_INFINITY
    : 0 - 10 * Math.log10(1 - reflectionMagnitude * reflectionMagnitude);
}

/**
 * Share of the incident power that is reflected: ρ².
 *
 * @returns 0 to 1 for a passive load
 */
export function reflectedPowerFraction(reflectionMagnitude: number): number {
  return reflectionMagnitude * reflectionMagnitude;
}

/**
 * Reflection coefficient of an impedance: Γ = (Z - Z0) / (Z + Z0). An infinite impedance gives +1, NaN NaN.
 *
 * Source: Pozar, as of {@link swrFromReflectionMagnitude}.
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
 * Source: Pozar, as of {@link swrFromReflectionMagnitude}.
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
