import type { NoteItem } from "./note-items.js";
import {
  isInSomeBand,
  liesIn,
  type NoteStyle,
  type Place,
  placeOfBand,
  placeOfFrequency,
  placeOfStretch,
} from "./note-place.js";

/** SWR beyond this is noted by nobody as a number. */
const GREATEST_SWR = 100;
/** A number with a decimal below this may be an SWR. */
const GREATEST_NOTED_FINELY = 10;
/** A number of megahertz as high as this is seldom an SWR. */
const HIGH_MHZ = 7;

/** An item of which it is known what it is. */
export type Settled = Exclude<NoteItem, { readonly kind: "number" }> & { readonly isSaid?: boolean };
export type PlaceItem = Extract<NoteItem, { readonly kind: "place" }>;
export type Value = Extract<Settled, { readonly kind: "swr" }>;

/**
 * Says of each number by itself what it is: the band or the frequency that a line begins with, the frequency of a band, the ends
 * of a stretch, or an SWR. Numbers behind words that follow an SWR are a remark.
 *
 * @param known the band that all of it is of, where that is told elsewhere
 * @returns null where a number is none of these
 */
export function settled(
  items: readonly NoteItem[],
  { bare }: NoteStyle,
  known: Place | null = null,
): readonly Settled[] | null {
  const done: Settled[] = [];
  let band = known;
  let isRemark = false;
  for (let i = 0; i < items.length; i++) {
    const item = items[i] as NoteItem;
    if (item.kind === "place") {
      band = item.place !== null && !item.place.isAtFrequency ? item.place : band;
      isRemark = false;
    }
    if (item.kind === "word" && done.at(-1)?.kind === "swr") isRemark = true;
    // "1.3 (45 ohm)"
    if (item.kind === "other" && !isRemark && done.at(-1)?.kind !== "swr") return null;
    if (item.kind !== "number") {
      if (item.kind !== "other") done.push(item);
      continue;
    }
    // "1.5 (was 2.5)"
    if (item.isAside && done.findLast(({ kind }) => kind !== "word")?.kind === "swr") continue;
    if (isRemark) {
      // "3 windows 1.2": the finer number behind a word may be the SWR.
      const [before, word] = items.slice(Math.max(0, i - 2), i);
      const isFiner =
        word?.kind === "word" &&
        !word.isExtent &&
        before?.kind === "number" &&
        !/[.,]/.test(before.printed) &&
        /[.,]\d$/.test(item.printed);
      const isLikeSwr = /\d[.,]\d/.test(item.printed) && item.value >= 1 && item.value < GREATEST_NOTED_FINELY;
      if (isFiner && isLikeSwr) return null;
      // "1.6 dry, 1.9 wet": both, unless it is a frequency of the band.
      const isOther = isLikeSwr && band !== null && !liesIn(item.value * 1e6, band);
      if (isOther) done.push({ kind: "swr", swr: item.value, bound: item.bound, isRange: false });
      continue;
    }
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
  { value, printed, isAt, isSaid, isRange, bound }: Extract<NoteItem, { readonly kind: "number" }>,
  next: NoteItem | undefined,
  { isFirst, bare, band, before, rest }: Around,
): { readonly place: Place; readonly isStretch: boolean } | null {
  if (bound !== null) return null;
  const hz = value * (value >= 1000 ? 1e3 : 1e6);
  const last = before.at(-1);
  // "2:1 at 7.02 and 7.15", "1.5 at 7.0 to 7.2"
  // "1.7 at 1.96 MHz"
  const isReading = (isSaid && !isAt) || (next?.kind === "place" && next.isAt);
  if (
    !isReading &&
    last?.kind === "place" &&
    last.isAt &&
    last.place?.isAtFrequency &&
    liesNear(hz, last.place.lowHz)
  ) {
    return { place: placeOfFrequency(hz), isStretch: false };
  }
  const alone = (place: Place | null) => (place === null ? null : { place, isStretch: false });
  const isFine = /[.,]\d{3}|^\d{4,}/.test(printed);
  const isBehindPlace = last?.kind === "place";
  const inUnit = value >= 1000 ? "khz" : undefined;
  const stretch = next?.kind === "number" && next.isRange ? placeOfStretch(value, next.value, inUnit) : null;
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
    const isOfPair = isBeforeItsSwr(value, rest, band) && (isBehindPlace || last?.kind === "swr");
    return liesIn(hz, band) && (isAt || isFine || isHigh || isOfPair) ? alone(placeOfFrequency(hz)) : null;
  }
  if (isFirst && stretch !== null && (bare !== "megahertz" || rest.length > 1)) {
    return { place: stretch, isStretch: true };
  }
  const areBands = before.some((item) => item.kind === "place" && item.place !== null && !item.place.isAtFrequency);
  const named = bandOf(printed, isAt && areBands ? "metres" : bare);
  if (isAt && areBands && named !== null) return alone(named);
  // "on 40 1.5"
  const mayBeBand = isFirst || last?.kind === "swr";
  if (mayBeBand && isAt && named !== null && next?.kind === "number" && !next.isRange) return alone(named);
  const isOneOfSeveral = isBehindPlace || isFirst ? (isBehindPlace && isRange) || isBandBefore(rest) : isSaidOf(rest);
  const isAlone = bare === "metres" && (isFirst || last?.kind === "swr");
  if (named !== null && (isAlone || isOneOfSeveral)) return alone(named);
  const isBeforePlace = (next?.kind === "place" || next?.kind === "number") && next.isAt;
  const mayBeFrequency =
    (isFirst && bare === "megahertz" && !isBeforePlace) || isAt || (last?.kind === "swr" && isFine);
  return mayBeFrequency && isInSomeBand(hz / 1e6) ? alone(placeOfFrequency(hz)) : null;
}

/**
 * Whether numbers come in pairs of a frequency in a band and an SWR, from this one on: "40m: 7.0/1.9 7.1/1.3". Of a single pair one
 * cannot know where both could be an SWR.
 */
function isBeforeItsSwr(value: number, rest: readonly NoteItem[], band: Place): boolean {
  const values = [value, ...rest.map((item) => (item.kind === "number" ? item.value : Number.NaN))];
  const arePairs = values.every((each, i) => liesIn(each * 1e6, band) === (i % 2 === 0));
  return arePairs && values.length % 2 === 0 && (values.length > 2 || value >= HIGH_MHZ);
}

/** A frequency this share off another one is of the same band, and by far no SWR. */
const SAME_BAND = 0.1;
const liesNear = (hz: number, otherHz: number): boolean => Math.abs(hz / otherHz - 1) < SAME_BAND;

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
