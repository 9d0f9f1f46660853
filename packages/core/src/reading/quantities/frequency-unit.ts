import { NAMED_BANDS } from "../../facts/band-names.js";
import { ReadError } from "../../input/read-error.js";
import { at } from "../../numbers/column.js";
import { type FrequencyUnit, UNIT_EXPONENTS } from "../options/units.js";

/**
 * The unit that numbers without one can only have in a sweep of an antenna between about 100 kHz and 6 GHz. Numbers
 * that fit two units are refused, unless one of them alone puts them into amateur bands.
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
  // Most of them, or any at all: what no band has is no unit of theirs.
  for (const share of [SHARE_IN_BAND, 0]) {
    const [unit, ...others] = FREQUENCY_UNITS.filter((name) => areInBands(values, UNIT_EXPONENTS[name], share));
    if (unit !== undefined && others.length === 0) return unit;
  }
  throw new ReadError({
    code: "ambiguous",
    file,
    found: `frequencies from ${least} to ${greatest} without a unit`,
    remedy: "Say which it is: --unit Hz, --unit kHz, --unit MHz or --unit GHz.",
  });
}

const FREQUENCY_UNITS = Object.keys(UNIT_EXPONENTS) as FrequencyUnit[];
/** A sweep of a band reaches beyond its edges by up to this share of them. */
const BEYOND_EDGES = 0.05;
/** So much of a sweep of a band lies in it and beside it. */
const SHARE_IN_BAND = 0.5;

/** Whether more than a share of the frequencies lie in amateur bands or beside them. */
function areInBands(values: Float64Array, exponent: number, share: number): boolean {
  const isNear = (value: number) =>
    NAMED_BANDS.some(
      ({ lowHz, highHz }) =>
        value * 10 ** exponent >= lowHz * (1 - BEYOND_EDGES) && value * 10 ** exponent <= highHz * (1 + BEYOND_EDGES),
    );
  return values.filter(isNear).length > share * values.length;
}

/** No sweep of an antenna ends below this, or reaches beyond the other; a stated unit that puts it there is wrong. Hz */
export const LEAST_FREQUENCY = 1e5;
/** Of the rows no more than this share are slips. */
const MOST_SLIPS = 0.05;
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
  let beyond = 0;
  for (let i = 0; i < frequencyHz.length; i++) {
    const value = at(frequencyHz, i);
    if (value > greatest) greatest = value;
    if (value > GREATEST_FREQUENCY) beyond++;
  }
  const least = isDecimalStated ? LEAST_SURE_FREQUENCY : LEAST_FREQUENCY;
  // A row or two beyond are slips, and left out with the others that hold no frequency.
  if (greatest >= least && beyond <= MOST_SLIPS * frequencyHz.length) {
    if (beyond > 0)
      for (const [i, value] of frequencyHz.entries()) if (value > GREATEST_FREQUENCY) frequencyHz[i] = Number.NaN;
    return;
  }
  throw new ReadError({
    code: "ambiguous",
    file,
    found: `frequencies up to ${greatest} Hz by the stated unit, ${unit}`,
    expected: "frequencies at which an antenna is swept",
    remedy: "The unit or the decimal mark seems to be another; say --unit or --decimal.",
  });
}

/** Frequencies on both sides of 0 are counted from another one. */
export function refuseNegative(frequencyHz: ArrayLike<number>, file: string): void {
  let negative = 0;
  for (let i = 0; i < frequencyHz.length; i++) if ((frequencyHz[i] as number) < 0) negative++;
  if (negative < 2) return;
  throw new ReadError({
    code: "ambiguous",
    file,
    found: "frequencies below 0, as if they were counted from another one",
    expected: "the frequencies themselves",
    remedy: 'Add the frequency they are counted from, or name it in the header: "Offset from 7.1 MHz (kHz)".',
  });
}
