import { clipSpans, type Piece, share, totalWidth, widthOf } from "../curve/pieces.js";
import type { PowerLimit, UsableBand } from "../facts/band-plan/band-plan.js";
import { DIPOLE_GAIN_DBI } from "../facts/exposure/exposure.js";
import type { Feedline } from "../facts/feedline/feedline.js";
import type { Mode } from "../facts/modes.js";
import type { AntennaDetails, PowerByMode, PowerReduction, Radio, Tuner } from "../facts/station/station.js";
import { swrFromReflectionMagnitude } from "../reflection/swr.js";
import type { Analysis } from "./analysis.js";
import { antennaEndOfPoint } from "./antenna-end.js";
import { type Exposure, exposureOf, type People } from "./exposure.js";
import { answeringOn, type Part } from "./parts.js";
import { segmentsByLimit } from "./power-pieces.js";
import { extremesIn, type PointOfPart } from "./reach.js";

/** What sets the greatest power. The radio does so by its own output, which it may reduce as the SWR rises. */
export type PowerLimiter = "licence" | "antenna" | "radio";

/** The greatest power in one mode on those parts of a band where one licence limit holds. */
export interface PowerResult {
  readonly band: string;
  /** Name of the mode */
  readonly mode: Mode["name"];
  /** Where the mode may be sent with this licence limit */
  readonly pieces: readonly Piece[];
  /** Share of the pieces within reach of the radio and its tuner, 0 to 1 */
  readonly usableFraction: number;
  /** What the plan allows, all of which hold; empty where it does not say */
  readonly licenceLimits: readonly PowerLimit[];
  /**
   * The greatest power at the worst SWR within reach, W PEP at the transmitter; null where nothing is within reach, or nothing
   * limits the power
   */
  readonly watts: number | null;
  /** What sets `watts`; null as for it */
  readonly limitedBy: PowerLimiter | null;
  /** The SWR that goes with `watts`; null where nothing is within reach */
  readonly worstSwr: number | null;
  /** At the best SWR; null as for `watts` */
  readonly bestWatts: number | null;
  /** `watts` averaged over a transmission of this mode, W */
  readonly averageWatts: number | null;
  /** false: the SWR goes beyond the one that the maker's rating was stated for; null where there is no rating, or no power */
  readonly isRatingCovered: boolean | null;
  /** What `bestWatts`, the greatest power anywhere here, means for people near the antenna; null where there is none */
  readonly exposure: Exposure | null;
}

/** What of the surroundings and the station a power is told with. */
export interface PowerContext {
  readonly equipment: Equipment;
  readonly feedline: Feedline | null;
  readonly people: People;
}

/** Equipment that limits power. */
export interface Equipment {
  /** Its output and tuner; no limit of power and no tuner where absent */
  readonly radio?: Radio;
  /** Its gain and rating; a dipole without a rating where absent */
  readonly antenna?: AntennaDetails;
}

/** Whether anything about the equipment is known that limits power. */
export const isLimiting = ({ radio, antenna }: Equipment): boolean =>
  radio?.powerW !== undefined || antenna?.ratedPowerW !== undefined;

/** A rating holds up to this SWR where its maker does not say (common practice, no source). */
export const RATED_UP_TO_SWR = 2;

/**
 * The greatest power by band and mode that licence, antenna and radio all allow. Losses on the way to the antenna are
 * not credited, so that a loss figure that is wrong cannot lead beyond a limit.
 */
export function powersIn(
  parts: readonly Part[],
  band: UsableBand,
  licenceClass: string | null,
  modes: readonly Mode[],
  context: PowerContext,
): readonly PowerResult[] {
  return modes.flatMap((mode) =>
    segmentsByLimit(band, licenceClass, mode).map(({ limits, pieces }) =>
      powerOver(parts, band.band, mode, pieces, limits, context),
    ),
  );
}

function powerOver(
  parts: readonly Part[],
  band: string,
  mode: Mode,
  pieces: readonly Piece[],
  licenceLimits: readonly PowerLimit[],
  { equipment, feedline, people }: PowerContext,
): PowerResult {
  const { radio = {}, antenna = {} } = equipment;
  const withinReach = answeringOn(parts, pieces).map(({ part, pieces: own }) => {
    const spans = spansInReach(part.analysis, radio.tuner ?? "none");
    return { part, pieces: own.flatMap((piece) => clipSpans(spans, piece)) };
  });
  const inReach = extremesIn(withinReach);
  const worstSwr = inReach && swrFromReflectionMagnitude(inReach.worst.reflectionMagnitude);
  const bestSwr = inReach && swrFromReflectionMagnitude(inReach.best.reflectionMagnitude);
  const worst = greatestPower(licenceLimits, mode, equipment, worstSwr);
  const best = greatestPower(licenceLimits, mode, equipment, bestSwr);
  const curves = parts.map(({ analysis }) => analysis.curve);
  return {
    band,
    mode: mode.name,
    pieces,
    usableFraction: share(widthOf(withinReach.flatMap((each) => each.pieces)), totalWidth(pieces)),
    licenceLimits,
    watts: worst?.watts ?? null,
    limitedBy: worst?.by ?? null,
    worstSwr,
    bestWatts: best?.watts ?? null,
    averageWatts: worst && worst.watts * mode.dutyFactor,
    isRatingCovered: worst && coversRating(inReach?.worst ?? null, mode, antenna, feedline),
    exposure: best && exposureOf({ watts: best.watts, mode, pieces, radiator: antenna, feedline, curves, people }),
  };
}

/**
 * Whether the maker's rating of an antenna holds at a point: by the SWR at the antenna's end where the line is known, else as the
 * analyser sees it.
 *
 * @returns null where there is no rating, or nothing is known of the point
 */
export function coversRating(
  point: PointOfPart | null,
  mode: Mode,
  antenna: AntennaDetails,
  feedline: Feedline | null,
): boolean | null {
  if (point === null || ratingOf(antenna, mode).length === 0) return null;
  const atAntenna = feedline && antennaEndOfPoint(point, feedline);
  const swr = atAntenna?.antennaSwr ?? swrFromReflectionMagnitude(point.reflectionMagnitude);
  return swr <= (antenna.ratedUpToSwr ?? RATED_UP_TO_SWR);
}

/** A power, and what sets it. */
export interface SetPower {
  readonly by: PowerLimiter;
  readonly watts: number;
}

/**
 * The greatest power that licence, antenna and radio allow at an SWR.
 *
 * @param swr as the analyser sees it; null: out of reach
 * @returns null out of reach, and where nothing limits it
 */
export function greatestPower(
  licenceLimits: readonly PowerLimit[],
  mode: Mode,
  { radio = {}, antenna = {} }: Equipment,
  swr: number | null,
): SetPower | null {
  if (swr === null) return null;
  const atRadio = (radio.tuner ?? "none") === "none" ? swr : 1;
  const limits: readonly SetPower[] = [
    ...licenceLimits.map((limit) => ({ by: "licence", watts: atTransmitter(limit, antenna) }) as const),
    ...ratingOf(antenna, mode),
    ...outputOf(radio, mode).map(
      (watts) => ({ by: "radio", watts: reducedPower(watts, radio.reduction, atRadio) }) as const,
    ),
  ];
  return limits.reduce<SetPower | null>(
    (least, next) => (least === null || next.watts < least.watts ? next : least),
    null,
  );
}

function spansInReach(analysis: Analysis, tuner: Tuner) {
  if (tuner === "wide-range") return analysis.wideRangeTunerSpans;
  return tuner === "built-in" ? analysis.builtInTunerSpans : analysis.spans;
}

/** Output power at which a licence limit is reached with a lossless feedline, W PEP. A mean power is held against the peak. */
function atTransmitter({ watts, basis }: PowerLimit, { gainDbi = DIPOLE_GAIN_DBI }: AntennaDetails): number {
  if (basis === "pep" || basis === "mean") return watts;
  const gainDb = basis === "eirp" ? gainDbi : gainDbi - DIPOLE_GAIN_DBI;
  return watts / 10 ** (gainDb / 10);
}

/** Sidebands named one by one, and voice with its carrier, are rated as voice is; what keys a carrier for long as data is. */
const RATED_AS: Readonly<Partial<Record<Mode["name"], Mode["name"]>>> = {
  usb: "ssb",
  lsb: "ssb",
  am: "ssb",
  rtty: "data",
  fm: "data",
  image: "data",
};

/** What is stated of a mode, of one like it, or else what the others together give; empty where nothing is stated. */
function statedFor(
  { name }: Mode,
  stated: number | PowerByMode | undefined,
  ofOthers: (...watts: number[]) => number,
): readonly number[] {
  if (stated === undefined || typeof stated === "number") return stated === undefined ? [] : [stated];
  const watts = stated[name] ?? stated[RATED_AS[name] ?? name] ?? ofOthers(...Object.values(stated));
  return Number.isFinite(watts) ? [watts] : [];
}

/** The maker's rating for a mode; where it names others alone, the least of those. */
const ratingOf = ({ ratedPowerW }: AntennaDetails, mode: Mode): readonly SetPower[] =>
  statedFor(mode, ratedPowerW, Math.min).map((watts) => ({ by: "antenna", watts }));

/** The radio's output in a mode; where only others are stated, the greatest of those. */
const outputOf = ({ powerW }: Radio, mode: Mode): readonly number[] => statedFor(mode, powerW, Math.max);

/**
 * What a radio gives into an SWR: in full at first, then evenly less, as the operator states it.
 *
 * @param powerW output in full, W
 * @param reduction undefined: the radio does not reduce its power
 * @param swr 1 to Infinity
 * @returns W
 * @example
 * ```ts
 * import { reducedPower } from "@feedpoint/core";
 *
 * reducedPower(100, { fromSwr: 2, toSwr: 3, toW: 20 }, 2.5); // → 60
 * ```
 */
export function reducedPower(powerW: number, reduction: PowerReduction | undefined, swr: number): number {
  if (reduction === undefined || swr <= reduction.fromSwr) return powerW;
  const { fromSwr, toSwr, toW } = reduction;
  if (swr >= toSwr) return Math.min(powerW, toW);
  return powerW - (powerW - Math.min(powerW, toW)) * ((swr - fromSwr) / (toSwr - fromSwr));
}
