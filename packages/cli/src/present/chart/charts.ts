import { greatestShownSwr } from "@feedpoint/answers/text/swr-ticks";
import { wrap } from "@feedpoint/answers/text/table";
import { diffVerdictText, verdictText } from "@feedpoint/answers/words/verdicts";
import {
  type BandResult,
  type CheckResult,
  type Deployment,
  type DiffResult,
  type Limits,
  type SameTerms,
  traceOfSweep,
} from "@feedpoint/core";
import { type BandChart, bandChart } from "./band-chart.js";
import type { Glyphs } from "./glyphs.js";

/** Where charts are shown. */
export interface Screen {
  readonly width: number;
  readonly glyphs: Glyphs;
}

/** Charts of the bands that were swept, each by the parts that answer there. */
export function checkCharts({ parts }: Deployment, { bands, limits }: CheckResult, screen: Screen): string {
  const swept = bands.filter(({ best, restsOn }) => best !== null && restsOn !== "stretch");
  const curvesOf = ({ answeredBy }: BandResult) =>
    answeredBy.flatMap((place) => parts[place] ?? []).map((sweep) => traceOfSweep(sweep).curve);
  const greatestSwr = greatestShownSwr(limits, worstOf(swept));
  const charts = swept.map((result) => ({
    title: `${result.band}  ${verdictText(result)}`,
    sides: [{ name: "only" as const, curves: curvesOf(result), summary: result }],
    limits,
    greatestSwr,
  }));
  return sideBySide(charts, legendOf(limits, screen.glyphs), screen);
}

/** Charts of the bands that were compared: every sweep of both sides, as it was compared. */
export function diffCharts({ bands, limits }: DiffResult, { before, after }: SameTerms, screen: Screen): string {
  const { glyphs } = screen;
  const curvesOf = (side: readonly Deployment[]) =>
    side.flatMap(({ parts }) => parts.map((sweep) => traceOfSweep(sweep).curve));
  const greatestSwr = greatestShownSwr(limits, worstOf(bands.flatMap((band) => [band.before, band.after])));
  const charts = bands.map((band) => ({
    title: `${band.band}  ${diffVerdictText(band)}`,
    sides: [
      { name: "before" as const, curves: curvesOf(before), summary: band.before },
      { name: "after" as const, curves: curvesOf(after), summary: band.after },
    ],
    limits,
    greatestSwr,
  }));
  const legend = `${glyphs.before} before, ${glyphs.curve.repeat(2)} after; where only one is seen, both are the same. ${legendOf(limits, glyphs)}`;
  return sideBySide(charts, legend, screen);
}

const legendOf = ({ swr }: Limits, { within, best }: Glyphs) =>
  `${within.repeat(2)} SWR up to ${swr}:1, ${best} best point.`;

const worstOf = (bands: readonly { readonly worst: { readonly swr: number } | null }[]): readonly number[] =>
  bands.flatMap(({ worst }) => (worst === null ? [] : [worst.swr]));

const LEAST_WIDTH = 36;
const GREATEST_WIDTH = 76;
const BETWEEN = "   ";

/** As many charts beside each other as there is room for. */
function sideBySide(charts: readonly BandChart[], legend: string, { width, glyphs }: Screen): string {
  if (charts.length === 0) return "";
  const room = Math.floor((width + BETWEEN.length) / (LEAST_WIDTH + BETWEEN.length));
  const across = Math.max(1, Math.min(charts.length, room));
  const each = Math.min(GREATEST_WIDTH, Math.floor((width - (across - 1) * BETWEEN.length) / across));
  const drawn = charts.map((chart) => bandChart(chart, each, glyphs));
  const rows = Array.from({ length: Math.ceil(drawn.length / across) }, (_, i) => {
    const beside = drawn.slice(i * across, (i + 1) * across);
    return (beside[0] ?? [])
      .map((_line, number) =>
        beside
          .map((lines) => lines[number] ?? "")
          .join(BETWEEN)
          .trimEnd(),
      )
      .join("\n");
  });
  return [...rows, wrap(legend, width)].join("\n\n");
}
