import { quote, ReadError } from "../../input/read-error.js";
import { at, magnitudesOf } from "../../numbers/column.js";
import { reflectionMagnitudeFromSwr } from "../../reflection/swr.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { DEFAULT_REFERENCE_OHMS, type ReadOptions } from "../options/read-options.js";
import { type Points, rowsWithoutNumber } from "../points/arrange.js";
import { ledgerOf } from "../points/line-ledger.js";
import type { ReadPoints } from "../points/read-points.js";
import { roundingOf } from "../points/rounding.js";
import { type Determination, determinationsOf } from "../quantities/assemble.js";
import { guessedColumns } from "../quantities/column-names.js";
import { resolutionOf } from "../quantities/compare.js";
import { crossCheck } from "../quantities/cross-check.js";
import { absurdReadings, slippedFrequencies, unlikelyFrequencies } from "../quantities/plausibility.js";
import { type ReferenceStatement, referenceOf, referenceRead } from "../quantities/reference-statement.js";
import { settleColumns } from "../quantities/settle-columns.js";
import type { SourceText } from "../text/text.js";
import type { DelimitedColumns } from "./delimited-columns.js";
import { transmissionError } from "./preamble.js";
import { readColumns } from "./read-columns.js";

/** An SWR of 0.99 is a rounded 1, not an impossible reading. */
const NEARLY_ZERO = 0.01;
/** Frequencies of companion files may differ by rounding in print. */
const SAME_FREQUENCY = 1e-6;

/**
 * Reads a sweep from delimited text: comma, semicolon, tab or blanks; decimal point or comma; a header that names the
 * columns, or the user's word for what they hold.
 *
 * @throws ReadError where the text holds no sweep, or could mean two different ones
 */
export function readDelimited(text: SourceText, options: ReadOptions): ReadPoints {
  const findings: Finding[] = [];
  return reflectionFrom(readColumns(text, options, findings), options, findings);
}

/** Reads several texts that each hold one part of the same sweep, at the same frequencies. */
export function readDelimitedTogether(texts: readonly SourceText[], options: ReadOptions): ReadPoints {
  const findings: Finding[] = [];
  const tables = texts.map((text) => readColumns(text, options, findings));
  const [first, ...others] = tables as [DelimitedColumns, ...DelimitedColumns[]];
  for (const { frequencyHz, file } of others) {
    const isSame =
      frequencyHz.length === first.frequencyHz.length &&
      frequencyHz.every((value, i) => Math.abs(value - at(first.frequencyHz, i)) <= SAME_FREQUENCY * value);
    if (isSame) continue;
    throw new ReadError({
      code: "bad-row",
      file,
      found: `its frequencies are not those of ${first.file}`,
      expected: "the same frequencies in both files",
      remedy: "Export both parts from the same sweep.",
    });
  }
  findings.push(finding("info", "companion-files", { count: tables.length }));
  const together = {
    ...first,
    columns: tables.flatMap(({ columns }) => columns),
    names: tables.flatMap(({ names }) => names),
    comments: tables.flatMap(({ comments }) => comments),
  };
  return reflectionFrom(together, options, findings);
}

/** Turns columns into a reflection: the most finely printed way counts, the others are compared with it. */
function reflectionFrom(table: DelimitedColumns, options: ReadOptions, findings: Finding[]): ReadPoints {
  const { file, frequencyHz } = table;
  const stated = options.referenceOhms === undefined ? referenceOf(table.texts, file) : null;
  const referenceOhms = options.referenceOhms ?? (stated?.isSure ? stated.ohms : DEFAULT_REFERENCE_OHMS);
  const columns = settleColumns(table.columns, { ...table, options }, findings);
  const determinations = determinationsOf(columns, referenceOhms);
  const chosen = mostPrecise(determinations);
  if (chosen === null) throw withoutReflection(table);
  findings.push(...crossCheck(chosen, determinations, columns, referenceOhms));
  findings.push(
    ...referenceFindings(stated, options),
    ...absurdReadings(chosen),
    ...slippedFrequencies(frequencyHz),
    ...unlikelyFrequencies(frequencyHz),
  );
  const { points, isKept } = pointsOf(table, chosen, findings);
  return {
    format: "delimited",
    points,
    series: table.series && { ...table.series, of: table.series.of.filter(isKept) },
    ledger: () => {
      const lost = new Set(table.lines.filter((_, row) => !isKept(0, row)));
      return ledgerOf(table.allLines(), (line) => (lost.has(line) ? "no-reading" : table.kindOf(line)));
    },
    referenceOhms,
    description: `delimited text, ${table.dialect}, from ${chosen.title}`,
    comments: table.comments,
    findings,
  };
}

/** Where the reference impedance comes from, unless the user stated it. */
function referenceFindings(stated: ReferenceStatement | null, { referenceOhms }: ReadOptions): readonly Finding[] {
  if (referenceOhms !== undefined) return [];
  if (stated?.isSure) return [referenceRead(stated)];
  const assumed = finding("info", "reference-assumed", { ohms: DEFAULT_REFERENCE_OHMS });
  return stated === null || stated.ohms === DEFAULT_REFERENCE_OHMS
    ? [assumed]
    : [assumed, finding("caution", "reference-mentioned", { text: quote(stated.text.trim()), ohms: stated.ohms })];
}

/** The most finely printed complex determination; without one, the most finely printed scalar one. */
function mostPrecise(determinations: readonly Determination[]): Determination | null {
  const vectors = determinations.filter(({ isVector }) => isVector);
  const choice = vectors.length > 0 ? vectors : determinations;
  if (choice.length <= 1) return choice[0] ?? null;
  return (
    choice
      .map((determination) => ({ determination, resolution: resolutionOf(determination) }))
      .reduce<{ determination: Determination; resolution: number } | null>(
        (best, next) => (best === null || next.resolution < best.resolution ? next : best),
        null,
      )?.determination ?? null
  );
}

/** The points of the rows that give one, and which those are. */
function pointsOf(
  { file, frequencyHz, lines }: DelimitedColumns,
  chosen: Determination,
  findings: Finding[],
): { points: Points; isKept: (_: number, row: number) => boolean } {
  const count = frequencyHz.length;
  const real = new Float64Array(count);
  const imaginary = new Float64Array(count);
  const columns = chosen.columns.map((column) => column.values);
  const values = columns.map(() => 0);
  let lost = 0;
  let lostLine = 0;
  for (let row = 0; row < count; row++) {
    for (let c = 0; c < columns.length; c++) values[c] = at(columns[c] as Float64Array, row);
    const value = chosen.reflection(values);
    const frequency = at(frequencyHz, row);
    const isUsable = Number.isFinite(frequency) && Number.isFinite(value.real) && Number.isFinite(value.imaginary);
    if (!isUsable || (!chosen.isVector && value.real < -NEARLY_ZERO)) {
      if (lost++ === 0) lostLine = lines[row] as number;
      real[row] = Number.NaN;
      continue;
    }
    real[row] = chosen.isVector ? value.real : Math.max(0, value.real);
    imaginary[row] = value.imaginary;
  }
  if (lost > 0) findings.push(rowsWithoutNumber(lostLine, lost));
  if (lost === count) {
    throw new ReadError({
      code: "no-data",
      file,
      found: `no row gives a reflection from ${chosen.title}`,
      expected: "numbers in those columns",
      remedy: "If other columns hold them, say what each holds with --columns, from the left.",
    });
  }
  const isKept = (_: number, row: number) => !Number.isNaN(at(real, row));
  const keptOf = (column: Float64Array) => (lost === 0 ? column : column.filter(isKept));
  const first = keptOf(real);
  const second = keptOf(imaginary);
  const points: Points = {
    frequencyHz: keptOf(frequencyHz),
    reflectionReal: chosen.isVector ? first : null,
    reflectionImaginary: chosen.isVector ? second : null,
    // Of a scalar reading the real part is ρ already; squaring it would lose what lies below 1e-154.
    reflectionMagnitude: chosen.isVector ? magnitudesOf(first, second) : first,
    line: lost === 0 ? lines : lines.filter(isKept),
    ceiling: scaleEndIn(chosen, findings),
    areSpots: false,
    repeatNoise: null,
    rounding: roundingOf(chosen),
  };
  return { points, isKept };
}

/** ρ from which on a scalar reading means "at least", where its instrument's scale ended. */
function scaleEndIn({ columns, isVector }: Determination, findings: Finding[]): number | null {
  const [column] = columns;
  if (isVector || column === undefined || column.ceiling === null) return null;
  const isSwr = column.quantity === "swr";
  if (column.ceiling >= (isSwr ? Number.POSITIVE_INFINITY : 1)) {
    findings.push(finding("caution", "saturated", { name: quote(column.name), ceiling: null }));
    return null;
  }
  findings.push(finding("caution", "saturated", { name: quote(column.name), ceiling: column.ceiling }));
  return isSwr ? reflectionMagnitudeFromSwr(column.ceiling) : column.ceiling;
}

function withoutReflection({ names, roles, unit, file }: DelimitedColumns): ReadError {
  if (roles.some(({ quantity }) => quantity === "transmission")) {
    return transmissionError(file, "the columns hold");
  }
  return new ReadError({
    code: "no-reflection",
    file,
    found:
      names.length > 0
        ? `the header ${quote(names.join(", "))} names no reading that gives a reflection`
        : "no column gives a reflection",
    expected: "SWR, return loss, S11, R and X, or |Z| with its angle",
    remedy: `Say what the columns hold, for example ${guessedColumns(roles, unit)}, or name two files with + between them if each holds one part.`,
  });
}
