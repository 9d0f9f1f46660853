import { type Finding, finding } from "../sweep/finding.js";
import type { Analysis } from "./analysis.js";
import { dipNear } from "./dip.js";
import { type BandSummary, isDip } from "./summary.js";

/** A dip further from the middle of a band than this is not worth a hint (our own choice). */
const GREATEST_HINT = 0.08;

/** For bands whose best point is only an edge, because the dip lies outside: how much too long or too short the wire is. */
export function dipBesideFindings(analyses: readonly Analysis[], bands: readonly BandSummary[]): readonly Finding[] {
  const beside = bands.flatMap((summary) => {
    const { band, best, lowHz, highHz, withinLimit, restsOn } = summary;
    if (withinLimit.fraction === 1) return [];
    const middleHz = (lowHz + highHz) / 2;
    const isSought = best !== null && restsOn === "curve" && !isDip(summary);
    const dips = isSought ? analyses.flatMap((analysis) => dipNear(analysis, middleHz).dip ?? []) : [];
    const [dip = null] = dips.sort((a, b) => a.reflectionMagnitude - b.reflectionMagnitude);
    if (dip === null || (dip.frequencyHz >= lowHz && dip.frequencyHz <= highHz)) return [];
    const change = dip.frequencyHz / middleHz - 1;
    if (Math.abs(change) > GREATEST_HINT) return [];
    return [{ band, frequencyHz: dip.frequencyHz, change }];
  });
  return beside.length === 0 ? [] : [finding("info", "dip-outside-band", { dips: beside })];
}
