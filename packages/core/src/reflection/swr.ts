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
