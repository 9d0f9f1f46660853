import { SPEED_OF_LIGHT } from "../../numbers/constants.js";
import { feedlineKindById, type LossModel } from "./feedline-kinds.js";
import type { LineSection } from "./line.js";

/** Matched loss as stated at one frequency. */
export interface StatedLoss {
  readonly frequencyHz: number;
  /** dB one way over 100 m with a matched end, above 0 */
  readonly dbPer100M: number;
}

/** A feedline as the operator states it: a kind of the catalogue, or one's own figures, which go before the catalogue's. */
export interface FeedlineDetails {
  /** Id of the catalogue: "rg-58"; without one `loss` is needed */
  readonly kind?: string;
  /** Physical length, m */
  readonly lengthM: number;
  /** The kind's where absent, and 50 Ω without a kind */
  readonly characteristicOhms?: number;
  /** Speed on the line over that of light, 0 to 1; the kind's where absent, and 0.66 without a kind */
  readonly velocityFactor?: number;
  /** One or more values, ascending in frequency */
  readonly loss?: readonly StatedLoss[];
  /** The most that the line's maker allows, V, effective value */
  readonly ratedVolts?: number;
  /** The same, A */
  readonly ratedAmperes?: number;
}

/** A feedline with everything known that a result needs. */
export interface Feedline {
  /** What it is called in a result */
  readonly title: string;
  /** Physical length, m */
  readonly lengthM: number;
  readonly characteristicOhms: number;
  /** Speed on the line over that of light, 0 to 1 */
  readonly velocityFactor: number;
  /** A formula, or values at one frequency or more */
  readonly loss: LossModel | readonly StatedLoss[];
  /** typical: of its kind, which differ; at-least: more is lost in practice; stated: by the operator */
  readonly lossIs: "typical" | "at-least" | "stated";
  /** The most that its maker allows, V effective; null where not stated */
  readonly ratedVolts: number | null;
  /** The same, A */
  readonly ratedAmperes: number | null;
}

/** Taken where nobody states another: solid polyethylene, the commonest dielectric (common practice, no source). */
const USUAL_VELOCITY_FACTOR = 0.66;
const USUAL_OHMS = 50;

/**
 * Completes what the operator states by what the catalogue knows.
 *
 * @throws RangeError for a kind that the catalogue does not have, and for a line of no kind without loss values
 * @example
 * ```ts
 * import { feedlineFrom, matchedLossDb } from "@feedpoint/core";
 *
 * const feedline = feedlineFrom({ kind: "rg-58", lengthM: 20 });
 * matchedLossDb(feedline, 14.2e6); // → 1.10
 * ```
 */
export function feedlineFrom(details: FeedlineDetails): Feedline {
  const { kind: id, lengthM, loss } = details;
  const kind = id === undefined ? null : feedlineKindById(id);
  if (id !== undefined && kind === null) throw new RangeError(`there is no kind of feedline "${id}"`);
  // Only what is meant: a comment of the file that states it has no place in a result.
  const stated = loss?.length ? loss.map(({ frequencyHz, dbPer100M }) => ({ frequencyHz, dbPer100M })) : null;
  const lossModel = stated ?? kind?.loss;
  if (lossModel === undefined) throw new RangeError("a feedline needs its kind, or its loss at one frequency or more");
  return {
    title: kind?.title ?? "line of stated loss",
    lengthM,
    characteristicOhms: details.characteristicOhms ?? kind?.characteristicOhms ?? USUAL_OHMS,
    velocityFactor: details.velocityFactor ?? kind?.velocityFactor ?? USUAL_VELOCITY_FACTOR,
    loss: lossModel,
    lossIs: stated === null && kind !== null ? kind.lossIs : "stated",
    ratedVolts: details.ratedVolts ?? null,
    ratedAmperes: details.ratedAmperes ?? null,
  };
}

/**
 * Matched loss of all of a feedline at a frequency: what it loses with its own impedance at its end.
 *
 * Between stated values straight on logarithmic scales; beyond them as the root of frequency, as conductors lose.
 *
 * @returns dB one way, 0 or more
 */
export function matchedLossDb({ lengthM, loss }: Feedline, frequencyHz: number): number {
  return (lossPer100M(loss, frequencyHz) * lengthM) / 100;
}

/** A feedline at one frequency: its matched loss and its electrical length, 360° · f · length / (velocity factor · c). */
export function sectionAt(feedline: Feedline, frequencyHz: number): LineSection {
  const { lengthM, velocityFactor } = feedline;
  return {
    matchedLossDb: matchedLossDb(feedline, frequencyHz),
    lengthDegrees: (360 * frequencyHz * lengthM) / (velocityFactor * SPEED_OF_LIGHT),
  };
}

function lossPer100M(loss: Feedline["loss"], frequencyHz: number): number {
  if ("k1" in loss) {
    const megahertz = frequencyHz / 1e6;
    return loss.k0 + loss.k1 * Math.sqrt(megahertz) + loss.k2 * megahertz;
  }
  return betweenStated(loss, frequencyHz);
}

/** Straight between stated values on logarithmic scales; beyond them as the root of frequency, as conductors lose. */
function betweenStated(loss: readonly StatedLoss[], frequencyHz: number): number {
  const above = loss.findIndex((value) => value.frequencyHz >= frequencyHz);
  const upper = loss[above];
  const lower = loss[above === -1 ? loss.length - 1 : above - 1];
  if (upper === undefined || lower === undefined) {
    const nearest = upper ?? lower;
    return nearest === undefined ? 0 : nearest.dbPer100M * Math.sqrt(frequencyHz / nearest.frequencyHz);
  }
  const position = Math.log(frequencyHz / lower.frequencyHz) / Math.log(upper.frequencyHz / lower.frequencyHz);
  return lower.dbPer100M * (upper.dbPer100M / lower.dbPer100M) ** position;
}
