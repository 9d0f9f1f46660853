import type { Instrument } from "../../curve/uncertainty/instrument.js";
import { DEFAULT_LIMITS } from "../../facts/limits.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { mapReflections, referredTo, type Sweep } from "../../sweep/sweep.js";
import type { Cause } from "./cause.js";
import { explanationOf } from "./explanation.js";
import { type LineChange, throughChange } from "./line-change.js";
import { groupOf, sideOf } from "./sides.js";

/** The sweeps of both sides as they are compared: at one reference impedance, and where that was asked for at one place on the line. */
export interface SameTerms {
  /** At the reference impedance of the first of them */
  readonly before: readonly Sweep[];
  /** At that of the first sweep before, with a change of the line taken out where that was asked for */
  readonly after: readonly Sweep[];
  /** false: without phase they stay at different reference impedances, and cannot be compared */
  readonly isMatched: boolean;
  /** The change of the line that was taken out of the second sweeps, in words; empty where none was */
  readonly takenOut: readonly Cause[];
  /** What of that the operator should know */
  readonly findings: readonly Finding[];
}

/** How two sides are brought to the same terms. */
export interface TermsOptions {
  /** The analyser's own errors, where they are known: a change smaller than they are does not count */
  readonly instrument?: Instrument | null;
  /** Take a change of the line out of the second sweeps, so that the antennas are compared at the first one's place */
  readonly isSamePlane?: boolean;
}

/**
 * Brings the sweeps of both sides to the first one's reference impedance and, where that is asked for, takes the change of
 * the line between them out of the second ones. {@link diff} compares what this gives; a picture shows it.
 *
 * @param before one sweep, or several repeats; the same for `after`
 * @throws TypeError for what is no sweep
 * @throws RangeError for a side without a sweep
 */
export function onSameTerms(
  before: Sweep | readonly Sweep[],
  after: Sweep | readonly Sweep[],
  { instrument = null, isSamePlane = false }: TermsOptions = {},
): SameTerms {
  const befores = groupOf(before, "before");
  const { sweeps, ...matched } = matchReference([...befores, ...groupOf(after, "after")], befores[0].referenceOhms);
  const [first, second] = [sweeps.slice(0, befores.length), sweeps.slice(befores.length)];
  const asMeasured = isSamePlane
    ? explanationOf(sideOf(first, DEFAULT_LIMITS), sideOf(second, DEFAULT_LIMITS), instrument)
    : null;
  const line = asMeasured?.line ?? null;
  return {
    before: first,
    after: line === null ? second : second.map((sweep) => undone(sweep, line)),
    takenOut: asMeasured === null || line === null ? [] : asMeasured.causes,
    ...matched,
  };
}

/** All sweeps at one reference impedance; scalar ones cannot be converted and stay as they are. */
function matchReference(
  sweeps: readonly Sweep[],
  referenceOhms: number,
): { sweeps: readonly Sweep[]; isMatched: boolean; findings: readonly Finding[] } {
  const others = sweeps.filter((sweep) => sweep.referenceOhms !== referenceOhms);
  const matched = sweeps.map((sweep) => referredTo(sweep, referenceOhms));
  const isMatched = matched.every((sweep) => sweep.referenceOhms === referenceOhms);
  const otherOhms = [...new Set(others.map((sweep) => sweep.referenceOhms))];
  const params = { firstOhms: referenceOhms, otherOhms, areMatched: isMatched };
  return {
    sweeps: matched,
    isMatched,
    findings: others.length === 0 ? [] : [finding(isMatched ? "info" : "problem", "different-reference", params)],
  };
}

/** A sweep as it would be without a change of the line. */
const undone = (sweep: Sweep, line: LineChange): Sweep =>
  sweep.kind === "scalar"
    ? sweep
    : mapReflections(sweep, sweep.referenceOhms, (reflection, frequencyHz) =>
        throughChange(reflection, frequencyHz, sweep.referenceOhms, line, -1),
      );
