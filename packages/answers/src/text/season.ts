import {
  type BandGroups,
  type Drift,
  dateOf,
  FEWEST_FOR_JUMPS,
  type GroupOnBand,
  type Ranked,
  type Spread,
  type SweepGrade,
} from "@feedpoint/core";
import type { GradeReport } from "../judged/report.js";
import type { Season, SeasonResult } from "../judged/season.js";
import { needWhereSwept } from "../words/verdicts.js";
import { changeTable, factorTable, lossTable } from "./season-changes.js";
import { heardTable } from "./season-heard.js";
import type { SeasonTable } from "./season-table.js";
import { tonightTable } from "./season-tonight.js";
import { sweepNames } from "./sweep-names.js";
import type { TableColumn } from "./table.js";
import { fixed, percent, signed, swr } from "./units.js";

/** What a folder of sweeps teaches: ranking, groups, drifts, each as a table where it was asked for. */
export function seasonTables(
  {
    ranking,
    groups,
    drifts,
    losses,
    changes,
    factors,
    tonight,
    onAir,
    sweeps,
  }: SeasonResult & Pick<GradeReport, "sweeps">,
  season: Season,
): readonly SeasonTable[] {
  const { best, groupBy, overTime, wishes } = season;
  return [
    ...(wishes.length === 0 ? [] : [tonightTable(tonight, wishes)]),
    ...(best === null ? [] : [rankingTable(ranking, best)]),
    ...(groupBy === null ? [] : [groupTable(groups, groupBy)]),
    ...(season.factors.length === 0 ? [] : [factorTable(factors, season.factors)]),
    ...(season.heard === null ? [] : [heardTable(onAir)]),
    ...(overTime === null ? [] : [lossTable(losses)]),
    ...(changes.some(({ course }) => course !== "nothing") ? [changeTable(changes)] : []),
    ...(overTime === null ? [] : [driftTable(drifts, deploymentsOf(sweeps, overTime.column))]),
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

function rankingTable(ranking: readonly Ranked[], wanted: string): SeasonTable {
  const nameOf = sweepNames(ranking.map(({ graded }) => graded));
  const rows = ranking.map(({ rank, graded, band }) => [
    String(rank),
    nameOf(graded.sweep),
    dateOf(graded) ?? "–",
    needWhereSwept(band),
    percent(band.withinLimitFraction),
    graded.lossBoundDb === null ? "–" : `≤${fixed(graded.lossBoundDb, 1)}`,
    swr(band.bestSwr),
  ]);
  const above =
    rows.length === 0
      ? `No deployment is ranked for ${wanted}: no sweep covers enough of it.`
      : `Deployments for ${wanted}, the most useful first (by need, then share within the limit, then loss, then SWR):`;
  return { name: `Ranking for ${wanted}`, above, columns: RANKING_COLUMNS, rows, isRanking: true };
}

function groupTable(all: readonly BandGroups[], groupedBy: string): SeasonTable {
  const columns: readonly TableColumn[] = [
    { title: "Band" },
    { title: groupedBy },
    { title: "Sweeps", align: "right" },
    { title: "Within limit", align: "right" },
    { title: "Best SWR", align: "right" },
    { title: "Loss", align: "right", spare: 1 },
    { title: "Beyond the spread" },
  ];
  const rows = all.flatMap(({ band, groups, isBeyondSpread, restsOnLoss }) =>
    groups.map((group, i) => groupRow(band, group, i === 0 ? verdictOf(groups, isBeyondSpread, restsOnLoss) : "")),
  );
  const above =
    rows.length === 0
      ? `Nothing to group by ${groupedBy}: the log says nothing there of any sweep.`
      : `By ${groupedBy}: median, and ± half of the middle half of the sweeps where there are three or more. Loss: more than the sweep that loses least, one way at 10 MHz.`;
  return { name: `By ${groupedBy}`, above, columns, rows };
}

function groupRow(
  band: string,
  { value, sweeps, coverage, bestSwr, lossDb }: GroupOnBand,
  verdict: string,
): readonly string[] {
  const spread = (all: Spread | null, text: (value: number) => string) =>
    all === null ? "–" : text(all.median) + (all.spread === null ? "" : ` ±${text(all.spread / 2)}`);
  const loss = lossDb === null ? "not known" : `+${fixed(lossDb.median, 1)} dB`;
  return [band, value, String(sweeps), spread(coverage, percent), spread(bestSwr, swr), loss, verdict];
}

function verdictOf(
  groups: readonly GroupOnBand[],
  isBeyondSpread: boolean | null,
  restsOnLoss: boolean | null,
): string {
  if (groups.length < 2) return "one group only";
  if (restsOnLoss) return `${isBeyondSpread ? "yes, but" : "no, and"} the first loses more: no better antenna`;
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

/** What the log calls the deployments of some sweeps. */
const deploymentsOf = (sweeps: readonly SweepGrade[], column: string | null): readonly string[] =>
  column === null ? [] : [...new Set(sweeps.map(({ log }) => log?.[column] ?? ""))].filter((name) => name !== "");

function jumpsText({ jumps, sweeps }: Drift): string {
  if (sweeps < FEWEST_FOR_JUMPS) return "–";
  if (jumps.length === 0) return "none";
  return jumps.map(({ date, changeHz }) => `${signed(changeHz / 1000, 0)} kHz by ${date}`).join(", ");
}

function driftTable(drifts: readonly Drift[], deployments: readonly string[]): SeasonTable {
  const left = deployments.filter((name) => !drifts.some(({ deployment }) => deployment === name));
  const rows = drifts.map((drift) => [
    drift.deployment ?? "all",
    drift.band,
    String(drift.sweeps),
    drift.firstDate,
    drift.lastDate,
    slopeText(drift),
    drift.scatterHz === null ? "–" : `±${fixed(drift.scatterHz / 1000, 1)} kHz`,
    jumpsText(drift),
  ]);
  const above =
    rows.length === 0
      ? "No dip to follow over time: it takes two dated sweeps with a dip in the same band."
      : `How the dips went over time${left.length === 0 ? "" : ` (without ${left.join(", ")}: fewer than two dated sweeps with a dip in a band or beside it)`}:`;
  return { name: "Over time", above, columns: DRIFT_COLUMNS, rows };
}

function slopeText({ slopeHzPerMonth, slopeMarginHzPerMonth }: Drift): string {
  if (slopeHzPerMonth === null || slopeMarginHzPerMonth === null) return "–";
  return `${signed(slopeHzPerMonth / 1000, 1)} ±${fixed(slopeMarginHzPerMonth / 1000, 1)} kHz a month`;
}
