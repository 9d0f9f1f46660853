import { SPEED_OF_LIGHT } from "../../numbers/constants.js";
import {
  type ExposureLimits,
  type ExposureRuleId,
  exposureLimits,
  type Fields,
  FREE_SPACE_OHMS,
} from "./exposure-rules.js";
import { distanceFromWire, fieldsFromWire } from "./near-wire.js";

/** What radiates, as far as it is known. */
export interface Radiator {
  /** Gain over an isotropic radiator, dBi; a half-wave dipole's where absent, more of a longer wire */
  readonly gainDbi?: number;
  /** Length of the wire, m; absent: not known, and taken for a tenth of a wave */
  readonly wireLengthM?: number;
}

/** A half-wave dipole's gain over an isotropic radiator, dBi: the reference of effective radiated power. */
export const DIPOLE_GAIN_DBI = 2.15;
/** How long a wire is taken for over the wavelength where nothing is said: short, which asks for the greater distance (our own choice). */
const UNKNOWN_LENGTH = 0.1;

/**
 * Power density that reflection from the ground may add to, as a factor.
 *
 * Source: FCC OET Bulletin 65, edition 97-01, 1997, eq. 7 (a field 1.6 times as strong).
 */
const GROUND_REFLECTION = 2.56;

/** Power that arrives at an antenna, W. */
export interface RadiatedPower {
  /** At the crest of the envelope */
  readonly peakWatts: number;
  /** Averaged over the time of the rule */
  readonly averageWatts: number;
}

/** How far people must stay away, and why. */
export interface ExposureDistance {
  /** From the nearest point of the wire, m */
  readonly distanceM: number;
  /** far-field: the sum for a wave with reflection from the ground; near-wire: the fields beside a wire short against the wave */
  readonly by: "far-field" | "near-wire";
}

/**
 * The distance from which on the fields of an antenna keep a rule: the sum for its far field with reflection from the ground, or,
 * for a wire shorter than half a wave or of unknown length, that of the fields beside it, whichever is greater. Both the electric
 * and the magnetic limit are kept, by the average power, and where the rule limits the crest, by that.
 *
 * An estimate for planning: no ground, no house and no other metal is in it.
 *
 * Source of the sum: FCC OET Bulletin 65, edition 97-01, 1997, eq. 4 and 7.
 *
 * @returns null where the rule says nothing at that frequency
 * @example
 * ```ts
 * import { exposureDistance } from "@feedpoint/core";
 *
 * const power = { peakWatts: 100, averageWatts: 100 };
 * exposureDistance("us-neighbours", 7.1e6, power, { wireLengthM: 21 })?.distanceM; // → 0.967
 * exposureDistance("us-neighbours", 3.65e6, power, { wireLengthM: 8.2 })?.by; // → "near-wire"
 * ```
 */
export function exposureDistance(
  rule: ExposureRuleId,
  frequencyHz: number,
  power: RadiatedPower,
  radiator: Radiator,
): ExposureDistance | null {
  const limits = exposureLimits(rule, frequencyHz);
  if (limits === null) return null;
  const wavelengthM = SPEED_OF_LIGHT / frequencyHz;
  const length = lengthOverWave(radiator, wavelengthM);
  const needs = heldAgainst(limits, power);
  const far = Math.max(...needs.map(({ limit, watts }) => distanceInWave(limit, watts, radiator, wavelengthM)));
  const near =
    length === null
      ? 0
      : Math.max(
          ...needs.map(({ limit, watts }) => (watts === 0 ? 0 : distanceFromWire(length, wavelengthM, watts, limit))),
        );
  return near > far ? { distanceM: near, by: "near-wire" } : { distanceM: far, by: "far-field" };
}

/**
 * The greatest power at the antenna with which a rule is kept at a distance.
 *
 * @param averageShare average over peak power, above 0 up to 1
 * @returns W at the crest of the envelope; null where the rule says nothing at that frequency
 */
export function greatestPowerAt(
  rule: ExposureRuleId,
  frequencyHz: number,
  distanceM: number,
  averageShare: number,
  radiator: Radiator,
): number | null {
  const limits = exposureLimits(rule, frequencyHz);
  if (limits === null) return null;
  const wavelengthM = SPEED_OF_LIGHT / frequencyHz;
  const length = lengthOverWave(radiator, wavelengthM);
  const wave = fieldsInWave(radiator, distanceM, wavelengthM);
  const wire = length === null ? wave : fieldsFromWire(length, wavelengthM, distanceM);
  return Math.min(
    ...heldAgainst(limits, { peakWatts: 1, averageWatts: averageShare }).flatMap(({ limit, watts }) => [
      (limit.electric / Math.max(wave.electric, wire.electric)) ** 2 / watts,
      (limit.magnetic / Math.max(wave.magnetic, wire.magnetic)) ** 2 / watts,
    ]),
  );
}

/** Limits with the power that counts against each. */
const heldAgainst = (
  { averaged, atAnyTime }: ExposureLimits,
  { peakWatts, averageWatts }: RadiatedPower,
): readonly { readonly limit: Fields; readonly watts: number }[] => [
  { limit: averaged, watts: averageWatts },
  ...(atAnyTime === undefined ? [] : [{ limit: atAnyTime, watts: peakWatts }]),
];

/** null for a wire of half a wave or more, which the sum for the far field never understates. */
function lengthOverWave({ wireLengthM }: Radiator, wavelengthM: number): number | null {
  const length = wireLengthM === undefined ? UNKNOWN_LENGTH : wireLengthM / wavelengthM;
  return length < 0.5 ? length : null;
}

/**
 * Gain of a wire of several half waves over a half-wave dipole, as a factor: by about as much as its length grows (common practice, no
 * source; on the cautious side of 1.7 dB for a whole wave and 3 dB for one and a quarter, from memory).
 */
const gainOfLength = (lengthOverWave: number): number => 1 + 1.2 * Math.max(0, lengthOverWave - 0.5);

/** Gain over an isotropic radiator, as a factor: as stated, or that of a wire of the length. */
export const gainOf = ({ gainDbi, wireLengthM = 0 }: Radiator, wavelengthM: number): number =>
  gainDbi === undefined ? 10 ** (DIPOLE_GAIN_DBI / 10) * gainOfLength(wireLengthM / wavelengthM) : 10 ** (gainDbi / 10);

/** Fields of a wave from 1 W at a distance, with reflection from the ground. */
function fieldsInWave(radiator: Radiator, distanceM: number, wavelengthM: number): Fields {
  const power = GROUND_REFLECTION * gainOf(radiator, wavelengthM);
  const electric = Math.sqrt((FREE_SPACE_OHMS / (4 * Math.PI)) * power) / distanceM;
  return { electric, magnetic: electric / FREE_SPACE_OHMS };
}

function distanceInWave(limit: Fields, watts: number, radiator: Radiator, wavelengthM: number): number {
  const atOneMetre = fieldsInWave(radiator, 1, wavelengthM);
  return Math.sqrt(watts) * Math.max(atOneMetre.electric / limit.electric, atOneMetre.magnetic / limit.magnetic);
}
