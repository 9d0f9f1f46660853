import type { BandSummary, Limits } from "@feedpoint/core";
import type { Series } from "../svg/series.js";
import { bandSwrChart } from "../svg/swr-chart.js";
import { html, type Markup } from "../text/markup.js";
import { kilohertz, megahertz, percent, pointSwr, span } from "../text/units.js";
import { needText } from "../words/verdicts.js";
import { readoutLine } from "./readout-line.js";

/** A verdict as it stands beside a band's name. */
export interface BandVerdict {
  readonly band: string;
  readonly verdict: string;
  /** What it holds for, behind it; nothing where that is plain */
  readonly of?: string;
  /** It rests on a reading of a whole stretch, which does not tell where */
  readonly isStretch?: boolean;
}

/** A small chart for each band that was swept, with what it says in words; null where there is none. */
export function bandPanels(series: readonly Series[], verdicts: readonly BandVerdict[], limits: Limits): Markup | null {
  const panels = verdicts.flatMap(({ band, verdict, of = "", isStretch = false }) => {
    const summaries = series.map(({ bands }) => bands.find((other) => other.band === band));
    if (summaries.every((summary) => (summary?.best ?? null) === null)) return [];
    return [
      html`<figure class="panel"><h3>${band} <span class="verdict v-${verdict.replaceAll(" ", "-")}">${verdict + of}</span></h3>${bandSwrChart(series, band, limits, "panel")}${readoutLine(series)}<dl>${factsOf(summaries, isStretch)}</dl></figure>`,
    ];
  });
  return panels.length === 0 ? null : html`<div class="panels">${panels}</div>`;
}

function factsOf(summaries: readonly (BandSummary | undefined)[], isStretch: boolean): readonly Markup[] {
  const known = summaries.flatMap((summary) => (summary === undefined || summary.best === null ? [] : [summary]));
  const fact = (name: string, value: (summary: BandSummary) => string, unit = ""): Markup => {
    const values = [...new Set(known.map(value))];
    return html`<div><dt>${name}</dt><dd>${values.join(" → ")}${unit}</dd></div>`;
  };
  const isSomewhere = ({ best, withinLimit }: BandSummary) =>
    isStretch && best !== null && withinLimit.fraction === 0 && best.swr <= withinLimit.limitSwr;
  const limit = known[0]?.withinLimit.limitSwr ?? 2;
  return [
    isStretch
      ? fact("Best", ({ best }) => pointSwr(best))
      : fact(
          "Best",
          ({ best }) => (best === null ? "–" : `${pointSwr(best)} at ${megahertz(best.frequencyHz)}`),
          " MHz",
        ),
    fact("Worst", ({ worst }) => pointSwr(worst)),
    fact(`To ${limit}:1`, (summary) => (isSomewhere(summary) ? "some" : percent(summary.withinLimit.fraction))),
    fact("Where", (summary) => (isSomewhere(summary) ? "the readings do not tell" : withinText(summary))),
    fact("Needs", (summary) => needText(summary.need)),
  ];
}

const MOST_SPANS = 2;

function withinText({ withinLimit }: BandSummary): string {
  const { spans, widthHz } = withinLimit;
  if (spans.length === 0) return "nowhere";
  return spans.length > MOST_SPANS
    ? `${kilohertz(widthHz)} in ${spans.length} parts`
    : `${spans.map(span).join(", ")} MHz`;
}
