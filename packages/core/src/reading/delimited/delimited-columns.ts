import { quote } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { type ColumnRole, isReading } from "../options/column-role.js";
import type { ReadOptions } from "../options/read-options.js";
import type { FrequencyUnit } from "../options/units.js";
import type { NumberColumn } from "../quantities/assemble.js";
import { refuseNegative } from "../quantities/frequency-unit.js";
import { isReferenceName } from "../quantities/reference-statement.js";
import type { TextLines } from "../text/text-lines.js";
import { splitLine } from "./cells.js";
import { DELIMITER_WORDS, decideDialect } from "./dialect.js";
import { refuseExchangedNames } from "./exchanged-names.js";
import { flaggedRows } from "./flagged-rows.js";
import { withOffsetBase } from "./frequency-statement.js";
import { below, findHeader, type Header } from "./header.js";
import { checkWidth } from "./header-width.js";
import { rolesOf } from "./heading-line.js";
import { holdsRow, type KindOfLine, kindsOfLines } from "./lines-of-table.js";
import { listedColumns } from "./listed-columns.js";
import {
  againstOneReference,
  numberColumn,
  referenceColumn,
  rolesWithPreamble,
  withReactance,
} from "./number-columns.js";
import { preambleOf } from "./preamble.js";
import { tableOfSeries } from "./series.js";
import { withSignsInWords } from "./sign-in-words.js";
import { statedColumns } from "./stated-columns.js";
import type { CutRows } from "./table-builder.js";
import type { TableColumn } from "./table-column.js";
import { tableInHz } from "./table-in-hz.js";
import type { TableOfSeries } from "./table-of-series.js";
import type { Dialect, TableText } from "./table-text.js";

/** A delimited text taken apart into columns whose meaning its header, or the user, states. */
export interface DelimitedColumns {
  readonly file: string;
  readonly frequencyHz: Float64Array;
  readonly unit: FrequencyUnit;
  readonly columns: readonly NumberColumn[];
  readonly roles: readonly ColumnRole[];
  /** The header's cells as printed; empty where there is none */
  readonly names: readonly string[];
  /** Names of columns that are not understood and hold numbers of both signs, as phases and reactances do */
  readonly signed: readonly string[];
  readonly lines: Uint32Array;
  readonly series: TableOfSeries["series"];
  /** "commas, decimal point, MHz" */
  readonly dialect: string;
  readonly comments: readonly string[];
  /** Lines above, below and beside the rows that may state the reference impedance */
  readonly texts: readonly string[];
  /** What became of each line, as far as the table tells */
  readonly kindOf: KindOfLine;
  readonly allLines: () => readonly string[];
  /** Where another table begins below this one, and how this one is written; null where there is none */
  readonly rest: { readonly line: number; readonly dialect: Dialect } | null;
}

/** Lines that are no rows, looked at for what they state. */
const MOST_TEXTS = 40;

/** The first table from a line on. */
export function readTable(
  lines: TextLines,
  from: number,
  file: string,
  options: ReadOptions,
  findings: Finding[],
): DelimitedColumns {
  const port = options.port ?? 1;
  const decided = decideDialect(lines, options, file, from);
  const found =
    options.columns === undefined ? (listedColumns(lines, decided, port) ?? findHeader(lines, decided, port)) : null;
  const dialect = found === null ? decided : below(found, decided, lines);
  const text: TableText = { lines, dialect, file, port };
  const aboveHeader = Array.from(
    { length: Math.max(0, (found?.lineIndex ?? -1) - decided.firstDataLine) },
    (_, i) => decided.firstDataLine + i,
  ).filter((line) => holdsRow(lines.text(line), dialect));
  const [firstAbove] = aboveHeader;
  if (firstAbove !== undefined) {
    const params = { firstLine: firstAbove + 1, count: aboveHeader.length, text: null };
    findings.push(finding("caution", "row-left-out", params, { line: firstAbove + 1 }));
  }
  const preamble = preambleOf(lines, dialect.firstDataLine, found?.lineIndex ?? -1);
  const header = found && withFrequencies(found, preamble.comments, port);
  const stated = statedColumns(header, preamble, text, options, findings);
  const names = header?.names ?? [];
  const table = tableInHz(
    text,
    stated.index,
    { names, roles: header === null ? stated.roles : null },
    { asked: options.frequencyUnit ?? null, stated: stated.frequencyUnit },
    findings,
  );
  checkWidth(stated.roles, names, table, text);
  refuseNegative(table.columns[table.index]?.values ?? [], file);
  const ofSeries = tableOfSeries(table, header?.titles ?? [], preamble.comments, text, findings);
  const { rows, columns, index, series } = withSignsInWords(ofSeries, text);
  report(rows, columns, findings);
  findings.push(...flaggedRows(ofSeries, text));
  if (series === null) refuseExchangedNames(columns, index, text);
  const roles = againstOneReference(columns, rolesWithPreamble(columns, preamble));
  const left = columns
    .filter(({ role }, c) => isReading(role) && roles[c]?.quantity === "other")
    .map(({ name }) => name);
  const frequencyHz = columns[index]?.values as Float64Array;
  const texts = [
    ...preamble.comments,
    ...factsIn(preamble.comments, dialect),
    ...names.filter((name) => !left.includes(name)),
    ...[...rows.leftOut.map(({ line }) => line), ...rows.comments, ...linesWithoutFrequency(rows, index)]
      .slice(0, MOST_TEXTS)
      .map((line) => lines.text(line - 1)),
    ...referenceColumn(columns, file),
    ...rows.remarked.slice(0, 1).map(({ text }) => text),
  ];
  return {
    file,
    frequencyHz,
    unit: table.unit,
    columns: columns.flatMap((column, c) =>
      numberColumn(withReactance(column, roles[c] as ColumnRole, frequencyHz), c, roles[c] as ColumnRole, texts),
    ),
    roles,
    names,
    signed: columns.flatMap(({ name, values }, c) =>
      roles[c]?.quantity === "other" && holdsBothSigns(values) ? [name] : [],
    ),
    lines: rows.lines,
    series,
    dialect: `${DELIMITER_WORDS[dialect.delimiter]}, decimal ${dialect.decimal}, ${table.unit}`,
    comments: preamble.comments,
    texts,
    kindOf: kindsOfLines(rows, header?.lineIndex ?? -1, decided.firstDataLine, text),
    allLines: () => lines.texts(0, Number.POSITIVE_INFINITY),
    rest: rows.nextBlockLine === null ? null : { line: rows.nextBlockLine - 1, dialect },
  };
}

/** A header whose frequencies are counted from one that the preamble tells names that. */
function withFrequencies(header: Header, comments: readonly string[], port: number): Header {
  const names = header.names.map((name, c) =>
    header.roles[c]?.isUnknownUnit &&
    /offset|delta|Δ|versatz|^\W*\+ ?[kmg]?hz|[kmg]?hz (?:above|over|beyond)|(?<!\p{L})df(?!\p{L})/iu.test(name)
      ? withOffsetBase(name, comments)
      : name,
  );
  return names.every((name, c) => name === header.names[c])
    ? header
    : { ...header, names, roles: rolesOf(names, port) };
}

/** Numbers of either sign, in more rows than a slip of the pen makes. */
const FEWEST_OF_A_SIGN = 2;

function holdsBothSigns(values: Float64Array): boolean {
  let [below, above] = [0, 0];
  for (const value of values) {
    if (value < 0) below++;
    else if (value > 0) above++;
  }
  return Math.min(below, above) >= FEWEST_OF_A_SIGN;
}

/** Lines of rows that have words in the place of a frequency, counted from 1: "Ref. impedance,450". */
const linesWithoutFrequency = ({ cells, lines }: CutRows, frequency: number): readonly number[] =>
  [...cells].flatMap(([row, of]) => (of[frequency]?.kind === "text" ? [lines[row] as number] : []));

/** Names of a reference with the values below them, in a small table of facts above the sweep. */
function factsIn(comments: readonly string[], { delimiter }: Dialect): readonly string[] {
  if (delimiter === "space" || comments.length > MOST_TEXTS) return [];
  const cells = comments.map((comment) => splitLine(comment, delimiter));
  return cells.flatMap((names, i) => {
    const values = cells[i + 1] ?? [];
    return names.flatMap((name, c) =>
      values.length === names.length && isReferenceName(name) ? [`${name}: ${values[c]}`] : [],
    );
  });
}

/** What there is to say of how the table was read. */
function report(
  { leftOut, nextBlockLine, remarked }: CutRows,
  columns: readonly TableColumn[],
  findings: Finding[],
): void {
  const mark = columns.find((column) => column.mark !== null)?.mark ?? null;
  if (mark !== null) findings.push(finding("info", "thousands-marked", { mark }));
  const units = [...new Set(columns.flatMap(({ unit }) => unit?.name ?? []))];
  if (units.length > 0) findings.push(finding("info", "units-in-cells", { units }));
  if (columns.some(({ isPart }) => isPart)) findings.push(finding("info", "complex-cells", {}));
  const [remark] = remarked;
  if (remark !== undefined) {
    const params = { text: quote(remark.text), count: remarked.length };
    findings.push(finding("caution", "cells-remarked", params, { line: remark.line }));
  }
  const firstLine = leftOut[0]?.line;
  if (firstLine !== undefined) {
    const params = { firstLine, count: leftOut.length, text: null };
    findings.push(finding("caution", "row-left-out", params, { line: firstLine }));
  }
  if (nextBlockLine !== null) {
    findings.push(finding("caution", "block-left-out", {}, { line: nextBlockLine }));
  }
}
