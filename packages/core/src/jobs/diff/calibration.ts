import type { Instrument } from "../../curve/uncertainty/instrument.js";
import { at } from "../../numbers/column.js";
import { SPEED_OF_LIGHT } from "../../numbers/constants.js";
import { reflectionMagnitudeFromReturnLoss } from "../../reflection/swr.js";
import { type CommonSamples, differenceAt } from "./common-samples.js";

/** Corrected directivity of a hand-held analyser, where nobody states it, dB; and how far its plane may have moved, m (common practice, no source). */
const USUAL_DIRECTIVITY_DB = 30;
const PLANE_M = 0.15;
/** Of the samples this share must lie within. */
const MOST = 0.9;

/**
 * Whether another calibration of the analyser may make as much of a difference: its directivity at every frequency, and its
 * plane of reference a hand's breadth further out. Neither makes a few samples differ by far more, as a narrow dip does that moved.
 */
export function isWithinCalibration(samples: CommonSamples, instrument: Instrument | null): boolean {
  const directivity = reflectionMagnitudeFromReturnLoss(instrument?.directivityDb ?? USUAL_DIRECTIVITY_DB);
  let within = 0;
  let square = 0;
  let squareOfBounds = 0;
  for (let i = 0; i < samples.frequencyHz.length; i++) {
    const { beforeReal, beforeImaginary, afterReal, afterImaginary, frequencyHz } = samples;
    const size = Math.max(
      Math.hypot(at(beforeReal, i), at(beforeImaginary, i)),
      Math.hypot(at(afterReal, i), at(afterImaginary, i)),
    );
    const turn = (4 * Math.PI * at(frequencyHz, i) * PLANE_M) / SPEED_OF_LIGHT;
    const bound = directivity + size * turn;
    const difference = differenceAt(samples, i);
    if (difference <= bound) within++;
    square += difference ** 2;
    squareOfBounds += bound ** 2;
  }
  return within >= MOST * samples.frequencyHz.length && square <= squareOfBounds;
}
