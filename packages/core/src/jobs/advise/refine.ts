import type { MatchingPart } from "../../facts/matching/matching-part.js";
import type { Candidate } from "./candidate.js";
import { compareScores } from "./score.js";
import type { Scored } from "./search.js";
import { scoreIn, type View } from "./view.js";

/** Steps by which a wire and a length of line are moved, the coarse ones first. */
const STEPS = [
  { change: 0.004, lengthM: 0.25 },
  { change: 0.001, lengthM: 0.05 },
  { change: 0.0005, lengthM: 0.01 },
];
/** A candidate that goes on getting better by a hair is far from the best of its kind. */
const MOST_MOVES = 20;
/** Less than this nobody cuts, more than that nobody can foretell. */
const LEAST_CHANGE = 0.002;
const GREATEST_CHANGE = 0.1;

/** A candidate with its lengths moved while that makes it better: parts have the values that are sold, lengths are free. */
export function refined(view: View, start: Scored, lineM: number | null): Scored {
  let best = start;
  for (const step of STEPS) {
    let isBetter = true;
    for (let moves = 0; isBetter && moves < MOST_MOVES; moves++) {
      isBetter = false;
      for (const candidate of neighbours(best.candidate, step, lineM)) {
        const score = scoreIn(view, candidate);
        if (compareScores(score, best.score) <= 0) continue;
        best = { candidate, score };
        isBetter = true;
      }
    }
  }
  return best;
}

/** The same candidate with one length a step shorter or longer. */
function neighbours(
  candidate: Candidate,
  { change, lengthM }: (typeof STEPS)[number],
  lineM: number | null,
): readonly Candidate[] {
  const { lengthChange, atFeed, along, atRadio } = candidate;
  const wires = [-change, change]
    .map((by) => Number((lengthChange + by).toFixed(6)))
    .filter((moved) => lengthChange !== 0 && Math.abs(moved) >= LEAST_CHANGE && Math.abs(moved) <= GREATEST_CHANGE)
    .map((moved) => ({ ...candidate, lengthChange: moved }));
  const moves = [-lengthM, lengthM];
  return [
    ...wires,
    ...moved(atFeed, moves).map((parts) => ({ ...candidate, atFeed: parts })),
    ...moved(atRadio, moves).map((parts) => ({ ...candidate, atRadio: parts })),
    ...(along === null ? [] : movedRun(along, moves, lineM).map((parts) => ({ ...candidate, along: parts }))),
  ];
}

/** A chain with one of its lengths moved, in all ways. */
function moved(parts: readonly MatchingPart[], moves: readonly number[]): readonly (readonly MatchingPart[])[] {
  return parts.flatMap((part, k) =>
    moves.flatMap((by) => {
      const other = longer(part, by);
      return other === null ? [] : [parts.with(k, other)];
    }),
  );
}

/** The same of a run whose line is as long as it was: what it gains before a part it loses behind it. */
function movedRun(
  parts: readonly MatchingPart[],
  moves: readonly number[],
  lineM: number | null,
): readonly (readonly MatchingPart[])[] {
  const [first, last] = [parts[0], parts.at(-1)];
  const isWhole = parts.length === 1;
  const isSplit = parts.length === 3 && first !== undefined && last !== undefined;
  return parts.flatMap((part, k) =>
    moves.flatMap((by) => {
      const other = longer(part, by);
      if (other === null) return [];
      // Another line has to reach as far as the one that is there.
      if (isWhole && lineM !== null && other.kind === "line" && other.feedline.lengthM < lineM) return [];
      if (!isSplit || k === 1) return [parts.with(k, other)];
      if (k === 2) return [];
      const rest = longer(last, -by);
      return rest === null ? [] : [parts.with(0, other).with(2, rest)];
    }),
  );
}

function longer(part: MatchingPart, by: number): MatchingPart | null {
  if (part.kind !== "line" && part.kind !== "stub") return null;
  const lengthM = Number((part.feedline.lengthM + by).toFixed(2));
  return lengthM > 0 ? { ...part, feedline: { ...part.feedline, lengthM } } : null;
}
