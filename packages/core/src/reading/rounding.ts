import { at, type Column } from "../column.js";
import { type Determination, resolutionOf } from "./assemble.js";

/** Decimals of numbers that are printed so coarsely that the rounding matters. */
const FEW_DECIMALS = [0, 1, 2];
/** Of a decimal fraction the nearest double is off by less than this. */
const TOLERANCE = 1e-6;

/**
 * How far rounding to few decimals may have moved the reflection, as a distance in Γ; 0 where the numbers are printed finely.
 */
export function roundingOf(determination: Determination): number {
  const halfUnits = determination.columns.map(({ values }) => coarseHalfUnit(values));
  const rounding = halfUnits.some((halfUnit) => halfUnit > 0) ? resolutionOf(determination, halfUnits) : 0;
  return Number.isFinite(rounding) ? rounding : 0;
}

/** Half of one unit in the last place of numbers that all have two decimals or fewer; 0 of others. */
function coarseHalfUnit(values: Column): number {
  const decimals = FEW_DECIMALS.find((count) => areMultiples(values, 10 ** count));
  return decimals === undefined ? 0 : 0.5 * 10 ** -decimals;
}

function areMultiples(values: Column, unitsPerOne: number): boolean {
  for (let i = 0; i < values.length; i++) {
    const units = at(values, i) * unitsPerOne;
    if (Math.abs(units - Math.round(units)) > TOLERANCE) return false;
  }
  return true;
}
