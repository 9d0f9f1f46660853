import { type Candidate, KINDS_BY_WORK } from "./candidate.js";
import { type Doubts, type Outlook, outlookOf } from "./certainty.js";
import { compareScores, type Score } from "./score.js";
import { nameOf, type Scored } from "./search.js";

/** A candidate that is better than leaving everything alone, whatever is not sure. */
export interface Chosen extends Scored {
  readonly outlook: Outlook;
}

/** Gains below this are none (our own choice). */
const LEAST_GAIN = 0.01;
/** How much the worst wish may lose for the others to count, and all together for the worst, at most. */
const AS_GOOD = 0.005;
const MOST_ADVICE = 5;

/** What was chosen, and how much that is as good was not. */
export interface Choice {
  readonly chosen: readonly Chosen[];
  /** How many were left out because a part of them would get too hot */
  readonly tooHot: number;
}

/**
 * The best few that are sure to be better than things as they are, one of each kind; of two that are as good as each other the one that
 * is less work first.
 *
 * @param isBearable whether none of its parts gets too hot
 */
export function choose(
  candidates: readonly Scored[],
  doubts: Doubts,
  isBearable: (candidate: Candidate) => boolean,
): Choice {
  const chosen = new Map<string, Chosen>();
  // Lengths that were moved may have changed the order.
  for (const scored of candidates.toSorted((a, b) => compareScores(b.score, a.score))) {
    const name = nameOf(scored.candidate);
    if (scored.candidate.kind === "as-is" || chosen.has(name)) continue;
    const outlook = outlookOf(doubts, scored.candidate);
    if (isSureGain(outlook)) chosen.set(name, { ...scored, outlook });
  }
  const sorted = [...chosen.values()].toSorted(
    (a, b) => inPoints(b.outlook.credited, a.outlook.credited) || effort(a) - effort(b),
  );
  const worth = sorted.filter((each) => isWorthBoth(each, sorted));
  const bearable: Chosen[] = [];
  let tooHot = 0;
  for (const each of worth) {
    if (bearable.length === MOST_ADVICE) break;
    if (isBearable(each.candidate)) bearable.push(each);
    else tooHot++;
  }
  return { chosen: bearable, tooHot };
}

const isSureGain = ({ leastGain: { worst, mean } }: Outlook): boolean =>
  (worst > LEAST_GAIN && mean > -AS_GOOD) || (worst > -AS_GOOD && mean > LEAST_GAIN);

/** Scores to the percent: nobody builds something for less. */
function inPoints(a: Score, b: Score): number {
  const points = (of: keyof Score) => Math.round(100 * a[of]) - Math.round(100 * b[of]);
  return points("worst") || points("mean") || points("worstWithoutTuner") || points("meanWithoutTuner");
}

const effort = ({ candidate: { kind, lengthChange } }: { readonly candidate: Candidate }): number =>
  2 * KINDS_BY_WORK.indexOf(kind) + (lengthChange === 0 ? 0 : 1);

/** A change of the wire with a part has to be better than either of them, and not by the loss of the part. */
function isWorthBoth(each: Chosen, all: readonly Chosen[]): boolean {
  const { kind, lengthChange } = each.candidate;
  if (kind === "wire" || lengthChange === 0) return true;
  const halves = all.filter(
    ({ candidate }) => candidate.kind === "wire" || (candidate.kind === kind && candidate.lengthChange === 0),
  );
  const isBetter = (one: Score, other: Score) =>
    one.worst > other.worst + LEAST_GAIN || (one.worst > other.worst - AS_GOOD && one.mean > other.mean + LEAST_GAIN);
  return halves.every((half) => isBetter(each.outlook.credited, half.outlook.credited));
}
