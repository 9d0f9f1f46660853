import { roleFromHeader } from "../quantities/role-from-header.js";
import { bandTitle, type NoteBand, type NotedReading, swrInCell } from "./note-line.js";
import { BAND_WORD, plainNote } from "./note-words.js";

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
    .split(split)
    .map((cell) => cell.trim());

const IS_BAND_WORD = new RegExp(`^${BAND_WORD}s?:?$`, "u");

/** The band that heads a column: by its number alone where the corner says that these are bands. */
const bandIn = (title: string, corner: string): NoteBand | null =>
  bandTitle(title) ?? (IS_BAND_WORD.test(plainNote(corner)) && /^\d{1,3}$/.test(title) ? bandTitle(`${title}m`) : null);

/** A table of SWR with the bands across its top and an antenna in each row; null where the lines are none. */
export function bandsAcross(lines: readonly NoteText[]): NoteTable | null {
  for (const split of SPLITS) {
    const header = lines.findIndex(({ text }) => {
      const [first = "", ...names] = cellsOf(text, split);
      return names.length >= 2 && bandTitle(first) === null && names.every((name) => bandIn(name, first) !== null);
    });
    const heading = lines[header];
    if (heading === undefined) continue;
    const [corner = "", ...titles] = cellsOf(heading.text, split);
    const bands = titles.map((title) => bandIn(title, corner)) as readonly NoteBand[];
    const rows = lines.slice(header + 1).flatMap(({ text, line }) => {
      const values = (by: RegExp) => cellsOf(text, by);
      const cells = [values(split), values(/,\s*(?!\d\d?(?:,|$))|,/)].find(
        (found) => found.length === bands.length + 1,
      );
      return cells === undefined ? [] : [{ name: cells[0] ?? "", values: cells.slice(1).map(swrInCell), line }];
    });
    const groups = rows.map(
      ({ name, values, line }): NoteGroup => ({
        name,
        readings: bands.flatMap((band, b) => readingOf(band, values[b] ?? null, line)),
      }),
    );
    if (groups.some(({ readings }) => readings.length > 0)) {
      return { groups, lines: [heading.line, ...rows.map(({ line }) => line)] };
    }
  }
  return null;
}

/** What heads a column of several readings of one antenna. */
const ONE_ANTENNA =
  /^(?:low|mid\p{L}*|high|min\p{L}*|max\p{L}*|mean|avg|best|worst|from|to|start|end|unten|mitte|oben|swr|note\p{L}*|remark\p{L}*|comment\p{L}*)$/iu;

/** A table of SWR with a band in each row and an antenna in each of several columns; null where the lines are none. */
export function antennasAcross(lines: readonly NoteText[]): NoteTable | null {
  for (const split of SPLITS) {
    const header = lines.findIndex(({ text }) => {
      const [first = "", ...names] = cellsOf(text, split);
      const isAntenna = (name: string) => {
        const { quantity } = roleFromHeader(name);
        return name !== "" && !ONE_ANTENNA.test(name) && (quantity === "other" || /\s/.test(name));
      };
      return IS_BAND_WORD.test(plainNote(first)) && names.length >= 2 && names.every(isAntenna);
    });
    const heading = lines[header];
    if (heading === undefined) continue;
    const names = cellsOf(heading.text, split).slice(1);
    const rows = lines.slice(header + 1).flatMap(({ text, line }) => {
      const cells = [cellsOf(text, split), cellsOf(text, /,/)].find((found) => found.length === names.length + 1) ?? [];
      const band = bandTitle(cells[0] ?? "");
      return band === null ? [] : [{ band, cells: cells.slice(1), line }];
    });
    if (rows.length === 0) continue;
    const groups = names.map(
      (name, c): NoteGroup => ({
        name,
        readings: rows.flatMap(({ band, cells, line }) => readingOf(band, swrInCell(cells[c] ?? ""), line)),
      }),
    );
    return { groups, lines: [heading.line, ...rows.map(({ line }) => line)] };
  }
  return null;
}

function readingOf(
  { name, lowHz, highHz }: NoteBand,
  value: Pick<NotedReading, "swr" | "isAtLeast" | "isRange"> | null,
  line: number,
): readonly (NotedReading & { readonly line: number })[] {
  return value === null ? [] : [{ place: name, isAtFrequency: false, lowHz, highHz, ...value, line }];
}
