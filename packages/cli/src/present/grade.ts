import { type GradeCriterion, LEAST_SWEPT_FRACTION, type SweepGrade } from "@feedpoint/core";
import type { GradeReport } from "../grading/report.js";
import type { Season } from "../grading/season.js";
import type { Settings } from "../options/settings.js";
import { csvTable } from "./csv.js";
import { markdownCell } from "./escape.js";
import { findingLines } from "./findings.js";
import { seasonTables } from "./season.js";
import { sweepNames } from "./sweep-names.js";
import { markdownTable, type Table, type TableColumn, textTable, wrap } from "./table.js";
import { fixed, limitsLine, percent, planLine, stationLines, swr } from "./units.js";

/** A row for each sweep, a column for each band that any of them swept: grade and best SWR; then what was asked for besides. */
export function gradeText(report: GradeReport, { width, limits, stationFile }: Settings, season: Season): string {
  const { sweeps, totals, criteria, plan } = report;
  const count = (number: number, what: string) => `${number} ${what}${number === 1 ? "" : "s"}`;
  const findings = findingLines(report.findings, width);
  const counted = `${count(totals.graded, "sweep")} graded, ${count(totals.files, "file")}, ${totals.unreadable} unreadable.`;
  if (totals.graded === 0) return wrap(counted, width);
  return [
    wrap(planLine(plan), width, "  "),
    wrap(limitsLine(limits), width, "  "),
    ...stationLines(stationFile),
    "",
    sweeps.length === 0
      ? "No sweep reaches the grade asked for."
      : textTable(columnsFor(sweeps), rowsFor(sweeps), { width }),
    "",
    ...seasonTables(report, season).flatMap(({ above, columns, rows }) => [
      wrap(above, width),
      ...(rows.length === 0 ? [] : [textTable(columns, rows, { width })]),
      "",
    ]),
    ...(findings === "" ? [] : [findings, ""]),
    ...GRADE_NOTES.map((note) => wrap(note, width)),
    ...criteria.map(({ grade, meaning }) => wrap(`${grade}  ${meaning}`, width, "   ")),
    "",
    wrap(counted, width),
  ].join("\n");
}

export function gradeMarkdown(report: GradeReport, season: Season): string {
  const { sweeps } = report;
  return [
    markdownTable(columnsFor(sweeps), rowsFor(sweeps)),
    ...seasonTables(report, season).flatMap(({ above, columns, rows }) => [
      markdownCell(above),
      ...(rows.length === 0 ? [] : [markdownTable(columns, rows)]),
    ]),
  ].join("\n\n");
}

export const gradeTable = (sweeps: readonly SweepGrade[]): Table => ({
  columns: columnsFor(sweeps),
  rows: rowsFor(sweeps),
});

/** What the cells of that table hold, in words. */
export const GRADE_NOTES: readonly string[] = [
  "Each cell: grade and best SWR; – means not swept, ? too little known to grade. Mean: over all bands graded.",
  "Loss: the most that the line can lose one way, by the sweep alone. Loss lowers SWR and so raises a grade: compare deployments with diff.",
];

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
  const nameOf = sweepNames(sweeps);
  return sweeps.map(({ sweep, grade, bands, lossBoundDb }) => [
    nameOf(sweep),
    grade ?? "–",
    lossBoundDb === null ? "–" : `≤${fixed(lossBoundDb, 1)}`,
    ...names.map((name) => {
      const entry = bands.find(({ band }) => band === name);
      if (entry === undefined || entry.bestSwr === null) return "–";
      return `${entry.grade ?? "?"} ${swr(entry.bestSwr)}`;
    }),
  ]);
}
