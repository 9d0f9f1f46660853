import { isVectorCurve, reflectionAt } from "../curve/curve.js";
import type { UsableBand } from "../facts/band-plan/band-plan.js";
import { type Feedline, sectionAt } from "../facts/feedline/feedline.js";
import { reflectionAtLoad } from "../facts/feedline/line.js";
import { magnitude } from "../numbers/complex.js";
import { changeReference } from "../reflection/impedance.js";
import { reflectionMagnitudeFromSwr } from "../reflection/swr.js";
import { answeringOn, type Part } from "./parts.js";

/** A band as it is at the antenna's end of the line, against the impedance of the sweep. */
export interface BandAtAntenna {
  readonly band: string;
  /** The dip within the band or as far beside it as is looked; null where there is none */
  readonly dipHz: number | null;
  /** Share of the band within the limit, 0 to 1 */
  readonly withinLimitFraction: number;
}

/** How far beside a band its dip is looked for, as a share of the frequency, and in how many steps altogether. */
const BESIDE = 0.08;
const STEPS = 60;

/** @returns null where the band is not known with phase throughout */
export function bandAtAntenna(
  parts: readonly Part[],
  { band, lowHz, highHz, pieces }: UsableBand,
  feedline: Feedline,
  limitSwr: number,
): BandAtAntenna | null {
  const [{ part }, ...others] = answeringOn(parts, pieces);
  const { curve } = part.analysis;
  if (reflectionAt(curve, (lowHz + highHz) / 2) === null) return null;
  if (others.length > 0 || part.knows !== "curve" || !isVectorCurve(curve)) return null;
  const magnitudeAt = (hz: number): number => {
    const seen = reflectionAt(curve, hz);
    if (seen === null) return Number.NaN;
    const onLine = changeReference(seen, curve.sweep.referenceOhms, feedline.characteristicOhms);
    const atLoad = reflectionAtLoad(onLine, sectionAt(feedline, hz));
    return magnitude(changeReference(atLoad, feedline.characteristicOhms, curve.sweep.referenceOhms));
  };
  const grid = Array.from({ length: STEPS + 1 }, (_, i) => {
    const hz = lowHz * (1 - BESIDE) + ((highHz * (1 + BESIDE) - lowHz * (1 - BESIDE)) * i) / STEPS;
    return { hz, rho: magnitudeAt(hz) };
  });
  const limit = reflectionMagnitudeFromSwr(limitSwr);
  const shares = pieces.map((piece) => within(piece.lowHz, piece.highHz, limit, magnitudeAt));
  if (shares.some(Number.isNaN)) return null;
  const whole = pieces.reduce((sum, piece) => sum + piece.highHz - piece.lowHz, 0);
  return { band, dipHz: dipOf(grid), withinLimitFraction: shares.reduce((sum, width) => sum + width, 0) / whole };
}

/** Steps of a piece between which ρ is taken to be straight. */
const PIECE_STEPS = 16;

/** Width within a limit; NaN where not all of it is known. */
function within(lowHz: number, highHz: number, limit: number, magnitudeAt: (hz: number) => number): number {
  const step = (highHz - lowHz) / PIECE_STEPS;
  const values = Array.from({ length: PIECE_STEPS + 1 }, (_, i) => limit - magnitudeAt(lowHz + i * step));
  return values.slice(1).reduce((sum, to, i) => {
    const from = values[i] ?? Number.NaN;
    if (from >= 0 && to >= 0) return sum + step;
    if (from < 0 && to < 0) return sum;
    return sum + (step * Math.max(from, to)) / Math.abs(from - to);
  }, 0);
}

/** The lowest of the places that have higher ones on both sides, by a parabola through the squares. */
function dipOf(grid: readonly { readonly hz: number; readonly rho: number }[]): number | null {
  let lowest: number | null = null;
  for (let i = 1; i < grid.length - 1; i++) {
    const [before, here, after] = [grid[i - 1]?.rho, grid[i]?.rho, grid[i + 1]?.rho] as [number, number, number];
    if (here <= before && here <= after && (lowest === null || here < (grid[lowest]?.rho ?? 1))) lowest = i;
  }
  if (lowest === null) return null;
  const [a, b, c] = [-1, 0, 1].map((k) => (grid[(lowest ?? 0) + k]?.rho ?? 0) ** 2) as [number, number, number];
  const step = (grid[1]?.hz ?? 0) - (grid[0]?.hz ?? 0);
  const bend = a - 2 * b + c;
  return (grid[lowest]?.hz ?? 0) + (bend > 0 ? (step * (a - c)) / (2 * bend) : 0);
}
