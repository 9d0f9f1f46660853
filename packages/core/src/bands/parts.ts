import type { Piece } from "../curve/pieces.js";
import { type Grounds, groundsOf } from "../curve/uncertainty/band-uncertainty.js";
import type { BandPlan } from "../facts/band-plan/band-plan.js";
import type { Limits } from "../facts/limits.js";
import { at, medianOf } from "../numbers/column.js";
import { once } from "../numbers/once.js";
import { reflectionMagnitudeFromSwr } from "../reflection/swr.js";
import type { Deployment } from "../sweep/deployment.js";
import { isOverStretch, type Reading } from "../sweep/reading.js";
import { readingsOf, type ScalarSweep, type Sweep, scalarSweep } from "../sweep/sweep.js";
import { type Analysis, analyse } from "./analysis.js";

/** What a part of a deployment knows: a curve, single readings, or a reading of a whole stretch. */
export interface Part {
  /** The sweep or list of readings that it comes from */
  readonly sweep: Sweep;
  /** Of a reading of a stretch: as if all of it had the greatest SWR noted */
  readonly analysis: Analysis;
  readonly grounds: () => Grounds | null;
  readonly knows: "curve" | "spots" | "stretch";
  /** ρ of the least SWR noted for a stretch; null for everything else */
  readonly leastMagnitude: number | null;
}

/**
 * What the parts of a deployment know, in the order in which they answer: curves before readings, the finest step first, with
 * phase before without. Curves are never mixed.
 */
export function partsOf(deployment: Deployment, limits: Limits, plan: BandPlan): readonly Part[] {
  const parts = deployment.parts.flatMap((sweep) => partsOfSweep(sweep, limits, plan));
  if (parts.length === 1) return parts;
  const ranked = parts.map((part) => ({ part, rank: rankOf(part) }));
  return ranked.sort((a, b) => byRank(a.rank, b.rank)).map(({ part }) => part);
}

function partsOfSweep(sweep: Sweep, limits: Limits, plan: BandPlan): readonly Part[] {
  const readings = readingsOf(sweep);
  if (sweep.kind === "vector" || readings.length === 0) return [partOf(sweep, sweep, limits)];
  const atFrequencies = readings.filter((reading) => !isOverStretch(reading));
  return [
    ...(atFrequencies.length === 0 ? [] : [partOf(sweep, onlyAt(sweep, atFrequencies), limits)]),
    ...readings.filter(isOverStretch).map((reading) => {
      const { swrLow } = reading;
      const stretch = overStretch(sweep, reading, plan);
      return {
        ...partOf(sweep, stretch, limits),
        knows: "stretch",
        leastMagnitude: reflectionMagnitudeFromSwr(swrLow),
      } as const;
    }),
  ];
}

function partOf(sweep: Sweep, judged: Sweep, limits: Limits): Part {
  const analysis = analyse(judged, limits);
  const knows = judged.continuity === "spots" ? "spots" : "curve";
  return { sweep, analysis, grounds: once(() => groundsOf(analysis.trace)), knows, leastMagnitude: null };
}

/** The samples that stand for readings at one frequency each. */
function onlyAt(sweep: ScalarSweep, readings: readonly Reading[]): ScalarSweep {
  const frequencies = new Set(readings.map(({ lowHz }) => lowHz));
  const kept = [...sweep.frequencyHz.keys()].filter((i) => frequencies.has(at(sweep.frequencyHz, i)));
  return scalarSweep(
    sweep,
    {
      frequencyHz: Float64Array.from(kept, (i) => at(sweep.frequencyHz, i)),
      reflectionMagnitude: Float64Array.from(kept, (i) => at(sweep.reflectionMagnitude, i)),
    },
    sweep.ceilingMagnitude,
  );
}

/** The greatest SWR noted, all over its stretch; a band reaches as far as the plan has it. */
function overStretch(
  sweep: ScalarSweep,
  { band, lowHz, highHz, swrHigh, isAtLeast }: Reading,
  plan: BandPlan,
): ScalarSweep {
  const ends = plan.bands.find((each) => each.band === band) ?? { lowHz, highHz };
  const magnitude = reflectionMagnitudeFromSwr(swrHigh);
  return scalarSweep(
    { ...sweep, continuity: "curve" },
    {
      frequencyHz: Float64Array.of(ends.lowHz, ends.highHz),
      reflectionMagnitude: Float64Array.of(magnitude, magnitude),
    },
    isAtLeast && magnitude < 1 ? magnitude : null,
  );
}

type Rank = readonly (number | string)[];

const KNOWS: readonly Part["knows"][] = ["curve", "stretch", "spots"];

const rankOf = ({ sweep, analysis, knows }: Part): Rank => [
  KNOWS.indexOf(knows),
  // Steps of one sweep and its repeat differ by rounding in print.
  Number(stepOf(analysis.curve.sweep.frequencyHz).toPrecision(3)),
  sweep.kind === "vector" ? 0 : 1,
  sweep.takenAt ?? "",
  // "40m.s1p" before "40m-again.s1p"
  sweep.source.file.replace(/\.[^./\\]*$/, ""),
  sweep.source.file,
  sweep.label,
];

/** The usual step of a sweep, Hz. */
const stepOf = (frequencyHz: Sweep["frequencyHz"]): number =>
  frequencyHz.length < 2
    ? 0
    : medianOf(Float64Array.from(frequencyHz.subarray(1), (value, i) => value - at(frequencyHz, i)));

function byRank(one: Rank, other: Rank): number {
  const i = one.findIndex((value, place) => value !== other[place]);
  return i < 0 ? 0 : (one[i] as number) < (other[i] as number) ? -1 : 1;
}

/** A part, and the pieces of a band on which it answers. */
export interface Answering {
  readonly part: Part;
  readonly pieces: readonly Piece[];
}

/** What one part leaves open is worth another's answer where it is more than this share of the band (our own choice). */
const WORTH_ASKING = 0.01;

/**
 * Which parts answer on the pieces of a band: each the first of those that know anything there. Single readings answer where
 * nothing else does. One at least, which may know nothing.
 *
 * @param worthAsking share of all that must be left open for another part to be asked
 */
export function answeringOn(
  parts: readonly Part[],
  pieces: readonly Piece[],
  worthAsking = WORTH_ASKING,
): readonly [Answering, ...Answering[]] {
  const [only, ...others] = parts as [Part, ...Part[]];
  if (others.length === 0) return [{ part: only, pieces }];
  const leastHz = worthAsking * pieces.reduce((sum, { lowHz, highHz }) => sum + highHz - lowHz, 0);
  const found: Answering[] = [];
  let open = pieces;
  for (const part of parts) {
    if (open.length === 0) break;
    const known = open.flatMap((piece) => knownIn(part, piece));
    if (known.length === 0) continue;
    found.push({ part, pieces: known });
    open = open.flatMap((piece) => without(piece, known)).filter(({ lowHz, highHz }) => highHz - lowHz >= leastHz);
  }
  const spots =
    found.length > 0 ? [] : parts.filter(({ knows, analysis }) => knows === "spots" && holdsSpot(analysis, pieces));
  const [first, ...more] = found.length > 0 ? found : spots.map((part) => ({ part, pieces }));
  // What nobody knows is the only one's to leave open.
  if (first === undefined || more.length === 0) return [{ part: first?.part ?? only, pieces }];
  return [first, ...more];
}

/** The parts of a piece that a curve or a reading of a stretch covers. */
export function knownIn({ analysis, knows }: Part, { lowHz, highHz }: Piece): readonly Piece[] {
  if (knows === "spots") return [];
  const { frequencyHz } = analysis.curve.sweep;
  return analysis.curve.stretches.flatMap(({ first, last }) => {
    const known = { lowHz: Math.max(lowHz, at(frequencyHz, first)), highHz: Math.min(highHz, at(frequencyHz, last)) };
    return known.lowHz < known.highHz ? [known] : [];
  });
}

const holdsSpot = ({ curve }: Analysis, pieces: readonly Piece[]): boolean =>
  curve.sweep.frequencyHz.some((hz) => pieces.some(({ lowHz, highHz }) => hz >= lowHz && hz <= highHz));

/** What others leave of a piece; they ascend and do not overlap. */
function without({ lowHz, highHz }: Piece, others: readonly Piece[]): readonly Piece[] {
  const within = others
    .filter((other) => other.highHz > lowHz && other.lowHz < highHz)
    .sort((a, b) => a.lowHz - b.lowHz);
  const starts = [lowHz, ...within.map((other) => other.highHz)];
  const ends = [...within.map((other) => other.lowHz), highHz];
  return starts.flatMap((start, i) =>
    (ends[i] as number) > start ? [{ lowHz: start, highHz: ends[i] as number }] : [],
  );
}
