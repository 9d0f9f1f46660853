import type { ColumnRole } from "../options/column-role.js";
import { frequencyUnitOf, UNIT_EXPONENTS } from "../options/units.js";

/** What the name of a column of frequencies says whose unit is not known. */
export const FREQUENCY_WITHOUT_UNIT: ColumnRole = { quantity: "frequency", frequencyUnit: null, isUnknownUnit: true };

/** "Offset from 6.9 MHz (kHz)": the frequency that others are counted from, and their unit. */
export function offsetFrequency(header: string): ColumnRole {
  const [whole = "", printed = "", from = ""] = /(\d+(?:[.,]\d+)?) ?([kmg]?hz)/iu.exec(header) ?? [];
  const baseUnit = frequencyUnitOf(from);
  const units = [...header.replace(whole, " ").matchAll(/(?<![\p{L}])([kmg]?hz)(?!\p{L})/giu)];
  const unit = frequencyUnitOf(units[0]?.[1] ?? "");
  const less = (LESS_NUMBER.exec(header) ?? MORE_NUMBER.exec(header))?.[1];
  if (baseUnit === null && less !== undefined && unit !== null) {
    return {
      quantity: "frequency",
      frequencyUnit: unit,
      offset: Number(less.replace(",", ".")) * 10 ** UNIT_EXPONENTS[unit],
    };
  }
  if (baseUnit === null || unit === null || units.length > 1 || IN_STEPS.test(header)) return FREQUENCY_WITHOUT_UNIT;
  const offset = Number(printed.replace(",", ".")) * 10 ** UNIT_EXPONENTS[baseUnit];
  return { quantity: "frequency", frequencyUnit: unit, offset };
}

/** "in steps of 10 kHz": counted, and not from there. */
const IN_STEPS = /(?<!\p{L})(?:steps?|units?|multiples|spacing|increments?)(?!\p{L})/iu;

/** "f - 14000 (kHz)", "Frequency (MHz) - 7": the number is in the unit of the column. */
const LESS_NUMBER = /[\p{L})\]]\s*[-−–]\s*(\d+(?:[.,]\d+)?)\s*(?=[([]|$)/u;

/** "kHz above 14000": so is this. */
const MORE_NUMBER = /(?<!\p{L})(?:above|over|beyond|from|relative to)\s+(\d+(?:[.,]\d+)?)(?!\s*[kmg]?hz|[\d.,])/iu;

/** Counted from another frequency: "offset from 6.9 MHz (kHz)", "f - 2.9 MHz (kHz)", "kHz above 3 MHz". */
export const isOffset = (header: string) =>
  LESS_NUMBER.test(header) ||
  MORE_NUMBER.test(header) ||
  /\boffset\b|\bdelta\b|Δ|\d ?[kmg]?hz|^\W*\+ ?[kmg]?hz|[kmg]?hz (?:above|over|beyond)\W*$/iu.test(header);
