import { hertzOf, liesIn, type NoteStyle, numberIn, numberPattern, type Place, placeIn, UNIT } from "./note-place.js";
import {
  ABOUT_WORD,
  AT_WORD,
  IS_WORD,
  METRES_WORD,
  OFF_SCALE_WORD,
  OTHER_UNIT,
  OVER_WORD,
  plainNote,
  SWR_WORD,
  UNDER_WORD,
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

/** Of several readings in one line each starts anew behind one of these. */
const NEXT_PLACE = new RegExp(`(?:\\s*[;|/]\\s*|,\\s*|\\s{2,})(?=\\d{1,4}[ -]?c?${METRES_WORD}(?!\\p{L}))`, "u");
/** Between a place and its SWR, and between several. */
const GLUE = new RegExp(
  `^(?:[\\s,;:=|/·()\\[\\]"'–—…-]|\\.(?!\\d)|${SWR_WORD}(?!\\p{L})|${IS_WORD}|${UP_TO_WORD})+`,
  "u",
);
/** A reading in a column is negative that no SWR is. */
const NEGATIVE = /(?:[,;\t]\s*|\d\s+)[-−]\d/;
/** A number of megahertz as high as this is seldom an SWR. */
const HIGH_HZ = 7_000_000;

/** What people put before a reading: a bullet, a number, a box that was ticked, a date, the word SWR. */
const LEADS: readonly RegExp[] = [
  /^(?:[-*•–+>]\s+|\[[ xv✓]?\]\s*|\(?\d{1,2}[.)]\s+)/,
  /^(?:\d{1,2}:\d{2}|(?:\d{1,4}[-./]){1,2}\d{0,4}|\d{1,2}\.? \p{L}{3,9}\.?)[,:]?\s+/u,
  new RegExp(`^${SWR_WORD}\\s*(?:${AT_WORD}|of|in)?\\s*`, "u"),
];
/** The SWR before its place: "2.3 @ 1.827 MHz", "I measured 2.77 on 160 m". */
const VALUE_FIRST = new RegExp(
  `^(?:[\\p{L} ]*?(?:${SWR_WORD}|measured|read|got|gemessen|mesure|medido|misurato|gemeten)\\s*(?:of\\s*)?)?([<>~]?\\s*\\d+(?:[.,]\\d+)?(?:\\s*:\\s*1)?)\\s*(?:${AT_WORD}|in)\\s*(\\d.*)$`,
  "u",
);

/** The readings in a line; null where it is no line of readings. */
export function readNoteLine(given: string, style: NoteStyle): readonly NotedReading[] | null {
  if (NEGATIVE.test(given)) return null;
  const line = plainNote(given)
    .trim()
    .replace(/^["']+\s*/, "");
  const first = VALUE_FIRST.exec(line);
  const asTheyStand =
    first === null ? null : readParts(`${first[2]}: ${first[1]}`, { bare: style.bare ?? "megahertz" });
  return asTheyStand ?? readParts(line, style) ?? withoutLead(line, style);
}

function withoutLead(line: string, style: NoteStyle): readonly NotedReading[] | null {
  for (const lead of LEADS) {
    const rest = line.replace(lead, "");
    const found = rest === line ? null : (readParts(rest, style) ?? withoutLead(rest, style));
    if (found !== null) return found;
  }
  return null;
}

function readParts(line: string, style: NoteStyle): readonly NotedReading[] | null {
  const parts = line.split(NEXT_PLACE);
  const readings = parts.map((part) => severalIn(part, style) ?? readPart(part, style));
  if (readings.every((reading) => reading !== null)) return readings.flat();
  // "6 m up" is no place.
  const whole = parts.length > 1 ? readPart(line, style) : null;
  return whole === null ? null : [whole];
}

const PAIR = /^(\d{1,3}[.,]\d{2,})\s*[:= ]\s*(\d+(?:[.,]\d+)?)$/;

/** Several frequencies of a band with their SWR: "40m: 7.030 1.4 / 7.150 1.8". */
function severalIn(part: string, style: NoteStyle): readonly NotedReading[] | null {
  const place = placeIn(part, style, numberPattern(part));
  if (place === null || place.isAtFrequency) return null;
  const pairs = place.rest
    .replace(/^[\s:–-]+/, "")
    .split(/\s*[/;]\s*|,\s+/)
    .map((piece) => PAIR.exec(piece.trim()));
  if (pairs.length < 2 || !pairs.every((pair) => pair !== null)) return null;
  const readings = pairs.map((pair): NotedReading => {
    const hz = numberIn(pair[1]) * 1e6;
    return {
      place: `${hz / 1e6} MHz`,
      isAtFrequency: true,
      lowHz: hz,
      highHz: hz,
      swr: [numberIn(pair[2])],
      isAtLeast: false,
    };
  });
  return readings.every(({ lowHz, swr }) => liesIn(lowHz, place) && (swr[0] ?? 0) >= 1) ? readings : null;
}

/** The band that a line names and nothing else; null where it does not. */
export function bandTitle(line: string): NoteBand | null {
  const place = placeIn(plainNote(line).trim(), { bare: null }, numberPattern(line));
  return place === null || place.isAtFrequency || !/^[\s:.–-]*$/.test(place.rest) ? null : place;
}

/** A band by its name. */
export type NoteBand = Pick<Place, "name" | "lowHz" | "highHz">;

/** The SWR in a cell of a table of notes; null where it holds none. */
export function swrInCell(cell: string): Pick<NotedReading, "swr" | "isAtLeast"> | null {
  const text = plainNote(cell).trim();
  const place: Place = { name: "", isAtFrequency: true, lowHz: 0, highHz: 0, rest: text };
  return valuesIn(place, numberPattern(text));
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
    `^(?:(?:${ABOUT_WORD}|${UNDER_WORD})\\s*)?(${OVER_WORD}\\s*)?(?:1\\s*:\\s*)?${number}(?:\\s*:\\s*1(?![\\d.,]))?(\\+)?`,
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
    if (read.length > 0 && isRemark(rest, found === undefined)) break;
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

/** Behind an SWR: a time of day, a height in metres or feet, or words, whatever numbers they hold. */
const CLOCK_OR_HEIGHT =
  /^(?:(?:at|@|um|a|à|om|alle)\s*)?(?:\d{1,2}:\d{2}(?!\d)|\d+(?:[.,]\d+)?\s*(?:m|metres?|meters?|ft)\s+(?:up|high|above|agl|hoch|haut|alto|hoog)\b)/;
const isRemark = (text: string, isNoReading: boolean): boolean =>
  CLOCK_OR_HEIGHT.test(text) || (isNoReading && /^\(?\p{L}{3,}/u.test(text));

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
