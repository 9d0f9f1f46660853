import { demand, isRecord } from "../input/argument.js";

/** Up to which SWR the operator can transmit, and by what means. Each is 1 or more, and they ascend. */
export interface Limits {
  /** Without a tuner (2:1 unless stated; common practice, no source) */
  readonly swr: number;
  /** With the tuner built into a transceiver (3:1, as such tuners are usually specified; common practice, no source) */
  readonly builtInTunerSwr: number;
  /** With a separate tuner of wide range (10:1; common practice, no source) */
  readonly wideRangeTunerSwr: number;
}

/** The limits where nobody states others: 2:1, 3:1 and 10:1. */
export const DEFAULT_LIMITS: Limits = { swr: 2, builtInTunerSwr: 3, wideRangeTunerSwr: 10 };

/**
 * The limits with the operator's own in their place. One that is left out is the default, but no less than the one before it:
 * who transmits up to 4:1 without a tuner does so with one as well.
 *
 * @throws TypeError for a limit that is no SWR, and for limits that do not ascend
 */
export function limitsWith(own: Partial<Limits> = {}): Limits {
  demand(isRecord(own), "limits", "an object such as { swr: 1.5 }", own);
  const limit = (name: keyof Limits, least: number): number => {
    const value = own[name] ?? Math.max(DEFAULT_LIMITS[name], least);
    demand(typeof value === "number" && value >= 1, `limits.${name}`, "an SWR, a number of 1 or more", value);
    demand(value >= least, `limits.${name}`, `no less than the limit before it, ${least}`, value);
    return value;
  };
  const swr = limit("swr", 1);
  const builtInTunerSwr = limit("builtInTunerSwr", swr);
  return { swr, builtInTunerSwr, wideRangeTunerSwr: limit("wideRangeTunerSwr", builtInTunerSwr) };
}

/**
 * What it takes to transmit: nothing, a tuner built into the radio, a separate one of wide range; or it is beyond any tuner, or
 * not known.
 */
export type Need = "none" | "built-in-tuner" | "wide-range-tuner" | "beyond-tuner" | "unknown";

/**
 * What an SWR needs.
 *
 * @param swr 1 to Infinity; null: not swept
 * @returns "unknown" for null
 * @example
 * ```ts
 * import { DEFAULT_LIMITS, needFor } from "@feedpoint/core";
 *
 * needFor(2.6, DEFAULT_LIMITS); // → "built-in-tuner"
 * ```
 */
export function needFor(swr: number | null, limits: Limits): Need {
  if (swr === null) return "unknown";
  if (swr <= limits.swr) return "none";
  if (swr <= limits.builtInTunerSwr) return "built-in-tuner";
  return swr <= limits.wideRangeTunerSwr ? "wide-range-tuner" : "beyond-tuner";
}
