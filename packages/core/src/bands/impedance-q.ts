import { reflectionAt, type VectorCurve } from "../curve/curve.js";
import { complex } from "../numbers/complex.js";
import { impedanceFromReflection } from "../reflection/impedance.js";

/** Share of the frequency over which slopes are taken. */
const SLOPE_SHARE = 0.002;

/**
 * Q of an antenna from its impedance: Q = f / (2R) · √(R'² + (X' + |X|/f)²), slopes by frequency.
 *
 * Source: A. D. Yaghjian, S. R. Best, Impedance, bandwidth, and Q of antennas, IEEE Trans. Antennas Propag. 53(4), 2005
 * (equations read second-hand). Holds for one resonance by itself, seen at the antenna's own terminals.
 *
 * @returns null where the curve is not known on both sides
 */
export function impedanceQ(curve: VectorCurve, frequencyHz: number): number | null {
  const step = SLOPE_SHARE * frequencyHz;
  const impedances = [-1, 0, 1].map((side) => {
    const reflection = reflectionAt(curve, frequencyHz + side * step);
    return reflection === null ? null : impedanceFromReflection(reflection, curve.sweep.referenceOhms);
  });
  const [below, here, above] = impedances;
  if (!below || !here || !above || !(here.real > 0)) return null;
  const slope = complex((above.real - below.real) / (2 * step), (above.imaginary - below.imaginary) / (2 * step));
  const across = slope.imaginary + Math.abs(here.imaginary) / frequencyHz;
  return (frequencyHz / (2 * here.real)) * Math.hypot(slope.real, across);
}

/**
 * Bandwidth at an SWR limit that a single series resonance of this Q and resistance has, Hz.
 *
 * With r = R / Z0: SWR = s where (X / Z0)² = r (s + 1/s) - r² - 1, and X = Q R (f/f0 - f0/f). Derived; for r = 1 it is
 * Yaghjian and Best's (s - 1) / (√s Q).
 *
 * @returns null where the limit is never reached
 */
export function bandwidthFromQ(
  q: number,
  resistanceOhms: number,
  referenceOhms: number,
  limitSwr: number,
  frequencyHz: number,
): number | null {
  const r = resistanceOhms / referenceOhms;
  const square = r * (limitSwr + 1 / limitSwr) - r * r - 1;
  return square > 0 ? (frequencyHz * Math.sqrt(square)) / (r * q) : null;
}
