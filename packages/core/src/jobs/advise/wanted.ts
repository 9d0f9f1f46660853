import type { Known } from "../../bands/known.js";
import { answeringOn } from "../../bands/parts.js";
import type { UsableShares } from "../../bands/reach.js";
import { type Summarised, summarised } from "../../bands/summary.js";
import { withUncertainty } from "../../bands/sureness.js";
import { type Wish, wishesOf } from "../../bands/wish.js";
import { isVectorCurve } from "../../curve/curve.js";
import type { Instrument } from "../../curve/uncertainty/instrument.js";
import type { UsableBand } from "../../facts/band-plan/band-plan.js";
import type { AdviseOptions } from "./advise-options.js";
import type { NotForetold } from "./advise-result.js";
import type { Antenna } from "./antenna.js";

/** A wish, and how well it is known. */
export interface Wanted {
  readonly wish: Wish;
  /** null: it can be foretold */
  readonly notForetold: NotForetold | null;
  /** Half of what Γ may be off at the analyser, with 95 % */
  readonly error: number;
  /** Shares that readings by hand tell, where nothing can be foretold; null where none do */
  readonly noted: UsableShares | null;
}

/** Half of what Γ may be off where the sweep does not tell (our own choice: a usual hand-held analyser). */
const USUAL_ERROR = 0.01;

/** What is wanted, as it was said or each band of which anything is known, with how well it is known. */
export function wantedOf(options: AdviseOptions, known: Known, antenna: Antenna): readonly Wanted[] {
  const { wishes, bands, instrument = null } = options;
  const all = (wishes ?? wishesOf(options)).map((wish) => wantedFrom(wish, known, antenna, instrument));
  return wishes !== undefined || bands !== undefined
    ? all
    : all.filter(({ notForetold }) => notForetold !== "not-swept");
}

function wantedFrom(wish: Wish, known: Known, antenna: Antenna, instrument: Instrument | null): Wanted {
  const answering = answeringOn(known.parts, wish.pieces);
  const summary = summarised(answering, bandOf(wish), known.limits);
  const notForetold = reasonOf(summary, antenna);
  if (notForetold !== null) {
    const isNoted = notForetold === "only-readings" && summary.summary.sweptFraction === 1;
    return { wish, notForetold, error: 0, noted: isNoted ? summary.summary.usable : null };
  }
  const { uncertainty } = withUncertainty(summary, answering, known.limits, {
    instrument,
    scatter: known.scatterOn(bandOf(wish)),
  });
  const interval = uncertainty?.bestMagnitude;
  const error = interval === undefined ? USUAL_ERROR : (interval.high - interval.low) / 2;
  return { wish, notForetold, error, noted: null };
}

function reasonOf(
  { summary: { best, sweptFraction }, extremes }: Summarised,
  { hasPhase }: Antenna,
): NotForetold | null {
  if (best === null || extremes === null) return "not-swept";
  if (extremes.best.part.knows !== "curve") return "only-readings";
  if (sweptFraction === 0) return "not-swept";
  return hasPhase && !isVectorCurve(extremes.best.part.analysis.curve) ? "no-phase" : null;
}

/** A wish as the bands are judged. */
export const bandOf = ({ band, pieces }: Pick<Wish, "band" | "pieces">): UsableBand => ({
  band,
  pieces,
  lowHz: Math.min(...pieces.map(({ lowHz }) => lowHz)),
  highHz: Math.max(...pieces.map(({ highHz }) => highHz)),
  segments: [],
});
