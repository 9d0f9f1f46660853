import { swrFromReflectionMagnitude } from "../../reflection/swr.js";
import { UNIT_EXPONENTS } from "../options/units.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import { bandTitle, type NoteBand, type NotedReading, swrInCell } from "./note-line.js";
import { type Place, placeOfFrequency } from "./note-place.js";
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
      return cells === undefined ? [] : [{ name: cells[0] ?? "", cells: cells.slice(1), line }];
    });
    const ofAntennas = rows.filter(({ name }) => ["swr", "antenna"].includes(kindOf(name)) || name === "");
    const groups = ofAntennas.map(
      ({ name, cells, line }): NoteGroup => ({
        name,
        readings: bands.flatMap((band, b) => readingOf(band, swrInCell(cells[b] ?? "", band), line)),
      }),
    );
    if (rows.length > 0 && groups.length === 0)
      return { groups, lines: [heading.line, ...rows.map(({ line }) => line)] };
    if (groups.some(({ readings }) => readings.length > 0)) {
      return { groups, lines: [heading.line, ...rows.map(({ line }) => line)] };
    }
  }
  return null;
}

/** What a column of a table with a band in each row holds, by its name. */
type ColumnKind =
  | "swr"
  | "frequency"
  | "end of the band"
  | "antenna"
  | "forward"
  | "reflected"
  /** A quantity that a sweep has, such as R: no table of SWR */
  | "of a sweep"
  | "other";

/** Several readings of one antenna, by where on the band or which of them they are. */
const PART_OF_BAND =
  /(?<!\p{L})(?:low(?:er|est)?|mid\p{L}*|high(?:er|est)?|cent(?:re|er)|edge|bottom|top|upper|min\p{L}*|max\p{L}*|mean|avg|best|worst|from|to|start|end|von|bis|unten|mitte|oben|anfang|ende|d[ée]but|milieu|fin|bas|haut|inicio|medio|final|inizio|centro|fine|begin|midden|eind)(?!\p{L})/giu;
/** What is noted beside an SWR. */
const BESIDE_SWR =
  /(?<!\p{L})(?:note\p{L}*|remark\p{L}*|comment\p{L}*|date|time|height|length|power|gain|turns?|taps?|s-?units?|s-?meter|f\/b|temp\p{L}*|weather|wind|rain|limit|allowed|wanted|höhe|länge|leistung|gewinn|windungen|datum|bemerkung\p{L}*|hauteur|longueur|puissance|altura|longitud|potencia|altezza|lunghezza|potenza)(?!\p{L})|(?:^|[\s([])(?:[mk]?W|[ck]?m|ft|dB[id]?|[µun]H|[pn]F|[mk]?V|m?A|%|°C?)[)\]]?$/iu;
const FORWARD = /^(?:vor|vorlauf|vorwärts)(?!\p{L})/iu;
const REFLECTED = /^(?:ref|rück|rücklauf)(?!\p{L})/iu;

function kindOf(name: string): ColumnKind {
  const { quantity } = roleFromHeader(name);
  if (quantity === "forward-power" || FORWARD.test(name)) return "forward";
  if (quantity === "reflected-power" || REFLECTED.test(name)) return "reflected";
  if (BESIDE_SWR.test(name)) return "other";
  const rest = name.replace(PART_OF_BAND, " ").trim();
  if (rest !== name.trim() && (rest === "" || roleFromHeader(rest).quantity === "swr")) return "end of the band";
  if (quantity === "swr" || quantity === "frequency") return quantity;
  return quantity === "other" || isNamedSwr(name) ? "antenna" : "of a sweep";
}

/** "SWR 6 m", which is a length to whoever reads units. */
const isNamedSwr = (name: string): boolean => name.split(/\s+/).some((word) => roleFromHeader(word).quantity === "swr");

type Values = Pick<NotedReading, "swr" | "isAtLeast" | "isRange">;
/** The values of a row, from its cells. */
type ValuesIn = (cells: readonly string[], band: NoteBand) => Values | null;

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
    const names = cellsOf(heading.text, split).slice(1);
    const rows = lines.slice(header + 1).flatMap(({ text, line }) => {
      const cells = [cellsOf(text, split), cellsOf(text, /,/)].find((found) => found.length === names.length + 1) ?? [];
      const band = bandTitle(cells[0] ?? "");
      return band === null ? [] : [{ band, cells: cells.slice(1), line }];
    });
    if (rows.length === 0) continue;
    const kinds = names.map(kindOf);
    const all = [heading.line, ...rows.map(({ line }) => line)];
    if (kinds.includes("of a sweep")) return { groups: [], lines: all };
    const frequency = kinds.indexOf("frequency");
    if (frequency >= 0) {
      // Many frequencies of a band are a sweep.
      if (rows.length > MOST_SPOTS) return { groups: [], lines: all };
      const swr = kinds.indexOf("swr");
      if (swr < 0 || kinds.lastIndexOf("swr") !== swr) continue;
      const readings = rows.flatMap(({ band, cells, line }) =>
        readingOf(
          placeIn(cells[frequency] ?? "", names[frequency] ?? "") ?? band,
          swrInCell(cells[swr] ?? "", band),
          line,
        ),
      );
      return { groups: [{ name: "", readings }], lines: all };
    }
    const groups = groupsIn(kinds, names);
    if (groups === null) continue;
    return {
      groups: groups.map(({ name, valuesIn }) => ({
        name,
        readings: rows.flatMap(({ band, cells, line }) => readingOf(band, valuesIn(cells, band), line)),
      })),
      lines: all,
    };
  }
  return null;
}

/** More rows with frequencies than these are a sweep. */
const MOST_SPOTS = 12;

/** The frequency in a cell, in the unit that its column names or that its size tells; null where there is none. */
function placeIn(cell: string, name: string): Place | null {
  const value = Number(cell.replace(",", "."));
  if (!(value > 0)) return null;
  const unit = roleFromHeader(name).frequencyUnit ?? (value >= 1e6 ? "Hz" : value >= 1000 ? "kHz" : "MHz");
  return placeOfFrequency(Number((value * 10 ** UNIT_EXPONENTS[unit]).toPrecision(12)));
}

/** Which columns make a reading of which antenna; null where that is read line by line as well. */
function groupsIn(
  kinds: readonly ColumnKind[],
  names: readonly string[],
): readonly { readonly name: string; readonly valuesIn: ValuesIn }[] | null {
  const places = (kind: ColumnKind) => kinds.flatMap((each, c) => (each === kind ? [c] : []));
  const [forward, reflected] = [places("forward")[0], places("reflected")[0]];
  if (forward !== undefined && reflected !== undefined)
    return [{ name: "", valuesIn: (cells) => fromPowers(cells[forward] ?? "", cells[reflected] ?? "") }];
  // Beside ends of a band a name that is not known is another place on it.
  const parts = places("end of the band").length === 0 ? [] : kinds.flatMap((kind, c) => (kind === "other" ? [] : [c]));
  if (parts.length > 0)
    return [{ name: "", valuesIn: (cells, band) => together(parts.map((c) => swrInCell(cells[c] ?? "", band))) }];
  const [swr, ...more] = places("swr");
  const antennas = places("antenna");
  const of = (c: number, name: string) => {
    const valuesIn: ValuesIn = (cells, band) => swrInCell(cells[c] ?? "", band);
    return { name, valuesIn };
  };
  if (swr !== undefined) return more.length > 0 || names.length === 1 ? null : [of(swr, "")];
  if (antennas.length === 1 && names.length === 1) return null;
  return antennas.map((c) => of(c, antennas.length === 1 ? "" : (names[c] ?? "")));
}

/** Several SWR of one band. */
function together(all: readonly (Values | null)[]): Values | null {
  const known = all.filter((values) => values !== null);
  if (known.length === 0) return null;
  return { swr: known.flatMap(({ swr }) => swr), isAtLeast: known.some(({ isAtLeast }) => isAtLeast), isRange: false };
}

/** The SWR of what goes out and what comes back. */
function fromPowers(forward: string, reflected: string): Values | null {
  const [sent, back] = [forward, reflected].map((cell) => Number.parseFloat(cell.replace(",", ".")));
  const share = (back ?? Number.NaN) / (sent ?? Number.NaN);
  if (!(share >= 0 && share < 1)) return null;
  return { swr: [swrFromReflectionMagnitude(Math.sqrt(share))], isAtLeast: false, isRange: true };
}

function readingOf(
  { name, lowHz, highHz, isAtFrequency = false }: NoteBand & Partial<Pick<Place, "isAtFrequency">>,
  value: Values | null,
  line: number,
): readonly (NotedReading & { readonly line: number })[] {
  return value === null ? [] : [{ place: name, isAtFrequency, lowHz, highHz, ...value, line }];
}
