import type { ColumnRole } from "../options/column-role.js";

/** A share of the power of one, and not of a hundred. */
export const SHARE_OF_POWER: ColumnRole = { quantity: "reflected-power", percent: true, factor: 100 };

/** Of a name that is a formula, or null. */
export function roleInSigns(header: string): ColumnRole | null {
  const share = SHARE_IN_SIGNS.exec(header);
  if (share !== null) return share[1] === undefined ? SHARE_OF_POWER : { quantity: "reflected-power", percent: true };
  const accepted = ACCEPTED_IN_SIGNS.exec(header);
  if (accepted !== null) {
    return { quantity: "accepted-power", percent: true, ...(accepted[1] === undefined ? { factor: 100 } : {}) };
  }
  const [, behind, before] = TIMES.exec(header) ?? [];
  const times = behind ?? before;
  return times === undefined ? null : { quantity: "swr", factor: 1 / Number(times) };
}

/** A name without the reference and the form of its numbers: "Z = R + jX (75 ohm)" as "Z". */
export const withoutForms = (header: string): string =>
  header
    .replace(TIMES_HERTZ, (_, power) => (/^(?:\^ ?3|³|e3|000)$/.test(power) ? "kHz" : "MHz"))
    .replace(TIMES_LOG, "dB ")
    .replace(/\(\s*R\s*,\s*X\s*\)/i, "Z")
    .replace(REFERENCE, " ")
    .replace(FORM, " ")
    .replace(FORM_IN_BRACKETS, " ")
    .replace(SUM, (_, of) => (/r/i.test(of) ? "Z" : "Y"));

/** What the readings refer to: "SWR (Z0 = 75 ohm)", "SWR re 50 ohms", "S11 (75 Ω)". */
const REFERENCE =
  /(?<=\S)\s*[([]?\s*(?:(?:@|re|ref\.?|rel\.?|at|in|refer\w* to|relative to|against|z[0o₀])\s*[=:]?\s*(?:an? )?\d+(?:[.,]\d+)?\s*(?:ohms?|Ω|ω|\u2126)?(?: (?:system|line))?|(?<![\d.,])(?!0)\d+(?:[.,]\d+)?\s*(?:ohms?|Ω|ω|\u2126))\s*[)\]]?$/iu;
/** How complex numbers below it are written: "Z = R + jX", "Z = (R, X) in ohm". */
const FORM = /(?<=\S)\s*=\s*\(?\s*R\s*(?:[+±]\s*j|,)\s*\*?X.*$/i;
/** "× 10⁶ Hz", "x 1000 Hz", "1e6 Hz" */
const TIMES_HERTZ = /[×x*]?\s?1(?:0 ?(?=\^|[³⁶]))?(\^ ?[36]|[³⁶]|e[36]|000(?:000)?) ?Hz/iu;
/** "20·log|Γ| (dB)" */
const TIMES_LOG = /20 ?[·*×]? ?log(?:10|₁₀)?\s*(?=\|)/iu;
/** "Pr/Pf", "reflected/forward power ratio (%)" */
const SHARE_IN_SIGNS =
  /^\W*(?:P[_ ]?)?(?:r|ref\w*|rev\w*|back)(?: power)? ?\/ ?(?:P[_ ]?)?(?:f|fw|fwd|for|forward|i|inc\w*)(?: power)?(?: ratio)? ?(?:in |\/ ?)?[([]?(%)?[)\]]?\W*$/i;
/** "1-|Γ|²": what is not sent back. */
const ACCEPTED_IN_SIGNS = /^\W*1 ?[-−] ?\|?(?:Γ|S11|gamma|rho|ρ)\|? ?(?:²|\^ ?2) ?[([]?(%)?[)\]]?\W*$/iu;
/** "SWR x 100" */
const TIMES = /^\W*(?:v?swr ?[x×*·] ?(10{1,3})|(10{1,3}) ?[x×*·] ?v?swr)\W*$/i;
/** "(mag ∠ deg)", "(a+jb)" */
const FORM_IN_BRACKETS =
  /[([]\s*(?:(?:mag\p{L}*|ohms?|Ω)?\s*[∠,]\s*(?:deg\p{L}*|°|rad\p{L}*)|(?:a|re|real)\s*[+±]\s*(?:j\s*[·*]?\s*(?:b|im\p{L}*)|(?:b|im\p{L}*)\s*[·*]?\s*j))\s*[)\]]/iu;
/** What a complex number is the sum of: "R + jX", "G+jB". */
const SUM = /(?<![\p{L}\d])([RG])\s*[+±]\s*[ij]\s*\*?\s*[XB](?![\p{L}\d])/giu;
