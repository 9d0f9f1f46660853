import { once } from "../../numbers/once.js";
import { placeOfBand, UNIT } from "./note-place.js";
import {
  ABOUT_WORD,
  ANTENNA_WORD,
  AT_WORD,
  BAND_WORD,
  EXTENT_WORD,
  FILLER_WORD,
  JOIN_WORD,
  LENGTH_WORD,
  LENGTHY_WORD,
  MATCHED_WORD,
  METRES_WORD,
  OFF_SCALE_WORD,
  OR_LESS,
  OR_MORE,
  OVER_WORD,
  SAME_WORD,
  SWR_WORD,
  UNDER_WORD,
  UP_TO_WORD,
} from "./note-words.js";

const MONTH =
  "(?:jan|feb|fev|mar|apr|avr|abr|may|mai|maj|jun|jul|aug|aou|ago|sep|set|oct|okt|ott|out|nov|dec|dez|dic)\\p{L}*";
const WATTS = "(\\d+(?:[.,]\\d+)?) ?(?:k?w|watts?)?";
const FORWARD_WORD = "(?:forward|fwd|fw|out|vor\\p{L}*|hin\\p{L}*|direct[ae]?)";
const BACK_WORD =
  "(?:reflected|refl?|rfl|rev(?:erse)?|(?:coming |comes )?back|zuruck|ruck\\p{L}*|reflejada|reflechie|riflessa)";
/** Patterns that are the same for every line; made when there are notes to read. */
const fixedPatterns = once(() => ({
  /** A mark, or several, between the items */
  glue: /[\s,;:=|/·()[\]"'“”–—…!•*+-]+|\.(?!\d)/uy,
  date: new RegExp(
    `(?:\\d{4}-\\d{1,2}-\\d{1,2}|\\d{1,2}\\.\\d{1,2}\\.\\d{2,4}|\\d{1,2}[/-]\\d{1,2}[/-]\\d{2,4}|\\d{1,2}\\.? (?:de )?${MONTH}(?: \\d{4})?|\\d{1,2}:\\d{2}(?!\\d)(?::\\d{2})?)(?![\\d.,]*\\d)(?!\\s*(?:\\/|c?m(?!\\p{L})))`,
    "uy",
  ),
  titleBand: /top band(?!\p{L})/uy,
  band: new RegExp(
    `(?:${BAND_WORD} )?(\\d{1,4}) ?-?(c?)${METRES_WORD}(?:-?es\\b)?(?:[- ]?${BAND_WORD})?(?![\\p{L}\\d])(?!,? (?:${LENGTH_WORD})(?!\\p{L}))`,
    "uy",
  ),
  namedByMHz: new RegExp(`(\\d{1,3}) ?(?:${UNIT})?[- ]?${BAND_WORD}(?!\\p{L})`, "uy"),
  over: new RegExp(OVER_WORD, "uy"),
  under: new RegExp(UNDER_WORD, "uy"),
  about: new RegExp(ABOUT_WORD, "uy"),
  range: new RegExp(`\\s*${UP_TO_WORD}\\s*(?=(?:${ABOUT_WORD}\\s*)?[\\d<>])`, "uy"),
  at: new RegExp(`${AT_WORD}(?!\\p{L})`, "uy"),
  isAt: new RegExp(`^\\s*${AT_WORD}\\s*$`, "u"),
  join: new RegExp(`(?:${JOIN_WORD})(?!\\p{L})`, "uy"),
  offScale: new RegExp(OFF_SCALE_WORD, "uy"),
  /** "1:9 balun" is no SWR */
  transformer: /\d+ ?: ?\d+ (?:current |voltage )?(?:baluns?|ununs?|transformers?|trafos?|chokes?)(?!\p{L})/uy,
  /** "1.?": a digit that nobody can read; "1..4", which may be 1.4 or all from 1 to 4 */
  illegible: /\d+[.,](?:[?_x]|(?=\())|\?[.,]\d+|(?<![\d.,])\d\.\.\d(?![\d.,])/uy,
  returnLossFirst: /[-−]?(\d+(?:[.,]\d+)?) ?db (?:of )?(?:return ?loss|r\.?l\.?|ruckfluss\p{L}*)(?!\p{L})/uy,
  /** "100 W forward, 4 W back", "fwd 100, ref 4" */
  powers: new RegExp(
    `(?:${WATTS} ?${FORWARD_WORD}|${FORWARD_WORD}[\\s:=]*${WATTS})(?:[\\s,;/&]|and(?!\\p{L})|und(?!\\p{L}))*(?:${WATTS} ?${BACK_WORD}|${BACK_WORD}[\\s:=]*${WATTS})(?!\\p{L})`,
    "uy",
  ),
  reflectedShare: new RegExp(
    `(\\d+(?:[.,]\\d+)?) ?% (?:of the power )?(?:comes |is |was )?${BACK_WORD}(?!\\p{L})`,
    "uy",
  ),
  returnLoss: /(?:return ?loss|r\.?l\.?|ruckfluss\p{L}*)[\s:=]*[-−]?(\d+(?:[.,]\d+)?) ?db(?!\p{L})/uy,
  same: new RegExp(`(?:${SAME_WORD})(?!\\p{L})`, "uy"),
  matched: new RegExp(`(?:${MATCHED_WORD})(?!\\p{L})`, "uy"),
  fillers: new RegExp(`(?:${SWR_WORD}|${FILLER_WORD}|${UP_TO_WORD})(?![\\p{L}\\d])`, "uy"),
  /** Fillers of languages that put no blanks between words */
  signs: /(?:驻波比?|駐波比?|定在波比?|정재파비?|[でてはがか은는])/uy,
  antenna: new RegExp(`(?:${ANTENNA_WORD})\\s*:\\s*$`, "u"),
  /** What has a length in metres */
  lengthy: new RegExp(`^(?:${LENGTHY_WORD})$`, "u"),
  word: /\p{L}[\p{L}'’.-]*/uy,
}));
const NUMBER_WITH_POINT = "(\\d+(?:\\.\\d+)?)";
const NUMBER_WITH_COMMA = "(\\d+(?:[.,]\\d+)?)";

/** A comma stands before decimals where no point does, and no word or blank beside it. */
const numberIsIn = (line: string): string =>
  /\d\.\d/.test(line) || /^[^,]*\p{L}["']?\s*,/u.test(line) ? NUMBER_WITH_POINT : NUMBER_WITH_COMMA;

const NEVER = /(?!)/uy;
const BAND_LABEL = /(?<![\d.,:-])(\d{1,3})\s*[:=]\s+(?=[<>~≈]?\s*\d)/gu;

/** Whether whole numbers stand before colons, each of them the length of waves of a band. */
function areBandLabels(line: string): boolean {
  const labels = [...line.matchAll(BAND_LABEL)].map(([, digits]) => placeOfBand(`${digits}m`));
  return labels.length > 1 && labels.every((place) => place !== null);
}

/** What the items of a line of notes, in small letters and without accents, look like; each is looked for where the last one ended. */
export function patternsFor(line: string) {
  const number = numberIsIn(line);
  return {
    ...fixedPatterns(),
    stretch: new RegExp(`${number}\\s*${UP_TO_WORD}\\s*${number}\\s*${UNIT}`, "uy"),
    frequency: new RegExp(`${number}\\s*${UNIT}`, "uy"),
    ratio: new RegExp(`(?:${number}\\s*(?::|(?:to|zu)(?= ))\\s*1(?![\\d.,])|1\\s*:\\s*${number})`, "uy"),
    more: new RegExp(`${number}\\s*${OR_MORE}(?!\\p{L})`, "uy"),
    less: new RegExp(`${number}\\s*${OR_LESS}(?!\\p{L})`, "uy"),
    limit: new RegExp(
      `(?:${UNDER_WORD}|(?:within|inside)\\s)\\s*${number}(?:\\s*:\\s*1)?\\s+(?:${EXTENT_WORD})(?!\\p{L})`,
      "uy",
    ),
    // "80: 1.8; 40: 1.5": of a line whose labels are all bands.
    labelled: areBandLabels(line) ? /(\d{1,3})\s*[:=]\s+(?=[<>~≈]?\s*\d)/uy : NEVER,
    // "7.1=1.5": what stands before is a frequency.
    equals: /(\d+[.,]\d+|\d{4,6})\s*=\s*(?=\d)/uy,
    number: new RegExp(`${number}(?:ish(?!\\p{L}))?`, "uy"),
  };
}
