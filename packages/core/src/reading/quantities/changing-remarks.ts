import { quote } from "../../input/read-error.js";
import { once } from "../../numbers/once.js";
import { type Finding, finding } from "../../sweep/finding.js";

/** Words for the numbers of a sweep, and for what is still to be done with them (English and German, from memory). */
const numbers = once(
  () =>
    /swr|frequenc|readings?|values?|meter|numbers?|frequenz|werte?|(?<![a-z\d])[rxz](?![a-z\d])|reactance|impedance|capacitive|inductive/i,
);
const change = once(
  () =>
    /times (?:\d|ten|two|hundred)|\b(?:multipl\w+|divide[ds]?|add|subtract)\b.*\d|too (?:high|low)|reads? (?:too )?(?:high|low)|parallel equivalent|(?:positive|plus|\+).{0,12}capacitive|capacitive.{0,12}(?:positive|plus)|mal (?:zehn|zwei|\d)|zu (?:hoch|niedrig)|\b(?:ignore|disregard|discard|leave out|do not use|bad readings?|(?:are|is) (?:bad|invalid|wrong)|ignorieren|weglassen|ungültig|nicht verwenden)\b|\b(?:no|not|without|lost|unknown|lacks?|ohne|kein\w*|sans|sin|senza)\b.{0,16}(?:signs?|vorzeichen|signe|signo|segno)\b|\b(?:signs?|vorzeichen)\b.{0,12}(?:lost|unknown|not|fehlt|unbekannt)\b/i,
);

/** That a remark may say that the numbers are not what they seem; they are read as they stand. */
export function changingRemarks(texts: readonly string[]): readonly Finding[] {
  const remark = texts.find((text) => numbers().test(text) && change().test(text));
  return remark === undefined ? [] : [finding("caution", "remark-may-change", { text: quote(remark.trim()) })];
}
