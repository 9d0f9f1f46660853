import type { HeardResult } from "@feedpoint/core";
import { azimuthalMap, type MapSide } from "../svg/azimuthal-map.js";
import { shown } from "../tables/column.js";
import { HEARD_COLUMNS, WHERE_COLUMNS, whereRows } from "../tables/heard-columns.js";
import { heardAnswers, heardTotals, WHERE } from "../text/heard.js";
import { html, type Markup } from "../text/markup.js";
import type { Voice } from "../words/remedies.js";
import { dataTable } from "./data-table.js";
import { page } from "./page.js";
import { cautionSection, findingList } from "./remarks.js";

/** The report of who heard what, as a page of its own. */
export const heardReport = (result: HeardResult, voice: Voice): string =>
  page(`Heard: ${result.transmitter}`, heardSections(result, voice));

/** Who heard what: the comparisons, the tables, and a map for each band. */
export function heardSections(result: HeardResult, voice: Voice): readonly Markup[] {
  const [first = "Who heard what", ...others] = heardAnswers(result);
  const where = shown(WHERE_COLUMNS, whereRows(result));
  return [
    html`<article><header><p class="label">${heardTotals(result)}</p><h1>${first}</h1>${others.map((line) => html`<p>${line}</p>`)}</header><section><h2>Who heard what</h2>${dataTable("Who heard what", shown(HEARD_COLUMNS, result.deployments))}</section>${
      where.rows.length === 0
        ? null
        : html`<section><h2>Where the listeners are</h2><p>${WHERE}</p><div class="panels">${mapsOf(result)}</div>${dataTable("Receivers by direction", where)}</section>`
    }<section><h2>Findings</h2>${findingList(result.findings, voice)}</section></article>`,
    html`<article>${cautionSection(result.cautions)}</article>`,
  ];
}

/** A map for each comparison; for each band of what is not compared. */
function mapsOf({ comparisons, where }: HeardResult): readonly Markup[] {
  const whereOf = (deployment: string, band: string) =>
    where.find((each) => each.deployment === deployment && each.band === band);
  const compared = comparisons.map(({ before, after, band }) => ({
    band,
    sides: [
      { name: before, role: "before" as const, where: whereOf(before, band) },
      { name: after, role: "after" as const, where: whereOf(after, band) },
    ],
  }));
  const alone = where
    .filter(
      ({ deployment, band }) =>
        !comparisons.some((each) => each.band === band && [each.before, each.after].includes(deployment)),
    )
    .map((each) => ({ band: each.band, sides: [{ name: each.deployment, role: "only" as const, where: each }] }));
  return [...compared, ...alone].flatMap(({ band, sides }) => {
    const known = sides.filter((side): side is MapSide => side.where !== undefined);
    const map = azimuthalMap(band, known);
    return map === null
      ? []
      : [html`<figure class="panel"><h3>${band}: ${known.map(({ name }) => name).join(" and ")}</h3>${map}</figure>`];
  });
}
