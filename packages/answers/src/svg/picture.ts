import type { CheckResult, Limits, Sweep } from "@feedpoint/core";
import type { Markup } from "../text/markup.js";
import { reactanceChart, resistanceChart, returnLossChart } from "./quantity-charts.js";
import { type Series, seriesOf } from "./series.js";
import { smithChart } from "./smith-chart.js";
import { standaloneSvg } from "./standalone.js";
import { bandSwrChart, sweepSwrChart } from "./swr-chart.js";

export type ChartKind = "swr" | "smith" | "return-loss" | "resistance" | "reactance";

/** One chart of a sweep as an SVG file, with a note of the operator's below its title. */
export function picture(
  sweep: Sweep,
  { bands, limits }: CheckResult,
  what: ChartKind,
  note: string | null = null,
): string {
  const series = [seriesOf("only", sweep, bands)];
  const [only, ...others] = bands;
  const isOneBand = what === "swr" && only !== undefined && others.length === 0;
  const name = isOneBand ? `SWR on ${only.band}` : NAMES[what];
  const chart = isOneBand ? bandSwrChart(series, only.band, limits, "picture") : CHARTS[what](series, limits);
  return standaloneSvg(chart, `${name}, ${sweep.label}`, note);
}

const NAMES: Readonly<Record<ChartKind, string>> = {
  swr: "SWR",
  smith: "Smith chart",
  "return-loss": "Return loss",
  resistance: "Resistance",
  reactance: "Reactance",
};

const CHARTS: Readonly<Record<ChartKind, (series: readonly Series[], limits: Limits) => Markup>> = {
  swr: (series, limits) => sweepSwrChart(series, limits, "wide"),
  smith: smithChart,
  "return-loss": returnLossChart,
  resistance: resistanceChart,
  reactance: reactanceChart,
};
