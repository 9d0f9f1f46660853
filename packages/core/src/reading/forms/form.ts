import { rewritten, type SourceText } from "../text/text.js";

/** Cells of a row, and the line of the file that they come from, counted from 1; null where that is not known. */
export interface FormRow {
  readonly cells: readonly string[];
  readonly line: number | null;
}

/** A table that was written in another form than rows of cells under a header. */
export interface FormTable {
  /** For a person: "JSON" */
  readonly name: string;
  /** What stands beside the table */
  readonly comments: readonly string[];
  readonly header: readonly string[];
  readonly rows: readonly FormRow[];
  /** Another table, which holds something else, is left out */
  readonly isOneOfSeveral?: boolean;
  /** Lines of readings that are not in the table's form, counted from 1 */
  readonly leftOut?: readonly number[];
}

/** The table of a form as text, and the line of the file for each of its lines. */
export interface FormText {
  readonly text: SourceText;
  readonly lineOf: readonly (number | null)[];
}

/** Cells that hold a tab or an end of line would be two. */
const clean = (cell: string): string => cell.replace(/[\t\r\n]+/g, " ").trim();

/** Comments, header and rows as text, cells apart by tabs. */
export function formText(source: SourceText, { comments, header, rows }: FormTable): FormText {
  const above = [...comments.map((comment) => `# ${clean(comment)}`), header.map(clean).join("\t")];
  const lines = [...above, ...rows.map(({ cells }) => cells.map(clean).join("\t"))];
  return {
    text: rewritten(source, `${lines.join("\n")}\n`),
    lineOf: [...above.map(() => null), ...rows.map(({ line }) => line)],
  };
}
