import { quote, ReadError } from "../../input/read-error.js";
import { type FrequencyUnit, frequencyUnitOf } from "../options/units.js";

import { numberFromText } from "../text/scan-numbers.js";

export type NetworkParameter = "S" | "Y" | "Z" | "H" | "G";
type NumberFormat = "DB" | "MA" | "RI";

/** What an option line states; what it leaves out has the default of the specification (GHz, S, MA, R 50). */
export interface TouchstoneOptions {
  readonly unit: FrequencyUnit;
  readonly parameter: NetworkParameter;
  readonly format: NumberFormat;
  /** One value, or one per port */
  readonly references: readonly number[];
  readonly unitIsDefault: boolean;
  /** Words that were read as meant although a blank is missing in them ("R75") */
  readonly repaired: readonly string[];
}

/** Keywords of a version 2 file. */
export interface TouchstoneKeywords {
  version: string | null;
  ports: number | null;
  references: number[] | null;
  matrixFormat: "full" | "lower" | "upper";
  frequencies: number | null;
}

const PARAMETERS = ["S", "Y", "Z", "H", "G"];
const FORMATS = ["DB", "MA", "RI"];
const ALLOWED = "Hz, kHz, MHz or GHz; S, Y, Z, H or G; RI, MA or DB; R and a number of ohms";

/**
 * Reads an option line. Parts are known by value, not by place; each may be left out.
 *
 * Source: IBIS Open Forum, Touchstone File Format Specification, Version 2.1 (2024), Option Line, pp. 6-9.
 * @throws ReadError `bad-option-line` for an unknown word, the same kind of part twice, or a reference that is no
 *   positive real number
 */
export function parseOptionLine(text: string, file: string, line: number): TouchstoneOptions {
  const refuse = (found: string, expected: string = ALLOWED): never => {
    throw new ReadError({ code: "bad-option-line", file, line, found: `in the option line, ${found}`, expected });
  };
  const repaired: string[] = [];
  const words = text
    .replace(/^#/, "")
    .trim()
    .split(/\s+/)
    .filter((word) => word !== "")
    .flatMap((word) => {
      const joined = /^r(\d.*|\(.*\))$/i.exec(word);
      if (joined === null) return [word];
      repaired.push(word);
      return ["R", joined[1] as string];
    });
  if (/^#\S/.test(text) && words.length > 0) repaired.push(text.trim().split(/\s+/)[0] as string);
  let unit: FrequencyUnit | null = null;
  let parameter: string | null = null;
  let format: string | null = null;
  let references: number[] | null = null;
  const take = (already: unknown, word: string) => {
    if (already !== null) refuse(`${quote(word)} states the same thing twice`, "each part once");
    return word.toUpperCase();
  };
  for (let i = 0; i < words.length; i++) {
    const word = words[i] as string;
    const upper = word.toUpperCase();
    const asUnit = frequencyUnitOf(word);
    if (asUnit !== null) {
      take(unit, word);
      unit = asUnit;
    } else if (word === "s" && (parameter !== null || words.slice(i + 1).includes("S")))
      refuse('"s" (seconds) is no unit of frequency');
    else if (PARAMETERS.includes(upper)) parameter = take(parameter, word);
    else if (FORMATS.includes(upper)) format = take(format, word);
    else if (upper === "R") {
      take(references, word);
      references = [];
      while (i + 1 < words.length && /^[-+.\d(]/.test(words[i + 1] as string)) {
        references.push(referenceOhms(words[++i] as string, refuse));
      }
      if (references.length === 0) {
        // A lone R at the end is met in files; before other words it is the head of a table.
        if (i + 1 < words.length) refuse('"R" has no number after it');
        references = [50];
      }
    } else if (/^(s|sec|seconds?|dbm|w|mw)$/i.test(word)) refuse(`${quote(word)} is no unit of frequency`);
    else refuse(`${quote(word)} is not known`);
  }
  return {
    unit: unit ?? "GHz",
    parameter: (parameter ?? "S") as NetworkParameter,
    format: (format ?? "MA") as NumberFormat,
    references: references ?? [50],
    unitIsDefault: unit === null,
    repaired,
  };
}

/** Whether a line that begins with # is meant as an option line, and not as a comment of a delimited file. */
export function isOptionLine(text: string, file: string): boolean {
  const words = text
    .replace(/^#/, "")
    .trim()
    .split(/\s+/)
    .filter((word) => word !== "");
  if (words.length === 0) return true;
  const known = words.filter(
    (word) =>
      frequencyUnitOf(word) !== null ||
      [...PARAMETERS, ...FORMATS, "R"].includes(word.toUpperCase()) ||
      /^r?[\d.]+$/i.test(word),
  );
  const isTable = /\br\s+[a-z]/i.test(words.join(" ")) && !words.some((word) => FORMATS.includes(word.toUpperCase()));
  // "Stop: 28000000 Hz" is a setting.
  if (words.some((word) => /[:=]/.test(word))) return false;
  // Where nothing else stands in a file of such a name, one word is all that was needed: "# MHz".
  const fewest = words.length === 1 && isTouchstoneName(file) ? 1 : 2;
  return known.length >= fewest && known.length > words.length / 2 && !isTable;
}

/** Whether a file is named as Touchstone files are: antenna.s1p. */
export const isTouchstoneName = (file: string): boolean => /\.(s\d+p|ts)$/i.test(file);

/** Whether a line states unit, parameter and format, as no comment does. */
export const isWholeOptionLine = (text: string): boolean => /^#\s*[kmg]?hz\s+[syzhg]\s+(?:ri|ma|db)\b/i.test(text);

/** A reference resistance; a complex one written out is accepted where its imaginary part is zero. */
function referenceOhms(word: string, refuse: (found: string, expected: string) => never): number {
  const complexForm = /^\(([^()]*?)([+-]0*\.?0*)[ij]\)$/i.exec(word);
  const value = numberFromText(complexForm?.[1] ?? word);
  if (!(value > 0 && value < Number.POSITIVE_INFINITY))
    refuse(`the reference ${quote(word)} is not usable`, "a positive real number of ohms after R");
  return value;
}
