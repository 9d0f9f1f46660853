import type { FormRow, FormTable } from "./form.js";

/** Signs that frames are drawn with: box drawing (Unicode, U+2500 to U+257F), and what stands for it. */
const UPRIGHT = /[\u2502\u2503\u2551\u254e\u2506\u250a¦]/g;
const RULE = /^[\s\u2500-\u257f+|=_-]*$/;
const HAS_RULE = /^\s*[\u2500-\u257f]{3,}/m;

/** A table in a frame drawn with signs. */
export function framed(content: string): FormTable | null {
  if (!HAS_RULE.test(content) && !UPRIGHT.test(content)) return null;
  const lines = content.split(/\r\n|\n|\r/).map((line) => line.replace(UPRIGHT, "|"));
  const cut = lines.map((line) =>
    line.includes("|") && !RULE.test(line)
      ? line
          .trim()
          .replace(/^\||\|$/g, "")
          .split("|")
          .map((cell) => cell.trim())
      : null,
  );
  const first = cut.findIndex((cells) => cells !== null && cells.length > 1);
  const header = cut[first];
  if (header === undefined || header === null) return null;
  const rows = cut.flatMap((cells, i): readonly FormRow[] =>
    cells === null || i <= first ? [] : [{ cells, line: i + 1 }],
  );
  const comments = lines.filter((line, i) => cut[i] === null && line.trim() !== "" && !RULE.test(line));
  return { name: "a framed table", comments, header, rows };
}
