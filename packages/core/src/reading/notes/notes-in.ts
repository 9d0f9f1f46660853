import { NAMED_BANDS } from "../../facts/band-names.js";
import { once } from "../../numbers/once.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { SourceText } from "../text/text.js";
import { linesOf } from "../text/text-lines.js";
import { groupsOf, type NoteLine } from "./note-groups.js";
import { bandTitle, isOfWishes, type NoteBand, type NotedReading, readNoteLine } from "./note-line.js";
import { isInSomeBand, liesIn, type NoteStyle } from "./note-place.js";
import { bandsAcross, bandsDown, type NoteGroup } from "./note-table.js";
import { BAND_WORD, LENGTHY_WORD, plainNote, SWR_WORD } from "./note-words.js";

/** Notes, and the antennas that they tell apart. */
export interface Notes {
  readonly groups: readonly NoteGroup[];
  /** Lines that hold no reading, with what stands in them */
  readonly words: readonly NoteLine[];
  /** Lines of readings in which a place has none */
  readonly partly: readonly NoteLine[];
  /** Line of the first reading */
  readonly first: number;
  /** They name nothing but frequencies with an SWR behind them: notes only where they are no table */
  readonly mayBeTable: boolean;
}

const MOST_LINES = 60;
const MOST_BYTES = 4096;

/**
 * SWR noted by hand, a line or a word for each band ("40m 1.5", "20 m: 2 to 2.5", "80m 3.650 1.8"), stretch ("7-7.2 MHz 1.5")
 * or frequency.
 *
 * @returns null where the text is anything else
 */
export function notesIn(text: SourceText): Notes | null {
  if (text.bytes.length > MOST_BYTES) return null;
  const lines = contentOf(text);
  if (lines.length > MOST_LINES || lines.some((line) => NO_NOTES.test(line.text))) return null;
  const table = bandsAcross(lines) ?? bandsDown(lines);
  if (table?.groups.length === 0) return null;
  const beside = table === null ? [] : lines.filter(({ line }) => !table.lines.includes(line));
  // A few bands and their limits below a sweep are no notes.
  if (table !== null && beside.filter(({ text: line }) => mayBeReading(line)).length <= table.lines.length) {
    const words = beside.map((line) => ({ ...line, readings: null }));
    return { groups: table.groups, words, partly: [], first: Math.min(...table.lines), mayBeTable: false };
  }
  const style = styleOf(lines.map((line) => line.text));
  // What stands behind a comment mark is no reading where others stand without one.
  const areMarked = lines.filter((line) => IS_MARKED.test(line.text)).length;
  const isAside = (line: string) => areMarked < lines.length && IS_MARKED.test(line);
  const notes = underTitles(
    lines,
    lines.map((line) => ({ ...line, ...((isAside(line.text) ? null : readNoteLine(line.text, style)) ?? NOTHING) })),
  );
  const readings = notes.flatMap((note) => note.readings ?? []);
  const others = notes.filter((note) => note.readings === null && mayBeReading(note.text));
  const areMost = readings.length > 0 && others.length <= notes.length / 2 && others.length <= readings.length;
  const nameBands =
    readings.some(({ isAtFrequency }) => !isAtFrequency) ||
    notes.some(({ text: line }) => /^\W*band\b/i.test(line)) ||
    (notes.some(({ text: line }) => bandTitle(line) !== null) && !notes.some((note) => namesFrequency(note)));
  if (!areMost) return null;
  const words = notes.filter((note) => note.readings === null);
  const haveUnits = notes.every((note) => note.readings === null || ENDS_IN_UNIT.test(note.text));
  if (!nameBands && !haveUnits && words.some((note) => namesFrequency(note) && !isSentence(note))) return null;
  const first = notes.find((note) => note.readings !== null)?.line ?? 0;
  const title = words.findLast(({ line }) => line < first);
  if (title !== undefined && isOfWishes(title.text)) return null;
  // Numbers of which nobody says what they are may be powers.
  const isTooGreat = ({ swr, isAtLeast }: NotedReading) =>
    !isAtLeast && swr.some((value) => Number.isFinite(value) && value > GREATEST_NOTED);
  if (readings.some(isTooGreat) && !lines.some(({ text: line }) => namesSwr().test(plainNote(line)))) return null;
  if (words.some((note) => note.line < first && (namesOtherReadings(note.text) || isTableOfLengths(note.text))))
    return null;
  const rows = notes.flatMap((note) => (note.readings ?? []).map((reading) => ({ ...reading, line: note.line })));
  const partly = notes.filter(({ isPartly }) => isPartly);
  const groups = groupsOf(notes) ?? [{ name: "", readings: rows }];
  return { groups, words, partly, first: rows[0]?.line ?? 0, mayBeTable: !nameBands };
}

/** Numbers of metres are no frequencies; and what is for sale, or promised, was not measured (from memory). */
const NO_NOTES =
  /λ|wave ?length|wellenlänge|longueur d.onde|longitud de onda|(?<!\p{L})(?:for sale|prices?|zu verkaufen|verkaufe|à vendre|se vende|vendo|specifications?|leaflet|data ?sheet|catalogue|nothing measured)(?!\p{L})|[€£$] ?\d/iu;

const NOTHING = { readings: null };
const IS_MARKED = /^\s*(?:[#!%;]|\/\/)/;

/** No header of a table of two columns has more words. */
const MOST_WORDS = 5;
const isSentence = ({ text }: NoteLine): boolean => text.trim().split(/\s+/).length > MOST_WORDS;

/** "2.3 @ 14.1 MHz": no row of a table. */
const ENDS_IN_UNIT = /(?:@|(?<!\p{L})(?:at|bei|bij|à|a|en|em|op|vid|ved|på|przy)\s)[^@]*[kMG]?Hz\W*$/iu;

/** Whether a line heads a table. */
const namesFrequency = ({ text, readings }: NoteLine): boolean =>
  readings === null && rolesIn(text).includes("frequency");

/** Frequencies and their SWR below a line that names nothing but their band. */
function underTitles(lines: readonly Omit<NoteLine, "readings">[], notes: readonly NoteLine[]): readonly NoteLine[] {
  let band: NoteBand | null = null;
  return notes.map((note, i) => {
    band = bandTitle(lines[i]?.text ?? "") ?? band;
    if (band === null || note.readings !== null) return note;
    const { readings } = readNoteLine(note.text, { bare: "megahertz" }) ?? NOTHING;
    const { lowHz, highHz } = band;
    const isIn = readings?.every((reading) => reading.lowHz >= 0.95 * lowHz && reading.highHz <= 1.15 * highHz);
    return isIn ? { ...note, readings } : note;
  });
}

/** What numbers without a unit at the start of the lines are. */
function styleOf(lines: readonly string[]): NoteStyle {
  const rows = lines.filter((line) => FIRST_NUMBER.test(line) && !DATE.test(line));
  const starts = rows.map((line) => /^\W*(\d{1,4})(?![.,]?\d)/.exec(line)?.[1] ?? "");
  const isTable = lines.some((line) => !rows.includes(line) && rolesIn(line).includes("frequency"));
  const areBands =
    !isTable && starts.length > 1 && starts.every((start) => NAMED_BANDS.some(({ band }) => band === `${start}m`));
  if (areBands && starts.some((start) => !isInSomeBand(Number(start)))) return { bare: "metres" };
  const [title = ""] = lines.filter((line) => !rows.includes(line));
  const isTitled = namesSwr().test(plainNote(title)) && !/[;\t]/.test(title);
  const arePairs = rows.every((line) => /^\s*[\d.,]+\s+\S/.test(line));
  const areWorded = rows.length > 0 && rows.every((line) => WORDED.test(line) && isInSomeBand(Number.parseFloat(line)));
  return { bare: (isTitled && arePairs) || areWorded || areBarePairs(rows) ? "megahertz" : null };
}

const namesSwr = once(() => new RegExp(`(?<!\\p{L})${SWR_WORD}(?!\\p{L})`, "iu"));

/** More pairs than these are a table. */
const MOST_PAIRS = 12;
const GREATEST_NOTED = 20;

/** Pairs of numbers, each a frequency in another band and an SWR: nothing else comes in such steps. "2:1" is an SWR anywhere. */
function areBarePairs(rows: readonly string[]): boolean {
  const pairs = rows.map((row) =>
    /^\s*(\d+[.,]\d+)(?:\s+|\s*[/|]\s*)(\d+(?:[.,]\d+)?)(\s*(?::|to|zu)\s*1)?\s*$/.exec(row),
  );
  if (pairs.length < 2 || pairs.length > MOST_PAIRS || pairs.some((pair) => pair === null)) return false;
  const numbers = pairs.map((pair) => [pair?.[1], pair?.[2]].map((text) => Number((text ?? "").replace(",", "."))));
  const bands = numbers.map(([mhz = 0]) => NAMED_BANDS.find((band) => liesIn(mhz * 1e6, band))?.band);
  const areSwr = numbers.every(([, swr = 0]) => swr >= 1 && swr <= GREATEST_NOTED);
  const areRatios = pairs.every((pair) => pair?.[3] !== undefined);
  return areSwr && !bands.includes(undefined) && (areRatios || new Set(bands).size === bands.length);
}

/** A frequency, then a word or dots, then an SWR. */
const WORDED = new RegExp(`^\\s*\\d+[.,]\\d+\\s*(?:${SWR_WORD}|\\.{2,}|…|->|→|–|-|:|=)`, "i");
const FIRST_NUMBER = new RegExp(`^\\W*(?:${BAND_WORD}\\W*)?\\d`, "i");
const DATE = /^\W*(?:date\W+)?(?:\d{1,4}[-./]\d{1,2}[-./]\d{1,4}(?!\d| ?c?m(?!\p{L}))|\p{L}+ \d{1,2},? \d{4})/iu;
/** Begins with a number, and is no date. */
export const mayBeReading = (line: string): boolean => /^[\s"']*\d/.test(line) && !DATE.test(line);

/** What the cells of a line name, split as a table is, and at blanks. */
function rolesIn(line: string): readonly string[] {
  const namesIn = (cells: readonly string[]) => cells.map((cell) => roleFromHeader(cell.trim()).quantity);
  const words = namesIn(line.trim().split(/\s+/));
  return [...namesIn(line.split(/[,;|\t]|\s{2,}/)), ...(words.includes("frequency") ? words : [])];
}

/** Whether a line heads a column of heights or lengths, and one of SWR beside it. */
function isTableOfLengths(line: string): boolean {
  const [first = "", ...others] = line.split(/[;,\t|]/).map((cell) => cell.trim());
  return (
    !/\d/.test(first) &&
    STARTS_LENGTHY.test(plainNote(first)) &&
    others.some((cell) => roleFromHeader(cell).quantity === "swr")
  );
}
const STARTS_LENGTHY = new RegExp(`^(?:${LENGTHY_WORD})(?!\\p{L})`, "u");

/** Whether a line names readings other than SWR, as the header of a table does. */
const namesOtherReadings = (line: string): boolean =>
  rolesIn(line).some((name) => !["frequency", "swr", "other"].includes(name));

const PAIR = "\\d+(?:\\.\\d+)?\\s+\\d+(?:\\.\\d+)?(?:\\s*:\\s*1)?";
const listedPairs = once(
  () => new RegExp(`^\\s*(?:\\d{4}-\\d\\d-\\d\\d:?\\s+)?(${PAIR}(?:(?:\\s*[,;|]\\s*|\\s+-\\s+|\\s{2,})${PAIR})+)\\s*$`),
);

/** A line as it stands, or, where several frequencies in bands stand on it with an SWR behind each, those one by one. */
function pairsIn(line: string): readonly string[] {
  const [, listed] = listedPairs().exec(line) ?? [];
  const pairs = (listed ?? "").match(new RegExp(PAIR, "g")) ?? [];
  const areNoted = pairs.every((pair) => {
    const [mhz = 0, swr = 0] = pair.split(/\s+/).map(Number.parseFloat);
    return isInSomeBand(mhz) && swr >= 1 && swr <= GREATEST_NOTED;
  });
  return pairs.length > 1 && areNoted ? pairs.map((pair) => pair.replace(/\s+/, " MHz ")) : [line];
}

const contentOf = (text: SourceText): readonly { readonly text: string; readonly line: number }[] =>
  linesOf(text)
    .texts(0, Number.POSITIVE_INFINITY)
    .flatMap((line, index) => pairsIn(line).map((part) => ({ text: part, line: index + 1 })))
    .filter((line) => line.text.trim() !== "");
