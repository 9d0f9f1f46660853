import { markdownCell, printable } from "./escape.js";
import { textWidth } from "./text-width.js";

export interface TableColumn {
  /** What the column is known by to whoever must find it; none where nobody does */
  readonly key?: string;
  readonly title: string;
  readonly align?: "left" | "right";
  /** Order in which columns are left out where the table is wider than the terminal: the highest first; none: never */
  readonly spare?: number;
  /** Whether a reader should be told where it is left out */
  readonly isMissed?: boolean;
}

/** The columns and rows of a table, for whatever shows it. */
export interface Table {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[])[];
}

/**
 * A table in plain text: columns two blanks apart, titles above a rule. Cells are made printable here. On a terminal too
 * narrow for all columns those that can best be spared are left out.
 */
export function textTable(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  { indent = "", width = Number.POSITIVE_INFINITY }: { indent?: string; width?: number } = {},
): string {
  const kept = keptColumns(columns, rows, indent, width);
  const pick = <Item>(items: readonly Item[]) => kept.map((c) => items[c] as Item);
  return fullTable(pick(columns), rows.map(pick), indent);
}

/** Titles of columns that matter and for which a table has no room, for a line below it. */
export function missedColumns(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  width: number,
): readonly string[] {
  const kept = keptColumns(columns, rows, "", width);
  return columns.flatMap(({ title, isMissed }, c) => (isMissed && !kept.includes(c) ? [title] : []));
}

function keptColumns(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  indent: string,
  width: number,
): readonly number[] {
  const kept = [...columns.keys()];
  while (tableWidth(columns, rows, kept) + textWidth(indent) > width) {
    const spared = kept.reduce(
      (most, c) => ((columns[c]?.spare ?? 0) > (columns[most]?.spare ?? 0) ? c : most),
      kept[0] ?? 0,
    );
    if ((columns[spared]?.spare ?? 0) === 0) break;
    kept.splice(kept.indexOf(spared), 1);
  }
  return kept;
}

function tableWidth(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  kept: readonly number[],
): number {
  const widths = kept.map((c) => columnWidth(columns[c]?.title ?? "", rows, c));
  return widths.reduce((sum, width) => sum + width, 0) + 2 * (kept.length - 1);
}

/** Of however many rows: more than a call takes arguments. */
const columnWidth = (title: string, rows: readonly (readonly string[])[], c: number): number =>
  rows.reduce((widest, row) => Math.max(widest, textWidth(row[c] ?? "")), textWidth(title));

function fullTable(columns: readonly TableColumn[], rows: readonly (readonly string[])[], indent: string): string {
  const cells = rows.map((row) => row.map(printable));
  const titles = columns.map(({ title }) => printable(title));
  const widths = titles.map((title, c) => columnWidth(title, cells, c));
  const line = (row: readonly string[]) =>
    indent +
    columns
      .map(({ align }, c) => {
        const text = row[c] ?? "";
        const padding = " ".repeat((widths[c] ?? 0) - textWidth(text));
        return align === "right" ? padding + text : text + padding;
      })
      .join("  ")
      .trimEnd();
  return [line(titles), line(widths.map((width) => "-".repeat(width))), ...cells.map(line)].join("\n");
}

/** The same table in Markdown. */
export function markdownTable(columns: readonly TableColumn[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [
    line(columns.map(({ title }) => markdownCell(title))),
    line(columns.map(({ align }) => (align === "right" ? "--:" : "---"))),
    ...rows.map((row) => line(row.map(markdownCell))),
  ].join("\n");
}

/** Text broken at blanks to fit a width, later lines indented. */
export function wrap(text: string, width: number, indent = ""): string {
  const lines: string[] = [];
  let line = "";
  let taken = 0;
  for (const word of printable(text).split(" ")) {
    const wordWidth = textWidth(word);
    if (line !== "" && taken + 1 + wordWidth > width) {
      lines.push(line);
      line = indent + word;
      taken = textWidth(indent) + wordWidth;
    } else {
      taken += line === "" ? wordWidth : 1 + wordWidth;
      line = line === "" ? word : `${line} ${word}`;
    }
  }
  return [...lines, line].join("\n");
}
