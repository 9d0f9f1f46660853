import type { Feedline } from "../../facts/feedline/feedline.js";
import type { LinePart, MatchingPart } from "../../facts/matching/matching-part.js";
import type { LineAtHand, PartsAtHand } from "../../facts/matching/parts-at-hand.js";
import { SPEED_OF_LIGHT } from "../../numbers/constants.js";
import { AS_IS, type Candidate, type CandidateKind } from "./candidate.js";

/** What candidates are made from. */
export interface Room {
  readonly hand: PartsAtHand;
  /** Between radio and antenna; null: not known, and all is done at the place of the sweep */
  readonly line: Feedline | null;
  /** Whether parts may lie at the antenna as well as at the radio */
  readonly hasTwoEnds: boolean;
  /** Without phase only a change of the wire, and a line that loses less, can be told */
  readonly hasPhase: boolean;
  /** From the lowest to the highest frequency wanted, Hz */
  readonly lowHz: number;
  readonly highHz: number;
  /** So much is wanted that a part of many values is not tried with a change of the wire as well */
  readonly isMuchWanted: boolean;
}

/** Relative changes of length that are tried: beyond a tenth a prediction is worth nothing. */
export const GREATEST_CHANGE = 0.1;
/** Steps of them, where only the wire is changed, and where a part of few or of many values goes with it; all are refined later. */
const WIRE_STEP = 0.005;
const STEP_WITH_FEW = 0.01;
const CHANGES_WITH_MANY = [-0.05, 0.05];

/** Whether there is as much of each kind of line as a candidate asks for; what is left of the line that is there is no new one. */
export function isAtHand({ hand, line }: Room, { atFeed, along, atRadio }: Candidate): boolean {
  const limited = hand.lines.filter(({ greatestM }) => greatestM !== null);
  if (limited.length === 0) return true;
  const parts = [...atFeed, ...(along ?? []), ...atRadio];
  return limited.every(({ feedline: { title }, greatestM }) => {
    const wanted = parts.reduce(
      (sum, part) => sum + ("feedline" in part && part.feedline.title === title ? part.feedline.lengthM : 0),
      0,
    );
    const there = along !== null && along.length > 1 && line?.title === title ? line.lengthM : 0;
    return wanted - there <= (greatestM ?? 0) + 1e-9;
  });
}

/** Everything that is tried, with the simplest first. */
export function* candidatesIn(room: Room): Generator<Candidate> {
  for (const candidate of allIn(room)) if (isAtHand(room, candidate)) yield candidate;
}

function* allIn(room: Room): Generator<Candidate> {
  yield AS_IS;
  yield* wires(WIRE_STEP);
  if (!room.hasPhase) {
    yield* withWire("line", linesThatLoseLess(room), [0]);
    return;
  }
  const few = [0, ...changes(STEP_WITH_FEW)];
  const many = room.isMuchWanted ? [0] : [0, ...CHANGES_WITH_MANY];
  yield* withWire("element", atEnds(room, elementsOf(room.hand)), few);
  yield* withWire("transformer", atEnds(room, chainsOf(room.hand.transformers)), few);
  yield* withWire("line", otherLines(room), many);
  const splits = splitsOf(room);
  const stubs = stubsOf(room);
  yield* withWire("stub", putInto(splits.slice(1), stubs), [0]);
  yield* withWire("stub", atEnds(room, stubs), many);
  const sections = sectionsOf(room);
  yield* withWire("section", putInto(splits.slice(1), sections), [0]);
  // Without a line known a section with nothing before it is another line.
  if (room.line !== null) yield* withWire("section", putInto(splits.slice(0, 1), sections), many);
  yield* withWire("network", atEnds(room, networksOf(room.hand)), many);
}

/** Where the parts of a candidate lie. */
type Placed = Pick<Candidate, "atFeed" | "along" | "atRadio">;

const changes = (step: number): readonly number[] => {
  const most = Math.round(GREATEST_CHANGE / step);
  return Array.from({ length: 2 * most + 1 }, (_, i) => Number(((i - most) * step).toFixed(6))).filter((c) => c !== 0);
};

function* wires(step: number): Generator<Candidate> {
  for (const lengthChange of changes(step)) yield { ...AS_IS, kind: "wire", lengthChange };
}

function* withWire(
  kind: CandidateKind,
  places: readonly Placed[],
  lengthChanges: readonly number[],
): Generator<Candidate> {
  for (const lengthChange of lengthChanges) {
    for (const { atFeed, along, atRadio } of places)
      yield { kind, lengthChange, atFeed, along, atRadio, settings: null };
  }
}

/** Chains at the antenna's end, and at the radio's end where that is another place. */
function atEnds({ hasTwoEnds }: Room, chains: readonly (readonly MatchingPart[])[]): readonly Placed[] {
  const atRadio = chains.map((chain) => ({ atFeed: [], along: null, atRadio: chain }));
  return hasTwoEnds ? [...chains.map((chain) => ({ atFeed: chain, along: null, atRadio: [] })), ...atRadio] : atRadio;
}

const chainsOf = (parts: readonly MatchingPart[]) => parts.map((part) => [part]);

/** Coils and capacitors, each in series or across. */
function reactors({ coilsHenry, capacitorsFarad, coilQ, capacitorQ }: PartsAtHand, placing: "series" | "across") {
  const coils = coilsHenry.map((inductanceHenry) => ({ kind: "coil", placing, inductanceHenry, q: coilQ }) as const);
  const capacitors = capacitorsFarad.map(
    (capacitanceFarad) => ({ kind: "capacitor", placing, capacitanceFarad, q: capacitorQ }) as const,
  );
  return [...coils, ...capacitors];
}

const elementsOf = (hand: PartsAtHand) => chainsOf([...reactors(hand, "series"), ...reactors(hand, "across")]);

/** Every pair of one part in series and one across, either of them nearer to the antenna. */
function networksOf(hand: PartsAtHand): readonly (readonly MatchingPart[])[] {
  const across = reactors(hand, "across");
  return reactors(hand, "series").flatMap((series) =>
    across.flatMap((other) => [
      [series, other],
      [other, series],
    ]),
  );
}

/** Lengths of line differ by this share of the shortest wave wanted, at the least, and are not more than so many. */
const LENGTH_STEP_WAVES = 1 / 24;
const MOST_LENGTHS = 60;
/** Shorter than this is lost in plugs and joints, m (our own choice). */
export const LEAST_LENGTH_M = 0.15;
const ROUND_M = 0.05;

/** Lengths of a kind of line from one step to half a wave of the longest wanted, as far as there is any. */
function lengthsOf({ lowHz, highHz }: Room, { feedline, greatestM }: LineAtHand): readonly number[] {
  const speed = feedline.velocityFactor * SPEED_OF_LIGHT;
  const most = Math.min(greatestM ?? Number.POSITIVE_INFINITY, speed / lowHz / 2);
  const wanted = Math.max((LENGTH_STEP_WAVES * speed) / highHz, most / MOST_LENGTHS);
  const step = Math.max(1, Math.round(wanted / ROUND_M)) * ROUND_M;
  return Array.from({ length: Math.floor(most / step + 1e-9) }, (_, i) => Number(((i + 1) * step).toFixed(2))).filter(
    (lengthM) => lengthM >= LEAST_LENGTH_M,
  );
}

const ofLength = (feedline: Feedline, lengthM: number): LinePart => ({
  kind: "line",
  feedline: { ...feedline, lengthM },
});

/** What the run between antenna and radio consists of beside what is put into it. */
const runOf = ({ line, hand }: Room): LineAtHand | null =>
  line ? { feedline: line, greatestM: line.lengthM } : (hand.lines[0] ?? null);

/** A place along the run: the line before and behind it. */
interface Split {
  readonly before: readonly LinePart[];
  readonly behind: readonly LinePart[];
}

/** The antenna's end of the run, and places in steps up to half a wave from there; what is behind one is left of the line. */
function splitsOf(room: Room): readonly Split[] {
  const run = runOf(room);
  const distances = run === null ? [0] : [0, ...lengthsOf(room, run)];
  return distances.map((distanceM) => {
    const leftM = room.line === null ? 0 : Number((room.line.lengthM - distanceM).toFixed(2));
    return {
      before: run !== null && distanceM > 0 ? [ofLength(run.feedline, distanceM)] : [],
      behind: room.line !== null && leftM > 0 ? [ofLength(room.line, leftM)] : [],
    };
  });
}

/** Chains put into the run at some places. */
const putInto = (splits: readonly Split[], chains: readonly (readonly MatchingPart[])[]): readonly Placed[] =>
  chains.flatMap((chain) =>
    splits.map(({ before, behind }) => ({ atFeed: [], along: [...before, ...chain, ...behind], atRadio: [] })),
  );

const areAlike = (one: Feedline, other: Feedline) =>
  one.characteristicOhms === other.characteristicOhms && one.title === other.title;

/** Another kind of line, as long as the one that is there or longer; without one known, a length put in between. */
function otherLines(room: Room): readonly Placed[] {
  const { line, hand } = room;
  return hand.lines.flatMap((kind) => {
    const more = lengthsOf(room, { ...kind, greatestM: null });
    const lengths = (line === null ? more : [0, ...more].map((lengthM) => line.lengthM + lengthM)).filter(
      (lengthM) => kind.greatestM === null || lengthM <= kind.greatestM,
    );
    return lengths.map((lengthM) => ({ atFeed: [], along: [ofLength(kind.feedline, lengthM)], atRadio: [] }));
  });
}

/** Lines of the same impedance: of them it can be told without phase what they lose. */
const linesThatLoseLess = ({ line, hand }: Room): readonly Placed[] =>
  line === null
    ? []
    : hand.lines
        .filter(({ feedline, greatestM }) => {
          const isLongEnough = greatestM === null || greatestM >= line.lengthM;
          return isLongEnough && feedline.characteristicOhms === line.characteristicOhms && !areAlike(feedline, line);
        })
        .map(({ feedline }) => ({ atFeed: [], along: [ofLength(feedline, line.lengthM)], atRadio: [] }));

/** Sections of another impedance: the quarter wave, the series section, and all between. */
function sectionsOf(room: Room): readonly (readonly MatchingPart[])[] {
  const ohms = runOf(room)?.feedline.characteristicOhms;
  return room.hand.lines
    .filter(({ feedline }) => feedline.characteristicOhms !== ohms)
    .flatMap((kind) => lengthsOf(room, kind).map((lengthM) => [ofLength(kind.feedline, lengthM)]));
}

/** Stubs of the kind that the line is of. */
function stubsOf(room: Room): readonly (readonly MatchingPart[])[] {
  const kinds = room.hand.lines.filter(
    ({ feedline }) => feedline.characteristicOhms === runOf(room)?.feedline.characteristicOhms,
  );
  const [kind] = kinds.length > 0 ? kinds : room.hand.lines;
  if (kind === undefined) return [];
  return (["open", "short"] as const).flatMap((end) =>
    lengthsOf(room, kind).map((lengthM) => [{ kind: "stub", end, feedline: { ...kind.feedline, lengthM } } as const]),
  );
}
