/** An area that a locator names, by its centre; degrees, north and east above 0. */
export interface LocatorArea {
  readonly latitude: number;
  readonly longitude: number;
  /** From the centre to the edge, degrees */
  readonly halfHeight: number;
  readonly halfWidth: number;
}

/** Characters of a pair: letters or digits, and how many there are of them. */
const PAIRS = [
  { first: "A", count: 18 },
  { first: "0", count: 10 },
  { first: "A", count: 24 },
  { first: "0", count: 10 },
  { first: "A", count: 24 },
] as const;

/**
 * The area that a locator of two to ten characters names: pairs of field, square, subsquare and so on, longitude first, from the
 * south-west corner of the world on. IARU Maidenhead, 1980; WGS 84.
 *
 * @returns null where the text is no locator
 * @example
 * ```ts
 * import { locatorArea } from "@feedpoint/core";
 *
 * locatorArea("JO01"); // → { latitude: 51.5, longitude: 1, halfHeight: 0.5, halfWidth: 1 }
 * locatorArea("mooring"); // → null
 * ```
 */
export function locatorArea(text: string): LocatorArea | null {
  const signs = text.trim().toUpperCase();
  if (signs.length < 2 || signs.length > 2 * PAIRS.length || signs.length % 2 !== 0) return null;
  let [longitude, latitude, width, height] = [-180, -90, 360, 180];
  for (const [i, { first, count }] of PAIRS.slice(0, signs.length / 2).entries()) {
    const [east, north] = [0, 1].map((side) => signs.charCodeAt(2 * i + side) - first.charCodeAt(0)) as [
      number,
      number,
    ];
    if (!(east >= 0 && east < count && north >= 0 && north < count)) return null;
    [width, height] = [width / count, height / count];
    longitude += east * width;
    latitude += north * height;
  }
  return {
    latitude: latitude + height / 2,
    longitude: longitude + width / 2,
    halfHeight: height / 2,
    halfWidth: width / 2,
  };
}
