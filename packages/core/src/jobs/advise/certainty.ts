import type { Wish } from "../../bands/wish.js";
import type { Interval } from "../../curve/uncertainty/band-uncertainty.js";
import type { Feedline } from "../../facts/feedline/feedline.js";
import type { Following, FollowingAt } from "../../facts/fixed-parts.js";
import type { MatchingPart } from "../../facts/matching/matching-part.js";
import { at } from "../../numbers/column.js";
import { type Complex, complex } from "../../numbers/complex.js";
import type { Antenna } from "./antenna.js";
import { AS_IS, type Candidate } from "./candidate.js";
import { type Score, scoreOf } from "./score.js";
import type { Shares, Terms } from "./shares.js";
import { scoreIn, sharesIn, type View, viewOf } from "./view.js";
import { gridOf } from "./wish-grid.js";

/**
 * How sure a prediction is: the same candidate is looked at for all that the antenna and the parts may be instead. The sweep may be off
 * by what its interval says, in any direction; a wire follows a change of its length by less or by more; its resistance does not scale
 * with it; parts and lines are not quite what is written on them.
 */

/** Frequencies of a wish at which doubts are looked at: what changes is asked for, not the share itself. */
const POINTS = 41;
/** Tolerance of coils and capacitors, and of the speed on a line (common practice, no source). */
const PART_TOLERANCE = 0.05;
const LINE_TOLERANCE = 0.02;
/**
 * By how much a resistance may change beyond what frequency explains, for each part of the length: height, counterpoise and ground stay
 * where they are. Chosen on NEC-2 models of two dipoles, a vee, a vertical and an end-fed wire; tests/advise/wire.test.ts holds it to others.
 */
const RESISTANCE_PER_LENGTH = 2;

/** One way in which antenna and wire may differ from what is thought most likely. */
interface Doubt {
  readonly plain: View;
  /** Of the same error of the sweep, with the doubts of a changed wire */
  readonly wired: readonly View[];
}

/** The same antenna in all the ways that it may differ. */
export interface Doubts {
  readonly likely: View;
  readonly others: readonly Doubt[];
  /** The same seen through lines that nobody told of: they do not change their length with the wire */
  readonly throughLines: readonly View[];
}

/** How a wire may follow: by less than is reckoned with, or by more; between those a share may be greater than at either. */
type Follow = (following: Following) => number;
const ENDS: readonly Follow[] = [({ least }) => least, ({ most }) => most];
const BETWEEN: readonly Follow[] = [
  ({ least, usual }) => (least + usual) / 2,
  ({ usual }) => usual,
  ({ usual, most }) => (usual + most) / 2,
];

/** Lines that may lie between sweep and antenna where none was told, electrical length in m (our own choice). */
const LINES_M = [4, 8, 15, 30];

/** A line without loss, of which nothing but its electrical length matters. */
const untoldLine = (lengthM: number): Feedline => ({
  title: "line that was not told",
  lengthM,
  characteristicOhms: 50,
  velocityFactor: 1,
  loss: { k0: 0, k1: 0, k2: 0 },
  lossIs: "stated",
  ratedVolts: null,
  ratedAmperes: null,
});

/** @param errors half of what Γ may be off at the analyser, one for each wish */
export function doubtsOf(
  antenna: Antenna,
  wishes: readonly Wish[],
  errors: readonly number[],
  terms: Terms,
  followingAt: FollowingAt,
  isLineKnown = true,
): Doubts {
  const grid = gridOf(wishes, POINTS);
  const view = (direction: Complex, follow: Follow, resistanceSign: number, seen = antenna): View =>
    viewOf(
      seen,
      grid,
      terms,
      (hz) => follow(followingAt(hz)),
      (wish, lengthChange) => ({
        reflection: complex((errors[wish] ?? 0) * direction.real, (errors[wish] ?? 0) * direction.imaginary),
        resistance: Math.max(0.1, 1 + resistanceSign * RESISTANCE_PER_LENGTH * Math.abs(lengthChange)),
      }),
    );
  const directions = antenna.hasPhase
    ? [complex(1, 0), complex(0, 1), complex(-1, 0), complex(0, -1)]
    : [complex(1, 0), complex(-1, 0)];
  return {
    likely: viewOf(antenna, grid, terms, (hz) => followingAt(hz).usual),
    others: [complex(0, 0), ...directions].map((direction, i) => ({
      plain: view(direction, ({ usual }) => usual, 0),
      wired: (i === 0 ? [...ENDS, ...BETWEEN] : ENDS).flatMap((follow) =>
        [-1, 1].map((sign) => view(direction, follow, sign)),
      ),
    })),
    throughLines:
      isLineKnown || !antenna.hasPhase
        ? []
        : LINES_M.flatMap((lengthM) =>
            ENDS.map((follow) => view(complex(0, 0), follow, 0, { ...antenna, feedline: untoldLine(lengthM) })),
          ),
  };
}

/** What a candidate may turn out to do. */
export interface Outlook {
  /** By wish: how much its share may be below and above what is thought most likely */
  readonly reached: readonly Interval[];
  /** The least that it is better than leaving everything alone, with the same error of the sweep; below 0: it may be worse */
  readonly leastGain: { readonly worst: number; readonly mean: number };
  /** How good it is for what is not owed to the loss of its parts */
  readonly credited: Score;
}

export function outlookOf({ likely, others, throughLines }: Doubts, candidate: Candidate): Outlook {
  const variants = withTolerances(candidate);
  const usual = sharesIn(likely, candidate);
  const low = usual.reached.map(() => 0);
  const high = usual.reached.map(() => 0);
  const leastGain = { worst: Number.POSITIVE_INFINITY, mean: Number.POSITIVE_INFINITY };
  const doubt = (view: View, before: Score) => {
    for (const variant of variants) {
      const shares = sharesIn(view, variant);
      shares.reached.forEach((reached, wish) => {
        const change = reached - at(usual.reached, wish);
        low[wish] = Math.min(at(low, wish), change);
        high[wish] = Math.max(at(high, wish), change);
      });
      const after = scoreOf(shares, view.grid.wishes);
      leastGain.worst = Math.min(leastGain.worst, gainOf(after, before, "worst"));
      leastGain.mean = Math.min(leastGain.mean, gainOf(after, before, "mean"));
    }
  };
  const isWired = candidate.lengthChange !== 0;
  for (const { plain, wired } of others) {
    const before = scoreIn(plain, AS_IS);
    for (const view of isWired ? wired : [plain]) doubt(view, before);
  }
  const asIs = scoreIn(likely, AS_IS);
  if (isWired) for (const view of throughLines) doubt(view, asIs);
  // What only the loss of its parts makes better is no gain.
  const bare = sharesIn(likely, withoutLoss(candidate, likely));
  const credited = scoreOf(leastOf(usual, bare), likely.grid.wishes);
  leastGain.worst = Math.min(leastGain.worst, gainOf(credited, asIs, "worst"));
  leastGain.mean = Math.min(leastGain.mean, gainOf(credited, asIs, "mean"));
  return { reached: Array.from(low, (value, wish) => ({ low: value, high: at(high, wish) })), leastGain, credited };
}

/** By what is within reach, or, where that is all the same, by what is without a tuner. */
function gainOf(after: Score, before: Score, of: "worst" | "mean"): number {
  const gain = after[of] - before[of];
  const withoutTuner = of === "worst" ? "worstWithoutTuner" : "meanWithoutTuner";
  return Math.abs(gain) > 1e-6 || after.worst < 1 ? gain : after[withoutTuner] - before[withoutTuner];
}

/** The lesser of two shares of each wish. */
const leastOf = (one: Shares, other: Shares): Shares => ({
  reached: one.reached.map((share, wish) => Math.min(share, at(other.reached, wish))),
  withoutTuner: one.withoutTuner.map((share, wish) => Math.min(share, at(other.withoutTuner, wish))),
  meanMagnitude: one.meanMagnitude,
});

/** A candidate whose own parts lose nothing; what is left of the line that is there loses what it did. */
function withoutLoss(candidate: Candidate, { line }: View): Candidate {
  // Of a line that is split what is left is that which is there; another line, or more of it, is a part like others.
  const own = (candidate.along?.length ?? 0) > 1 ? (line?.feedline.title ?? null) : null;
  const bare = (part: MatchingPart): MatchingPart => {
    switch (part.kind) {
      case "coil":
      case "capacitor":
        return { ...part, q: Number.POSITIVE_INFINITY };
      case "transformer":
        return part;
      case "line":
      case "stub":
        return part.kind === "line" && part.feedline.title === own
          ? part
          : { ...part, feedline: { ...part.feedline, loss: { k0: 0, k1: 0, k2: 0 } } };
    }
  };
  const { atFeed, along, atRadio, settings } = candidate;
  return {
    ...candidate,
    atFeed: atFeed.map(bare),
    along: along?.map(bare) ?? null,
    atRadio: atRadio.map(bare),
    settings: settings?.map((chain) => chain.map(bare)) ?? null,
  };
}

/** A candidate with its own parts at the ends of their tolerances, in all combinations. */
function withTolerances(candidate: Candidate): readonly Candidate[] {
  const atFeeds = chainsWithin(candidate.atFeed);
  const atRadios = chainsWithin(candidate.atRadio);
  const alongs = candidate.along === null ? [null] : chainsWithin(candidate.along);
  return atFeeds.flatMap((atFeed) =>
    atRadios.flatMap((atRadio) => alongs.map((along) => ({ ...candidate, atFeed, along, atRadio }))),
  );
}

/** As they are, and each part at both ends of its tolerance. */
function chainsWithin(chain: readonly MatchingPart[]): readonly (readonly MatchingPart[])[] {
  const corners = chain.reduce<readonly (readonly MatchingPart[])[]>(
    (all, part) => all.flatMap((before) => withinTolerance(part).map((each) => [...before, each])),
    [[]],
  );
  return [chain, ...corners];
}

function withinTolerance(part: MatchingPart): readonly MatchingPart[] {
  const ends = (tolerance: number) => [1 - tolerance, 1 + tolerance];
  switch (part.kind) {
    case "coil":
      return ends(PART_TOLERANCE).map((by) => ({ ...part, inductanceHenry: by * part.inductanceHenry }));
    case "capacitor":
      return ends(PART_TOLERANCE).map((by) => ({ ...part, capacitanceFarad: by * part.capacitanceFarad }));
    case "transformer":
      return [part];
    case "line":
    case "stub":
      return ends(LINE_TOLERANCE).map((by) => ({
        ...part,
        feedline: { ...part.feedline, velocityFactor: part.feedline.velocityFactor / by },
      }));
  }
}
