import { sweepAtAnalyser, sweepAtAntenna } from "../bands/antenna-end.js";
import { type DipNear, dipNear, USELESS_SWR } from "../bands/dip.js";
import { checkBandName, checkFeedline, checkScope } from "../bands/option-checks.js";
import { answeringOn, type Part, partsOf } from "../bands/parts.js";
import type { Point } from "../bands/point.js";
import { coarsenessFindings, spikeFindings } from "../bands/sampling.js";
import { closedOn, type PlanInfo, planFindings, planInfo, type Scope, selectBands } from "../bands/scope.js";
import { type BandSummary, summariseBand } from "../bands/summary.js";
import { CAUTIONS } from "../facts/cautions.js";
import type { Feedline } from "../facts/feedline/feedline.js";
import {
  checkFixed,
  type FixedParts,
  type FixedWires,
  type Following,
  fixedFindings,
  followingOf,
  type ToldOfFixed,
  toldOfFixed,
} from "../facts/fixed-parts.js";
import { type Limits, limitsWith } from "../facts/limits.js";
import { demand, isFiniteAbove0 } from "../input/argument.js";
import { asDeployment, type Deployment, deploymentInfo, deploymentOf } from "../sweep/deployment.js";
import { type Finding, finding } from "../sweep/finding.js";
import { closedText } from "../sweep/finding-words/of-bands.js";
import { type Sweep, scalarSweep, type VectorSweep, vectorSweep } from "../sweep/sweep.js";
import type { SweepInfo } from "../sweep/sweep-info.js";

/** What a change of length should do to a band. */
export interface TrimmedBand {
  readonly band: string;
  /** null where nothing of it was swept */
  readonly before: BandSummary | null;
  /** Foretold; null where the stretched sweep does not reach the band */
  readonly after: BandSummary | null;
}

/** How a wire should be trimmed. Plain data: as JSON it is what `feedpoint trim --json` prints. */
export interface TrimResult extends ToldOfFixed {
  /** Name and version of this form */
  readonly schema: "feedpoint/trim@1";
  /** What was read */
  readonly sweep: SweepInfo;
  /** What it was held against */
  readonly plan: PlanInfo;
  /** The limits that were used, filled up */
  readonly limits: Limits;
  /** As it was given; null where none was */
  readonly feedline: Feedline | null;
  /** The band that the wire is trimmed for */
  readonly band: string;
  /** Where the dip is wanted, Hz */
  readonly wantedHz: number;
  /** The dip as it is; null where there is none within 20 % of the wanted frequency, or only a single reading that may be one */
  readonly dip: Point | null;
  /** Wanted length over present length, less 1, for what stays as it is: negative means shorten; null without a dip */
  readonly lengthChange: number | null;
  /** Where the dip then lies: not all scales with the wire; Hz, null without a dip */
  readonly expectedHz: { readonly lowHz: number; readonly highHz: number } | null;
  /** The change in m; null where the length of the wire is not known */
  readonly lengthChangeM: number | null;
  /** The bands that the sweep reaches, before or after */
  readonly bands: readonly TrimmedBand[];
  /** What the operator should know of all this */
  readonly findings: readonly Finding[];
  /** {@link CAUTIONS} */
  readonly cautions: readonly string[];
}

/** What a wire is to be trimmed for. */
export interface TrimOptions extends Scope {
  /** The band to trim for; judged although `bands` may leave it out */
  readonly band: string;
  /** Where the dip is wanted, Hz; the middle of the band where absent */
  readonly wantedHz?: number;
  /** The line between analyser and antenna, which {@link feedlineFrom} makes; null or absent: not known */
  readonly feedline?: Feedline | null;
  /** The sweep was taken at the antenna, so that there is no line to take out */
  readonly isAtAntenna?: boolean;
  /** What stays as it is when the wire is cut, by name or with count and length; absent: not said */
  readonly fixed?: FixedParts | FixedWires;
  /** Length of the wire that a cut changes, m: then the change is told in m as well */
  readonly wireLengthM?: number;
}

/**
 * How much longer or shorter a wire should be for its dip to lie where it is wanted, and what that would do to all bands.
 *
 * New length = old length · measured / wanted frequency: common practice, no source; a NEC-2 dipole over ground follows it to
 * 0.1 % over ± 3 % of length. Where parts stay as they are the dip follows by less, and more is to be cut. The prediction scales
 * the frequency axis of the sweep; with the feedline stated the sweep is first moved to the antenna and back again afterwards,
 * because the line does not change its length.
 *
 * @throws TypeError for an argument that is not what it must be, which it names
 * @throws RangeError for a band or a licence class that the plan does not know, and where plan, class and modes leave nothing of
 *   the band
 * @example
 * ```ts
 * import { planById, readSweeps, trim } from "@feedpoint/core";
 *
 * const [sweep] = readSweeps(`Frequency (MHz),SWR
 * 6.8,2.4
 * 6.9,1.7
 * 7.0,1.3
 * 7.1,1.7
 * 7.2,2.4
 * 7.3,3.2
 * `);
 * const options = { plan: planById("itu-r1"), band: "40m", wantedHz: 7.1e6, wireLengthM: 20 };
 * trim(sweep, options).lengthChangeM; // → -0.28
 * ```
 */
export function trim(given: Sweep | Deployment, options: TrimOptions): TrimResult {
  const deployment = asDeployment(given);
  checkTrimOptions(options);
  const { feedline = null, isAtAntenna = false, wireLengthM = null } = options;
  const limits = limitsWith(options.limits);
  const wantedBands = options.bands === undefined ? {} : { bands: [...options.bands, options.band] };
  const bands = selectBands({ ...options, ...wantedBands });
  const band = bands.find((each) => each.band === options.band);
  if (band === undefined) throw new RangeError(closedText(closedOn(options, [options.band])));
  const wantedHz = options.wantedHz ?? (band.lowHz + band.highHz) / 2;
  const partsIn = (each: Deployment) => partsOf(each, limits, options.plan).filter(({ knows }) => knows !== "stretch");
  const before = partsIn(deployment);
  const { dip, loneHz } = nearestDip(before, wantedHz);
  const factor = dip && wantedHz / dip.frequencyHz;
  const after =
    factor === null ? null : partsIn(deploymentOf(deployment.parts.map((sweep) => stretched(sweep, factor, feedline))));
  const following = followingOf(options.fixed, wireLengthM, dip?.frequencyHz ?? wantedHz)(wantedHz);
  const lengthChange = dip && (dip.frequencyHz / wantedHz - 1) / following.usual;
  const summaryOf = (parts: readonly Part[] | null, judged: (typeof bands)[number]) => {
    if (parts === null || parts.length === 0) return null;
    const summary = summariseBand(answeringOn(parts, judged.pieces), judged, limits);
    return summary.best === null ? null : summary;
  };
  const summary = summaryOf(before, band);
  return {
    schema: "feedpoint/trim@1",
    sweep: deploymentInfo(deployment),
    plan: planInfo(options),
    limits,
    feedline,
    band: band.band,
    wantedHz,
    ...toldOfFixed(options.fixed),
    dip,
    lengthChange,
    expectedHz: dip && lengthChange !== null ? expectedPlace(dip.frequencyHz, lengthChange, following) : null,
    lengthChangeM: wireLengthM === null || lengthChange === null ? null : wireLengthM * lengthChange,
    bands: bands
      .map((each) => ({ band: each.band, before: summaryOf(before, each), after: summaryOf(after, each) }))
      .filter((each) => each.before !== null || each.after !== null),
    findings: [
      ...planFindings(options, [band]),
      ...before.flatMap(({ analysis }) => spikeFindings(analysis.curve)),
      ...(summary === null
        ? []
        : answeringOn(before, band.pieces).flatMap(({ part }) => coarsenessFindings(part, band, summary))),
      ...(dip === null ? [] : fixedFindings(options.fixed, wireLengthM)),
      ...predictionFindings(deployment.parts, dip, loneHz, wantedHz, feedline !== null || isAtAntenna),
    ],
    cautions: CAUTIONS,
  };
}

/** Where a dip lies after a relative change of length that it follows by some share. */
function expectedPlace(dipHz: number, lengthChange: number, { least, most }: Following) {
  const ends = [least, most].map((share) => dipHz / (1 + share * lengthChange));
  return { lowHz: Math.min(...ends), highHz: Math.max(...ends) };
}

/** Dips of two parts that lie together as closely as this, as a share of their frequency, are one. */
const SAME_DIP = 0.02;

/** The lowest dip near a frequency, as the part that answers first knows it. */
function nearestDip(parts: readonly Part[], wantedHz: number): DipNear {
  const found = parts.map(({ analysis }) => dipNear(analysis, wantedHz));
  const dips = found.flatMap(({ dip }) => dip ?? []);
  if (dips.length === 0) return { dip: null, loneHz: found.find(({ loneHz }) => loneHz !== null)?.loneHz ?? null };
  const lowest = dips.reduce((a, b) => (b.reflectionMagnitude < a.reflectionMagnitude ? b : a));
  const isSame = (dip: Point) => Math.abs(dip.frequencyHz / lowest.frequencyHz - 1) < SAME_DIP;
  return { dip: dips.find(isSame) ?? lowest, loneHz: null };
}

function checkTrimOptions(options: TrimOptions): void {
  checkScope(options);
  const { plan, band, wantedHz, feedline, wireLengthM, fixed } = options;
  checkFixed(fixed, "fixed");
  checkBandName(plan, band, "band");
  checkFeedline(feedline);
  if (wantedHz !== undefined) demand(isFiniteAbove0(wantedHz), "wantedHz", "a frequency in Hz above 0", wantedHz);
  if (wireLengthM !== undefined) {
    demand(isFiniteAbove0(wireLengthM), "wireLengthM", "a length in m above 0", wireLengthM);
  }
}

/** What is to be kept in mind when reading the prediction. */
function predictionFindings(
  parts: readonly Sweep[],
  dip: Point | null,
  loneHz: number | null,
  wantedHz: number,
  isLineKnown: boolean,
): readonly Finding[] {
  if (dip === null) return [finding("problem", "no-dip", { wantedHz, loneHz, leastSwr: USELESS_SWR })];
  if (parts.every(({ kind }) => kind === "scalar")) return [finding("info", "prediction-rough", { why: "no-phase" })];
  return isLineKnown ? [] : [finding("info", "prediction-rough", { why: "no-feedline" })];
}

/** The sweep of the same antenna with all frequencies multiplied by a factor, seen through the same feedline. */
function stretched(sweep: Sweep, factor: number, feedline: Feedline | null): Sweep {
  if (sweep.kind === "scalar") {
    const { frequencyHz, reflectionMagnitude, ceilingMagnitude } = sweep;
    return scalarSweep(
      sweep,
      { frequencyHz: multiplied(frequencyHz, factor), reflectionMagnitude: Float64Array.from(reflectionMagnitude) },
      ceilingMagnitude,
    );
  }
  if (feedline === null) return withAxis(sweep, factor);
  return sweepAtAnalyser(withAxis(sweepAtAntenna(sweep, feedline), factor), feedline, sweep.referenceOhms);
}

const withAxis = (sweep: VectorSweep, factor: number): VectorSweep =>
  vectorSweep(sweep, {
    frequencyHz: multiplied(sweep.frequencyHz, factor),
    reflectionReal: Float64Array.from(sweep.reflectionReal),
    reflectionImaginary: Float64Array.from(sweep.reflectionImaginary),
  });

const multiplied = (values: Readonly<Float64Array>, factor: number) =>
  Float64Array.from(values, (value) => value * factor);
