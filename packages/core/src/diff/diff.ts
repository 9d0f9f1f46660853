import { CAUTIONS } from "../cautions.js";
import { isVectorCurve } from "../curve/curve.js";
import { type Finding, finding } from "../finding.js";
import { type JudgingOptions, type PlanInfo, planFindings, planInfo, selectBands } from "../judging.js";
import { DEFAULT_LIMITS, type Limits } from "../limits.js";
import { type Judgement, judge } from "../summary.js";
import { mapReflections, referredTo, type Sweep } from "../sweep.js";
import { type SweepInfo, sweepInfo } from "../sweep-info.js";
import { groundsOf } from "../uncertainty/band-uncertainty.js";
import type { Instrument } from "../uncertainty/instrument.js";
import { type BandDiff, DEFAULT_THRESHOLDS, diffBand, type Side, type Thresholds } from "./band-diff.js";
import { type Cause, isLikely, possible } from "./cause.js";
import {
  LEAVES_LOSS_OPEN,
  lossNotTold,
  NO_OVERLAP,
  notCompared,
  repeatFindings,
  SCALAR_COMPARISON,
  samePlaneFindings,
  sameSweeps,
  samplingDoubts,
} from "./diff-findings.js";
import { type Explained, findCauses } from "./find-causes.js";
import { headlineOf } from "./headline.js";
import { type LineChange, throughChange } from "./line-change.js";
import { magnitudeCauses } from "./magnitude-causes.js";
import { indexOfMiddle, scatterAround } from "./repeats.js";
import { suspectedLoss } from "./suspected-loss.js";
import { tolerancesFor } from "./thresholds.js";

export interface DiffResult {
  readonly schema: "feedpoint/diff@1";
  readonly before: readonly SweepInfo[];
  readonly after: readonly SweepInfo[];
  readonly plan: PlanInfo;
  readonly limits: Limits;
  readonly thresholds: Thresholds;
  /** What a person would say, in a sentence or two */
  readonly headline: string;
  readonly bands: readonly BandDiff[];
  readonly causes: readonly Cause[];
  readonly findings: readonly Finding[];
  readonly cautions: readonly string[];
}

export interface DiffOptions extends JudgingOptions {
  readonly thresholds?: Thresholds;
  /** The analyser's own errors, where they are known: a change smaller than they are does not count */
  readonly instrument?: Instrument | null;
  /** Take a change of the line out of the second sweeps, so that the antennas are compared at the first one's place */
  readonly isSamePlane?: boolean;
}

/** A comparison with the sweeps of both sides as they were compared: in one reference, at one place. */
export interface Comparison {
  readonly result: DiffResult;
  readonly before: readonly Judgement[];
  readonly after: readonly Judgement[];
}

/**
 * Compares two deployments band by band, on what all sweeps cover, and looks for the cause.
 *
 * @param before one sweep, or several repeats; the same for `after`
 */
export const diff = (
  before: Sweep | readonly Sweep[],
  after: Sweep | readonly Sweep[],
  options: DiffOptions,
): DiffResult => compare(before, after, options).result;

/** The same where the curves are needed for more than this. */
export function compare(
  before: Sweep | readonly Sweep[],
  after: Sweep | readonly Sweep[],
  options: DiffOptions,
): Comparison {
  const { limits = DEFAULT_LIMITS, thresholds = DEFAULT_THRESHOLDS, instrument = null, isSamePlane = false } = options;
  const befores = groupOf(before);
  const afters = groupOf(after);
  const { referenceOhms } = befores[0];
  const matched = matchReference([...befores, ...afters], referenceOhms);
  const first = sideOf(matched.sweeps.slice(0, befores.length), limits);
  const measured = sideOf(matched.sweeps.slice(befores.length), limits);
  const asMeasured = explain(first, measured, instrument);
  const moved = isSamePlane && asMeasured.line !== null ? asMeasured.line : null;
  const second =
    moved === null
      ? measured
      : sideOf(
          measured.all.map(({ curve }) => undone(curve.sweep, moved)),
          limits,
        );
  const { causes: found } = moved === null ? asMeasured : explain(first, second, instrument);
  const judged = selectBands(options);
  const bands = judged.flatMap(
    (band) => diffBand(band, first, second, { thresholds, instrument }, matched.isMatched ? found : null) ?? [],
  );
  const doubts = samplingDoubts(first, second, bands, judged);
  // What a step too long for a dip shows may be the step's doing.
  const causes =
    doubts.length === 0 ? found : found.map((cause) => (cause.code === "antenna-changed" ? possible(cause) : cause));
  const result: DiffResult = {
    schema: "feedpoint/diff@1",
    before: befores.map(sweepInfo),
    after: afters.map(sweepInfo),
    plan: planInfo(options),
    limits,
    thresholds,
    headline: headlineOf(bands, causes),
    bands,
    causes,
    findings: [
      ...matched.findings,
      ...(moved === null ? [] : samePlaneFindings(asMeasured.causes)),
      ...sameSweeps(befores, afters),
      ...repeatFindings("before", first, thresholds),
      ...repeatFindings("after", second, thresholds),
      ...(bands.length === 0 ? [NO_OVERLAP] : notCompared(options.bands ?? [], bands)),
      ...doubts,
      ...lossNotTold(first, second, bands, causes),
      ...(matched.sweeps.some(({ kind }) => kind === "scalar") ? [SCALAR_COMPARISON] : []),
      ...planFindings(
        options,
        judged.filter(({ band }) => bands.some((result) => result.band === band)),
      ),
    ],
    cautions: CAUTIONS,
  };
  return { result, before: first.all, after: second.all };
}

type Group = readonly [Sweep, ...Sweep[]];

function groupOf(sweeps: Sweep | readonly Sweep[]): Group {
  if (!isList(sweeps)) return [sweeps];
  const [first, ...others] = sweeps;
  if (first === undefined) throw new RangeError("a comparison needs at least one sweep on each side");
  return [first, ...others];
}

const isList = (sweeps: Sweep | readonly Sweep[]): sweeps is readonly Sweep[] => Array.isArray(sweeps);

function sideOf(sweeps: readonly Sweep[], limits: Limits): Side {
  const all = sweeps.map((sweep) => judge(sweep, limits));
  const curves = all.map(({ curve }) => curve);
  const middle = all[indexOfMiddle(curves)];
  if (middle === undefined) throw new RangeError("a comparison needs at least one sweep on each side");
  return { all, middle, scatter: scatterAround(middle.curve, curves), grounds: groundsOf(middle.trace) };
}

/** The causes that the data support; where none is sure, loss that the far-from-matched parts of the sweeps suggest as well. */
function explain(first: Side, second: Side, instrument: Instrument | null): Explained {
  const [before, after] = [first.middle.curve, second.middle.curve];
  const tolerances = tolerancesFor(before, after, Math.max(first.scatter, second.scatter), instrument);
  const found =
    isVectorCurve(before) && isVectorCurve(after)
      ? findCauses(before, after, tolerances)
      : { causes: magnitudeCauses(before, after, tolerances), line: null };
  const isSure = found.causes.some((cause) => isLikely(cause) && !LEAVES_LOSS_OPEN.has(cause.code));
  return isSure ? found : { ...found, causes: [...found.causes, ...suspectedLoss(before, after)] };
}

/** All sweeps at one reference impedance; scalar ones cannot be converted and stay as they are. */
function matchReference(
  sweeps: readonly Sweep[],
  referenceOhms: number,
): { sweeps: readonly Sweep[]; isMatched: boolean; findings: readonly Finding[] } {
  const others = sweeps.filter((sweep) => sweep.referenceOhms !== referenceOhms);
  const matched = sweeps.map((sweep) => referredTo(sweep, referenceOhms));
  const isMatched = matched.every((sweep) => sweep.referenceOhms === referenceOhms);
  const stated = [...new Set(others.map((sweep) => `${sweep.referenceOhms} Ω`))].join(", ");
  const message = isMatched
    ? `Sweeps that refer to ${stated} were converted to the first one's ${referenceOhms} Ω.`
    : `The first sweep refers to ${referenceOhms} Ω, others to ${stated}; without phase they cannot be compared.`;
  return {
    sweeps: matched,
    isMatched,
    findings: others.length === 0 ? [] : [finding(isMatched ? "info" : "problem", "different-reference", message)],
  };
}

/** A sweep as it would be without a change of the line. */
const undone = (sweep: Sweep, line: LineChange): Sweep =>
  sweep.kind === "scalar"
    ? sweep
    : mapReflections(sweep, sweep.referenceOhms, (reflection, frequencyHz) =>
        throughChange(reflection, frequencyHz, sweep.referenceOhms, line, -1),
      );
