import type { BandDiff, DiffResult } from "@feedpoint/core";
import { csvOf, shown } from "../tables/column.js";
import { diffColumns, diffRows } from "../tables/diff-columns.js";
import { comparedFindings, reasonsOf } from "../words/compared.js";
import { certaintyText } from "../words/verdicts.js";
import { cautionItems, shortCautions } from "./cautions.js";
import { markdownCell, printable } from "./escape.js";
import { findingItems, findingLines } from "./findings.js";
import { markdownTable, type Table, textTable, wrap } from "./table.js";
import { planLine, stationLines, type TextOptions } from "./units.js";

export function diffText(
  result: DiffResult,
  { width, stationFile, chart }: TextOptions & { readonly chart: string },
): string {
  const { before, after, bands, causes, plan } = result;
  // Files of the same name are told apart by their folders.
  const areNamesakes = before.some(({ label }) => after.some((other) => other.label === label));
  const name = (infos: DiffResult["before"]) =>
    infos
      .map(({ file, label, takenAt }) => [printable(areNamesakes ? file : label), ...takenText(takenAt)].join(", "))
      .join("; ");
  const areRepeats = before.length + after.length > 2;
  const likely = causes.map(({ confidence, message }) =>
    wrap(`${confidence === "likely" ? "Likely cause" : "Possible cause"}: ${message}`, width, "  "),
  );
  const findings = findingLines(comparedFindings(result), width);
  const table = diffTable(result);
  return [
    wrap(result.headline, width),
    "",
    wrap(`Before  ${name(before)}`, width, "        "),
    wrap(`After   ${name(after)}`, width, "        "),
    wrap(`${planLine(plan)}; limit ${result.limits.swr}:1`, width, "  "),
    ...stationLines(stationFile),
    ...(areRepeats ? [wrap(REPEATS, width)] : []),
    "",
    ...(likely.length > 0 ? [...likely, ""] : []),
    ...(bands.length > 0 ? [textTable(table.columns, table.rows, { width }), ""] : []),
    ...(chart === "" ? [] : [chart, ""]),
    ...whyLines(bands, width),
    ...(findings === "" ? [] : [findings, ""]),
    shortCautions(width),
  ].join("\n");
}

const takenText = (takenAt: string | null) => (takenAt === null ? [] : [`taken ${takenAt}`]);

const REPEATS =
  "Beside the arrows stand the values of the sweep in the middle of each side; verdicts and differences are of the means.";

export function diffMarkdown(result: DiffResult): string {
  const { columns, rows } = diffTable(result);
  const { plan, causes, bands, cautions } = result;
  return [
    `**${markdownCell(result.headline)}**`,
    markdownCell(`${planLine(plan)}, ${certaintyText(plan.certainty)}`),
    ...(causes.length === 0 ? [] : [causes.map(causeItem).join("\n")]),
    markdownTable(columns, rows),
    ...(reasonsOf(bands).length === 0
      ? []
      : [
          reasonsOf(bands)
            .map((reason) => `- ${markdownCell(reason)}`)
            .join("\n"),
        ]),
    ...findingItems(comparedFindings(result)),
    cautionItems(cautions),
  ].join("\n\n");
}

const causeItem = ({ confidence, message }: DiffResult["causes"][number]) =>
  `- ${confidence === "likely" ? "Likely cause" : "Possible cause"}: ${markdownCell(message)}`;

/** One row a band; every change is after minus before. */
export const diffCsv = (results: readonly DiffResult[]): string => {
  const [first] = results;
  return first === undefined ? "" : csvOf(diffColumns(first.limits), diffRows(results));
};

/** The bands that were compared. */
export const diffTable = (result: DiffResult): Table => shown(diffColumns(result.limits), diffRows([result]));

function whyLines(bands: readonly BandDiff[], width: number): string[] {
  const lines = reasonsOf(bands).map((reason) => wrap(reason, width, "  "));
  return lines.length > 0 ? [...lines, ""] : [];
}
