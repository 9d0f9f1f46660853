import { markdownCell, printable } from "./escape.js";
import { textWidth } from "./text-width.js";

export interface TableColumn {
  /** What the column is known by to whoever must find it; none where nobody does */
  readonly key?: string;
  readonly title: string;
  readonly align?: "left" | "right";
  /**
   * Order in which columns are left out where the table is wider than the terminal: the highest first, those of one number
   * together; none: never
   */
  readonly spare?: number;
}

/** The columns and rows of a table, for whatever shows it. */
export interface Table {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[])[];
}

/**
 * A table in plain text: columns two blanks apart, titles above a rule. Cells are made printable here. On a terminal too
 * narrow for all columns those that can best be spared are left out, and named below. Where what is left is too wide still,
 * the rows become blocks of text, which hold all columns.
 */
export function textTable(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  { indent = "", width = Number.POSITIVE_INFINITY }: { indent?: string; width?: number } = {},
): string {
  const room = width - textWidth(indent);
  const kept = keptColumns(columns, rows, room);
  if (tableWidth(columns, rows, kept) > room) return rows.map((row) => block(columns, row, indent, width)).join("\n");
  const pick = <Item>(items: readonly Item[]) => kept.map((c) => items[c] as Item);
  const table = fullTable(pick(columns), rows.map(pick), indent);
  const left = columns.filter((_, c) => !kept.includes(c)).map(({ title }) => title);
  return left.length === 0 ? table : `${table}\n${indent}${wrap(`(no room here for: ${left.join(", ")})`, room, "  ")}`;
}

/** A row with the title before each cell, as many on a line as there is room for; empty cells are not worth a word. */
function block(columns: readonly TableColumn[], row: readonly string[], indent: string, width: number): string {
  const lines: string[] = [];
  let line = "";
  for (const [c, { title }] of columns.entries()) {
    if ((row[c] ?? "") === "") continue;
    const named = printable(`${title}: ${row[c]}`);
    if (line !== "" && textWidth(line) + 2 + textWidth(named) <= width) {
      line += `  ${named}`;
      continue;
    }
    if (line !== "") lines.push(line);
    const start = lines.length === 0 ? indent : `${indent}  `;
    line = start + wrap(named, width - textWidth(start), `${start}  `);
  }
  return [...lines, line].join("\n");
}

function keptColumns(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  width: number,
): readonly number[] {
  const spareOf = (c: number) => columns[c]?.spare ?? 0;
  let kept = [...columns.keys()];
  while (tableWidth(columns, rows, kept) > width) {
    const most = Math.max(...kept.map(spareOf));
    if (most === 0) break;
    kept = kept.filter((c) => spareOf(c) !== most);
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
export const wrap = (text: string, width: number, indent = ""): string =>
  filledLines(printable(text).split(" "), width, indent).join("\n");

/** Lines of as many words as fit a width, later ones indented. */
export function filledLines(words: readonly string[], width: number, indent: string): readonly string[] {
  const lines: string[] = [];
  let line = "";
  let taken = 0;
  for (const word of words) {
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
  return [...lines, line];
}
