import { checkInstrument, checkScope } from "../../bands/option-checks.js";
import { DEFAULT_SCATTER } from "../../bands/scatter.js";
import { type PlanInfo, planFindings, planInfo, type Scope, selectBands } from "../../bands/scope.js";
import { CAUTIONS } from "../../facts/cautions.js";
import { type Limits, limitsWith } from "../../facts/limits.js";
import { demand, isRecord } from "../../input/argument.js";
import { type Deployment, deploymentInfo } from "../../sweep/deployment.js";
import type { Finding } from "../../sweep/finding.js";
import { readingsOf } from "../../sweep/sweep.js";
import type { SweepInfo } from "../../sweep/sweep-info.js";
import { type BandDiff, diffBand } from "./band-diff.js";
import { DEFAULT_THRESHOLDS, type Thresholds } from "./band-signs.js";
import { type Cause, possible } from "./cause.js";
import {
  causesAlike,
  lossNotTold,
  NO_OVERLAP,
  notCompared,
  repeatFindings,
  SCALAR_COMPARISON,
  samePlaneFindings,
  sameSweeps,
  samplingDoubts,
  scatterAssumed,
} from "./diff-findings.js";
import { explanationOf } from "./explanation.js";
import { headlineOf } from "./headline.js";
import { onSameTerms, type TermsOptions } from "./same-terms.js";
import { type Given, groupOf, isSampledAlike, isTakenTwice, sideOf } from "./sides.js";

/** What a comparison says. Plain data: as JSON it is what `feedpoint diff --json` prints. */
export interface DiffResult {
  /** Name and version of this form */
  readonly schema: "feedpoint/diff@1";
  /** The sweeps and deployments as they were given */
  readonly before: readonly SweepInfo[];
  readonly after: readonly SweepInfo[];
  /** What the bands were taken from */
  readonly plan: PlanInfo;
  /** The limits that were used, filled up */
  readonly limits: Limits;
  /** What a change had to exceed */
  readonly thresholds: Thresholds;
  /** What a person would say, in a sentence or two */
  readonly headline: string;
  /** Those that all sweeps cover, in the order of the plan */
  readonly bands: readonly BandDiff[];
  /** The likely ones first; none where nothing changed or nothing explains it */
  readonly causes: readonly Cause[];
  /** What the operator should know of all this */
  readonly findings: readonly Finding[];
  /** {@link CAUTIONS} */
  readonly cautions: readonly string[];
}

/** What a comparison is held against, and how. */
export interface DiffOptions extends Scope, TermsOptions {
  /** What a change must exceed to count; what is left out is {@link DEFAULT_THRESHOLDS} */
  readonly thresholds?: Partial<Thresholds>;
  /**
   * What the same antenna, put up and swept again, is assumed to differ by in Γ, where no repeats tell it; 0 or more,
   * {@link DEFAULT_SCATTER} where absent. Changes that may be no more than that are `isPerhaps`.
   */
  readonly scatter?: number;
}

/**
 * Compares two deployments band by band, on what all sweeps cover, and looks for the cause.
 *
 * @param before a sweep, or all that is known of a deployment as {@link deploymentOf} joins it, or several repeats; the same for
 *   `after`
 * @throws TypeError for an argument that is not what it must be, which it names
 * @throws RangeError for a side without a sweep, and for a band or a licence class that the plan does not know
 * @example
 * ```ts
 * import { diff, planById, reflectionFromImpedance, type Sweep, vectorSweep } from "@feedpoint/core";
 *
 * // An invented antenna: 60 Ω in series with a resonance.
 * function antenna(resonanceHz: number): Sweep {
 *   const frequencyHz = Float64Array.from({ length: 101 }, (_, i) => 6.5e6 + i * 12e3);
 *   const seen = Array.from(frequencyHz, (hz) =>
 *     reflectionFromImpedance({ real: 60, imaginary: 600 * (hz / resonanceHz - resonanceHz / hz) }, 50),
 *   );
 *   return vectorSweep(
 *     { label: "invented", referenceOhms: 50 },
 *     {
 *       frequencyHz,
 *       reflectionReal: Float64Array.from(seen, ({ real }) => real),
 *       reflectionImaginary: Float64Array.from(seen, ({ imaginary }) => imaginary),
 *     },
 *   );
 * }
 *
 * const { bands, causes } = diff(antenna(7.1e6), antenna(6.9e6), { plan: planById("itu-r1"), bands: ["40m"] });
 * bands[0]?.verdict; // → "worse"
 * causes[0]?.code; // → "resonance-moved"
 * ```
 */
export function diff(
  before: Given | readonly Given[],
  after: Given | readonly Given[],
  options: DiffOptions,
): DiffResult {
  checkScope(options);
  const { instrument = null } = options;
  checkInstrument(instrument);
  const thresholds = thresholdsWith(options.thresholds);
  const { scatter = DEFAULT_SCATTER } = options;
  demand(typeof scatter === "number" && scatter >= 0, "scatter", "a number of 0 or more", scatter);
  const limits = limitsWith(options.limits);
  const befores = groupOf(before, "before");
  const afters = groupOf(after, "after");
  const terms = onSameTerms(before, after, options);
  const first = sideOf(terms.before, limits, options.plan);
  const second = sideOf(terms.after, limits, options.plan);
  const { causes: found } = explanationOf(first, second, instrument);
  const asked = selectBands(options);
  const assumed = isTakenTwice(first) || isTakenTwice(second) ? null : scatter;
  const bands = asked.flatMap(
    (band) =>
      diffBand(
        band,
        first,
        second,
        { thresholds, instrument, limits, scatter: assumed },
        terms.isMatched ? found : null,
      ) ?? [],
  );
  const doubts = samplingDoubts(first, second, bands, asked);
  // What a step too long for a dip shows between the samples may be the step's doing; at the samples of both it is not.
  const isOpen = doubts.some(({ code }) => code === "spike") || (doubts.length > 0 && !isSampledAlike(first, second));
  const causes = isOpen ? found.map((cause) => (cause.code === "antenna-changed" ? possible(cause) : cause)) : found;
  return {
    schema: "feedpoint/diff@1",
    before: befores.map(deploymentInfo),
    after: afters.map(deploymentInfo),
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
      ...(assumed === null ? [] : scatterAssumed(bands, assumed)),
      ...lossNotTold(bands, causes),
      ...causesAlike(causes),
      ...(isWithoutPhase([...terms.before, ...terms.after]) ? [SCALAR_COMPARISON] : []),
      ...planFindings(
        options,
        asked.filter(({ band }) => bands.some((result) => result.band === band)),
      ),
    ],
    cautions: CAUTIONS,
  };
}

/** Whether a curve that is compared knows the size of the reflection alone. */
const isWithoutPhase = (deployments: readonly Deployment[]): boolean =>
  deployments.some(({ parts }) => parts.some((sweep) => sweep.kind === "scalar" && readingsOf(sweep).length === 0));

function thresholdsWith(given: Partial<Thresholds> = {}): Thresholds {
  demand(isRecord(given), "thresholds", "an object such as DEFAULT_THRESHOLDS", given);
  const thresholds = { ...DEFAULT_THRESHOLDS, ...given };
  for (const name of ["reflectionMagnitude", "fraction", "readingSwr"] as const) {
    const value = thresholds[name];
    demand(typeof value === "number" && value >= 0, `thresholds.${name}`, "a number of 0 or more", value);
  }
  return thresholds;
}
