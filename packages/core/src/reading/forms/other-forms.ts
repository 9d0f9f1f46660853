import { unlessRefused } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { readDelimited } from "../delimited/delimited.js";
import type { ReadOptions } from "../options/read-options.js";
import type { ReadPoints } from "../points/read-points.js";
import { SPACE } from "../text/ascii.js";
import { rewritten, type SourceText } from "../text/text.js";
import { type FormTable, formText } from "./form.js";
import { framed } from "./frames.js";
import { jsonTable } from "./json.js";
import { markup } from "./markup.js";
import { namedValues } from "./named-values.js";
import { tidy } from "./tidy.js";
import { transposed } from "./transposed.js";
import { withoutWrapping } from "./wrapped-lines.js";

/** Ways to write a table other than rows of cells. Each tells whether a text is written so. */
const FORMS: readonly ((content: string) => FormTable | null)[] = [markup, tidy, framed, transposed, namedValues];
/** Longer texts are tables of rows, or none. */
const MOST_BYTES = 4_000_000;

/** Reads a table written as JSON; null where the text is none. */
export function readJson(text: SourceText, options: ReadOptions): ReadPoints | null {
  const start = text.bytes.findIndex((byte) => byte > SPACE);
  if ((text.bytes[start] !== OPEN_LIST && text.bytes[start] !== OPEN_OBJECT) || text.bytes.length > MOST_BYTES)
    return null;
  const table = jsonTable(text.decode(0, text.bytes.length));
  return table === null ? null : readForm(table, text, options);
}

/** "[" and "{" */
const OPEN_LIST = 0x5b;
const OPEN_OBJECT = 0x7b;

/** Reads a table that lies on its side; null where the text is none. */
export function readTransposed(text: SourceText, options: ReadOptions): ReadPoints | null {
  const table = text.bytes.length > MOST_BYTES ? null : transposed(text.decode(0, text.bytes.length));
  return table === null ? null : readForm(table, text, options);
}

/** Reads a table in another form than rows of cells; null where the text is in none of them. */
export function readOtherForm(text: SourceText, options: ReadOptions): ReadPoints | null {
  if (text.bytes.length > MOST_BYTES) return null;
  const content = text.decode(0, text.bytes.length);
  for (const form of FORMS) {
    const table = form(content);
    const read = table === null ? null : readForm(table, text, options);
    if (read !== null) return read;
  }
  const bare = withoutWrapping(content);
  return bare === null ? null : unlessRefused(() => readDelimited(rewritten(text, bare), options));
}

/** @returns null where the table is refused */
function readForm(table: FormTable, source: SourceText, options: ReadOptions): ReadPoints | null {
  const { text, lineOf } = formText(source, table);
  const inFile = (line: number): number | undefined => lineOf[line - 1] ?? undefined;
  return unlessRefused(() => {
    const { ledger: _, ...read } = readDelimited(text, { ...options, delimiter: "tab" });
    return {
      ...read,
      description: read.description.replace("delimited text, tabs", table.name),
      points: { ...read.points, line: read.points.line.map((line) => inFile(line) ?? 0) },
      findings: [
        ...read.findings.map(({ line, ...finding }) => {
          const own = line === undefined ? undefined : inFile(line);
          return own === undefined ? finding : { ...finding, line: own };
        }),
        ...leftOutOf(table),
      ],
    };
  });
}

/** What a form holds besides its table. */
function leftOutOf({ isOneOfSeveral, leftOut = [] }: FormTable): readonly Finding[] {
  const [firstLine] = leftOut;
  return [
    ...(isOneOfSeveral ? [finding("caution", "block-left-out", {})] : []),
    ...(firstLine === undefined
      ? []
      : [finding("caution", "row-left-out", { firstLine, count: leftOut.length, text: null }, { line: firstLine })]),
  ];
}
