import { median } from "simple-statistics";
import type { SweepGrade } from "../grade.js";

/** How much more is lost than in another sweep, one way at 10 MHz, as conductors lose: with the root of frequency. */
export interface LossChange {
  /** dB; below 0: less is lost */
  readonly at10MHzDb: number;
  /** By how much that may be off, with 95 % probability, as far as the frequencies disagree */
  readonly marginDb: number;
}

/** Frequencies at which both must be far from matched for their losses to be compared (our own choice). */
export const FEWEST_POINTS = 6;
const REFERENCE_HZ = 10e6;
/** Of a normal spread the standard deviation over the median distance, and the standard error of a median over that of a mean. */
const NORMAL_OVER_MEDIAN = 1.4826;
const MEDIAN_OVER_MEAN = 1.2533;
/** Frequencies next to each other tell much the same: two count as one. */
const ALIKE = 2;
const COVERAGE = 1.96;

/**
 * How much more one sweep loses than another, by what comes back where both are far from matched: half of the change of return loss
 * there, whatever the shape of the antenna (as of {@link lossBound}; that a change of it is a change of loss is derived).
 *
 * @returns null where too little of that kind was swept in both
 */
export function lossChange(reference: SweepGrade, other: SweepGrade): LossChange | null {
  const before = new Map(reference.farFromMatch.map((point) => [point.frequencyHz, point.returnLossDb]));
  const changes = other.farFromMatch.flatMap(({ frequencyHz, returnLossDb }) => {
    const first = before.get(frequencyHz);
    return first === undefined ? [] : [(returnLossDb - first) / 2 / Math.sqrt(frequencyHz / REFERENCE_HZ)];
  });
  if (changes.length < FEWEST_POINTS) return null;
  const at10MHzDb = median(changes);
  const spread = NORMAL_OVER_MEDIAN * median(changes.map((change) => Math.abs(change - at10MHzDb)));
  return { at10MHzDb, marginDb: (COVERAGE * MEDIAN_OVER_MEAN * spread) / Math.sqrt(changes.length / ALIKE) };
}

/**
 * How much more each sweep loses than the one that loses least, one way at 10 MHz, beside what the lines that were stated account for.
 * Sweeps of which that cannot be told are left out.
 */
export function lossesBeside(sweeps: readonly SweepGrade[]): ReadonlyMap<SweepGrade, number> {
  const reference = sweeps.find(({ farFromMatch }) => farFromMatch.length >= FEWEST_POINTS);
  if (reference === undefined) return new Map();
  const areLinesKnown = sweeps.every(({ lineLossAt10MHzDb }) => lineLossAt10MHzDb !== null);
  const changes = sweeps.flatMap((graded): [SweepGrade, number][] => {
    const change = lossChange(reference, graded);
    const line = areLinesKnown ? (graded.lineLossAt10MHzDb ?? 0) : 0;
    return change === null ? [] : [[graded, change.at10MHzDb - line]];
  });
  const least = Math.min(...changes.map(([, change]) => change));
  return new Map(changes.map(([graded, change]) => [graded, change - least]));
}
