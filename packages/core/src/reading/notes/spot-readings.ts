import { NAMED_BANDS } from "../../facts/band-names.js";
import { quote } from "../../input/read-error.js";
import { grouped } from "../../numbers/grouped.js";
import { reflectionMagnitudeFromSwr, swrFromReflectionMagnitude } from "../../reflection/swr.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { Reading } from "../../sweep/reading.js";
import { DEFAULT_REFERENCE_OHMS, type ReadOptions } from "../options/read-options.js";
import { ledgerOf } from "../points/line-ledger.js";
import type { ReadPoints } from "../points/read-points.js";
import { NO_ROUNDING } from "../points/rounding.js";
import { referenceOf, referenceRead } from "../quantities/reference-statement.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { SourceText } from "../text/text.js";
import { linesOf } from "../text/text-lines.js";
import { bandTitle, type NoteBand, type NotedReading, readNoteLine } from "./note-line.js";
import { isInSomeBand, liesIn, type NoteStyle } from "./note-place.js";
import { antennasAcross, bandsAcross, type NoteGroup } from "./note-table.js";
import { BAND_WORD, SWR_WORD } from "./note-words.js";

/** Notes, and the antennas that they tell apart. */
export interface Notes {
  readonly groups: readonly NoteGroup[];
  /** Lines that hold no reading, with what stands in them */
  readonly words: readonly NoteLine[];
  /** Line of the first reading */
  readonly first: number;
}

/** A line of notes, and the readings in it; null where it holds none. */
interface NoteLine {
  readonly text: string;
  /** In the file, counted from 1 */
  readonly line: number;
  readonly readings: readonly NotedReading[] | null;
}

const MOST_LINES = 60;
const MOST_BYTES = 4096;

/**
 * SWR noted by hand, a line or a word for each band ("40m 1.5", "20 m: 2 to 2.5", "80m 3.650 1.8"), stretch ("7-7.2 MHz 1.5")
 * or frequency.
 *
 * @param places whether notes that name nothing but frequencies count as well: a table does the same
 * @returns null where the text is anything else
 */
export function notesIn(text: SourceText, places: "bands" | "all"): Notes | null {
  if (text.bytes.length > MOST_BYTES) return null;
  const lines = contentOf(text);
  if (lines.length > MOST_LINES) return null;
  const table = bandsAcross(lines) ?? antennasAcross(lines);
  const beside = table === null ? [] : lines.filter(({ line }) => !table.lines.includes(line));
  // A few bands and their limits below a sweep are no notes.
  if (table !== null && beside.filter(({ text: line }) => mayBeReading(line)).length <= table.lines.length) {
    const words = beside.map((line) => ({ ...line, readings: null }));
    return { groups: table.groups, words, first: Math.min(...table.lines) };
  }
  const style = styleOf(lines.map((line) => line.text));
  const notes = underTitles(
    lines,
    lines.map((line) => ({ ...line, readings: readNoteLine(line.text, style) })),
  );
  const readings = notes.flatMap((note) => note.readings ?? []);
  const others = notes.filter((note) => note.readings === null && mayBeReading(note.text));
  const areMost = readings.length > 0 && others.length <= notes.length / 2 && others.length <= readings.length;
  const nameBands =
    readings.some(({ isAtFrequency }) => !isAtFrequency) ||
    notes.some(({ text: line }) => /^\W*band\b/i.test(line)) ||
    (notes.some(({ text: line }) => bandTitle(line) !== null) && !notes.some((note) => namesFrequency(note)));
  if (!areMost || (places === "bands" && !nameBands)) return null;
  const words = notes.filter((note) => note.readings === null);
  if (places === "all" && words.some((note) => namesFrequency(note) && !isSentence(note))) return null;
  const first = notes.find((note) => note.readings !== null)?.line ?? 0;
  if (words.some((note) => note.line < first && namesOtherReadings(note.text))) return null;
  const rows = notes.flatMap((note) => (note.readings ?? []).map((reading) => ({ ...reading, line: note.line })));
  return { groups: [{ name: "", readings: rows }], words, first: rows[0]?.line ?? 0 };
}

/** No header of a table of two columns has more words. */
const MOST_WORDS = 5;
const isSentence = ({ text }: NoteLine): boolean => text.trim().split(/\s+/).length > MOST_WORDS;

/** Whether a line heads a table. */
const namesFrequency = ({ text, readings }: NoteLine): boolean =>
  readings === null && rolesIn(text).includes("frequency");

/** Frequencies and their SWR below a line that names nothing but their band. */
function underTitles(lines: readonly Omit<NoteLine, "readings">[], notes: readonly NoteLine[]): readonly NoteLine[] {
  let band: NoteBand | null = null;
  return notes.map((note, i) => {
    band = bandTitle(lines[i]?.text ?? "") ?? band;
    if (band === null || note.readings !== null) return note;
    const readings = readNoteLine(note.text, { bare: "megahertz" });
    const { lowHz, highHz } = band;
    const isIn = readings?.every((reading) => reading.lowHz >= 0.95 * lowHz && reading.highHz <= 1.15 * highHz);
    return isIn ? { ...note, readings } : note;
  });
}

/** Reads notes of SWR: a reading a place, which a sample at its middle stands for with the highest SWR. */
export function readNotes({ groups, words, first }: Notes, text: SourceText, options: ReadOptions): ReadPoints {
  const findings: Finding[] = [];
  const referenceOhms =
    options.referenceOhms ??
    statedReference(
      words.map((note) => note.text),
      text.file,
      findings,
    );
  const rows = groups.flatMap(({ readings }) => readings);
  if (rows.some(({ isAtFrequency }) => !isAtFrequency)) findings.push(finding("info", "spot-band", {}));
  // Words above the readings head them, as a band does its frequencies; anything below should have been one.
  const isHeading = (line: string) => {
    const band = bandTitle(line);
    return band !== null && rows.some((row) => row.isAtFrequency && liesIn(row.lowHz, band));
  };
  const lost = words.filter(
    ({ text: line, line: number }) => !isHeading(line) && (number > first || mayBeReading(line)),
  );
  findings.push(...lost.map(({ text: line, line: number }) => leftOut(line, number)));
  const names = groups.map(({ name }) => name);
  if (names.length > 1) findings.push(finding("info", "series-told-apart", { column: "the notes", values: names }));
  const perGroup = groups.map(({ readings }) => readingsByPlace(readings, findings));
  const readings = perGroup.flat();
  return {
    format: "delimited",
    series:
      names.length > 1
        ? { names, of: Uint32Array.from(perGroup.flatMap((group, index) => group.map(() => index))) }
        : null,
    readings: perGroup.map((group) => group.map(({ line: _, ...reading }) => reading)),
    points: {
      frequencyHz: Float64Array.from(readings, ({ lowHz, highHz }) => (lowHz + highHz) / 2),
      reflectionMagnitude: Float64Array.from(readings, ({ swrHigh }) => reflectionMagnitudeFromSwr(swrHigh)),
      reflectionReal: null,
      reflectionImaginary: null,
      line: Uint32Array.from(readings, ({ line }) => line),
      ceiling: leastBound(readings, findings),
      areSpots: true,
      repeatNoise: null,
      rounding: NO_ROUNDING,
    },
    ledger: () => {
      const isLost = new Set(lost.map(({ line }) => line));
      const isRead = new Set(rows.map(({ line }) => line));
      const texts = linesOf(text).texts(0, Number.POSITIVE_INFINITY);
      return ledgerOf(texts, (line) => (isLost.has(line) ? "no-reading" : isRead.has(line) ? "data" : null));
    },
    referenceOhms,
    description: "readings of SWR by hand",
    comments: [],
    findings,
  };
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
  const isTitled = new RegExp(`\\b${SWR_WORD}\\b`, "i").test(title) && !/[;\t]/.test(title);
  const arePairs = rows.every((line) => /^\s*[\d.,]+\s+\S/.test(line));
  const areWorded = rows.length > 0 && rows.every((line) => WORDED.test(line) && isInSomeBand(Number.parseFloat(line)));
  return { bare: (isTitled && arePairs) || areWorded || areBarePairs(rows) ? "megahertz" : null };
}

/** More pairs than these are a table. */
const MOST_PAIRS = 12;
const GREATEST_NOTED = 20;

/** Pairs of numbers, each a frequency in another band and an SWR: nothing else comes in such steps. */
function areBarePairs(rows: readonly string[]): boolean {
  const pairs = rows.map((row) => /^\s*(\d+[.,]\d+)\s+(\d+(?:[.,]\d+)?)\s*$/.exec(row));
  if (pairs.length < 2 || pairs.length > MOST_PAIRS || pairs.some((pair) => pair === null)) return false;
  const numbers = pairs.map((pair) => [pair?.[1], pair?.[2]].map((text) => Number((text ?? "").replace(",", "."))));
  const bands = numbers.map(([mhz = 0]) => NAMED_BANDS.find((band) => liesIn(mhz * 1e6, band))?.band);
  const areSwr = numbers.every(([, swr = 0]) => swr >= 1 && swr <= GREATEST_NOTED);
  return areSwr && !bands.includes(undefined) && new Set(bands).size === bands.length;
}

/** A frequency, then a word or dots, then an SWR. */
const WORDED = new RegExp(`^\\s*\\d+[.,]\\d+\\s*(?:${SWR_WORD}|\\.{2,}|…|->|→|–|-|:|=)`, "i");
const FIRST_NUMBER = new RegExp(`^\\W*(?:${BAND_WORD}\\W*)?\\d`, "i");
const DATE = /^\W*(?:date\W+)?(?:\d{1,4}[-./]\d{1,2}[-./]\d{1,4}|\p{L}+ \d{1,2},? \d{4})/iu;
/** Begins with a number, and is no date. */
const mayBeReading = (line: string): boolean => /^[\s"']*\d/.test(line) && !DATE.test(line);

/** What the cells of a line name, split as a table is, and at blanks. */
function rolesIn(line: string): readonly string[] {
  const namesIn = (cells: readonly string[]) => cells.map((cell) => roleFromHeader(cell.trim()).quantity);
  const words = namesIn(line.trim().split(/\s+/));
  return [...namesIn(line.split(/[,;|\t]|\s{2,}/)), ...(words.includes("frequency") ? words : [])];
}

/** Whether a line names readings other than SWR, as the header of a table does. */
const namesOtherReadings = (line: string): boolean =>
  rolesIn(line).some((name) => !["frequency", "swr", "other"].includes(name));

function statedReference(texts: readonly string[], file: string, findings: Finding[]): number {
  const stated = referenceOf(texts, file);
  if (!stated?.isSure) return DEFAULT_REFERENCE_OHMS;
  findings.push(referenceRead(stated));
  return stated.ohms;
}

/** A reading, and the line that it stands in. */
type ReadingInLine = Reading & { readonly line: number };

/** Several readings of one place, which may be from both ends of a band, are one with their range. */
function readingsByPlace(
  rows: readonly (NotedReading & { readonly line: number })[],
  findings: Finding[],
): readonly ReadingInLine[] {
  return [...grouped(rows, ({ place }) => place)].map(([band, noted]) => {
    if (noted.length > 1 || noted.some(({ isRange }) => !isRange)) {
      const params = { band, count: 1, apart: null };
      findings.push(finding("caution", "frequency-repeated", params, { line: noted.at(-1)?.line ?? 0 }));
    }
    const highest = noted.reduce((a, b) => (Math.max(...b.swr) > Math.max(...a.swr) ? b : a));
    const { place, isAtFrequency, lowHz, highHz, isAtLeast, line } = highest;
    const all = noted.flatMap(({ swr }) => swr);
    const isBand = !isAtFrequency && NAMED_BANDS.some(({ band }) => band === place);
    return {
      band: isBand ? place : null,
      lowHz,
      highHz,
      swrLow: Math.min(...all),
      swrHigh: Math.max(...all),
      isAtLeast,
      line,
    };
  });
}

/** ρ from which on a reading means "at least": the least that is marked so. */
function leastBound(readings: readonly ReadingInLine[], findings: Finding[]): number | null {
  const bounds = readings.flatMap(({ isAtLeast, swrHigh }) =>
    isAtLeast && Number.isFinite(swrHigh) ? [reflectionMagnitudeFromSwr(swrHigh)] : [],
  );
  if (bounds.length === 0) return null;
  const least = Math.min(...bounds);
  findings.push(finding("caution", "saturated", { name: null, ceiling: swrFromReflectionMagnitude(least) }));
  return least;
}

const leftOut = (line: string, number: number): Finding =>
  finding("caution", "row-left-out", { firstLine: number, count: 1, text: quote(line.trim()) }, { line: number });

const contentOf = (text: SourceText): readonly { readonly text: string; readonly line: number }[] =>
  linesOf(text)
    .texts(0, Number.POSITIVE_INFINITY)
    .map((line, index) => ({ text: line, line: index + 1 }))
    .filter((line) => line.text.trim() !== "");
