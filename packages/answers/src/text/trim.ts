import type { TrimResult } from "@feedpoint/core";
import { csvOf, shown } from "../tables/column.js";
import { trimColumns, trimRows } from "../tables/trim-columns.js";
import { certaintyText } from "../words/verdicts.js";
import { cautionItems, shortCautions } from "./cautions.js";
import { markdownCell, printable } from "./escape.js";
import { feedlineText } from "./feedline-tables.js";
import { findingItems, findingLines } from "./findings.js";
import { markdownTable, textTable, wrap } from "./table.js";
import { fixed, megahertz, planLine, stationLines, swr, type TextOptions } from "./units.js";

/** Said wherever a change of length is advised. */
function careFor({ fixed }: TrimResult): string {
  const legs = fixed === null || fixed === "nothing" ? ", both legs of a dipole alike" : "";
  return `* Cut less than computed, fold back before cutting${legs}, and measure again. A change of length moves all bands of the wire.`;
}

export function trimText(result: TrimResult, { width, stationFile }: TextOptions): string {
  const { sweep, bands, feedline } = result;
  const table = shown(trimColumns(result.limits), trimRows(result));
  const findings = findingLines([...sweep.findings, ...result.findings], width);
  return [
    printable(sweep.label),
    `  ${wrap(planLine(result.plan), width - 2, "    ")}`,
    ...stationLines(stationFile).map((line) => `  ${line}`),
    ...(feedline === null ? [] : [`  ${wrap(`Feedline: ${feedlineText(feedline)}`, width - 2, "    ")}`]),
    "",
    ...(result.dip === null ? [] : [wrap(adviceText(result), width), ""]),
    ...(result.dip === null || bands.length === 0 ? [] : [textTable(table.columns, table.rows, { width }), ""]),
    ...(findings === "" ? [] : [findings, ""]),
    ...(result.dip === null ? [] : [careFor(result)]).map((care) => wrap(care, width, "  ")),
    shortCautions(width),
  ].join("\n");
}

export function trimMarkdown(result: TrimResult): string {
  const { columns, rows } = shown(trimColumns(result.limits), trimRows(result));
  const { plan, sweep, findings, cautions } = result;
  return [
    markdownCell(adviceText(result)),
    markdownCell(`${planLine(plan)}, ${certaintyText(plan.certainty)}`),
    markdownTable(columns, rows),
    ...findingItems([...sweep.findings, ...findings]),
    cautionItems([...(result.dip === null ? [] : [careFor(result).replace("* ", "")]), ...cautions]),
  ].join("\n\n");
}

/** One row a band. */
export const trimCsv = (result: TrimResult): string => csvOf(trimColumns(result.limits), trimRows(result));

/** Changes below this are not worth a cut (our own choice). */
const LEAST_CHANGE = 0.0005;

function adviceText({ dip, wantedHz, lengthChange, lengthChangeM, expectedHz }: TrimResult): string {
  if (dip === null || lengthChange === null) return "There is no dip to trim.";
  const place = `The dip lies at ${megahertz(dip.frequencyHz)} MHz (SWR ${swr(dip.swr)}) and is wanted at ${megahertz(wantedHz)} MHz`;
  if (Math.abs(lengthChange) < LEAST_CHANGE) return `${place}: leave the wire as it is.`;
  const verb = lengthChange < 0 ? "shorten" : "lengthen";
  const size = `${fixed(Math.abs(lengthChange * 100), 1)} %`;
  const centimetres = lengthChangeM === null ? "" : `, ${fixed(Math.abs(lengthChangeM * 100), 0)} cm in all`;
  return `${place}: ${verb} the wire by ${size}${centimetres}.${expectedText(expectedHz)}`;
}

/** Where the dip is to be expected, where that is not one place on the dial. */
function expectedText(expected: TrimResult["expectedHz"]): string {
  if (expected === null || megahertz(expected.lowHz) === megahertz(expected.highHz)) return "";
  return ` It is then to be expected between ${megahertz(expected.lowHz)} and ${megahertz(expected.highHz)} MHz: not all of an antenna scales with its wire.`;
}
