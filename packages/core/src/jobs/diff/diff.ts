import { checkInstrument, checkScope } from "../../bands/option-checks.js";
import { type PlanInfo, planFindings, planInfo, type Scope, selectBands } from "../../bands/scope.js";
import { CAUTIONS } from "../../facts/cautions.js";
import { type Limits, limitsWith } from "../../facts/limits.js";
import type { Finding } from "../../sweep/finding.js";
import type { Sweep } from "../../sweep/sweep.js";
import { type SweepInfo, sweepInfo } from "../../sweep/sweep-info.js";
import { type BandDiff, DEFAULT_THRESHOLDS, diffBand, type Thresholds } from "./band-diff.js";
import { type Cause, possible } from "./cause.js";
import {
  lossNotTold,
  NO_OVERLAP,
  notCompared,
  repeatFindings,
  SCALAR_COMPARISON,
  samePlaneFindings,
  sameSweeps,
  samplingDoubts,
} from "./diff-findings.js";
import { explanationOf } from "./explanation.js";
import { headlineOf } from "./headline.js";
import { onSameTerms, type TermsOptions } from "./same-terms.js";
import { groupOf, sideOf } from "./sides.js";

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

export interface DiffOptions extends Scope, TermsOptions {
  readonly thresholds?: Thresholds;
}

/**
 * Compares two deployments band by band, on what all sweeps cover, and looks for the cause.
 *
 * @param before one sweep, or several repeats; the same for `after`
 * @throws RangeError for a side without a sweep
 */
export function diff(
  before: Sweep | readonly Sweep[],
  after: Sweep | readonly Sweep[],
  options: DiffOptions,
): DiffResult {
  checkScope(options);
  const { thresholds = DEFAULT_THRESHOLDS, instrument = null } = options;
  checkInstrument(instrument);
  const limits = limitsWith(options.limits);
  const befores = groupOf(before, "before");
  const afters = groupOf(after, "after");
  const terms = onSameTerms(before, after, options);
  const first = sideOf(terms.before, limits);
  const second = sideOf(terms.after, limits);
  const { causes: found } = explanationOf(first, second, instrument);
  const asked = selectBands(options);
  const bands = asked.flatMap(
    (band) => diffBand(band, first, second, { thresholds, instrument }, terms.isMatched ? found : null) ?? [],
  );
  const doubts = samplingDoubts(first, second, bands, asked);
  // What a step too long for a dip shows may be the step's doing.
  const causes =
    doubts.length === 0 ? found : found.map((cause) => (cause.code === "antenna-changed" ? possible(cause) : cause));
  return {
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
      ...terms.findings,
      ...samePlaneFindings(terms.takenOut),
      ...sameSweeps(befores, afters),
      ...repeatFindings("before", first, thresholds),
      ...repeatFindings("after", second, thresholds),
      ...(bands.length === 0 ? [NO_OVERLAP] : notCompared(options.bands ?? [], bands)),
      ...doubts,
      ...lossNotTold(first, second, bands, causes),
      ...([...terms.before, ...terms.after].some(({ kind }) => kind === "scalar") ? [SCALAR_COMPARISON] : []),
      ...planFindings(
        options,
        asked.filter(({ band }) => bands.some((result) => result.band === band)),
      ),
    ],
    cautions: CAUTIONS,
  };
}
