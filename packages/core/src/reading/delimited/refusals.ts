import { NAMED_BANDS } from "../../facts/band-names.js";
import { quote, ReadError } from "../../input/read-error.js";
import type { ColumnRole } from "../options/column-role.js";
import { type FrequencyUnit, UNIT_EXPONENTS } from "../options/units.js";
import { columnsText, guessedColumns, guessedReading } from "../quantities/column-names.js";
import type { TextLines } from "../text/text-lines.js";
import { readCell } from "./cell-grammar.js";
import { splitLine } from "./cells.js";
import type { Dialect } from "./dialect.js";
import type { TableColumn } from "./table-column.js";
import type { TableInHz } from "./table-in-hz.js";

/** A unit in a header's name that is none of a frequency's. */
export const unknownUnit = (name: string, file: string): ReadError =>
  new ReadError({
    code: "ambiguous",
    file,
    found: `the unit of ${quote(name)} is not known`,
    expected: "Hz, kHz, MHz or GHz",
    remedy: "If it is one of these, say which with --unit.",
  });

/** Frequencies of one row differ by less than this share where two columns state them. */
const SAME_FREQUENCY = 1e-3;

/** Refuses a second column of frequencies that are not those of the first. One that has other words in its name says of what. */
export function refuseOtherFrequencies({ columns, index, unit }: TableInHz, file: string): void {
  const first = columns[index] as TableColumn;
  const other = columns.findIndex(
    ({ role, name }, c) => c > index && role.quantity === "frequency" && NAMES_FREQUENCY.test(name),
  );
  const second = columns[other];
  if (second === undefined) return;
  const exponent = second.unit === null ? UNIT_EXPONENTS[second.role.frequencyUnit ?? unit] : 0;
  const apart = first.values.filter((value, row) => {
    const stated = (second.values[row] ?? Number.NaN) * 10 ** exponent;
    return Math.abs(stated - value) > SAME_FREQUENCY * value;
  });
  const known = second.values.filter((value) => Number.isFinite(value)).length;
  if (known < first.values.length || apart.length < known / 2) return;
  const roles = columns.map(({ role }) => role);
  // What stands behind the other frequencies belongs to them.
  const skipped = (from: number) =>
    columnsText(roles, unit, new Map(roles.slice(from).map((_, place) => [from + place, "skip"])));
  throw new ReadError({
    code: "ambiguous",
    file,
    found: `the columns ${quote(first.name)} and ${quote(second.name)} hold different frequencies`,
    remedy: `Say which one counts: ${skipped(other)}.`,
  });
}

/** Words for a frequency and nothing else. */
const NAMES_FREQUENCY = /^\W*(?:f\p{L}*\.?\W*(?:in\W+)?[kmg]?(?:hz)?|[kmg]?hz)\W*$/iu;

/** Frequencies on both sides of 0 are counted from another one. */
export function refuseNegative(frequencyHz: ArrayLike<number>, file: string): void {
  let negative = 0;
  for (let i = 0; i < frequencyHz.length; i++) if ((frequencyHz[i] as number) < 0) negative++;
  if (negative < 2) return;
  throw new ReadError({
    code: "ambiguous",
    file,
    found: "frequencies below 0, as if they were counted from another one",
    expected: "the frequencies themselves",
    remedy: 'Add the frequency they are counted from, or name it in the header: "Offset from 7.1 MHz (kHz)".',
  });
}

/** More columns of numbers than names, or more names than columns, leaves open which name belongs to which. */
export function checkWidth(
  roles: readonly ColumnRole[],
  columns: readonly TableColumn[],
  names: readonly string[],
  dialect: Dialect,
  unit: FrequencyUnit,
  lines: TextLines,
  file: string,
): void {
  const named = names.length > 0 ? names.findLastIndex((name) => name !== "") + 1 : roles.length;
  const count = names.length > 0 ? dialect.columns : columns.length;
  // Words at the end of some rows may have a name, and none in the others.
  const areOther = (more: readonly ColumnRole[]) =>
    names.length > 0 && more.every(({ quantity }) => quantity === "other");
  if (named === count || (named > count && areOther(roles.slice(count)))) return;
  // A first data row longer by empty cells, and text columns without a name, are harmless.
  const cells = splitLine(lines.text(dialect.firstDataLine), dialect.delimiter).slice(named, count);
  if (named < count && cells.every((cell) => readCell(cell, dialect).kind !== "number")) return;
  throw new ReadError({
    code: "ambiguous",
    file,
    line: dialect.firstDataLine + 1,
    found: `${count} columns of numbers, but names for ${named}`,
    expected: "a name for each column",
    remedy: `Say what the ${count} columns hold, "skip" for those to leave out, such as ${guessedColumns(asColumns(roles, count), unit)}.`,
  });
}

/** Roles for so many columns: what is known of the first ones, and nothing of the rest; with names too many, nothing but a frequency. */
const asColumns = (roles: readonly ColumnRole[], count: number): readonly ColumnRole[] =>
  roles.length > count
    ? Array.from({ length: count }, (_, c) => ({ quantity: c === 0 ? "frequency" : "other" }))
    : Array.from({ length: count }, (_, c) => roles[c] ?? { quantity: "other" });

/** Numbers that nothing says what they are. */
export function withoutHeader(lines: TextLines, dialect: Dialect, file: string): ReadError {
  const example = lines.text(dialect.firstDataLine).trim();
  const above = dialect.firstDataLine > 0 ? lines.text(dialect.firstDataLine - 1).trim() : "";
  const header = /\p{L}/u.test(above)
    ? `the line above them, ${quote(above)}, does not name a frequency and a reading`
    : "no header says what they are";
  return new ReadError({
    code: "no-frequency",
    file,
    line: dialect.firstDataLine + 1,
    found: `there are numbers (${quote(example)}), but ${header}`,
    remedy: `If it is a sweep, say what the ${dialect.columns} columns hold, such as --columns frequency:${likelyUnit(example)},${likelyReadings(dialect.columns, above)}`,
  });
}

/** The unit that the first number of a line would have as a frequency of an antenna. */
function likelyUnit(line: string): FrequencyUnit {
  const first = Number.parseFloat(line.replace(",", "."));
  if (first < 1)
    return NAMED_BANDS.some(({ lowHz, highHz }) => first * 1e6 >= lowHz && first * 1e6 <= highHz) ? "MHz" : "GHz";
  if (first >= 100_000) return "Hz";
  return first >= 1000 ? "kHz" : "MHz";
}

const likelyReadings = (columns: number, above: string): string =>
  columns === 2
    ? guessedReading(above)
    : ["r", "x", ...new Array<string>(Math.max(0, columns - 3)).fill("skip")].join(",");
