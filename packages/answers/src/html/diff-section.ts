import { type BandPlan, type DiffResult, headlineSentences, type SameTerms, type Sweep } from "@feedpoint/core";
import { drawnSweep } from "@feedpoint/core/for-command";
import { type Series, seriesOf } from "../svg/series.js";
import { diffTable } from "../text/diff.js";
import { html, type Markup } from "../text/markup.js";
import { comparedFindings, reasonsOf } from "../words/compared.js";
import type { Voice } from "../words/remedies.js";
import { diffVerdictText } from "../words/verdicts.js";
import { bandPanels } from "./band-panels.js";
import { chartSections } from "./chart-sections.js";
import { dataTable } from "./data-table.js";
import { causeList, findingList } from "./remarks.js";
import { sourceSection } from "./source-section.js";
import { sureness } from "./sureness.js";
import { valuesSection } from "./values-table.js";

/** All of what a comparison of two sweeps says, before and after in the same charts. */
export function diffSection(result: DiffResult, { before, after }: SameTerms, plan: BandPlan, voice: Voice): Markup {
  const { bands, limits, causes } = result;
  const [first, second] = [drawnSweep(before[0], plan), drawnSweep(after[0], plan)];
  const series: readonly [Series, Series] = [
    seriesOf(
      "before",
      first,
      bands.map((band) => band.before),
      "v0",
    ),
    seriesOf(
      "after",
      second,
      bands.map((band) => band.after),
      "v1",
    ),
  ];
  const verdicts = bands.map((band) => ({ band: band.band, verdict: diffVerdictText(band) }));
  const [verdict = "", ...meaning] = headlineSentences(bands, causes);
  const reasons = reasonsOf(bands);
  const name = ({ label, takenAt }: Sweep) => label + (takenAt === null ? "" : `, taken ${takenAt}`);
  return html`<article><header><p class="label">Before: ${name(first)}<br>After: ${name(second)}</p><h1>${verdict}</h1>${meaning.length === 0 ? null : html`<p>${meaning.join(" ")}</p>`}</header>${[
    html`<section><h2>Likely cause</h2>${causeList(causes)}</section>`,
    bands.length === 0
      ? null
      : html`<section><h2>The bands at a glance</h2>${dataTable("The bands at a glance", diffTable(result))}</section>`,
    reasons.length === 0
      ? null
      : html`<section><h2>Why</h2><ul>${reasons.map((reason) => html`<li>${reason}</li>`)}</ul></section>`,
    chartSections(series, limits, bandPanels(series, verdicts, limits)),
    sureness(series),
    html`<section><h2>Findings</h2>${findingList(comparedFindings(result), voice)}</section>`,
    sourceSection(series.map(({ sweep, role }) => ({ sweep, role }))),
    valuesSection([
      [series[0], "Before in numbers"],
      [series[1], "After in numbers"],
    ]),
  ]}</article>`;
}
