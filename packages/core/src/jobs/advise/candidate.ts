import type { LinePart, MatchingPart } from "../../facts/matching/matching-part.js";

/** What is tried, told apart by what has to be done for it. */
export type CandidateKind =
  | "as-is"
  | "wire"
  | "element"
  | "transformer"
  | "line"
  | "stub"
  | "section"
  | "network"
  | "settings";

/** The least work first. */
export const KINDS_BY_WORK: readonly CandidateKind[] = [
  "as-is",
  "wire",
  "element",
  "transformer",
  "line",
  "stub",
  "section",
  "network",
  "settings",
];

/** Something to try: a change of the wire, parts between antenna and radio, or both. */
export interface Candidate {
  readonly kind: CandidateKind;
  /** Relative change of the length of the wire; 0 leaves it alone */
  readonly lengthChange: number;
  /** Parts at the antenna, from there on */
  readonly atFeed: readonly MatchingPart[];
  /** What leads to the radio, from the antenna on; null: the line as it is */
  readonly along: readonly MatchingPart[] | null;
  /** Parts at the radio's end, from the antenna's side on */
  readonly atRadio: readonly MatchingPart[];
  /** The same of a tuner that is set for each wish by itself, beside `atRadio`; null: nothing is set */
  readonly settings: readonly (readonly MatchingPart[])[] | null;
}

export const AS_IS: Candidate = {
  kind: "as-is",
  lengthChange: 0,
  atFeed: [],
  along: null,
  atRadio: [],
  settings: null,
};

/** What of a candidate lies at the radio's end, for a wish. */
export const atRadioFor = ({ atRadio, settings }: Candidate, wish: number): readonly MatchingPart[] =>
  settings === null ? atRadio : [...atRadio, ...(settings[wish] ?? [])];

/** All parts of a candidate for a wish, from the antenna to the radio. */
export const chainOf = (candidate: Candidate, line: LinePart | null, wish: number): readonly MatchingPart[] => [
  ...candidate.atFeed,
  ...(candidate.along ?? (line === null ? [] : [line])),
  ...atRadioFor(candidate, wish),
];
