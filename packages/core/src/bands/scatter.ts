import { median, rootMeanSquare } from "simple-statistics";
import { type Curve, isVectorCurve, reflectionAt, reflectionMagnitudeAt } from "../curve/curve.js";
import type { UsableBand } from "../facts/band-plan/band-plan.js";
import { type Finding, finding } from "../sweep/finding.js";
import type { Part } from "./parts.js";

/** What sweeps of the same antenna, taken anew, are assumed to differ by, root mean square of Γ (common practice, no source). */
export const DEFAULT_SCATTER = 0.04;

/** Two parts of a deployment that overlap: repeats of each other, and how far they differ. */
export interface Overlap {
  readonly first: Part;
  readonly second: Part;
  /** Between these both are known, Hz */
  readonly lowHz: number;
  readonly highHz: number;
  /** Root mean square of the difference in Γ, or in ρ where one of them has no phase */
  readonly distance: number;
  readonly hasPhase: boolean;
}

/** Samples that both must have in common. */
const FEWEST_SAMPLES = 3;

/** Where curves of a deployment overlap, each pair once. */
export function overlapsOf(parts: readonly Part[]): readonly Overlap[] {
  const curves = parts.filter(({ knows }) => knows === "curve");
  return curves.flatMap((first, i) => curves.slice(i + 1).flatMap((second) => overlapBetween(first, second) ?? []));
}

function overlapBetween(first: Part, second: Part): Overlap | null {
  const [one, other] = [first.analysis.curve, second.analysis.curve];
  // Which are compared at the samples of the coarser one: between them the other one tells more.
  const axis = one.sweep.frequencyHz.length < other.sweep.frequencyHz.length ? one : other;
  const found = differencesAt(axis.sweep.frequencyHz, one, other);
  const own =
    found.length < FEWEST_SAMPLES ? differencesAt((axis === one ? other : one).sweep.frequencyHz, one, other) : found;
  if (own.length < FEWEST_SAMPLES) return null;
  return {
    first,
    second,
    lowHz: own[0]?.frequencyHz ?? 0,
    highHz: own.at(-1)?.frequencyHz ?? 0,
    distance: rootMeanSquare(own.map(({ distance }) => distance)),
    hasPhase: isVectorCurve(one) && isVectorCurve(other),
  };
}

function differencesAt(axis: Curve["sweep"]["frequencyHz"], one: Curve, other: Curve) {
  return Array.from(axis, (frequencyHz) => ({ frequencyHz, distance: distanceAt(frequencyHz, one, other) })).filter(
    ({ distance }) => Number.isFinite(distance),
  );
}

function distanceAt(frequencyHz: number, one: Curve, other: Curve): number {
  const [first, second] = [reflectionAt(one, frequencyHz), reflectionAt(other, frequencyHz)];
  if (first !== null && second !== null) {
    return Math.hypot(first.real - second.real, first.imaginary - second.imaginary);
  }
  return reflectionMagnitudeAt(one, frequencyHz) - reflectionMagnitudeAt(other, frequencyHz);
}

/**
 * Half of what ρ of one part may be off because its repeats differ, with 95 %: a difference between two holds the error of both,
 * and of a complex one half of the square lies along ρ.
 */
const HALF_OF_COMPLEX = 1.96 / 2;
const HALF_OF_MAGNITUDE = 1.96 / Math.SQRT2;

/**
 * Half of what ρ may be off on a band: by the overlaps there, else by the usual one of the deployment; 0 where none overlap.
 */
export function scatterOn(
  overlaps: readonly Overlap[],
  { lowHz, highHz }: Pick<UsableBand, "lowHz" | "highHz">,
): number {
  const halves = (of: readonly Overlap[]) =>
    of.map(({ distance, hasPhase }) => distance * (hasPhase ? HALF_OF_COMPLEX : HALF_OF_MAGNITUDE));
  const here = overlaps.filter((overlap) => overlap.lowHz < highHz && overlap.highHz > lowHz);
  if (here.length > 0) return rootMeanSquare(halves(here));
  return overlaps.length === 0 ? 0 : median(halves(overlaps));
}

/** Repeats further apart than this were not taken on the same terms (our own choice; a change counts from there on). */
const MATTERS = 0.03;

/** Says so where parts of a deployment differ by as much as matters. */
export function scatterFindings(overlaps: readonly Overlap[]): readonly Finding[] {
  return overlaps
    .filter(({ distance }) => distance > MATTERS)
    .map(({ first, second, lowHz, highHz, distance }) =>
      finding("caution", "parts-differ", {
        labels: [first.sweep.label, second.sweep.label],
        lowHz,
        highHz,
        distance,
      }),
    );
}
