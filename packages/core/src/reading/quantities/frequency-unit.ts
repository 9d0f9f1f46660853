import { quote, ReadError } from "../../input/read-error.js";
import { at } from "../../numbers/column.js";
import type { FrequencyUnit } from "../options/units.js";

/**
 * The unit that numbers without one can only have in a sweep of an antenna between about 100 kHz and 6 GHz. Numbers
 * that fit two units are refused: 7.1 may be MHz or, in a laboratory's file, GHz.
 *
 * @throws ReadError `ambiguous` where it could be two things
 */
export function frequencyUnitFor(values: Float64Array, file: string): FrequencyUnit {
  let least = Number.POSITIVE_INFINITY;
  let greatest = 0;
  for (let i = 0; i < values.length; i++) {
    const value = at(values, i);
    if (value > 0 && value < least) least = value;
    if (value > greatest) greatest = value;
  }
  if (greatest > 6e6) return "Hz";
  if (greatest >= 1000 && greatest < 1e5 && least >= 100) return "kHz";
  if (greatest >= 10 && greatest < 1000) return "MHz";
  if (greatest === 0) {
    throw new ReadError({ code: "no-data", file, found: "the frequency column holds no number above 0" });
  }
  throw new ReadError({
    code: "ambiguous",
    file,
    found: `frequencies from ${least} to ${greatest} without a unit`,
    remedy: "Say which it is: --unit Hz, --unit kHz, --unit MHz or --unit GHz.",
  });
}

/** No sweep of an antenna ends below this, or reaches beyond the other; a stated unit that puts it there is wrong. Hz */
export const LEAST_FREQUENCY = 1e5;
/** The same where the user has said what the decimal mark is, so that no thousands pass for a thousandth. */
const LEAST_SURE_FREQUENCY = 1e4;
export const GREATEST_FREQUENCY = 3e11;

/**
 * Refuses a unit that its own numbers contradict: 6900000 under "MHz", or 6,900 (thousands) read as 6.9 under "kHz".
 *
 * @throws ReadError `ambiguous`
 */
export function refuseImpossible(
  frequencyHz: Float64Array,
  unit: FrequencyUnit,
  isDecimalStated: boolean,
  file: string,
): void {
  let greatest = 0;
  for (const value of frequencyHz) if (value > greatest) greatest = value;
  const least = isDecimalStated ? LEAST_SURE_FREQUENCY : LEAST_FREQUENCY;
  if (greatest >= least && greatest <= GREATEST_FREQUENCY) return;
  throw new ReadError({
    code: "ambiguous",
    file,
    found: `frequencies up to ${greatest} Hz by the stated unit, ${unit}`,
    expected: "frequencies at which an antenna is swept",
    remedy: "The unit or the decimal mark seems to be another; say --unit or --decimal.",
  });
}

/**
 * Refuses a row in which another unit stands beside the first number than is stated, or any where none is.
 *
 * @throws ReadError `ambiguous`
 */
export function refuseUnitInRow(row: string, stated: FrequencyUnit | null, file: string): void {
  const unit = (stated === null ? UNIT_IN_A_CELL : UNIT_AFTER_FIRST).exec(row)?.[1];
  if (unit === undefined || unit.toLowerCase() === stated?.toLowerCase()) return;
  throw new ReadError({
    code: "ambiguous",
    file,
    found: `the unit ${quote(unit)} stands beside the numbers (${quote(row)})${stated === null ? "" : `, and ${stated} in the header`}`,
    remedy: "Say which unit the frequencies have with --unit.",
  });
}

const UNIT_IN_A_CELL = /(?:^|[\s,;"\d])([kmg]?hz)(?=$|[\s,;"])/i;
const UNIT_AFTER_FIRST = /^["\s]*[\d.,]+["\s,;]*([kmg]?hz)(?=$|[\s,;"])/i;
