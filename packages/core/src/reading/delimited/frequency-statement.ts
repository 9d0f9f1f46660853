import { type FrequencyUnit, frequencyUnitOf } from "../options/units.js";
import { wordsOf } from "../quantities/name-words.js";
import { roleFromHeader } from "../quantities/role-from-header.js";

/** Words beside a frequency and its unit that state the one to be in the other. */
const STATING = /\b(?:units?|einheit|in|en|unite|unidad|unita|eenheid|enhet|enhed|are|is|all|axis)\b/;

/** The unit of frequency that a line of the preamble states: "frequency unit: MHz", "all frequencies in kHz". */
export function frequencyUnitIn(comments: readonly string[]): FrequencyUnit | null {
  for (const comment of comments) {
    const line = comment.replace(/\bx axis\b/i, "frequency");
    if (line.length > LONGEST_STATEMENT || /\d/.test(line) || !MAY_NAME_UNIT.test(line)) continue;
    const words = wordsOf(line);
    const units = words.map(frequencyUnitOf).filter((unit) => unit !== null);
    const isOfFrequency = words.some(
      (word) => frequencyUnitOf(word) === null && roleFromHeader(word).quantity === "frequency",
    );
    if (units.length === 1 && isOfFrequency && STATING.test(words.join(" "))) return units[0] ?? null;
  }
  return null;
}

const LONGEST_STATEMENT = 80;
/** What each name of a unit has in it: to take all lines apart in words would cost more than the rows do. */
const MAY_NAME_UNIT = /hz|гц|[km]c|cycles/i;

/** What others are counted from (from memory). */
const OFFSET_BASE =
  /(?:offsets?|above|over|cent(?:re|er)(?: freq\w*)?|f0|fc|reference freq\w*|relative to|counted from|mittenfrequenz|versatz|abstand)(?!\p{L})[^\d\n]{0,24}(\d+(?:[.,]\d+)?) ?([kMG]?Hz)(?!\p{L})/iu;

/** The name of a column of offsets with the frequency that they are counted from, where a line of the preamble tells it. */
export function withOffsetBase(name: string, comments: readonly string[]): string {
  const [, digits, base] = comments.map((comment) => OFFSET_BASE.exec(comment)).find((found) => found !== null) ?? [];
  const [unit] = /[kMG]?Hz/i.exec(name) ?? [];
  return digits === undefined || unit === undefined ? name : `Offset from ${digits} ${base} (${unit})`;
}
