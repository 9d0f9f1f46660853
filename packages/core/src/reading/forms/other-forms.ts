import { SPACE } from "../text/ascii.js";
import type { SourceText } from "../text/text.js";
import { asSent } from "./as-sent.js";
import { bracketed } from "./brackets.js";
import { evenSteps } from "./even-steps.js";
import type { FormTable, Written } from "./form.js";
import { framed } from "./frames.js";
import { insertStatements } from "./insert-statements.js";
import { jsonTable } from "./json.js";
import { markup, textOfPage } from "./markup.js";
import { namedValues } from "./named-values.js";
import { offsetGrid } from "./offset-grid.js";
import { oneALine } from "./one-a-line.js";
import { pairsUnderTitle } from "./pairs-under-title.js";
import { tidy } from "./tidy.js";
import { transposed } from "./transposed.js";
import { typeset } from "./typeset.js";
import { withoutLineNumbers, withoutWrapping, withWholeNumbers } from "./wrapped-lines.js";

/** Ways to write a table other than rows of cells. Each tells whether a text is written so. */
const FORMS: readonly ((content: string) => FormTable | null)[] = [
  markup,
  tidy,
  framed,
  transposed,
  bracketed,
  namedValues,
  pairsUnderTitle,
  evenSteps,
  offsetGrid,
  insertStatements,
  oneALine,
];
/** Longer texts are tables of rows, or none. */
const MOST_BYTES = 4_000_000;
/** A table begins within so many. */
const HEAD_BYTES = 4096;

/** The table that a text holds as JSON; null where it is none. */
export function tableInJson(text: SourceText): FormTable | null {
  const start = text.bytes.findIndex((byte) => byte > SPACE);
  if ((text.bytes[start] !== OPEN_LIST && text.bytes[start] !== OPEN_OBJECT) || text.bytes.length > MOST_BYTES)
    return null;
  return jsonTable(text.decode(0, text.bytes.length));
}

/** The table of a text that is to be typeset; null where it is none. */
export const tableToTypeset = (text: SourceText): FormTable | null =>
  text.bytes.length > MOST_BYTES || !text.bytes.subarray(0, HEAD_BYTES).includes(AMPERSAND)
    ? null
    : typeset(text.decode(0, text.bytes.length));

/** The table of a text that lies on its side; null where it is none. */
export const tableOnItsSide = (text: SourceText): FormTable | null =>
  text.bytes.length > MOST_BYTES ? null : transposed(text.decode(0, text.bytes.length));

/** What a person sees of a text that is a page, line by line; null for any other. */
export const pageIn = (text: SourceText): string | null =>
  text.bytes.length > MOST_BYTES ? null : textOfPage(text.decode(0, text.bytes.length));

/** "[" and "{" */
const OPEN_LIST = 0x5b;
const OPEN_OBJECT = 0x7b;
/** Which splits the cells of a table to be typeset. */
const AMPERSAND = 0x26;

/** The tables in a text that are written otherwise than in rows of cells, and its rows without what wraps them. */
export function* inOtherForms(text: SourceText): Generator<Written> {
  if (text.bytes.length > MOST_BYTES) return;
  const content = text.decode(0, text.bytes.length);
  for (const form of FORMS) {
    const table = form(content);
    if (table !== null) yield { as: "form", table };
  }
  for (const bare of [
    withoutLineNumbers(content),
    withoutWrapping(content),
    withWholeNumbers(content),
    textOfPage(content),
    asSent(content),
  ])
    if (bare !== null) yield { as: "bare", content: bare };
}
