import { feedlineFindings } from "../bands/band-feedline.js";
import { type BandContext, type BandResult, checkBand } from "../bands/band-result.js";
import { type DialResult, dialResult } from "../bands/dials.js";
import { dipBesideFindings } from "../bands/dip-hints.js";
import {
  doubtFindings,
  lossFindings,
  modeFindings,
  peopleFindings,
  powerFindings,
  referenceFindings,
} from "../bands/doubts.js";
import type { People } from "../bands/exposure.js";
import { knownOf, type PartInfo, partInfos } from "../bands/known.js";
import { checkDials, checkFeedline, checkInstrument, checkPeople, checkScope } from "../bands/option-checks.js";
import { answeringOn } from "../bands/parts.js";
import { narrowDipFindings, samplingFindings, spikeFindings, spotFindings } from "../bands/sampling.js";
import { scatterFindings } from "../bands/scatter.js";
import { closedBands, type PlanInfo, planFindings, planInfo, type Scope, selectBands } from "../bands/scope.js";
import { sweptWidthHz } from "../curve/trace.js";
import type { Dial } from "../facts/activity/dial.js";
import { cautionsFor } from "../facts/cautions.js";
import type { Feedline } from "../facts/feedline/feedline.js";
import type { Limits } from "../facts/limits.js";
import { asDeployment, type Deployment, deploymentInfo } from "../sweep/deployment.js";
import type { Finding } from "../sweep/finding.js";
import type { Sweep } from "../sweep/sweep.js";
import type { SweepInfo } from "../sweep/sweep-info.js";

/** What a check says. Plain data: as JSON it is what `feedpoint check --json` prints. */
export interface CheckResult {
  /** Name and version of this form */
  readonly schema: "feedpoint/check@1";
  /** What was read: the deployment as a whole */
  readonly sweep: SweepInfo;
  /** Its sweeps and lists of readings, one at least */
  readonly parts: readonly PartInfo[];
  /** What it was held against */
  readonly plan: PlanInfo;
  /** The limits that were used, filled up */
  readonly limits: Limits;
  /** As it was given; null where none was */
  readonly feedline: Feedline | null;
  /** What was said of people near the antenna; empty where nothing was */
  readonly people: People;
  /** Of those asked for the ones where something may be sent, in the order of the plan */
  readonly bands: readonly BandResult[];
  /** In the order in which they were given */
  readonly dials: readonly DialResult[];
  /** What the operator should know: of the sweep, the plan, each band and the feedline */
  readonly findings: readonly Finding[];
  /** {@link CAUTIONS}, below those of high voltage where the answer calls for them */
  readonly cautions: readonly string[];
}

/** What a sweep is checked against: plan, class, bands, modes and limits, and what is known of the station. */
export interface CheckOptions extends Scope, Omit<BandContext, "licenceClass" | "modes"> {
  /** Dial frequencies to be judged beside the bands, such as {@link dialOf} makes; none where absent */
  readonly dials?: readonly Dial[];
}

/**
 * Judges a sweep, or all that is known of a deployment, against a band plan: what it does on each band and segment, and what
 * that takes to transmit. Each band is answered by the best part for it.
 *
 * @param given a sweep such as {@link readSweeps} gives, or several as {@link deploymentOf} joins them
 * @param options only the plan must be given
 * @throws TypeError for an argument that is not what it must be, which it names
 * @throws RangeError for a band or a licence class that the plan does not know
 * @example
 * ```ts
 * import { check, planById, readSweeps } from "@feedpoint/core";
 *
 * const [sweep] = readSweeps("Frequency (MHz),SWR\n6.9,1.9\n7.0,1.6\n7.1,1.3\n7.2,1.5\n7.3,1.8\n");
 * const { bands } = check(sweep, { plan: planById("itu-r1"), bands: ["40m"] });
 * bands[0]?.verdict; // → "pass"
 * bands[0]?.best?.swr; // → 1.3
 * ```
 */
export function check(given: Sweep | Deployment, options: CheckOptions): CheckResult {
  const deployment = asDeployment(given);
  checkScope(options);
  const { plan, licenceClass = null, feedline = null, dials = [] } = options;
  checkFeedline(feedline);
  checkInstrument(options.instrument);
  checkPeople(options.people);
  checkDials(dials);
  const known = knownOf(deployment, options);
  const { parts, limits, overlaps } = known;
  const selected = selectBands(options);
  const context = { equipment: options.equipment ?? {}, feedline, people: options.people ?? {} };
  const bands = selected.map((band) => ({ band, result: checkBand(known, band, options) }));
  const curves = parts.filter(({ knows }) => knows !== "stretch").map(({ analysis }) => analysis.curve);
  const results = bands.map(({ result }) => result);
  return {
    schema: "feedpoint/check@1",
    sweep: deploymentInfo(deployment),
    parts: partInfos(deployment, results),
    plan: planInfo(options),
    limits,
    feedline,
    people: context.people,
    bands: results,
    dials: dials.map((dial) => dialResult(parts, plan, licenceClass, dial, context)),
    findings: [
      ...planFindings(
        options,
        bands.filter(({ result }) => result.best !== null).map(({ band }) => band),
      ),
      ...closedBands(options, selected, (lowHz, highHz) =>
        parts.some(({ analysis }) => sweptWidthHz(analysis.curve, lowHz, highHz) > 0),
      ),
      ...scatterFindings(overlaps),
      ...deployment.parts.flatMap((sweep) => spotFindings(sweep, plan)),
      ...curves.flatMap(spikeFindings),
      ...bands.flatMap(({ band, result }) => samplingFindings(answeringOn(parts, band.pieces), band, result)),
      ...narrowDipFindings(
        parts,
        bands.filter(({ result }) => result.best !== null).map(({ band }) => band),
      ),
      ...doubtFindings(results, limits),
      ...modeFindings(bands, options),
      ...powerFindings(results, feedline, context.equipment),
      ...peopleFindings(results, context.people),
      ...dipBesideFindings(
        parts.filter(({ knows }) => knows === "curve").map(({ analysis }) => analysis),
        results,
      ),
      ...lossFindings(curves),
      ...(feedline === null ? [] : feedlineFindings(deployment.parts, feedline, results)),
      ...referenceFindings(deployment.parts, options.equipment?.radio?.ohms),
    ],
    cautions: cautionsFor({ hasHighVoltage: results.some(hasHighVoltage) }),
  };
}

/** An impedance from which on a feed point carries high voltage at usual powers, Ω (our own choice). */
const HIGH_OHMS = 500;

/** Whether the answer names a power, a voltage or a current on a band, or the antenna is fed where its impedance is high. */
function hasHighVoltage({ power, feedline, best, worst }: BandResult): boolean {
  const isNamed = power.some(({ watts }) => watts !== null) || feedline?.stress != null;
  const isHigh = [best, worst].some(
    (point) => point !== null && Math.hypot(point.resistanceOhms ?? 0, point.reactanceOhms ?? 0) >= HIGH_OHMS,
  );
  return isNamed || isHigh;
}
