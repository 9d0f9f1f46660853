import { type Finding, finding } from "../finding.js";
import { quote, ReadError } from "../read-error.js";
import { DELIMITER_CHARACTERS, readCell, splitLines } from "./cells.js";
import { type CellUnit, dressedNumber, mayBeDressed, unitsIn, withUnitsJoined } from "./dressed-number.js";
import type { DecimalMark, Delimiter, FrequencyUnit, ReadOptions } from "./options.js";
import { rewritten, type SourceText } from "./text.js";

const DELIMITERS: readonly Delimiter[] = ["tab", "semicolon", "comma", "space"];
/** Bytes at a text's end that are looked at first: a look that costs next to nothing. */
const SAMPLE = 500;
/** A header is looked for this far above the numbers. */
const REACH = 40;

/** A text whose cells hold nothing beside their numbers, and what there is to say of it. */
interface BareText {
  readonly text: SourceText;
  readonly options: ReadOptions;
  readonly findings: readonly Finding[];
}

/** How a column of numbers is written. */
interface ColumnStyle {
  /** Whether some of its numbers have a unit and others have none */
  readonly isMixed: boolean;
  /** null where its cells name none */
  readonly unit: CellUnit | null;
  /** The mark between thousands; null where there is none */
  readonly mark: string | null;
}

/**
 * The same text without the units beside its numbers ("7.1 MHz") and the marks between their thousands ("7.100.000"). Units go
 * to the names of their columns; where rows have units of different size, all are brought to one by a power of ten. No line
 * is added or lost.
 *
 * @returns null where no row holds such cells
 * @throws ReadError `ambiguous` where a mark between the thousands of one column may be the decimal mark of another
 */
export function withBareCells(text: SourceText, options: ReadOptions): BareText | null {
  const start = Math.max(0, text.bytes.length - SAMPLE);
  const end = text.decode(start, text.bytes.length);
  if (!mayBeDressed(end)) return null;
  const lastLines = linesIn(end).slice(start === 0 ? 0 : 1);
  const delimiter = (options.delimiter === undefined ? DELIMITERS : [options.delimiter]).find((candidate) =>
    split(lastLines, candidate).some((row) => isDressed(row, candidate)),
  );
  return delimiter === undefined ? null : undressed(text, delimiter, options);
}

const linesIn = (text: string): readonly string[] => text.split(/\r\n|\n|\r/);

function split(lines: readonly string[], delimiter: Delimiter): readonly (readonly string[])[] {
  return splitLines(delimiter === "space" ? lines.map(withUnitsJoined) : lines, delimiter);
}

function undressed(text: SourceText, delimiter: Delimiter, options: ReadOptions): BareText | null {
  const lines = linesIn(text.decode(0, text.bytes.length));
  const rows = split(lines, delimiter);
  const dressed = rows.findIndex((row) => isDressed(row, delimiter));
  const width = (rows[dressed] as readonly string[]).length;
  // Numbers below a thousand, or a million, may stand above the first that show a mark.
  const above = rows.slice(0, dressed).findLastIndex((row) => row.length !== width || !row.every(isNumeric));
  const first = above + 1;
  const isRow = rows.map((row, i) => i >= first && row.length === width && row.every(isNumeric));
  const header = rows.findLastIndex((row, i) => i < first && i >= first - REACH && row.length === width);
  const names = rows[header] ?? [];
  const columnOf = (c: number) => rows.flatMap((row, i) => (isRow[i] ? [row[c] as string] : []));
  const found = Array.from({ length: width }, (_, c) => styleOf(columnOf(c), names[c] ?? ""));
  // A line that states a unit of its own, among numbers without one, says nothing about them.
  if (found.some(({ isMixed }) => isMixed)) return null;
  const styles = withDoubtSettled(found, columnOf, options.decimal, text.file);
  const write = (i: number, inStyle: (cell: string, style: ColumnStyle) => string) =>
    joined(
      (rows[i] as readonly string[]).map((cell, c) => inStyle(cell, styles[c] as ColumnStyle)),
      delimiter,
    );
  const written = lines.map((line, i) => {
    if (isRow[i]) return write(i, (cell, style) => bare(cell, style, { file: text.file, line: i + 1 }));
    return i === header ? write(i, named) : line;
  });
  return { text: rewritten(text, written.join("\n")), ...whatIsSaid(styles, options) };
}

/** Whether cells are a row of numbers, with a unit or marked thousands in one of them. */
function isDressed(row: readonly string[], delimiter: Delimiter): boolean {
  if (row.length < 2 || !row.every(isNumeric) || dressedNumber(row[0] ?? "") === null) return false;
  const numbers = row.map(dressedNumber).filter((number) => number !== null);
  // "7,500 100,0" is two numbers with a decimal comma between blanks, and not 7, 500100 and 0.
  if (delimiter === "comma" && numbers.some(({ mark }) => mark === " ")) return false;
  return numbers.some(({ unit, mark }) => unit !== null || mark !== null);
}

const isNumeric = (cell: string): boolean =>
  dressedNumber(cell) !== null || MARKS.some((mark) => readCell(cell, mark).kind !== "text");
const MARKS: readonly DecimalMark[] = ["point", "comma"];

/** How a column is written, by its cells and its name: the name's unit counts, else that of the first cell. */
function styleOf(cells: readonly string[], name: string): ColumnStyle {
  const numbers = cells.map(dressedNumber).filter((number) => number !== null);
  const unit = numbers.find((number) => number.unit !== null)?.unit ?? null;
  return {
    isMixed: unit !== null && numbers.some((number) => number.unit?.kind !== unit.kind),
    unit: unit === null ? null : (unitsIn(name).find(({ kind }) => kind === unit.kind) ?? unit),
    mark: numbers.find(({ mark }) => mark !== null)?.mark ?? null,
  };
}

/** A column's number by itself, in the column's unit. @throws ReadError `bad-row` where its marks are not those of thousands */
function bare(cell: string, { unit, mark }: ColumnStyle, place: { file: string; line: number }): string {
  const number = dressedNumber(cell);
  if (number === null) return cell;
  const groups = mark === null ? [] : number.digits.split(mark);
  if (groups.slice(1).some((group) => !/^\d{3}(?!\d)/.test(group))) {
    throw new ReadError({
      code: "bad-row",
      ...place,
      found: `${quote(cell)} in a column whose thousands are marked with ${quote(mark ?? "")}`,
      expected: "three digits after each mark",
    });
  }
  const digits = mark === null ? number.digits : groups.join("");
  const power = number.unit === null || unit === null ? 0 : number.unit.power - unit.power;
  return power === 0 ? digits : `${digits}e${power}`;
}

/** A column's name with its unit, where it has none yet. */
const named = (name: string, { unit }: ColumnStyle): string =>
  unit === null || unitsIn(name).some(({ kind }) => kind === unit.kind) ? name : `${name} (${unit.name})`;

function joined(cells: readonly string[], delimiter: Delimiter): string {
  const character = DELIMITER_CHARACTERS[delimiter];
  return cells.map((cell) => (cell.includes(character) ? `"${cell}"` : cell)).join(character);
}

/**
 * "1.523" beside "7.100.000" may be a fraction or more than a thousand, unless its column has fractions of other lengths or the
 * user says which mark fractions have.
 */
function withDoubtSettled(
  styles: readonly ColumnStyle[],
  columnOf: (c: number) => readonly string[],
  decimal: DecimalMark | undefined,
  file: string,
): readonly ColumnStyle[] {
  const mark = styles.map((style) => style.mark).find((found) => found === "." || found === ",");
  if (mark === undefined) return styles;
  return styles.map((style, c) => {
    const marked = style.mark === null ? columnOf(c).filter((cell) => cell.includes(mark)) : [];
    const isDoubtful = marked.length > 0 && marked.every((cell) => /^[+-]?\d{1,3}[.,]\d{3}(?!\d)/.test(cell));
    if (!isDoubtful || decimal === (mark === "." ? "point" : "comma")) return style;
    if (decimal !== undefined) return { ...style, mark };
    throw new ReadError({
      code: "ambiguous",
      file,
      found: `${quote(marked[0] ?? "")}, beside thousands marked with ${quote(mark)}, may be a fraction or a number above a thousand`,
      remedy: "Say which mark fractions have: --decimal point or --decimal comma.",
    });
  });
}

/** The findings about what was taken out, and the options with the unit that the frequencies state themselves. */
function whatIsSaid(styles: readonly ColumnStyle[], options: ReadOptions): Omit<BareText, "text"> {
  const findings: Finding[] = [];
  const mark = styles.find((style) => style.mark !== null)?.mark ?? null;
  if (mark !== null) {
    findings.push(
      finding("info", "thousands-marked", `The marks between thousands (7${mark}100${mark}000) were left out.`),
    );
  }
  const units = [...new Set(styles.flatMap(({ unit }) => unit?.name ?? []))];
  if (units.length > 0) {
    findings.push(finding("info", "units-in-cells", `Units stand beside the numbers: ${units.join(", ")}.`));
  }
  const stated = styles.find(({ unit }) => unit?.kind === "frequency")?.unit ?? null;
  if (stated === null) return { options, findings };
  const asked = options.frequencyUnit;
  if (asked !== undefined && asked !== stated.name) {
    const message = `The cells themselves state ${stated.name}; --unit ${asked} was not used.`;
    findings.push(finding("caution", "unit-stated", message));
  }
  return { options: { ...options, frequencyUnit: stated.name as FrequencyUnit }, findings };
}
