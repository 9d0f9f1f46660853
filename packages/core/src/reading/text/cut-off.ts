import type { SourceText } from "./text.js";

/** Bytes at the end of a text, and lines before its last one, that are looked at. */
const TAIL_BYTES = 2000;
const FEWEST_LINES = 8;

const DECIMALS = /([.,])(\d+)$/;

/**
 * The last line of a text that may have been cut off in the midst of its last number: it ends without a line break, behind a decimal
 * mark or with fewer decimals than all lines before it have.
 *
 * @returns null where nothing speaks for that
 */
export function lineCutOff({ bytes, decode }: SourceText): string | null {
  const tail = decode(Math.max(0, bytes.length - TAIL_BYTES), bytes.length);
  const lines = tail.split(/\r\n|\n|\r/);
  const last = lines.at(-1) ?? "";
  if (!/\d[.,]?$/.test(last)) return null;
  if (/\d[.,]$/.test(last)) return last;
  const before = lines.slice(-FEWEST_LINES - 1, -1).map((line) => DECIMALS.exec(line));
  const [, mark, digits = ""] = before[0] ?? [];
  const areAlike = before.every((found) => found?.[1] === mark && found?.[2]?.length === digits.length);
  if (before.length < FEWEST_LINES || mark === undefined || !areAlike) return null;
  const [, ownMark, ownDigits = ""] = DECIMALS.exec(last) ?? [];
  return ownMark === mark && ownDigits.length >= digits.length ? null : last;
}
