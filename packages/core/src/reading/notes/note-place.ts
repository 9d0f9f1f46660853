import { NAMED_BANDS } from "../../facts/band-names.js";
import { UNIT_EXPONENTS } from "../options/units.js";
import { BAND_WORD, METRES_WORD, UP_TO_WORD } from "./note-words.js";

/** How the lines of a note are written. */
export interface NoteStyle {
  /** Whether a number that starts a line is a band in metres, a frequency in MHz, or neither */
  readonly bare: "metres" | "megahertz" | null;
}

/** Where a reading was taken, and what stands behind that in its line. */
export interface Place {
  readonly name: string;
  readonly isAtFrequency: boolean;
  readonly lowHz: number;
  readonly highHz: number;
  readonly rest: string;
}

/** Pattern of a unit of frequency. */
export const UNIT = "(mhz|khz|hz)\\b";
const HERTZ = { hz: 10 ** UNIT_EXPONENTS.Hz, khz: 10 ** UNIT_EXPONENTS.kHz, mhz: 10 ** UNIT_EXPONENTS.MHz };
const BAND = new RegExp(
  `^(?:${BAND_WORD} )?(\\d{1,4}) ?-?(c?)${METRES_WORD}(?:-?es\\b)?(?:[- ]?${BAND_WORD})?(?![\\p{L}\\d])`,
  "u",
);
/** Bands reach further in some Regions than in all: by these shares of their edges. */
const BELOW_BAND = 0.01;
const BEYOND_BAND = 0.1;
/** No stretch that one notes as a band is wider, in shares of its lower end. */
const WIDEST_STRETCH = 0.2;
/** A decimal comma in a line without decimal points, unless commas split it. */
export const numberPattern = (part: string): string =>
  /\d\.\d/.test(part) || /^[^,]*\p{L}["']?\s*,/u.test(part) ? "(\\d+(?:\\.\\d+)?)" : "(\\d+(?:[.,]\\d+)?)";
export const numberIn = (printed: string | undefined): number => Number((printed ?? "").replace(",", "."));

/** The place that a line begins with; null where it begins with none. */
export function placeIn(part: string, { bare }: NoteStyle, number: string): Place | null {
  const band = BAND.exec(part);
  if (band !== null) return bandPlace(`${band[1]}${band[2]}m`, part.slice(band[0].length));
  const stretch = new RegExp(`^${number}\\s*${UP_TO_WORD}\\s*${number}\\s*(?:${UNIT})?`).exec(part);
  const behind = part.slice(stretch?.[0].length ?? 0);
  const asStretch = stretch === null ? null : stretchPlace(stretch, behind);
  // Of two numbers and nothing more the second is an SWR, where the first is a frequency.
  if (asStretch !== null && (bare !== "megahertz" || /\d/.test(behind))) return asStretch;
  const frequency = new RegExp(`^${number}\\s*${bare === "megahertz" ? `(?:${UNIT})?` : UNIT}`).exec(part);
  if (frequency !== null) {
    const hz = numberIn(frequency[1]) * hertzOf(frequency[2]);
    const rest = part.slice(frequency[0].length);
    const band = new RegExp(`^[- ]?${BAND_WORD}(?!\\p{L})`, "u").exec(rest);
    const named = band === null ? undefined : NAMED_BANDS.find((candidate) => liesNear(hz, candidate));
    if (band !== null && named !== undefined) return bandPlace(named.band, rest.slice(band[0].length));
    const isPossible = frequency[2] !== undefined || NAMED_BANDS.some((band) => liesIn(hz, band));
    const name = `${hz / 1e6} MHz`;
    if (isPossible) {
      return { name, isAtFrequency: true, lowHz: hz, highHz: hz, rest: part.slice(frequency[0].length) };
    }
  }
  const metres = bare === "metres" ? /^(\d{1,4})(?![.,]?\d)/.exec(part) : null;
  return metres === null ? null : bandPlace(`${metres[1]}m`, part.slice(metres[0].length));
}

export const hertzOf = (unit: string | undefined): number => HERTZ[(unit ?? "mhz") as keyof typeof HERTZ];

function bandPlace(name: string, rest: string): Place | null {
  const band = NAMED_BANDS.find((candidate) => candidate.band === name);
  return band === undefined ? null : { name, isAtFrequency: false, lowHz: band.lowHz, highHz: band.highHz, rest };
}

/** A stretch of frequencies, within or around a band. */
function stretchPlace([, from, to, unit]: RegExpExecArray, rest: string): Place | null {
  const [lowHz, highHz] = [numberIn(from) * hertzOf(unit), numberIn(to) * hertzOf(unit)];
  if (!(lowHz < highHz) || highHz > (1 + WIDEST_STRETCH) * lowHz) return null;
  if (!NAMED_BANDS.some((band) => lowHz <= band.highHz && highHz >= band.lowHz)) return null;
  return { name: `${lowHz / 1e6}-${highHz / 1e6} MHz`, isAtFrequency: false, lowHz, highHz, rest };
}

/** "24 MHz" is the band at 24.9. */
const liesNear = (hz: number, { lowHz, highHz }: { lowHz: number; highHz: number }): boolean =>
  hz >= lowHz * 0.95 && hz <= highHz * 1.05;
export const liesIn = (hz: number, { lowHz, highHz }: { lowHz: number; highHz: number }): boolean =>
  hz >= lowHz * (1 - BELOW_BAND) && hz <= highHz * (1 + BEYOND_BAND);
