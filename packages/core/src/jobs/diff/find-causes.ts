import type { Instrument } from "../../curve/uncertainty/instrument.js";
import { isWithinCalibration } from "./calibration.js";
import { type Candidate, candidatesFor, type Tried } from "./candidates.js";
import { type Cause, type CauseCode, isLikely, possible } from "./cause.js";
import { type CommonSamples, commonSamples, FEWEST_SAMPLES, meanDifference, withoutJumps } from "./common-samples.js";
import { interference, jumpCause } from "./interference.js";
import type { LineChange } from "./line-change.js";
import { GREATEST_SCALE } from "./scale-search.js";
import type { SideCurve } from "./side-curve.js";
import { changeOf, smoothChange } from "./smooth-change.js";
import { ALIKE, againstSmooth, explains } from "./spare-numbers.js";
import { MUCH_LEFT, type Tolerances } from "./thresholds.js";
import { whatMoved } from "./what-moved.js";

/** What may lie between two sweeps. */
export interface Explained {
  /** The likely causes first; empty where nothing changed beyond noise */
  readonly causes: readonly Cause[];
  /** The change of the line that is among the likely causes; null where none is */
  readonly line: LineChange | null;
}

/** A difference not far beyond what is overlooked may come from wind, warmth or a cable moved: then the antenna is only possible. */
const SURELY_ANTENNA = 1.5;

const NOTHING: Explained = { causes: [], line: null };

/**
 * Why two sides differ. Every known cause is fitted: another line, another reference impedance, a resistance, a coil or a capacitor
 * in series, a longer or shorter wire, perhaps behind another line. One is likely where it leaves next to nothing and a smooth change
 * of any other kind would need clearly more numbers to leave as little; else it is possible. Of two that do as much neither is likely.
 * What none of them explains is the antenna itself, unless another calibration would do as much.
 */
export function findCauses(
  before: SideCurve,
  after: SideCurve,
  tolerances: Tolerances,
  instrument: Instrument | null,
): Explained {
  const unrest = interference(before, after);
  const samples = commonSamples(before, after);
  if (samples.frequencyHz.length < FEWEST_SAMPLES) return { causes: unrest, line: null };
  const found = simplestOf(samples, before, after, tolerances, instrument);
  const withUnrest = (causes: readonly Cause[]) => ({ causes: [...unrest, ...causes], line: found.line });
  if (!found.causes.some(isAntenna)) return withUnrest(found.causes);
  // What seems a change of the antenna may be a few samples that jump.
  const steady = withoutJumps(samples);
  const calm = steady && simplestOf(steady.calm, before, after, tolerances, instrument);
  if (steady === null || calm === null || calm.causes.some(isAntenna)) return withUnrest(found.causes);
  const jumps = unrest.some(isLikely) ? unrest : [jumpCause(steady.jumps)];
  return { causes: [...jumps, ...calm.causes], line: calm.line };
}

const isOfWire = ({ causes }: Candidate) => causes.some(({ code }) => code === "resonance-moved");

const isOfWireAlone = ({ causes }: Candidate) => causes.every(({ code }) => code === "resonance-moved");

const isOfReactance = ({ causes }: Candidate) =>
  causes.some(({ code }) => code === "coil-added" || code === "capacitor-added");

const isAntenna = ({ code }: Cause) => code === "antenna-changed";

/** An explanation by more numbers must leave less than this share of what a simpler one leaves. */
const CLEARLY_BETTER = 0.5;

/** What explains some samples, held against any smooth change that would. */
function simplestOf(
  samples: CommonSamples,
  before: SideCurve,
  after: SideCurve,
  tolerances: Tolerances,
  instrument: Instrument | null,
): Explained {
  const { negligible, enough, tight } = tolerances;
  const difference = meanDifference(samples);
  if (difference < negligible) return NOTHING;
  const { spareOf, isExact, isNear } = againstSmooth(smoothChange(changeOf(samples), tight), difference, tight);
  const mayBeCalibration = isWithinCalibration(samples, instrument);
  // A calibration makes no loss and no line that holds over all bands, but it may move a dip.
  const isSure = (candidate: Candidate) =>
    !candidate.isDoubtful && (isExact(candidate) || (isNear(candidate) && !(mayBeCalibration && isOfWire(candidate))));
  const tried = candidatesFor(samples, before, difference, enough);
  const explaining = tried.candidates.filter((candidate) => explains(candidate, difference, enough));
  const antennaBeside = (losses: readonly Cause[]) =>
    antennaCause(before, after, difference, tried, losses.some(isOfLoss));
  const best = simplestAmong(tried.candidates.filter(isSure));
  if (best !== null) {
    // A lead a little longer and a wire a little longer do the same.
    const { slightWire } = tried;
    const mayBeWire = slightWire !== null && isOfReactance(best) && explains(slightWire, difference, enough);
    const { causes, line } = againstRivals(best, explaining, mayBeWire ? slightWire : null);
    const remains = best.residual > enough ? [possible(antennaBeside(best.causes))] : [];
    return { causes: [...causes, ...remains], line };
  }
  if (difference <= enough) return NOTHING;
  // Loss lowers the SWR: it is named where it would do much of what was seen.
  const lossy = tried.candidates
    .filter(({ residual }) => residual < MUCH_LEFT * difference)
    .flatMap(({ causes }) => causes.filter(isOfLoss));
  // A wire that does it roughly is the antenna as well, but for one hung up again.
  const isOfAntenna = explaining.every((candidate) => isOfWireAlone(candidate) && tried.slightWire === null);
  const isSurelyAntenna = isOfAntenna && difference >= SURELY_ANTENNA * enough && !mayBeCalibration;
  const perhaps = explaining.filter((candidate) => spareOf(candidate) > 0).sort((a, b) => a.residual - b.residual);
  const told = perhaps.slice(0, MOST_PERHAPS).flatMap(({ causes }) => causes);
  const antenna = antennaBeside(lossy);
  const named = isSurelyAntenna ? [antenna, ...told.map(possible)] : [...told.map(possible), unsettled(antenna)];
  return { causes: [...named, ...lossy.map(possible)].filter(isFirstOfCode), line: null };
}

/** The simplest sure explanation beside those that leave as little: what all of them name is as sure. */
function againstRivals(best: Candidate, explaining: readonly Candidate[], slightWire: Tried["slightWire"]): Explained {
  const rivals = explaining.filter((other) => other !== best && other.residual <= ALIKE * best.residual);
  const isAlone = slightWire === null && rivals.every(({ numbers }) => numbers > best.numbers);
  const others = slightWire === null ? rivals : [slightWire, ...rivals];
  const isSure = ({ code }: Cause) =>
    isAlone || others.every(({ causes }) => causes.some((other) => other.code === code));
  const perhaps = [best, ...others].flatMap(({ causes }) => causes.map(possible));
  return {
    causes: [...best.causes.filter(isSure), ...perhaps].filter(isFirstOfCode),
    line: isAlone ? best.line : null,
  };
}

const LOSSY: ReadonlySet<CauseCode> = new Set(["loss-added", "resistance-added"]);

const isOfLoss = ({ code }: Cause) => LOSSY.has(code);

/** More possible causes than these tell nothing. */
const MOST_PERHAPS = 3;

const isFirstOfCode = ({ code }: Cause, i: number, all: readonly Cause[]): boolean =>
  all.findIndex((other) => other.code === code) === i;

/** Of several the one of fewest numbers, unless one of more leaves clearly less. */
function simplestAmong(sure: readonly Candidate[]): Candidate | null {
  const ranked = [...sure].sort((a, b) => a.numbers - b.numbers || a.residual - b.residual);
  return ranked.reduce<Candidate | null>(
    (best, next) => (best === null || next.residual < CLEARLY_BETTER * best.residual ? next : best),
    null,
  );
}

function antennaCause(
  before: SideCurve,
  after: SideCurve,
  difference: number,
  { candidates, wireReach }: Tried,
  mayBeLoss: boolean,
): Cause {
  const moved = whatMoved(before, after);
  const least = Math.min(difference, ...candidates.map(({ residual }) => residual));
  return {
    code: "antenna-changed",
    confidence: "likely",
    evidence: { differenceRms: difference, leastResidual: least, ...moved.evidence },
    message: `The antenna itself (its shape, height, surroundings or counterpoise) seems to have changed: neither another length of line, ${mayBeLoss ? "" : "nor loss on it, "}nor ${wireTried(wireReach)}, nor a part in series at the place of measuring explains the difference.${moved.text}`,
  };
}

/** Which wires do not explain a difference; beyond what narrow sweeps reach another length may. */
const wireTried = (reach: number): string =>
  reach >= GREATEST_SCALE ? "a longer or shorter wire" : `a wire up to ${(100 * reach).toFixed(1)} % longer or shorter`;

/** The antenna, where the sweeps do not say whether it was it. */
const unsettled = (antenna: Cause): Cause => ({
  ...antenna,
  confidence: "possible",
  message: `Something changed, and these sweeps do not say what: the antenna, its surroundings, or the way it was measured; another calibration may do as much. Repeats on both sides would tell, or a sweep over a wider range than these.`,
});
