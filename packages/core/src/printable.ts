/**
 * Text from a file made fit to be shown: control characters, line ends, bidirectional marks and other characters that
 * could steer a terminal or reorder what is read become dots. Printable characters of any script stay.
 */
export function printableText(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cn}\p{Cs}\p{Zl}\p{Zp}]/gu, "·");
}
