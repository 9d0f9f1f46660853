import { CARRIAGE_RETURN, EXCLAMATION, LINE_FEED } from "../text/ascii.js";
import type { SourceText } from "../text/text.js";
import { isOptionLine, isWholeOptionLine } from "./header.js";
import { isBlank } from "./rows.js";
import { NUMBERED_COMMENT, withoutComment } from "./scan.js";

const LONGEST_FIRST_LINE = 200;

/** What a text's first line that is no comment makes of it; a title behind # counts as one where an option line follows. */
export function touchstoneSigns(text: SourceText): "touchstone" | "numbers-first" | "other" {
  const { bytes } = text;
  let position = 0;
  let hasTitle = false;
  while (position < bytes.length) {
    let end = position;
    while (end < bytes.length && bytes[end] !== LINE_FEED && bytes[end] !== CARRIAGE_RETURN) end++;
    while (position < end && isBlank(bytes[position] as number)) position++;
    const isContent = position < end && bytes[position] !== EXCLAMATION;
    const content = isContent ? text.decode(position, Math.min(end, position + LONGEST_FIRST_LINE)) : "";
    position = end + 1;
    if (content === "" || NUMBERED_COMMENT.test(content) || /^begin\s*$/i.test(content)) continue;
    if (hasTitle) {
      if (!content.startsWith("#")) return "other";
      if (isWholeOptionLine(withoutComment(content))) return "touchstone";
    } else if (content.startsWith("#") && !isOptionLine(withoutComment(content), text.file)) hasTitle = true;
    else return signsOf(content);
  }
  return "other";
}

function signsOf(content: string): "touchstone" | "numbers-first" | "other" {
  if (content.startsWith("#")) return "touchstone";
  if (/^\[\s*(version|begin information)/i.test(content)) return "touchstone";
  return /^[+-]?\.?\d[\d.eE+-]*\s/.test(content) ? "numbers-first" : "other";
}
