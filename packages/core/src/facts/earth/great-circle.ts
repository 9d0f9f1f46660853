/** A place on the earth, degrees; north and east above 0. */
export interface Place {
  readonly latitude: number;
  readonly longitude: number;
}

/** Mean radius of the earth, km (IUGG). */
const RADIUS_KM = 6371.0088;
const DEGREE = Math.PI / 180;

/**
 * The shortest way between two places on a sphere of the earth's mean radius, km: within 0.6 % of the way on the ellipsoid, which
 * is less than a locator leaves open.
 *
 * @example
 * ```ts
 * import { distanceKm } from "@feedpoint/core";
 *
 * Math.round(distanceKm({ latitude: 51.5, longitude: 1 }, { latitude: 48.5, longitude: 9 })); // → 661
 * ```
 */
export function distanceKm(from: Place, to: Place): number {
  const [lat1, lat2] = [from.latitude * DEGREE, to.latitude * DEGREE];
  const haversine = (angle: number) => Math.sin(angle / 2) ** 2;
  const share =
    haversine(lat2 - lat1) + Math.cos(lat1) * Math.cos(lat2) * haversine((to.longitude - from.longitude) * DEGREE);
  return 2 * RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(share)));
}

/** The direction in which that way begins, degrees from true north over east, 0 up to 360. */
export function bearingDeg(from: Place, to: Place): number {
  const [lat1, lat2] = [from.latitude * DEGREE, to.latitude * DEGREE];
  const east = (to.longitude - from.longitude) * DEGREE;
  const y = Math.sin(east) * Math.cos(lat2);
  const x = Math.cos(lat1) * Math.sin(lat2) - Math.sin(lat1) * Math.cos(lat2) * Math.cos(east);
  return (Math.atan2(y, x) / DEGREE + 360) % 360;
}
