import { lookUp } from "../../input/look-up.js";
import type { FormRow, FormTable } from "./form.js";

const END_OF_ROW = "\\\\";
/** Behind the end of a row there may be a distance, and rules. */
const BEHIND = /^(?:\[[^\]]*\])?\s*(?:\\[a-z]+(?:\{[^}]*\})*\s*)*$/;
const FEWEST_ROWS = 3;

const SIGNS: Readonly<Record<string, string>> = {
  omega: "Ω",
  gamma: "Γ",
  rho: "ρ",
  angle: "∠",
  theta: "θ",
  phi: "φ",
  varphi: "φ",
  circ: "°",
  degree: "°",
  infty: "∞",
  pm: "±",
  quad: " ",
};

/** A table as TeX has it: "7.05 & 1.4 \\" in each row. */
export function typeset(content: string): FormTable | null {
  if (!content.includes(END_OF_ROW)) return null;
  const lines = content.split(/\r\n|\n|\r/);
  const cut = lines.map(cellsIn);
  const first = cut.findIndex((cells) => cells !== null);
  const header = cut[first] ?? null;
  const rows = cut.flatMap((cells, i): readonly FormRow[] =>
    cells === null || i <= first ? [] : [{ cells, line: i + 1 }],
  );
  if (header === null || rows.length < FEWEST_ROWS) return null;
  const comments = lines.filter((line, i) => cut[i] === null && line.trim() !== "").map(plain);
  return { name: "a table to be typeset", comments: comments.filter((line) => line !== ""), header, rows };
}

/** Cells between ampersands, up to two backslashes; null where a line is no such row. */
function cellsIn(line: string): readonly string[] | null {
  const end = line.indexOf(END_OF_ROW);
  const cells = line.slice(0, Math.max(0, end)).split(/(?<!\\)&/);
  return cells.length > 1 && BEHIND.test(line.slice(end + END_OF_ROW.length)) ? cells.map(plain) : null;
}

/** What is printed of it. */
const plain = (source: string): string =>
  source
    .replace(
      /\\(?:begin|end|caption|label|centering|hline|toprule|midrule|bottomrule|cline)(?:\[[^\]]*\])?(?:\{[^{}]*\})*/g,
      (command) => (command.startsWith("\\caption") ? command.replace(/^\\caption\{(.*)\}$/, "$1") : ""),
    )
    .replace(/\\(?:text\w*|mathrm|mathit|emph|si|unit)\{([^{}]*)\}/g, "$1")
    .replace(/\\([a-z]+)/gi, (command, name: string) => lookUp(SIGNS, name.toLowerCase()) ?? command)
    .replace(/\\[,;: ]|~/g, " ")
    .replace(/\\([%#&_$])/g, "$1")
    .replace(/[${}]|\^(?=°)|^\s*%+/g, "")
    .trim();
