import { at } from "../../numbers/column.js";
import type { Curve } from "../curve.js";
import type { WholeFit } from "../fit/whole-fit.js";

/** The function that explains a stretch, and where that begins and ends: as indices of samples, and in Hz. */
export interface FitOfStretch {
  readonly fit: WholeFit;
  readonly first: number;
  readonly last: number;
  readonly lowHz: number;
  readonly highHz: number;
}

/** What explains the stretches between two frequencies; null where there is one that nothing explains, or none. */
export function fitsBetween(
  { sweep, stretches, fits }: Curve,
  lowHz: number,
  highHz: number,
): readonly FitOfStretch[] | null {
  const found: FitOfStretch[] = [];
  for (const [s, { first, last }] of stretches.entries()) {
    const [start, end] = [at(sweep.frequencyHz, first), at(sweep.frequencyHz, last)];
    if (start > highHz || end < lowHz) continue;
    const fit = fits[s] ?? "none";
    if (fit === "none") return null;
    found.push({ fit, first, last, lowHz: start, highHz: end });
  }
  return found.length === 0 ? null : found;
}
