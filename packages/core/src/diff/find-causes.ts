import { at } from "../column.js";
import type { VectorCurve } from "../curve/curve.js";
import { type Cause, isLikely, possible } from "./cause.js";
import { lengthCause, lossCause, referenceCause, scaleCause } from "./cause-words.js";
import { type CommonSamples, commonSamples, FEWEST_SAMPLES, withoutJumps } from "./common-samples.js";
import { interference, jumpCause } from "./interference.js";
import { electricalLengthM, fitLine, type LineChange, type LineFit } from "./line-fit.js";
import { fitReference } from "./reference-fit.js";
import { fitScale, LEAST_SCALE, type ScaleFit } from "./scale-fit.js";
import { CLEARLY, enoughFor, LEAST_LENGTH_M, LEAST_LOSS_DB } from "./thresholds.js";
import { whatMoved } from "./what-moved.js";

/** What may lie between two sweeps. */
export interface Explained {
  /** The likely causes first; empty where nothing changed beyond noise */
  readonly causes: readonly Cause[];
  /** The change of the line that is among the likely causes; null where none is */
  readonly line: LineChange | null;
}

const NOTHING: Explained = { causes: [], line: null };

/**
 * Why two vector sweeps differ. Explanations are tried from the simplest on: nothing; another line; another reference impedance;
 * a longer or shorter wire, perhaps behind another line. The first that leaves nothing but noise is likely, a later one that
 * would do as well is possible. What none of them explains is the antenna itself.
 */
export function findCauses(before: VectorCurve, after: VectorCurve): Explained {
  const unrest = interference(before, after);
  const samples = commonSamples(before, after);
  if (samples.frequencyHz.length < FEWEST_SAMPLES) return { causes: unrest, line: null };
  const enough = enoughFor(before, after);
  const found = explain(samples, before, after, enough);
  const withUnrest = (causes: readonly Cause[]) => ({ causes: [...unrest, ...causes], line: found.line });
  if (!found.causes.some(isAntenna)) return withUnrest(found.causes);
  // What seems a change of the antenna may be a few samples that jump.
  const steady = withoutJumps(samples);
  const calm = steady && explain(steady.calm, before, after, enough);
  if (steady === null || calm === null || calm.causes.some(isAntenna)) return withUnrest(found.causes);
  const jumps = unrest.some(isLikely) ? unrest : [jumpCause(steady.jumps)];
  return { causes: [...jumps, ...calm.causes], line: calm.line };
}

const isAntenna = ({ code }: Cause) => code === "antenna-changed";

function explain(samples: CommonSamples, before: VectorCurve, after: VectorCurve, enough: number): Explained {
  const difference = meanDifference(samples);
  // Sweeps that agree to a fraction of what is overlooked anyway need no explanation.
  if (difference < enough / 8) return NOTHING;
  const explains = (residual: number) => residual <= enough && residual < CLEARLY * difference;
  const line = fitBestLine(samples, enough);
  const reference = fitReference(samples, before.sweep.referenceOhms);
  if (isLineChange(line) && explains(line.residual)) {
    const others = explains(reference.residual)
      ? [possible(referenceCause(reference, before.sweep.referenceOhms))]
      : [];
    return { causes: [...lineCauses(line, difference), ...others], line };
  }
  const scaled = fitScale(samples, before);
  const isScaled = explains(scaled.residual) && Math.abs(scaled.scale - 1) >= LEAST_SCALE;
  if (explains(reference.residual)) {
    const others = isScaled ? [possible(scaleCause(scaled))] : [];
    return { causes: [referenceCause(reference, before.sweep.referenceOhms), ...others], line: null };
  }
  if (isScaled) return scaleFindings(scaled, before, difference);
  if (difference <= enough) return NOTHING;
  return { causes: [antennaCause(before, after, { difference, line, scaled })], line: null };
}

/** The line alone, with its loss growing as conductors have it, or else in another way that explains the rest. */
function fitBestLine(samples: CommonSamples, enough: number): LineFit {
  const line = fitLine(samples);
  if (line.residual <= enough / 4) return line;
  const other = [fitLine(samples, "even"), fitLine(samples, "proportional")].reduce((best, next) =>
    next.residual < best.residual ? next : best,
  );
  return other.residual < CLEARLY * line.residual ? other : line;
}

const isLonger = ({ delayS }: LineChange, leastM = LEAST_LENGTH_M) => Math.abs(electricalLengthM(delayS)) >= leastM;
const isLossier = ({ lossAt10MHzDb }: LineChange) => Math.abs(lossAt10MHzDb) >= LEAST_LOSS_DB;
const isLineChange = (line: LineChange) => isLonger(line) || isLossier(line);

/** Another length brings its own loss along; loss is a cause of its own only at the same length. */
function lineCauses(line: LineFit, difference: number, leastM = LEAST_LENGTH_M): readonly Cause[] {
  if (isLonger(line, leastM)) return [lengthCause(line, difference)];
  return isLossier(line) ? [lossCause(line, difference)] : [];
}

/** A wire of another length, and with it the change of the line that goes beyond what the fit itself may make up. */
function scaleFindings(scaled: ScaleFit, before: VectorCurve, difference: number): Explained {
  const { line, scale } = scaled;
  // The bulk delay of a sweep is the line's only roughly, and the less so the narrower the sweep; stretching the axis
  // turns its error into a delay.
  const { frequencyHz } = before.sweep;
  const spanHz = at(frequencyHz, frequencyHz.length - 1) - at(frequencyHz, 0);
  const doubtM = electricalLengthM((Math.abs(before.delayS) + 1 / (2 * spanHz)) * Math.abs(1 - 1 / scale));
  const changes = lineCauses(line, difference, LEAST_LENGTH_M + doubtM);
  return { causes: [scaleCause(scaled), ...changes], line: changes.length > 0 ? line : null };
}

function antennaCause(
  before: VectorCurve,
  after: VectorCurve,
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

function meanDifference({
  frequencyHz,
  beforeReal,
  beforeImaginary,
  afterReal,
  afterImaginary,
}: CommonSamples): number {
  let square = 0;
  for (let i = 0; i < frequencyHz.length; i++) {
    square += (at(afterReal, i) - at(beforeReal, i)) ** 2 + (at(afterImaginary, i) - at(beforeImaginary, i)) ** 2;
  }
  return Math.sqrt(square / frequencyHz.length);
}
