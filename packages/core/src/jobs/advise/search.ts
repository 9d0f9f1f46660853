import type { Candidate } from "./candidate.js";
import { compareScores, type Score } from "./score.js";
import { scoreIn, type View } from "./view.js";

/** A candidate and how good it is. */
export interface Scored {
  readonly candidate: Candidate;
  readonly score: Score;
}

/** Whether a change of the wire goes with it makes another kind of a candidate. */
export const nameOf = ({ kind, lengthChange }: Candidate): string => (lengthChange === 0 ? kind : `${kind} and wire`);

/**
 * The best candidates of each kind, with and without a change of the wire, the best first.
 *
 * @param most of each kind
 */
export function bestOfEachKind(view: View, candidates: Iterable<Candidate>, most: number): readonly Scored[] {
  const kinds = new Map<string, Scored[]>();
  for (const candidate of candidates) {
    const name = nameOf(candidate);
    const kept = kinds.get(name) ?? [];
    const score = scoreIn(view, candidate);
    // As many as are wanted stand sorted at its head, those that may be better behind them.
    const least = kept[most - 1]?.score;
    if (least !== undefined && compareScores(score, least) <= 0) continue;
    kept.push({ candidate, score });
    kinds.set(name, kept.length === most || kept.length >= 2 * most ? theBest(kept, most) : kept);
  }
  return [...kinds.values()].flatMap((kept) => theBest(kept, most));
}

/** Of those that are alike the first one is kept before the others. */
const theBest = (scored: readonly Scored[], most: number): Scored[] =>
  scored.toSorted((a, b) => compareScores(b.score, a.score)).slice(0, most);
