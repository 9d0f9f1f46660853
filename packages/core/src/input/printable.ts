/** ASCII, Latin, Greek, dashes, arrows and signs: nearly all text is of these alone, and the pattern below takes milliseconds to build. */
const PLAIN =
  /^[\x20-\x7e\u00a1-\u00ac\u00ae-\u02ff\u0391-\u03a1\u03a3-\u03ff\u2010-\u2027\u2030-\u205e\u2190-\u22ff]*$/;

/**
 * Text from a file made fit to be shown: control characters, line ends, bidirectional marks and other characters that
 * could steer a terminal or reorder what is read become dots. Printable characters of any script stay.
 */
export function printableText(text: string): string {
  return PLAIN.test(text) ? text : text.replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cn}\p{Cs}\p{Zl}\p{Zp}]/gu, "·");
}
