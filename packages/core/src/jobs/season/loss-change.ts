import { median } from "simple-statistics";
import { returnLossDb } from "../../reflection/swr.js";
import type { SweepGrade } from "../grade.js";

/** How much more is lost than in another sweep, one way at 10 MHz, as conductors lose: with the root of frequency. */
export interface LossChange {
  /** dB; below 0: less is lost */
  readonly at10MHzDb: number;
  /** By how much that may be off, with 95 % probability, as far as the frequencies disagree */
  readonly marginDb: number;
}

/** Frequencies at which losses are compared, at least (our own choice). */
export const FEWEST_POINTS = 6;
/** From here on an antenna is far from matched, so that its shape hardly matters: ρ 0.6 (our own choice). */
const FAR_DB = returnLossDb(0.6);
const REFERENCE_HZ = 10e6;
/** Of a normal spread the standard deviation over the median distance, and the standard error of a median over that of a mean. */
const NORMAL_OVER_MEDIAN = 1.4826;
const MEDIAN_OVER_MEAN = 1.2533;
/** Frequencies next to each other tell much the same: two count as one. */
const ALIKE = 2;
const COVERAGE = 1.96;

/**
 * How much more one sweep loses than another, by what comes back where both are far from matched: half of the change of return loss
 * there, whatever the shape of the antenna (as of {@link lossBound}; that a change of it is a change of loss is derived). Where one of
 * them is far from matched and the other mostly is not, much loss hides that, and all frequencies where one is far are compared.
 *
 * @returns null where too little of that kind was swept in both
 */
export function lossChange(reference: SweepGrade, other: SweepGrade): LossChange | null {
  const before = new Map(reference.returnLosses.map((point) => [point.frequencyHz, point.returnLossDb]));
  const pairs = other.returnLosses.flatMap(({ frequencyHz, returnLossDb: after }) => {
    const first = before.get(frequencyHz);
    return first === undefined ? [] : [{ frequencyHz, first, after }];
  });
  const either = pairs.filter(({ first, after }) => Math.min(first, after) <= FAR_DB);
  const both = either.filter(({ first, after }) => Math.max(first, after) <= FAR_DB);
  const compared = 2 * both.length >= either.length ? both : either;
  if (compared.length < FEWEST_POINTS) return null;
  const changes = compared.map(
    ({ frequencyHz, first, after }) => (after - first) / 2 / Math.sqrt(frequencyHz / REFERENCE_HZ),
  );
  const at10MHzDb = median(changes);
  const spread = NORMAL_OVER_MEDIAN * median(changes.map((change) => Math.abs(change - at10MHzDb)));
  return { at10MHzDb, marginDb: (COVERAGE * MEDIAN_OVER_MEAN * spread) / Math.sqrt(changes.length / ALIKE) };
}

/**
 * How much more each sweep loses than the one that loses least, one way at 10 MHz, beside what the lines that were stated account for.
 * Sweeps of which that cannot be told are left out.
 */
export function lossesBeside(sweeps: readonly SweepGrade[]): ReadonlyMap<SweepGrade, number> {
  const reference = sweeps.reduce<SweepGrade | null>(
    (most, each) => (most === null || farPointsOf(each) > farPointsOf(most) ? each : most),
    null,
  );
  if (reference === null || farPointsOf(reference) < FEWEST_POINTS) return new Map();
  const areLinesKnown = sweeps.every(({ lineLossAt10MHzDb }) => lineLossAt10MHzDb !== null);
  const changes = sweeps.flatMap((graded): [SweepGrade, number][] => {
    const change = lossChange(reference, graded);
    const line = areLinesKnown ? (graded.lineLossAt10MHzDb ?? 0) : 0;
    return change === null ? [] : [[graded, change.at10MHzDb - line]];
  });
  const least = Math.min(...changes.map(([, change]) => change));
  return new Map(changes.map(([graded, change]) => [graded, change - least]));
}

const farPointsOf = ({ returnLosses }: SweepGrade): number =>
  returnLosses.filter((point) => point.returnLossDb <= FAR_DB).length;
