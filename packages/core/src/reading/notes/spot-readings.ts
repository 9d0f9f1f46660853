import { NAMED_BANDS } from "../../facts/band-names.js";
import { quote } from "../../input/read-error.js";
import { grouped } from "../../numbers/grouped.js";
import { reflectionMagnitudeFromSwr, swrFromReflectionMagnitude } from "../../reflection/swr.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { DEFAULT_REFERENCE_OHMS, type ReadOptions } from "../options/read-options.js";
import { ledgerOf } from "../points/line-ledger.js";
import type { ReadPoints } from "../points/read-points.js";
import { NO_ROUNDING } from "../points/rounding.js";
import { referenceOf, referenceRead } from "../quantities/reference-statement.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { SourceText } from "../text/text.js";
import { linesOf } from "../text/text-lines.js";
import { bandTitle, type NoteBand, type NotedReading, readNoteLine } from "./note-line.js";
import { liesIn, type NoteStyle } from "./note-place.js";
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
  if (places === "all" && words.some(namesFrequency)) return null;
  if (words.some((note) => namesOtherReadings(note.text))) return null;
  const rows = notes.flatMap((note) => (note.readings ?? []).map((reading) => ({ ...reading, line: note.line })));
  return { groups: [{ name: "", readings: rows }], words, first: rows[0]?.line ?? 0 };
}

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

/** Reads notes of SWR. One that names its band or a stretch is put at the middle of it; of several the highest counts. */
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
  if (rows.some(({ isAtFrequency }) => !isAtFrequency)) findings.push(finding("caution", "spot-band", {}));
  // Words above the readings head them; anything below should have been one.
  const lost = words.filter(
    ({ text: line, line: number }) => bandTitle(line) === null && (number > first || mayBeReading(line)),
  );
  findings.push(...lost.map(({ text: line, line: number }) => leftOut(line, number)));
  const names = groups.map(({ name }) => name);
  if (names.length > 1) findings.push(finding("info", "series-told-apart", { column: "the notes", values: names }));
  const perGroup = groups.map(({ readings }) => highestOf(readings, findings));
  const readings = perGroup.flat();
  return {
    format: "delimited",
    series:
      names.length > 1
        ? { names, of: Uint32Array.from(perGroup.flatMap((group, index) => group.map(() => index))) }
        : null,
    points: {
      frequencyHz: Float64Array.from(readings, ({ frequencyHz }) => frequencyHz),
      reflectionMagnitude: Float64Array.from(readings, ({ magnitude }) => magnitude),
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
  if (areBands && starts.some((start) => !isNearBand(Number(start)))) return { bare: "metres" };
  const [title = ""] = lines.filter((line) => !rows.includes(line));
  const isTitled = new RegExp(`\\b${SWR_WORD}\\b`, "i").test(title) && !/[,;\t]/.test(title);
  const arePairs = rows.every((line) => /^\s*[\d.,]+\s+\S/.test(line));
  const areWorded = rows.length > 0 && rows.every((line) => WORDED.test(line) && isNearBand(Number.parseFloat(line)));
  return { bare: (isTitled && arePairs) || areWorded ? "megahertz" : null };
}

/** Whether megahertz lie in a band as wide as it is anywhere. */
const isNearBand = (mhz: number): boolean => NAMED_BANDS.some((band) => liesIn(mhz * 1e6, band));

/** A frequency, then a word or dots, then an SWR. */
const WORDED = new RegExp(`^\\s*\\d+[.,]\\d+\\s*(?:${SWR_WORD}|\\.{2,}|…|->|→|–|-|:)`, "i");
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

interface SpotReading {
  readonly frequencyHz: number;
  readonly magnitude: number;
  readonly isAtLeast: boolean;
  readonly line: number;
}

/** Of readings of one place, which may be from both ends of a band, the highest counts. */
function highestOf(
  rows: readonly (NotedReading & { readonly line: number })[],
  findings: Finding[],
): readonly SpotReading[] {
  return [...grouped(rows, ({ place }) => place)].map(([place, readings]) => {
    const highest = readings.reduce((a, b) => (Math.max(...b.swr) > Math.max(...a.swr) ? b : a));
    const count = readings.reduce((sum, { swr }) => sum + swr.length, 0);
    const last = readings.at(-1) ?? highest;
    if (count > 1) {
      findings.push(
        finding("caution", "frequency-repeated", { band: place, count: 1, apart: null }, { line: last.line }),
      );
    }
    return {
      frequencyHz: (highest.lowHz + highest.highHz) / 2,
      magnitude: reflectionMagnitudeFromSwr(Math.max(...highest.swr)),
      isAtLeast: highest.isAtLeast,
      line: highest.line,
    };
  });
}

/** ρ from which on a reading means "at least": the least that is marked so. */
function leastBound(readings: readonly SpotReading[], findings: Finding[]): number | null {
  const bounds = readings.filter(({ isAtLeast, magnitude }) => isAtLeast && magnitude < 1);
  if (bounds.length === 0) return null;
  const least = Math.min(...bounds.map(({ magnitude }) => magnitude));
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
