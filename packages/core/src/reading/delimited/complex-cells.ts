import { rewritten, type SourceText } from "../text/text.js";

/** A complex number written in one cell: "0.19-0.17i", "(0.19 - j0.17)", "0.19+0.17*j". */
const NUMBER = "(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)(?:e[+-]?\\d+)?";
const COMPLEX = new RegExp(`^([+-]?${NUMBER})([+-])(?:[ij]\\*?(${NUMBER})|(${NUMBER})\\*?[ij])$`, "i");
const DELIMITERS = ["\t", ";", ",", " "];
/** A header is looked for this far above the numbers. */
const REACH = 40;
/** Units that a name ends in, in brackets. */
const UNIT = /\s*[([](?:ohms?|Ω|k?ohm|siemens|m?s|1|)[)\]]$/i;

/** Something like "j0.17" or "0.17i", which only a complex number has. */
const IMAGINARY = /[+-]\s*[ij]\s*\*?[\d.]|[\d.]\s*\*?[ij](?![\p{L}\d])/iu;
const SAMPLE = 200;

/** Whether the last rows of a text hold complex numbers in one cell. A look at its end costs nothing. */
export function endsInComplexCells(text: SourceText): boolean {
  const { bytes } = text;
  const start = Math.max(0, bytes.length - SAMPLE);
  for (let i = start; i < bytes.length; i++) {
    if (LETTERS.has(bytes[i] as number)) return IMAGINARY.test(text.decode(start, bytes.length));
  }
  return false;
}

/** i, j, I and J */
const LETTERS: ReadonlySet<number> = new Set([0x69, 0x6a, 0x49, 0x4a]);

interface Cells {
  readonly delimiter: string;
  /** Which columns hold complex numbers */
  readonly complex: readonly boolean[];
}

/**
 * The same text with each complex number that stands in one cell put into two, real and imaginary part, and with the names of
 * their columns doubled likewise. No line is added or lost.
 *
 * @returns null where no line holds such numbers
 */
export function withComplexCellsSplit(text: SourceText): SourceText | null {
  const lines = text.decode(0, text.bytes.length).split("\n");
  const first = lines.findIndex((line) => cellsOf(line) !== null);
  const layout = cellsOf(lines[first] ?? "");
  if (layout === null) return null;
  const changed = lines.map((line, i) => {
    if (i >= first) return splitRow(line, layout) ?? line;
    return i >= first - REACH ? (splitNames(line, layout) ?? line) : line;
  });
  return rewritten(text, changed.join("\n"));
}

/** How a line splits that begins with a number and holds a complex one in another cell; null for any other. */
function cellsOf(line: string): Cells | null {
  for (const delimiter of DELIMITERS) {
    const cells = split(line, delimiter);
    const complex = cells.map((cell) => partsOf(cell) !== null);
    if (cells.length >= 2 && /^[+-]?[\d.,]+(?:e[+-]?\d+)?$/i.test(cells[0] ?? "") && complex.includes(true)) {
      return { delimiter, complex };
    }
  }
  return null;
}

/** Cells without quotes; at blanks only where no sign or bracket stands beside them. */
function split(line: string, delimiter: string): string[] {
  const text = line.trim();
  const cells = delimiter === " " ? text.replace(/\s*([+-])\s+/g, "$1").split(/\s+/) : text.split(delimiter);
  return cells.map((cell) => cell.trim().replace(/^["']|["']$/g, ""));
}

/** Real and imaginary part as printed; null where a cell is no complex number. */
function partsOf(cell: string): readonly [string, string] | null {
  const bare = cell
    .replace(/\s*(?:ohms?|Ω|Ω)$/iu, "")
    .replace(/\s/g, "")
    .replace(/^\((.*)\)$/, "$1");
  const [, real, sign = "", after, before] = COMPLEX.exec(bare) ?? [];
  const size = after ?? before;
  return real === undefined || size === undefined ? null : [real, sign === "-" ? `-${size}` : size];
}

function splitRow(line: string, { delimiter, complex }: Cells): string | null {
  const cells = split(line, delimiter);
  if (cells.length !== complex.length) return null;
  const parts = cells.map((cell, c) => (complex[c] ? partsOf(cell) : [cell]));
  return parts.some((part) => part === null) ? null : parts.flatMap((part) => part ?? []).join(delimiter);
}

/** A line of as many names as there are columns, those of complex columns doubled. Commas within brackets split no name. */
function splitNames(line: string, { delimiter, complex }: Cells): string | null {
  const mark = /^\s*[!#%;]+\s*/.exec(line)?.[0] ?? "";
  const names = namesIn(line.slice(mark.length), delimiter);
  if (names.length !== complex.length || names.some((name, c) => (complex[c] && name === "") || partsOf(name) !== null))
    return null;
  if (names.every((name) => /^[+-]?[\d.,e]+$/i.test(name))) return null;
  const parts = names.flatMap((name, c) => (complex[c] ? doubled(name) : [name]));
  return mark + parts.map((name) => (name.includes(delimiter) ? `"${name}"` : name)).join(delimiter);
}

function namesIn(line: string, delimiter: string): readonly string[] {
  const names: string[] = [""];
  let depth = 0;
  for (const character of line.trim()) {
    if (character === "(" || character === "[") depth++;
    if (character === ")" || character === "]") depth--;
    if (character === delimiter && depth <= 0) names.push("");
    else names[names.length - 1] += character;
  }
  return names.map((name) => name.trim().replace(/^["']|["']$/g, ""));
}

function doubled(name: string): readonly string[] {
  const unit = UNIT.exec(name)?.[0] ?? "";
  const bare = name.slice(0, name.length - unit.length).replace(/^(?:rect|complex|cplx)\((.*)\)$/i, "$1");
  return [`re(${bare})${unit}`, `im(${bare})${unit}`];
}
