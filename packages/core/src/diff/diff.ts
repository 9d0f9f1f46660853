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
import { type Cause, type CauseCode, isLikely } from "./cause.js";
import { type Explained, findCauses } from "./find-causes.js";
import { headlineOf } from "./headline.js";
import { type LineChange, throughChange } from "./line-change.js";
import { magnitudeCauses } from "./magnitude-causes.js";
import { indexOfMiddle, scatterAround } from "./repeats.js";
import { showsLoss, suspectedLoss } from "./suspected-loss.js";
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
  const asMeasured = explain(first, measured);
  const moved = isSamePlane && asMeasured.line !== null ? asMeasured.line : null;
  const second =
    moved === null
      ? measured
      : sideOf(
          measured.all.map(({ curve }) => undone(curve.sweep, moved)),
          limits,
        );
  const { causes } = moved === null ? asMeasured : explain(first, second);
  const judged = selectBands(options);
  const bands = judged.flatMap(
    (band) => diffBand(band, first, second, { thresholds, instrument }, matched.isMatched ? causes : null) ?? [],
  );
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
      ...(bands.length === 0 ? [NO_OVERLAP] : notCompared(options, bands)),
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

/** Causes beside which loss may have changed as well. */
const LEAVES_LOSS_OPEN: ReadonlySet<CauseCode> = new Set(["antenna-changed", "interference"]);

/** The causes that the data support; where none is sure, loss that the far-from-matched parts of the sweeps suggest as well. */
function explain(first: Side, second: Side): Explained {
  const [before, after] = [first.middle.curve, second.middle.curve];
  const tolerances = tolerancesFor(before, after, Math.max(first.scatter, second.scatter));
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

const samePlaneFindings = (causes: readonly Cause[]): readonly Finding[] =>
  causes
    .filter(({ code }) => code === "line-length-changed" || code === "loss-added" || code === "loss-removed")
    .map(({ message }) =>
      finding("caution", "same-plane", `Taken out of the second sweep before comparing: ${message}`),
    );

/** Says so where the sweeps of a side are hardly of one deployment. */
function repeatFindings(
  which: string,
  { all, scatter }: Side,
  { reflectionMagnitude }: Thresholds,
): readonly Finding[] {
  if (scatter <= reflectionMagnitude) return [];
  const message = `The ${all.length} sweeps ${which} differ among themselves by ${scatter.toFixed(2)} of the reflection, more than counts as a change: are they of one deployment, taken at one place? Such scatter hides what you look for.`;
  return [finding("caution", "repeats-differ", message)];
}

/** Says so where a sweep is held against itself. */
function sameSweeps(befores: Group, afters: Group): readonly Finding[] {
  const name = ({ source, label }: Sweep) => `${source.file} ${label}`;
  const shared = befores.filter((sweep) => afters.some((other) => name(other) === name(sweep)));
  if (shared.length === 0) return [];
  const names = [...new Set(shared.map(({ label }) => label))].join(", ");
  return [finding("caution", "same-sweep", `On both sides, and so no difference in itself: ${names}.`)];
}

/** A lower SWR may be loss; says so where nothing shows whether it is. */
function lossNotTold(
  first: Side,
  second: Side,
  bands: readonly BandDiff[],
  causes: readonly Cause[],
): readonly Finding[] {
  const better = bands.filter(({ verdict }) => verdict === "improved").map(({ band }) => band);
  const isExplained = causes.some((cause) => isLikely(cause) && !LEAVES_LOSS_OPEN.has(cause.code));
  if (better.length === 0 || isExplained || showsLoss(first.middle.curve, second.middle.curve)) return [];
  const message = `Better on ${better.join(", ")}, or only more loss: that lowers the SWR as well, and these sweeps do not reach far enough from the antenna's bands to tell. Sweep as wide as the analyser goes, or measure the line alone (feedpoint line).`;
  return [finding("caution", "loss-not-told", message)];
}

/** Bands that were named and are not in the answer. */
function notCompared({ bands: named = [] }: DiffOptions, bands: readonly BandDiff[]): readonly Finding[] {
  const left = named.filter((name) => !bands.some(({ band }) => band === name));
  if (left.length === 0) return [];
  const message = `Not compared, for not all of the sweeps cover it, or nothing may be sent there: ${left.join(", ")}.`;
  return [finding("caution", "band-not-compared", message)];
}

const NO_OVERLAP = finding(
  "problem",
  "no-overlap",
  "No band was swept both before and after, so nothing can be compared.",
);

const SCALAR_COMPARISON = finding(
  "info",
  "scalar-comparison",
  "One of the sweeps knows only the size of the reflection: a moved resonance can be told, and loss where the sweeps reach far from the antenna's bands; another length of line or another reference cannot.",
);
