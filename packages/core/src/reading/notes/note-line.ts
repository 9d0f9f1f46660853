import { once } from "../../numbers/once.js";
import { itemsOf } from "./note-items.js";
import { type PlaceItem, type Settled, settled, type Value } from "./note-numbers.js";
import { liesIn, type NoteStyle, type Place, placeOfFrequency } from "./note-place.js";
import { AT_WORD, OVER_WORD, plainNote, SWR_WORD, UNDER_WORD } from "./note-words.js";

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
  /** Told by a word such as "flat" */
  readonly isWorded?: boolean;
  /** One SWR, or a range written as one: "2-3"; false: several, of which nobody says how they belong together */
  readonly isRange: boolean;
}

/** A band by its name. */
export type NoteBand = Pick<Place, "name" | "lowHz" | "highHz">;

/** A reading in a column is negative that no SWR is. */
const NEGATIVE = /(?:[,;\t]\s*|\d\s+)[-−]\d/;
const MARKUP = /<\/?\p{L}/u;
/** A resistance with its reactance is no SWR: "45-j10"; nor is a size with its angle: "38/_-45°". */
const IMPEDANCE = /\d\s*(?:[+−-]\s*(?:[ij]\s*\d|\d+(?:[.,]\d+)?\s*[ij](?!\p{L}))|(?:\/_|[∠∡])\s*[+−-]?\d)/iu;
/** The number of a line in a list, or a date without its year. */
const NUMBERED = /^(?:\(?\d{1,2}[.)]|\d{1,2}\/\d{1,2}|\d{1,2}\.\d{1,2}\.)\s+(?=\d)/;
/** Words before it: "Beam. I read an SWR of 2.5 at 28 MHz" */
const leadIn = once(() => {
  const counted = "(?:\\d+ (?:radials?|elements?|turns?|wires?)[^:=\\d]{0,20})?";
  const said = `\\s*(?:of\\s|was\\s|is\\s|[^:=\\d]{0,40}${counted}[:=])\\s*(?=\\d)`;
  const isAt = `[^\\d]{0,60}(?=\\d+(?:[.,]\\d+)?(?: ?: ?1)?\\s+${AT_WORD})`;
  return new RegExp(`^[^\\d]*?(?<!\\p{L})${SWR_WORD}(?!\\p{L})(?:${said}|${isAt})`, "u");
});
/** What is wanted is no reading. */
const wished = once(
  () =>
    /(?<!\p{L})(?:(?:would|should|['’]d) like|möchte\p{L}*|hätte\p{L}*|goal|aim|want\p{L}*|wish\p{L}*|target|should|ought|plan(?:ned|s)?|hope\p{L}*|ziel|soll\p{L}*|limit)(?!\p{L})/u,
);
const bounded = once(() => new RegExp(`(?<!\\p{L})(?:${UNDER_WORD}|${OVER_WORD})|[<>≤≥]`, "u"));
/** Whether a line says that what is below it is wanted: "What I would like to reach:". */
export const isOfWishes = (line: string): boolean => WISHES.test(plainNote(line)) && /:\s*$/.test(line);
const WISHES =
  /(?<!\p{L})(?:(?:would|should|'d) like|mochte\p{L}*|goals?|aims?|targets?|wish(?:es)?|want(?:ed|s)?|hope[ds]?|ziele?|objectifs?|objetivos?|obiettiv[oi]|doel\p{L}*)(?!\p{L})/u;

/** Words between "is" and an SWR: "40 is a lovely 1.2". */
const MOST_WORDS = 1;

/** The readings in a line. */
export interface NotedLine {
  readonly readings: readonly NotedReading[];
  /** A place in it has no reading */
  readonly isPartly: boolean;
}

/** The readings in a line; null where it is no line of readings. */
export function readNoteLine(given: string, style: NoteStyle): NotedLine | null {
  if (NEGATIVE.test(given) || MARKUP.test(given) || IMPEDANCE.test(given)) return null;
  const noted = plainNote(given).trim().replace(NUMBERED, "");
  const [lead = ""] = leadIn().exec(noted) ?? [];
  if (wished().test(lead)) return null;
  const line = bounded().test(lead) ? noted : noted.slice(lead.length);
  const all = settled(itemsOf(line), style);
  if (all === null) return null;
  const items = withoutTitle(all);
  const firstValue = items.findIndex(({ kind }) => kind === "swr");
  const firstPlace = items.findIndex(({ kind }) => kind === "place");
  if (firstValue < 0 || firstPlace < 0) return null;
  const readings = firstValue < firstPlace ? readValuesFirst(items) : readPlacesFirst(items);
  return readings === null || readings.readings.length === 0 ? null : readings;
}

/** Without a height, or a band of none of the readings, before values that each have their place behind them: "loop at 9 m: 1.2 on 18.1 MHz". */
function withoutTitle(items: readonly Settled[]): readonly Settled[] {
  const title = items.findIndex(({ kind }) => kind === "place");
  const rest = items.slice(title + 1);
  const arePairs =
    rest.length > 0 &&
    rest.length % 2 === 0 &&
    items.slice(0, title).every(({ kind }) => kind === "word") &&
    rest.every((item, i) => (i % 2 === 0 ? item.kind === "swr" : item.kind === "place" && item.isAt));
  const band = items[title]?.kind === "place" ? items[title].place : null;
  const isOfBand = (item: Settled) =>
    item.kind === "place" && item.place !== null && band !== null && liesWithin(item.place, band);
  return arePairs && !rest.some(isOfBand) ? rest : items;
}

/** "2.3 @ 1.827 MHz", "1.4 on 40m and 1.7 on 20m". */
function readValuesFirst(items: readonly Settled[]): NotedLine | null {
  // "We left lock 7 at 10" is none.
  if (items[0]?.kind === "word") return null;
  const readings: NotedReading[] = [];
  const countOf = (wanted: Settled["kind"]) => items.filter(({ kind }) => kind === wanted).length;
  const places = countOf("place");
  const isOfAll = countOf("swr") === 1;
  let values: Value[] = [];
  let former: Value[] = [];
  for (const [i, item] of items.entries()) {
    if (item.kind === "swr") values.push(item);
    else if (item.kind === "place") {
      // "SWR 1.5 40m", and "2:1 at 7.02 and 7.15".
      const isNext = isOfAll && item.isJoined && items[i - 1]?.kind === "place" && readings.length > 0;
      const isAt = item.isAt || isNext || (places === 1 && values.length === 1 && values[0]?.isSaid === true);
      const own = values.length > 0 ? values : former;
      if (item.place === null || own.length === 0 || !isAt) return null;
      readings.push(readingOf(item.place, own));
      [former, values] = [own, []];
    }
  }
  return { readings, isPartly: values.length > 0 };
}

/** "40m 1.5", "17m and 12m both 2.2", "80m 1.5 @ 3.650", "40m: 7.030 1.4 / 7.150 1.8". */
function readPlacesFirst(items: readonly Settled[]): NotedLine | null {
  const readings: NotedReading[] = [];
  let places: PlaceItem[] = [];
  let values: Value[] = [];
  let wordsBetween = 0;
  let isPartly = false;
  let isUnclear = false;
  const close = () => {
    const known = places.flatMap(({ place }) => place ?? []);
    const areRange = values.slice(1).every(({ isRange }) => isRange);
    // "40/20m 1.5/1.8": each its own; else nobody knows which is whose.
    if (known.length > 1 && values.length > 1 && !areRange) {
      if (values.length !== places.length) isUnclear = true;
      else
        readings.push(
          ...places.flatMap(({ place }, i) => (place === null ? [] : readingOf(place, values.slice(i, i + 1)))),
        );
    } else if (values.length > 0) readings.push(...known.map((place) => readingOf(place, values)));
    else if (known.some((place) => !readings.some((reading) => liesWithin(reading, place)))) isPartly = true;
    values = [];
  };
  for (const [i, item] of items.entries()) {
    if (item.kind === "word") {
      wordsBetween++;
      continue;
    }
    if (item.kind === "swr") {
      // What stands between a place and a number may say that this is no SWR.
      const mayBeOther = wordsBetween > (item.isSaid ? MOST_WORDS : 0) && Number.isFinite(item.swr);
      if (places.length === 0 || (values.length === 0 && mayBeOther)) return null;
      values.push(item);
      continue;
    }
    if (item.kind !== "place") return null;
    const { place } = item;
    const ofAll = places;
    const known = places.at(-1)?.place ?? null;
    const isOfBand = place !== null && known !== null && !known.isAtFrequency && liesWithin(place, known);
    const isLast = !items.slice(i + 1).some(({ kind }) => kind === "swr");
    // "At 21.2 MHz it was 1.3, and 1.4 at 21.4 MHz": the last value stands before its places.
    if (item.isAt && isLast && values.length === 2 && known?.isAtFrequency && place?.isAtFrequency) {
      const own = values.splice(-1);
      close();
      places = items.slice(i).filter((other) => other.kind === "place");
      values = own;
      break;
    }
    if (isOfBand && item.isAt && values.length > 0 && endsAtPlace(items.slice(i), known)) {
      // "1.5 at 7.05, 1.8 at 7.15": each place stands behind its value.
      places = [item];
      close();
      places = ofAll;
    } else if (isOfBand && (values.length === 0 || isLast)) places = [...places.slice(0, -1), item];
    else if (values.length === 0 && places.length > 0 && item.isJoined && wordsBetween === 0) places.push(item);
    else {
      close();
      places = [item];
    }
    wordsBetween = 0;
  }
  close();
  const isOfNone = places.some(({ place }) => place === null) && readings.length === 0;
  return isUnclear || isOfNone ? null : { readings, isPartly };
}

/** Whether of the values and places of a band the last one is a place. */
function endsAtPlace(items: readonly Settled[], band: Place): boolean {
  const next = items.findIndex(
    (item) => item.kind === "place" && (item.place === null || !liesWithin(item.place, band)),
  );
  const own = items.slice(0, next < 0 ? undefined : next).filter(({ kind }) => kind === "place" || kind === "swr");
  return own.at(-1)?.kind === "place";
}

const liesWithin = ({ lowHz, highHz }: Pick<Place, "lowHz" | "highHz">, band: Place): boolean =>
  liesIn(lowHz, band) && liesIn(highHz, band);

function readingOf({ name, isAtFrequency, lowHz, highHz }: Place, values: readonly Value[]): NotedReading {
  const highest = values.reduce((a, b) => (b.swr > a.swr || (b.swr === a.swr && b.bound === "over") ? b : a));
  // "Less than" reaches down to a match.
  const swr = values.flatMap((value) => (value.bound === "under" ? [1, value.swr] : [value.swr]));
  return {
    place: name,
    isAtFrequency,
    lowHz,
    highHz,
    swr,
    isAtLeast: highest.bound === "over",
    ...(values.some((value) => value.isWorded) ? { isWorded: true } : {}),
    isRange: values.slice(1).every((value) => value.isRange),
  };
}

/** The band that a line names and nothing else; null where it does not. */
export function bandTitle(line: string): NoteBand | null {
  const items = itemsOf(plainNote(line).trim());
  const [only, ...others] = items;
  if (only?.kind !== "place" || only.place === null || only.place.isAtFrequency || others.length > 0) return null;
  return only.place;
}

/** The SWR in a cell of a table of notes, which is of some band; null where it holds none. */
export function swrInCell(cell: string, band: NoteBand): Pick<NotedReading, "swr" | "isAtLeast" | "isRange"> | null {
  const items = settled(itemsOf(plainNote(cell).trim()), { bare: null }, { ...band, isAtFrequency: false });
  const values = items?.flatMap((item) => (item.kind === "swr" ? [item] : [])) ?? [];
  if (values.length === 0 || items?.some(({ kind }) => kind === "place")) return null;
  const { swr, isAtLeast, isRange } = readingOf(placeOfFrequency(0), values);
  return { swr, isAtLeast, isRange };
}
