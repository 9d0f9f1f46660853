import { WORDS } from "../words.js";
import type { Chosen } from "./flows.js";

/** Files as the command would name them: with their folder; of several that were picked without one, with a name for that pick. */
export function chosenFiles(files: Iterable<File>): readonly Chosen[] {
  const all = [...files];
  const [first, ...others] = all;
  const pick = first === undefined || others.length === 0 ? "" : `${first.name} and ${others.length} more/`;
  return all.map((content) => ({
    path: content.webkitRelativePath === "" ? pick + content.name : content.webkitRelativePath,
    content,
  }));
}

/** Readings, or the text of a file, under the name and the date that were given; null where nothing was typed. */
export function typedText(field: (name: string) => string): Chosen | null {
  const text = field("text");
  if (text.trim() === "") return null;
  const name = field("name").trim().replaceAll("/", "-") || WORDS.typed.unnamed;
  const date = field("date");
  return { path: `${date === "" ? "" : `${date} `}${name}`, content: new Blob([text]) };
}
