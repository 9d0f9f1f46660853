import { quote, ReadError } from "../../input/read-error.js";
import { once } from "../../numbers/once.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { ColumnRole } from "../options/column-role.js";
import type { ReadOptions } from "../options/read-options.js";
import type { FrequencyUnit } from "../options/units.js";
import type { NumberColumn } from "../quantities/assemble.js";
import { isReferenceName } from "../quantities/reference-statement.js";
import { SCALES, withBounds } from "../quantities/scale-end.js";
import type { SourceText } from "../text/text.js";
import { linesOf, type TextLines } from "../text/text-lines.js";
import { halfUnitOf, readCell, splitLines } from "./cells.js";
import { DELIMITER_WORDS, type Dialect, decideDialect } from "./dialect.js";
import { findHeader } from "./header.js";
import { frequencyUnitIn, preambleOf, refuseTransmission, rolesFromPreamble, withPreambleUnit } from "./preamble.js";
import { below } from "./rows-below.js";
import { seriesInOrder } from "./series.js";
import type { NumberTable } from "./table-builder.js";
import { tableInHz } from "./table-in-hz.js";

/** A delimited text taken apart into columns whose meaning its header, or the user, states. */
export interface DelimitedColumns {
  readonly file: string;
  readonly frequencyHz: Float64Array;
  readonly unit: FrequencyUnit;
  readonly columns: readonly NumberColumn[];
  readonly roles: readonly ColumnRole[];
  /** The header's cells as printed; empty where there is none */
  readonly names: readonly string[];
  readonly lines: Uint32Array;
  /** "commas, decimal point, MHz" */
  readonly dialect: string;
  readonly comments: readonly string[];
  /** Lines above, below and beside the rows that may state the reference impedance */
  readonly texts: readonly string[];
}

/** Lines that are no rows, looked at for what they state. */
const MOST_TEXTS = 40;
/** Rows looked at to see how many digits a column is printed with. */
const ROWS_FOR_DIGITS = 30;

/** @throws ReadError where there are no two columns of numbers, or what they hold is not stated */
export function readColumns(text: SourceText, options: ReadOptions, findings: Finding[]): DelimitedColumns {
  const lines = linesOf(text);
  const decided = decideDialect(lines, options, text.file);
  const header = options.columns === undefined ? findHeader(lines, decided, options.port ?? 1) : null;
  const dialect = header === null ? decided : below(header, decided, lines);
  const comments = preambleOf(lines, dialect.firstDataLine, header?.lineIndex ?? -1);
  const stated = options.columns ?? header?.roles ?? rolesFromPreamble(comments, dialect.columns);
  if (stated === null) throw withoutHeader(lines, dialect, text.file);
  refuseTransmission(comments, text.file);
  const roles = withPreambleUnit(stated, comments);
  checkWidth(roles, header?.names ?? [], dialect, lines, text.file);
  const index = roles.findIndex(({ quantity }) => quantity === "frequency");
  if (index < 0 || index >= dialect.columns) {
    throw new ReadError({
      code: "no-frequency",
      file: text.file,
      found: "no column holds a frequency",
      remedy: "Say which one does with --columns.",
    });
  }
  if (roles[index]?.isUnknownUnit && options.frequencyUnit === undefined) {
    throw new ReadError({
      code: "ambiguous",
      file: text.file,
      found: `the unit of ${quote(header?.names[index] ?? "")} is not known`,
      expected: "Hz, kHz, MHz or GHz",
      remedy: "If it is one of these, say which with --unit.",
    });
  }
  const { table: asRead, unit } = tableInHz(
    lines,
    dialect,
    index,
    header?.names ?? [],
    {
      asked: options.frequencyUnit ?? null,
      stated: roles[index]?.frequencyUnit ?? frequencyUnitIn(comments),
      isDecimalStated: options.decimal !== undefined,
    },
    text.file,
    findings,
  );
  const names = header?.names ?? [];
  const series = seriesInOrder(asRead, index, roles, names, dialect, lines);
  const table = series?.table ?? asRead;
  report(table, findings);
  findings.push(...(series?.findings ?? []));
  const texts = [
    ...comments,
    ...names,
    ...[...table.strange, ...table.notes].slice(0, MOST_TEXTS).map((line) => lines.text(line - 1)),
    ...referenceColumn(table, names),
  ];
  return {
    file: text.file,
    frequencyHz: table.columns[index] as Float64Array,
    unit,
    columns: numberColumns(table, roles, header?.names ?? [], dialect, lines, texts),
    roles,
    names: header?.names ?? [],
    lines: table.lines,
    dialect: `${DELIMITER_WORDS[dialect.delimiter]}, decimal ${dialect.decimal}, ${unit}`,
    comments,
    texts,
  };
}

/** More columns of numbers than names, or more names than columns, leaves open which name belongs to which. */
function checkWidth(
  roles: readonly ColumnRole[],
  names: readonly string[],
  dialect: Dialect,
  lines: TextLines,
  file: string,
): void {
  const named = names.length > 0 ? names.findLastIndex((name) => name !== "") + 1 : roles.length;
  if (named === dialect.columns) return;
  // A first data row longer by empty cells, and text columns without a name, are harmless.
  const numbers = numericColumns(lines, dialect);
  if (named < dialect.columns && numbers.slice(named).every((isNumber) => !isNumber)) return;
  throw new ReadError({
    code: "ambiguous",
    file,
    line: dialect.firstDataLine + 1,
    found: `${dialect.columns} columns of numbers, but names for ${named}`,
    expected: "a name for each column",
    remedy: `Say what the ${dialect.columns} columns hold with --columns, "skip" for those to leave out (frequency:MHz,skip,swr).`,
  });
}

/** Which columns hold a number in the first row. */
function numericColumns(lines: TextLines, dialect: Dialect): readonly boolean[] {
  const cells = splitLines([lines.text(dialect.firstDataLine)], dialect.delimiter)[0] ?? [];
  return Array.from({ length: dialect.columns }, (_, c) => readCell(cells[c] ?? "", dialect.decimal).kind === "number");
}

function report({ strange, nextBlockLine, remarked }: NumberTable, findings: Finding[]): void {
  const [remark] = remarked;
  if (remark !== undefined) {
    const params = { text: quote(remark.text), count: remarked.length };
    findings.push(finding("caution", "cells-remarked", params, { line: remark.line }));
  }
  const [firstLine] = strange;
  if (firstLine !== undefined) {
    const params = { firstLine, count: strange.length, text: null };
    findings.push(finding("caution", "row-left-out", params, { line: firstLine }));
  }
  if (nextBlockLine !== null) {
    findings.push(finding("caution", "block-left-out", {}, { line: nextBlockLine }));
  }
}

function numberColumns(
  table: NumberTable,
  roles: readonly ColumnRole[],
  names: readonly string[],
  dialect: Dialect,
  lines: TextLines,
  texts: readonly string[],
): NumberColumn[] {
  const sample = once(() => {
    const texts = Array.from(table.lines.subarray(0, ROWS_FOR_DIGITS), (line) => lines.text(line - 1));
    return splitLines(texts, dialect.delimiter);
  });
  return roles.flatMap((role, c): NumberColumn[] => {
    const values = table.columns[c];
    if (role.quantity === "frequency" || role.quantity === "other" || values === undefined) return [];
    // "More than" makes sense of SWR and ρ only; anywhere else such a cell holds no number.
    const atLeast = table.atLeast.filter(({ column }) => column === c);
    const scale = SCALES[role.quantity];
    const { settled, ceiling } =
      scale === undefined ? { settled: values, ceiling: null } : withBounds(values, atLeast, scale);
    return [
      {
        quantity: role.quantity,
        name: names[c] ?? `column ${c + 1}`,
        values: role.factor === undefined ? settled : settled.map((value) => value * (role.factor ?? 1)),
        ceiling,
        halfUnit: once(() => halfUnitOf(sample(), c, dialect.decimal)),
        isAssumed: role.isAssumed ?? false,
        radians: role.radians ?? false,
        percent: role.percent ?? false,
        isNormalised: role.isNormalised ?? areNormalised(texts, role),
        isUnsigned: false,
      },
    ];
  });
}

function withoutHeader(lines: TextLines, dialect: Dialect, file: string): ReadError {
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
    remedy: `If it is a sweep, say what the ${dialect.columns} columns hold, such as --columns frequency:${likelyUnit(example)},${likelyReadings(dialect.columns)}`,
  });
}

/** The unit that the first number of a line would have as a frequency of an antenna. */
function likelyUnit(line: string): FrequencyUnit {
  const first = Number.parseFloat(line.replace(",", "."));
  if (first >= 100_000) return "Hz";
  return first >= 1000 ? "kHz" : "MHz";
}

const likelyReadings = (columns: number): string =>
  columns === 2 ? "swr" : ["r", "x", ...new Array<string>(Math.max(0, columns - 3)).fill("skip")].join(",");

/** What a column of reference impedances states, where all its values are one. */
function referenceColumn({ columns }: NumberTable, names: readonly string[]): readonly string[] {
  const index = names.findIndex((name) => isReferenceName(name));
  const values = columns[index];
  const first = values?.[0];
  if (values === undefined || first === undefined || !values.every((value) => value === first)) return [];
  return [`${names[index]} = ${first}`];
}

/** Whether words around the table say that impedances in it are multiples of the reference. */
const areNormalised = (texts: readonly string[], { quantity }: ColumnRole): boolean =>
  /^(?:resistance|reactance|impedance-magnitude|parallel-)/.test(quantity) &&
  texts.some((text) => /\bnormali[sz]ed (?:imped\w*|values?|data)|(?:multiples of|divided by) z ?[o0₀]/i.test(text));
