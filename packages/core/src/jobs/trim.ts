import { type Analysis, analyse } from "../bands/analysis.js";
import { sweepAtAnalyser, sweepAtAntenna } from "../bands/antenna-end.js";
import { dipNear, USELESS_SWR } from "../bands/dip.js";
import { checkBandName, checkFeedline, checkScope } from "../bands/option-checks.js";
import type { Point } from "../bands/point.js";
import { coarsenessFindings, spikeFindings } from "../bands/sampling.js";
import { closedOn, type PlanInfo, planFindings, planInfo, type Scope, selectBands } from "../bands/scope.js";
import { type BandSummary, summariseBand } from "../bands/summary.js";
import { CAUTIONS } from "../facts/cautions.js";
import type { Feedline } from "../facts/feedline/feedline.js";
import { type Limits, limitsWith } from "../facts/limits.js";
import { demand, isFiniteAbove0 } from "../input/argument.js";
import { type Finding, finding } from "../sweep/finding.js";
import { closedText } from "../sweep/finding-words/of-bands.js";
import { type Sweep, scalarSweep, type VectorSweep, vectorSweep } from "../sweep/sweep.js";
import { checkSweep } from "../sweep/sweep-check.js";
import { type SweepInfo, sweepInfo } from "../sweep/sweep-info.js";

/** What a change of length should do to a band. */
export interface TrimmedBand {
  readonly band: string;
  /** null where nothing of it was swept */
  readonly before: BandSummary | null;
  /** Foretold; null where the stretched sweep does not reach the band */
  readonly after: BandSummary | null;
}

/** How a wire should be trimmed. Plain data: as JSON it is what `feedpoint trim --json` prints. */
export interface TrimResult {
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
  /** Wanted length over present length, less 1: negative means shorten; null without a dip */
  readonly lengthChange: number | null;
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
  /** Length of the wire that a cut changes, m: then the change is told in m as well */
  readonly wireLengthM?: number;
}

/**
 * How much longer or shorter a wire should be for its dip to lie where it is wanted, and what that would do to all bands.
 *
 * New length = old length · measured / wanted frequency: common practice, no source; a NEC-2 dipole over ground follows it to
 * 0.1 % over ± 3 % of length. The prediction scales the frequency axis of the sweep; with the feedline stated the sweep
 * is first moved to the antenna and back again afterwards, because the line does not change its length.
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
export function trim(sweep: Sweep, options: TrimOptions): TrimResult {
  checkSweep(sweep);
  checkTrimOptions(options);
  const { feedline = null, isAtAntenna = false, wireLengthM = null } = options;
  const limits = limitsWith(options.limits);
  const wantedBands = options.bands === undefined ? {} : { bands: [...options.bands, options.band] };
  const bands = selectBands({ ...options, ...wantedBands });
  const band = bands.find((each) => each.band === options.band);
  if (band === undefined) throw new RangeError(closedText(closedOn(options, [options.band])));
  const wantedHz = options.wantedHz ?? (band.lowHz + band.highHz) / 2;
  const before = analyse(sweep, limits);
  const { dip, loneHz } = dipNear(before, wantedHz);
  const after = dip && analyse(stretched(sweep, wantedHz / dip.frequencyHz, feedline), limits);
  const lengthChange = dip && dip.frequencyHz / wantedHz - 1;
  const summaryOf = (analysis: Analysis | null, judged: (typeof bands)[number]) => {
    const summary = analysis && summariseBand(analysis, judged);
    return summary?.best ? summary : null;
  };
  return {
    schema: "feedpoint/trim@1",
    sweep: sweepInfo(sweep),
    plan: planInfo(options),
    limits,
    feedline,
    band: band.band,
    wantedHz,
    dip,
    lengthChange,
    lengthChangeM: wireLengthM === null || lengthChange === null ? null : wireLengthM * lengthChange,
    bands: bands
      .map((each) => ({ band: each.band, before: summaryOf(before, each), after: summaryOf(after, each) }))
      .filter((each) => each.before !== null || each.after !== null),
    findings: [
      ...planFindings(options, [band]),
      ...spikeFindings(before.curve),
      ...coarsenessFindings(before, band, summariseBand(before, band)),
      ...predictionFindings(sweep, dip, loneHz, wantedHz, feedline !== null || isAtAntenna),
    ],
    cautions: CAUTIONS,
  };
}

function checkTrimOptions(options: TrimOptions): void {
  checkScope(options);
  const { plan, band, wantedHz, feedline, wireLengthM } = options;
  checkBandName(plan, band, "band");
  checkFeedline(feedline);
  if (wantedHz !== undefined) demand(isFiniteAbove0(wantedHz), "wantedHz", "a frequency in Hz above 0", wantedHz);
  if (wireLengthM !== undefined) {
    demand(isFiniteAbove0(wireLengthM), "wireLengthM", "a length in m above 0", wireLengthM);
  }
}

/** What is to be kept in mind when reading the prediction. */
function predictionFindings(
  sweep: Sweep,
  dip: Point | null,
  loneHz: number | null,
  wantedHz: number,
  isLineKnown: boolean,
): readonly Finding[] {
  if (dip === null) return [finding("problem", "no-dip", { wantedHz, loneHz, leastSwr: USELESS_SWR })];
  if (sweep.kind === "scalar") return [finding("info", "prediction-rough", { why: "no-phase" })];
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
