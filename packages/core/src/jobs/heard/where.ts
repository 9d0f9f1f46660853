import { median } from "simple-statistics";
import { bearingDeg, distanceKm, type Place } from "../../facts/earth/great-circle.js";
import { type LocatorArea, locatorArea } from "../../facts/earth/locator.js";
import { grouped } from "../../numbers/grouped.js";

import type { ReceptionReport } from "../../reading/reports/report.js";
import { receiverName } from "./pairs.js";

/** Eight directions, each by its middle. */
export const SECTORS = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"] as const;
/** One of {@link SECTORS}. */
export type Sector = (typeof SECTORS)[number];

/** A receiver as it lies from the own station. */
export interface Listener {
  readonly receiver: string;
  readonly bearingDeg: number;
  readonly distanceKm: number;
  /** How far the bearing may be off, for the area that its locator names, degrees */
  readonly doubtDeg: number;
  readonly reports: number;
  /** Median of its reports, dB; null where it gave none in dB */
  readonly snrDb: number | null;
}

/** Who heard a deployment in one direction. */
export interface HeardInSector {
  readonly sector: Sector;
  readonly receivers: number;
  readonly reports: number;
  readonly nearestKm: number;
  readonly farthestKm: number;
}

/** Who heard a deployment on a band, and where they are: where the listeners are, and no pattern of the antenna. */
export interface HeardWhere {
  readonly deployment: string;
  readonly band: string;
  readonly listeners: readonly Listener[];
  readonly sectors: readonly HeardInSector[];
  /** Receivers whose place is not known */
  readonly unplaced: number;
}

/** Bearings to places farther than this mean nothing: the long way is as short. */
const ANTIPODAL_KM = 19_000;
const DEGREE = Math.PI / 180;
const KM_PER_DEGREE = 111.2;

/** @param own where the own station is; null: where its reports say */
export function heardWhere(
  deployment: string,
  band: string,
  reports: readonly ReceptionReport[],
  own: LocatorArea | null,
): HeardWhere {
  const receivers = [...grouped(reports, ({ receiver }) => receiverName(receiver))];
  const listeners = receivers.flatMap(([receiver, heard]) => listenerOf(receiver, heard, own) ?? []);
  return {
    deployment,
    band,
    listeners: listeners.toSorted((one, other) => one.bearingDeg - other.bearingDeg),
    sectors: sectorsOf(listeners),
    unplaced: receivers.length - listeners.length,
  };
}

function listenerOf(receiver: string, heard: readonly ReceptionReport[], own: LocatorArea | null): Listener | null {
  const there = sharpest(heard.map(({ receiverLocator }) => receiverLocator));
  const here = own ?? sharpest(heard.map(({ transmitterLocator }) => transmitterLocator));
  if (there === null || here === null) return null;
  const distance = distanceKm(here, there);
  const ratios = heard.flatMap(({ snrDb }) => snrDb ?? []);
  return {
    receiver,
    bearingDeg: bearingDeg(here, there),
    distanceKm: distance,
    doubtDeg: doubtOf(halfDiagonalKm(here) + halfDiagonalKm(there), distance),
    reports: heard.length,
    snrDb: ratios.length === 0 ? null : median(ratios),
  };
}

/** The smallest area of some locators. */
function sharpest(locators: readonly (string | null)[]): LocatorArea | null {
  const areas = [...new Set(locators)].flatMap((text) => (text === null ? [] : (locatorArea(text) ?? [])));
  return areas.toSorted((one, other) => one.halfHeight - other.halfHeight)[0] ?? null;
}

const halfDiagonalKm = ({ latitude, halfHeight, halfWidth }: LocatorArea & Place): number =>
  KM_PER_DEGREE * Math.hypot(halfHeight, halfWidth * Math.cos(latitude * DEGREE));

const doubtOf = (aroundKm: number, distance: number): number =>
  distance > ANTIPODAL_KM || aroundKm >= distance ? 180 : Math.asin(aroundKm / distance) / DEGREE;

/** The direction in which a listener lies; null where its bearing may as well be another one's. */
export function sectorOf({ bearingDeg: at, doubtDeg }: Listener): Sector | null {
  const width = 360 / SECTORS.length;
  return doubtDeg >= width ? null : (SECTORS[Math.round(at / width) % SECTORS.length] ?? null);
}

function sectorsOf(listeners: readonly Listener[]): readonly HeardInSector[] {
  return SECTORS.flatMap((sector) => {
    const own = listeners.filter((listener) => sectorOf(listener) === sector);
    if (own.length === 0) return [];
    const distances = own.map((each) => each.distanceKm);
    return [
      {
        sector,
        receivers: own.length,
        reports: own.reduce((sum, { reports }) => sum + reports, 0),
        nearestKm: Math.min(...distances),
        farthestKm: Math.max(...distances),
      },
    ];
  });
}
