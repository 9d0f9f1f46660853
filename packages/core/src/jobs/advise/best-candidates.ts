import type { Wish } from "../../bands/wish.js";
import { partsAtHand } from "../../facts/matching/parts-at-hand.js";
import { isBalanced } from "./advise-findings.js";
import type { AdviseOptions } from "./advise-options.js";
import type { Antenna } from "./antenna.js";
import { candidatesIn, type Room } from "./candidates.js";
import { refined } from "./refine.js";
import { bestOfEachKind, type Scored } from "./search.js";
import { tunerSettings } from "./settings.js";
import type { Terms } from "./shares.js";
import { type Follows, scoreIn, viewOf } from "./view.js";
import { gridOf } from "./wish-grid.js";

/** Frequencies of a wish: where most candidates are sorted out, where the rest is ranked, and where their lengths are moved. */
const POINTS = { screen: 5, screenOfMany: 3, rank: 25, refine: 41 };
const MANY_WISHES = 4;
/** Candidates of each kind that are looked at more closely each time. */
const KEPT = { screen: 150, rank: 4 };

/** What candidates are made from, for what is wanted of an antenna. */
export function roomFor(
  { feedline, hasPhase }: Antenna,
  wishes: readonly Wish[],
  { parts }: Pick<AdviseOptions, "parts">,
): Room {
  const ends = wishes.flatMap(({ pieces }) => pieces.flatMap(({ lowHz, highHz }) => [lowHz, highHz]));
  const [lowHz, highHz] = [Math.min(...ends), Math.max(...ends)];
  const all = partsAtHand(parts, lowHz, highHz);
  // Nobody puts bare wires into a coaxial line without being asked.
  const mayBeBalanced = parts !== undefined || (feedline !== null && isBalanced(feedline));
  const hand = mayBeBalanced ? all : { ...all, lines: all.lines.filter((line) => !isBalanced(line.feedline)) };
  const isMuchWanted = wishes.length > MANY_WISHES;
  return { hand, line: feedline, hasTwoEnds: feedline !== null, hasPhase, lowHz, highHz, isMuchWanted };
}

/** The best of everything that can be tried, a few of each kind, with their lengths as good as they can be. */
export function bestCandidates(
  antenna: Antenna,
  wishes: readonly Wish[],
  terms: Terms,
  follows: Follows,
  { parts, equipment = {} }: Pick<AdviseOptions, "parts" | "equipment">,
): readonly Scored[] {
  const room = roomFor(antenna, wishes, parts === undefined ? {} : { parts });
  const view = (points: number) => viewOf(antenna, gridOf(wishes, points), terms, follows);
  const screened = bestOfEachKind(
    view(room.isMuchWanted ? POINTS.screenOfMany : POINTS.screen),
    candidatesIn(room),
    KEPT.screen,
  );
  const ranked = bestOfEachKind(
    view(POINTS.rank),
    screened.map(({ candidate }) => candidate),
    KEPT.rank,
  );
  const fine = view(POINTS.refine);
  // Who has a tuner of wide range sets it band by band anyway.
  const isTunerWorthAsking = antenna.hasPhase && room.hand.hasManualTuner && equipment.radio?.tuner !== "wide-range";
  const settings = isTunerWorthAsking ? tunerSettings(fine, room.hand) : null;
  return [
    ...ranked.map((each) => refined(fine, each, room)),
    ...(settings === null ? [] : [{ candidate: settings, score: scoreIn(fine, settings) }]),
  ];
}
