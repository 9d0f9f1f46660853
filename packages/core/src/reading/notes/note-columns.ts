import { once } from "../../numbers/once.js";
import { reflectionMagnitudeFromReturnLoss, swrFromReflectionMagnitude } from "../../reflection/swr.js";
import type { Quantity } from "../options/column-role.js";
import { type FrequencyUnit, UNIT_EXPONENTS } from "../options/units.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import { type NoteBand, type NotedReading, swrInCell } from "./note-line.js";
import { type Place, placeOfFrequency } from "./note-place.js";

/** What a column of a table with a band in each row holds, by its name. */
type ColumnKind =
  | "swr"
  | "frequency"
  | "end of the band"
  | "antenna"
  | "forward"
  | "reflected"
  | "return loss"
  /** A quantity that a sweep has, such as R: no table of SWR */
  | "of a sweep"
  | "other";

/** Several readings of one antenna, by where on the band or which of them they are. */
const partOfBand = once(
  () =>
    /(?<!\p{L})(?:low(?:er|est)?|mid\p{L}*|high(?:er|est)?|cent(?:re|er)|edge|bottom|top|upper|min\p{L}*|max\p{L}*|mean|avg|best|worst|from|to|start|end|von|bis|unten|mitte|oben|anfang|ende|d[ée]but|milieu|fin|bas|haut|inicio|medio|final|inizio|centro|fine|begin|midden|eind)(?!\p{L})/giu,
);
/** What is noted beside an SWR. */
export const besideSwr = once(
  () =>
    /(?<!\p{L})(?:batt\p{L}*|akku|volt\p{L}*|spannung|supply|bias|note\p{L}*|remark\p{L}*|comment\p{L}*|date|time|height|length|power|gain|turns?|taps?|s-?units?|s-?meter|f\/b|temp\p{L}*|weather|wind|rain|limit|allowed|wanted|höhe|länge|leistung|gewinn|windungen|datum|bemerkung\p{L}*|hauteur|longueur|puissance|altura|longitud|potencia|altezza|lunghezza|potenza)(?!\p{L})/iu,
);
/** The unit of such a thing at the end of a name, volts in brackets for the sake of an inverted V; behind the word for SWR it is the name of an antenna: "SWR A", "SWR 6 m". */
const endsInUnit = once(
  () => /(?:^|[\s([])(?:[mk]?W|[ck]?m|ft|dB[id]?|[µun]H|[pn]F|%|°C?)[)\]]?$|[\s([](?:[mk]V|mA)[)\]]?$|[([][VA][)\]]$/iu,
);
const isForward = (name: string) => /^(?:vor|vorlauf|vorwärts)(?!\p{L})/iu.test(name);
const isReflected = (name: string) => /^(?:ref|rück|rücklauf)(?!\p{L})/iu.test(name);

/** A column of a table of notes. */
export interface NoteColumn {
  readonly name: string;
  readonly kind: ColumnKind;
  /** Of frequencies, where the name states it */
  readonly unit: FrequencyUnit | null;
}

/** What names beside each other hold. Antennas "A" and "B" have no susceptance. */
export function columnsOf(names: readonly string[]): readonly NoteColumn[] {
  const areLetters = names.length > 1 && names.join("") === "ABCDEFGH".slice(0, names.length);
  return names.map((name) => {
    const { quantity, frequencyUnit = null } = roleFromHeader(name);
    return { name, kind: areLetters ? "antenna" : kindOf(name, quantity), unit: frequencyUnit };
  });
}

function kindOf(name: string, quantity: Quantity): ColumnKind {
  if (quantity === "forward-power" || isForward(name)) return "forward";
  if (quantity === "reflected-power" || isReflected(name)) return "reflected";
  if (quantity === "return-loss") return "return loss";
  if (besideSwr().test(name) || (endsInUnit().test(name) && !isNamedSwr(name))) return "other";
  const rest = name.replace(partOfBand(), " ").trim();
  if (rest !== name.trim() && (rest === "" || roleFromHeader(rest).quantity === "swr")) return "end of the band";
  if (quantity === "swr" || quantity === "frequency") return quantity;
  if (isNamedSwr(name)) return "swr";
  return quantity === "other" ? "antenna" : "of a sweep";
}

/** "SWR 6 m", which is a length to whoever reads units. */
const isNamedSwr = (name: string): boolean => name.split(/\s+/).some((word) => roleFromHeader(word).quantity === "swr");

export type Values = Pick<NotedReading, "swr" | "isAtLeast" | "isRange">;
/** The values of a row of a band, from its cells. */
type ValuesIn = (cells: readonly string[], band: NoteBand) => Values | null;

/** The columns that are readings of one antenna. */
interface ColumnGroup {
  /** Of the antenna; empty where there is only one */
  readonly name: string;
  readonly valuesIn: ValuesIn;
}

/**
 * Which columns make a reading of which antenna.
 *
 * @param areBare bands stand there by their numbers alone, of which a line by itself tells nothing
 * @returns none where no column is an SWR; null where lines tell as much, or more is told than these can hold
 */
export function groupsIn(columns: readonly NoteColumn[], areBare: boolean): readonly ColumnGroup[] | null {
  const kinds = columns.map(({ kind }) => kind);
  if (kinds.includes("of a sweep")) return [];
  const places = (kind: ColumnKind) => kinds.flatMap((each, c) => (each === kind ? [c] : []));
  const of = (c: number, name: string): ColumnGroup => ({
    name,
    valuesIn: (cells, band) => swrInCell(cells[c] ?? "", band),
  });
  // Beside ends of a band a name that is not known is another place on it.
  if (kinds.includes("end of the band")) {
    const parts = kinds.flatMap((kind, c) => (kind === "other" || kind === "frequency" ? [] : [c]));
    return [{ name: "", valuesIn: (cells, band) => together(parts.map((c) => swrInCell(cells[c] ?? "", band))) }];
  }
  const [swr, ...more] = places("swr");
  if (swr !== undefined && more.length > 0) {
    // "SWR 1" and "SWR 2" are two antennas; of two that are named alike nobody knows which is which.
    const all = [swr, ...more].map((c) => of(c, columns[c]?.name ?? ""));
    return new Set(all.map(({ name }) => name)).size === all.length ? all : null;
  }
  if (swr !== undefined) return columns.length === 1 && !areBare ? null : [of(swr, "")];
  const [loss] = places("return loss");
  if (loss !== undefined) return [{ name: "", valuesIn: (cells) => fromReturnLoss(cells[loss] ?? "") }];
  const [forward, reflected] = [places("forward")[0], places("reflected")[0]];
  if (forward !== undefined && reflected !== undefined)
    return [{ name: "", valuesIn: (cells) => fromPowers(cells[forward] ?? "", cells[reflected] ?? "") }];
  const antennas = places("antenna");
  if (antennas.length === 1 && columns.length === 1) return null;
  return antennas.map((c) => of(c, antennas.length === 1 ? "" : (columns[c]?.name ?? "")));
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

/** The SWR of a return loss. */
function fromReturnLoss(cell: string): Values | null {
  const decibel = Math.abs(Number.parseFloat(cell.replace(",", ".")));
  if (!(decibel > 0)) return null;
  const swr = swrFromReflectionMagnitude(reflectionMagnitudeFromReturnLoss(decibel));
  return { swr: [swr], isAtLeast: false, isRange: true };
}

/** The frequency in a cell, in the unit of its column or that its size tells; null where there is none. */
export function placeIn(cell: string, stated: FrequencyUnit | null): Place | null {
  const value = Number(cell.replace(",", "."));
  if (!(value > 0)) return null;
  const unit = stated ?? (value >= 1e6 ? "Hz" : value >= 1000 ? "kHz" : "MHz");
  return placeOfFrequency(Number((value * 10 ** UNIT_EXPONENTS[unit]).toPrecision(12)));
}
