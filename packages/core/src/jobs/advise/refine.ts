import type { MatchingPart } from "../../facts/matching/matching-part.js";
import type { Candidate } from "./candidate.js";
import { GREATEST_CHANGE, isAtHand, LEAST_LENGTH_M, type Room } from "./candidates.js";
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
/** Less than this nobody cuts. */
const LEAST_CHANGE = 0.002;

/** A candidate with its lengths moved while that makes it better: parts have the values that are sold, lengths are free. */
export function refined(view: View, start: Scored, room: Room): Scored {
  const lineM = room.line?.lengthM ?? null;
  let best = start;
  for (const step of STEPS) {
    let isBetter = true;
    for (let moves = 0; isBetter && moves < MOST_MOVES; moves++) {
      isBetter = false;
      for (const candidate of neighbours(best.candidate, step, lineM)) {
        if (!isAtHand(room, candidate)) continue;
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

/**
 * The same of a run. Another line has to reach as far as the one that is there; of a line that is split by a part, what is gained before
 * the part is lost behind it, and what is left of it at the end is not moved by itself.
 */
function movedRun(
  parts: readonly MatchingPart[],
  moves: readonly number[],
  lineM: number | null,
): readonly (readonly MatchingPart[])[] {
  const last = parts.at(-1);
  const isSplit = lineM !== null && parts.length === 3;
  return parts.flatMap((part, k) =>
    moves.flatMap((by) => {
      const other = longer(part, by);
      if (other === null || last === undefined) return [];
      if (lineM === null) return [parts.with(k, other)];
      if (parts.length === 1) return other.kind === "line" && other.feedline.lengthM < lineM ? [] : [[other]];
      if (k === parts.length - 1) return [];
      if (!isSplit || k === 1) return [parts.with(k, other)];
      const rest = longer(last, -by);
      return rest === null ? [] : [parts.with(0, other).with(2, rest)];
    }),
  );
}

function longer(part: MatchingPart, by: number): MatchingPart | null {
  if (part.kind !== "line" && part.kind !== "stub") return null;
  const lengthM = Number((part.feedline.lengthM + by).toFixed(2));
  return lengthM >= LEAST_LENGTH_M ? { ...part, feedline: { ...part.feedline, lengthM } } : null;
}
