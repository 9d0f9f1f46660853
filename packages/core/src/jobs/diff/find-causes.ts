import { type Cause, isLikely, possible } from "./cause.js";
import { lengthCause, referenceCause, scaleCause } from "./cause-words.js";
import {
  type CommonSamples,
  commonSamples,
  FEWEST_SAMPLES,
  meanDifference,
  sizeAfter,
  withoutJumps,
} from "./common-samples.js";
import { interference, jumpCause } from "./interference.js";
import { isLineChange, isLonger, lineCauses } from "./line-causes.js";
import { electricalLengthM, type LineChange } from "./line-change.js";
import { fitLine, fitLineOf, type LineFit, withBestLaw } from "./line-fit.js";
import { fitReference, isAnotherReference } from "./reference-fit.js";
import { fitScale, type ScaleFit } from "./scale-fit.js";
import { LEAST_SCALE } from "./scale-search.js";
import { bulkDelayOf, type SideCurve, widestSpanHz } from "./side-curve.js";
import { CLEARLY, isSurelyLine, LEAST_LENGTH_M, type Tolerances } from "./thresholds.js";
import { whatMoved } from "./what-moved.js";

/** What may lie between two sweeps. */
export interface Explained {
  /** The likely causes first; empty where nothing changed beyond noise */
  readonly causes: readonly Cause[];
  /** The change of the line that is among the likely causes; null where none is */
  readonly line: LineChange | null;
}

/** A residual of this share of what is overlooked anyway needs no better explanation. */
const WELL_EXPLAINED_SHARE = 0.02;
/** A line longer by this much that leaves less than this share of the difference was changed, whatever else was (our own choice). */
const SURE_LENGTH_M = 1;
const MOSTLY = 0.2;
/** A difference not far beyond what is overlooked may come from wind, warmth or a cable moved: then the antenna is only possible. */
const SURELY_ANTENNA = 1.5;

/** The other common impedance of coax, that of television. */
const TELEVISION_OHMS = 75;

const NOTHING: Explained = { causes: [], line: null };

/**
 * Why two vector sweeps differ. Explanations are tried from the simplest on: nothing; another line; another reference impedance;
 * a longer or shorter wire, perhaps behind another line. The first that leaves nothing but noise is likely, a later one that
 * would do as well is possible. What none of them explains is the antenna itself.
 */
export function findCauses(before: SideCurve, after: SideCurve, tolerances: Tolerances): Explained {
  const unrest = interference(before, after);
  const samples = commonSamples(before, after);
  if (samples.frequencyHz.length < FEWEST_SAMPLES) return { causes: unrest, line: null };
  const found = simplestOf(samples, before, after, tolerances);
  const withUnrest = (causes: readonly Cause[]) => ({ causes: [...unrest, ...causes], line: found.line });
  if (!found.causes.some(isAntenna)) return withUnrest(found.causes);
  // What seems a change of the antenna may be a few samples that jump.
  const steady = withoutJumps(samples);
  const calm = steady && simplestOf(steady.calm, before, after, tolerances);
  if (steady === null || calm === null || calm.causes.some(isAntenna)) return withUnrest(found.causes);
  const jumps = unrest.some(isLikely) ? unrest : [jumpCause(steady.jumps)];
  return { causes: [...jumps, ...calm.causes], line: calm.line };
}

const isAntenna = ({ code }: Cause) => code === "antenna-changed";

/** The simplest explanation of some samples that leaves nothing but noise. */
function simplestOf(
  samples: CommonSamples,
  before: SideCurve,
  after: SideCurve,
  { negligible, enough }: Tolerances,
): Explained {
  const difference = meanDifference(samples);
  if (difference < negligible) return NOTHING;
  const explains = (residual: number) => residual <= enough && residual < CLEARLY * difference;
  const wellExplained = enough * WELL_EXPLAINED_SHARE;
  const line = withBestLaw(samples, fitLine(samples), wellExplained);
  const { referenceOhms } = before;
  const reference = fitReference(samples, referenceOhms);
  const isReference = explains(reference.residual) && isAnotherReference(reference.ohms, referenceOhms);
  if (isLineChange(line) && explains(line.residual)) {
    const others = isReference ? [possible(referenceCause(reference, referenceOhms))] : [];
    const isSure = isSurelyLine(line.residual, difference, before, after);
    const causes = lineCauses(line, difference).map((cause) => (isSure ? cause : possible(cause)));
    return { causes: [...causes, ...others], line: isSure ? line : null };
  }
  const scaled = fitScale(samples, before, wellExplained);
  const isScaled = explains(scaled.residual) && Math.abs(scaled.scale - 1) >= LEAST_SCALE;
  if (isReference) {
    const others = isScaled ? [possible(scaleCause(scaled))] : [];
    return { causes: [referenceCause(reference, referenceOhms), ...others], line: null };
  }
  if (isScaled) return scaleFindings(scaled, before, difference);
  const ofTelevision = fitLineOf(TELEVISION_OHMS, samples, referenceOhms);
  if (isLonger(ofTelevision, SURE_LENGTH_M) && explains(ofTelevision.residual)) {
    return { causes: [lengthCause(ofTelevision, difference)], line: ofTelevision };
  }
  if (difference <= enough) return NOTHING;
  const changed = antennaCause(before, after, { difference, line, scaled });
  const antenna = difference < SURELY_ANTENNA * enough ? possible(changed) : changed;
  // Of a reflection that is small after, loss alone would leave little: the line has to explain that one as well.
  const isElsewhere =
    isLonger(line, SURE_LENGTH_M) && line.residual < MOSTLY * Math.min(difference, sizeAfter(samples));
  return isElsewhere ? { causes: [lengthCause(line, difference), antenna], line } : { causes: [antenna], line: null };
}

/** A wire of another length, and with it the change of the line that goes beyond what the fit itself may make up. */
function scaleFindings(scaled: ScaleFit, before: SideCurve, difference: number): Explained {
  const { line, scale } = scaled;
  // The bulk delay of a sweep is the line's only roughly, and the less so the narrower the sweep; stretching the axis
  // turns its error into a delay.
  const doubtS = Math.abs(bulkDelayOf(before)) + 1 / (2 * widestSpanHz(before));
  const doubtM = electricalLengthM(doubtS * Math.abs(1 - 1 / scale));
  const changes = lineCauses(line, difference, LEAST_LENGTH_M + doubtM);
  return { causes: [scaleCause(scaled), ...changes], line: changes.length > 0 ? line : null };
}

function antennaCause(
  before: SideCurve,
  after: SideCurve,
  { difference, line, scaled }: { difference: number; line: LineFit; scaled: ScaleFit },
): Cause {
  const moved = whatMoved(before, after);
  return {
    code: "antenna-changed",
    confidence: "likely",
    evidence: {
      differenceRms: difference,
      residualOfLineChange: line.residual,
      residualOfScaling: scaled.residual,
      ...moved.evidence,
    },
    message: `The antenna itself (its shape, height, surroundings or counterpoise) seems to have changed: neither another length of line, nor loss, nor a longer or shorter wire explains the difference.${moved.text}`,
  };
}
