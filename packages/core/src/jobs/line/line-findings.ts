import type { FeedlineKind } from "../../facts/feedline/feedline-kinds.js";
import { at } from "../../numbers/column.js";
import { SPEED_OF_LIGHT } from "../../numbers/constants.js";
import { returnLossDb } from "../../reflection/swr.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { Sweep } from "../../sweep/sweep.js";
import { LEAST_LINE_M, type MeasuredLength } from "./measured-length.js";
import { isAnother, type OwnImpedance, reflectionOfEnd } from "./own-impedance.js";

/** What the sweep of a line leaves open, or says against what was stated. */

export const UNEVEN_LOSS = finding("problem", "line-implausible", { why: "uneven-loss" });

export const noLineSeen = (statedLengthM: number | null): Finding =>
  statedLengthM === null
    ? finding("info", "no-line-seen", { leastM: LEAST_LINE_M })
    : finding("problem", "line-implausible", { why: "no-line", leastM: LEAST_LINE_M, statedM: statedLengthM });
/** The spread of a line's own impedance, and what of its loss may hang on it before that is worth a word. */
const IMPEDANCE_SPREAD = 0.05;
const NOTABLE_DB = 0.1;

/** What the line's own impedance is beside what it is made for, or what of the loss hangs on not knowing it. */
export function impedanceFindings(
  own: OwnImpedance | null,
  nominalOhms: number,
  isStated: boolean,
  endOhms: number,
): readonly Finding[] {
  if (own !== null) {
    const { ohms, halfOhms } = own;
    if (!isAnother(own, nominalOhms)) return [];
    return [finding(isStated ? "caution" : "info", "line-impedance", { ohms, halfOhms, nominalOhms, isStated })];
  }
  const [low, high] = [1 - IMPEDANCE_SPREAD, 1 + IMPEDANCE_SPREAD].map((share) =>
    returnLossDb(Math.abs(reflectionOfEnd(endOhms, share * nominalOhms))),
  );
  const hangsDb = Math.abs((high ?? 0) - (low ?? 0)) / 2;
  return hangsDb < NOTABLE_DB
    ? []
    : [finding("caution", "line-impedance-unknown", { nominalOhms, hangsDb, spread: IMPEDANCE_SPREAD })];
}

/** A stated length and the one that the phase tells differ by more than velocity factors of one kind do, as a share (common practice, no source). */
const LENGTH_SPREAD = 0.08;
/** Velocity factors of usual lines (common practice, no source). */
const USUAL_VELOCITY = [0.6, 1] as const;

export function lengthFindings(
  statedM: number | undefined,
  length: MeasuredLength | null,
  kind: FeedlineKind | null,
): readonly Finding[] {
  if (statedM === undefined || length === null || !length.isSure || !(statedM <= length.electricalLengthM)) return [];
  const [least, most] =
    kind === null
      ? USUAL_VELOCITY
      : [kind.velocityFactor * (1 - LENGTH_SPREAD), kind.velocityFactor * (1 + LENGTH_SPREAD)];
  const lengths = { leastM: length.electricalLengthM * least, mostM: length.electricalLengthM * most };
  return statedM >= lengths.leastM && statedM <= lengths.mostM
    ? []
    : [finding("caution", "length-unlike", { statedM, ...lengths, kind: kind?.id ?? null })];
}

/** A loss of less than nothing by more than this is none, dB. */
const NEGLIGIBLE_DB = 0.05;
/** Phase that turns by more than this share of a turn per step may be taken for a slower one. */
export const GREATEST_TURN = 0.4;

/** The share of a turn that the phase makes over the widest step of a sweep. */
export const turnInAStep = (sweep: Sweep, { electricalLengthM }: MeasuredLength): number =>
  (2 * Math.abs(electricalLengthM) * widestStep(sweep)) / SPEED_OF_LIGHT;

function widestStep({ frequencyHz }: Sweep): number {
  let widest = 0;
  for (let i = 1; i < frequencyHz.length; i++) widest = Math.max(widest, at(frequencyHz, i) - at(frequencyHz, i - 1));
  return widest;
}

export function stepFindings(sweep: Sweep, length: MeasuredLength): readonly Finding[] {
  if (turnInAStep(sweep, length) >= GREATEST_TURN) {
    const stepHz = widestStep(sweep);
    return [finding("caution", "step-too-coarse", { of: "line", stepHz, alikeM: SPEED_OF_LIGHT / (2 * stepHz) })];
  }
  return length.isSure ? [] : [finding("problem", "line-implausible", { why: "other-end" })];
}

export function impossibleFindings(
  velocityFactor: number | null,
  losses: readonly { readonly matchedLossDb: number }[],
): readonly Finding[] {
  const isGain = losses.some(({ matchedLossDb: lossDb }) => lossDb < -NEGLIGIBLE_DB);
  return [
    ...(velocityFactor !== null && !(velocityFactor > 0 && velocityFactor <= 1)
      ? [finding("problem", "line-implausible", { why: "velocity", velocityFactor })]
      : []),
    ...(isGain ? [finding("problem", "line-implausible", { why: "gain" })] : []),
  ];
}
