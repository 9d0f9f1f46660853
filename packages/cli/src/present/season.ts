import { type BandGroups, type Drift, dateOf, type GroupOnBand, type Ranked, type Spread } from "@feedpoint/core";
import type { GradeReport } from "../grading/report.js";
import { type TableColumn, textTable, wrap } from "./table.js";
import { need, percent, signed, swr } from "./units.js";

/** What a folder of sweeps teaches: ranking, groups, drifts, each as a table where it was asked for. */
export function seasonTables(report: GradeReport, groupedBy: string | null, width: number): readonly string[] {
  return [
    ...(report.ranking.length > 0 ? [rankingTable(report.ranking, width)] : []),
    ...(report.groups.length > 0 ? [groupTable(report.groups, groupedBy ?? "group", width)] : []),
    ...(report.drifts.length > 0 ? [driftTable(report.drifts, width)] : []),
  ];
}

const RANKING_COLUMNS: readonly TableColumn[] = [
  { title: "Rank", align: "right" },
  { title: "Sweep" },
  { title: "Date", spare: 2 },
  { title: "Whole band needs" },
  { title: "within limit", align: "right" },
  { title: "Loss dB", align: "right", spare: 1 },
  { title: "Best SWR", align: "right" },
];

function rankingTable(ranking: readonly Ranked[], width: number): string {
  const rows = ranking.map(({ rank, graded, band }) => [
    String(rank),
    graded.sweep.label,
    dateOf(graded) ?? "–",
    need(band.need),
    percent(band.withinLimitFraction),
    graded.lossBoundDb === null ? "–" : `≤${graded.lossBoundDb.toFixed(1)}`,
    swr(band.bestSwr),
  ]);
  const [best] = ranking;
  return [
    `Deployments for ${best?.band.band}, the most useful first (by need, then share within the limit, then loss, then SWR):`,
    textTable(RANKING_COLUMNS, rows, { width }),
  ].join("\n");
}

function groupTable(all: readonly BandGroups[], groupedBy: string, width: number): string {
  const columns: readonly TableColumn[] = [
    { title: "Band" },
    { title: groupedBy },
    { title: "Sweeps", align: "right" },
    { title: "Within limit", align: "right" },
    { title: "Best SWR", align: "right" },
    { title: "Beyond the spread" },
  ];
  const rows = all.flatMap(({ band, groups, isBeyondSpread }) =>
    groups.map((group, i) => groupRow(band, group, i === 0 ? verdictOf(groups, isBeyondSpread) : "")),
  );
  return [
    wrap(`By ${groupedBy}: median, and ± half of the middle half of the sweeps where there are three or more.`, width),
    textTable(columns, rows, { width }),
  ].join("\n");
}

function groupRow(band: string, { value, sweeps, coverage, bestSwr }: GroupOnBand, verdict: string): readonly string[] {
  const spread = (all: Spread | null, text: (value: number) => string) =>
    all === null ? "–" : text(all.median) + (all.spread === null ? "" : ` ±${text(all.spread / 2)}`);
  return [band, value, String(sweeps), spread(coverage, percent), spread(bestSwr, swr), verdict];
}

function verdictOf(groups: readonly GroupOnBand[], isBeyondSpread: boolean | null): string {
  if (groups.length < 2) return "one group only";
  if (isBeyondSpread === null) return "too few sweeps to tell";
  return isBeyondSpread ? "yes" : "no";
}

const DRIFT_COLUMNS: readonly TableColumn[] = [
  { title: "Deployment" },
  { title: "Band" },
  { title: "Sweeps", align: "right" },
  { title: "From", spare: 1 },
  { title: "to", spare: 1 },
  { title: "Drift", align: "right" },
  { title: "Scatter", align: "right" },
  { title: "Jumps" },
];

function driftTable(drifts: readonly Drift[], width: number): string {
  const rows = drifts.map(({ deployment, band, sweeps, firstDate, lastDate, slopeHzPerMonth, scatterHz, jumps }) => [
    deployment ?? "all",
    band,
    String(sweeps),
    firstDate,
    lastDate,
    slopeHzPerMonth === null ? "–" : `${signed(slopeHzPerMonth / 1000, 1)} kHz a month`,
    scatterHz === null ? "–" : `±${(scatterHz / 1000).toFixed(1)} kHz`,
    jumps.length === 0
      ? "none"
      : jumps.map(({ date, changeHz }) => `${signed(changeHz / 1000, 0)} kHz by ${date}`).join(", "),
  ]);
  return ["How the dips went over time:", textTable(DRIFT_COLUMNS, rows, { width })].join("\n");
}
