import { coarsenessFindings, spikeFindings } from "../../bands/sampling.js";
import type { BandSummary } from "../../bands/summary.js";
import type { UsableBand } from "../../facts/band-plan/band-plan.js";
import { at, type Column } from "../../numbers/column.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { Sweep } from "../../sweep/sweep.js";
import type { BandDiff, Thresholds } from "./band-diff.js";
import { type Cause, isLikely } from "./cause.js";
import type { Side } from "./sides.js";
import { showsLoss } from "./suspected-loss.js";

export const samePlaneFindings = (causes: readonly Cause[]): readonly Finding[] =>
  causes
    .filter(({ code }) => code === "line-length-changed" || code === "loss-added" || code === "loss-removed")
    .map(({ message }) =>
      finding("caution", "same-plane", `Taken out of the second sweep before comparing: ${message}`),
    );

/** Says so where the sweeps of a side are hardly of one deployment. */
export function repeatFindings(
  which: string,
  { all, scatter }: Side,
  { reflectionMagnitude }: Thresholds,
): readonly Finding[] {
  if (scatter <= reflectionMagnitude) return [];
  const message = `The ${all.length} sweeps ${which} differ among themselves by ${scatter.toFixed(2)} of the reflection, more than counts as a change: are they of one deployment, taken at one place? Such scatter hides what you look for.`;
  return [finding("caution", "repeats-differ", message)];
}

/** Says so where a sweep is held against itself. */
export function sameSweeps(befores: readonly Sweep[], afters: readonly Sweep[]): readonly Finding[] {
  const shared = befores.filter((sweep) => afters.some((other) => haveSameReadings(sweep, other)));
  if (shared.length === 0) return [];
  const names = [...new Set(shared.map(({ label }) => label))].join(", ");
  return [finding("caution", "same-sweep", `On both sides, and so no difference in itself: ${names}.`)];
}

const haveSameReadings = (first: Sweep, second: Sweep): boolean =>
  areEqual(first.frequencyHz, second.frequencyHz) && areEqual(first.reflectionMagnitude, second.reflectionMagnitude);

const areEqual = (first: Column, second: Column): boolean =>
  first.length === second.length && first.every((value, i) => value === at(second, i));

/** What the steps of the sweeps leave open on bands that seem changed, and samples that stood alone. */
export function samplingDoubts(
  first: Side,
  second: Side,
  bands: readonly BandDiff[],
  judged: readonly UsableBand[],
): readonly Finding[] {
  const changed = bands.filter(({ verdict }) => verdict !== "unchanged" && verdict !== "not-comparable");
  if (changed.length === 0) return [];
  const of = (name: string, { middle }: Side, summaryOf: (band: BandDiff) => BandSummary) =>
    [
      ...spikeFindings(middle.curve),
      ...changed.flatMap((band) => {
        const asked = judged.find((candidate) => candidate.band === band.band);
        return asked === undefined ? [] : coarsenessFindings(middle, asked, summaryOf(band));
      }),
    ].map((doubt): Finding => ({ ...doubt, message: `${name}: ${doubt.message}` }));
  return [...of("Before", first, ({ before }) => before), ...of("After", second, ({ after }) => after)];
}

/** A lower SWR may be loss; says so where nothing shows whether it is. */
export function lossNotTold(
  first: Side,
  second: Side,
  bands: readonly BandDiff[],
  causes: readonly Cause[],
): readonly Finding[] {
  const better = bands.filter(({ verdict }) => verdict === "improved").map(({ band }) => band);
  if (better.length === 0 || causes.some(isLikely) || showsLoss(first.middle.curve, second.middle.curve)) return [];
  const message = `Better on ${better.join(", ")}, or only more loss: that lowers the SWR as well, and these sweeps do not reach far enough from the antenna's bands to tell. Sweep as wide as the analyser goes, or measure the line alone (feedpoint line).`;
  return [finding("caution", "loss-not-told", message)];
}

/** Bands that were named and are not in the answer. */
export function notCompared(named: readonly string[], bands: readonly BandDiff[]): readonly Finding[] {
  const left = named.filter((name) => !bands.some(({ band }) => band === name));
  if (left.length === 0) return [];
  const message = `Not compared, for not all of the sweeps cover it, or nothing may be sent there: ${left.join(", ")}.`;
  return [finding("caution", "band-not-compared", message)];
}

export const NO_OVERLAP = finding(
  "problem",
  "no-overlap",
  "No band was swept both before and after, so nothing can be compared.",
);

export const SCALAR_COMPARISON = finding(
  "info",
  "scalar-comparison",
  "One of the sweeps knows only the size of the reflection: a moved resonance can be told, and loss where the sweeps reach far from the antenna's bands; another length of line or another reference cannot.",
);
