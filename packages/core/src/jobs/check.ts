import { analyse } from "../bands/analysis.js";
import { feedlineFindings } from "../bands/band-feedline.js";
import { type BandContext, type BandResult, checkBand } from "../bands/band-result.js";
import { type DialResult, dialResult } from "../bands/dials.js";
import { dipBesideFindings } from "../bands/dip-hints.js";
import { doubtFindings, lossFindings, modeFindings, powerFindings, referenceFindings } from "../bands/doubts.js";
import { checkDials, checkFeedline, checkInstrument, checkScope } from "../bands/option-checks.js";
import { samplingFindings, spikeFindings, spotFindings } from "../bands/sampling.js";
import { closedBands, type PlanInfo, planFindings, planInfo, type Scope, selectBands } from "../bands/scope.js";
import { sweptWidthHz } from "../curve/trace.js";
import { groundsOf } from "../curve/uncertainty/band-uncertainty.js";
import type { Dial } from "../facts/activity/dial.js";
import { CAUTIONS } from "../facts/cautions.js";
import type { Feedline } from "../facts/feedline/feedline.js";
import { type Limits, limitsWith } from "../facts/limits.js";
import type { Finding } from "../sweep/finding.js";
import type { Sweep } from "../sweep/sweep.js";
import { checkSweep } from "../sweep/sweep-check.js";
import { type SweepInfo, sweepInfo } from "../sweep/sweep-info.js";

export interface CheckResult {
  readonly schema: "feedpoint/check@1";
  readonly sweep: SweepInfo;
  readonly plan: PlanInfo;
  readonly limits: Limits;
  readonly feedline: Feedline | null;
  readonly bands: readonly BandResult[];
  readonly dials: readonly DialResult[];
  readonly findings: readonly Finding[];
  readonly cautions: readonly string[];
}

/** What a sweep is checked against: plan, class, bands, modes and limits, and what is known of the station. */
export interface CheckOptions extends Scope, Omit<BandContext, "licenceClass" | "modes"> {
  readonly dials?: readonly Dial[];
}

/** Judges a sweep against a band plan: what it does on each band and segment, and what that takes to transmit. */
export function check(sweep: Sweep, options: CheckOptions): CheckResult {
  checkSweep(sweep);
  checkScope(options);
  const { plan, licenceClass = null, feedline = null, dials = [] } = options;
  checkFeedline(feedline);
  checkInstrument(options.instrument);
  checkDials(dials);
  const limits = limitsWith(options.limits);
  const analysis = analyse(sweep, limits);
  const selected = selectBands(options);
  const grounds = groundsOf(analysis.trace);
  const bands = selected.map((band) => ({ band, result: checkBand(analysis, band, grounds, options) }));
  const results = bands.map(({ result }) => result);
  return {
    schema: "feedpoint/check@1",
    sweep: sweepInfo(sweep),
    plan: planInfo(options),
    limits,
    feedline,
    bands: results,
    dials: dials.map((dial) => dialResult(analysis, plan, licenceClass, dial)),
    findings: [
      ...planFindings(
        options,
        bands.filter(({ result }) => result.best !== null).map(({ band }) => band),
      ),
      ...closedBands(options, selected, (lowHz, highHz) => sweptWidthHz(analysis.curve, lowHz, highHz) > 0),
      ...spotFindings(sweep, plan),
      ...spikeFindings(analysis.curve),
      ...bands.flatMap(({ band, result }) => samplingFindings(analysis, band, result)),
      ...doubtFindings(results, limits),
      ...modeFindings(bands, options),
      ...powerFindings(results, feedline),
      ...dipBesideFindings(analysis, results),
      ...lossFindings(analysis.curve),
      ...(feedline === null ? [] : feedlineFindings(sweep, feedline, results)),
      ...referenceFindings(sweep),
    ],
    cautions: CAUTIONS,
  };
}
