import { type CheckResult, HIGH_VOLTAGE_CAUTIONS, type Mode, type Tuner } from "@feedpoint/core";
import { checkColumns, checkRows, sweptRows } from "../tables/check-columns.js";
import { csvOf, shown } from "../tables/column.js";
import { SEGMENT_COLUMNS, segmentRows } from "../tables/segment-columns.js";
import { checkHeadline, dialSentences } from "../words/headline.js";
import { certaintyText } from "../words/verdicts.js";
import { cautionItems, shortCautions } from "./cautions.js";
import { stationTables, stationTexts } from "./check-station.js";
import { markdownCell, printable } from "./escape.js";
import { findingItems, findingLines } from "./findings.js";
import { markdownTable, textTable, wrap } from "./table.js";
import { limitsLine, planLine, span, stationLines } from "./units.js";

export interface CheckTextOptions {
  readonly width: number;
  readonly withSegments: boolean;
  readonly stationFile: string | null;
  readonly tuner: Tuner;
  readonly modes?: readonly Mode[];
  /** A picture for each result; absent where none was asked for */
  readonly charts?: readonly string[];
}

/** Results for a person at a terminal, each with its answer first; what is common to all is said once, at the end. */
export function checkText(
  results: readonly CheckResult[],
  { width, withSegments, stationFile, tuner, modes, charts = [] }: CheckTextOptions,
): string {
  const blocks = results.map((result, i) => {
    const chart = charts[i] ?? "";
    const notSwept = result.bands.filter(({ best }) => best === null).map(({ band }) => band);
    const findings = findingLines(findingsOf(result), width);
    const bands = shown(checkColumns(result.limits, tuner), sweptRows(result));
    const segments = shown(SEGMENT_COLUMNS, segmentRows(result));
    return [
      bands.rows.length === 0 ? null : `${wrap(checkHeadline(result, tuner), width)}\n`,
      ...dialSentences(result).map((line) => `${wrap(line, width)}\n`),
      heading(result, { width, stationFile, modes }),
      "",
      bands.rows.length > 0 ? textTable(bands.columns, bands.rows, { width }) : wrap(nothingJudged(result), width),
      chart === "" ? null : `\n${chart}`,
      withSegments ? `\n${textTable(segments.columns, segments.rows, { width })}` : null,
      ...stationTexts(result, width).map((table) => `\n${table}`),
      result.parts.length > 1 ? `\n${wrap(partsLine(result), width, "  ")}` : null,
      notSwept.length > 0 ? `\n${wrap(`Not swept: ${notSwept.join(", ")}`, width, "  ")}` : null,
      findings === "" ? null : `\n${findings}`,
    ]
      .filter((part) => part !== null)
      .join("\n");
  });
  const hasHighVoltage = results.some(({ cautions }) => cautions.includes(HIGH_VOLTAGE_CAUTIONS[0] ?? ""));
  return [...blocks, shortCautions(width, { hasHighVoltage })].join("\n\n");
}

const findingsOf = ({ sweep, findings }: CheckResult) => [...sweep.findings, ...findings];

export function checkMarkdown(result: CheckResult, tuner: Tuner): string {
  const { plan, sweep, cautions } = result;
  const bands = shown(checkColumns(result.limits, tuner), sweptRows(result));
  const station = stationTables(result).flatMap(({ name, intro, columns, rows, outro }) => [
    `### ${name}`,
    ...(intro === null ? [] : [markdownCell(intro)]),
    ...(rows.length === 0 ? [] : [markdownTable(columns, rows)]),
    ...(outro === null ? [] : [markdownCell(outro)]),
  ]);
  return [
    `## ${markdownCell(sweep.label)}`,
    `**${markdownCell(bands.rows.length === 0 ? nothingJudged(result) : checkHeadline(result, tuner))}**`,
    markdownCell(`${planLine(plan)}, ${certaintyText(plan.certainty)}`),
    ...(bands.rows.length === 0 ? [] : [markdownTable(bands.columns, bands.rows)]),
    ...(result.parts.length > 1 ? [markdownCell(partsLine(result))] : []),
    ...station,
    ...findingItems(findingsOf(result)),
    cautionItems(cautions),
  ].join("\n\n");
}

/** Which part of a deployment answers where: "Answered by 40m.s1p (40m), wide.s1p (160m, 60m); not needed: 40m-again.s1p". */
export function partsLine({ parts }: CheckResult): string {
  const used = parts
    .filter(({ bands }) => bands.length > 0)
    .map(({ label, bands }) => `${label} (${bands.join(", ")})`);
  const others = parts.filter(({ bands }) => bands.length === 0).map(({ label }) => label);
  const rest = others.length === 0 ? "" : `; not needed: ${others.join(", ")}`;
  return `Answered by ${used.join(", ")}${rest}`;
}

/** One row a band. */
export const checkCsv = (results: readonly CheckResult[]): string => {
  const [first] = results;
  return first === undefined ? "" : csvOf(checkColumns(first.limits), checkRows(results));
};

function heading(
  { sweep, plan, limits }: CheckResult,
  {
    width,
    stationFile,
    modes,
  }: Pick<CheckTextOptions, "width" | "stationFile"> & { modes: readonly Mode[] | undefined },
): string {
  const taken = sweep.takenAt === null ? "" : `, taken ${sweep.takenAt}`;
  const below = (text: string) => `  ${wrap(text, width - 2, "    ")}`;
  return [
    printable(sweep.label),
    below(
      `${sweep.points} point${sweep.points === 1 ? "" : "s"}, ${span({ lowHz: sweep.startHz, highHz: sweep.stopHz })} MHz, ${sweep.referenceOhms} Ω${taken}`,
    ),
    below(sweep.description),
    below(planLine(plan)),
    below(limitsLine(limits)),
    ...(modes === undefined
      ? []
      : [below(`Judged where these may be sent: ${modes.map(({ name }) => name).join(", ")}`)]),
    ...stationLines(stationFile).map((line) => `  ${line}`),
  ].join("\n");
}

function nothingJudged({ bands, sweep }: CheckResult): string {
  if (bands.length === 0) return "There is no band left to judge.";
  return `None of these bands was swept: the sweep covers ${span({ lowHz: sweep.startHz, highHz: sweep.stopHz })} MHz. Is its unit of frequency right?`;
}
