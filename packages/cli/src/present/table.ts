import stringWidth from "string-width";
import { markdownCell, printable } from "./escape.js";

export interface TableColumn {
  readonly title: string;
  readonly align?: "left" | "right";
}

/** A table in plain text: columns two blanks apart, titles above a rule. Cells are made printable here. */
export function textTable(columns: readonly TableColumn[], rows: readonly (readonly string[])[], indent = ""): string {
  const cells = rows.map((row) => row.map(printable));
  const widths = columns.map(({ title }, c) =>
    Math.max(stringWidth(title), ...cells.map((row) => stringWidth(row[c] ?? ""))),
  );
  const line = (row: readonly string[]) =>
    indent +
    columns
      .map(({ align }, c) => {
        const text = row[c] ?? "";
        const padding = " ".repeat((widths[c] ?? 0) - stringWidth(text));
        return align === "right" ? padding + text : text + padding;
      })
      .join("  ")
      .trimEnd();
  return [
    line(columns.map(({ title }) => title)),
    line(widths.map((width) => "-".repeat(width))),
    ...cells.map(line),
  ].join("\n");
}

/** The same table in Markdown. */
export function markdownTable(columns: readonly TableColumn[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [
    line(columns.map(({ title }) => title)),
    line(columns.map(({ align }) => (align === "right" ? "--:" : "---"))),
    ...rows.map((row) => line(row.map(markdownCell))),
  ].join("\n");
}

/** Text broken at blanks to fit a width, later lines indented. */
export function wrap(text: string, width: number, indent = ""): string {
  const lines: string[] = [];
  let line = "";
  for (const word of printable(text).split(" ")) {
    if (line !== "" && stringWidth(line) + 1 + stringWidth(word) > width) {
      lines.push(line);
      line = indent + word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, line].join("\n");
}
