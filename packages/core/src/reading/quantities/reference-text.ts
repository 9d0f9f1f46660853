import { once } from "../../numbers/once.js";

/** "Z₀ = 75 Ω" as "z0 = 75 ohm": no accents, no signs that are written in several ways. */
export const plainStatement = (text: string): string =>
  text
    .replace(/[Ωω\u2126]|欧姆?|歐姆?|オーム|옴/gu, "ohm")
    .replace(/(?<!\p{L})ом(?:ов|ах|ам|а)?(?!\p{L})/giu, "ohm")
    .replace(/[\u2080-\u2089]/g, (digit) => String(digit.charCodeAt(0) - 0x2080))
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/ς/g, "σ")
    // A Greek letter that looks like the Latin one.
    .replace(/(?<!\p{L})[ζΖ](?=[-_ ]?[0o])/gu, "z")
    .toLowerCase()
    .replace(/ł/g, "l")
    .replace(/(?<![\p{L}])(?:omow|omy|omach|ohm\p{L}+)(?!\p{L})|(?<=\d ?)om(?!\p{L})/gu, "ohm")
    // "75+0j"
    .replace(/(?<=\d)\s*[+-]\s*(?:j\s*0(?:[.,]0+)?|0(?:[.,]0+)?\s*j)(?![\d.,])/g, "")
    // "the 300-ohm feeder"
    .replace(/(?<=\d)-(?=ohm)/g, " ")
    .replace(/(?<!\p{L})([zr][0o])[,;]\s*(?=\d)/gu, "$1 = ")
    // An admittance of so many millisiemens is the reference as well.
    .replace(
      REFERENCE_ADMITTANCE,
      (_, digits: string) => `z0 = ${Number((1000 / Number(digits.replace(",", "."))).toPrecision(6))} ohm`,
    )
    .replace(GERMAN_NUMBERS, (word) => String(GERMAN[word]))
    .replace(numberWords(), (words) => String(numberOfWords(words)));

const REFERENCE_ADMITTANCE =
  /(?<!\p{L})(?:y[0o]|(?:reference|characteristic|system) admittance|bezugsleitwert)[\s:=]*(\d+(?:[.,]\d+)?) ?ms(?!\p{L})/gu;
/** Those that are references, as they are written without accents. */
const GERMAN: Readonly<Record<string, number>> = {
  funfzig: 50,
  sechzig: 60,
  funfundsiebzig: 75,
  hundert: 100,
  zweihundert: 200,
  dreihundert: 300,
  vierhundertfunfzig: 450,
  sechshundert: 600,
};
const GERMAN_NUMBERS = new RegExp(`(?<!\\p{L})(?:${Object.keys(GERMAN).join("|")})(?=[ -]ohm)`, "gu");

const UNITS = "one two three four five six seven eight nine".split(" ");
const TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split(" ");
const numberWords = once(
  () =>
    new RegExp(
      `(?<![\\p{L}])(?:(?:a|${UNITS.join("|")}) hundred(?: and)?(?: (?:${TENS.join("|")}))?(?:[ -](?:${UNITS.join("|")}))?|(?:${TENS.join("|")})(?:[ -](?:${UNITS.join("|")}))?)(?=[ -]ohm)`,
      "gu",
    ),
);

/** "four hundred and fifty" as 450. */
function numberOfWords(words: string): number {
  return words.split(/[ -]/).reduce((sum, word) => {
    if (word === "hundred") return Math.max(1, sum) * 100;
    const ten = TENS.indexOf(word);
    return sum + (ten >= 0 ? 10 * (ten + 2) : UNITS.indexOf(word) + 1);
  }, 0);
}
