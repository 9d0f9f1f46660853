import { SPEED_OF_LIGHT } from "../numbers/constants.js";

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
const FOLLOWING: Readonly<Record<FixedParts | "unsaid", Following>> = {
  nothing: { least: 0.95, usual: 1, most: 1.05 },
  radials: { least: 0.65, usual: 0.8, most: 0.9 },
  counterpoise: { least: 0.48, usual: 0.75, most: 1.05 },
  unsaid: { least: 0.8, usual: 1, most: 1.05 },
};

/** A wire of half waves by itself, over a counterpoise that is short beside it. */
const END_FED: Following = { least: 0.85, usual: 0.97, most: 1.05 };
/** How much longer a wire is for a wave than by the tape, and how far from whole half waves it may be (common practice, no source). */
const END_EFFECT = 1.04;
const NEAR_HALF_WAVES = 0.1;

/**
 * How far frequencies follow a change of length, by what stays as it is and, where it was stated, by how long the wire is: one of half waves
 * resonates by itself, and a counterpoise at its end has next to no part in it.
 *
 * @param frequencyHz the lowest that matters
 */
export function followingOf(fixed: FixedParts | undefined, wireLengthM: number | null, frequencyHz: number): Following {
  const usual = FOLLOWING[fixed ?? "unsaid"];
  if (fixed !== "counterpoise" || wireLengthM === null) return usual;
  const halfWaves = (END_EFFECT * wireLengthM * 2 * frequencyHz) / SPEED_OF_LIGHT;
  const isHalfWaves = halfWaves > 0.5 && Math.abs(halfWaves - Math.round(halfWaves)) < NEAR_HALF_WAVES;
  return isHalfWaves ? END_FED : usual;
}
