import { type AdviseResult, reflectionMagnitudeFromSwr, scalarSweep } from "@feedpoint/core";
import { swrAxis } from "../svg/axes.js";
import { type Frame, frequencyChart } from "../svg/frequency-chart.js";
import { type Role, type Series, seriesOf } from "../svg/series.js";
import { shown } from "../tables/column.js";
import { tryColumns, tryRows } from "../tables/try-columns.js";
import { html, type Markup } from "../text/markup.js";
import { greatestShownSwr, limitLines } from "../text/swr-ticks.js";
import { partLines, termsLine } from "../text/try.js";
import { adviceHeadline } from "../words/advice.js";
import type { Voice } from "../words/remedies.js";
import { dataTable } from "./data-table.js";
import { findingList } from "./remarks.js";

/** What to try next: in words, in a table, and what the first advice should do to each thing wanted. */
export function adviceSection(result: AdviseResult, voice: Voice): Markup {
  const { advice, experiment, curves, findings } = result;
  const panels = curves.filter(({ after }) => after.length > 0).map((curve) => panel(curve, result));
  return html`<section id="try"><h2>What to try next</h2><p><strong>${adviceHeadline(result)}</strong></p>${
    advice.length === 0
      ? null
      : html`<ol>${advice.map(
          (each) =>
            html`<li>${each.what}.${each.parts.length === 0 ? null : html`<ul>${partLines(each, result).map((line) => html`<li>${line}</li>`)}</ul>`}</li>`,
        )}</ol>`
  }<p>${termsLine(result)}.</p>${dataTable("What to try next", shown(tryColumns(result), tryRows(result)))}${
    panels.length === 0
      ? null
      : html`<h3>SWR as it is, and after the first advice (foretold)</h3><div class="panels">${panels}</div>`
  }${experiment === null ? null : html`<p><strong>Worth measuring:</strong> ${experiment.message}</p>`}${
    findings.length === 0 ? null : findingList(findings, voice)
  }</section>`;
}

const FRAME: Frame = { width: 340, height: 222, left: 38, right: 332, top: 44, bottom: 196 };

function panel(
  { title, frequencyHz, before, after }: AdviseResult["curves"][number],
  { limits }: AdviseResult,
): Markup {
  const series = [drawn("before", frequencyHz, before), drawn("after", frequencyHz, after)];
  const known = [...before, ...after].filter((rho) => rho < 1);
  const worst = known.map((rho) => (1 + rho) / (1 - rho));
  const end = greatestShownSwr(limits, worst);
  const [lowHz = 0, highHz = 1] = [frequencyHz[0], frequencyHz.at(-1)];
  const greatest = reflectionMagnitudeFromSwr(end);
  const chart = frequencyChart({
    name: `SWR on ${title} as it is and after the first advice`,
    frame: FRAME,
    range: { lowHz, highHz },
    series,
    value: ({ reflectionMagnitude }) => Math.min(greatest, reflectionMagnitude),
    valueAxis: swrAxis(end, [FRAME.bottom, FRAME.top]),
    valueTitle: "SWR",
    limits: limitLines(limits, end).map((line) => ({
      value: reflectionMagnitudeFromSwr(line.swr),
      label: String(line.swr),
      note: "",
    })),
    bands: [],
    withBandNames: false,
  });
  return html`<figure class="panel"><h3>${title}</h3>${chart}</figure>`;
}

/** What is not known is a gap in the curve. */
function drawn(role: Role, frequencyHz: readonly number[], magnitudes: readonly number[]): Series {
  const known = [...frequencyHz.keys()].filter((i) => Number.isFinite(magnitudes[i]));
  const sweep = scalarSweep(
    {
      label: role,
      source: { file: role, format: "computed", description: "foretold", comments: [] },
      takenAt: null,
      referenceOhms: 50,
      findings: [],
      ...(known.length < 3 ? { continuity: "spots" as const } : {}),
    },
    {
      frequencyHz: Float64Array.from(known, (i) => frequencyHz[i] as number),
      reflectionMagnitude: Float64Array.from(known, (i) => Math.min(1, magnitudes[i] as number)),
    },
  );
  return seriesOf(role, sweep, []);
}
