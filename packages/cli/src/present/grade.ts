import { type GradeCriterion, LEAST_SWEPT_FRACTION, type SweepGrade } from "@feedpoint/core";
import type { GradeReport } from "../grading/report.js";
import type { Settings } from "../options/settings.js";
import { csvTable } from "./csv.js";
import { findingLines } from "./findings.js";
import { seasonTables } from "./season.js";
import { markdownTable, type TableColumn, textTable, wrap } from "./table.js";
import { limitsLine, percent, planLine, swr } from "./units.js";

/** A row for each sweep, a column for each band that any of them swept: grade and best SWR; then what was asked for besides. */
export function gradeText(report: GradeReport, { width, limits }: Settings, groupedBy: string | null): string {
  const { sweeps, totals, criteria, plan } = report;
  const count = (number: number, what: string) => `${number} ${what}${number === 1 ? "" : "s"}`;
  const findings = findingLines(report.findings, width);
  return [
    wrap(planLine(plan), width, "  "),
    limitsLine(limits),
    "",
    textTable(columnsFor(sweeps), rowsFor(sweeps), { width }),
    "",
    ...seasonTables(report, groupedBy, width).flatMap((table) => [table, ""]),
    ...(findings === "" ? [] : [findings, ""]),
    wrap(
      "Each cell: grade and best SWR; – means not swept, ? too little swept to grade. Mean: over all bands graded.",
      width,
    ),
    wrap(
      "Loss: the most that the line can lose one way, by the sweep alone. Loss lowers SWR and so raises a grade: compare deployments with diff.",
      width,
    ),
    ...criteria.map(({ grade, meaning }) => wrap(`${grade}  ${meaning}`, width, "   ")),
    "",
    `${count(totals.graded, "sweep")} graded, ${count(totals.files, "file")}, ${totals.unreadable} unreadable.`,
  ].join("\n");
}

export function gradeMarkdown(sweeps: readonly SweepGrade[]): string {
  return markdownTable(columnsFor(sweeps), rowsFor(sweeps));
}

/** One row a sweep and band. */
export function gradeCsv(sweeps: readonly SweepGrade[]): string {
  return csvTable(
    sweeps.flatMap(({ sweep, grade, bands, lossBoundDb }) =>
      bands.map((band) => ({
        file: sweep.file,
        label: sweep.label,
        takenAt: sweep.takenAt,
        overall: grade,
        lossBoundDb,
        ...band,
      })),
    ),
  );
}

/** What each grade stands for, with the limits in force. */
export function criteriaText({ limits, width }: Settings, criteria: readonly GradeCriterion[]): string {
  const columns: TableColumn[] = [
    { title: "Grade" },
    { title: `No tuner (${limits.swr}:1)`, align: "right" },
    { title: `Built-in tuner (${limits.builtInTunerSwr}:1)`, align: "right" },
    { title: `Wide-range tuner (${limits.wideRangeTunerSwr}:1)`, align: "right" },
    { title: "In words", spare: 1 },
  ];
  const rows = criteria.map(({ grade, withoutTuner, withBuiltInTuner, withWideRangeTuner, meaning }) => [
    grade,
    percent(withoutTuner),
    percent(withBuiltInTuner),
    percent(withWideRangeTuner),
    meaning,
  ]);
  return [
    wrap(
      "Least share of the band that can be used, by what is needed. The first grade whose shares are all reached is given.",
      width,
    ),
    "",
    textTable(columns, rows, { width }),
    "",
    wrap(
      `A band needs ${percent(LEAST_SWEPT_FRACTION)} of it swept to be graded; what was not swept never counts as usable. Over all: the mean of the bands (A 4, B 3, C 2, D 1, F 0), rounded.`,
      width,
    ),
  ].join("\n");
}

const sweptBands = (sweeps: readonly SweepGrade[]) =>
  (sweeps[0]?.bands ?? [])
    .map(({ band }) => band)
    .filter((name) => sweeps.some(({ bands }) => bands.some((entry) => entry.band === name && entry.bestSwr !== null)));

function columnsFor(sweeps: readonly SweepGrade[]): readonly TableColumn[] {
  return [
    { title: "Sweep" },
    { title: "Mean" },
    { title: "Loss dB", align: "right", spare: 1 },
    ...sweptBands(sweeps).map((title): TableColumn => ({ title, align: "right" })),
  ];
}

function rowsFor(sweeps: readonly SweepGrade[]): readonly (readonly string[])[] {
  const names = sweptBands(sweeps);
  return sweeps.map(({ sweep, grade, bands, lossBoundDb }) => [
    sweep.label,
    grade ?? "–",
    lossBoundDb === null ? "–" : `≤${lossBoundDb.toFixed(1)}`,
    ...names.map((name) => {
      const entry = bands.find(({ band }) => band === name);
      if (entry === undefined || entry.bestSwr === null) return "–";
      return `${entry.grade ?? "?"} ${swr(entry.bestSwr)}`;
    }),
  ]);
}
