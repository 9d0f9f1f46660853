import type { AdviseResult, SweepGrade } from "@feedpoint/core";
import type { DrawnCheck } from "../judged/checking.js";
import { type Series, seriesOf } from "../svg/series.js";
import { checkColumns, RANGE_KEY, sweptRows } from "../tables/check-columns.js";
import { shown } from "../tables/column.js";
import { SEGMENT_COLUMNS, segmentRows } from "../tables/segment-columns.js";
import { partsLine } from "../text/check.js";
import { DIALS, stationTables } from "../text/check-station.js";
import { html, type Markup } from "../text/markup.js";
import type { NamedTable } from "../text/named-table.js";
import { checkHeadline, dialSentences } from "../words/headline.js";
import type { Voice } from "../words/remedies.js";
import { verdictText } from "../words/verdicts.js";
import { adviceSection } from "./advice-section.js";
import { bandPanels } from "./band-panels.js";
import { chartSections } from "./chart-sections.js";
import { dataTable } from "./data-table.js";
import { findingList } from "./remarks.js";
import { sourceSection } from "./source-section.js";
import { sureness } from "./sureness.js";
import { valuesSection } from "./values-table.js";

/** A deployment with its verdict, as one part of a page. */
export interface CheckedSweep extends DrawnCheck {
  /** The deployment log's row for it; null where there is none */
  readonly log: SweepGrade["log"];
  /** What each thing that is wanted takes, in words; empty where nothing was asked for */
  readonly wished: readonly string[];
  /** What to try next; null where it was not asked */
  readonly advised: AdviseResult | null;
}

/** All of what a check says of one deployment. `index` tells the sweeps of a page apart. */
export function sweepSection(
  { sweep, parts, result, log, tuner, wished, advised }: CheckedSweep,
  index: number,
  voice: Voice,
): Markup {
  const series: readonly [Series] = [seriesOf("only", sweep, result.bands, `v${index}`)];
  const columns = checkColumns(result.limits, tuner).filter(({ key }) => key !== RANGE_KEY);
  // Without the ends of each band, which the table of segments has.
  const table = shown(columns, sweptRows(result));
  const notSwept = result.bands.filter(({ best }) => best === null).map(({ band }) => band);
  const withoutOne = tuner === "none" ? "" : " without a tuner";
  const verdicts = result.bands.map((band) => ({
    band: band.band,
    verdict: verdictText(band),
    of: withoutOne,
    isStretch: band.restsOn === "stretch",
  }));
  const taken = sweep.takenAt === null || sweep.label.includes(sweep.takenAt) ? "" : `, taken ${sweep.takenAt}`;
  const tables = stationTables(result, voice);
  const dials = tables.filter(({ name }) => name === DIALS);
  const station = tables.filter(({ name }) => name !== DIALS);
  return html`<article id="s${index}"><header><p class="label">${sweep.label}${taken}</p><h1>${checkHeadline(result, tuner)}</h1>${[...wished, ...dialSentences(result)].map((line) => html`<p><strong>${line}</strong></p>`)}${
    notSwept.length === 0 || table.rows.length === 0 ? null : html`<p>Not swept: ${notSwept.join(", ")}.</p>`
  }${parts.length === 1 ? null : html`<p>${partsLine(result)}.</p>`}${logFacts(log)}</header>${[
    dials.map(namedSection),
    advised === null ? null : adviceSection(advised, voice),
    table.rows.length === 0
      ? null
      : html`<section><h2>The bands at a glance</h2>${dataTable("The bands at a glance", table)}</section>`,
    chartSections(series, result.limits, bandPanels(series, verdicts, result.limits)),
    sureness(series),
    table.rows.length === 0
      ? null
      : html`<section><h2>Segments of the plan</h2>${dataTable("Segments", shown(SEGMENT_COLUMNS, segmentRows(result)))}</section>`,
    station.map(namedSection),
    html`<section><h2>Findings</h2>${findingList([...result.sweep.findings, ...result.findings], voice)}</section>`,
    sourceSection(parts.map((part) => ({ sweep: part, role: "only" }))),
    valuesSection([[series[0], "Show the numbers"]]),
  ]}</article>`;
}

function namedSection({ name, intro, outro, ...rows }: NamedTable): Markup {
  // On a terminal the table has no heading but what stands above it.
  const above = intro === null || intro === `${name}:` ? null : html`<p>${intro}</p>`;
  return html`<section><h2>${name}</h2>${above}${dataTable(name, rows)}${outro === null ? null : html`<p>${outro}</p>`}</section>`;
}

/** What the operator wrote of a sweep. */
function logFacts(log: SweepGrade["log"]): Markup | null {
  const said = Object.entries(log ?? {}).filter(([column, text]) => text !== "" && !/^(file|date)$/i.test(column));
  if (said.length === 0) return null;
  return html`<dl class="facts">${said.map(([column, text]) => html`<div><dt>${column}</dt><dd>${text}</dd></div>`)}</dl>`;
}
