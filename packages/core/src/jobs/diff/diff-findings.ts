import { answeringOn } from "../../bands/parts.js";
import { coarsenessFindings, spikeFindings } from "../../bands/sampling.js";
import { scatterFindings } from "../../bands/scatter.js";
import type { BandSummary } from "../../bands/summary.js";
import type { UsableBand } from "../../facts/band-plan/band-plan.js";
import { at, type Column } from "../../numbers/column.js";
import type { Deployment } from "../../sweep/deployment.js";
import { type Finding, finding, placed } from "../../sweep/finding.js";
import type { Sweep } from "../../sweep/sweep.js";
import type { BandDiff } from "./band-diff.js";
import type { Thresholds } from "./band-signs.js";
import { type Cause, type CauseCode, isLikely } from "./cause.js";
import type { Side } from "./sides.js";

export const samePlaneFindings = (causes: readonly Cause[]): readonly Finding[] =>
  causes
    .filter(({ code }) => code === "line-length-changed" || code === "loss-added" || code === "loss-removed")
    .map(({ message }) => finding("caution", "same-plane", { cause: message }));

/** Says so where the sweeps of a side are hardly of one deployment. */
export function repeatFindings(
  which: "before" | "after",
  { all, scatter }: Side,
  { reflectionMagnitude }: Thresholds,
): readonly Finding[] {
  const ofParts = all.flatMap(({ overlaps }) => scatterFindings(overlaps)).map((each) => placed(each, { side: which }));
  if (all.length === 1 || scatter <= reflectionMagnitude) return ofParts;
  return [...ofParts, finding("caution", "repeats-differ", { sweeps: all.length, which, scatter })];
}

/** Says so where a sweep is held against itself. */
export function sameSweeps(befores: readonly Deployment[], afters: readonly Deployment[]): readonly Finding[] {
  const sweepsOf = (side: readonly Deployment[]) => side.flatMap(({ parts }) => parts);
  const shared = sweepsOf(befores).filter((sweep) => sweepsOf(afters).some((other) => haveSameReadings(sweep, other)));
  if (shared.length === 0) return [];
  return [finding("caution", "same-sweep", { labels: [...new Set(shared.map(({ label }) => label))] })];
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
  const of = (side: "before" | "after", { middle }: Side, summaryOf: (band: BandDiff) => BandSummary) =>
    [
      ...middle.parts.filter(({ knows }) => knows === "curve").flatMap(({ analysis }) => spikeFindings(analysis.curve)),
      ...changed.flatMap((band) => {
        const asked = judged.find((candidate) => candidate.band === band.band);
        if (asked === undefined) return [];
        return answeringOn(middle.parts, asked.pieces).flatMap(({ part }) =>
          coarsenessFindings(part, asked, summaryOf(band)),
        );
      }),
    ].map((doubt) => placed(doubt, { side }));
  return [...of("before", first, ({ before }) => before), ...of("after", second, ({ after }) => after)];
}

/** Likely causes that say by themselves why an SWR is lower, or are said to be loss. */
const LEAVES_NO_DOUBT: ReadonlySet<CauseCode> = new Set([
  "resonance-moved",
  "loss-added",
  "loss-removed",
  "resistance-added",
  "coil-added",
  "capacitor-added",
]);

/** A lower SWR may be loss, in the line or in series with the antenna; says so where no likely cause says that it is not. */
export function lossNotTold(bands: readonly BandDiff[], causes: readonly Cause[]): readonly Finding[] {
  const better = bands.filter(({ verdict }) => verdict === "improved").map(({ band }) => band);
  if (better.length === 0 || causes.some((cause) => isLikely(cause) && LEAVES_NO_DOUBT.has(cause.code))) return [];
  return [finding("caution", "loss-not-told", { bands: better })];
}

/** What causes are called beside others that would do as well. */
const ONE_OF_SEVERAL: Readonly<Partial<Record<CauseCode, string>>> = {
  "line-length-changed": "another length of line",
  "loss-added": "more loss",
  "loss-removed": "less loss",
  "reference-changed": "another reference impedance",
  "resonance-moved": "a longer or shorter wire",
  "resistance-added": "a resistance in series",
  "coil-added": "a coil in series",
  "capacitor-added": "a capacitor in series",
};

/** Causes that the range swept does not part, named together. */
export function causesAlike(causes: readonly Cause[]): readonly Finding[] {
  if (causes.some((cause) => isLikely(cause) && cause.code in ONE_OF_SEVERAL)) return [];
  const names = causes.flatMap(({ code }) => ONE_OF_SEVERAL[code] ?? []);
  return names.length < 2 ? [] : [finding("info", "causes-alike", { names })];
}

/** Bands that changed by no more than putting the same antenna up again is assumed to do. */
export function scatterAssumed(bands: readonly BandDiff[], scatter: number): readonly Finding[] {
  const perhaps = bands.filter(({ isPerhaps }) => isPerhaps).map(({ band }) => band);
  return perhaps.length === 0 ? [] : [finding("info", "scatter-assumed", { bands: perhaps, scatter })];
}

/** Bands that were named and are not in the answer. */
export function notCompared(named: readonly string[], bands: readonly BandDiff[]): readonly Finding[] {
  const left = named.filter((name) => !bands.some(({ band }) => band === name));
  if (left.length === 0) return [];
  return [finding("caution", "band-not-compared", { bands: left })];
}

export const NO_OVERLAP = finding("problem", "no-overlap", {});

export const SCALAR_COMPARISON = finding("info", "scalar-comparison", {});
