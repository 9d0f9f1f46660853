import { quote } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { ColumnRole } from "../options/column-role.js";
import type { ReadOptions } from "../options/read-options.js";
import type { FrequencyUnit } from "../options/units.js";
import type { NumberColumn } from "../quantities/assemble.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { TextLines } from "../text/text-lines.js";
import { splitLine } from "./cells.js";
import { DELIMITER_WORDS, type Dialect, decideDialect } from "./dialect.js";
import { below, findHeader, type Header } from "./header.js";
import { holdsRow, type KindOfLine, kindsOfLines } from "./lines-of-table.js";
import { numberColumn, referenceColumn } from "./number-columns.js";
import { frequencyUnitIn, namesFromPreamble, preambleOf, rolesFromPreamble, withPreambleRoles } from "./preamble.js";
import { checkWidth, refuseNegative, refuseOtherFrequencies, unknownUnit, withoutHeader } from "./refusals.js";
import { tableOfSeries } from "./series.js";
import type { CutRows } from "./table-builder.js";
import type { TableColumn } from "./table-column.js";
import type { Titles } from "./table-columns.js";
import { tableInHz, withoutFrequency } from "./table-in-hz.js";
import type { TableOfSeries } from "./table-of-series.js";
import { refuseTransmission } from "./transmission.js";

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
  const header = options.columns === undefined ? headerOf(lines, decided, port) : null;
  const dialect = header === null || header.lineIndex < 0 ? decided : below(header, decided, lines);
  const aboveHeader = Array.from(
    { length: Math.max(0, (header?.lineIndex ?? -1) - decided.firstDataLine) },
    (_, i) => decided.firstDataLine + i,
  ).filter((line) => holdsRow(lines.text(line), dialect));
  const [firstAbove] = aboveHeader;
  if (firstAbove !== undefined) {
    const params = { firstLine: firstAbove + 1, count: aboveHeader.length, text: null };
    findings.push(finding("caution", "row-left-out", params, { line: firstAbove + 1 }));
  }
  const comments = preambleOf(lines, dialect.firstDataLine, header?.lineIndex ?? -1);
  const stated = options.columns ?? header?.roles ?? rolesFromPreamble(comments, dialect.columns);
  if (stated === null) throw withoutHeader(lines, dialect, file);
  refuseTransmission(comments, file);
  const index = stated.findIndex(({ quantity }) => quantity === "frequency");
  const frequency = stated[index];
  if (frequency === undefined) throw withoutFrequency(file);
  if (frequency.isUnknownUnit && options.frequencyUnit === undefined) {
    throw unknownUnit(header?.names[index] ?? "", file);
  }
  const above = frequencyUnitIn(comments);
  if (above !== null && frequency.frequencyUnit != null && above !== frequency.frequencyUnit) {
    const params = { where: "header", unit: frequency.frequencyUnit, given: above } as const;
    findings.push(finding("caution", "unit-stated", params));
  }
  const titles: Titles = { names: header?.names ?? [], roles: header === null ? stated : null };
  const table = tableInHz(
    { lines, dialect, file, port },
    index,
    titles,
    { asked: options.frequencyUnit ?? null, stated: frequency.frequencyUnit ?? above },
    findings,
  );
  checkWidth(stated, table.columns, titles.names, dialect, table.unit, lines, file);
  refuseNegative(table.columns[table.index]?.values ?? [], file);
  const titlesAbove = titlesOver(header, dialect, lines);
  const { rows, columns, index: place, series } = tableOfSeries(table, titlesAbove, dialect, lines, findings);
  if (columns.length === table.columns.length) refuseOtherFrequencies(table, file);
  report(rows, columns, findings);
  const roles = withPreambleRoles(
    columns.map(({ role }) => role),
    comments,
  );
  const texts = [
    ...comments,
    ...titles.names,
    ...[...rows.leftOut.map(({ line }) => line), ...rows.comments]
      .slice(0, MOST_TEXTS)
      .map((line) => lines.text(line - 1)),
    ...referenceColumn(columns, file),
    ...rows.remarked.slice(0, 1).map(({ text }) => text),
  ];
  return {
    file,
    frequencyHz: columns[place]?.values as Float64Array,
    unit: table.unit,
    columns: columns.flatMap((column, c) => numberColumn(column, c, roles[c] as ColumnRole, texts)),
    roles,
    names: titles.names,
    lines: rows.lines,
    series,
    dialect: `${DELIMITER_WORDS[dialect.delimiter]}, decimal ${dialect.decimal}, ${table.unit}`,
    comments,
    texts,
    kindOf: kindsOfLines(rows, header?.lineIndex ?? -1, decided.firstDataLine, dialect, lines),
    allLines: () => lines.texts(0, Number.POSITIVE_INFINITY),
    rest: rows.nextBlockLine === null ? null : { line: rows.nextBlockLine - 1, dialect },
  };
}

/** The header above the rows, or the names that the preamble lists; `lineIndex` is -1 for those. */
function headerOf(lines: TextLines, dialect: Dialect, port: number): Header | null {
  const names = namesFromPreamble(preambleOf(lines, dialect.firstDataLine, -1), dialect.columns);
  if (names === null) return findHeader(lines, dialect, port);
  return { names, roles: names.map((name) => roleFromHeader(name, port)), lineIndex: -1 };
}

/** The cells straight above the names of columns, as many as these are; none where nothing stands there. */
function titlesOver(header: Header | null, { delimiter }: Dialect, lines: TextLines): readonly string[] {
  if (header === null || header.lineIndex < 1 || delimiter === "space") return [];
  const cells = splitLine(lines.text(header.lineIndex - 1), delimiter);
  return cells.length > 1 ? cells : [];
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
