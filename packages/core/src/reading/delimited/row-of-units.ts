import { frequencyUnitOf } from "../options/units.js";
import { wordsOf } from "../quantities/name-words.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import { splitLine } from "./cells.js";
import type { Dialect } from "./dialect.js";
import { isNumber, namesInLine } from "./names-in-line.js";

const UNIT_WORDS = new Set([
  "hz",
  "khz",
  "mhz",
  "ghz",
  "ohm",
  "ohms",
  "kohm",
  "db",
  "deg",
  "°",
  "rad",
  "%",
  "1",
  "siemens",
  "ms",
  "degrees",
  "gon",
  "w",
  "watt",
  "watts",
]);

/** The cells of a row that holds nothing but units, or null. */
export function asUnits(line: string, dialect: Dialect): readonly string[] | null {
  const cells = splitLine(line, dialect.delimiter).map((cell) =>
    cell.replace(/^[[(]|[\])]$/g, "").replace(/^[-–—]$/, ""),
  );
  const filled = cells.filter((cell) => cell !== "");
  if (filled.length === 1 && cells.length > 1 && frequencyUnitOf(filled[0] ?? "") !== null) return cells;
  if (filled.length === 0 || cells.length > dialect.columns + 1) return null;
  const isUnit = (cell: string) => wordsOf(cell).length === 1 && wordsOf(cell).every((word) => UNIT_WORDS.has(word));
  const hasFrequencyUnit = filled.some((cell) => /^(k|m|g)?hz$/i.test(cell));
  // A frequency's unit alone may be a header that is nothing but units ("MHz;SWR"); two units make a row of units.
  return hasFrequencyUnit && filled.length >= 2 && filled.every(isUnit) ? cells : null;
}

/** Whether a line holds units and nothing else. */
export const isRowOfUnits = (line: string, dialect: Dialect): boolean => asUnits(line, dialect) !== null;

/** The longest that a unit is written: "degrees". */
const LONGEST_UNIT = 8;

/** The same of a row some of whose units are not known, right below the names of its columns. */
export function asUnitsBelow(line: string, above: string, dialect: Dialect, port: number): readonly string[] | null {
  const cells = splitLine(line, dialect.delimiter).map((cell) => cell.replace(/^[[(]|[\])]$/g, ""));
  const frequency = cells.findIndex((cell) => frequencyUnitOf(cell) !== null);
  if (frequency < 0 || cells.some((cell) => cell.length > LONGEST_UNIT || isNumber(cell, dialect))) return null;
  // Names of series may stand above names of readings.
  if (cells.some((cell) => roleFromHeader(cell, port).quantity === "swr")) return null;
  const names = namesInLine(above, dialect, port);
  if (names === null || names.names.length !== cells.length) return null;
  if (names.roles[frequency]?.quantity !== "frequency" || names.roles[frequency].frequencyUnit) return null;
  return cells.map((cell) => (UNIT_WORDS.has(wordsOf(cell).join(" ")) ? cell : ""));
}
