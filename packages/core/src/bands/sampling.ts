import { type Curve, isVectorCurve } from "../curve/curve.js";
import type { BandPlan, UsableBand } from "../facts/band-plan/band-plan.js";
import { at, firstIndexAbove } from "../numbers/column.js";
import { type Finding, finding } from "../sweep/finding.js";
import { readingsOf, type Sweep } from "../sweep/sweep.js";
import type { Analysis } from "./analysis.js";
import { bandwidthFromQ } from "./impedance-q.js";
import type { Answering, Part } from "./parts.js";
import { samplesInDip } from "./samples-in-dip.js";
import type { BandSummary } from "./summary.js";

/** Where Γ goes further than this from one sample to the next, the curve between them is little more than a guess. */
const GREATEST_TURN = 0.3;
/** A step longer than this share of the frequency can step over the dip of a short, loaded antenna (our own choice). */
const GREATEST_STEP = 0.02;
/** A dip needs this many samples within the limit to be more than a guess. */
const FEWEST_IN_A_DIP = 3;
/** Bandwidth and Q may differ by this share before it is remarkable (our own choice). */
const BANDWIDTH_SHARE = 0.25;

/** Samples that stood alone and were left out of the curve. */
export function spikeFindings(curve: Curve): readonly Finding[] {
  const { sweep, spikes, reflectionMagnitude: mended } = curve;
  const told = (are: "peaks" | "dips", indices: readonly number[]): readonly Finding[] =>
    indices.length === 0
      ? []
      : [finding("caution", "spike", { are, frequenciesHz: indices.map((index) => at(sweep.frequencyHz, index)) })];
  const isDip = (index: number) => at(sweep.reflectionMagnitude, index) < at(mended, index);
  return [
    ...told(
      "peaks",
      spikes.filter((index) => !isDip(index)),
    ),
    ...told("dips", spikes.filter(isDip)),
  ];
}

/** Single readings that no band of the plan holds: noted by hand, the decimal point slips. */
export function spotFindings(sweep: Sweep, { bands }: BandPlan): readonly Finding[] {
  if (sweep.continuity !== "spots") return [];
  const named = readingsOf(sweep).filter(({ band }) => bands.some((each) => each.band === band));
  const middles = new Set(named.map(({ lowHz, highHz }) => (lowHz + highHz) / 2));
  const outside = Array.from(sweep.frequencyHz)
    .filter((frequency) => !middles.has(frequency))
    .filter((frequency) => !bands.some(({ lowHz, highHz }) => frequency >= lowHz && frequency <= highHz));
  return outside.length === 0 ? [] : [finding("caution", "spot-outside-bands", { frequenciesHz: outside })];
}

/** Q of the narrowest dips of usual antennas: a small loop's (common practice, no source). */
const NARROWEST_Q = 200;
/** A dip narrower than this many steps may lie between samples whose neighbours show nothing of it. */
const STEPS_TO_SEE = 2;

/** Bands where a dip as narrow as that of a small loop could lie between two samples, and the widest that could; where not told already. */
export function narrowDipFindings(parts: readonly Part[], bands: readonly UsableBand[]): readonly Finding[] {
  const unseen = bands.flatMap(({ band, lowHz, highHz }) => {
    const longest = parts
      .filter(({ knows }) => knows === "curve")
      .map(({ analysis }) => greatestTurn(analysis.curve, lowHz, highHz).longestHz)
      .filter((stepHz) => stepHz > 0);
    // Of several sweeps of a band the finest tells.
    const widthHz = STEPS_TO_SEE * Math.min(...longest);
    const isTold = widthHz > STEPS_TO_SEE * GREATEST_STEP * lowHz;
    return longest.length > 0 && widthHz > lowHz / NARROWEST_Q && !isTold ? [{ band, widthHz }] : [];
  });
  if (unseen.length === 0) return [];
  return [
    finding("info", "narrower-unseen", {
      bands: unseen.map(({ band }) => band),
      widthHz: Math.max(...unseen.map(({ widthHz }) => widthHz)),
    }),
  ];
}

/** What the steps of the curves leave open on a band, and whether its bandwidth is that of one resonance. */
export function samplingFindings(
  answering: readonly Answering[],
  band: UsableBand,
  result: BandSummary,
): readonly Finding[] {
  return answering.flatMap(({ part }) => [
    ...coarsenessFindings(part, band, result),
    ...(answering.length > 1 || result.restsOn !== "curve" ? [] : qFindings(part.analysis, result)),
  ]);
}

/** Where the step is too coarse for a band: for the curve between the samples, or for its dip. */
export function coarsenessFindings(
  { analysis, knows }: Part,
  band: UsableBand,
  result: BandSummary,
): readonly Finding[] {
  if (result.sweptFraction === 0 || knows !== "curve") return [];
  return [...stepFindings(analysis, band), ...thinDipFindings(analysis.curve, band, result)];
}

/** A dip that rests on one or two samples: of those within the limit, or of all that its resonance shows. */
function thinDipFindings(curve: Curve, { lowHz, highHz }: UsableBand, result: BandSummary): readonly Finding[] {
  const { band, bandwidth } = result;
  const told = (samples: number, widthHz: number) => {
    const stepHz = 1000 * Number((widthHz / 5000).toPrecision(1));
    return [finding("caution", "dip-on-few-samples", { band, samples, stepHz }, { band })];
  };
  if (bandwidth !== null) {
    const { frequencyHz } = curve.sweep;
    const inside = firstIndexAbove(frequencyHz, bandwidth.highHz) - firstIndexAbove(frequencyHz, bandwidth.lowHz - 1);
    if (inside < FEWEST_IN_A_DIP) return told(inside, bandwidth.widthHz);
  }
  const dip = samplesInDip(curve, lowHz, highHz);
  return dip === null || dip.samples >= FEWEST_IN_A_DIP ? [] : told(dip.samples, dip.samples * dip.stepHz);
}

/** A bandwidth that is not that of one resonance: two close ones, or loss on the line. */
function qFindings(
  { curve, limits }: Analysis,
  { band, bandwidth, impedanceQ, resonances }: BandSummary,
): readonly Finding[] {
  const [resonance] = resonances;
  if (bandwidth === null || bandwidth.openLow || bandwidth.openHigh || impedanceQ === null || !resonance) return [];
  const expected = bandwidthFromQ(
    impedanceQ,
    resonance.resistanceOhms ?? Number.NaN,
    curve.sweep.referenceOhms,
    limits.swr,
    resonance.frequencyHz,
  );
  if (expected === null || Math.abs(bandwidth.widthHz / expected - 1) < BANDWIDTH_SHARE) return [];
  const params = { band, limitSwr: limits.swr, widthHz: bandwidth.widthHz, q: impedanceQ, expectedHz: expected };
  return [finding("info", "bandwidth-not-from-q", params, { band })];
}

function stepFindings(analysis: Analysis, band: UsableBand): readonly Finding[] {
  const { distance, stepHz, longestHz } = greatestTurn(analysis.curve, band.lowHz, band.highHz);
  const greatestHz = GREATEST_STEP * band.lowHz;
  if (distance <= GREATEST_TURN && longestHz <= greatestHz) return [];
  const enoughHz = Math.min((stepHz * GREATEST_TURN) / distance, greatestHz);
  const params = {
    of: "band",
    band: band.band,
    why: distance > GREATEST_TURN ? "turns" : "could-hide",
    stepHz: 1000 * Number((enoughHz / 2000).toPrecision(1)),
  } as const;
  return [finding("caution", "step-too-coarse", params, { band: band.band })];
}

/** The longest way that the delay-free Γ (for a scalar sweep: ρ) goes in one step near a band, that step, and the longest one. */
function greatestTurn(
  curve: Curve,
  lowHz: number,
  highHz: number,
): { distance: number; stepHz: number; longestHz: number } {
  const { frequencyHz, reflectionMagnitude } = curve.sweep;
  const [real, imaginary] = isVectorCurve(curve)
    ? [curve.interpolation.real, curve.interpolation.imaginary]
    : [reflectionMagnitude, null];
  let greatest = { distance: -1, stepHz: 0 };
  let longestHz = 0;
  for (const { first, last } of curve.stretches) {
    for (
      let i = Math.max(first, firstIndexAbove(frequencyHz, lowHz) - 1);
      i < last && at(frequencyHz, i) < highHz;
      i++
    ) {
      const across = imaginary === null ? 0 : at(imaginary, i + 1) - at(imaginary, i);
      const distance = Math.hypot(at(real, i + 1) - at(real, i), across);
      const stepHz = at(frequencyHz, i + 1) - at(frequencyHz, i);
      if (distance > greatest.distance) greatest = { distance, stepHz };
      longestHz = Math.max(longestHz, stepHz);
    }
  }
  return { ...greatest, longestHz };
}
