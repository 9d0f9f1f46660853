import { isAscii, isUtf8, rewritten, type SourceText } from "../text/text.js";
import { wordsOf } from "./name-words.js";
import { referenceOf } from "./reference-statement.js";
import { isKnownWord } from "./role-from-header.js";

/** Encodings that texts of other alphabets have beside UTF-8; names and tables: WHATWG Encoding Standard. */
const OTHERS = ["windows-1251", "koi8-r", "ibm866", "windows-1253", "gbk", "big5", "shift_jis", "euc-jp", "euc-kr"];
/** As much of a text is looked at; names and statements stand at its head. */
const HEAD = 4096;
const MOST_LINES = 40;
/** One word may be known by chance. */
const FEWEST_KNOWN = 2;

/**
 * The same text in the encoding in which the most of its words are known, where it is not UTF-8 and another one than Latin-1 makes more sense.
 */
export function inLikelyEncoding(text: SourceText): SourceText {
  const head = text.bytes.subarray(0, HEAD);
  if (text.encoding !== "UTF-8" || isAscii(head) || isUtf8(head, true)) return text;
  const plain = sense(decoded(head, "windows-1252"));
  const found = OTHERS.map((encoding) => ({ encoding, known: sense(decoded(head, encoding)) }));
  const best = found.reduce((a, b) => (b.known > a.known ? b : a));
  if (best.known <= plain || best.known < FEWEST_KNOWN) return text;
  return { ...rewritten(text, decoded(text.bytes, best.encoding)), encoding: best.encoding };
}

/** Digits of other scripts, Arabic, Persian and Devanagari, the marks that stand among them, and all that is as wide as Chinese signs. */
const OTHER_DIGITS = /[\u0660-\u0669\u06f0-\u06f9\u0966-\u096f]/g;
const OTHER_MARKS = /[٫٬]/g;
const WIDE = /[\uff01-\uff5e\u3000]/g;
const HAS_WIDE_NUMBER = /[\uff10-\uff19]/;
/** How far signs that are as wide as Chinese ones stand from those of ASCII. */
const WIDE_OFFSET = 0xfee0;

/** Parts of a number in one sign, as decimals. */
const FRACTIONS: Readonly<Record<string, string>> = {
  "¼": "25",
  "½": "5",
  "¾": "75",
  "⅓": "33",
  "⅔": "67",
  "⅛": "125",
  "⅜": "375",
  "⅝": "625",
  "⅞": "875",
};
const SIGNS = Object.keys(FRACTIONS).join("");
const HAS_FRACTION = new RegExp(`[${SIGNS}]`);
const BEHIND_WHOLE = new RegExp(`(?<![\\d.,]\\d*[.,]\\d*)(\\d) ?([${SIGNS}])`, "g");

/**
 * The same text with the digits that everybody has, with decimals for "1½", and with letters and marks of usual width where it has digits as
 * wide as Chinese signs.
 */
export function withPlainDigits(text: SourceText): SourceText {
  if (isAscii(text.bytes.subarray(0, HEAD))) return text;
  const given = text.decode(0, text.bytes.length);
  const content = HAS_FRACTION.test(given) ? withDecimals(given) : given;
  const isWide = HAS_WIDE_NUMBER.test(content);
  if (!isWide && content === given && content.search(OTHER_DIGITS) < 0) return text;
  const plain = content
    .replace(OTHER_DIGITS, (digit) =>
      String((digit.charCodeAt(0) - (digit < "\u06f0" ? 0x660 : digit < "\u0966" ? 0x6f0 : 0x966)) % 10),
    )
    .replace(OTHER_MARKS, (mark) => (mark === "٫" ? "." : ""));
  const narrow = (sign: string) => (sign === "\u3000" ? " " : String.fromCharCode(sign.charCodeAt(0) - WIDE_OFFSET));
  return { ...rewritten(text, isWide ? plain.replace(WIDE, narrow) : plain), encoding: text.encoding };
}

/** "1½" as 1.5, or 1,5 where commas alone stand before decimals. */
function withDecimals(content: string): string {
  const mark = /\d,\d/.test(content) && !/\d\.\d/.test(content) ? "," : ".";
  return content.replace(BEHIND_WHOLE, (_, digit: string, part: string) => `${digit}${mark}${FRACTIONS[part]}`);
}

const decoded = (bytes: Uint8Array, encoding: string): string => new TextDecoder(encoding).decode(bytes);

/** How much of a text is known: its words without a letter of ASCII, and a reference impedance that it states. */
function sense(text: string): number {
  const lines = text.split(/\r\n|\n|\r/).filter((line) => /[^\0-\x7f]/.test(line));
  const words = lines.slice(0, MOST_LINES).flatMap(wordsOf);
  const known = new Set(words.filter((word) => /^[^\0-\x7f]+$/.test(word) && isKnownWord(word)));
  const states = lines.slice(0, MOST_LINES).some((line) => referenceOf([line], "")?.isSure === true);
  return known.size + (states ? 2 : 0);
}
