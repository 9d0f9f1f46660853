import { reflectionMagnitudeFromReturnLoss } from "../../reflection/swr.js";

/** What is known of the analyser's own errors after its calibration. */
export interface Instrument {
  /** Corrected directivity, dB: how far below total reflection a perfect load reads */
  readonly directivityDb: number;
  /** Reflection tracking error, dB; 0 where not stated */
  readonly trackingDb?: number;
  /** Corrected source match, dB; no error where not stated */
  readonly sourceMatchDb?: number;
}

/**
 * Greatest error of a reflection magnitude that the instrument allows: |ΔΓ| ≤ D + T·ρ + M·ρ².
 *
 * Source: one-port error model of Agilent 8719ES/8720ES/8722ES User's Guide, pp. 7-43 to 7-44 (read through a reprint);
 * the worst-case sum is general metrology (exact wording from memory).
 *
 * @param reflectionMagnitude ρ, 0 or more
 * @returns error in ρ, 0 or more
 * @example
 * ```ts
 * import { instrumentError } from "@feedpoint/core";
 *
 * instrumentError(0, { directivityDb: 40 }); // → 0.01
 * ```
 */
export function instrumentError(reflectionMagnitude: number, instrument: Instrument): number {
  const { directivityDb, trackingDb = 0, sourceMatchDb = Number.POSITIVE_INFINITY } = instrument;
  const tracking = 10 ** (Math.abs(trackingDb) / 20) - 1;
  return (
    reflectionMagnitudeFromReturnLoss(directivityDb) +
    tracking * reflectionMagnitude +
    reflectionMagnitudeFromReturnLoss(sourceMatchDb) * reflectionMagnitude * reflectionMagnitude
  );
}
