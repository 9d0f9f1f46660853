import { reflectionMagnitudeFromReturnLoss, swrFromReflectionMagnitude } from "../../reflection/swr.js";
import { LEAST_FREQUENCY } from "../quantities/frequency-unit.js";
import { patternsFor } from "./note-patterns.js";
import {
  hertzOf,
  isInSomeBand,
  numberIn,
  type Place,
  placeNamedBy,
  placeOfBand,
  placeOfFrequency,
  placeOfStretch,
} from "./note-place.js";
import { OTHER_UNIT, READING_UNIT } from "./note-words.js";

/** What stands in a line of notes, in its order. */
export type NoteItem =
  /** A band, a stretch or a frequency with its unit; null: a band that there is none of, such as 11 m */
  | { readonly kind: "place"; readonly place: Place | null; readonly isAt: boolean; readonly isJoined: boolean }
  /** An SWR, in a form that nothing else has */
  | {
      readonly kind: "swr";
      readonly swr: number;
      readonly bound: "under" | "over" | null;
      readonly isRange: boolean;
      /** A word such as "flat" says so */
      readonly isWorded?: boolean;
    }
  /** A number by itself: an SWR, a frequency in MHz, or a band in metres */
  | {
      readonly kind: "number";
      readonly value: number;
      readonly printed: string;
      readonly bound: "under" | "over" | null;
      readonly isAt: boolean;
      /** Stands behind "to" or a dash, and a number before that */
      readonly isRange: boolean;
      /** A word stands between it and what is before: "40 is 1.2" */
      readonly isSaid: boolean;
      /** Stands in brackets behind a word */
      readonly isAside: boolean;
    }
  /** A reading of another quantity */
  | { readonly kind: "other" }
  /** A word that no note of an SWR needs, or words for how far an SWR reaches */
  | { readonly kind: "word"; readonly isExtent?: boolean; readonly text?: string };

interface Scan {
  readonly line: string;
  position: number;
  bound: "under" | "over" | null;
  isAt: boolean;
  isJoined: boolean;
  isRange: boolean;
  isSaid: boolean;
  /** Behind a word that stands before the end of a range, or before a place */
  mayBeAt: boolean;
}

/** Takes a line of notes, in small letters and without accents, apart. */
export function itemsOf(line: string): readonly NoteItem[] {
  const patterns = patternsFor(line);
  const scan: Scan = {
    line,
    position: 0,
    bound: null,
    isAt: false,
    isJoined: true,
    isRange: false,
    isSaid: false,
    mayBeAt: false,
  };
  const items: NoteItem[] = [];
  const put = (item: NoteItem) => {
    items.push(item);
    Object.assign(scan, { bound: null, isAt: false, isJoined: true, isRange: false, isSaid: false, mayBeAt: false });
  };
  const take = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = scan.position;
    const match = pattern.exec(line);
    if (match !== null) scan.position += match[0].length;
    return match;
  };
  const isInBrackets = () => /\(\s*\p{L}[^)]*$/u.test(line.slice(0, scan.position));
  const placed = (place: Place | null): true => {
    put({ kind: "place", place, isAt: scan.isAt || scan.mayBeAt, isJoined: scan.isJoined });
    return true;
  };
  const takePlace = (): boolean => {
    if (take(patterns.titleBand) !== null) return placed(placeOfBand("160m"));
    const band = take(patterns.band);
    if (band !== null) {
      // "Mast 6 m: 3 guys": as long as a thing is no band, unless it stands in the next cell.
      const before = items.at(-1);
      const isTitled = /(?:[:;|\t]\s*|,)$/.test(line.slice(0, scan.position - band[0].length));
      if (before?.kind === "word" && !isTitled && patterns.lengthy.test(before.text ?? ""))
        items.push({ kind: "word" });
      else placed(placeOfBand(`${band[1]}${band[2]}m`));
      return true;
    }
    const named = take(patterns.namedByMHz);
    if (named !== null) return placed(placeNamedBy(Number(named[1]) * hertzOf(named[2])));
    const labelled = take(patterns.labelled);
    if (labelled !== null) return placed(placeOfBand(`${labelled[1]}m`));
    const before = scan.position;
    const stretch = take(patterns.stretch);
    if (stretch !== null) {
      const place = placeOfStretch(numberIn(stretch[1]), numberIn(stretch[2]), stretch[3]);
      // "3.07 a 21.4 MHz" is an SWR at a frequency.
      const mayBeAt = place === null && patterns.isAt.test(stretch[0].replace(/^[\d.,]+|[\d.,]+\s*\S+$/g, ""));
      if (!mayBeAt) return placed(place);
      scan.position = before;
    }
    const frequency = take(patterns.frequency);
    if (frequency !== null) {
      const hz = numberIn(frequency[1]) * hertzOf(frequency[2]);
      if (hz < LEAST_FREQUENCY) return placed(null);
      // "24 MHz" is the band at 24.9.
      const named =
        frequency[2] === "mhz" && /^\d+$/.test(frequency[1] ?? "") && !isInSomeBand(hz / 1e6) ? placeNamedBy(hz) : null;
      return placed(named ?? placeOfFrequency(hz));
    }
    const start = scan.position;
    const equals = take(patterns.equals);
    const equal = numberIn(equals?.[1]);
    const megahertz = equal >= 1000 ? equal / 1000 : equal;
    if (equals !== null && isInSomeBand(megahertz)) return placed(placeOfFrequency(megahertz * 1e6));
    scan.position = start;
    return false;
  };
  /** ρ where it is told as a return loss, or as powers. */
  const takeMagnitude = (): number | null => {
    const loss = take(patterns.returnLoss) ?? take(patterns.returnLossFirst);
    if (loss !== null) return reflectionMagnitudeFromReturnLoss(numberIn(loss[1]));
    const [, ...powers] = take(patterns.powers) ?? [];
    const [forward, back] = powers.filter((power) => power !== undefined).map(numberIn);
    if (forward !== undefined && back !== undefined) return back < forward ? Math.sqrt(back / forward) : 1;
    const part = take(patterns.reflectedShare);
    return part === null ? null : Math.sqrt(Math.min(1, numberIn(part[1]) / 100));
  };
  const takeValue = (): boolean => {
    if (take(patterns.illegible) !== null) {
      items.push({ kind: "word" });
      return true;
    }
    const magnitude = takeMagnitude();
    if (magnitude !== null) {
      put({ kind: "swr", swr: swrFromReflectionMagnitude(magnitude), bound: null, isRange: false });
      return true;
    }
    const ratio = take(patterns.ratio);
    const more = ratio === null ? take(patterns.more) : null;
    const less = ratio === null && more === null ? take(patterns.less) : null;
    const plain = ratio === null && more === null && less === null ? take(patterns.number) : null;
    const { bound, isAt, isRange, isSaid } = scan;
    if (ratio !== null) put({ kind: "swr", swr: numberIn(ratio[1] ?? ratio[2]), bound, isRange });
    else if (more !== null) put({ kind: "swr", swr: numberIn(more[1]), bound: "over", isRange });
    else if (less !== null) put({ kind: "swr", swr: numberIn(less[1]), bound: "under", isRange });
    else if (plain !== null) {
      const rest = line.slice(scan.position);
      const [printed, digits] = plain;
      if (READING_UNIT.test(rest)) put({ kind: "other" });
      else if (!OTHER_UNIT.test(rest))
        put({
          kind: "number",
          value: numberIn(digits),
          printed,
          bound,
          isAt,
          isRange,
          isSaid,
          isAside: isInBrackets(),
        });
    } else if (take(patterns.offScale) !== null)
      put({ kind: "swr", swr: Number.POSITIVE_INFINITY, bound: null, isRange });
    else if (take(patterns.matched) !== null) put({ kind: "swr", swr: 1, bound: null, isRange, isWorded: true });
    else return false;
    return true;
  };
  /** "1.2 a 1.5", but also "1.5 a 7.1 MHz" */
  const takeRange = (): boolean => {
    const range = take(patterns.range);
    if (range !== null) scan.mayBeAt = patterns.isAt.test(range[0]);
    return range !== null;
  };
  const takeWord = (): boolean => {
    if (take(patterns.over) !== null) scan.bound = "over";
    else if (take(patterns.under) !== null) scan.bound = "under";
    else if (takeRange()) scan.isRange = ["number", "swr"].includes(items.at(-1)?.kind ?? "");
    else if (take(patterns.at) !== null) Object.assign(scan, { isAt: true, isSaid: true });
    else if ([patterns.fillers, patterns.signs, patterns.about].some((pattern) => take(pattern) !== null))
      scan.isSaid = true;
    else if (take(patterns.same) !== null) items.push(...valuesBefore(items));
    else if (take(patterns.join) !== null || take(patterns.glue) !== null) {
      // "1.5 (40m)", "SWR 1.3: 160m and 6m"
      const before = line.slice(0, scan.position);
      const isTitle = items.length === 1 && /:\s*$/.test(before);
      if (isTitle || /\(\s*$/.test(before)) scan.isAt = isValue(items.at(-1));
      // "40m dipole: 1.5"
      if (patterns.antenna.test(line.slice(0, scan.position))) scan.isSaid = true;
    } else {
      const word = take(patterns.word);
      if (word === null) return false;
      items.push({ kind: "word", text: word[0] });
      scan.isJoined = false;
    }
    return true;
  };
  const isStretchNext = (): boolean => {
    patterns.stretch.lastIndex = scan.position + (/^\s*/.exec(line.slice(scan.position))?.[0].length ?? 0);
    return patterns.stretch.test(line);
  };
  /** "Under 1.5 from 14.0 to 14.2 MHz" is a reading of that stretch; of a band named before, it tells how far that reaches. */
  const takeLimit = (): boolean => {
    const limit = take(patterns.limit);
    if (limit === null) return false;
    if (items.some(({ kind }) => kind === "place") || !isStretchNext()) items.push({ kind: "word", isExtent: true });
    else {
      put({ kind: "swr", swr: numberIn(limit[1]), bound: "under", isRange: false });
      scan.isAt = true;
    }
    return true;
  };
  while (scan.position < line.length) {
    if (takeLimit()) continue;
    else if (take(patterns.transformer) !== null) items.push({ kind: "word" });
    else if (take(patterns.date) !== null || takePlace() || takeValue() || takeWord()) continue;
    scan.position++;
  }
  return items;
}

const isValue = (item: NoteItem | undefined): boolean => item?.kind === "number" || item?.kind === "swr";

/** The values before the last place: what "same" stands for. */
function valuesBefore(items: readonly NoteItem[]): readonly NoteItem[] {
  const last = items.findLastIndex(isValue);
  const first = items.slice(0, last + 1).findLastIndex((item) => !isValue(item)) + 1;
  // "7.125 same": a number that begins the line is the frequency.
  const isFrequency = first === 0 && !items.some(({ kind }) => kind === "place");
  return last < 0 || isFrequency ? [] : items.slice(first, last + 1);
}
