import { median } from "simple-statistics";
import { NAMED_BANDS } from "../../facts/band-names.js";
import { at, type Column } from "../../numbers/column.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { Determination } from "./determination.js";

/** No antenna has an SWR beyond this throughout a sweep (our own choice). */
const ABSURD_SWR = 100;
/** Nor an impedance below this at most frequencies, Ω: such numbers are multiples of the reference, or thousands of ohms. */
const ABSURD_OHMS = 5;
/** Nor one beyond this at most of them, Ω: such numbers are ohms, or siemens, whose unit is said to be another. */
const GREATEST_OHMS = 20_000;
const FEWEST = 3;
const MOST_LOOKED_AT = 64;

/** What the readings are as they were read that no antenna has: another unit, or multiples of the reference. */
export function absurdReadings({ columns: [first, second] }: Determination): readonly Finding[] {
  if (first === undefined || first.values.length < FEWEST) return [];
  // What holds throughout a sweep, or at most of its points, holds at some of them.
  const every = Math.ceil(first.values.length / MOST_LOOKED_AT);
  const known: number[] = [];
  for (let i = 0; i < first.values.length; i += every) {
    const value = at(first.values, i);
    if (Number.isFinite(value)) known.push(value);
  }
  if (first.quantity === "swr" && known.length > 0 && known.every((value) => value > ABSURD_SWR))
    return [finding("problem", "readings-absurd", { what: "swr" })];
  if (first.quantity === "swr" && known.length > 0 && known.every((value) => value < 1))
    return [finding("problem", "readings-absurd", { what: "swr-below-1" })];
  if (first.quantity === "swr" && known.length > 1 && lackPoints(known))
    return [finding("caution", "readings-absurd", { what: "swr-whole" })];
  const isAdmittance = first.quantity === "conductance" || first.quantity === "admittance-magnitude";
  if (!isAdmittance && first.quantity !== "resistance" && first.quantity !== "impedance-magnitude") return [];
  const isPolar = first.quantity === "impedance-magnitude" || first.quantity === "admittance-magnitude";
  const ohms: number[] = [];
  for (let i = 0; i < first.values.length; i += every) {
    const value = at(first.values, i);
    const size = isPolar || second === undefined ? Math.abs(value) : Math.hypot(value, at(second.values, i));
    if (Number.isFinite(size)) ohms.push(isAdmittance ? 1 / size : size);
  }
  const usual = ohms.length === 0 ? null : median(ohms);
  if (usual === null || (usual >= ABSURD_OHMS && usual <= GREATEST_OHMS)) return [];
  const what = isAdmittance ? "siemens" : "ohms";
  return [finding("problem", "readings-absurd", { what: usual < ABSURD_OHMS ? what : `${what}-beyond` })];
}

/** Whether SWR are all of two digits and none of them round, as those are whose decimal point is lost (our own choice). */
export const lackPoints = (swr: readonly number[]): boolean =>
  swr.every((value) => Number.isInteger(value) && value >= 10 && value < 1000) && swr.some((value) => value % 5 !== 0);

/** How near a frequency lies to ten times its neighbours, or a tenth of them, for a slip of the decimal point. */
const SLIP_TOLERANCE = 0.1;
/** How far the frequencies on either side of it may be apart, in shares of what lies between them. */
const NEIGHBOURS = 0.5;

/** Wires that one hangs up are swept below this, Hz: beyond it a file may state another unit than it has. */
const UNLIKELY_HZ = 3e9;

/** Nor below this beside the bands there, Hz: a file may state kHz and have MHz. */
const LEAST_LIKELY_HZ = 1e6;

/** That a sweep lies where no wire antenna is swept. */
export function unlikelyFrequencies(frequencyHz: Column): readonly Finding[] {
  const [first, last] = [at(frequencyHz, 0), at(frequencyHz, frequencyHz.length - 1)];
  const [lowest, highest] = [Math.min(first, last), Math.max(first, last)];
  const isAround = ({ lowHz, highHz }: { lowHz: number; highHz: number }) => lowest <= highHz && highest >= lowHz;
  const isLow = highest < LEAST_LIKELY_HZ && !NAMED_BANDS.some(isAround);
  return lowest >= UNLIKELY_HZ || isLow ? [finding("caution", "frequency-unlikely", { frequencyHz: lowest })] : [];
}

/** Frequencies of one sweep do not grow by more than this factor from one row to the next: another unit begins. */
const MOST_GROWTH = 50;
/** A row out of order lies this many of its neighbours' steps away from them. */
const FAR = 5;

/**
 * A frequency that its neighbours do not let expect: ten times what it should be, or a tenth, where the decimal point may have
 * slipped; out of their order by far, where a digit may be wrong; or in another unit from there on.
 */
export function slippedFrequencies(frequencyHz: Column): readonly Finding[] {
  for (let i = 1; i < frequencyHz.length; i++) {
    const before = at(frequencyHz, i - 1);
    const here = at(frequencyHz, i);
    if (before > 0 && here > MOST_GROWTH * before) return [slipped(here, before)];
    if (i === frequencyHz.length - 1) break;
    const after = at(frequencyHz, i + 1);
    if (after > before === here > before && after > here === after > before) continue;
    const expected = (before + after) / 2;
    const isFar = Math.abs(here - expected) > FAR * Math.abs(after - before);
    const isSlip = [10, 0.1].some((factor) => Math.abs(here / (factor * expected) - 1) < SLIP_TOLERANCE);
    const areNeighbours = Math.abs(after - before) < NEIGHBOURS * expected && after !== before;
    if (areNeighbours && (isSlip || (isFar && isBetween(frequencyHz, i)))) return [slipped(here, expected)];
  }
  return [];
}

/** A reading is taken for one without its decimal point where it is so near ten times those on either side, or a whole SWR far beyond them. */
const NEAR_TEN = 0.25;
const FAR_BEYOND = 20;
const LEAST_WHOLE = 100;
const LEAST_SLIPPED = 5;
/** Those on either side differ by no more than this share then: a resistance has peaks in coarse steps (our own choices). */
const SPREAD = { SWR: 0.5, resistance: 0.03 };

/** The first SWR or resistance that may lack its decimal point: 233 between 2.02 and 2.66, 696.0 between 69.5 and 69.7. */
export function slippedReadings({ columns: [first] }: Determination, frequencyHz: Column): readonly Finding[] {
  if (first === undefined || (first.quantity !== "swr" && first.quantity !== "resistance")) return [];
  return slippedAmong(first.values, frequencyHz, first.quantity === "swr" ? "SWR" : "resistance", MOST_BESIDE);
}

/** Rows of a sweep on either side of one lie no further apart than this share of its frequency: between bands anything may be (our own choice). */
const MOST_BESIDE = 0.1;

/** The same of numbers in the order of their frequencies. */
export function slippedAmong(
  values: Column,
  frequencyHz: Column,
  what: keyof typeof SPREAD,
  mostBeside = Number.POSITIVE_INFINITY,
): readonly Finding[] {
  for (let i = 0; i < values.length; i++) {
    const value = at(values, i);
    if (!(value >= LEAST_SLIPPED)) continue;
    // At an end the two nearest stand in for those on either side.
    const before = values[i - 1] ?? values[i + 2] ?? Number.NaN;
    if (!(value > MOST_APART * before)) continue;
    const after = values[i + 1] ?? values[i - 2] ?? Number.NaN;
    const beside = (before + after) / 2;
    const isWhole = what === "SWR" && Number.isInteger(value);
    const isFar = isWhole && value >= LEAST_WHOLE && value > FAR_BEYOND * beside;
    const isSlip = Math.abs(value / (10 * beside) - 1) < NEAR_TEN || isFar;
    const isAlone = isSlip && Math.abs(before - after) <= SPREAD[what] * beside;
    if (!isAlone && !(isWhole && liesBetween(value, before, after))) continue;
    const frequency = at(frequencyHz, i);
    const apart = Math.abs((frequencyHz[i + 1] ?? frequency) - (frequencyHz[i - 1] ?? frequency));
    // A peak of a resistance is as symmetrical; amid equals there is none.
    const around = [values[i - 2], values[i + 2]].filter((other) => other !== undefined);
    const isPeak =
      what === "resistance" && around.some((other) => Math.abs(other - beside) > 2 * SPREAD.resistance * beside);
    if (Number.isFinite(frequency) && (apart <= mostBeside * frequency || isFar) && !isPeak)
      return [finding("caution", "reading-slipped", { what, value, beside, frequencyHz: frequency })];
  }
  return [];
}

/** How far those on either side may be apart for a number to be told between them with its decimal point, as a factor (our own choice). */
const MOST_APART = 2;

/** Whether a whole number lies between those on either side once it has a decimal point: 409 between 5.41 and 2.99. */
function liesBetween(value: number, before: number, after: number): boolean {
  const [low, high] = [Math.min(before, after), Math.max(before, after)];
  const areNear = high <= MOST_APART * low && value > MOST_APART * high;
  return areNear && [10, 100].some((factor) => value / factor >= low && value / factor <= high);
}

/** Whether the rows around one go on in one direction without it. */
function isBetween(frequencyHz: Column, i: number): boolean {
  if (i < 2 || i > frequencyHz.length - 3) return false;
  const before = at(frequencyHz, i - 1) - at(frequencyHz, i - 2);
  const across = at(frequencyHz, i + 1) - at(frequencyHz, i - 1);
  const after = at(frequencyHz, i + 2) - at(frequencyHz, i + 1);
  return before * across > 0 && across * after > 0 && Math.abs(across) < FAR * Math.abs(before);
}

const slipped = (frequencyHz: number, expectedHz: number): Finding =>
  finding("caution", "frequency-slipped", { frequencyHz, expectedHz });
