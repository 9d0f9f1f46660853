import { at, type Column } from "../../numbers/column.js";
import type { Determination, NumberColumn } from "../quantities/determination.js";
import { movesOf } from "../quantities/resolution.js";

/** Decimals of numbers that are printed so coarsely that the rounding matters. */
const FEW_DECIMALS = [0, 1, 2, 3];
/** Of a decimal fraction the nearest double is off by less than this. */
const TOLERANCE = 1e-6;

/** How far rounding to few printed digits may have moved Γ: as a rule, and where it matters most (near a match). */
export interface Rounding {
  readonly usual: number;
  readonly greatest: number;
}

export const NO_ROUNDING: Rounding = { usual: 0, greatest: 0 };

/**
 * How far rounding to few decimals may have moved the reflection, as a distance in Γ; 0 where the numbers are printed finely.
 */
export function roundingOf(determination: Determination): Rounding {
  const halfUnits = determination.columns.map(coarseHalfUnit);
  if (halfUnits.every((halfUnit) => halfUnit === 0)) return NO_ROUNDING;
  const sizes = movesOf(determination, halfUnits);
  return { usual: sizes[sizes.length >> 1] ?? 0, greatest: sizes.at(-1) ?? 0 };
}

/** The same of a real and an imaginary part as they are printed. */
export function roundingOfParts(real: Column, imaginary: Column): Rounding {
  const half = (values: Column) => coarseHalfUnit({ values, ceiling: null });
  const both = Math.hypot(half(real), half(imaginary));
  return { usual: both, greatest: both };
}

const NOTE = /rounded in print: reflection \+-(\d[\d.e-]*) as a rule, \+-(\d[\d.e-]*) at most/;

/** A comment that says how far rounding may have moved the readings of a sweep, for one that is written with all its digits. */
export const roundingNote = ({ usual, greatest }: Rounding): string =>
  `rounded in print: reflection +-${usual} as a rule, +-${greatest} at most`;

/** What such a comment says; no rounding where there is none. */
export function notedRounding(comments: readonly string[]): Rounding {
  const [, usual, greatest] = comments.map((comment) => NOTE.exec(comment)).find((match) => match !== null) ?? [];
  const noted = { usual: Number(usual), greatest: Number(greatest) };
  return noted.usual >= 0 && noted.usual <= noted.greatest && noted.greatest < 1 ? noted : NO_ROUNDING;
}

/** Half of one unit in the last place of numbers that all have few decimals, bounds left out; 0 of others. */
function coarseHalfUnit({ values, ceiling }: Pick<NumberColumn, "ceiling"> & { values: Column }): number {
  const end = ceiling ?? Number.POSITIVE_INFINITY;
  if (values.every((value) => !(value < end))) return 0;
  const decimals = FEW_DECIMALS.find((count) => areMultiples(values, 10 ** count, end));
  return decimals === undefined ? 0 : 0.5 * 10 ** -decimals;
}

function areMultiples(values: Column, unitsPerOne: number, end: number): boolean {
  for (let i = 0; i < values.length; i++) {
    const units = at(values, i) * unitsPerOne;
    if (at(values, i) < end && Math.abs(units - Math.round(units)) > TOLERANCE) return false;
  }
  return true;
}
