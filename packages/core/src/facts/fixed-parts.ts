import { demand, isFiniteAbove0 } from "../input/argument.js";
import { at } from "../numbers/column.js";
import { SPEED_OF_LIGHT } from "../numbers/constants.js";
import { type Finding, finding } from "../sweep/finding.js";

/** What stays as it is when a wire is cut; nothing: all that resonates is cut alike, as both legs of a dipole are. */
export const FIXED_PARTS = ["nothing", "radials", "counterpoise"] as const;
/** One of {@link FIXED_PARTS}. */
export type FixedParts = (typeof FIXED_PARTS)[number];

/** What stays as it is, with as much of it as is told. */
export interface FixedWires {
  readonly what: FixedParts;
  /** How many wires, 1 or more; absent: not known of radials, one of a counterpoise */
  readonly count?: number;
  /** Length of each, m, above 0; absent: not known */
  readonly lengthM?: number;
}

/** By name alone, or with count and length. */
const fixedWires = (fixed: FixedParts | FixedWires): FixedWires =>
  typeof fixed === "string" ? { what: fixed } : fixed;

/** What a result says of it. */
export interface ToldOfFixed {
  /** What was said to stay as it is when the wire is cut; null where nothing was said */
  readonly fixed: FixedParts | null;
  /** How many wires stay, and how long each is, m; null where nothing was said of it */
  readonly fixedWires: { readonly count: number | null; readonly lengthM: number | null } | null;
}

export function toldOfFixed(fixed: FixedParts | FixedWires | undefined): ToldOfFixed {
  if (fixed === undefined) return { fixed: null, fixedWires: null };
  const { what, count = null, lengthM = null } = fixedWires(fixed);
  return { fixed: what, fixedWires: count === null && lengthM === null ? null : { count, lengthM } };
}

/** @throws TypeError for what is none of it @param name of the argument */
export function checkFixed(fixed: FixedParts | FixedWires | undefined, name: string): void {
  if (fixed === undefined) return;
  const what = typeof fixed === "string" ? fixed : fixed?.what;
  demand(FIXED_PARTS.includes(what), name, `one of ${FIXED_PARTS.join(", ")}`, what);
  const { count = 1, lengthM = 1 } = fixedWires(fixed);
  demand(Number.isInteger(count) && count > 0, `${name}.count`, "a whole number above 0", count);
  demand(isFiniteAbove0(lengthM), `${name}.lengthM`, "a length in m above 0", lengthM);
}

/** What should be told of it, where a wire is to be cut. */
export function fixedFindings(
  fixed: FixedParts | FixedWires | undefined,
  wireLengthM: number | null,
): readonly Finding[] {
  if (fixed === undefined) return [finding("caution", "fixed-parts-not-told", {})];
  const { what, count, lengthM } = fixedWires(fixed);
  const missing = [
    ...(wireLengthM === null ? ["wire" as const] : []),
    ...(what === "radials" && count === undefined ? ["count" as const] : []),
    ...(lengthM === undefined ? ["length" as const] : []),
  ];
  return what === "nothing" || missing.length === 0
    ? []
    : [finding("info", "fixed-lengths-not-told", { what, missing })];
}

/** The share of a relative change of length that frequencies follow. */
export interface Following {
  readonly least: number;
  /** What is reckoned with */
  readonly usual: number;
  readonly most: number;
}

/** {@link Following}, which is not the same at each frequency, Hz. */
export type FollowingAt = (frequencyHz: number) => Following;

/** Where all is cut alike NEC-2 models follow to 0.1 % over ±3 %; height and insulators, which do not scale, make it a little less or more. */
const ALL_CUT: Following = { least: 0.95, usual: 1, most: 1.05 };
/** Where nothing is said all may be cut alike, as of a dipole, or anything usual may stay. */
const LIKE_A_DIPOLE = ALL_CUT.usual;
/** What the two lines below leave out (chosen on NEC-2 models of thirty-four antennas; tests/advise/wire.test.ts holds it to others). */
const MODEL_ERROR = 0.08;

/** How much longer a wire is for a wave than by the tape (common practice, no source). */
const END_EFFECT = 1.04;
/** Attenuation along a wire, Np: what it radiates; a quarter wave of 490 Ω has 36 Ω at its foot, a half wave some thousand ohms at its end. */
const ATTENUATION = 0.1;
/** Several wires from one point are less than as many apart, for they couple: their impedance falls with this power of their count. */
const COUPLED = 0.9;

/** A wire, and what it is fed against. */
interface Wires {
  readonly wireM: number;
  readonly count: number;
  readonly lengthM: number;
}

/**
 * How far frequencies follow a change of length, by what stays as it is.
 *
 * Wire and fixed parts, in series at the feed point, are lines of which the ends are open: Z coth(a + jkl) each. What the one and the
 * other give to the slope of the reactance is the share of a change that follows (derived): a half of it where a quarter wave stands on
 * a quarter wave, three quarters over four radials, nearly all where the wire is of half waves. What was not told of count and lengths may be
 * anything usual, which widens the share.
 *
 * @param wireLengthM of the wire that is cut; null: not known
 * @param resonanceHz where wire and fixed parts resonate together
 */
export function followingOf(
  fixed: FixedParts | FixedWires | undefined,
  wireLengthM: number | null,
  resonanceHz: number,
): FollowingAt {
  if (fixed === undefined) {
    const ways = FIXED_PARTS.map((what) => followingOf({ what }, wireLengthM, resonanceHz));
    return (frequencyHz) => {
      const all = ways.map((way) => way(frequencyHz));
      return {
        least: Math.min(...all.map(({ least }) => least)),
        usual: LIKE_A_DIPOLE,
        most: Math.max(...all.map(({ most }) => most)),
      };
    };
  }
  const stays = fixedWires(fixed);
  if (stays.what === "nothing") return () => ALL_CUT;
  const waveM = SPEED_OF_LIGHT / (END_EFFECT * resonanceHz);
  const likely =
    stays.what === "radials" ? overRadials(stays, wireLengthM, waveM) : overCounterpoise(stays, wireLengthM, waveM);
  return (frequencyHz) => {
    const shares = Float64Array.from(likely, (wires) => shareOfWire(wires, frequencyHz));
    return {
      least: (1 - MODEL_ERROR) * Math.min(...shares),
      usual: at(shares, 0),
      most: (1 + MODEL_ERROR) * Math.max(...shares),
    };
  };
}

/** What the wire gives to the slope of the reactance over frequency, of the whole. */
function shareOfWire({ wireM, count, lengthM }: Wires, frequencyHz: number): number {
  const waves = (2 * Math.PI * END_EFFECT * frequencyHz) / SPEED_OF_LIGHT;
  const slope = (length: number) => (waves * length) / (Math.sinh(ATTENUATION) ** 2 + Math.sin(waves * length) ** 2);
  const wire = slope(wireM);
  return wire / (wire + slope(lengthM) / count ** COUPLED);
}

/** What usual radials are as long as, in quarter waves, and how many there are; the most likely first. */
const RADIAL_LENGTHS = [1, 0.7, 1.3];
const RADIAL_COUNTS = [4, 1, 2, 8, 16];

/** What a wire over radials may be, the most likely first. @param waveM the wave at resonance, as it is on wire, m */
function overRadials({ count, lengthM }: FixedWires, wireLengthM: number | null, waveM: number): readonly Wires[] {
  const counts = count === undefined ? RADIAL_COUNTS : [count];
  const lengths = lengthM === undefined ? RADIAL_LENGTHS.map((quarters) => (quarters * waveM) / 4) : [lengthM];
  const wireM = wireLengthM ?? waveM / 4;
  return counts.flatMap((each) => lengths.map((length) => ({ wireM, count: each, lengthM: length })));
}

/** Where nothing is known of a wire and its counterpoise, in waves: from a wire shorter than its counterpoise to a half wave by itself. */
const ANY = [
  [0.375, 0.125],
  [0.25, 0.25],
  [0.19, 0.31],
  [0.48, 0.02],
] as const;

/** The same over a counterpoise. */
function overCounterpoise(
  { count = 1, lengthM }: FixedWires,
  wireLengthM: number | null,
  waveM: number,
): readonly Wires[] {
  if (wireLengthM === null && lengthM === undefined)
    return ANY.map(([wire, other]) => ({ wireM: wire * waveM, count, lengthM: other * waveM }));
  // Together they are half a wave.
  const wireM = wireLengthM ?? Math.max(waveM / 4, waveM / 2 - (lengthM ?? 0));
  const lengths = lengthM === undefined ? lengthsBeside(wireM, waveM) : [lengthM];
  return lengths.map((length) => ({ wireM, count, lengthM: length }));
}

/** A counterpoise beside a wire of half waves, which needs none, in waves. */
const SHORT = [0.05, 0.025, 0.1];
/** How far from whole half waves a wire may be to resonate by itself, in half waves. */
const NEAR_HALF_WAVES = 0.1;
/** How well what is left to half waves is known. */
const LEFT = [1, 0.7, 1.3];

/** What a counterpoise may be as long as: what is left to whole half waves, or anything short. */
function lengthsBeside(wireM: number, waveM: number): readonly number[] {
  const halfWaves = (2 * wireM) / waveM;
  const isByItself = halfWaves > 0.5 && Math.abs(halfWaves - Math.round(halfWaves)) < NEAR_HALF_WAVES;
  if (isByItself) return SHORT.map((waves) => waves * waveM);
  return LEFT.map((share) => (share * (Math.ceil(halfWaves) - halfWaves) * waveM) / 2);
}
