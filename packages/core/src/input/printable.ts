/** Nearly all text is of these alone, and the pattern below takes a short command milliseconds to build. */
const ASCII = /^[\x20-\x7e]*$/;

/**
 * Text from a file made fit to be shown: control characters, line ends, bidirectional marks and other characters that
 * could steer a terminal or reorder what is read become dots. Printable characters of any script stay.
 */
export function printableText(text: string): string {
  return ASCII.test(text) ? text : text.replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cn}\p{Cs}\p{Zl}\p{Zp}]/gu, "·");
}
