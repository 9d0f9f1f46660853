import { type Advice, type AdvisedPart, type AdviseResult, partText } from "@feedpoint/core";
import type { Settings } from "../options/settings.js";
import { csvOf, shown } from "../tables/column.js";
import { ADVICE_COLUMNS, adviceRows, wishColumns, wishRows } from "../tables/try-columns.js";
import { adviceHeadline } from "../words/advice.js";
import { certaintyText } from "../words/verdicts.js";
import { cautionItems, shortCautions } from "./cautions.js";
import { markdownCell, printable } from "./escape.js";
import { feedlineText } from "./feedline-tables.js";
import { findingItems, findingLines } from "./findings.js";
import { markdownTable, textTable, wrap } from "./table.js";
import { fixed, percent, planLine, stationLines } from "./units.js";

export function tryText(result: AdviseResult, { width, stationFile }: Pick<Settings, "width" | "stationFile">): string {
  const { sweep, feedline, advice, experiment } = result;
  const table = shown(wishColumns(result), wishRows(result));
  const findings = findingLines([...sweep.findings, ...result.findings], width);
  return [
    wrap(adviceHeadline(result), width),
    "",
    printable(sweep.label),
    `  ${wrap(planLine(result.plan), width - 2, "    ")}`,
    ...stationLines(stationFile).map((line) => `  ${line}`),
    ...(feedline === null ? [] : [`  ${wrap(`Feedline: ${feedlineText(feedline)}`, width - 2, "    ")}`]),
    `  ${wrap(termsLine(result), width - 2, "    ")}`,
    "",
    ...advice.flatMap((each, i) => [...adviceLines(each, i + 1, result, width), ""]),
    textTable(table.columns, table.rows, { width }),
    "",
    ...(experiment === null ? [] : [wrap(`Worth measuring: ${experiment.message}`, width, "  "), ""]),
    ...(findings === "" ? [] : [findings, ""]),
    ...result.cautions.slice(0, SPECIAL_CAUTIONS).map((care) => wrap(`* ${care}`, width, "  ")),
    shortCautions(width, { hasHighVoltage: true }),
  ].join("\n");
}

/** Those that only advice has come first. */
const SPECIAL_CAUTIONS = 2;

/** What to do, and what the parts for it bear. */
function adviceLines(advice: Advice, rank: number, result: AdviseResult, width: number): readonly string[] {
  return [
    wrap(`${rank}. ${advice.what}.`, width, "   "),
    ...advice.parts.map((part) => `   ${wrap(partLine(part, result), width - 3, "     ")}`),
  ];
}

/** "A coil of 2.2 µH in series: 85 V, 2.4 A, 1.0 W of heat at 100 W" */
export function partLine({ part, stress, wish }: AdvisedPart, { powerW }: Pick<AdviseResult, "powerW">): string {
  const { volts, amperes, heatW } = stress;
  const heat = part.kind === "transformer" ? "heat not known" : `${fixed(heatW, 1)} W of heat`;
  const name = `${wish === null ? "" : `${wish}: `}${partText(part)}`;
  return `${name}: up to ${fixed(volts, 0)} V and ${fixed(amperes, 1)} A (effective), ${heat} at ${powerW} W`;
}

/** What the shares of the table stand for. */
export function termsLine({ limits, leastArriving }: AdviseResult): string {
  return `In the table: the share within reach (${limits.swr}:1, or what your tuner matches) where at least ${percent(leastArriving)} of the power arrives at the antenna (what that may turn out to be) · the least share of the power that arrives`;
}

export function tryMarkdown(result: AdviseResult): string {
  const { columns, rows } = shown(wishColumns(result), wishRows(result));
  const { plan, sweep, findings, cautions, advice, experiment } = result;
  return [
    markdownCell(adviceHeadline(result)),
    markdownCell(`${planLine(plan)}, ${certaintyText(plan.certainty)}. ${termsLine(result)}.`),
    ...(advice.length === 0
      ? []
      : [
          advice
            .flatMap((each, i) => [
              `${i + 1}. ${markdownCell(each.what)}`,
              ...each.parts.map((part) => `   - ${markdownCell(partLine(part, result))}`),
            ])
            .join("\n"),
        ]),
    markdownTable(columns, rows),
    ...(experiment === null ? [] : [`**Worth measuring:** ${markdownCell(experiment.message)}`]),
    ...findingItems([...sweep.findings, ...findings]),
    cautionItems(cautions),
  ].join("\n\n");
}

/** One row for each wish and advice. */
export const tryCsv = (result: AdviseResult): string => csvOf(ADVICE_COLUMNS, adviceRows(result));
