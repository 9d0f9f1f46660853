import { withoutEntities } from "./entities.js";
import type { FormRow, FormTable } from "./form.js";
import { transposed } from "./transposed.js";

const FEWEST_ROWS = 2;

/** A table as pages on the web have it, or elements that all have the same parts; null where the text is neither. */
export function markup(content: string): FormTable | null {
  const shown = tagsIn(content);
  return shown === null ? null : (cellsOfPage(shown) ?? alikeElements(shown) ?? rowsOfElements(shown));
}

/** What a person sees of a page, line by line; null where the text is none. */
export function textOfPage(content: string): string | null {
  const shown = tagsIn(content);
  return shown === null
    ? null
    : plainText(shown.replace(/<(?:li|tr|div|h\d)\b[^<>]*>/gi, "\n").replace(/<t[hd]\b[^<>]*>/gi, "\t"));
}

/** A text with tags, those in square brackets as well, and without what they hide; null for a text that has none. */
function tagsIn(content: string): string | null {
  if (/^\s*</.test(content)) return withoutComments(content);
  return /\[tr\]/i.test(content) ? content.replace(/\[(\/?(?:table|tr|td|th))\]/gi, "<$1>") : null;
}

/** Elements of one name that hold others of one name, which are their cells. */
function rowsOfElements(content: string): FormTable | null {
  const names = new Set([...content.matchAll(/<([\p{L}_][\w:.-]*)/gu)].map(([, name = ""]) => name));
  if (names.size > MOST_NAMES) return null;
  for (const name of names) {
    const rows = elementsOf(content, name).map(({ inner }) => cellsIn(inner));
    const [header = [], ...others] = rows.filter((cells) => cells.length > 1);
    if (others.length < FEWEST_ROWS || others.length + 1 < rows.length) continue;
    const comments = statedBeside(content, name);
    return { name: "elements of cells", comments, header, rows: others.map(withoutLine) };
  }
  return null;
}

/** What the elements of one name hold that an element is made of; none where it is made of anything else. */
function cellsIn(inner: string): readonly string[] {
  const name = /^\s*<([\p{L}_][\w:.-]*)/u.exec(inner)?.[1];
  if (name === undefined) return [];
  const cells = elementsOf(inner, name);
  const isApart = cells.every(({ rest }) => rest.replace(/^<\/[^<>]*>/, "").trim() === "");
  return isApart ? cells.map((cell) => plainText(cell.inner)) : [];
}

/** What nobody sees who looks at the page. */
function withoutComments(content: string): string {
  // Written so that this code can stand in a page itself.
  const [first = "", ...others] = content.split(/<!-{2}/);
  const shown = others.map((other) => (other.includes("-->") ? other.slice(other.indexOf("-->") + 3) : ""));
  return first + shown.join("");
}

/** Rows of cells: tr, th and td. The one with most rows of several tables. */
function cellsOfPage(content: string): FormTable | null {
  const tables = elementsOf(content, "table").map(({ inner }) =>
    elementsOf(inner, "tr").map((row) =>
      row.inner
        .split(/<t[hd]\b[^<>]*>/i)
        .slice(1)
        .map(plainText),
    ),
  );
  const [largest = [], ...others] = tables.toSorted((a, b) => b.length - a.length);
  const [header = [], ...rows] = largest.filter((cells) => cells.length > 1);
  if (rows.length < FEWEST_ROWS) return transposed(largest.map((cells) => cells.join("\t")).join("\n"));
  return {
    name: "a table of a page",
    comments: [
      plainText(withoutElements(content, "table")),
      ...elementsOf(content, "caption").map(({ inner }) => plainText(inner)),
    ]
      .flatMap((text) => text.split("\n"))
      .map((line) => line.trim())
      .filter((line) => line !== ""),
    header,
    rows: rows.map(withoutLine),
    isOneOfSeveral: others.some((table) => table.length > FEWEST_ROWS),
  };
}

/** An element of a name, that holds none of the same name. */
interface Element {
  /** What stands behind the name in its tag */
  readonly attributes: string;
  readonly inner: string;
  /** What stands behind it, up to the next of its name */
  readonly rest: string;
}

const tagOf = (name: string): RegExp => new RegExp(`<${name.replaceAll(".", "\\.")}(?=[\\s/>])`, "i");

/** All elements of a name. Cut at their tags, so that a text of tags that nothing closes takes no longer than another. */
function elementsOf(content: string, name: string): readonly Element[] {
  const pieces = content.split(tagOf(name)).slice(1);
  return pieces.map((piece) => {
    const tag = piece.indexOf(">");
    const attributes = piece.slice(0, Math.max(0, tag));
    if (attributes.endsWith("/")) return { attributes, inner: "", rest: piece.slice(tag + 1) };
    const close = piece.toLowerCase().indexOf(`</${name.toLowerCase()}`);
    const end = close < 0 ? piece.length : close;
    return { attributes, inner: piece.slice(tag + 1, end), rest: piece.slice(end) };
  });
}

const withoutElements = (content: string, name: string): string =>
  [content.split(tagOf(name))[0] ?? "", ...elementsOf(content, name).map(({ rest }) => rest)].join("\n");

const withoutLine = (cells: readonly string[]): FormRow => ({ cells, line: null });

/** Elements of one name with the same attributes, or with the same elements of text in them: <point f="7.0" swr="1.9"/>. */
function alikeElements(content: string): FormTable | null {
  const names = new Set([...content.matchAll(/<([\p{L}_][\w:.-]*)/gu)].map(([, name = ""]) => name));
  if (names.size > MOST_NAMES) return null;
  const [best] = [...names]
    .map((name) => ({ name, records: recordsOf(content, name) }))
    .filter(({ records }) => records.length >= FEWEST_ROWS && (records[0]?.size ?? 0) > 1)
    .sort((a, b) => b.records.length - a.records.length);
  if (best === undefined) return null;
  const comments = statedBeside(content, best.name);
  const parents =
    [...names].map((name) => seriesOf(content, name, best.name)).find((series) => series !== null) ?? null;
  const groups = parents ?? [{ name: "", records: best.records }];
  return {
    name: "elements that are alike",
    comments,
    header: [...(parents === null ? [] : ["series"]), ...(best.records[0]?.keys() ?? [])],
    rows: groups.flatMap(({ name, records }) =>
      records.map((parts) => withoutLine([...(parents === null ? [] : [name]), ...parts.values()])),
    ),
  };
}

interface NamedRecords {
  readonly name: string;
  readonly records: readonly ReadonlyMap<string, string>[];
}

/** What elements of a name hold that stand in others, each of which has a name of its own; null where they do not. */
function seriesOf(content: string, parent: string, name: string): readonly NamedRecords[] | null {
  const all = elementsOf(content, parent).map(({ attributes, inner }): NamedRecords => {
    const own = [...attributesIn(attributes), ...textElementsIn(inner.split(tagOf(name))[0] ?? "")];
    const called = own.find(([key]) => /^(?:name|label|title|antenna|id)$/i.test(key));
    return { name: called?.[1] ?? "", records: recordsOf(inner, name) };
  });
  const filled = all.filter(({ records }) => records.length > 0);
  const names = new Set(filled.map((group) => group.name));
  return parent !== name && filled.length > 1 && names.size === filled.length && !names.has("") ? filled : null;
}

/** What attributes and elements of text state besides the elements of a name. */
function statedBeside(content: string, name: string): readonly string[] {
  const beside = withoutElements(content, name);
  const stated = [...attributesIn(beside), ...textElementsIn(beside)];
  return stated.slice(0, MOST_COMMENTS).map(([key, value]) => `${key}: ${value}`);
}

const MOST_NAMES = 60;
const MOST_COMMENTS = 40;

/** What each element of a name holds, of those that hold the same as the first. */
function recordsOf(content: string, name: string): readonly ReadonlyMap<string, string>[] {
  const records = elementsOf(content, name).map(
    ({ attributes, inner }) =>
      new Map([...attributesIn(attributes), ...textElementsIn(inner), ...ownTextOf(name, inner)]),
  );
  const namesOf = (record: ReadonlyMap<string, string>) => [...record.keys()].join("\n");
  const [first] = records;
  return first === undefined ? [] : records.filter((record) => namesOf(record) === namesOf(first));
}

/** What an element holds besides its attributes, under its own name. */
const ownTextOf = (name: string, inner: string): readonly (readonly [string, string])[] =>
  inner.includes("<") || inner.trim() === "" ? [] : [[name, plainText(inner)]];

const attributesIn = (text: string): readonly (readonly [string, string])[] =>
  [...text.matchAll(/\s([\p{L}\p{N}_:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/gu)]
    .filter(([, name]) => !/^(?:version|encoding|xmlns.*|units?)$/i.test(name ?? ""))
    .map(([, name = "", double, single]) => [name, plainText(double ?? single ?? "")]);

/** Elements that hold text alone; a unit stands with their name. */
const textElementsIn = (text: string): readonly (readonly [string, string])[] =>
  [...text.matchAll(/<([\p{L}\p{N}_:.-]+)(?:\s+units?\s*=\s*["']([^"']*)["'])?\s*>([^<]*)<\/\1\s*>/gu)].map(
    ([, name = "", unit, inner = ""]) => [unit === undefined ? name : `${name} (${unit})`, plainText(inner)],
  );

/** What a person sees of it. */
const plainText = (text: string): string =>
  withoutEntities(
    text
      // Struck out, as in plain text; a raised digit is a square behind a name, and a footnote behind a number.
      .replace(/<\/?(?:del|s|strike)\b[^<>]*>/gi, "~~")
      .replace(/(\d)\s*<sup\b[^<>]*>[^<>]*<\/sup\s*>/gi, "$1*")
      .replace(/<sup\b[^<>]*>\s*2\s*<\/sup\s*>/gi, "²")
      .replace(/<sup\b[^<>]*>[^<>]*<\/sup\s*>/gi, "")
      .replace(/<(?:br|\/p|\/h\d|\/caption|\/title)\b[^<>]*>/gi, "\n")
      .replace(/<[^<>]*>/g, "")
      .replace(/&#(x?)([\da-f]+);/gi, (_, isHex, digits) =>
        String.fromCodePoint(Number.parseInt(digits, isHex ? 16 : 10) || 0xfffd),
      ),
  ).trim();
