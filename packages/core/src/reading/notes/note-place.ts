import { NAMED_BANDS } from "../../facts/band-names.js";
import { UNIT_EXPONENTS } from "../options/units.js";

/** How the lines of a note are written. */
export interface NoteStyle {
  /** Whether a number that starts a line is a band in metres, a frequency in MHz, or neither */
  readonly bare: "metres" | "megahertz" | null;
}

/** Where a reading was taken. */
export interface Place {
  readonly name: string;
  readonly isAtFrequency: boolean;
  readonly lowHz: number;
  readonly highHz: number;
}

/** Pattern of a unit of frequency. */
export const UNIT = "(mhz|khz|hz)\\b";
const HERTZ = { hz: 10 ** UNIT_EXPONENTS.Hz, khz: 10 ** UNIT_EXPONENTS.kHz, mhz: 10 ** UNIT_EXPONENTS.MHz };
/** Bands reach further in some Regions than in all: by these shares of their edges. */
const BELOW_BAND = 0.01;
const BEYOND_BAND = 0.1;
/** No stretch that one notes as a band is wider, in shares of its lower end. */
const WIDEST_STRETCH = 0.2;

export const numberIn = (printed: string | undefined): number => Number((printed ?? "").replace(",", "."));

/** Hz in a unit of frequency; megahertz where none is stated. */
export const hertzOf = (unit: string | undefined): number => HERTZ[(unit ?? "mhz") as keyof typeof HERTZ];

/** A band by its usual name; null where there is none of that name. */
export function placeOfBand(name: string): Place | null {
  const band = NAMED_BANDS.find((candidate) => candidate.band === name);
  return band === undefined ? null : { name, isAtFrequency: false, lowHz: band.lowHz, highHz: band.highHz };
}

export const placeOfFrequency = (hz: number): Place => ({
  name: `${hz / 1e6} MHz`,
  isAtFrequency: true,
  lowHz: hz,
  highHz: hz,
});

/** A stretch of frequencies, within or around a band; null where it is none. */
export function placeOfStretch(from: number, to: number, unit?: string): Place | null {
  const [lowHz, highHz] = [from * hertzOf(unit), to * hertzOf(unit)];
  if (!(lowHz < highHz) || highHz > (1 + WIDEST_STRETCH) * lowHz) return null;
  if (!NAMED_BANDS.some((band) => meets(lowHz, highHz, band))) return null;
  return { name: `${lowHz / 1e6}-${highHz / 1e6} MHz`, isAtFrequency: false, lowHz, highHz };
}

/** "24 MHz band" is the one at 24.9, and "5 MHz" the one at 5.35. */
export function placeNamedBy(hz: number): Place | null {
  const found = NAMED_BANDS.find(({ lowHz, highHz }) => hz >= lowHz * 0.93 && hz <= highHz * 1.05);
  return found === undefined ? null : placeOfBand(found.band);
}

type Edges = Pick<Place, "lowHz" | "highHz">;

/** Whether a stretch of frequencies has a part of a band as wide as it is anywhere. */
const meets = (fromHz: number, toHz: number, { lowHz, highHz }: Edges): boolean =>
  toHz >= lowHz * (1 - BELOW_BAND) && fromHz <= highHz * (1 + BEYOND_BAND);

/** Whether a frequency lies in a band as wide as it is anywhere. */
export const liesIn = (hz: number, band: Edges): boolean => meets(hz, hz, band);

/** Whether megahertz lie in some band as wide as it is anywhere. */
export const isInSomeBand = (mhz: number): boolean => NAMED_BANDS.some((band) => liesIn(mhz * 1e6, band));
