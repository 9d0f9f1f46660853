import { lookUp } from "../../input/look-up.js";

/** A unit that may stand beside a number in its cell. */
export interface CellUnit {
  /** As the name of a column states it */
  readonly name: string;
  readonly kind: "frequency" | "resistance" | "decibel" | "degrees" | "radians" | "percent";
  /** Of ten, to the unit without a prefix */
  readonly power: number;
}

/** A number that may have a unit beside it, and marks between its thousands. */
export interface DressedNumber {
  /** As printed, without the unit */
  readonly digits: string;
  readonly unit: CellUnit | null;
  /** Between thousands */
  readonly mark: string | null;
}

const UNITS: Readonly<Record<string, CellUnit>> = {
  hz: { name: "Hz", kind: "frequency", power: 0 },
  khz: { name: "kHz", kind: "frequency", power: 3 },
  mhz: { name: "MHz", kind: "frequency", power: 6 },
  ghz: { name: "GHz", kind: "frequency", power: 9 },
  ohm: { name: "ohm", kind: "resistance", power: 0 },
  kohm: { name: "kohm", kind: "resistance", power: 3 },
  db: { name: "dB", kind: "decibel", power: 0 },
  "°": { name: "deg", kind: "degrees", power: 0 },
  deg: { name: "deg", kind: "degrees", power: 0 },
  rad: { name: "rad", kind: "radians", power: 0 },
  "%": { name: "%", kind: "percent", power: 0 },
};
const UNIT = "[kmg]?hz|k?ohms?|k?[Ω\u2126]|db|°|deg|rad|%";
/** Marks that only ever stand between thousands: apostrophes and blanks, those of fixed and narrow width among them. */
const GROUPING = "['’ \u00a0\u2009\u202f]";
const NUMBER = "[+-]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)";
/** Digits by threes: with a mark that could be a decimal one only where it stands twice, or another one does for decimals. */
const BY_POINTS = "(?:\\.\\d{3}){2,}(?:,\\d+)?|(?:\\.\\d{3})+,\\d+";
const BY_COMMAS = "(?:,\\d{3}){2,}(?:\\.\\d+)?|(?:,\\d{3})+\\.\\d+";
const GROUPED = `[+-]?[1-9]\\d{0,2}(?:(?:${GROUPING}\\d{3})+(?:[.,]\\d+)?|${BY_POINTS}|${BY_COMMAS})`;
const DRESSED = new RegExp(`^(${GROUPED}|${NUMBER})\\s*(${UNIT})?$`, "iu");
const IS_GROUPED = new RegExp(`^${GROUPED}$`, "u");
const SIGNS = new RegExp(`\\d\\s?(?:${UNIT})|\\d(?:${GROUPING}\\d{3}|[.]\\d{3}[.,]\\d|,\\d{3}[.,]\\d)`, "iu");
const BESIDE = new RegExp(`^\\s*"?[+-]?\\d(?:.*\\d)?\\s?(?:${UNIT})(?!\\p{L})`, "iu");
const JOINABLE = new RegExp(`(\\d)[ \\t]+(?=(?:${UNIT})(?:[ \\t]|$))`, "giu");

/** Whether a line begins with a number, and a unit stands beside one in it. */
export const hasUnitBeside = (line: string): boolean => BESIDE.test(line);

/** Whether a text may hold such numbers at all. */
export const mayBeDressed = (text: string): boolean => SIGNS.test(text);

/** A number with what stands in its cell; null where the cell holds anything else. */
export function dressedNumber(cell: string): DressedNumber | null {
  const [, digits, unit] = DRESSED.exec(cell.replace(/^[−–](?=\d)/, "-")) ?? [];
  if (digits === undefined) return null;
  const word = unit?.toLowerCase().replace(/[ωΩ\u2126]|ohms$/u, "ohm");
  return {
    digits,
    unit: word === undefined ? null : (lookUp(UNITS, word) ?? null),
    mark: IS_GROUPED.test(digits) ? (/[^\d+-]/.exec(digits)?.[0] ?? null) : null,
  };
}

/** Puts units that stand after a blank to their numbers, where blanks split the columns. */
export const withUnitsJoined = (line: string): string =>
  /^\s*[+-]?[\d.,]/.test(line) ? line.replace(JOINABLE, "$1") : line;
