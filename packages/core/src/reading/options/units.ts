/** Units in which files state frequencies. */
export type FrequencyUnit = "Hz" | "kHz" | "MHz" | "GHz";

/** Powers of ten from each unit to Hz. */
export const UNIT_EXPONENTS: Readonly<Record<FrequencyUnit, number>> = { Hz: 0, kHz: 3, MHz: 6, GHz: 9 };

/** The same units in other alphabets, and by their old name of cycles a second. */
const OTHER_NAMES: ReadonlyMap<string, FrequencyUnit> = new Map([
  ["гц", "Hz"],
  ["кгц", "kHz"],
  ["мгц", "MHz"],
  ["ггц", "GHz"],
  ["kc", "kHz"],
  ["kcs", "kHz"],
  ["kilocycles", "kHz"],
  ["megacycles", "MHz"],
  ["mc", "MHz"],
  ["mcs", "MHz"],
]);

/** A unit word in any case; null for anything else. */
export function frequencyUnitOf(word: string): FrequencyUnit | null {
  const lower = word.toLowerCase();
  const known = OTHER_NAMES.get(lower);
  if (known !== undefined) return known;
  return (Object.keys(UNIT_EXPONENTS) as FrequencyUnit[]).find((unit) => unit.toLowerCase() === lower) ?? null;
}
