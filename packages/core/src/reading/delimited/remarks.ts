import { ABOUT_WORD } from "../notes/note-words.js";
import type { DecimalMark } from "../options/read-options.js";
import { frequencyUnitOf, UNIT_EXPONENTS } from "../options/units.js";
import { numberFromText } from "../text/scan-numbers.js";
import type { CellValue } from "./cells.js";

const LONGEST = 80;
const ABOUT = new RegExp(`^(?:${ABOUT_WORD})\\s*`, "i");
const NUMBER = String.raw`[+−-]?\d+(?:[.,]\d+)?`;
/** What people put behind a number: marks, brackets, a note. */
const BEHIND = /^(?:\s*[*?!†]+|\s*\([^()]*\)|\s*(?:#|<-|\/\/).*|\s+\p{L}{3,}[\p{L}\s]*)+$/u;
/** Another unit changes the number, and is no remark. */
const UNIT = /^\s*(?:[kmg]?hz|[kmg]?ohms?|deg|rad|dbm?|volts?|watts?)\b/i;

/**
 * Reads a cell that holds a number and a remark, as people leave them in a table: "~2.3", "3.4*", "1.6 (wind)", "10+", "<1.2",
 * "(22)" for a negative one, and a decimal comma among points.
 *
 * @returns null where the cell holds anything else
 */
export function remarkedNumber(cell: string, decimal: DecimalMark, isComma: boolean): CellValue | null {
  if (cell.length > LONGEST) return null;
  const negative = /^\(\s*(\d+(?:[.,]\d+)?)\s*\)$/.exec(cell);
  if (negative !== null) return inDialect(`-${negative[1]}`, decimal, isComma);
  const text = cell.replace(ABOUT, "");
  const match = new RegExp(`^(<=?|≤)?\\s*(${NUMBER})(\\+)?`).exec(text);
  if (match === null) return null;
  const rest = text.slice(match[0].length);
  if (rest !== "" && (UNIT.test(rest) || !BEHIND.test(rest))) return null;
  const value = inDialect(match[2] ?? "", decimal, isComma);
  return value !== null && match[3] !== undefined ? { kind: "at-least", value: value.value } : value;
}

/** A frequency with a unit of its own, "14.025 MHz", in Hz; null for anything else. */
export function frequencyInCell(cell: string, decimal: DecimalMark): number | null {
  const match = /^([\d.,]+)\s*([kmg]?hz)$/i.exec(cell);
  const unit = frequencyUnitOf(match?.[2] ?? "");
  if (match === null || unit === null) return null;
  const hz = numberFromText(match[1] ?? "", UNIT_EXPONENTS[unit], decimal === "comma" ? "," : ".");
  return Number.isFinite(hz) ? hz : null;
}

function inDialect(
  printed: string,
  decimal: DecimalMark,
  isComma: boolean,
): { readonly kind: "number"; readonly value: number } | null {
  const own = numberFromText(printed.replace("−", "-"), 0, decimal === "comma" ? "," : ".");
  // A comma that does not split cells is a slip of the pen, or of a spreadsheet, for the decimal point.
  const value = Number.isNaN(own) && decimal === "point" && !isComma ? numberFromText(printed, 0, ",") : own;
  return Number.isFinite(value) ? { kind: "number", value } : null;
}
