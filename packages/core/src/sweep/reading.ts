/** An SWR noted by hand: for a band as a whole, for a stretch of frequencies, or at one frequency. */
export interface Reading {
  /** The band that it was noted for, by its usual name: "40m"; null where a stretch or a frequency was named */
  readonly band: string | null;
  /** Hz: ends of the stretch, or of what all ITU Regions share of the band; both are the frequency where one was named */
  readonly lowHz: number;
  readonly highHz: number;
  /** Least of what was noted, 1 or more */
  readonly swrLow: number;
  /** Greatest of it, the same where one SWR was noted; Infinity where the scale ended */
  readonly swrHigh: number;
  /** The greatest means "more than" */
  readonly isAtLeast: boolean;
}

/** Whether a reading is about all of a band or a stretch, and not about one frequency. */
export const isOverStretch = ({ lowHz, highHz }: Pick<Reading, "lowHz" | "highHz">): boolean => lowHz < highHz;
