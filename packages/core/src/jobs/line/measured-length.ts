import { at, type Column } from "../../numbers/column.js";
import { SPEED_OF_LIGHT } from "../../numbers/constants.js";
import type { VectorSweep } from "../../sweep/sweep.js";

export interface MeasuredLength {
  /** One way, m of vacuum */
  readonly electricalLengthM: number;
  /** Whether the phase leads back to that of the far end at 0 Hz, as it does where no turn was missed */
  readonly isSure: boolean;
}

/** What is shorter than this is no line but a connector, and may seem to be less than nothing, m (our own choice). */
export const LEAST_LINE_M = 0.05;

/** The phase at 0 Hz is that of the far end but for whole turns, so it may be this far from it, rad (our own choice). */
const GREATEST_PHASE_AT_ZERO = 0.8;

/**
 * The length of a line from the slope of its phase.
 *
 * @param end Γ of the far end, which is real
 */
export function measuredLength(
  { frequencyHz, reflectionReal, reflectionImaginary }: VectorSweep,
  end: number,
): MeasuredLength {
  const phase = new Float64Array(frequencyHz.length);
  let turns = 0;
  for (let i = 0; i < phase.length; i++) {
    const angle = Math.atan2(at(reflectionImaginary, i) * end, at(reflectionReal, i) * end);
    if (i > 0) turns += Math.round((at(phase, i - 1) - angle) / (2 * Math.PI) - turns);
    phase[i] = angle + 2 * Math.PI * turns;
  }
  const { slope, intercept } = straightLine(frequencyHz, phase);
  const whole = 2 * Math.PI * Math.round(intercept / (2 * Math.PI));
  const isSure = Math.abs(intercept - whole) < GREATEST_PHASE_AT_ZERO && lengthOf(slope) > -LEAST_LINE_M;
  if (!isSure) return { electricalLengthM: lengthOf(slope), isSure };
  return { electricalLengthM: Math.max(0, lengthOf(slopeThrough(frequencyHz, phase, whole))), isSure };
}

const lengthOf = (slope: number): number => (-slope * SPEED_OF_LIGHT) / (4 * Math.PI);

function straightLine(x: Column, y: Column): { slope: number; intercept: number } {
  const n = x.length;
  const meanX = x.reduce((sum, value) => sum + value, 0) / n;
  const meanY = y.reduce((sum, value) => sum + value, 0) / n;
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < n; i++) {
    xx += (at(x, i) - meanX) ** 2;
    xy += (at(x, i) - meanX) * (at(y, i) - meanY);
  }
  return { slope: xy / xx, intercept: meanY - (xy / xx) * meanX };
}

function slopeThrough(x: Column, y: Column, intercept: number): number {
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < x.length; i++) {
    xx += at(x, i) ** 2;
    xy += at(x, i) * (at(y, i) - intercept);
  }
  return xy / xx;
}
