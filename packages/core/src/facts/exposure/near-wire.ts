import { firstIndexAbove } from "../../numbers/column.js";
import { type Fields, FREE_SPACE_OHMS } from "./exposure-rules.js";

/** Fields beside a wire at a distance from its nearest point, for 1 W radiated and a wavelength of 1 m; they go with 1/λ and √W. */
interface FieldsBeside {
  /** Distances over the wavelength, ascending by equal factors */
  readonly distance: Float64Array;
  /** The greatest along the wire, V/m */
  readonly electric: Float64Array;
  /** The same, A/m */
  readonly magnetic: Float64Array;
}

const NEAREST = 0.0005;
const FARTHEST = 2;
const DISTANCES = 120;
/** Places along half of the wire, and around its end. */
const ALONG = 40;
const AROUND = 6;
const ANGLES = 200;

/** What was reckoned already, by the length of the wire over the wavelength. */
const known = new Map<number, FieldsBeside>();

/**
 * How far from a wire the greater of its fields has fallen to a limit, by the closed form for a wire fed in its middle whose current
 * is sinusoidal, in free space and without loss: a wire short against the wave carries far more current for the same power than a
 * half-wave dipole does, and the sum for the far field understates it.
 *
 * Source: C. A. Balanis, Antenna Theory, and E. C. Jordan, K. G. Balmain, Electromagnetic Waves and Radiating Systems: fields of a
 * sinusoidal current (from memory; derived anew).
 *
 * @param lengthOverWave length of the wire over the wavelength, above 0; more than half counts as half
 * @returns m
 */
export function distanceFromWire(lengthOverWave: number, wavelengthM: number, watts: number, limit: Fields): number {
  const fields = fieldsBeside(lengthOverWave);
  const scale = wavelengthM / Math.sqrt(watts);
  return (
    wavelengthM *
    Math.max(
      distanceWhere(fields.distance, fields.electric, limit.electric * scale),
      distanceWhere(fields.distance, fields.magnetic, limit.magnetic * scale),
    )
  );
}

/** The greatest field beside a wire at a distance, for 1 W. */
export function fieldsFromWire(lengthOverWave: number, wavelengthM: number, distanceM: number): Fields {
  const { distance, electric, magnetic } = fieldsBeside(lengthOverWave);
  const place = distanceM / wavelengthM;
  return {
    electric: valueAt(distance, electric, place) / wavelengthM,
    magnetic: valueAt(distance, magnetic, place) / wavelengthM,
  };
}

function fieldsBeside(lengthOverWave: number): FieldsBeside {
  const length = Math.min(0.5, lengthOverWave);
  const cached = known.get(length);
  if (cached !== undefined) return cached;
  const kh = Math.PI * length;
  const current = 1 / Math.sqrt(resistanceAtMaximum(kh));
  const distance = Float64Array.from(
    { length: DISTANCES },
    (_, i) => NEAREST * (FARTHEST / NEAREST) ** (i / (DISTANCES - 1)),
  );
  const electric = new Float64Array(DISTANCES);
  const magnetic = new Float64Array(DISTANCES);
  for (const [i, d] of distance.entries()) {
    for (const { rho, z } of placesAround(length / 2, d)) {
      const fields = fieldsOf(current, kh, length / 2, rho, z);
      electric[i] = Math.max(electric[i] ?? 0, fields.electric);
      magnetic[i] = Math.max(magnetic[i] ?? 0, fields.magnetic);
    }
  }
  const result = { distance, electric, magnetic };
  known.set(length, result);
  return result;
}

/** Places at a distance from the nearest point of half a wire: beside it, and around its end. */
function placesAround(half: number, distance: number): { rho: number; z: number }[] {
  const beside = Array.from({ length: ALONG + 1 }, (_, i) => ({ rho: distance, z: (half * i) / ALONG }));
  const around = Array.from({ length: AROUND }, (_, i) => {
    const angle = ((i + 1) * Math.PI) / 2 / (AROUND + 1);
    return { rho: distance * Math.cos(angle), z: half + distance * Math.sin(angle) };
  });
  return [...beside, ...around];
}

/** Radiation resistance at the maximum of a sinusoidal current, Ω: the power of its far field, summed over all directions. */
function resistanceAtMaximum(kh: number): number {
  let sum = 0;
  for (let i = 0; i < ANGLES; i++) {
    const angle = ((i + 0.5) * Math.PI) / ANGLES;
    sum += (Math.cos(kh * Math.cos(angle)) - Math.cos(kh)) ** 2 / Math.sin(angle);
  }
  return (FREE_SPACE_OHMS / (2 * Math.PI)) * sum * (Math.PI / ANGLES);
}

/** Fields of a sinusoidal current of this maximum, lengths in wavelengths. */
function fieldsOf(current: number, kh: number, half: number, rho: number, z: number): Fields {
  const k = 2 * Math.PI;
  const upper = Math.hypot(rho, z - half);
  const lower = Math.hypot(rho, z + half);
  const middle = Math.hypot(rho, z);
  const waves = [
    { sign: 1, distance: upper, along: z - half },
    { sign: 1, distance: lower, along: z + half },
    { sign: -2 * Math.cos(kh), distance: middle, along: z },
  ];
  const sums = { zReal: 0, zImaginary: 0, rhoReal: 0, rhoImaginary: 0, hReal: 0, hImaginary: 0 };
  for (const { sign, distance, along } of waves) {
    const real = sign * Math.cos(k * distance);
    const imaginary = -sign * Math.sin(k * distance);
    sums.zReal += real / distance;
    sums.zImaginary += imaginary / distance;
    sums.rhoReal += (real * along) / distance;
    sums.rhoImaginary += (imaginary * along) / distance;
    sums.hReal += real;
    sums.hImaginary += imaginary;
  }
  const perAmpere = FREE_SPACE_OHMS / (4 * Math.PI);
  return {
    electric:
      current * perAmpere * Math.hypot(sums.zReal, sums.zImaginary, sums.rhoReal / rho, sums.rhoImaginary / rho),
    magnetic: (current / (4 * Math.PI * rho)) * Math.hypot(sums.hReal, sums.hImaginary),
  };
}

/** The distance at which a field that falls with it has a value, between the distances by powers; beyond them as at the nearest. */
function distanceWhere(distance: Float64Array, field: Float64Array, limit: number): number {
  let i = field.length - 1;
  while (i >= 0 && (field[i] ?? 0) < limit) i--;
  if (i < 0) return 0;
  const [near, far] = [distance[i] ?? 0, distance[i + 1]];
  const [strong, weak] = [field[i] ?? 0, field[i + 1]];
  // Beyond the farthest the field of a wave falls with the distance.
  if (far === undefined || weak === undefined) return (near * strong) / limit;
  return near * (far / near) ** (Math.log(strong / limit) / Math.log(strong / weak));
}

function valueAt(distance: Float64Array, field: Float64Array, place: number): number {
  const last = distance.length - 1;
  if (place >= (distance[last] ?? 0)) return ((field[last] ?? 0) * (distance[last] ?? 0)) / place;
  // Nearer than the nearest as between the two nearest.
  const i = Math.min(last - 1, Math.max(0, firstIndexAbove(distance, place) - 1));
  const [near, far] = [distance[i] ?? 0, distance[i + 1] ?? 0];
  const [strong, weak] = [field[i] ?? 0, field[i + 1] ?? 0];
  return strong * (weak / strong) ** (Math.log(place / near) / Math.log(far / near));
}
