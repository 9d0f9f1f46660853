import { type Advice, type AdvisedPart, type AdviseResult, partText } from "@feedpoint/core";
import { csvOf, shown } from "../tables/column.js";
import { ADVICE_COLUMNS, adviceRows, tryColumns, tryRows } from "../tables/try-columns.js";
import { adviceHeadline } from "../words/advice.js";
import { certaintyText } from "../words/verdicts.js";
import { cautionItems, shortCautions } from "./cautions.js";
import { markdownCell, printable } from "./escape.js";
import { feedlineText } from "./feedline-tables.js";
import { findingItems, findingLines } from "./findings.js";
import { markdownTable, textTable, wrap } from "./table.js";
import { fixed, percent, planLine, stationLines, type TextOptions } from "./units.js";

export function tryText(result: AdviseResult, { width, stationFile }: TextOptions): string {
  const { sweep, feedline, advice, experiment } = result;
  const table = shown(tryColumns(result), tryRows(result));
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
    ...partLines(advice, result).map((line) => `   ${wrap(line, width - 3, "     ")}`),
  ];
}

/** What each part bears, in a line each; of a tuner a line for each thing wanted. */
export function partLines({ parts, kind }: Advice, { powerW }: Pick<AdviseResult, "powerW">): readonly string[] {
  if (parts.length === 0) return [];
  const at = `at ${powerW} W, effective values`;
  if (kind !== "settings")
    return parts.map(({ part, stress }) => `${partText(part)}: ${stressText(part, stress)} (${at})`);
  const wishes = [...new Set(parts.map(({ wish }) => wish))];
  return wishes.map((wish) => {
    const own = parts.filter((each) => each.wish === wish);
    return `${wish}: ${own.map(({ part, stress }) => `${partText(part)} (${stressText(part, stress)})`).join(", then ")}`;
  });
}

function stressText(part: AdvisedPart["part"], { volts, amperes, heatW }: AdvisedPart["stress"]): string {
  const heat = part.kind === "transformer" ? "heat not known" : `${fixed(heatW, 1)} W of heat`;
  return `${fixed(volts, 0)} V, ${fixed(amperes, 1)} A, ${heat}`;
}

/** What the shares of the table stand for. */
export function termsLine({ limits, leastArriving, ends }: AdviseResult): string {
  const line = ends === "analyser" ? ", as far as added parts lose it" : "";
  return `In the table: the share where the SWR is ${limits.swr}:1 or what your tuner matches, and at least ${percent(leastArriving)} of the power arrives at the antenna${line}; in brackets what that share may be. "At most": the most that a lossless network can bring to ${limits.swr}:1, on that one alone`;
}

export function tryMarkdown(result: AdviseResult): string {
  const { columns, rows } = shown(tryColumns(result), tryRows(result));
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
              ...partLines(each, result).map((line) => `   - ${markdownCell(line)}`),
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
