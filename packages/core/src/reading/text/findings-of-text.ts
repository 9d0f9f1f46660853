import { quote } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { CARRIAGE_RETURN, LINE_FEED } from "./ascii.js";
import type { SourceText } from "./text.js";

/** What there is to say of a text that has been read: its encoding, and whether it may be cut off. */
export function findingsOfText(text: SourceText): readonly Finding[] {
  const cutOff = lineCutOff(text);
  const { encoding } = text;
  return [
    ...(encoding === "UTF-8" ? [] : [finding("info", "encoding", { encoding })]),
    ...(cutOff === null ? [] : [finding("caution", "last-number-cut", { text: quote(cutOff.trim()) })]),
  ];
}

/** Bytes at the end of a text, and lines before its last one, that are looked at. */
const TAIL_BYTES = 2000;
const FEWEST_LINES = 8;

/** A comma behind digits that something else than a comma parts from those before. */
const DECIMALS = /(?:(\.)|(?<=[;\t |]\d{1,9})(,))(\d+)$/;
/** A decimal mark and nothing behind it; another comma in the line says that commas part its cells. */
const ENDS_IN_MARK = /\d\.$|^(?=.*[;\t])[^\n]*\d,$|^[^,]*\d,$/;

/**
 * The last line of a text that may have been cut off in the midst of its last number: it ends without a line break, behind a decimal
 * mark or with fewer decimals than all lines before it have.
 *
 * @returns null where nothing speaks for that
 */
function lineCutOff({ bytes, decode }: SourceText): string | null {
  const end = bytes.at(-1);
  if (end === LINE_FEED || end === CARRIAGE_RETURN) return null;
  const tail = decode(Math.max(0, bytes.length - TAIL_BYTES), bytes.length);
  const lines = tail.split(/\r\n|\n|\r/);
  const last = lines.at(-1) ?? "";
  if (!/\d[.,]?$/.test(last)) return null;
  if (ENDS_IN_MARK.test(last)) return last;
  const before = lines.slice(-FEWEST_LINES - 1, -1).map((line) => DECIMALS.exec(line));
  const usual = before[0]?.[3]?.length ?? 0;
  if (before.length < FEWEST_LINES || usual === 0 || before.some((found) => found?.[3]?.length !== usual)) return null;
  return (DECIMALS.exec(last)?.[3]?.length ?? 0) < usual ? last : null;
}
