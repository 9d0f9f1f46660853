import { feedlineFrom, matchedLossDb } from "../../facts/feedline/feedline.js";
import { FEEDLINE_KINDS } from "../../facts/feedline/feedline-kinds.js";
import type { Cause } from "./cause.js";
import { excessLossCause, lengthCause, lossCause } from "./cause-words.js";
import { electricalLengthM, type LineChange, lossAt10MHzDb } from "./line-change.js";
import type { LineFit } from "./line-fit.js";
import { LEAST_LENGTH_M, LEAST_LOSS_DB } from "./thresholds.js";

/** What the lossiest kind of line loses at 10 MHz, dB for each metre of electrical length. */
const GREATEST_DB_PER_M = Math.max(
  ...FEEDLINE_KINDS.map(({ id, velocityFactor }) =>
    matchedLossDb(feedlineFrom({ kind: id, lengthM: velocityFactor }), 10e6),
  ),
);

/** As much longer as this a line may seem that only loses more, m. */
const SLOWED_M = 1.5;

export const isLonger = ({ delayS }: LineChange, leastM = LEAST_LENGTH_M): boolean =>
  Math.abs(electricalLengthM(delayS)) >= leastM;

export const isLossier = (line: LineChange) => Math.abs(lossAt10MHzDb(line)) >= LEAST_LOSS_DB;

export const isLineChange = (line: LineChange): boolean => isLonger(line) || isLossier(line);

/** Another length, the loss beside it that no line of that length has, or at the same length the loss alone. */
export function lineCauses(line: LineFit, difference: number, leastM = LEAST_LENGTH_M): readonly Cause[] {
  if (!isLonger(line, leastM)) return isLossier(line) ? [lossCause(line, difference)] : [];
  const isExcess = Math.abs(excessLossDb(line)) >= LEAST_LOSS_DB;
  // A wet line slows the wave, too.
  if (isExcess && lossAt10MHzDb(line) > 0 && !isLonger(line, SLOWED_M)) return [excessLossCause(line, difference)];
  return [lengthCause(line, difference), ...(isExcess ? [excessLossCause(line, difference)] : [])];
}

/** How far the loss lies outside of what some line of the added length brings along. */
function excessLossDb(line: LineChange): number {
  const usualDb = electricalLengthM(line.delayS) * GREATEST_DB_PER_M;
  const lossDb = lossAt10MHzDb(line);
  return lossDb - Math.min(Math.max(lossDb, Math.min(0, usualDb)), Math.max(0, usualDb));
}
