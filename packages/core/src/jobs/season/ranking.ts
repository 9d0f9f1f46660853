import type { Need } from "../../facts/limits.js";
import { type BandGrade, hasProblem, type SweepGrade } from "../grade.js";
import { withRanks } from "./with-ranks.js";

/** A deployment in the order of how well it serves one band. */
export interface Ranked {
  /** From 1 on; equal ones share a rank */
  readonly rank: number;
  /** The sweep */
  readonly graded: SweepGrade;
  /** Its grade on the band */
  readonly band: BandGrade;
}

const NEEDS: readonly Need[] = ["none", "built-in-tuner", "wide-range-tuner", "beyond-tuner", "unknown"];

/**
 * Ranks sweeps for a band by what the operator needs there: what the whole band needs (those that swept less of it come after
 * all whose need is known), then how much of it is within the limit, then the loss that may be on the line, which lowers the
 * SWR (one that is not known comes after all that are), and only then the least SWR. A sweep with a problem has no rank.
 *
 * @param name of the band: "40m"
 * @returns the best first, without sweeps that have no grade on the band; {@link groupGrades} has an example
 */
export function rankFor(sweeps: readonly SweepGrade[], name: string): readonly Ranked[] {
  const entries = sweeps
    .filter((graded) => !hasProblem(graded))
    .flatMap((graded) => graded.bands.filter(({ band }) => band === name).map((band) => ({ graded, band })))
    .filter(({ band }) => band.grade !== null)
    .sort(compare);
  return withRanks(entries, compare);
}

type Entry = Omit<Ranked, "rank">;

/** Shares that differ by less than this, and losses by less than half a decibel, are alike. */
const STEPS_OF_SHARE = 100;
const STEPS_OF_DECIBEL = 2;
const UNKNOWN_DB = Number.POSITIVE_INFINITY;
const ROUNDING_OF_SHARE = 1e-9;

/** An infinite SWR as the greatest number there is: the difference of two infinite ones is none, and must be 0. */
const finiteSwr = ({ band }: Entry) => Math.min(band.bestSwr ?? Number.MAX_VALUE, Number.MAX_VALUE);

/** What an unswept part needs is not known, so that no one gains by sweeping less. */
const isWhole = ({ band }: Entry) => band.sweptFraction > 1 - ROUNDING_OF_SHARE;
const placeOfNeed = (entry: Entry): number => NEEDS.indexOf(entry.band.need) + (isWhole(entry) ? 0 : NEEDS.length);

function compare(a: Entry, b: Entry): number {
  const need = placeOfNeed(a) - placeOfNeed(b);
  if (need !== 0) return need;
  const share = ({ band }: Entry) => Math.round(band.withinLimitFraction * STEPS_OF_SHARE);
  if (share(a) !== share(b)) return share(b) - share(a);
  // A loss that is not known may be any: behind all that are, so that here too no one gains by sweeping less.
  const loss = ({ graded: { lossBoundDb } }: Entry) => Math.round((lossBoundDb ?? UNKNOWN_DB) * STEPS_OF_DECIBEL);
  if (loss(a) !== loss(b)) return loss(a) - loss(b);
  return finiteSwr(a) - finiteSwr(b);
}
