import { once } from "../../numbers/once.js";

/**
 * Numbers as they are spoken, without accents and in small letters: English, German, French, Spanish, Italian and Dutch (from memory).
 * What a word means in one of them it means in all, or nothing in the others.
 */
const WORDS: Readonly<Record<number, string>> = {
  0: "zero oh null nul cero",
  1: "one eins un uno een",
  2: "two zwei zwo deux dos due twee",
  3: "three drei trois tres tre drie",
  4: "four vier quatre cuatro quattro",
  5: "five funf cinq cinco cinque vijf",
  6: "six sechs seis sei zes",
  7: "seven sieben sept siete sette zeven",
  8: "eight acht huit ocho otto",
  9: "nine neun neuf nueve nove negen",
  10: "ten zehn dix diez dieci tien",
  11: "eleven elf onze once undici",
  12: "twelve zwolf douze doce dodici twaalf",
  13: "thirteen dreizehn treize trece",
  14: "fourteen vierzehn quatorze catorce",
  15: "fifteen funfzehn quinze quince quindici vijftien",
  16: "sixteen sechzehn seize",
  17: "seventeen siebzehn dix-sept diecisiete diciassette zeventien",
  18: "eighteen achtzehn dix-huit",
  19: "nineteen neunzehn dix-neuf",
  20: "twenty zwanzig vingt veinte venti twintig",
  30: "thirty dreissig trente treinta trenta dertig",
  40: "forty fourty vierzig quarante cuarenta quaranta veertig",
  50: "fifty funfzig cinquante cincuenta cinquanta",
  60: "sixty sechzig soixante sesenta sessanta zestig",
  70: "seventy siebzig setenta settanta zeventig",
  80: "eighty achtzig quatre-vingts quatre-vingt ochenta ottanta tachtig",
  90: "ninety neunzig noventa novanta",
  100: "hundred hundert cent ciento",
  160: "einhundertsechzig hundertsechzig centosessanta honderdzestig",
};
const POINT_WORD = "(?:point|dot|komma|comma|virgule|coma|virgola|punto|punkt)";

const values = once(
  () =>
    new Map(
      Object.entries(WORDS).flatMap(([value, words]) => words.split(" ").map((word) => [word, Number(value)] as const)),
    ),
);
const patterns = once(() => {
  const anyOf = (words: readonly string[]) => `(?:${words.toSorted((a, b) => b.length - a.length).join("|")})`;
  const word = anyOf([...values().keys()]);
  const digit = anyOf([...values()].flatMap(([name, value]) => (value < 20 ? [name] : [])));
  const number = `${word}(?:[ -]+${word}){0,3}`;
  return {
    fraction: new RegExp(
      `(?<![\\p{L}\\d.,])(${number}|\\d+) ${POINT_WORD} (${digit}(?: ${digit}){0,3}|\\d+)(?![\\p{L}\\d])`,
      "gu",
    ),
    whole: new RegExp(
      `(?<![\\p{L}\\d.,])(${number})(?=[ -]?(?:m(?:t|et)(?:er|re|ro|ri)\\p{L}*|(?:mega|kilo)?hertz)(?!\\p{L}))`,
      "gu",
    ),
    toOne: /(?<=\d) to one(?!\p{L})/gu,
    oneTo: /(?<![\p{L}\d])one to (?=\d)/gu,
  };
});
const MAY_HOLD_SOME =
  /(?:point|dot|komma|comma|virgule|coma|virgola|punto|punkt) |met(?:er|re|ro|ri)|mtr|hertz| to one|one to /;

/** A line, in small letters and without accents, with figures for the numbers that are spoken where only a number can stand. */
export function withFigures(line: string): string {
  if (!MAY_HOLD_SOME.test(line)) return line;
  const { fraction, whole, toOne, oneTo } = patterns();
  return line
    .replace(fraction, (printed, before: string, behind: string) => {
      const ones = wholeOf(before);
      return ones === null ? printed : `${ones}.${behind.split(" ").map(figureOf).join("")}`;
    })
    .replace(whole, (printed, words: string) => String(wholeOf(words) ?? printed))
    .replace(toOne, ":1")
    .replace(oneTo, "1:");
}

const figureOf = (word: string): string => String(values().get(word) ?? word);

/** "forty", "twenty-one", "one sixty", "one hundred and sixty"; null for words that make no number together. */
function wholeOf(words: string): number | null {
  if (/^\d+$/.test(words)) return Number(words);
  const known = values().get(words);
  if (known !== undefined) return known;
  let whole = 0;
  for (const word of words.split(/[ -]+/)) {
    const value = values().get(word);
    if (value === undefined) return null;
    if (value === 100) whole = Math.max(1, whole) * 100;
    else if (whole === 0 || (whole >= 20 && whole % 10 === 0 && value < 10) || (whole % 100 === 0 && value < 100))
      whole += value;
    else if (whole < 10 && value >= 10) whole = 100 * whole + value;
    else return null;
  }
  return whole;
}
