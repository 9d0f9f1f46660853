import { at } from "../../numbers/column.js";
import { complex } from "../../numbers/complex.js";
import { SPEED_OF_LIGHT } from "../../numbers/constants.js";
import { leastBetween } from "../../numbers/search.js";
import { changeReference } from "../../reflection/impedance.js";
import { type VectorSweep, withReference } from "../../sweep/sweep.js";
import { measuredLength } from "./measured-length.js";
import { fittedLoss } from "./measured-loss.js";

/** The impedance that a line has by its own sweep. */
export interface OwnImpedance {
  readonly ohms: number;
  /** It may be as much more or less, with 95 % probability */
  readonly halfOhms: number;
}

/** Impedances that are tried lie between these shares of what the line is made for: another kind of line may have been swept. */
const TRIED = [0.4, 2] as const;
/** Tried one by one, for between them the length that fits a wrong one is any. */
const STEPS = 48;
/** The second derivative is told from this share to both sides. */
const STEP_SHARE = 0.02;
/** What is left is no noise but connectors and calibration, the same over many samples: it counts for so many times more (our own choice). */
const CORRELATED = 10;
const COVERAGE_FACTOR = 1.96;
/** The place of the least is told to this. */
const TOLERANCE_OHMS = 1e-3;
/** Wider than this share it tells nothing. */
const GREATEST_HALF_SHARE = 0.03;
/** A far end that reflects less tells nothing of the line. */
export const LEAST_END = 0.1;

/** Less than this share beside what a line is made for is no other impedance. */
const LEAST_SHARE_OFF = 0.01;

/** Whether it is sure to be another than the line is made for, and by enough to count. */
export const isAnother = ({ ohms, halfOhms }: OwnImpedance, nominalOhms: number): boolean =>
  Math.abs(ohms - nominalOhms) > Math.max(halfOhms, LEAST_SHARE_OFF * nominalOhms);

/** Γ of a resistance, Ω, at the end of a line. */
export const reflectionOfEnd = (endOhms: number, characteristicOhms: number): number =>
  endOhms === Number.POSITIVE_INFINITY ? 1 : (endOhms - characteristicOhms) / (endOhms + characteristicOhms);

/**
 * The impedance with which a line explains its sweep best: with another one the reflection swings with every half wave of length.
 *
 * @param aroundOhms what it is made for
 * @returns null where the sweep does not tell it: the line is too short or too lossy, or its end nearly matched
 */
export function ownImpedance(sweep: VectorSweep, endOhms: number, aroundOhms: number): OwnImpedance | null {
  const sense = Math.sign(reflectionOfEnd(endOhms, aroundOhms));
  const tried = Array.from(
    { length: STEPS + 1 },
    (_, i) => aroundOhms * TRIED[0] * (TRIED[1] / TRIED[0]) ** (i / STEPS),
  )
    // Where the end is nearly matched it tells nothing, and beyond it reflects in the other sense.
    .filter((ohms) => sense * reflectionOfEnd(endOhms, ohms) >= LEAST_END);
  const squaresAt = (ohms: number) => squaresLeft(sweep, endOhms, ohms);
  const squares = tried.map(squaresAt);
  const best = squares.indexOf(Math.min(...squares));
  const [low, high] = [tried[best - 1], tried[best + 1]];
  if (low === undefined || high === undefined) return null;
  const ohms = leastBetween(squaresAt, low, high, TOLERANCE_OHMS);
  const least = squaresAt(ohms);
  const step = STEP_SHARE * ohms;
  const bend = (squaresAt(ohms + step) + squaresAt(ohms - step) - 2 * least) / step ** 2;
  const variance = least / Math.max(1, 2 * sweep.frequencyHz.length - 4);
  if (!(bend > 0)) return null;
  const halfOhms = COVERAGE_FACTOR * Math.sqrt((2 * CORRELATED * variance) / bend);
  return halfOhms < GREATEST_HALF_SHARE * ohms ? { ohms, halfOhms } : null;
}

/** What a line of an impedance leaves unexplained: the squares of Γ less that of the line with its fitted length and loss. */
function squaresLeft(sweep: VectorSweep, endOhms: number, ohms: number): number {
  const seen = withReference(sweep, ohms);
  const end = reflectionOfEnd(endOhms, ohms);
  const { electricalLengthM } = measuredLength(seen, end);
  const { lossDbAt } = fittedLoss(seen, end);
  let squares = 0;
  for (let i = 0; i < seen.frequencyHz.length; i++) {
    const frequencyHz = at(seen.frequencyHz, i);
    const size = end * 10 ** (-lossDbAt(frequencyHz) / 10);
    const angle = (-4 * Math.PI * frequencyHz * electricalLengthM) / SPEED_OF_LIGHT;
    // Held against what was read: against another reference the same noise would count more or less.
    const model = changeReference(complex(size * Math.cos(angle), size * Math.sin(angle)), ohms, sweep.referenceOhms);
    squares +=
      (at(sweep.reflectionReal, i) - model.real) ** 2 + (at(sweep.reflectionImaginary, i) - model.imaginary) ** 2;
  }
  return squares;
}
