import { type Feedline, matchedLossDb } from "../facts/feedline/feedline.js";
import { greatestStress, type LineStress, magnitudeAtLoad } from "../facts/feedline/line.js";
import { at } from "../numbers/column.js";
import { reflectionMagnitudeFromSwr } from "../reflection/swr.js";
import { type Finding, finding } from "../sweep/finding.js";
import type { Sweep } from "../sweep/sweep.js";
import { type AntennaEnd, antennaEndOf, magnitudeOnLine } from "./antenna-end.js";
import type { PowerResult } from "./power.js";
import type { Extremes, PointOfPart } from "./reach.js";

/** What the feedline does on a band. */
export interface BandFeedline {
  /** At the band's best point as the analyser sees it; null where the line cannot be taken out */
  readonly atBest: AntennaEnd | null;
  /** The same at its worst point */
  readonly atWorst: AntennaEnd | null;
  /** The greatest power of all modes that was used for the next; null where no power is known */
  readonly powerW: number | null;
  /** The most voltage and current that power can put on the line, at the worst point; null where that is not known */
  readonly stress: LineStress | null;
}

export function bandFeedline(
  extremes: Extremes | null,
  feedline: Feedline,
  power: readonly PowerResult[],
): BandFeedline | null {
  if (extremes === null) return null;
  const watts = power.flatMap(({ bestWatts }) => (bestWatts === null ? [] : [bestWatts]));
  const powerW = watts.length === 0 ? null : Math.max(...watts);
  const endAt = ({ frequencyHz }: PointOfPart, magnitude: number | null) =>
    magnitude === null ? null : antennaEndOf(magnitude, feedline, frequencyHz);
  const worstMagnitude = magnitudeOf(extremes.worst, feedline);
  const atWorst = endAt(extremes.worst, worstMagnitude);
  return {
    atBest: endAt(extremes.best, magnitudeOf(extremes.best, feedline)),
    atWorst,
    powerW,
    stress:
      powerW === null || atWorst === null || worstMagnitude === null || worstMagnitude >= 1
        ? null
        : greatestStress(powerW, feedline.characteristicOhms, worstMagnitude, atWorst.matchedLossDb),
  };
}

/** ρ of a point against the line's own impedance; null where it cannot be known. */
function magnitudeOf({ part, frequencyHz, reflectionMagnitude }: PointOfPart, feedline: Feedline): number | null {
  const { curve } = part.analysis;
  if (part.knows !== "stretch") return magnitudeOnLine(curve, feedline, frequencyHz);
  return curve.sweep.referenceOhms === feedline.characteristicOhms ? reflectionMagnitude : null;
}

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

/** Cables of one kind differ by this share of their loss, and more (our own choice). */
const SPREAD_OF_KIND = 0.2;

/** Bands where so much comes back that a little more loss would leave an antenna that reflects everything. */
function unsureEnds(
  { lossIs }: Feedline,
  bands: readonly { readonly band: string; readonly feedline: BandFeedline | null }[],
): readonly Finding[] {
  const more = lossIs === "typical" ? SPREAD_OF_KIND : 0;
  const isUnsure = (end: AntennaEnd | null | undefined): boolean =>
    end != null && magnitudeAtLoad(reflectionMagnitudeFromSwr(end.antennaSwr), more * end.matchedLossDb) >= 1;
  const unsure = bands
    .filter(({ feedline }) => isUnsure(feedline?.atBest) || isUnsure(feedline?.atWorst))
    .map(({ band }) => band);
  if (unsure.length === 0) return [];
  const params = { bands: unsure, lossIs: more === 0 ? "stated" : "of-its-kind" } as const;
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
