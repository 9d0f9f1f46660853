/** Up to which SWR the operator can transmit, and by what means. */
export interface Limits {
  /** Without a tuner (2:1 unless stated; common practice, no source) */
  readonly swr: number;
  /** With the tuner built into a transceiver (3:1, as such tuners are usually specified; common practice, no source) */
  readonly builtInTunerSwr: number;
  /** With a separate tuner of wide range (10:1; common practice, no source) */
  readonly wideRangeTunerSwr: number;
}

export const DEFAULT_LIMITS: Limits = { swr: 2, builtInTunerSwr: 3, wideRangeTunerSwr: 10 };

/** What it takes to transmit. */
export type Need = "none" | "built-in-tuner" | "wide-range-tuner" | "beyond-tuner" | "unknown";

/** What an SWR needs; null (not swept) is unknown. */
export function needFor(swr: number | null, limits: Limits): Need {
  if (swr === null) return "unknown";
  if (swr <= limits.swr) return "none";
  if (swr <= limits.builtInTunerSwr) return "built-in-tuner";
  return swr <= limits.wideRangeTunerSwr ? "wide-range-tuner" : "beyond-tuner";
}
