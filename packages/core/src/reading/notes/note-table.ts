import { roleFromHeader } from "../quantities/role-from-header.js";
import { columnsOf, groupsIn, placeIn, type Values } from "./note-columns.js";
import { bandTitle, type NoteBand, type NotedReading, swrInCell } from "./note-line.js";
import { isInSomeBand, type Place, placeNamedBy, placeOfFrequency } from "./note-place.js";
import { BAND_WORD, METRES_WORD, plainNote } from "./note-words.js";

/** Readings of one antenna, or of one occasion, and the lines that they stand in, counted from 1. */
export interface NoteGroup {
  readonly name: string;
  readonly readings: readonly (NotedReading & { readonly line: number })[];
}

/** The groups of a table, and the lines of the text that belong to it. */
export interface NoteTable {
  readonly groups: readonly NoteGroup[];
  readonly lines: readonly number[];
}

interface NoteText {
  readonly text: string;
  readonly line: number;
}

const SPLITS: readonly RegExp[] = [/\t/, /;/, /\|/, /,(?!\d)|,(?=\d{1,4}[ -]?c?m)/i, / {2,}/, / +/];

/** Cells of a line, without the empty ones that frame it. */
const cellsOf = (line: string, split: RegExp): readonly string[] =>
  line
    .replace(split.source === "\\|" ? /^\s*\|(.*)\|\s*$/ : /^$/, "$1")
    .trimEnd()
    .replace(split.source.startsWith(" ") ? /^ +/ : /^$/, "")
    .split(split)
    .map((cell) => cell.trim().replace(/^"(.*)"$/, "$1"));

/** Cells of a row under so many columns: those that it lacks at its end are empty; null where it has only one, or more than there are. */
function underColumns(cells: readonly string[], count: number, split: RegExp): readonly string[] | null {
  if (cells.length > count) return null;
  const mayLack = cells.length > 1 && !split.source.startsWith(" ");
  if (cells.length < count && !mayLack) return null;
  return [...cells, ...Array<string>(count - cells.length).fill("")];
}

/** Cells without an empty one at the end, where there is one more than so many. */
const withoutEnd = (cells: readonly string[], count: number): readonly string[] =>
  cells.length === count + 1 && cells.at(-1) === "" ? cells.slice(0, -1) : cells;

const IS_BAND_WORD = new RegExp(`^${BAND_WORD}s?(?: ?[([]?(?:in |en )?${METRES_WORD}[)\\]]?)?:?$`, "u");

/** The band, or the frequency in one, that heads a column: a band by its number alone where the corner says that these are bands. */
const bandIn = (title: string, corner: string): NoteBand | null =>
  bandTitle(title) ??
  frequencyTitle(title) ??
  (IS_BAND_WORD.test(plainNote(corner)) && /^\d{1,3}$/.test(title) ? bandTitle(`${title}m`) : null);

/** "3.65 MHz" */
function frequencyTitle(title: string): Place | null {
  const [, megahertz = ""] = /^(\d+(?:[.,]\d+)?) ?MHz$/i.exec(title) ?? [];
  const mhz = Number(megahertz.replace(",", "."));
  if (/^\d+$/.test(megahertz)) return placeNamedBy(mhz * 1e6);
  return megahertz !== "" && isInSomeBand(mhz) ? placeOfFrequency(Number((mhz * 1e6).toPrecision(12))) : null;
}

/** A table of SWR with the bands across its top and an antenna in each row; null where the lines are none, without groups where its rows are of something else. */
export function bandsAcross(lines: readonly NoteText[]): NoteTable | null {
  for (const split of SPLITS) {
    const titlesIn = (text: string) => {
      const cells = cellsOf(text, split);
      return withoutEnd(cells, cells.length - 1);
    };
    const header = lines.findIndex(({ text }) => {
      const [first = "", ...names] = titlesIn(text);
      return names.length >= 2 && names.every((name) => bandIn(name, first) !== null);
    });
    const heading = lines[header];
    if (heading === undefined) continue;
    const [corner = "", ...others] = titlesIn(heading.text);
    // Heights above a table of frequencies look like bands.
    const below = cellsOf(lines[header + 1]?.text ?? "", split)[0] ?? "";
    if ([corner, below].some((name) => roleFromHeader(name).quantity === "frequency")) continue;
    // Without names of antennas below it the corner is a band as well.
    const isNamed = bandTitle(corner) === null;
    const titles = isNamed ? others : [corner, ...others];
    const bands = titles.map((title) => bandIn(title, corner)) as readonly NoteBand[];
    const rows = lines.slice(header + 1).flatMap(({ text, line }) => {
      const values = (by: RegExp) => cellsOf(text, by);
      const cells = [values(split), values(/,\s*(?!\d\d?(?:,|$))|,/)]
        .map((found) => withoutEnd(isNamed ? found : ["", ...found], bands.length + 1))
        .find((found) => found.length === bands.length + 1);
      return cells === undefined ? [] : [{ name: cells[0] ?? "", cells: cells.slice(1), line }];
    });
    if (rows.length > 0 && rows.every(({ name }) => bandTitle(name) !== null)) continue;
    const kinds = columnsOf(rows.map(({ name }) => name)).map(({ kind }) => kind);
    const ofAntennas = rows.filter(({ name }, r) => kinds[r] === "swr" || kinds[r] === "antenna" || name === "");
    const groups = ofAntennas.map(
      ({ name, cells, line }): NoteGroup => ({
        name,
        readings: bands.flatMap((band, b) => readingOf(band, swrInCell(cells[b] ?? "", band), line)),
      }),
    );
    const isOfOther = rows.length > 0 && groups.length === 0;
    if (isOfOther || groups.some(({ readings }) => readings.length > 0))
      return { groups, lines: [heading.line, ...rows.map(({ line }) => line)] };
  }
  return null;
}

/**
 * A table with a band in each row, and columns of what their names say: an SWR or several of one antenna, an antenna each, or forward and
 * reflected power; null where the lines are none. Without groups where none of its columns is an SWR.
 */
export function bandsDown(lines: readonly NoteText[]): NoteTable | null {
  for (const split of SPLITS) {
    const header = lines.findIndex(({ text }) => {
      const [first = "", ...names] = cellsOf(text, split);
      return IS_BAND_WORD.test(plainNote(first)) && names.length > 0;
    });
    const heading = lines[header];
    if (heading === undefined) continue;
    const [corner = "", ...names] = cellsOf(heading.text, split);
    const columns = columnsOf(names);
    let areBare = true;
    let band: NoteBand | null = null;
    const rows = lines.slice(header + 1).flatMap(({ text, line }) => {
      const whole = cellsOf(text, split);
      const cells =
        underColumns(whole, columns.length + 1, split) ??
        underColumns(cellsOf(text, /,/), columns.length + 1, /,/) ??
        [];
      // Readings of a band that do not fit the columns are told as such; other words below a table are not.
      if (cells.length === 0 && bandIn(whole[0] ?? "", corner) !== null) return [];
      // A band may be written once for several rows.
      const title = cells[0] ?? "";
      band = bandIn(title, corner) ?? (title === "" ? band : null);
      areBare &&= /^\d*$/.test(title);
      return band === null ? [] : [{ band, cells: cells.slice(1), line }];
    });
    if (rows.length === 0) continue;
    const all = [heading.line, ...rows.map(({ line }) => line)];
    const groups = groupsIn(columns, areBare);
    if (groups === null) continue;
    const frequency = columns.findIndex(({ kind }) => kind === "frequency");
    // Many frequencies of a band are a sweep.
    if (groups.length === 0 || (frequency >= 0 && rows.length > MOST_SPOTS)) return { groups: [], lines: all };
    const placed = rows.map((row) => {
      const at = frequency < 0 ? null : placeIn(row.cells[frequency] ?? "", columns[frequency]?.unit ?? null);
      return { ...row, place: at ?? row.band };
    });
    return {
      groups: groups.map(({ name, valuesIn }) => ({
        name,
        readings: placed.flatMap(({ place, band, cells, line }) => readingOf(place, valuesIn(cells, band), line)),
      })),
      lines: all,
    };
  }
  return null;
}

/** More rows with frequencies than these are a sweep. */
const MOST_SPOTS = 12;

function readingOf(
  { name, lowHz, highHz, isAtFrequency = false }: NoteBand & Partial<Pick<Place, "isAtFrequency">>,
  value: Values | null,
  line: number,
): readonly (NotedReading & { readonly line: number })[] {
  return value === null ? [] : [{ place: name, isAtFrequency, lowHz, highHz, ...value, line }];
}
