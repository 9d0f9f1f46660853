import type { PlanInfo } from "../../bands/scope.js";
import type { Wish } from "../../bands/wish.js";
import type { Feedline } from "../../facts/feedline/feedline.js";
import type { ToldOfFixed } from "../../facts/fixed-parts.js";
import type { Limits } from "../../facts/limits.js";
import type { Finding } from "../../sweep/finding.js";
import type { SweepInfo } from "../../sweep/sweep-info.js";
import type { Advice, WishOutcome } from "./advice.js";
import type { Experiment } from "./experiment.js";
import type { MatchLimit } from "./match-limit.js";

/**
 * try: something is better for sure; leave-it: all that is wanted is within reach as it is; nothing-better: nothing that was tried is
 * better by more than what is not sure; measure-first: too little is known for anything to be foretold.
 */
export type AdviseVerdict = "try" | "leave-it" | "nothing-better" | "measure-first";

/** Why nothing can be foretold of a wish. */
export type NotForetold = "not-swept" | "only-readings" | "no-phase";

/** A wish, and what it is like as it is. */
export interface WishNow extends Pick<Wish, "title" | "band" | "pieces" | "weight"> {
  /** Name of the mode; null: any */
  readonly mode: string | null;
  /** null: it can be foretold */
  readonly notForetold: NotForetold | null;
  /** As it is, by its sweep or by readings that cover it; null where neither tells */
  readonly now: WishOutcome | null;
  /** What no lossless network can do better; null without phase, and where nothing can be foretold */
  readonly limit: MatchLimit | null;
}

/** ρ at the radio over a wish, as it is and with the first advice; for a picture. */
export interface AdviceCurve {
  readonly title: string;
  readonly frequencyHz: readonly number[];
  readonly before: readonly number[];
  /** Empty where there is no advice */
  readonly after: readonly number[];
}

/** What to try next. Plain data: as JSON it is what `feedpoint try --json` prints. */
export interface AdviseResult extends ToldOfFixed {
  /** Name and version of this form */
  readonly schema: "feedpoint/try@1";
  /** What was read */
  readonly sweep: SweepInfo;
  readonly plan: PlanInfo;
  readonly limits: Limits;
  /** As it was given; null where none was */
  readonly feedline: Feedline | null;
  /** Where parts can be put: at both ends of the line, at the antenna, or only where the sweep was taken */
  readonly ends: "antenna-and-radio" | "antenna" | "analyser";
  readonly wireLengthM: number | null;
  /** The power that stress was reckoned at, W; stated, or 100 */
  readonly powerW: number;
  readonly isPowerStated: boolean;
  /** Share of the power that has to arrive for a frequency to count, 0 to 1 */
  readonly leastArriving: number;
  readonly verdict: AdviseVerdict;
  readonly wishes: readonly WishNow[];
  /** The best first, five at most; outcomes are of the wishes that can be foretold, in their order */
  readonly advice: readonly Advice[];
  /** The measurement that may change most of the answers; null where none may */
  readonly experiment: Experiment | null;
  readonly curves: readonly AdviceCurve[];
  readonly findings: readonly Finding[];
  readonly cautions: readonly string[];
}
