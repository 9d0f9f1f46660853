import type { FrequencyUnit } from "@feedpoint/core";

/** Powers of ten from each unit to Hz. */
export const SHIFTS: Readonly<Record<FrequencyUnit, number>> = { Hz: 0, kHz: 3, MHz: 6, GHz: 9 };

/** A whole number of hertz in another unit, as text: exact, because only the decimal mark moves. */
export function inUnit(frequencyHz: number, unit: FrequencyUnit): string {
  const shift = SHIFTS[unit];
  if (shift === 0) return String(frequencyHz);
  const digits = String(frequencyHz).padStart(shift + 1, "0");
  return `${digits.slice(0, -shift)}.${digits.slice(-shift)}`;
}
