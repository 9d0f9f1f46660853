import { at } from "../column.js";
import { type Finding, finding } from "../finding.js";
import { quote, ReadError } from "../read-error.js";
import type { Points } from "./arrange.js";
import { type Determination, determinationsOf, looksUnsigned, type NumberColumn, resolutionOf } from "./assemble.js";
import { printedHalfUnit, readCell, splitLines } from "./cells.js";
import type { ColumnRole, Quantity } from "./columns.js";
import { crossCheck } from "./cross-check.js";
import { DELIMITER_WORDS, type Dialect, decideDialect } from "./dialect.js";
import { type FrequencyColumn, readFrequencyColumn } from "./frequency-column.js";
import { findHeader } from "./header.js";
import type { ReadOptions } from "./options.js";
import type { SourceText } from "./text.js";
import type { ReadPoints } from "./touchstone.js";

const MOST_COMMENTS = 200;
const DEFAULT_REFERENCE_OHMS = 50;

/** The rows of numbers of a delimited text, as cells, with the line that each came from. */
export interface CellRows {
  readonly cells: readonly (readonly string[])[];
  readonly lines: readonly number[];
}

/**
 * Reads a sweep from delimited text: comma, semicolon, tab or blanks; decimal point or comma; a header that names the
 * columns, or the user's word for what they hold.
 *
 * @throws ReadError where the text holds no sweep, or could mean two different ones
 */
export function readDelimited(text: SourceText, options: ReadOptions): ReadPoints {
  const lines = linesOf(text);
  const findings: Finding[] = [];
  const dialect = decideDialect(lines, options, text.file);
  const header = options.columns === undefined ? findHeader(lines, dialect) : null;
  const roles = options.columns ?? header?.roles;
  if (roles === undefined) throw withoutHeader(lines, dialect, text.file);
  const rows = dataRows(lines, dialect, findings);
  const frequency = readFrequencyColumn(rows, roles, dialect, options, text.file, findings);
  const referenceOhms = options.referenceOhms ?? DEFAULT_REFERENCE_OHMS;
  const columns = readColumns(rows, roles, header?.names ?? [], dialect);
  const settled = settleColumns(columns, roles, frequency, options, text.file, findings);
  const determinations = [...determinationsOf(settled, referenceOhms)];
  const chosen = mostPrecise(determinations);
  if (chosen === null) throw withoutReflection(header?.names ?? [], roles, text.file);
  findings.push(...crossCheck(chosen, determinations, settled, referenceOhms));
  if (options.referenceOhms === undefined) {
    findings.push(
      finding(
        "info",
        "reference-assumed",
        `Reference impedance taken as ${DEFAULT_REFERENCE_OHMS} Ω; say --reference-ohms if it was another.`,
      ),
    );
  }
  const description = `delimited text, ${DELIMITER_WORDS[dialect.delimiter]}, decimal ${dialect.decimal}, ${frequency.unit}, from ${chosen.title}`;
  return {
    points: pointsOf(rows, frequency, chosen, text.file, findings),
    referenceOhms,
    description,
    comments: preamble(lines, header?.lineIndex ?? dialect.firstDataLine),
    findings,
  };
}

/** Lines without zero bytes, up to a Ctrl-Z, which old systems put at the end of a text. */
function linesOf(text: SourceText): readonly string[] {
  const whole = text.decode(0, text.bytes.length).replaceAll("\0", "");
  const end = whole.indexOf("\u001a");
  return (end < 0 ? whole : whole.slice(0, end)).split(/\r\n|\n|\r/);
}

/** The lines of numbers as cells; lines that are none are counted, and the first is named. */
function dataRows(lines: readonly string[], dialect: Dialect, findings: Finding[]): CellRows {
  const split = splitLines(lines.slice(dialect.firstDataLine), dialect.delimiter);
  const cells: (readonly string[])[] = [];
  const numbers: number[] = [];
  const strange: number[] = [];
  split.forEach((row, i) => {
    const line = dialect.firstDataLine + i + 1;
    const last = row.findLastIndex((cell) => cell !== "");
    if (last < 0 || /^["']?[!#%]/.test(row[0] as string)) return;
    const holdsNumber = row.some((cell) => readCell(cell, dialect.decimal).kind === "number");
    if (!holdsNumber || last + 1 > dialect.columns) {
      strange.push(line);
      return;
    }
    cells.push(row);
    numbers.push(line);
  });
  if (strange.length > 0) {
    const more = strange.length > 1 ? ` and ${strange.length - 1} more` : "";
    findings.push(
      finding("caution", "row-left-out", `Left out line ${strange[0]}${more}: not a row of numbers like the others.`, {
        line: strange[0] as number,
      }),
    );
  }
  return { cells, lines: numbers };
}

function readColumns(
  rows: CellRows,
  roles: readonly ColumnRole[],
  names: readonly string[],
  dialect: Dialect,
): NumberColumn[] {
  const columns: NumberColumn[] = [];
  roles.forEach((role, c) => {
    if (role.quantity === "frequency" || role.quantity === "other" || c >= dialect.columns) return;
    const values = Float64Array.from(rows.cells, (row) => {
      const cell = readCell(row[c] ?? "", dialect.decimal);
      if (cell.kind === "number") return cell.value;
      return cell.kind === "at-least" && role.quantity === "swr"
        ? (cell.value ?? Number.POSITIVE_INFINITY)
        : Number.NaN;
    });
    const halves = rows.cells.slice(0, 200).map((row) => printedHalfUnit(row[c] ?? "", dialect.decimal));
    halves.sort((a, b) => a - b);
    columns.push({
      quantity: role.quantity,
      name: names[c] ?? `column ${c + 1}`,
      values,
      halfUnit: halves[halves.length >> 1] ?? 0,
      radians: role.radians ?? false,
      percent: role.percent ?? false,
    });
  });
  return columns;
}

/** Gives angles and parts without a subject theirs, turns a misnamed return loss round, takes an unsigned reactance for what it is. */
function settleColumns(
  columns: readonly NumberColumn[],
  roles: readonly ColumnRole[],
  frequency: FrequencyColumn,
  options: ReadOptions,
  file: string,
  findings: Finding[],
): readonly NumberColumn[] {
  const has = (quantity: Quantity) => columns.some((column) => column.quantity === quantity);
  const hasReflectionSize = ["swr", "return-loss", "s11-db", "reflection-magnitude"].some((quantity) =>
    has(quantity as Quantity),
  );
  const subject = has("impedance-magnitude") && !hasReflectionSize ? "impedance" : "reflection";
  const settled = columns.map((column): NumberColumn => {
    const { quantity, values } = column;
    if (quantity === "angle") return { ...column, quantity: `${subject}-angle` };
    if (quantity === "real") return { ...column, quantity: "reflection-real" };
    if (quantity === "imaginary") return { ...column, quantity: "reflection-imaginary" };
    if (quantity === "return-loss" && sign(values) < 0) {
      findings.push(
        finding("info", "return-loss-negative", `"${column.name}" is negative, so it was read as S11 in dB.`),
      );
      return { ...column, quantity: "s11-db" };
    }
    if (quantity === "s11-db" && sign(values) > 0) {
      findings.push(finding("caution", "s11-positive", `"${column.name}" is positive, so it was read as return loss.`));
      return { ...column, quantity: "return-loss" };
    }
    if (quantity === "reactance" && options.signedReactance !== true && looksUnsigned(values, frequency.values)) {
      findings.push(
        finding(
          "caution",
          "reactance-without-sign",
          `"${column.name}" is nowhere negative, so its sign seems to be missing; only the size of the reflection was used. Say --signed-reactance if the sign is right.`,
        ),
      );
      return { ...column, quantity: "reactance-magnitude" };
    }
    return column;
  });
  refuseDuplicates(settled, roles, file);
  return settled;
}

/** Negative where practically all values are below zero, positive where practically all are above. */
function sign(values: Float64Array): number {
  let below = 0;
  let above = 0;
  for (const value of values) {
    if (value < 0) below++;
    else if (value > 0) above++;
  }
  if (below > 0.9 * (below + above)) return -1;
  return above > 0.9 * (below + above) ? 1 : 0;
}

function refuseDuplicates(columns: readonly NumberColumn[], roles: readonly ColumnRole[], file: string): void {
  for (const column of columns) {
    if (column.quantity === "transmission") continue;
    const twin = columns.find((other) => other !== column && other.quantity === column.quantity);
    if (twin === undefined) continue;
    throw new ReadError({
      code: "ambiguous",
      file,
      found: `${quote(column.name)} and ${quote(twin.name)} both hold ${column.quantity.replaceAll("-", " ")}`,
      remedy: `Name the ${roles.length} columns with --columns, "skip" for those to leave out.`,
    });
  }
}

/** The most finely printed complex determination; without one, the most finely printed scalar one. */
function mostPrecise(determinations: readonly Determination[]): Determination | null {
  const vectors = determinations.filter(({ isVector }) => isVector);
  const choice = vectors.length > 0 ? vectors : determinations;
  return (
    choice
      .map((determination) => ({ determination, resolution: resolutionOf(determination) }))
      .reduce<{ determination: Determination; resolution: number } | null>(
        (best, next) => (best === null || next.resolution < best.resolution ? next : best),
        null,
      )?.determination ?? null
  );
}

function pointsOf(
  rows: CellRows,
  frequency: FrequencyColumn,
  chosen: Determination,
  file: string,
  findings: Finding[],
): Points {
  const kept: number[] = [];
  const real: number[] = [];
  const imaginary: number[] = [];
  const lost: number[] = [];
  for (let row = 0; row < rows.cells.length; row++) {
    const value = chosen.reflection(chosen.columns.map((column) => at(column.values, row)));
    const usable =
      Number.isFinite(at(frequency.values, row)) && Number.isFinite(value.real) && Number.isFinite(value.imaginary);
    if (!usable || (!chosen.isVector && value.real < 0)) {
      lost.push(rows.lines[row] as number);
      continue;
    }
    kept.push(row);
    real.push(value.real);
    imaginary.push(value.imaginary);
  }
  if (lost.length > 0) {
    const more = lost.length > 1 ? ` and ${lost.length - 1} more` : "";
    findings.push(
      finding("caution", "row-without-number", `Left out line ${lost[0]}${more}: no usable number there.`, {
        line: lost[0] as number,
      }),
    );
  }
  if (kept.length === 0) {
    throw new ReadError({
      code: "no-data",
      file,
      found: `no row gives a reflection from ${chosen.title}`,
      expected: "numbers in those columns",
    });
  }
  return {
    frequencyHz: Float64Array.from(kept, (row) => at(frequency.values, row)),
    reflectionReal: chosen.isVector ? Float64Array.from(real) : null,
    reflectionImaginary: chosen.isVector ? Float64Array.from(imaginary) : null,
    reflectionMagnitude: Float64Array.from(real, (value, i) => Math.hypot(value, imaginary[i] as number)),
    line: Uint32Array.from(kept, (row) => rows.lines[row] as number),
  };
}

function preamble(lines: readonly string[], end: number): readonly string[] {
  return lines
    .slice(0, end)
    .map((line) => line.replace(/^[\s"']*[!#%;*]*\s*/, "").replace(/[,;"\s]+$/, ""))
    .filter((line) => line !== "")
    .slice(0, MOST_COMMENTS);
}

function withoutHeader(lines: readonly string[], dialect: Dialect, file: string): ReadError {
  const example = (lines[dialect.firstDataLine] ?? "").trim();
  return new ReadError({
    code: "no-frequency",
    file,
    line: dialect.firstDataLine + 1,
    found: `numbers (${quote(example)}), but no header that names a frequency and a reading`,
    remedy: `Say what the ${dialect.columns} columns hold, for example --columns frequency:MHz,${dialect.columns > 2 ? "r,x" : "swr"}`,
  });
}

function withoutReflection(names: readonly string[], roles: readonly ColumnRole[], file: string): ReadError {
  if (roles.some(({ quantity }) => quantity === "transmission")) {
    return new ReadError({
      code: "not-a-reflection-sweep",
      file,
      found: "the columns hold transmission (S21 or S12)",
      expected: "a reflection: S11, SWR, return loss or impedance",
      remedy: "Export S11 of the antenna's port.",
    });
  }
  return new ReadError({
    code: "no-reflection",
    file,
    found:
      names.length > 0
        ? `the header ${quote(names.join(", "))} names no reading that gives a reflection`
        : "no column gives a reflection",
    expected: "SWR, return loss, S11, R and X, or |Z| with its angle",
    remedy: "Say what the columns hold, for example --columns frequency:MHz,swr",
  });
}
