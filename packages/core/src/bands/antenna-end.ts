import { type Curve, reflectionAt, reflectionMagnitudeAt } from "../curve/curve.js";
import { type Feedline, matchedLossDb, sectionAt } from "../facts/feedline/feedline.js";
import {
  deliveredFraction,
  magnitudeAtLoad,
  reflectionAtInput,
  reflectionAtLoad,
  totalLossDb,
} from "../facts/feedline/line.js";
import { magnitude } from "../numbers/complex.js";
import { changeReference } from "../reflection/impedance.js";
import { swrFromReflectionMagnitude } from "../reflection/swr.js";
import { mapReflections, type VectorSweep } from "../sweep/sweep.js";
import type { PointOfPart } from "./reach.js";

/** What happens between analyser and antenna at one frequency, for a line whose kind and length are stated. */
export interface AntennaEnd {
  readonly frequencyHz: number;
  /** What the line loses one way with a matched end, dB */
  readonly matchedLossDb: number;
  /** SWR on the line at the antenna's end, against the line's own impedance; Infinity where the line alone explains ρ */
  readonly antennaSwr: number;
  /** Matched loss and what standing waves add, dB; Infinity where `antennaSwr` is */
  readonly totalLossDb: number;
  /** What standing waves add, dB */
  readonly extraLossDb: number;
  /** Share of the power into the line that reaches the antenna, 0 to 1 */
  readonly deliveredFraction: number;
}

/**
 * The antenna's end of a line, at a frequency that was swept.
 *
 * @param curve of a sweep taken at the analyser's end, as {@link curveOf} gives it
 * @returns null where nothing was swept, and for a scalar sweep against another impedance than the line's: without phase it
 *   cannot be moved along that line
 */
export function antennaEndAt(curve: Curve, feedline: Feedline, frequencyHz: number): AntennaEnd | null {
  const inputMagnitude = magnitudeOnLine(curve, feedline, frequencyHz);
  return inputMagnitude === null ? null : antennaEndOf(inputMagnitude, feedline, frequencyHz);
}

/** The same of a ρ that is known at the analyser's end, against the line's own impedance. */
function antennaEndOf(inputMagnitude: number, feedline: Feedline, frequencyHz: number): AntennaEnd {
  const matched = matchedLossDb(feedline, frequencyHz);
  const loadMagnitude = magnitudeAtLoad(inputMagnitude, matched);
  const total = totalLossDb(matched, loadMagnitude);
  return {
    frequencyHz,
    matchedLossDb: matched,
    antennaSwr: swrFromReflectionMagnitude(loadMagnitude),
    totalLossDb: total,
    extraLossDb: total - matched,
    deliveredFraction: deliveredFraction(total),
  };
}

/** ρ at the analyser's end against the line's own impedance; null where it cannot be known. */
export function magnitudeOnLine(curve: Curve, { characteristicOhms }: Feedline, frequencyHz: number): number | null {
  const { referenceOhms } = curve.sweep;
  const reflection = reflectionAt(curve, frequencyHz);
  if (reflection !== null) return magnitude(changeReference(reflection, referenceOhms, characteristicOhms));
  const inputMagnitude = reflectionMagnitudeAt(curve, frequencyHz);
  return Number.isNaN(inputMagnitude) || referenceOhms !== characteristicOhms ? null : inputMagnitude;
}

/**
 * The sweep as it would be at the antenna's end of a line, against the line's own impedance.
 *
 * The formula is that of {@link reflectionAtLoad}, at each sample.
 */
export const sweepAtAntenna = (sweep: VectorSweep, feedline: Feedline): VectorSweep =>
  mapReflections(sweep, feedline.characteristicOhms, (reflection, frequencyHz) =>
    reflectionAtLoad(
      changeReference(reflection, sweep.referenceOhms, feedline.characteristicOhms),
      sectionAt(feedline, frequencyHz),
    ),
  );

/**
 * A sweep taken at the antenna as it would be at the analyser's end of a line; the inverse of {@link sweepAtAntenna}.
 *
 * @param referenceOhms the reference impedance of what is returned, Ω
 */
export const sweepAtAnalyser = (sweep: VectorSweep, feedline: Feedline, referenceOhms: number): VectorSweep =>
  mapReflections(sweep, referenceOhms, (reflection, frequencyHz) =>
    changeReference(
      reflectionAtInput(
        changeReference(reflection, sweep.referenceOhms, feedline.characteristicOhms),
        sectionAt(feedline, frequencyHz),
      ),
      feedline.characteristicOhms,
      referenceOhms,
    ),
  );

/** ρ of a point against the line's own impedance; null where it cannot be known. */
export function magnitudeOfPoint(
  { part, frequencyHz, reflectionMagnitude }: PointOfPart,
  feedline: Feedline,
): number | null {
  const { curve } = part.analysis;
  if (part.knows !== "stretch") return magnitudeOnLine(curve, feedline, frequencyHz);
  return curve.sweep.referenceOhms === feedline.characteristicOhms ? reflectionMagnitude : null;
}

/** The antenna's end of a line at a point of a band; null where it cannot be known. */
export function antennaEndOfPoint(point: PointOfPart, feedline: Feedline): AntennaEnd | null {
  const inputMagnitude = magnitudeOfPoint(point, feedline);
  return inputMagnitude === null ? null : antennaEndOf(inputMagnitude, feedline, point.frequencyHz);
}
