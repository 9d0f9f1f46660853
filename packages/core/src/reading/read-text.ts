import { ReadError } from "../input/read-error.js";
import { readDelimited } from "./delimited/delimited.js";
import { inFile, type RowsText, rowsText } from "./forms/form.js";
import { jsonWithoutTable } from "./forms/json-text.js";
import { pageIn } from "./forms/other-forms.js";
import { notesIn } from "./notes/notes-in.js";
import { readNotes } from "./notes/read-notes.js";
import type { ReadOptions } from "./options/read-options.js";
import type { ReadPoints } from "./points/read-points.js";
import { apart } from "./sections/apart.js";
import { sectionsOf } from "./sections/sections.js";
import { rewritten, type SourceText } from "./text/text.js";
import { readTouchstone } from "./touchstone/touchstone.js";
import { waysToRead } from "./ways-to-read.js";

/**
 * Reads a text in the first way in which it is not refused, as a whole or, where more stands in it than rows of numbers, by its sections.
 * Where all refuse it, why it cannot be read as it stands counts.
 */
export function readText(text: SourceText, options: ReadOptions): readonly ReadPoints[] {
  // Asked for once in whatever way this ends.
  const inSections = () => readSections(text, options);
  let refusal: ReadError | null = null;
  const refused: RowsText[] = [];
  for (const way of waysToRead(text, options)) {
    if (way.as === "notes") return inSections() ?? [readNotes(way.notes, text, options)];
    const rows = way.as === "touchstone" ? null : rowsText(way, text);
    try {
      if (rows === null) return [readTouchstone(text, options)];
      const read = inFile(readDelimited(rows.text, options), rows);
      return (read.isPlain && rows.form === null ? null : inSections()) ?? [read];
    } catch (error) {
      if (!(error instanceof ReadError)) throw error;
      if (rows === null || rows.text === text) refusal ??= error;
      else refused.push(rows);
    }
  }
  const read = inSections() ?? notesInForms(refused, options);
  if (read !== null) return read;
  throw jsonWithoutTable(text.decode(0, text.bytes.length), text.file) ?? refusal;
}

/** Notes of bands that stand in another form than lines; null where there are none. */
function notesInForms(forms: readonly RowsText[], options: ReadOptions): readonly ReadPoints[] | null {
  for (const rows of forms) {
    const notes = notesIn(rows.text);
    if (notes !== null) return [inFile(readNotes(notes, rows.text, options), rows)];
  }
  return null;
}

/** The sections of a text, each read by itself; null where it has none, or one of them holds no sweep. */
function readSections(text: SourceText, options: ReadOptions): readonly ReadPoints[] | null {
  const page = pageIn(text);
  const sections = sectionsOf(page === null ? text : rewritten(text, page));
  if (sections === null) return null;
  try {
    const read = sections.flatMap((section) => readText(section.text, options));
    return read.length === sections.length ? apart(sections, read) : null;
  } catch (error) {
    if (error instanceof ReadError) return null;
    throw error;
  }
}
