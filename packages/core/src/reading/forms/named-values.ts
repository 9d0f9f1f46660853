import { once } from "../../numbers/once.js";
import { withPlainNumbers } from "../notes/plain-numbers.js";
import type { Quantity } from "../options/column-role.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { SourceText } from "../text/text.js";
import type { FormRow, FormTable } from "./form.js";

/** A number with its unit, and before it the words that name it. */
const UNIT = "(?:[kmg]?hz|[mµu]?S|dBm|m?V|volts?|mW|k?ohms?|k?[Ω\u2126]|db|°|deg(?:rees)?|rad|%|watts?|w)";
const NUMBER = `[<>~≈]?\\s*[+−–-]?\\d+(?:[.,]\\d+)?(?:e[+-]?\\d+)?(?:\\s*:\\s*1(?!\\d))?(?:\\s*${UNIT}(?![\\p{L}\\d]))?`;
/** "48.4 - 60.1j", "0.77∠-11.6°" */
const PART = "\\d+(?:[.,]\\d+)?";
const COMPLEX = `[+−-]?${PART}(?: ?∠ ?[+−-]?${PART} ?°?| ?[+−-] ?(?:[ij] ?${PART}|${PART} ?[ij](?!\\p{L}))(?: ?(?:ohms?|[Ω\u2126]))?)`;
/** A whole word: one that could begin or end anywhere would be tried in every way. */
const NAME = "(?<![\\p{L}|])[|∠ΓρZ\\p{L}][\\p{L}\\d|()_.²∠Γ/-]*(?![\\p{L}\\d|()_.²∠Γ/-])";
/** "(Ω)", "/" */
const UNIT_OF_NAME = "(?:[([][^\\d()[\\]:]{1,12}[)\\]]|\\/)";
const valuePattern = once(
  () =>
    new RegExp(
      `((?:${NAME}(?: ?${NAME}| ?${UNIT_OF_NAME}){0,5}? ?)?)[\\s:=]*(?<![\\p{L}\\d.,])(${COMPLEX}|${NUMBER})(?![\\d])`,
      "giu",
    ),
);
/** Between a value and the next name. */
const fillerPattern = once(
  () =>
    /^(?:[\s,;/·.–—-]|\|(?!\p{L}[\p{L}\d]{0,4}\|)|(?:and|und|et|y|e|en|the|with|is|was|at|bei|a|of|la|el|le|il|lo|der|die|das|de|het)(?!\p{L}))+|[\s:=]+$|(?:\s(?:is|was|of|ist|war|est|es|era|è|é|är|er|var|wynosi|był[ao]?|jest|je|bylo|este|era|van|volt|on|oli|είναι|ήταν|составил[ао]?|составляет|был[ао]?|равен|=|:))+\s*$/giu,
);
const FREQUENCY = /[kmg]?hz$/i;
const FEWEST_RECORDS = 2;
/** Of all lines with a number so many are records, or it is another text. */
const LEAST_SHARE = 0.6;
const MOST_NAMES = 12;

interface NamedValue {
  readonly name: string;
  readonly value: string;
  readonly line: number;
}

/**
 * Values with their names beside them: "f = 7.0 MHz, R = 40, X = -12" or "7.0 MHz: SWR 1.5" line by line, or a value a line and a
 * new record where the first name comes again.
 */
export function namedValues(content: string): FormTable | null {
  const lines = content.split(/\r\n|\n|\r/);
  const values = lines.map((line, i) => valuesIn(line, i + 1));
  const records = recordsOf(values.filter((found) => found.length > 0)).map(frequencyFirst);
  const names = commonNames(records);
  if (names === null) return null;
  const key = keyOf(names);
  const hasThem = (record: readonly NamedValue[]) => keyOf(namesOf(record)) === key;
  const own = records.filter(hasThem).map((record) => inOrder(record, names));
  const used = new Set(own.flatMap((record) => record.map(({ line }) => line)));
  const numbered = values.filter((found) => found.length > 0).length;
  const isUsed = (found: readonly NamedValue[]) => found.some(({ line }) => used.has(line));
  if (own.length < FEWEST_RECORDS || values.filter(isUsed).length < LEAST_SHARE * numbered) return null;
  const rows = own.map(
    (record): FormRow => ({ cells: record.map(({ value }) => value), line: record[0]?.line ?? null }),
  );
  const comments = lines.filter((line, i) => line.trim() !== "" && !used.has(i + 1));
  const last = own.at(-1)?.[0]?.line ?? 0;
  const isAmong = (record: readonly NamedValue[]) => record.length > 1 && (record[0]?.line ?? last) < last;
  const leftOut = records.filter(
    (record, r) =>
      !hasThem(record) && (isOfSweep(namesOf(record)) || (r > 0 && isAmong(record) && hasFrequency(record))),
  );
  return {
    name: "names and values",
    comments,
    header: names,
    rows,
    leftOut: leftOut.flatMap(([value]) => value?.line ?? []),
  };
}

/** What goes out and what comes back, whose unit tells which quantity they are. */
const SENT_OR_BACK: ReadonlySet<Quantity> = new Set<Quantity>([
  "forward-power",
  "reflected-power",
  "forward-voltage",
  "reflected-voltage",
  "reflection",
]);
const OF_POWER = /^(\d+(?:[.,]\d+)?)\s*(dBm|m?V|volts?|m?W|watts?)$/i;

/** How wide a dip is, is no reading at a frequency (from memory). */
const OF_WIDTH =
  /(?<!\p{L})(?:band ?width|bandbreite|largeur de bande|bande passante|ancho de banda|larghezza di banda|largura de banda|bandbreedte|bandbredd|båndbredde|kaistanleveys|szerokość pasma|šířka pásma|полоса|смуга|εύρος ζώνης)(?!\p{L})/iu;

function valuesIn(line: string, number: number): readonly NamedValue[] {
  if (OF_WIDTH.test(line)) return [];
  if (!/\p{L}/u.test(line) || !/\d/.test(line)) return [];
  let waiting = "";
  return [...inSigns(line).matchAll(valuePattern())].map(([, printed = "", value = ""]) => {
    const name = printed.replace(fillerPattern(), "").trim();
    // "SWR at 7.1 MHz = 1.5": the name is that of the next value.
    const isFrequency = FREQUENCY.test(value) && roleFromHeader(name).quantity !== "frequency";
    const known = isFrequency ? "frequency" : knownEndOf(name) || waiting;
    const [, digits = value.trim(), unit = ""] = SENT_OR_BACK.has(roleFromHeader(known).quantity)
      ? (OF_POWER.exec(value.trim()) ?? [])
      : [];
    // "forward 4.57 V" is no power.
    const own = unit === "" ? known : `${known} (${unit})`;
    waiting = isFrequency ? name : "";
    return { name: own, value: digits, line: number };
  });
}

/** A line with signs for the units and the signs that it spells out, and one blank where there are several. */
const inSigns = (line: string): string =>
  withPlainNumbers(line)
    .replace(/\s+/g, " ")
    .replace(/(?<=\d)['’](?=\d{3})/g, "")
    .replace(/(?<![\d.,])([1-9]\d{0,2}(?: \d{3})+)(?=(?:[.,]\d+)? ?[kMG]?Hz)/g, (digits) => digits.replaceAll(" ", ""))
    // "SWR 1:1,7"
    .replace(/(?<![\d.,:])1 ?: ?(\d+[.,]\d+)(?![\d:])/g, "$1:1")
    // "Z(3500 kHz) = ", "(32.0-68.4j)", "0.651<-48.8°"
    .replace(/(?<!\p{L})(\p{L}\w{0,8})\((\d[\d.,]* ?[kMG]?Hz)\)(?= ?=)/gu, "$2 $1")
    .replace(/\(([+−-]?\d[^()]*[ij∠<][^()]*)\)/g, "$1")
    .replace(/(?<=\d) ?(?:<|\/_)(?= ?[+−-]?\d[\d.,]* ?°)/g, "∠")
    // "X=38.26 cap.", "X 7 neg."
    .replace(
      /(?<![\d.,+−-])(\d+(?:[.,]\d+)?(?: ?(?:ohms?|[Ω\u2126]))?) ?\(?(?:cap|kap|neg)(?:\p{L}*(?!\p{L})\.?)\)?/giu,
      "-$1",
    )
    .replace(/(?<=\d(?: ?(?:ohms?|[Ω\u2126]))?) ?\(?ind(?:u[ck]t\p{L}*)?(?!\p{L})\.?\)?/giu, "")
    .replace(/(?<=\d ?)(mega|kilo)hertz(?!\p{L})/giu, (_, prefix: string) => (/^m/i.test(prefix) ? "MHz" : "kHz"))
    .replace(/(?<=\d ?)decibels?(?!\p{L})/giu, "dB")
    .replace(/(?<=\d) ?(?:ohms?|[Ω\u2126])? ?(?:at|@) (?=[+−-]?\d+(?:[.,]\d+)? ?(?:deg|°))/giu, "∠")
    .replace(/(?<=\p{L} )(?:minus|plus) (?=\d)/giu, (word) => (/^m/i.test(word) ? "-" : "+"));

/** The last words of a name that are one, where the whole is not: "INFO sweep f_khz". */
function knownEndOf(name: string): string {
  const isKnown = (part: string) => roleFromHeader(part).quantity !== "other";
  const words = name.split(" ");
  const start = isKnown(name) ? 0 : words.findIndex((_, i) => isKnown(words.slice(i).join(" ")));
  return words.slice(Math.max(0, start)).join(" ");
}

const namesOf = (record: readonly NamedValue[]): readonly string[] => record.map(({ name }) => name.toLowerCase());

/** The same names in whatever order. */
const keyOf = (names: readonly string[]): string => names.toSorted().join("\n");

/** Each line as a record, or, where lines hold one value each, all up to where the first name comes again. */
function recordsOf(lines: readonly (readonly NamedValue[])[]): readonly (readonly NamedValue[])[] {
  const several = lines.filter((values) => values.length > 1).length;
  if (several > lines.length / 2) return lines;
  const values = lines.flat();
  const countOf = (wanted?: string) => values.filter(({ name }) => name === wanted).length;
  const frequency = values.find(({ name }) => roleFromHeader(name).quantity === "frequency")?.name;
  // "Point 1" may stand above each of them.
  const first = countOf(values[0]?.name) === countOf(frequency) ? values[0]?.name : frequency;
  const records: NamedValue[][] = [];
  for (const value of values) {
    if (value.name === first) records.push([]);
    records.at(-1)?.push(value);
  }
  return records;
}

/** "SWR 1.5 at 7.1 MHz" and "at 7.1 MHz an SWR of 1.5" hold the same. */
const frequencyFirst = (record: readonly NamedValue[]): readonly NamedValue[] => {
  const isFrequency = ({ name }: NamedValue) => name === "frequency";
  return [...record.filter(isFrequency), ...record.filter((value) => !isFrequency(value))];
};

/** A record with its values in the order of some names, each once. */
const inOrder = (record: readonly NamedValue[], names: readonly string[]): readonly NamedValue[] =>
  new Set(names).size < names.length
    ? record
    : names.flatMap((wanted) => record.find(({ name }) => name.toLowerCase() === wanted) ?? []);

/** The names that most records have, if they are of a sweep. */
function commonNames(records: readonly (readonly NamedValue[])[]): readonly string[] | null {
  const counts = new Map<string, number>();
  for (const record of records) {
    const key = keyOf(namesOf(record));
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const [best] = [...counts].sort(([, a], [, b]) => b - a);
  const first = records.find((record) => keyOf(namesOf(record)) === best?.[0]);
  const names = first === undefined ? [] : namesOf(first);
  return isOfSweep(names) && names.length <= MOST_NAMES ? names : null;
}

const hasFrequency = (record: readonly NamedValue[]): boolean =>
  namesOf(record).some((name) => roleFromHeader(name).quantity === "frequency");

/** Whether there are a frequency and a reading among some names. */
function isOfSweep(names: readonly string[]): boolean {
  const roles = names.map((name) => roleFromHeader(name).quantity);
  return roles.includes("frequency") && roles.some((role) => role !== "frequency" && role !== "other");
}

/** What tells the phase of a reflection, and no note of an SWR has beside it. */
const PHASES: ReadonlySet<Quantity> = new Set<Quantity>([
  "reactance",
  "reactance-magnitude",
  "susceptance",
  "impedance-angle",
  "reflection-angle",
  "reflection-imaginary",
  "angle",
]);

/** Whether a table tells more than an SWR at some frequencies. */
const tellsPhase = ({ header }: FormTable): boolean => header.some((name) => PHASES.has(roleFromHeader(name).quantity));

/** Values with their names beside them, in a text of few lines, that tell more than an SWR; null where it has none. */
export function readingsWithNames(text: SourceText): FormTable | null {
  const table = namedValues(text.decode(0, text.bytes.length));
  return table !== null && tellsPhase(table) ? table : null;
}
