/** Why a line that may hold a reading is not used. */
export type LeftOutReason =
  /** No cell of it holds a number where the table has its numbers */
  | "no-number"
  /** It has numbers behind the last column */
  | "too-many-cells"
  /** Between blanks a missing cell cannot be told from the one after it */
  | "too-few-cells"
  /** It sums up the rows above it */
  | "sums-up"
  /** It stands above the header */
  | "above-header"
  /** It belongs to another table */
  | "another-table"
  /** Its frequency or its reading is missing, or is none */
  | "no-reading";

/** What a line, counted from 1, is; null for words. */
export type KindOfLine = (line: number) => "data" | "header" | LeftOutReason | null;

/** A line that is not used, and why. */
export interface LineLeftOut {
  /** In the file, counted from 1 */
  readonly line: number;
  readonly reason: LeftOutReason;
  readonly text: string;
}

/** What became of every line of a file. */
export interface LineLedger {
  /** All lines */
  readonly lines: number;
  /** Lines whose readings are used */
  readonly data: number;
  /** Lines that name columns, or their units */
  readonly header: number;
  /** Lines of words, above the table, among its rows and below it */
  readonly comments: number;
  readonly blank: number;
  readonly leftOut: readonly LineLeftOut[];
}

/** Counts the lines of a text by what each is; `null` is a comment, and a blank line is one whatever else it may be. */
export function ledgerOf(texts: readonly string[], kindOf: KindOfLine): LineLedger {
  const count = { data: 0, header: 0, comments: 0, blank: 0 };
  const leftOut: LineLeftOut[] = [];
  for (const [index, text] of texts.entries()) {
    const kind = text.trim() === "" ? "blank" : kindOf(index + 1);
    if (kind === null) count.comments++;
    else if (kind === "data" || kind === "header" || kind === "blank") count[kind]++;
    else leftOut.push({ line: index + 1, reason: kind, text });
  }
  return { lines: texts.length, ...count, leftOut };
}
