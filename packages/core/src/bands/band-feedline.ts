import { type Curve, reflectionAt } from "../curve/curve.js";
import { clipSpans } from "../curve/pieces.js";
import { type Feedline, matchedLossDb, sectionAt } from "../facts/feedline/feedline.js";
import { greatestStress, type LineStress, magnitudeAtLoad, stressAlong } from "../facts/feedline/line.js";
import { mayReflectAll } from "../facts/feedline/spread-of-kind.js";
import { at } from "../numbers/column.js";
import { magnitude } from "../numbers/complex.js";
import { changeReference } from "../reflection/impedance.js";
import { reflectionMagnitudeFromSwr } from "../reflection/swr.js";
import { type Finding, finding } from "../sweep/finding.js";
import type { Sweep } from "../sweep/sweep.js";
import { type AntennaEnd, antennaEndAt, antennaEndOfPoint, magnitudeOfPoint, magnitudeOnLine } from "./antenna-end.js";
import type { Answering } from "./parts.js";
import type { PowerResult } from "./power.js";
import { type Extremes, extremesIn } from "./reach.js";

/** A loss between two bounds, dB. */
export interface LossRange {
  readonly leastDb: number;
  readonly greatestDb: number;
}

/** What the feedline does on a band. */
export interface BandFeedline {
  /** At the band's best point as the analyser sees it; null where the line cannot be taken out */
  readonly atBest: AntennaEnd | null;
  /** The same at its worst point */
  readonly atWorst: AntennaEnd | null;
  /** The least and the most that the line loses within reach, with standing waves, dB; Infinity where the line alone explains ρ; null as for these */
  readonly losses: LossRange | null;
  /** The greatest power of all modes that was used for the next; null where no power is known */
  readonly powerW: number | null;
  /** The most voltage and current that power can put anywhere on the line on this band; null where that is not known */
  readonly stress: LineStress | null;
}

/** @param answering what tells of the band, and where */
export function bandFeedline(
  answering: readonly Answering[],
  feedline: Feedline,
  power: readonly PowerResult[],
): BandFeedline | null {
  const extremes = extremesIn(answering);
  if (extremes === null) return null;
  const watts = power.flatMap(({ bestWatts }) => (bestWatts === null ? [] : [bestWatts]));
  const powerW = watts.length === 0 ? null : Math.max(...watts);
  const atBest = antennaEndOfPoint(extremes.best, feedline);
  const atWorst = antennaEndOfPoint(extremes.worst, feedline);
  const places = placesOver(answering);
  return {
    atBest,
    atWorst,
    losses: lossesOver(places, [atBest, atWorst], feedline),
    powerW,
    stress: powerW === null ? null : greatestStressOver(places, extremes, feedline, powerW),
  };
}

/** Frequencies of a piece at which the line is looked at. */
const PLACES = 100;

interface Place {
  readonly curve: Curve;
  readonly frequencyHz: number;
}

/** Places over all of a band that some tuner brings within reach, or over all of it where none does. */
function placesOver(answering: readonly Answering[]): readonly Place[] {
  return answering.flatMap(({ part, pieces }) => {
    if (part.knows !== "curve") return [];
    const { curve, wideRangeTunerSpans } = part.analysis;
    return pieces.flatMap((piece) => {
      const reached = clipSpans(wideRangeTunerSpans, piece);
      const spans = reached.length > 0 ? reached : [piece];
      return spans.flatMap(({ lowHz, highHz }) =>
        Array.from({ length: PLACES + 1 }, (_, i) => ({ curve, frequencyHz: lowHz + ((highHz - lowHz) * i) / PLACES })),
      );
    });
  });
}

/**
 * The most voltage and current anywhere on the line, at any frequency of a band that some tuner brings within reach. The worst SWR
 * against the radio's impedance is not where a line of another impedance bears most.
 */
function greatestStressOver(
  places: readonly Place[],
  { worst }: Extremes,
  feedline: Feedline,
  powerW: number,
): LineStress | null {
  const all = places.flatMap(({ curve, frequencyHz }) => stressAt(curve, feedline, powerW, frequencyHz) ?? []);
  // What was noted by hand has one ρ for all of a band.
  if (all.length === 0) return stressOf(magnitudeOfPoint(worst, feedline), feedline, powerW, worst.frequencyHz);
  return {
    volts: Math.max(...all.map(({ volts }) => volts)),
    amperes: Math.max(...all.map(({ amperes }) => amperes)),
  };
}

/** The least and the most that the line loses anywhere on a band that some tuner brings within reach; for one of another impedance that is not where the SWR is best and worst. */
function lossesOver(
  places: readonly Place[],
  ends: readonly (AntennaEnd | null)[],
  feedline: Feedline,
): LossRange | null {
  const all = places.flatMap(({ curve, frequencyHz }) => antennaEndAt(curve, feedline, frequencyHz) ?? []);
  const known = all.length > 0 ? all : ends.flatMap((end) => end ?? []);
  const losses = known.map(({ totalLossDb }) => totalLossDb);
  return losses.length === 0 ? null : { leastDb: Math.min(...losses), greatestDb: Math.max(...losses) };
}

/** What a line bears at one frequency; without phase the most that it may, null where that is not known. */
function stressAt(curve: Curve, feedline: Feedline, powerW: number, frequencyHz: number): LineStress | null {
  const { characteristicOhms } = feedline;
  const reflection = reflectionAt(curve, frequencyHz);
  if (reflection === null)
    return stressOf(magnitudeOnLine(curve, feedline, frequencyHz), feedline, powerW, frequencyHz);
  const onLine = changeReference(reflection, curve.sweep.referenceOhms, characteristicOhms);
  return magnitude(onLine) < 1
    ? stressAlong(powerW, characteristicOhms, onLine, sectionAt(feedline, frequencyHz))
    : null;
}

/** The most that a line may bear with a ρ at the analyser's end; null where that is not known, or all comes back. */
const stressOf = (rho: number | null, feedline: Feedline, powerW: number, frequencyHz: number): LineStress | null =>
  rho === null || rho >= 1
    ? null
    : greatestStress(powerW, feedline.characteristicOhms, rho, matchedLossDb(feedline, frequencyHz));

/** A sweep may contradict the stated loss by this much in ρ before that is said: noise and the spread of a kind (our own choice). */
const TOLERATED_EXCESS = 0.02;

/** What the stated feedline leaves in doubt. */
export function feedlineFindings(
  sweeps: readonly Sweep[],
  feedline: Feedline,
  bands: readonly { readonly band: string; readonly feedline: BandFeedline | null }[],
): readonly Finding[] {
  return [
    ...lossDoubt(feedline),
    ...lossContradicted(sweeps, feedline),
    ...sweeps
      .filter(({ kind, referenceOhms }) => kind === "scalar" && referenceOhms !== feedline.characteristicOhms)
      .slice(0, 1)
      .map(({ referenceOhms }) =>
        finding("caution", "feedline-needs-phase", { referenceOhms, lineOhms: feedline.characteristicOhms }),
      ),
    ...unsureEnds(feedline, bands),
    ...bands.flatMap(({ band, feedline: result }) => overload(feedline, band, result)),
  ];
}

/** Bands where so much comes back that a little more loss would leave an antenna that reflects everything. */
function unsureEnds(
  { lossIs }: Feedline,
  bands: readonly { readonly band: string; readonly feedline: BandFeedline | null }[],
): readonly Finding[] {
  const isUnsure = (end: AntennaEnd | null | undefined): boolean =>
    end != null && mayReflectAll(reflectionMagnitudeFromSwr(end.antennaSwr), end.matchedLossDb, lossIs);
  const unsure = bands
    .filter(({ feedline }) => isUnsure(feedline?.atBest) || isUnsure(feedline?.atWorst))
    .map(({ band }) => band);
  if (unsure.length === 0) return [];
  const params = { bands: unsure, lossIs: lossIs === "typical" ? "of-its-kind" : "stated" } as const;
  return [finding("caution", "antenna-end-unsure", params)];
}

function lossDoubt({ lossIs, title }: Feedline): readonly Finding[] {
  if (lossIs === "stated") return [];
  const params = { title, lossIs: lossIs === "typical" ? "typical" : "least" } as const;
  return [finding("info", "feedline-loss-typical", params)];
}

/** A passive antenna reflects no more than everything; a line that would need more of it loses less than stated. */
export function lossContradicted(sweeps: readonly Sweep[], feedline: Feedline): readonly Finding[] {
  let worst = { frequencyHz: 0, magnitude: 1 + TOLERATED_EXCESS };
  for (const sweep of sweeps) {
    if (sweep.referenceOhms !== feedline.characteristicOhms) continue;
    for (let i = 0; i < sweep.frequencyHz.length; i++) {
      const frequencyHz = at(sweep.frequencyHz, i);
      const magnitude = magnitudeAtLoad(at(sweep.reflectionMagnitude, i), matchedLossDb(feedline, frequencyHz));
      if (magnitude > worst.magnitude) worst = { frequencyHz, magnitude };
    }
  }
  if (worst.frequencyHz === 0) return [];
  const { frequencyHz } = worst;
  return [finding("problem", "feedline-loss-too-high", { lossDb: matchedLossDb(feedline, frequencyHz), frequencyHz })];
}

function overload(feedline: Feedline, band: string, result: BandFeedline | null): readonly Finding[] {
  const { ratedVolts, ratedAmperes } = feedline;
  if (result?.stress == null) return [];
  const { volts, amperes } = result.stress;
  const excess = (is: number, allowed: number | null) => (allowed !== null && is > allowed ? { is, allowed } : null);
  const [ofVolts, ofAmperes] = [excess(volts, ratedVolts), excess(amperes, ratedAmperes)];
  if (ofVolts === null && ofAmperes === null) return [];
  const params = { band, watts: result.powerW ?? 0, volts: ofVolts, amperes: ofAmperes };
  return [finding("problem", "feedline-overload", params, { band })];
}
