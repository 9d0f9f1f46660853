/** What stays as it is when a wire is cut; nothing: all that resonates is cut alike, as both legs of a dipole are. */
export const FIXED_PARTS = ["nothing", "radials", "counterpoise"] as const;
/** One of {@link FIXED_PARTS}. */
export type FixedParts = (typeof FIXED_PARTS)[number];

/** The share of a relative change of length that the dip follows. */
export interface Following {
  readonly least: number;
  /** What is reckoned with */
  readonly usual: number;
  readonly most: number;
}

/**
 * How far a dip follows a change of length.
 *
 * Wire and fixed parts resonate together: with reactances -Z cot kl of each about a quarter wave, the dip follows by Z of the wire over the
 * sum of both (derived); two to eight radials, in parallel, are a half to an eighth of the wire's Z, one counterpoise as much as the wire
 * or, short at the end of a half wave, next to nothing. Where all is cut alike, NEC-2 models follow to 0.1 % over ±3 %. Where next to
 * nothing stays, height and insulators, which do not scale, still make it 0.95 to 1.05. Where nothing is said: the same, and radials may
 * not have been counted.
 */
export const FOLLOWING: Readonly<Record<FixedParts | "unsaid", Following>> = {
  nothing: { least: 0.95, usual: 1, most: 1.05 },
  radials: { least: 0.65, usual: 0.8, most: 0.9 },
  counterpoise: { least: 0.48, usual: 0.75, most: 1.05 },
  unsaid: { least: 0.8, usual: 1, most: 1.05 },
};
