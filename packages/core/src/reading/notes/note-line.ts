import { itemsOf, type NoteItem } from "./note-items.js";
import {
  isInSomeBand,
  liesIn,
  type NoteStyle,
  type Place,
  placeOfBand,
  placeOfFrequency,
  placeOfStretch,
} from "./note-place.js";
import { plainNote } from "./note-words.js";

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
  /** One SWR, or a range written as one: "2-3"; false: several, of which nobody says how they belong together */
  readonly isRange: boolean;
}

/** A band by its name. */
export type NoteBand = Pick<Place, "name" | "lowHz" | "highHz">;

/** A reading in a column is negative that no SWR is. */
const NEGATIVE = /(?:[,;\t]\s*|\d\s+)[-−]\d/;
const MARKUP = /<\/?\p{L}/u;
/** The number of a line in a list, or a date without its year. */
const NUMBERED = /^(?:\(?\d{1,2}[.)]|\d{1,2}\/\d{1,2}|\d{1,2}\.\d{1,2}\.)\s+(?=\d)/;
/** SWR beyond this is noted by nobody as a number. */
const GREATEST_SWR = 100;
/** Words between "is" and an SWR: "40 is a lovely 1.2". */
const MOST_WORDS = 1;
/** A number of megahertz as high as this is seldom an SWR. */
const HIGH_MHZ = 7;

/** The readings in a line; null where it is no line of readings. */
export function readNoteLine(given: string, style: NoteStyle): readonly NotedReading[] | null {
  if (NEGATIVE.test(given) || MARKUP.test(given)) return null;
  const items = settled(itemsOf(plainNote(given).trim().replace(NUMBERED, "")), style);
  if (items === null) return null;
  const firstValue = items.findIndex(({ kind }) => kind === "swr");
  const firstPlace = items.findIndex(({ kind }) => kind === "place");
  if (firstValue < 0 || firstPlace < 0) return null;
  const readings = firstValue < firstPlace ? readValuesFirst(items) : readPlacesFirst(items);
  return readings === null || readings.length === 0 ? null : readings;
}

type Settled = Exclude<NoteItem, { readonly kind: "number" }> & { readonly isSaid?: boolean };
type PlaceItem = Extract<NoteItem, { readonly kind: "place" }>;
type Value = Extract<Settled, { readonly kind: "swr" }>;

/**
 * Says of each number by itself what it is: the band or the frequency that a line begins with, the frequency of a band, the ends
 * of a stretch, or an SWR. Numbers behind words that follow an SWR are a remark.
 *
 * @returns null where a number is none of these
 */
function settled(items: readonly NoteItem[], { bare }: NoteStyle): readonly Settled[] | null {
  const done: Settled[] = [];
  let band: Place | null = null;
  let isRemark = false;
  for (let i = 0; i < items.length; i++) {
    const item = items[i] as NoteItem;
    if (item.kind === "place") {
      band = item.place !== null && !item.place.isAtFrequency ? item.place : band;
      isRemark = false;
    }
    if (item.kind === "word" && done.at(-1)?.kind === "swr") isRemark = true;
    if (item.kind === "other" && !isRemark) return null;
    if (item.kind !== "number") {
      if (item.kind !== "other") done.push(item);
      continue;
    }
    if (isRemark) continue;
    const next = items[i + 1];
    const place = placeFrom(item, next, {
      isFirst: done.length === 0,
      bare,
      band,
      before: done,
      rest: items.slice(i + 1),
    });
    if (place !== null) {
      if (place.isStretch) i++;
      // A band that was told by its number alone says nothing of the numbers behind it.
      done.push({ kind: "place", place: place.place, isAt: item.isAt, isJoined: true });
      continue;
    }
    if (!(item.value >= 1 && item.value < GREATEST_SWR)) return null;
    done.push({ kind: "swr", swr: item.value, bound: item.bound, isRange: item.isRange, isSaid: item.isSaid });
  }
  return done;
}

interface Around {
  readonly isFirst: boolean;
  readonly bare: NoteStyle["bare"];
  /** The band that was named before */
  readonly band: Place | null;
  readonly before: readonly Settled[];
  readonly rest: readonly NoteItem[];
}

/** The place that a number by itself, perhaps with the next one, stands for; null where it is an SWR. */
function placeFrom(
  { value, printed, isAt, isRange, bound }: Extract<NoteItem, { readonly kind: "number" }>,
  next: NoteItem | undefined,
  { isFirst, bare, band, before, rest }: Around,
): { readonly place: Place; readonly isStretch: boolean } | null {
  if (bound !== null) return null;
  const alone = (place: Place | null) => (place === null ? null : { place, isStretch: false });
  const isFine = /[.,]\d{3}|^\d{4,}/.test(printed);
  const hz = value * (value >= 1000 ? 1e3 : 1e6);
  const last = before.at(-1);
  const isBehindPlace = last?.kind === "place";
  const stretch = next?.kind === "number" && next.isRange ? placeOfStretch(value, next.value) : null;
  if (band !== null && last?.kind === "swr" && bandOf(printed, null) !== null && isSaidOf(rest)) {
    return alone(bandOf(printed, null));
  }
  if (band !== null) {
    // "80m (3.5-3.8)": the band is known already.
    const isBehindBand = last?.kind === "place" && last.place?.isAtFrequency === false;
    if (stretch !== null && isBehindBand && rest.length > 1 && liesIn(value * 1e6, band)) {
      return { place: band, isStretch: true };
    }
    const isHigh = isBehindPlace && value >= HIGH_MHZ && rest.some(({ kind }) => kind === "number" || kind === "swr");
    return liesIn(hz, band) && (isAt || isFine || isHigh) ? alone(placeOfFrequency(hz)) : null;
  }
  if (isFirst && stretch !== null && (bare !== "megahertz" || rest.length > 1)) {
    return { place: stretch, isStretch: true };
  }
  const named = bandOf(printed, bare);
  const isOneOfSeveral = isBehindPlace || isFirst ? (isBehindPlace && isRange) || isBandBefore(rest) : isSaidOf(rest);
  const isAlone = bare === "metres" && (isFirst || last?.kind === "swr");
  if (named !== null && (isAlone || isOneOfSeveral)) return alone(named);
  const isBeforePlace = next?.kind === "place" && next.isAt;
  const mayBeFrequency =
    (isFirst && bare === "megahertz" && !isBeforePlace) || isAt || (last?.kind === "swr" && isFine);
  return mayBeFrequency && isInSomeBand(hz / 1e6) ? alone(placeOfFrequency(hz)) : null;
}

/** The band that a whole number names: of metres wherever that is told, else where one would not note an SWR so. */
const bandOf = (printed: string, bare: NoteStyle["bare"]): Place | null =>
  /^\d{2,3}$/.test(printed) || (bare === "metres" && /^\d{1,4}$/.test(printed)) ? placeOfBand(`${printed}m`) : null;

const nextOf = (rest: readonly NoteItem[]): NoteItem | undefined => rest.find(({ kind }) => kind !== "word");

/** Whether a band, by its number or in full, comes next and an SWR behind it: "80 and 40 both 1.5", "15, 12 and 10m: 2". */
function isBandBefore(rest: readonly NoteItem[]): boolean {
  const next = nextOf(rest);
  const isBand =
    (next?.kind === "place" && next.isJoined && !next.isAt) ||
    (next?.kind === "number" && bandOf(next.printed, null) !== null);
  const isValue = (item: NoteItem) =>
    item.kind === "swr" || (item.kind === "number" && bandOf(item.printed, null) === null);
  return isBand && rest.some((item) => item !== next && isValue(item));
}

/** Whether a number that a word stands before comes next: "40 is a lovely 1.2". */
function isSaidOf(rest: readonly NoteItem[]): boolean {
  const next = nextOf(rest);
  return next?.kind === "swr" || (next?.kind === "number" && next.isSaid && !next.isRange);
}

/** "2.3 @ 1.827 MHz", "1.4 on 40m and 1.7 on 20m". */
function readValuesFirst(items: readonly Settled[]): readonly NotedReading[] | null {
  // "We left lock 7 at 10" is none.
  if (items[0]?.kind === "word") return null;
  const readings: NotedReading[] = [];
  let values: Value[] = [];
  for (const item of items) {
    if (item.kind === "swr") values.push(item);
    else if (item.kind === "place") {
      if (item.place === null || values.length === 0 || !item.isAt) return null;
      readings.push(readingOf(item.place, values));
      values = [];
    }
  }
  return readings;
}

/** "40m 1.5", "17m and 12m both 2.2", "80m 1.5 @ 3.650", "40m: 7.030 1.4 / 7.150 1.8". */
function readPlacesFirst(items: readonly Settled[]): readonly NotedReading[] | null {
  const readings: NotedReading[] = [];
  let places: PlaceItem[] = [];
  let values: Value[] = [];
  let wordsBetween = 0;
  const close = () => {
    if (values.length > 0)
      readings.push(...places.flatMap(({ place }) => (place === null ? [] : readingOf(place, values))));
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
    const known = places.at(-1)?.place ?? null;
    const isOfBand = place !== null && known !== null && !known.isAtFrequency && liesWithin(place, known);
    const isLast = !items.slice(i + 1).some(({ kind }) => kind === "swr");
    if (isOfBand && (values.length === 0 || isLast)) places = [...places.slice(0, -1), item];
    else if (values.length === 0 && places.length > 0 && item.isJoined && wordsBetween === 0) places.push(item);
    else {
      close();
      places = [item];
    }
    wordsBetween = 0;
  }
  close();
  return places.some(({ place }) => place === null) && readings.length === 0 ? null : readings;
}

const liesWithin = ({ lowHz, highHz }: Place, band: Place): boolean => liesIn(lowHz, band) && liesIn(highHz, band);

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

/** The SWR in a cell of a table of notes; null where it holds none. */
export function swrInCell(cell: string): Pick<NotedReading, "swr" | "isAtLeast" | "isRange"> | null {
  const items = settled(itemsOf(plainNote(cell).trim()), { bare: null });
  const values = items?.flatMap((item) => (item.kind === "swr" ? [item] : [])) ?? [];
  if (values.length === 0 || items?.some(({ kind }) => kind === "place")) return null;
  const { swr, isAtLeast, isRange } = readingOf(placeOfFrequency(0), values);
  return { swr, isAtLeast, isRange };
}
