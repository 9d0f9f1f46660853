import { HIDING_LOSS_DB } from "../../bands/loss-bound.js";
import type { WishGrade } from "../../bands/wish-grade.js";
import { hasProblem, type SweepGrade } from "../grade.js";
import { lossesBeside } from "./loss-change.js";
import { withRanks } from "./with-ranks.js";

/**
 * How well a deployment serves the worst of what is wanted: ready without a tuner, with one's own, with another one; in part; not at
 * all; or not known.
 */
export type Standing = "ready" | "own-tuner" | "another-tuner" | "in-part" | "out-of-reach" | "not-known";

/** A deployment in the order in which one would take it for what is wanted. */
export interface ForTonight {
  /** From 1 on; equal ones share a rank; null: not known, or with a problem */
  readonly rank: number | null;
  readonly graded: SweepGrade;
  readonly standing: Standing;
  /** The wish that is served worst, by its title */
  readonly worst: string;
  /** Loss beside that of the known line that may be what makes the SWR, dB one way; null: little, or not known */
  readonly hiddenLossDb: number | null;
  /** most: that much may be lost at 10 MHz, as far as the sweep bounds it; more-than-others: it loses that much more than the best of them, at 10 MHz */
  readonly hiddenLossIs: "most" | "more-than-others" | null;
  /** Why nothing is known of it; null where something is */
  readonly why: "not-swept" | "problem" | null;
}

const ORDER: readonly Standing[] = ["ready", "own-tuner", "another-tuner", "in-part", "out-of-reach", "not-known"];

/** A wish is served whole from here on. */
const WHOLE = 1 - 1e-9;

/**
 * Ranks deployments for what is wanted, by the worst of the wishes: what it takes, then how much of it is served, then how much power
 * arrives where that is known, then the SWR. What may owe its SWR to loss comes behind all that do not, the more of it the farther, and what is not known last.
 *
 * @param sweeps graded with the wishes; see {@link GradeOptions}
 * @returns the best first
 */
export function rankForTonight(sweeps: readonly SweepGrade[]): readonly ForTonight[] {
  const beside = lossesBeside(sweeps);
  const entries = sweeps.flatMap((graded) => entryOf(graded, beside.get(graded) ?? 0) ?? []).sort(compare);
  return withRanks(entries, compare).map(({ rank, ...entry }) => ({
    ...entry,
    rank: entry.why === null ? rank : null,
  }));
}

type Entry = Omit<ForTonight, "rank">;

function entryOf(graded: SweepGrade, besideDb: number): Entry | null {
  const [first, ...others] = graded.wishes;
  if (first === undefined) return null;
  const worst = others.reduce((a, b) => (compareWishes(b, a) > 0 ? b : a), first);
  const standing = standingOf(worst);
  const why = hasProblem(graded) ? "problem" : standing === "not-known" ? "not-swept" : null;
  return { graded, standing, worst: worst.title, ...hiddenLossOf(graded, besideDb), why };
}

function standingOf({ sweptFraction, need, reachedFraction, worstSwr }: WishGrade): Standing {
  if (worstSwr === null || need === "unknown" || sweptFraction < WHOLE) return "not-known";
  if (need === "none") return "ready";
  if (reachedFraction >= WHOLE) return "own-tuner";
  if (need === "beyond-tuner") return reachedFraction > 0 ? "in-part" : "out-of-reach";
  return "another-tuner";
}

/** Above 0 where the first is served worse. */
const compareWishes = (a: WishGrade, b: WishGrade): number =>
  ORDER.indexOf(standingOf(a)) - ORDER.indexOf(standingOf(b)) ||
  b.reachedFraction - a.reachedFraction ||
  finite(a.worstSwr) - finite(b.worstSwr);

const finite = (swr: number | null): number => Math.min(swr ?? Number.MAX_VALUE, Number.MAX_VALUE);

/** Sweeps of one wire put up in many ways differ by less in what is lost far from any match (our own choice, by the samples). */
const MORE_THAN_OTHERS_DB = 0.5;
/** Nobody said what the line loses: so much it may (our own choice: 20 m of thin cable on 10 m). */
const UNTOLD_LINE_DB = 1;

/** What the line is known to lose explains some of what the sweep allows; the rest may hide anywhere. */
function hiddenLossOf(
  { lossBoundDb, lossBoundHz, lineLossAt10MHzDb }: SweepGrade,
  besideDb: number,
): Pick<ForTonight, "hiddenLossDb" | "hiddenLossIs"> {
  if (besideDb > MORE_THAN_OTHERS_DB) return { hiddenLossDb: besideDb, hiddenLossIs: "more-than-others" };
  const boundAt10MHzDb = lossBoundHz === null ? 0 : (lossBoundDb ?? 0) / Math.sqrt(lossBoundHz / 10e6);
  const bounded = boundAt10MHzDb - (lineLossAt10MHzDb ?? UNTOLD_LINE_DB);
  if (bounded > HIDING_LOSS_DB) return { hiddenLossDb: bounded, hiddenLossIs: "most" };
  return { hiddenLossDb: null, hiddenLossIs: null };
}

const STEPS_OF_SHARE = 100;

function compare(a: Entry, b: Entry): number {
  const known = Number(a.why !== null) - Number(b.why !== null);
  if (known !== 0) return known;
  const lossy = Number(a.hiddenLossDb !== null) - Number(b.hiddenLossDb !== null);
  if (lossy !== 0) return lossy;
  // Of two that may burn their power the one that burns less is the better, whatever its SWR.
  const hidden = Math.round(a.hiddenLossDb ?? 0) - Math.round(b.hiddenLossDb ?? 0);
  if (hidden !== 0) return hidden;
  const standing = ORDER.indexOf(a.standing) - ORDER.indexOf(b.standing);
  if (standing !== 0) return standing;
  const share = (of: (wish: WishGrade) => number | null) => (entry: Entry) =>
    Math.min(...entry.graded.wishes.map((wish) => Math.round((of(wish) ?? 1) * STEPS_OF_SHARE)));
  const reached = share(({ reachedFraction }) => reachedFraction);
  if (reached(a) !== reached(b)) return reached(b) - reached(a);
  // An arrival that is not known does not count for or against.
  const arrives = share((wish) => wish.arrives?.least ?? null);
  const areKnown = [a, b].every(({ graded }) => graded.wishes.every((wish) => wish.arrives !== null));
  if (areKnown && arrives(a) !== arrives(b)) return arrives(b) - arrives(a);
  const worstSwr = ({ graded }: Entry) => Math.max(...graded.wishes.map((wish) => finite(wish.worstSwr)));
  return Math.sign(worstSwr(a) - worstSwr(b));
}
