import type { BandSummary, Interval, Point } from "@feedpoint/core";
import type { Series } from "../svg/series.js";
import { html, type Markup } from "../text/markup.js";
import { megahertz, swr } from "../text/units.js";
import { dataTable } from "./data-table.js";

/** Both ends of what the numbers of each band may be. */
export function sureness(series: readonly Series[]): Markup {
  const rows = series.flatMap(({ role, bands }) =>
    bands.filter(({ best }) => best !== null).map((summary) => rowOf(summary, role === "only" ? "" : ` ${role}`)),
  );
  if (rows.length === 0) return html``;
  const columns = ["Best SWR", "at MHz", "Worst SWR", "kHz within the limit", "Lower edge MHz", "Upper edge MHz"];
  return html`<section><h2>How sure</h2><p>Each number with both ends of what it may be, at 95 %: by the noise of the sweep, by its step, and by the analyser’s own error where that was stated. A dash: it cannot be told, or there is no such edge.</p>${dataTable(
    "How sure the numbers are",
    { columns: [{ title: "Band" }, ...columns.map((title) => ({ title, align: "right" as const }))], rows },
  )}</section>`;
}

function rowOf({ band, best, worst, uncertainty }: BandSummary, side: string): readonly string[] {
  return [
    band + side,
    swrBetween(best),
    uncertainty === null ? "–" : between(uncertainty.bestHz, megahertz),
    swrBetween(worst),
    uncertainty === null ? "–" : between(uncertainty.withinHz, (hz) => String(Math.round(hz / 1000))),
    between(uncertainty?.lowEdgeHz ?? null, megahertz),
    between(uncertainty?.highEdgeHz ?? null, megahertz),
  ];
}

function swrBetween(point: Point | null): string {
  if (point?.swrLow === undefined || point.swrHigh === undefined) return "–";
  return between({ low: point.swrLow, high: point.swrHigh }, swr);
}

function between(interval: Interval | null, text: (value: number) => string): string {
  if (interval === null) return "–";
  const [low, high] = [text(interval.low), text(interval.high)];
  return low === high ? low : `${low} to ${high}`;
}
