import { once } from "../../numbers/once.js";
import { isReading } from "../options/column-role.js";
import { frequencyUnitOf, UNIT_EXPONENTS } from "../options/units.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { FormTable } from "./form.js";
import { quantityIn } from "./title-words.js";

const NUMBER = "\\d+(?:[.,]\\d+)?";
const UNIT = "[kMG]?Hz";
/** "start 28.0 MHz", "start_hz = 28000000" */
const stating = (words: string): RegExp =>
  new RegExp(
    `(?<!\\p{L})(?:${words})(?:(?!\\p{L})[^\\d\\n]{0,24}(${NUMBER}) ?(${UNIT})(?!\\p{L})|[ _]?[([]?(${UNIT})[)\\]]?\\s*[:=]\\s*(${NUMBER})(?![\\d.,]))`,
    "iu",
  );
const patterns = once(() => ({
  start: stating("start|first|from|begin\\p{L}*"),
  stop: stating("stop|end|last|to"),
  step: stating("steps?|increment|spacing|every"),
}));
const NUMBERS_ALONE = /^[-+]?\d+(?:[.,]\d+)?(?:(?:[\s;]+|,\s+)[-+]?\d+(?:[.,]\d+)?)*(?:\s*;)?$/;
const FEWEST_VALUES = 5;
/** How many readings there are said to be. */
const COUNTED =
  /(?<![\d.,])(\d+) ?(?:(?:data )?points?|pts|samples?|(?:mess)?punkte|puntos|punti|punten|valeurs|werte|values)(?!\p{L})|(?<!\p{L})(?:points|pts|samples|punkte|puntos|punti|punten)\s*[:=]\s*(\d+)(?![\d.,])/iu;

/**
 * Readings without their frequencies, which are told by the first one and the step, or by the first and the last: one behind the other, or
 * in rows below the names of their columns, counted perhaps.
 */
export function evenSteps(content: string): FormTable | null {
  const lines = content.split(/\r\n|\n|\r/).map((line) => line.trim());
  const words = lines.filter((line) => /\p{L}/u.test(line));
  const others = lines.filter((line) => !NUMBERS_ALONE.test(line) && line !== "");
  const rows = lines.filter((line) => NUMBERS_ALONE.test(line)).map(cellsOf);
  const table = inColumns(words, rows) ?? inSequence(words, rows);
  const counted = COUNTED.exec(words.join("\n"))
    ?.slice(1)
    .find((digits) => digits !== undefined);
  if (counted !== undefined && Number(counted) !== table?.rows.length) return null;
  if (table === null || table.rows.length < FEWEST_VALUES || others.length > words.length) return null;
  const told = words.join("\n");
  const [start, stop, step] = (["start", "stop", "step"] as const).map((name) => hertzIn(patterns()[name].exec(told)));
  if (start === null || start === undefined) return null;
  const count = table.rows.length;
  const even = step ?? (stop === null || stop === undefined ? null : (stop - start) / (count - 1));
  if (even === null || even <= 0) return null;
  // Both are told: they have to agree.
  if (step && stop && Math.abs(start + step * (count - 1) - stop) > step / 2) return null;
  return {
    name: "readings in even steps",
    comments: words.filter((line) => line !== table.heading),
    header: ["frequency (Hz)", ...table.names],
    rows: table.rows.map((cells, i) => ({ cells: [String(Math.round(start + even * i)), ...cells], line: null })),
  };
}

const cellsOf = (line: string): readonly string[] => line.split(/\s*[;\t]\s*|,?\s+/).filter((cell) => cell !== "");

interface Readings {
  readonly names: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** The line that names them; null where words above tell what they are */
  readonly heading: string | null;
}

/** Rows as wide as the names in the line above them; a first column that only counts them is left out. */
function inColumns(words: readonly string[], rows: readonly (readonly string[])[]): Readings | null {
  const width = rows[0]?.length ?? 0;
  const splits = [/[;\t]/, /,/, /\s{2,}/, /\s+/];
  const named = words
    .flatMap((heading) => splits.map((split) => ({ heading, names: heading.split(split).map((name) => name.trim()) })))
    .find(({ names }) => names.length === width && names.some((name) => isReading(roleFromHeader(name))));
  if (named === undefined || width < 1 || rows.some((cells) => cells.length !== width)) return null;
  const isCounted = rows.every(([cell], i) => Number(cell) === Number(rows[0]?.[0]) + i);
  const first = width > 1 && isCounted ? 1 : 0;
  return { heading: named.heading, names: named.names.slice(first), rows: rows.map((cells) => cells.slice(first)) };
}

/** Values of the one quantity that the words name, however many stand in a line: as many in each but the last where several do. */
function inSequence(words: readonly string[], rows: readonly (readonly string[])[]): Readings | null {
  const quantity = quantityIn(words);
  const width = rows[0]?.length ?? 0;
  // A few columns below no names may be anything.
  const areColumns = width > 1 && width < FEWEST_IN_LINE && rows.length > 2;
  return quantity === null || areColumns
    ? null
    : { heading: null, names: [quantity], rows: rows.flat().map((cell) => [cell]) };
}

/** Readings that go on from line to line stand at least so many in one. */
const FEWEST_IN_LINE = 4;

function hertzIn(match: RegExpExecArray | null): number | null {
  const [, before, behind, key, keyed] = match ?? [];
  const [digits, unit = ""] = [before ?? keyed, behind ?? key];
  const known = frequencyUnitOf(unit);
  return digits === undefined || known === null ? null : Number(digits.replace(",", ".")) * 10 ** UNIT_EXPONENTS[known];
}
