import { lookUp } from "../look-up.js";
import { wordsOf } from "./columns.js";

/** A unit that may stand beside a number in its cell. */
export interface CellUnit {
  /** As a name of a column states it, and `--unit` takes it */
  readonly name: string;
  readonly kind: "frequency" | "resistance" | "decibel" | "degrees" | "radians" | "percent";
  readonly power: number;
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
/** Digits by threes: with a mark that could be a decimal one only where it stands twice or more. */
const GROUPED = `[+-]?[1-9]\\d{0,2}(?:(?:${GROUPING}\\d{3})+|(?:\\.\\d{3}){2,}|(?:,\\d{3}){2,})(?:[.,]\\d+)?`;
const DRESSED = new RegExp(`^(${GROUPED}|${NUMBER})\\s*(${UNIT})?$`, "iu");
const IS_GROUPED = new RegExp(`^${GROUPED}$`, "u");
/** Whether a text may hold such numbers at all. */
export const mayBeDressed = (text: string): boolean => SIGNS.test(text);
const SIGNS = new RegExp(`\\d\\s?(?:${UNIT})|\\d(?:${GROUPING}\\d{3}|[.]\\d{3}[.]\\d{3}|,\\d{3},\\d{3})(?!\\d)`, "iu");

/** A number that may have a unit beside it, and marks between its thousands. */
export interface DressedNumber {
  /** As printed, without the unit */
  readonly digits: string;
  readonly unit: CellUnit | null;
  /** Between thousands */
  readonly mark: string | null;
}

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

/** The units that the name of a column states. */
export const unitsIn = (name: string): readonly CellUnit[] =>
  wordsOf(name).flatMap((word) => lookUp(UNITS, word.replace(/^ohms$/, "ohm").replace(/^degrees$/, "deg")) ?? []);

/** Puts a unit that stands after a blank to its number, where blanks split the columns. */
export const withUnitsJoined = (line: string): string => line.replace(JOINABLE, "$1");
const JOINABLE = new RegExp(`(\\d)[ \\t]+(?=(?:${UNIT})(?:[ \\t]|$))`, "giu");
