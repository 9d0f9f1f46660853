import { ReadError } from "../../input/read-error.js";
import { at } from "../../numbers/column.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { ReadOptions } from "../options/read-options.js";
import type { ReadPoints } from "../points/read-points.js";
import { changingRemarks } from "../quantities/changing-remarks.js";
import {
  absurdReadings,
  slippedFrequencies,
  slippedReadings,
  unlikelyFrequencies,
} from "../quantities/plausibility.js";
import { referenceFor } from "../quantities/reference-statement.js";
import { settleColumns } from "../quantities/settle-columns.js";
import type { SourceText } from "../text/text.js";
import type { DelimitedColumns } from "./delimited-columns.js";
import { determinationThatCounts } from "./determination-that-counts.js";
import { pointsOf } from "./points-of.js";
import { readColumns } from "./read-columns.js";

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
  const reference = referenceFor(table.texts, options.referenceOhms, file);
  const columns = settleColumns(
    table.columns,
    { ...table, options: { ...options, referenceOhms: reference.ohms } },
    findings,
  );
  const chosen = determinationThatCounts(table, columns, reference.ohms, findings);
  findings.push(
    ...reference.findings,
    ...absurdReadings(chosen),
    ...slippedFrequencies(frequencyHz),
    ...slippedReadings(chosen, frequencyHz),
    ...unlikelyFrequencies(frequencyHz),
    ...changingRemarks(table.comments),
  );
  const { points, isKept } = pointsOf(table, chosen, findings);
  const areAll = points.line.length === table.lines.length;
  const lost = areAll ? null : new Set(table.lines.filter((_, row) => !isKept(0, row)));
  return {
    format: "delimited",
    points,
    series: table.series && { ...table.series, of: table.series.of.filter(isKept) },
    kindOf: (line) => (lost?.has(line) ? "no-reading" : table.kindOf(line)),
    isPlain: table.isPlain,
    referenceOhms: reference.ohms,
    description: `delimited text, ${table.dialect}, from ${chosen.title}`,
    comments: table.comments,
    findings,
  };
}
