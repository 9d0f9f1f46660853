import type { FormRow, FormTable } from "./form.js";
import { transposed } from "./transposed.js";

/** Signs that stand for a character in such a text; others are written as they are. */
const ENTITIES: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
  nbsp: " ",
  Omega: "Ω",
  ohm: "Ω",
  deg: "°",
  Gamma: "Γ",
  minus: "-",
};
const FEWEST_ROWS = 2;

/** A table as pages on the web have it, or elements that all have the same parts; null where the text is neither. */
export function markup(content: string): FormTable | null {
  if (!/^\s*</.test(content)) return null;
  const shown = withoutComments(content);
  return cellsOfPage(shown) ?? alikeElements(shown);
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
  const beside = withoutElements(content, best.name);
  const stated = [...attributesIn(beside), ...textElementsIn(beside)];
  return {
    name: "elements that are alike",
    comments: stated.slice(0, MOST_COMMENTS).map(([name, value]) => `${name}: ${value}`),
    header: [...(best.records[0]?.keys() ?? [])],
    rows: best.records.map((parts) => withoutLine([...parts.values()])),
  };
}

const MOST_NAMES = 60;
const MOST_COMMENTS = 40;

/** What each element of a name holds, of those that hold the same as the first. */
function recordsOf(content: string, name: string): readonly ReadonlyMap<string, string>[] {
  const records = elementsOf(content, name).map(
    ({ attributes, inner }) => new Map([...attributesIn(attributes), ...textElementsIn(inner)]),
  );
  const namesOf = (record: ReadonlyMap<string, string>) => [...record.keys()].join("\n");
  const [first] = records;
  return first === undefined ? [] : records.filter((record) => namesOf(record) === namesOf(first));
}

const attributesIn = (text: string): readonly (readonly [string, string])[] =>
  [...text.matchAll(/\s([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g)]
    .filter(([, name]) => !/^(?:version|encoding|xmlns.*|units?)$/i.test(name ?? ""))
    .map(([, name = "", double, single]) => [name, plainText(double ?? single ?? "")]);

/** Elements that hold text alone; a unit stands with their name. */
const textElementsIn = (text: string): readonly (readonly [string, string])[] =>
  [...text.matchAll(/<([\w:.-]+)(?:\s+units?\s*=\s*["']([^"']*)["'])?\s*>([^<]*)<\/\1\s*>/g)].map(
    ([, name = "", unit, inner = ""]) => [unit === undefined ? name : `${name} (${unit})`, plainText(inner)],
  );

/** What a person sees of it. */
const plainText = (text: string): string =>
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
    )
    .replace(/&(\w+);/g, (sign, name) => ENTITIES[name] ?? sign)
    .trim();
