import { SPEED_OF_LIGHT } from "../../numbers/constants.js";

/** Which rule a distance is told by; {@link EXPOSURE_RULES} says more of each. */
export type ExposureRuleId = "us-household" | "us-neighbours" | "icnirp-2020" | "eu-1999";

/** An electric and a magnetic field, effective values. */
export interface Fields {
  /** V/m */
  readonly electric: number;
  /** A/m */
  readonly magnetic: number;
}

/** The greatest fields that a rule allows where people are, at a frequency. */
export interface ExposureLimits {
  /** Of the fields whose squares are averaged over the rule's time */
  readonly averaged: Fields;
  /** Of the fields at the crest of the envelope, however short; absent where the rule has none there */
  readonly atAnyTime?: Fields;
}

/** A set of limits of exposure to fields. */
export interface ExposureRule {
  readonly id: ExposureRuleId;
  /** Whom it is for, in a few words */
  readonly title: string;
  /** Time over which squares of fields are averaged, minutes */
  readonly averagedOverMinutes: number;
  readonly source: string;
}

const FCC =
  "47 CFR 1.1310(e)(1), table 1 (read in reprints and in quotations of the eCFR of 23 Sep 2026); who counts as which: 97.13(c)";

/** The rules, and their sources. */
export const EXPOSURE_RULES: readonly ExposureRule[] = [
  { id: "us-household", title: "United States, the licensee's own household", averagedOverMinutes: 6, source: FCC },
  { id: "us-neighbours", title: "United States, everybody else", averagedOverMinutes: 30, source: FCC },
  {
    id: "icnirp-2020",
    title: "ICNIRP 2020, general public",
    averagedOverMinutes: 30,
    source:
      "ICNIRP, Health Physics 118:483, 2020, table 5 (read in two retyped copies); below 10 MHz also the levels of ICNIRP 2010 that are not averaged (a textbook's table; that they go on to hold: from memory)",
  },
  {
    id: "eu-1999",
    title: "European Union 1999/519/EC, general public",
    averagedOverMinutes: 6,
    source: "Council Recommendation 1999/519/EC, annex III, table 2 (values and time from memory)",
  },
];

/** Impedance of free space, Ω. */
export const FREE_SPACE_OHMS = 376.730313668;

/** A limit by frequency in MHz, up to a frequency; electric in V/m and magnetic in A/m. */
type Step = readonly [
  upToMHz: number,
  electric: (megahertz: number) => number,
  magnetic: (megahertz: number) => number,
];

/** The fields of a plane wave of a power density, W/m². */
const ofPlaneWave = (density: (megahertz: number) => number): [Step[1], Step[2]] => [
  (f) => Math.sqrt(density(f) * FREE_SPACE_OHMS),
  (f) => Math.sqrt(density(f) / FREE_SPACE_OHMS),
];

/** Each from the least frequency that the rule holds for on. */
const STEPS: Readonly<Record<ExposureRuleId, { readonly fromMHz: number; readonly steps: readonly Step[] }>> = {
  "us-household": {
    fromMHz: 0.3,
    steps: [
      [3, () => 614, () => 1.63],
      [30, (f) => 1842 / f, (f) => 4.89 / f],
      [300, () => 61.4, () => 0.163],
      [1500, ...ofPlaneWave((f) => f / 30)],
    ],
  },
  "us-neighbours": {
    fromMHz: 0.3,
    steps: [
      [1.34, () => 614, () => 1.63],
      [30, (f) => 824 / f, (f) => 2.19 / f],
      [300, () => 27.5, () => 0.073],
      [1500, ...ofPlaneWave((f) => f / 150)],
    ],
  },
  "icnirp-2020": {
    fromMHz: 0.1,
    steps: [
      [30, (f) => 300 / f ** 0.7, (f) => 2.2 / f],
      [400, () => 27.7, () => 0.073],
      // From memory.
      [2000, (f) => 1.375 * Math.sqrt(f), (f) => 0.0037 * Math.sqrt(f)],
    ],
  },
  "eu-1999": {
    fromMHz: 0.15,
    steps: [
      [1, () => 87, (f) => 0.73 / f],
      [10, (f) => 87 / Math.sqrt(f), (f) => 0.73 / f],
      [400, () => 28, () => 0.073],
      [2000, (f) => 1.375 * Math.sqrt(f), (f) => 0.0037 * Math.sqrt(f)],
    ],
  },
};

/** Nerves are stimulated by the crest, which no pause averages away. */
const AT_ANY_TIME: Fields = { electric: 83, magnetic: 21 };
const AT_ANY_TIME_BELOW_MHZ = 10;

/**
 * The limits of a rule at a frequency.
 *
 * @param frequencyHz above 0
 * @returns null where the rule has none (United States: below 300 kHz)
 * @example
 * ```ts
 * import { exposureLimits } from "@feedpoint/core";
 *
 * exposureLimits("us-neighbours", 7.1e6)?.averaged.electric; // → 116.056
 * exposureLimits("us-neighbours", 136e3); // → null
 * ```
 */
export function exposureLimits(rule: ExposureRuleId, frequencyHz: number): ExposureLimits | null {
  const megahertz = frequencyHz / 1e6;
  const { fromMHz, steps } = STEPS[rule];
  const step = steps.find(([upToMHz]) => megahertz <= upToMHz);
  if (megahertz < fromMHz || step === undefined) return null;
  const [, electric, magnetic] = step;
  const averaged = { electric: electric(megahertz), magnetic: magnetic(megahertz) };
  return rule === "icnirp-2020" && megahertz < AT_ANY_TIME_BELOW_MHZ
    ? { averaged, atAnyTime: AT_ANY_TIME }
    : { averaged };
}

/** ERP up to which a source needs no evaluation, W over R² in m², by frequency in MHz. */
const EXEMPT_ERP: readonly (readonly [upToMHz: number, perSquare: (megahertz: number) => number])[] = [
  [1.34, () => 1920],
  [30, (f) => 3450 / f ** 2],
  [300, () => 3.83],
  [1500, (f) => 0.0128 * f],
  [100_000, () => 19.2],
];

/**
 * Whether a station needs no evaluation of exposure in the United States for people at a distance; the limits hold all the same.
 *
 * Source: 47 CFR 1.1307(b)(3)(i)(C), in force since 3 May 2021 (read as a quotation of the eCFR of 23 Sep 2026).
 *
 * @param erpWatts time-averaged, over a half-wave dipole, W
 * @param distanceM the least distance to anybody, m
 * @returns "too-near" where the distance is under a wavelength over 2π, for which the rule may not be used; null below 300 kHz
 * @example
 * ```ts
 * import { isExempt } from "@feedpoint/core";
 *
 * isExempt(20, 14.175e6, 5); // → "exempt"
 * isExempt(500, 14.175e6, 5); // → "not-exempt"
 * isExempt(20, 14.175e6, 3); // → "too-near"
 * ```
 */
export function isExempt(
  erpWatts: number,
  frequencyHz: number,
  distanceM: number,
): "exempt" | "not-exempt" | "too-near" | null {
  const megahertz = frequencyHz / 1e6;
  const limit = EXEMPT_ERP.find(([upToMHz]) => megahertz <= upToMHz);
  if (megahertz < 0.3 || limit === undefined) return null;
  if (distanceM < nearFieldM(frequencyHz)) return "too-near";
  return erpWatts <= limit[1](megahertz) * distanceM ** 2 ? "exempt" : "not-exempt";
}

/** A wavelength over 2π, m: nearer than this the fields of an antenna are not those of a wave. */
const nearFieldM = (frequencyHz: number): number => SPEED_OF_LIGHT / (2 * Math.PI * frequencyHz);
