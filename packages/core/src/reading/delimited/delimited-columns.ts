import type { Finding } from "../../sweep/finding.js";
import { type ColumnRole, isReading } from "../options/column-role.js";
import type { ReadOptions } from "../options/read-options.js";
import type { FrequencyUnit } from "../options/units.js";
import type { KindOfLine } from "../points/line-ledger.js";
import type { NumberColumn } from "../quantities/determination.js";
import { refuseNegative } from "../quantities/frequency-unit.js";
import type { TextLines } from "../text/text-lines.js";
import { DELIMITER_WORDS, decideDialect } from "./dialect.js";
import { refuseExchangedNames } from "./exchanged-names.js";
import { findingsOfTable } from "./findings-of-table.js";
import { flaggedRows } from "./flagged-rows.js";
import { withOffsetBase } from "./frequency-statement.js";
import { findHeader } from "./header.js";
import { checkWidth } from "./header-width.js";
import { type Header, rolesOf } from "./heading-line.js";
import { kindsOfLines, rowsBesideHeader } from "./lines-of-table.js";
import { listedColumns } from "./listed-columns.js";
import { withKilohertz } from "./megahertz-and-kilohertz.js";
import { numberColumns, rolesOfColumns } from "./number-columns.js";
import { preambleOf } from "./preamble.js";
import { below, namingAbove } from "./rows-of-header.js";
import { tableOfSeries } from "./series.js";
import { withSignsInWords } from "./sign-in-words.js";
import { statedColumns } from "./stated-columns.js";
import { tableInHz } from "./table-in-hz.js";
import type { TableOfSeries } from "./table-of-series.js";
import type { Dialect, TableText } from "./table-text.js";
import { textsAround } from "./texts-around.js";
import { textsOfCells } from "./texts-of-cells.js";

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
  /** Its rows hold nothing but numbers, and nothing stands among or below them */
  readonly isPlain: boolean;
  /** Where another table begins below this one, and how this one is written; null where there is none */
  readonly rest: { readonly line: number; readonly dialect: Dialect } | null;
}

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
  const heading =
    options.columns === undefined ? (listedColumns(lines, decided, port) ?? findHeader(lines, decided, port)) : null;
  const found = heading && namingAbove(heading, lines, decided, port);
  const dialect = found === null ? decided : below(found, decided, lines);
  const text: TableText = { lines, dialect, file, port };
  const line = found?.lineIndex ?? -1;
  findings.push(...rowsBesideHeader(lines, dialect, decided.firstDataLine, line));
  const preamble = preambleOf(lines, dialect.firstDataLine, line);
  const header = found && withFrequencies(found, preamble.comments, port);
  const stated = statedColumns(header, preamble, text, options, findings);
  const names = header?.names ?? [];
  const table = withKilohertz(
    tableInHz(
      text,
      stated.index,
      { names, roles: header === null ? stated.roles : null },
      { asked: options.frequencyUnit ?? null, stated: stated.frequencyUnit },
      findings,
    ),
  );
  checkWidth(stated.roles, names, table, text);
  refuseNegative(table.columns[table.index]?.values ?? [], file);
  const cells = textsOfCells(table, text);
  const ofSeries = tableOfSeries(table, header?.titles ?? [], preamble.comments, cells, file, findings);
  // Series side by side do not stand where their cells do.
  const inPlace = ofSeries.columns.length === table.columns.length ? cells : null;
  const { rows, columns, index, series } = withSignsInWords(ofSeries, inPlace);
  findings.push(...findingsOfTable(rows, columns, flaggedRows(ofSeries, inPlace)));
  if (series === null) refuseExchangedNames(columns, index, text);
  const roles = rolesOfColumns(columns, preamble);
  const left = columns
    .filter(({ role }, c) => isReading(role) && roles[c]?.quantity === "other")
    .map(({ name }) => name);
  const frequencyHz = columns[index]?.values as Float64Array;
  const texts = [
    ...textsAround(preamble.comments, rows, columns, index, text),
    ...names.filter((name) => !left.includes(name)),
  ];
  return {
    file,
    frequencyHz,
    unit: table.unit,
    columns: numberColumns(columns, roles, frequencyHz, texts),
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
    isPlain: rows.cells.size + rows.leftOut.length + rows.comments.length === 0 && rows.nextBlockLine === null,
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
