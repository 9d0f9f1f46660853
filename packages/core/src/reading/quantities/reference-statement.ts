import { quote, ReadError } from "../../input/read-error.js";
import { once } from "../../numbers/once.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { DEFAULT_REFERENCE_OHMS } from "../options/read-options.js";
import { otherThings, patternsFor, REFERENCE_ALONE, REFERENCE_STEM, referenceWords } from "./reference-patterns.js";
import { plainStatement } from "./reference-text.js";

/** A reference impedance that a line of text states, Ω, and the text. */
export interface ReferenceStatement {
  readonly ohms: number;
  readonly text: string;
  /** Whether it speaks of a reference, and not of an impedance that may be another */
  readonly isSure: boolean;
}

/** A remark speaks of anything, also of what the readings don't refer to. */
const IS_NOTE = /^\W*(?:note|remark|comment)s?\b/;
/** One that says whose impedance this is does not only mention it: "note: values are for 75 ohm". */
const IS_OF_READINGS =
  /(?<!\p{L})(?:values?|readings?|numbers?|data|figures?|sweeps?)(?!\p{L})[^\d]{0,20}(?<!\p{L})(?:for|against|to|in)(?!\p{L})/u;
/** A number that is denied, or was once so, is only mentioned. */
const denied = once(
  () =>
    /(?<!\p{L})(?:not|no longer|instead|until|formerly|wrongly|should be|nicht|kein\p{L}*|sondern|statt|früher|niet|pas|et non|no es|sino|non|inte|ikke|а не|не)(?!\p{L})/iu,
);
/** No line or analyser has an impedance below or beyond these, Ω; a number without a unit means something else then. */
const LEAST_PLAUSIBLE_OHMS = 5;
const GREATEST_OHMS = 2000;

const referenceName = once(() => new RegExp(`^(?:${referenceWords()}|${REFERENCE_ALONE})\\W*(?:ohms?)?\\W*$`, "iu"));

/** Whether a column's name says that it holds the reference impedance. */
export function isReferenceName(name: string): boolean {
  const isPlain = PLAIN.test(name);
  if (isPlain && !REFERENCE_STEM.test(name.toLowerCase())) return false;
  return referenceName().test(plainStatement(name).trim());
}

const PLAIN = /^[\0-\x7f]*$/;
const MAY_HOLD_NUMBER = /\d|hund[er]|ty[ -]|zig[ -]/i;
/** What a line that states an impedance has, unless it has signs or another alphabet. */
const MAY_STATE = /ohm|\d ?om|\d ?k? ?r\b|\/|@|swr|(?<!h)z|ref|r0|y[0o]|admit|leitwert|system|widerst|imp|emped/i;

/** The reference impedance that a line states; null where it states none. */
function referenceIn(text: string): ReferenceStatement | null {
  if (!MAY_HOLD_NUMBER.test(text) || (PLAIN.test(text) && !MAY_STATE.test(text))) return null;
  const line = plainStatement(text);
  for (const { pattern, isSure, isRelated = false } of patternsFor(line)) {
    const match = pattern().exec(line);
    if (match === null) continue;
    // A pattern may have the number in one of two places.
    const [, digits = match[3] ?? "", kilo = match[4]] = match;
    // "1,000 ohm"
    const plainDigits = /^[1-9]\d{0,2},\d{3}$/.test(digits) ? digits.replace(",", "") : digits.replace(",", ".");
    const ohms = Number(plainDigits) * (kilo === "k" ? 1000 : 1);
    const rest = line.slice(match.index + match[0].length);
    const isStated =
      isSure &&
      !denied().test(line) &&
      !IS_COMPLEX.test(rest) &&
      (!IS_NOTE.test(line) || IS_OF_READINGS.test(line)) &&
      (isRelated || !otherThings().test(spokenOf(line, match)));
    const isInOhms = isStated && kilo !== undefined;
    if (isInOhms && ohms > GREATEST_OHMS) return { ohms, text, isSure: false };
    if (isInOhms ? ohms > 0 : ohms >= LEAST_PLAUSIBLE_OHMS && ohms <= GREATEST_OHMS)
      return { ohms, text, isSure: isStated };
  }
  return null;
}

/** Behind a resistance: it has a reactance, which no reference here has. */
const IS_COMPLEX = /^\s*(?:ohms?)?\s*[+−–-]\s*(?=[ij\s\d.,]*[1-9])(?:[ij]\s*\d|\d+(?:[.,]\d+)?\s*[ij])/iu;

/** What a statement speaks of: the line from its beginning, or a semicolon, to the end of its clause. */
function spokenOf(line: string, { index, 0: found }: RegExpExecArray): string {
  const end = index + found.length;
  const [rest = ""] = /^[^,;.()]*/.exec(line.slice(end)) ?? [];
  return line.slice(line.lastIndexOf(";", index) + 1, end) + rest;
}

/** The reference impedance that the name of a column states, Ω: "SWR 75", "S11 at 75 ohm"; null where it states none. */
export function referenceNamed(name: string): number | null {
  const stated = referenceIn(name);
  if (stated?.isSure) return stated.ohms;
  return /^\W*v?swr\W*50\W*$/i.test(name) ? 50 : null;
}

/** That a statement was used. */
export const referenceRead = ({ text, ohms }: ReferenceStatement): Finding =>
  finding("info", "reference-read", { text: quote(text.trim()), ohms });

/**
 * What several texts say of the reference impedance.
 *
 * @returns the first sure statement, or else the first that may be one; null for none
 * @throws ReadError `ambiguous` where two sure ones differ
 */
export function referenceOf(texts: readonly string[], file: string): ReferenceStatement | null {
  const found = texts.map(referenceIn).filter((statement) => statement !== null);
  const sure = found.filter(({ isSure }) => isSure);
  const [first] = sure;
  if (first === undefined) return found[0] ?? null;
  const other = sure.find(({ ohms }) => ohms !== first.ohms);
  if (other === undefined) return first;
  throw new ReadError({
    code: "ambiguous",
    file,
    found: `two reference impedances are stated, ${quote(first.text)} and ${quote(other.text)}`,
    remedy: "Say which one the readings refer to, such as --reference-ohms 50.",
  });
}

/** The reference impedance of readings, Ω, asked for or stated in texts, and what there is to say of where it comes from. */
export function referenceFor(
  texts: readonly string[],
  asked: number | undefined,
  file: string,
): { readonly ohms: number; readonly findings: readonly Finding[] } {
  if (asked !== undefined) return { ohms: asked, findings: [] };
  const stated = referenceOf(texts, file);
  if (stated?.isSure) return { ohms: stated.ohms, findings: [referenceRead(stated)] };
  const ohms = DEFAULT_REFERENCE_OHMS;
  const assumed = finding("info", "reference-assumed", { ohms });
  if (stated === null || stated.ohms === ohms) return { ohms, findings: [assumed] };
  const mentioned = { text: quote(stated.text.trim()), ohms: stated.ohms };
  return { ohms, findings: [assumed, finding("caution", "reference-mentioned", mentioned)] };
}
