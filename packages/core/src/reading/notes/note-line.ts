import { NAMED_BANDS } from "../../facts/band-names.js";
import { UNIT_EXPONENTS } from "../options/units.js";
import {
  ABOUT_WORD,
  AT_WORD,
  BAND_WORD,
  METRES_WORD,
  OFF_SCALE_WORD,
  OTHER_UNIT,
  OVER_WORD,
  plainNote,
  SWR_WORD,
  UP_TO_WORD,
} from "./note-words.js";

/** An SWR noted by hand for a band, a stretch of frequencies or a frequency. */
export interface NotedReading {
  /** "40m", "7-7.3 MHz", "7.1 MHz" */
  readonly place: string;
  /** Whether it names a frequency, and no band or stretch */
  readonly isAtFrequency: boolean;
  readonly lowHz: number;
  readonly highHz: number;
  /** As noted, 1 or more; Infinity where the scale ended */
  readonly swr: readonly number[];
  /** Whether the highest SWR is "more than" what is noted */
  readonly isAtLeast: boolean;
}

/** How the lines of a note are written. */
export interface NoteStyle {
  /** Whether a number that starts a line is a band in metres, a frequency in MHz, or neither */
  readonly bare: "metres" | "megahertz" | null;
}

interface Place {
  readonly name: string;
  readonly isAtFrequency: boolean;
  readonly lowHz: number;
  readonly highHz: number;
  readonly rest: string;
}

const UNIT = "(mhz|khz|hz)\\b";
const HERTZ = { hz: 10 ** UNIT_EXPONENTS.Hz, khz: 10 ** UNIT_EXPONENTS.kHz, mhz: 10 ** UNIT_EXPONENTS.MHz };
/** Of several readings in one line each starts anew behind one of these. */
const NEXT_PLACE = new RegExp(`(?:\\s*[;|/]\\s*|,\\s*|\\s{2,})(?=\\d{1,4} ?c?${METRES_WORD}\\b)`);
const BAND = new RegExp(
  `^(?:${BAND_WORD} )?(\\d{1,4}) ?-?(c?)${METRES_WORD}(?:[- ]?${BAND_WORD})?(?![\\p{L}\\d])`,
  "u",
);
/** Between a place and its SWR, and between several. */
const GLUE = new RegExp(`^(?:[\\s,;:=|/·()\\[\\]"'–—…-]|\\.(?!\\d)|${SWR_WORD}\\b|${UP_TO_WORD})+`, "u");
/** A reading in a column is negative that no SWR is. */
const NEGATIVE = /(?:[,;\t]\s*|\d\s+)[-−]\d/;
/** Bands reach further in some Regions than in all: by these shares of their edges. */
const BELOW_BAND = 0.01;
const BEYOND_BAND = 0.1;
/** No stretch that one notes as a band is wider, in shares of its lower end. */
const WIDEST_STRETCH = 0.2;
/** A number of megahertz as high as this is seldom an SWR. */
const HIGH_HZ = 7_000_000;

/** The readings in a line; null where it is no line of readings. */
export function readNoteLine(line: string, style: NoteStyle): readonly NotedReading[] | null {
  if (NEGATIVE.test(line)) return null;
  const parts = plainNote(line)
    .trim()
    .replace(/^["'*•]+\s*/, "")
    .split(NEXT_PLACE);
  const readings = parts.map((part) => readPart(part, style));
  return readings.every((reading) => reading !== null) ? readings : null;
}

function readPart(part: string, style: NoteStyle): NotedReading | null {
  const number = numberPattern(part);
  const place = placeIn(part, style, number);
  if (place === null) return null;
  const noted = valuesIn(place, number);
  if (noted === null) return null;
  const at = noted.frequencyHz;
  return {
    place: at === null ? place.name : `${at / 1e6} MHz`,
    isAtFrequency: at !== null || place.isAtFrequency,
    lowHz: at ?? place.lowHz,
    highHz: at ?? place.highHz,
    swr: noted.swr,
    isAtLeast: noted.isAtLeast,
  };
}

/** A decimal comma in a line without decimal points, unless commas split it. */
const numberPattern = (part: string): string =>
  /\d\.\d/.test(part) || /^[^,]*\p{L}["']?\s*,/u.test(part) ? "(\\d+(?:\\.\\d+)?)" : "(\\d+(?:[.,]\\d+)?)";
const numberIn = (printed: string | undefined): number => Number((printed ?? "").replace(",", "."));

function placeIn(part: string, { bare }: NoteStyle, number: string): Place | null {
  const band = BAND.exec(part);
  if (band !== null) return bandPlace(`${band[1]}${band[2]}m`, part.slice(band[0].length));
  const stretch = new RegExp(`^${number}\\s*${UP_TO_WORD}\\s*${number}\\s*(?:${UNIT})?`).exec(part);
  if (stretch !== null) return stretchPlace(stretch, part.slice(stretch[0].length));
  const frequency = new RegExp(`^${number}\\s*${bare === "megahertz" ? `(?:${UNIT})?` : UNIT}`).exec(part);
  if (frequency !== null) {
    const hz = numberIn(frequency[1]) * hertzOf(frequency[2]);
    const isPossible = frequency[2] !== undefined || NAMED_BANDS.some((band) => liesIn(hz, band));
    const name = `${hz / 1e6} MHz`;
    if (isPossible) {
      return { name, isAtFrequency: true, lowHz: hz, highHz: hz, rest: part.slice(frequency[0].length) };
    }
  }
  const metres = bare === "metres" ? /^(\d{1,4})(?![.,]?\d)/.exec(part) : null;
  return metres === null ? null : bandPlace(`${metres[1]}m`, part.slice(metres[0].length));
}

const hertzOf = (unit: string | undefined): number => HERTZ[(unit ?? "mhz") as keyof typeof HERTZ];

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

const liesIn = (hz: number, { lowHz, highHz }: { lowHz: number; highHz: number }): boolean =>
  hz >= lowHz * (1 - BELOW_BAND) && hz <= highHz * (1 + BEYOND_BAND);

interface NotedFrequency {
  readonly hz: number;
  /** Characters it takes */
  readonly length: number;
}

interface NotedValues {
  readonly frequencyHz: number | null;
  readonly swr: readonly number[];
  readonly isAtLeast: boolean;
}

/** The SWR behind a place, and the frequency where one stands with them. A remark may follow, without numbers. */
function valuesIn(place: Place, number: string): NotedValues | null {
  const isReading = new RegExp(
    `^(?:${ABOUT_WORD}\\s*)?(${OVER_WORD}\\s*)?(?:1\\s*:\\s*)?${number}(?:\\s*:\\s*1(?![\\d.,]))?(\\+)?`,
  );
  const isOffScale = new RegExp(`^(?:${OVER_WORD}\\s*)?${OFF_SCALE_WORD}`);
  let rest = place.rest.replace(GLUE, "");
  let frequencyHz: number | null = null;
  const read: { swr: number; isAtLeast: boolean }[] = [];
  while (/\d/.test(rest) || isOffScale.test(rest)) {
    const frequency: NotedFrequency | null =
      frequencyHz === null && !place.isAtFrequency ? frequencyIn(rest, place, number, read.length) : null;
    const reading = frequency === null ? isReading.exec(rest) : null;
    const found = frequency?.length ?? (reading ?? isOffScale.exec(rest))?.[0].length;
    if (found === undefined) return null;
    rest = rest.slice(found);
    if (frequency !== null) frequencyHz = frequency.hz;
    else {
      const swr = reading === null ? Number.POSITIVE_INFINITY : numberIn(reading[2]);
      if (!(swr >= 1) || OTHER_UNIT.test(rest)) return null;
      read.push({ swr, isAtLeast: reading?.[1] !== undefined || reading?.[3] !== undefined });
    }
    rest = rest.replace(GLUE, "");
  }
  if (read.length === 0) return null;
  const highest = read.reduce((a, b) => (b.swr > a.swr || (b.swr === a.swr && b.isAtLeast) ? b : a));
  return { frequencyHz, swr: read.map(({ swr }) => swr), isAtLeast: highest.isAtLeast };
}

/**
 * A frequency of the place at the start of a text: stated by a word or a unit, written as finely as no SWR is, or the first of
 * several numbers where it is higher than an SWR that one would note.
 */
function frequencyIn(text: string, place: Place, number: string, before: number): NotedFrequency | null {
  const match = new RegExp(`^(${AT_WORD}\\s*)?${number}\\s*(?:${UNIT})?`).exec(text);
  if (match === null) return null;
  const [whole, at, printed = "", unit] = match;
  const hz = numberIn(printed) * hertzOf(unit ?? (numberIn(printed) >= 1000 ? "khz" : undefined));
  if (!liesIn(hz, place)) return null;
  const isStated = at !== undefined || unit !== undefined || /[.,]\d{3}|^\d{4,}/.test(printed);
  const isHigh = before === 0 && hz >= HIGH_HZ && /\d/.test(text.slice(whole.length));
  return isStated || isHigh ? { hz, length: whole.length } : null;
}
