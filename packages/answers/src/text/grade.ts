import { type Finding, type GradeCriterion, LEAST_SWEPT_FRACTION, type Limits, type SweepGrade } from "@feedpoint/core";
import type { GradeReport } from "../judged/report.js";
import type { Season } from "../judged/season.js";
import { csvOf, shown } from "../tables/column.js";
import { gradeBandColumns, gradeColumns, gradeRows } from "../tables/grade-columns.js";
import { gradesOnLoss, seasonHeadline } from "../words/season.js";
import { problemsIn } from "../words/severity.js";
import { certaintyText } from "../words/verdicts.js";
import { cautionItems, shortCautions } from "./cautions.js";
import { markdownCell } from "./escape.js";
import { findingItems, findingLines } from "./findings.js";
import { seasonTables } from "./season.js";
import { markdownTable, type Table, type TableColumn, textTable, wrap } from "./table.js";
import { limitsLine, percent, planLine, stationLines, type TextOptions } from "./units.js";

/** A row for each sweep, a column for each band that any of them swept: grade and best SWR; then what was asked for besides. */
export function gradeText(
  report: GradeReport,
  { width, limits, stationFile }: TextOptions & { readonly limits: Limits },
  season: Season,
): string {
  const { sweeps, totals, criteria, plan } = report;
  const count = (number: number, what: string) => `${number} ${what}${number === 1 ? "" : "s"}`;
  const findings = findingLines([...problemsOf(sweeps), ...report.findings], width);
  const table = gradeTable(sweeps);
  const onLoss = gradesOnLoss(report.losses);
  const areGrouped = totals.graded < totals.files - totals.unreadable;
  const grouped = areGrouped
    ? " Files of a folder that cover different ranges are one deployment; --each grades each file."
    : "";
  const counted = `${count(totals.graded, areGrouped ? "deployment" : "sweep")} graded, ${count(totals.files, "file")}, ${totals.unreadable} unreadable.${grouped}`;
  if (totals.graded === 0) return wrap(counted, width);
  return [
    ...seasonHeadline(report).flatMap((line) => [wrap(line, width), ""]),
    wrap(planLine(plan), width, "  "),
    wrap(limitsLine(limits), width, "  "),
    ...stationLines(stationFile),
    "",
    sweeps.length === 0 ? "No sweep reaches the grade asked for." : textTable(table.columns, table.rows, { width }),
    ...(onLoss === null ? [] : [wrap(onLoss, width)]),
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
    "",
    shortCautions(width),
  ].join("\n");
}

export function gradeMarkdown(report: GradeReport, season: Season): string {
  const { sweeps, plan } = report;
  const { columns, rows } = gradeTable(sweeps);
  const onLoss = gradesOnLoss(report.losses);
  return [
    ...seasonHeadline(report).map(markdownCell),
    markdownCell(`${planLine(plan)}, ${certaintyText(plan.certainty)}`),
    markdownTable(columns, rows),
    ...(onLoss === null ? [] : [markdownCell(onLoss)]),
    ...seasonTables(report, season).flatMap((table) => [
      markdownCell(table.above),
      ...(table.rows.length === 0 ? [] : [markdownTable(table.columns, table.rows)]),
    ]),
    ...findingItems([...problemsOf(sweeps), ...report.findings]),
    cautionItems(report.cautions),
  ].join("\n\n");
}

export const gradeTable = (sweeps: readonly SweepGrade[]): Table => shown(gradeColumns(sweeps), sweeps);

/** Problems of single sweeps, with the sweep's name. */
export const problemsOf = (sweeps: readonly SweepGrade[]): readonly Finding[] =>
  sweeps.flatMap(({ sweep, findings }) =>
    problemsIn([...sweep.findings, ...findings]).map((found) => ({
      ...found,
      message: `${sweep.label}: ${found.message}`,
    })),
  );

/** What the cells of that table hold, in words. */
export const GRADE_NOTES: readonly string[] = [
  "Each cell: grade and best SWR; – means not swept, ? too little known to grade. Mean: over all bands graded.",
  "Loss: the most that the line can lose one way by the sweep alone, at the frequency that says most, often the lowest; at higher ones it may be more. Loss lowers SWR and so raises a grade: compare two deployments to see it.",
];

/** One row a sweep and band. */
export const gradeCsv = ({ sweeps, plan }: GradeReport): string => csvOf(gradeBandColumns(plan), gradeRows(sweeps));

/** What each grade stands for, with the limits in force. */
export function criteriaText(
  { limits, width }: Pick<TextOptions, "width"> & { readonly limits: Limits },
  criteria: readonly GradeCriterion[],
): string {
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
