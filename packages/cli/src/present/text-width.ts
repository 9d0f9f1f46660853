import stringWidth from "string-width";

const PLAIN = /^[ -~]*$/;

/** The number of terminal columns that a text takes up. Most cells are plain ASCII, which needs no table of characters. */
export function textWidth(text: string): number {
  return PLAIN.test(text) ? text.length : stringWidth(text);
}
