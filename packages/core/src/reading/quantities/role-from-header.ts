import { once } from "../../numbers/once.js";
import type { ColumnRole, Quantity } from "../options/column-role.js";
import { frequencyUnitOf } from "../options/units.js";
import { signedWordsOf } from "./header-phrases.js";
import { meaningByStem } from "./header-stems.js";
import { type Meaning, meaningsOfWords } from "./header-words.js";
import { roleInSigns, SHARE_OF_POWER, withoutForms } from "./names-in-signs.js";
import { FREQUENCY_WITHOUT_UNIT, isOffset, offsetFrequency } from "./offset-frequency.js";
import { QUANTITIES } from "./quantities.js";
import { LEAST_OHMS } from "./reference-patterns.js";
import { roleOfMeanings } from "./role-of-meanings.js";

function meaningOf(word: string, port: number): Meaning {
  const parameter = /^s(\d)(\d)$/.exec(word);
  if (parameter !== null) {
    if (parameter[1] !== parameter[2]) return "transmission";
    return Number(parameter[1]) === port ? "reflection" : "other-port";
  }
  // Numbers and names of traces ("tr1", "ch1") say nothing.
  if (/^(\d+|(trc?|ch)\d+)$/.test(word)) return "filler";
  return meaningsOfWords().get(word) ?? meaningByStem(word) ?? meaningByStem(withoutDigraphs(word)) ?? "unknown";
}

/** Whether a word of another alphabet is known in headers. */
export const isKnownWord = (word: string): boolean =>
  frequencyUnitOf(word) !== null ||
  signedWordsOf(word).every((part) => !["unknown", "filler"].includes(meaningOf(part, 1)));

/** A word with its umlauts written by a letter alone: "rueckfluss" for "rückfluss". */
const withoutDigraphs = (word: string): string => word.replace(/([aou])e/g, "$1").replace(/aa/g, "a");

/**
 * What a header cell says its column holds. A cell with a word that is not known is left alone: "insertion loss (dB)" must
 * not pass for a reflection because of its dB.
 *
 * @param header the cell's text, brackets and units included
 * @param port the port whose reflection is wanted
 */
export function roleFromHeader(header: string, port = 1): ColumnRole {
  if (header.length > LONGEST_NAME) return { quantity: "other" };
  const key = `${port} ${header}`;
  const known = KNOWN.get(key);
  if (known !== undefined) return known;
  const role = roleOf(header, port);
  if (KNOWN.size >= MOST_KNOWN) KNOWN.clear();
  KNOWN.set(key, role);
  return role;
}

/** No name of a column is longer. */
const LONGEST_NAME = 200;

/** Roles that were told before: the files of a season have the same headers. */
const KNOWN = new Map<string, ColumnRole>();
const MOST_KNOWN = 1000;

function roleOf(header: string, port: number): ColumnRole {
  const isPlain = PLAIN.test(header);
  const bare = isPlain ? null : roleOfBare(header, port);
  if (bare !== null) return bare;
  const words = signedWordsOf(header);
  const meanings = new Set(words.map((word) => meaningOf(word, port)));
  meanings.delete("filler");
  const multiple = isPlain ? null : roleOfReckoned(header, meanings, port);
  if (multiple !== null) return multiple;
  if (meanings.has("frequency")) return roleOfFrequency(header, words, meanings);
  if (meanings.has("transmission")) return { quantity: "transmission" };
  const altered = isPlain ? null : roleOfAltered(header, meanings, port);
  if (altered !== null) return altered;
  if (meanings.has("extreme")) {
    const role = roleFromHeader(header.replace(extremeWord(), " "), port);
    return role.quantity === "other" || role.quantity === "frequency"
      ? { quantity: "other" }
      : { ...role, isExtreme: true };
  }
  if (meanings.size === 0 || meanings.has("unknown") || meanings.has("other-port")) return { quantity: "other" };
  return roleOfMeanings(meanings) ?? { quantity: "other" };
}

/** Names in words and brackets alone, none of which says that the numbers are more than the words: most are. */
const PLAIN = /^(?!.*(?:norm|minus|less|offset|delta|above|over|beyond|reflection loss|\bu ?\())[a-z ()]*$/i;

/** Of a name with a reference or a form behind it what is left of it, or null. */
function roleOfBare(header: string, port: number): ColumnRole | null {
  const told = roleInSigns(header);
  if (told !== null) return told;
  const named = withoutForms(header);
  if (named !== header) return roleFromHeader(named, port);
  const bare = header.replace(NORMALISED, " ");
  return bare === header ? null : normalised(roleFromHeader(bare, port));
}

/** Of a name that says how its numbers were reckoned, or null. */
function roleOfReckoned(header: string, meanings: ReadonlySet<Meaning>, port: number): ColumnRole | null {
  const divided = DIVIDED.exec(header);
  if (divided !== null) {
    const role = roleFromHeader(header.replace(divided[0], ""), port);
    const by = Number((divided[1] ?? "").replace(",", "."));
    if (isOhmsOrSiemens(role.quantity))
      return by < LEAST_OHMS ? { ...role, factor: by * (role.factor ?? 1) } : { ...role, isNormalised: true };
  }
  if (reckoned().test(header)) return meanings.has("frequency") ? FREQUENCY_WITHOUT_UNIT : { quantity: "other" };
  return meanings.has("frequency") && isOffset(header) ? offsetFrequency(header) : null;
}

function roleOfFrequency(header: string, words: readonly string[], meanings: ReadonlySet<Meaning>): ColumnRole {
  const units = new Set(words.map(frequencyUnitOf).filter((unit) => unit !== null));
  // A word beside it may be a unit that is not known (THz, rad/s): its numbers must not be taken for Hz or MHz.
  if (meanings.size > 1 && units.size === 0 && hasBracket(header)) return FREQUENCY_WITHOUT_UNIT;
  // "Frequency (MHz)" over "kHz": nobody knows which.
  if (units.size > 1) return FREQUENCY_WITHOUT_UNIT;
  return { quantity: "frequency", frequencyUnit: [...units][0] ?? null };
}

/** Of a name whose quantity is turned round, squared or lessened, or null. */
function roleOfAltered(header: string, meanings: ReadonlySet<Meaning>, port: number): ColumnRole | null {
  // "SWR^-1"
  if (/\^ ?[-−]/.test(header)) return { quantity: "other" };
  const turned = TURNED.exec(header);
  if (turned !== null && !meanings.has("decibel")) return negated(roleFromHeader(header.slice(turned[0].length), port));
  const squared = SQUARE.exec(header)?.[1];
  const ofSquare = squared === undefined ? null : roleFromHeader(squared, port);
  if (ofSquare !== null && (SIZES_OF_REFLECTION.has(ofSquare.quantity) || isShareOfPower(ofSquare)))
    return SHARE_OF_POWER;
  const less = lessOne().exec(header)?.[1];
  if (less !== undefined) {
    const role = roleFromHeader(less, port);
    return role.quantity === "swr" ? { ...role, offset: 1 } : { quantity: "other" };
  }
  // Of the two things that English calls so the other is the mismatch loss.
  if (/reflection loss/i.test(header)) return { quantity: "other" };
  return isAltered(header, meanings) ? { quantity: "other" } : null;
}

/** Divided by the reference impedance: "R/Z0", "X (normalised)", "r / Zo". */
const NORMALISED = /\s*[/÷]\s*z[o0₀](?![\p{L}\d])|[([]?(?:\b|_)(?:normali[sz]ed|norm\.?|normiert)(?![\p{L}\d])[)\]]?/iu;
/** A sign that is turned round: "-X", "−∠S11". */
const TURNED = /^[\s"']*[-−] ?(?=[|\p{L}∠Γρ])/u;
const normalised = (role: ColumnRole): ColumnRole =>
  isOhmsOrSiemens(role.quantity) ? { ...role, isNormalised: true } : { quantity: "other" };

const isOhmsOrSiemens = (quantity: Quantity): boolean =>
  QUANTITIES[quantity].unit === "ohm" || QUANTITIES[quantity].unit === "siemens";

const negated = (role: ColumnRole): ColumnRole =>
  QUANTITIES[role.quantity].isTurnable ? { ...role, factor: -(role.factor ?? 1) } : { quantity: "other" };

/** |S11|² is the share of the power that comes back. */
const SQUARE = /^(?![\s"']*1 ?[-−])(.*)(?:\^ ?2|²)[\s)\]]*$/u;
const isShareOfPower = ({ quantity, percent, factor }: ColumnRole): boolean =>
  quantity === SHARE_OF_POWER.quantity && percent === true && factor === SHARE_OF_POWER.factor;

const SIZES_OF_REFLECTION: ReadonlySet<Quantity> = new Set<Quantity>(["reflection", "reflection-magnitude"]);

/** "R/10", of which the numbers tell R all the same, or "R/75", which are multiples of the reference. */
const DIVIDED = /(?<=\p{L})\s*\/\s*(\d+(?:[.,]\d+)?)(?=\s*(?:[([]|$))/u;

/** What was reckoned with the numbers below: ten times as much, a half, fifty less, in tenths of a unit. */
const reckoned = once(
  () =>
    new RegExp(
      [
        "^[^\\p{L}]*(?:±|\\+\\/-|\\+-|[uσ] ?\\()|(?:±|\\+\\/-)[^\\p{L}]*$",
        "[*×·] ?\\d|\\d ?[*×·]|[\\s(]x ?\\d{2,}|\\bx10\\b",
        "\\/ ?\\d+(?![\\d:]|\\s*[)\\]]?\\s*(?:ohm|Ω))",
        "[(\\[] ?0[.,]\\d+ ?(?:dB|ohms?|Ω|°|deg|%)? ?[)\\]]",
        "^\\W*\\d+ ?(?:f(?!\\p{L})|re ?\\(|im ?\\()|1 ?\\/ ?[ZY](?!\\p{L})",
        "(?<!\\p{L})[RXZ] ?[-−–] ?\\d{2,}|(?:phase|angle|°) ?\\+ ?\\d|(?:Γ|gamma|S11)\\*|\\/ ?(?:π|pi(?!\\p{L}))",
      ].join("|"),
      "iu",
    ),
);

/** Whether a square is named, what is left of one, or a sign turned round: not the quantity itself. Of decibels the numbers tell the sign. */
function isAltered(header: string, meanings: ReadonlySet<Meaning>): boolean {
  if (/\^ ?\d|[²³]|^[\s"']*1 ?[-−]/u.test(header)) return true;
  const isNegated = /^[\s"']*[-−] ?[|\p{L}]/u.test(header);
  return isNegated && !(meanings.has("decibel") && !meanings.has("magnitude"));
}

/** "SWR-1", "SWR − 1" */
const lessOne = once(() => /^(.*\p{L}.*?)\s*(?:[-−–]|minus|less)\s*(?:1|one)\s*$/iu);
/** The least or the greatest of several readings. */
const extremeWord = once(
  () => /(?<!\p{L})(?:min|max|mini|maxi|minim\w+|maxim\w+|lowest|highest|kleinste|größte)(?!\p{L})[._]?/giu,
);

const hasBracket = (header: string) => /[([/]/.test(header);
