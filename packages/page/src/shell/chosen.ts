import { WORDS } from "../words.js";
import type { Chosen } from "./flows.js";

/** Files as the command would name them: with their folder; several that were picked without one are a folder of their own. */
export function chosenFiles(files: Iterable<File>): readonly Chosen[] {
  const all = [...files];
  const pick = all.length < 2 ? "" : `${WORDS.list.files(all.length)}/`;
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
  return { path: `${date === "" ? "" : `${date} `}${name}`, content: new Blob([noted(text)]) };
}

/** Nobody types more readings than these; more lines of two numbers are a table, whose columns are asked for. */
const MOST_TYPED = 30;

/** Lines of two numbers are frequencies in MHz with their SWR, as it says beside the field; what else was typed stays as it is. */
function noted(text: string): string {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== "");
  const pairs = lines.map((line) => /^\s*(\d{1,3}(?:[.,]\d+)?)\s+([\d.,]+(?:-[\d.,]+)?)\s*$/.exec(line));
  if (lines.length > MOST_TYPED || pairs.some((pair) => pair === null)) return text;
  return pairs.map((pair) => `${pair?.[1]} MHz ${pair?.[2]}`).join("\n");
}
