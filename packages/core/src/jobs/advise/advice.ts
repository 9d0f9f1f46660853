import type { Interval } from "../../curve/uncertainty/band-uncertainty.js";
import { magnitudeAt, powerAt } from "../../facts/matching/chain.js";
import type { MatchingPart } from "../../facts/matching/matching-part.js";
import { type PartStress, stressOf } from "../../facts/matching/part-stress.js";
import { at } from "../../numbers/column.js";
import { type Candidate, type CandidateKind, chainOf } from "./candidate.js";
import { radioPlace, sharesIn, type View } from "./view.js";
import { rangeOf } from "./wish-grid.js";

/** What is to be expected of a wish. */
export interface WishOutcome {
  /** Share within reach with the operator's own tuner, where there is one, of which enough power arrives; 0 to 1 */
  readonly reached: number;
  /** What that may be */
  readonly reachedBetween: Interval;
  /** The same without a tuner */
  readonly withoutTuner: number;
  /** The least share of the power that arrives at the antenna where it is within reach, 0 to 1; null where nothing is */
  readonly arrives: number | null;
}

/** Where a part goes: at the antenna, into the line, or at the radio's end. */
export type PartPlace = "feed" | "line" | "radio";

/** A part of an advice, and what it bears. */
export interface AdvisedPart {
  readonly place: PartPlace;
  /** Length of line between it and the antenna, m */
  readonly fromAntennaM: number;
  /** The wish that it is set for; null: it stays as it is for all */
  readonly wish: string | null;
  readonly part: MatchingPart;
  /** At the power that was reckoned with, over what is within reach; effective values */
  readonly stress: PartStress;
}

/** One thing to try. */
export interface Advice {
  readonly kind: CandidateKind;
  /** What to do, in one line */
  readonly what: string;
  /** Relative change of the length of the wire, 0: none */
  readonly lengthChange: number;
  /** The same in m; null where the length is not known */
  readonly lengthChangeM: number | null;
  readonly parts: readonly AdvisedPart[];
  /** In the order of the wishes */
  readonly outcomes: readonly WishOutcome[];
}

/** What a candidate does for each wish, with how sure that is. */
export function outcomesOf(view: View, candidate: Candidate, doubts: readonly Interval[]): readonly WishOutcome[] {
  const arrivals = view.grid.wishes.map((_, wish) => leastArrival(view, candidate, wish));
  const { reached: allReached, withoutTuner } = sharesIn(view, candidate);
  return Array.from(allReached, (reached, wish) => {
    const { low, high } = doubts[wish] ?? { low: 0, high: 0 };
    return {
      reached,
      reachedBetween: { low: Math.max(0, reached + low), high: Math.min(1, reached + high) },
      withoutTuner: at(withoutTuner, wish),
      arrives: arrivals[wish] ?? null,
    };
  });
}

/** The frequencies of a wish that a candidate brings within reach. */
function withinReach(view: View, candidate: Candidate, wish: number): readonly number[] {
  const radio = radioPlace(view, candidate, wish);
  const [start, end] = rangeOf(view.grid, wish);
  return Array.from({ length: end - start }, (_, k) => start + k).filter(
    (i) => magnitudeAt(radio, i, view.terms.radioOhms) <= view.terms.tunedMagnitude,
  );
}

function leastArrival(view: View, candidate: Candidate, wish: number): number | null {
  const { antenna } = view.endsAt(candidate.lengthChange);
  const places = withinReach(view, candidate, wish);
  const radio = radioPlace(view, candidate, wish);
  const { radioOhms, magnitude, throughTuner } = view.terms;
  const shares = places.map(
    (i) =>
      (powerAt(antenna, i) / powerAt(radio, i)) * (magnitudeAt(radio, i, radioOhms) > magnitude ? throughTuner : 1),
  );
  return shares.length === 0 ? null : Math.min(...shares);
}

/** The parts of a candidate that are not there yet, with what they bear. */
export function advisedParts(view: View, candidate: Candidate, powerW: number): readonly AdvisedPart[] {
  const { wishes, frequencyHz } = view.grid;
  const { antenna } = view.endsAt(candidate.lengthChange);
  const stressesAt = wishes.map((_, wish) => {
    const counted = new Set(withinReach(view, candidate, wish));
    return stressOf(antenna, chainOf(candidate, view.line, wish), frequencyHz, (i) => counted.has(i), powerW);
  });
  const isSet = candidate.settings !== null;
  const placed = isSet
    ? wishes.flatMap((wish, k) => placedParts(candidate, view, k).map((each) => ({ ...each, k, wish: wish.title })))
    : placedParts(candidate, view, 0).map((each) => ({ ...each, k: null, wish: null }));
  return placed.map(({ place, part, index, k, wish, fromAntennaM }) => {
    const stresses = (k === null ? stressesAt : stressesAt.slice(k, k + 1)).flatMap((each) => each[index] ?? []);
    return { place, fromAntennaM, wish, part, stress: greatest(stresses) };
  });
}

/** What is added, with its place in the chain; of a line that stays in use nothing is. */
function placedParts(candidate: Candidate, view: View, wish: number) {
  const { atFeed, along } = candidate;
  const chain = chainOf(candidate, view.line, wish);
  const run = along ?? (view.line === null ? [] : [view.line]);
  return chain.flatMap((part, index) => {
    const place: PartPlace = index < atFeed.length ? "feed" : index < atFeed.length + run.length ? "line" : "radio";
    const isOld = place === "line" && part.kind === "line" && isOwnLine(part, run, view);
    const before = chain.slice(0, index).map((each) => (each.kind === "line" ? each.feedline.lengthM : 0));
    const fromAntennaM = Number(before.reduce((sum, length) => sum + length, 0).toFixed(2));
    return isOld ? [] : [{ place, part, index, fromAntennaM }];
  });
}

/** Whether a length of line is one that is left of the line as it is. */
function isOwnLine(part: MatchingPart, run: readonly MatchingPart[], { line }: View): boolean {
  if (part.kind !== "line" || line === null) return false;
  if (run.length === 1) return part === line;
  return (
    part.feedline.title === line.feedline.title && part.feedline.characteristicOhms === line.feedline.characteristicOhms
  );
}

const greatest = (stresses: readonly PartStress[]): PartStress => ({
  volts: Math.max(0, ...stresses.map(({ volts }) => volts)),
  amperes: Math.max(0, ...stresses.map(({ amperes }) => amperes)),
  heatW: Math.max(0, ...stresses.map(({ heatW }) => heatW)),
});

/** The frequencies at which a wish was looked at; for a picture. */
export const frequenciesOf = ({ grid }: View, wish: number): Float64Array =>
  grid.frequencyHz.subarray(...rangeOf(grid, wish));

/** ρ at the radio over a wish; for a picture. */
export function magnitudesOf(view: View, candidate: Candidate, wish: number): readonly number[] {
  const radio = radioPlace(view, candidate, wish);
  const [start, end] = rangeOf(view.grid, wish);
  return Array.from({ length: end - start }, (_, k) => magnitudeAt(radio, start + k, view.terms.radioOhms));
}
