import { once } from "../../numbers/once.js";
import { SWR_WORD } from "../notes/note-words.js";
import { isReading } from "../options/column-role.js";
import { roleFromHeader } from "../quantities/role-from-header.js";

/** A word for SWR anywhere in a text. */
export const swrWord = once(() => new RegExp(`(?<!\\p{L})${SWR_WORD}(?![\\p{L}\\d])`, "iu"));

/** The one reading that the words above name; null where they name none or several. */
export function quantityIn(title: readonly string[]): string | null {
  const text = title.join(", ");
  const names = text.split(/[,;:()[\]]|\.\s/).map((part) => part.replace(/\s+(?:of|for|at|by)\s.*$/i, "").trim());
  const named = names.filter((name) => !/\d/.test(name) && namesReading(name) && !swrWord().test(name));
  if (swrWord().test(text)) return named.length === 0 && !/dB(?!\p{L})|%/u.test(text) ? "SWR" : null;
  return named.length === 1 ? (named[0] as string) : null;
}

/** Whether words say which reading: a unit alone does not. */
function namesReading(name: string): boolean {
  const role = roleFromHeader(name);
  return isReading(role) && !role.isAssumed && role.quantity !== "angle" && role.quantity !== "transmission";
}
