import type { HeardResult } from "@feedpoint/core";
import { csvOf, shown } from "../tables/column.js";
import { COMPARISON_COLUMNS, HEARD_COLUMNS, WHERE_COLUMNS, whereRows } from "../tables/heard-columns.js";
import { comparisonText, heardOfOneText, sectorsText } from "../words/heard.js";
import { cautionItems, shortCautions } from "./cautions.js";
import { markdownCell } from "./escape.js";
import { findingItems, findingLines } from "./findings.js";
import { markdownTable, textTable, wrap } from "./table.js";

/** What stands above the table of directions. */
export const WHERE =
  "Receivers by their direction, each once, as far as their places are known: where the listeners are.";

/** The comparisons first, then who heard what, and where they are. */
export function heardText(result: HeardResult, width: number): string {
  const heardTable = shown(HEARD_COLUMNS, result.deployments);
  const where = shown(WHERE_COLUMNS, whereRows(result));
  return [
    ...heardAnswers(result).map((line) => wrap(line, width, "  ")),
    ...(result.comparisons.length === 0 ? [] : [""]),
    wrap(heardTotals(result), width, "  "),
    "",
    textTable(heardTable.columns, heardTable.rows, { width }),
    ...(where.rows.length === 0 ? [] : ["", wrap(WHERE, width), textTable(where.columns, where.rows, { width })]),
    "",
    findingLines(result.findings, width),
    "",
    shortCautions(width),
  ].join("\n");
}

/** What comes of the comparisons, then what stands behind each. */
export const heardAnswers = ({ comparisons }: HeardResult): readonly string[] => [
  ...comparisons.map(comparisonText),
  ...comparisons.flatMap((comparison) =>
    [sectorsText(comparison), heardOfOneText(comparison)].filter((line) => line !== null),
  ),
];

export const heardTotals = ({ transmitter, totals }: HeardResult): string =>
  `Reports of ${transmitter}: ${totals.reports}, of which ${totals.outside} while nothing was up by the log, or it was being switched; ${totals.ofOthers} of other stations, ${totals.repeated} there twice.`;

export function heardMarkdown(result: HeardResult): string {
  const heardTable = shown(HEARD_COLUMNS, result.deployments);
  const where = shown(WHERE_COLUMNS, whereRows(result));
  return [
    ...heardAnswers(result).map((line) => `**${markdownCell(line)}**`),
    markdownCell(heardTotals(result)),
    markdownTable(heardTable.columns, heardTable.rows),
    ...(where.rows.length === 0 ? [] : [WHERE, markdownTable(where.columns, where.rows)]),
    ...findingItems(result.findings),
    cautionItems(result.cautions),
  ].join("\n\n");
}

/** One row a comparison. */
export const heardCsv = ({ comparisons }: HeardResult): string => csvOf(COMPARISON_COLUMNS, comparisons);
