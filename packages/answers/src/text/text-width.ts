import { eastAsianWidth } from "get-east-asian-width";

/** Latin, Greek, Cyrillic, punctuation, signs, arrows, frames, dots: one column a character, which needs no look at any. */
const NARROW =
  /^[ -~\u00a1-\u00ac\u00ae-\u02ff\u0370-\u0482\u048a-\u052f\u2010-\u2027\u2030-\u205e\u20a0-\u20bf\u2100-\u22ff\u2500-\u25fc\u2800-\u28ff]*$/;
/** Whether a sign is shown as a picture, of itself or by what follows it. Few texts have any, and the pattern takes long to make. */
const isEmoji = (character: string) =>
  /^(?:\p{Emoji_Presentation}|\p{Emoji}\uFE0F|\p{Regional_Indicator}{2})/u.test(character);
const isInvisible = (character: string) => /^[\p{Default_Ignorable_Code_Point}\p{Mark}\p{Control}]/u.test(character);

/** The number of terminal columns that a text takes up. */
export function textWidth(text: string): number {
  if (NARROW.test(text)) return text.length;
  return Array.from(new Intl.Segmenter().segment(text), ({ segment }) => characterWidth(segment)).reduce(
    (sum, width) => sum + width,
    0,
  );
}

/** Columns of what a reader takes for one character, marks and all. */
function characterWidth(character: string): number {
  if (isEmoji(character)) return 2;
  return isInvisible(character) ? 0 : eastAsianWidth(character.codePointAt(0) ?? 0);
}
