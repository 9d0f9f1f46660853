import type { Scope } from "../../bands/scope.js";
import type { Instrument } from "../../curve/uncertainty/instrument.js";
import { DEFAULT_LIMITS } from "../../facts/limits.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { mapReflections, referredTo, type Sweep } from "../../sweep/sweep.js";
import type { Cause } from "./cause.js";
import { explanationOf } from "./explanation.js";
import {
  type Both,
  checkKnownLines,
  isWithinDoubt,
  type KnownLines,
  LINES_NEED_PHASE,
  linesTakenOut,
  withoutLines,
} from "./known-lines.js";
import { type LineChange, throughChange } from "./line-change.js";
import { type Given, type Group, groupOf, mapGroup, type Side, sideOf } from "./sides.js";

/** Both sides as they are compared: at one reference impedance, and where that was asked for at one place on the line. */
export interface SameTerms {
  /** At the reference impedance of the first sweep of them */
  readonly before: Group;
  /** The same, with a change of the line taken out where that was asked for */
  readonly after: Group;
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
  /** The lines that both sides were swept through: they are taken out, and the antennas are compared at their ends; null or absent: not known */
  readonly feedlines?: KnownLines | null;
}

/**
 * Brings both sides to the first sweep's reference impedance and, where that is asked for, takes the change of the line
 * between them out of the second ones. {@link diff} compares what this gives; a picture shows it.
 *
 * @param before a sweep or a deployment, or several repeats; the same for `after`
 * @param options the plan, which says how far the bands reach that readings were noted for, and how
 * @throws TypeError for what is neither a sweep nor a deployment
 * @throws RangeError for a side without one
 */
export function onSameTerms(
  before: Given | readonly Given[],
  after: Given | readonly Given[],
  { plan, instrument = null, isSamePlane = false, feedlines = null }: TermsOptions & Pick<Scope, "plan">,
): SameTerms {
  const given = { before: groupOf(before, "before"), after: groupOf(after, "after") };
  checkKnownLines(feedlines, given.before, given.after);
  const { referenceOhms } = given.before[0].parts[0];
  const asOne = (sweep: Sweep) => referredTo(sweep, referenceOhms);
  const measured: Both = { before: mapGroup(given.before, asOne), after: mapGroup(given.after, asOne) };
  const hasPhase = [...given.before, ...given.after].every(({ parts }) => parts.every(({ kind }) => kind === "vector"));
  const lines = hasPhase ? feedlines : null;
  const atAntennas = lines === null ? measured : withoutLines(measured, lines);
  const sidesOf = ({ before: first, after: second }: Both): readonly [Side, Side] => [
    sideOf(first, DEFAULT_LIMITS, plan),
    sideOf(second, DEFAULT_LIMITS, plan),
  ];
  const sides = isSamePlane || lines !== null ? sidesOf(atAntennas) : null;
  const found = sides && explanationOf(...sides, instrument);
  const change = found?.line ?? null;
  const isExpected = change !== null && lines !== null && isWithinDoubt(change, lines);
  const takenOutAs = isExpected ? "within-doubt" : isSamePlane ? "asked-for" : null;
  const line = takenOutAs === null ? null : change;
  const compared: Both = {
    before: atAntennas.before,
    after: line === null ? atAntennas.after : mapGroup(atAntennas.after, (sweep) => undone(sweep, line)),
  };
  const { isMatched, findings } = matched(given, compared, referenceOhms);
  return {
    ...compared,
    isMatched,
    takenOut: isSamePlane && found !== null && line !== null ? found.causes : [],
    findings: [
      ...findings,
      ...(lines === null
        ? []
        : linesTakenOut(
            lines,
            sidesOf(measured),
            sides !== null && line === null ? sides : sidesOf(compared),
            change && { change, takenOutAs },
          )),
      ...(feedlines !== null && lines === null ? [LINES_NEED_PHASE] : []),
    ],
  };
}

/** Whether all is at one reference impedance: scalar sweeps cannot be converted and stay as they are. */
function matched(
  given: Both,
  compared: Both,
  referenceOhms: number,
): { isMatched: boolean; findings: readonly Finding[] } {
  const ohmsOf = ({ before, after }: Both) =>
    new Set([...before, ...after].flatMap(({ parts }) => parts.map((sweep) => sweep.referenceOhms)));
  const otherOhms = [...ohmsOf(given)].filter((ohms) => ohms !== referenceOhms);
  const isMatched = [...ohmsOf(compared)].every((ohms) => ohms === referenceOhms);
  const params = { firstOhms: referenceOhms, otherOhms, areMatched: isMatched };
  return {
    isMatched,
    findings: otherOhms.length === 0 ? [] : [finding(isMatched ? "info" : "problem", "different-reference", params)],
  };
}

/** A sweep as it would be without a change of the line. */
const undone = (sweep: Sweep, line: LineChange): Sweep =>
  sweep.kind === "scalar"
    ? sweep
    : mapReflections(sweep, sweep.referenceOhms, (reflection, frequencyHz) =>
        throughChange(reflection, frequencyHz, sweep.referenceOhms, line, -1),
      );
