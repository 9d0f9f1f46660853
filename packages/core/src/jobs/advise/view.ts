import { copyPlace, emptyPlace, type Place, passThrough } from "../../facts/matching/chain.js";
import type { LinePart } from "../../facts/matching/matching-part.js";
import { type Antenna, type Deviation, NO_DEVIATION, placeAtAntenna } from "./antenna.js";
import { atRadioFor, type Candidate, chainOf } from "./candidate.js";
import { type Score, scoreOf } from "./score.js";
import { emptyShares, type Shares, type Terms, writeShares } from "./shares.js";
import type { WishGrid } from "./wish-grid.js";

/** What an antenna looks like from both ends of its line. */
interface Ends {
  readonly antenna: Place;
  readonly radio: Place;
}

/** How far a frequency, Hz, follows a relative change of length. */
export type Follows = (frequencyHz: number) => number;

/** As if all were cut alike; for whoever changes no length. */
export const FOLLOWS_ALL: Follows = () => 1;

/** An antenna as it is seen on a grid of what is wanted; what has been reckoned once is kept. */
export interface View {
  readonly grid: WishGrid;
  readonly terms: Terms;
  readonly line: LinePart | null;
  readonly endsAt: (lengthChange: number) => Ends;
  /** To be written over by whoever looks */
  readonly scratch: Place;
  readonly scratchShares: Shares;
}

/**
 * @param deviationAt what the antenna differs by, for a wish and a change of length
 */
export function viewOf(
  antenna: Antenna,
  grid: WishGrid,
  terms: Terms,
  follows: Follows,
  deviationAt: (wish: number, lengthChange: number) => Deviation = () => NO_DEVIATION,
): View {
  const line: LinePart | null = antenna.feedline && { kind: "line", feedline: antenna.feedline };
  const known = new Map<number, Ends>();
  const endsAt = (lengthChange: number): Ends => {
    const ends = known.get(lengthChange);
    if (ends !== undefined) return ends;
    const stretch = (frequencyHz: number) => 1 + follows(frequencyHz) * lengthChange;
    const deviations = grid.wishes.map((_, wish) => deviationAt(wish, lengthChange));
    const atAntenna = placeAtAntenna(antenna, grid, stretch, deviations);
    const radio = emptyPlace(grid.frequencyHz.length);
    copyPlace(atAntenna, radio);
    if (line !== null) passThrough(radio, line, grid.frequencyHz);
    const made = { antenna: atAntenna, radio };
    known.set(lengthChange, made);
    return made;
  };
  return {
    grid,
    terms,
    line,
    endsAt,
    scratch: emptyPlace(grid.frequencyHz.length),
    scratchShares: emptyShares(grid.wishes.length),
  };
}

/** Voltage and current at the radio with a candidate's parts in place, set as for a wish; valid until the next look. */
export function radioPlace(view: View, candidate: Candidate, wish = 0): Place {
  const { antenna, radio } = view.endsAt(candidate.lengthChange);
  const isLineKept = candidate.atFeed.length === 0 && candidate.along === null;
  const parts = isLineKept ? atRadioFor(candidate, wish) : chainOf(candidate, view.line, wish);
  if (parts.length === 0) return radio;
  copyPlace(isLineKept ? radio : antenna, view.scratch);
  for (const part of parts) passThrough(view.scratch, part, view.grid.frequencyHz);
  return view.scratch;
}

/** What a candidate does for each wish. */
export const sharesIn = (view: View, candidate: Candidate): Shares =>
  writtenShares(view, candidate, emptyShares(view.grid.wishes.length));

/** How good a candidate is. */
export const scoreIn = (view: View, candidate: Candidate): Score =>
  scoreOf(writtenShares(view, candidate, view.scratchShares), view.grid.wishes);

function writtenShares(view: View, candidate: Candidate, into: Shares): Shares {
  const { grid, terms } = view;
  const { antenna } = view.endsAt(candidate.lengthChange);
  let radio = radioPlace(view, candidate);
  for (let wish = 0; wish < grid.wishes.length; wish++) {
    if (candidate.settings !== null) radio = radioPlace(view, candidate, wish);
    writeShares(into, grid, wish, antenna, radio, terms);
  }
  return into;
}
