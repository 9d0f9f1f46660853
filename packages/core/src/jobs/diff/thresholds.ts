import { type Instrument, instrumentError } from "../../curve/uncertainty/instrument.js";
import { medianOf } from "../../numbers/column.js";
import type { SideCurve } from "./side-curve.js";

/** An explanation may leave this much of Γ unexplained (or more, where the sweeps are noisier than that). */
const EXPLAINED_RESIDUAL = 0.012;
/** One that is sure leaves no more than this, or than noise. Chosen on pairs of modelled antennas. */
const TIGHT_RESIDUAL = 0.004;
/** Times the noise of both sweeps; from noise alone √2 of it is left, and less of smoothed curves. */
const NOISE_MARGIN = 2;
/** A change that is small as a whole counts where its explanation leaves less than this share of the difference. */
export const CLEARLY = 0.6;
/** Loss that leaves less than this share of a difference did much of it (our own choice). */
export const MUCH_LEFT = 1 / 3;
/** Changes of the line below these are not told from a repeat. Electrical length in m, loss at 10 MHz in dB. */
export const LEAST_LENGTH_M = 0.25;
export const LEAST_LOSS_DB = 0.1;

/** Sweeps that agree to this share of what is overlooked anyway need no explanation. */
const NEGLIGIBLE_SHARE = 1 / 8;
/** The difference of two groups of repeats may be this many times what lies between the repeats of one (our own choice). */
const SCATTER_MARGIN = 1.5;

/** What of the difference of two curves needs no word, root mean square of Γ (or of ρ, where only that is known). */
export interface Tolerances {
  /** A smaller difference is none */
  readonly negligible: number;
  /** What an explanation may leave over */
  readonly enough: number;
  /** What one leaves that is sure: noise, scatter, the analyser's error, or a floor */
  readonly tight: number;
}

/** Of the noise that two sweeps have in each part of Γ, their curves are apart by less than this when nothing changed (our own choice). */
const NOISE_BETWEEN_CURVES = 1;

/**
 * @param scatter root mean square between repeats of the same; 0 where nothing was repeated
 * @param instrument what is known of the analyser's own errors: each sweep may have them, another way after a new calibration
 */
export function tolerancesFor(
  before: SideCurve,
  after: SideCurve,
  scatter: number,
  instrument: Instrument | null,
): Tolerances {
  const noise = jointNoise(before, after);
  const ofScatter = SCATTER_MARGIN * scatter;
  const ofInstrument = instrument === null ? 0 : usualError(before, instrument) + usualError(after, instrument);
  const enough = Math.max(EXPLAINED_RESIDUAL, NOISE_MARGIN * noise, ofScatter, ofInstrument);
  const negligible = Math.max(NEGLIGIBLE_SHARE * enough, NOISE_BETWEEN_CURVES * noise, ofScatter, ofInstrument);
  const tight = Math.max(TIGHT_RESIDUAL, NOISE_MARGIN * noise, ofScatter, ofInstrument);
  return { enough, negligible, tight };
}

const usualError = ({ pieces }: SideCurve, instrument: Instrument): number => {
  const magnitudes = [...new Set(pieces.map(({ curve }) => curve))].flatMap(({ reflectionMagnitude }) => [
    ...reflectionMagnitude,
  ]);
  return instrumentError(medianOf(Float64Array.from(magnitudes)), instrument);
};

/** Noise of both sweeps together. */
const jointNoise = (before: SideCurve, after: SideCurve): number => Math.hypot(before.noise ?? 0, after.noise ?? 0);
