import { type Finding, finding } from "../../sweep/finding.js";
import type { ReadPoints } from "../points/read-points.js";
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

/** A text whose lines are rows of cells, what is left of one without what wraps them, or a table to be written so. */
export type Written =
  | { readonly as: "rows"; readonly text: SourceText }
  | { readonly as: "bare"; readonly content: string }
  | { readonly as: "form"; readonly table: FormTable };

/** Rows of cells as text. */
export interface RowsText {
  readonly text: SourceText;
  /** The table that was written so, and the line of the file for each line; null where they are those of the file */
  readonly form: { readonly table: FormTable; readonly lineOf: readonly (number | null)[] } | null;
}

/** Cells that hold a tab or an end of line would be two. */
const clean = (cell: string): string => cell.replace(/[\t\r\n]+/g, " ").trim();

/** Rows as they stand; of a table comments, header and rows, cells apart by tabs. */
export function rowsText(written: Written, source: SourceText): RowsText {
  if (written.as === "rows") return { text: written.text, form: null };
  if (written.as === "bare") return { text: rewritten(source, written.content), form: null };
  const { table } = written;
  const { comments, header, rows } = table;
  const above = [...comments.map((comment) => `# ${clean(comment)}`), header.map(clean).join("\t")];
  const lines = [...above, ...rows.map(({ cells }) => cells.map(clean).join("\t"))];
  const lineOf = [...above.map(() => null), ...rows.map(({ line }) => line)];
  return { text: rewritten(source, `${lines.join("\n")}\n`, "tab"), form: { table, lineOf } };
}

/** What was read of rows, with the lines of the file. */
export function inFile(points: ReadPoints, { form }: RowsText): ReadPoints {
  if (form === null) return points;
  const { table, lineOf } = form;
  const { kindOf: _, ...read } = points;
  return {
    ...read,
    description: read.description.replace("delimited text, tabs", table.name),
    points: { ...read.points, line: read.points.line.map((line) => lineOf[line - 1] ?? 0) },
    findings: [
      ...read.findings.map(({ line = 0, ...finding }) => {
        const own = lineOf[line - 1] ?? null;
        return own === null ? finding : { ...finding, line: own };
      }),
      ...leftOutOf(table),
    ],
  };
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
