import type { Written } from "./forms/form.js";
import { readingsWithNames } from "./forms/named-values.js";
import { inOtherForms, tableInJson, tableOnItsSide, tableToTypeset } from "./forms/other-forms.js";
import { type Notes, notesIn } from "./notes/notes-in.js";
import type { ReadOptions } from "./options/read-options.js";
import type { SourceText } from "./text/text.js";
import { isTouchstoneName } from "./touchstone/header.js";
import { touchstoneSigns } from "./touchstone/signs.js";

/** What a text may be read as. */
export type WayToRead = { readonly as: "touchstone" } | { readonly as: "notes"; readonly notes: Notes } | Written;

/** Of a band nobody notes more frequencies by hand. */
const MOST_SPOTS = 12;

/** The ways to read a text, the likeliest first; each is looked for only where those before it were refused. */
export function* waysToRead(text: SourceText, options: ReadOptions): Generator<WayToRead> {
  const asItStands: WayToRead = { as: "rows", text };
  const isNamedTouchstone = isTouchstoneName(options.fileName ?? "");
  // The content decides; a name like antenna.s1p only settles what numbers without any header are.
  const signs = touchstoneSigns(text);
  const areNamed = isNamedTouchstone && options.columns === undefined;
  if (signs === "touchstone" || (signs === "numbers-first" && areNamed)) {
    yield { as: "touchstone" };
    // A remark behind # may begin as an option line does.
    if (!isNamedTouchstone) yield asItStands;
    return;
  }
  const table = tableInJson(text) ?? tableToTypeset(text);
  if (table !== null) yield { as: "form", table };
  const notes = notesIn(text);
  const named = notes === null ? null : readingsWithNames(text);
  const byName: readonly WayToRead[] = named === null ? [] : [{ as: "form", table: named }];
  if (notes !== null && !notes.mayBeTable) {
    yield* byName;
    // A band that a row of frequencies stands above is a height: "SWR 10 m".
    const onItsSide = tableOnItsSide(text);
    if (onItsSide !== null) yield { as: "form", table: onItsSide };
    yield { as: "notes", notes };
  }
  yield asItStands;
  if (notes?.mayBeTable) yield* byName;
  // So many frequencies as these are a sweep, if a form of table has them.
  const areMany = notes?.mayBeTable === true && notes.groups.flatMap(({ readings }) => readings).length > MOST_SPOTS;
  const noted: readonly WayToRead[] = notes === null ? [] : [{ as: "notes", notes }];
  if (!areMany) yield* noted;
  yield* inOtherForms(text);
  if (areMany) yield* noted;
}
