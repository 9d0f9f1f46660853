import {
  CAUTIONS,
  changeFindings,
  driftFindings,
  type Finding,
  type Grade,
  type GradeCriterion,
  groupFindings,
  lossFindings,
  planInfo,
  type SweepGrade,
} from "@feedpoint/core";
import type { Settings } from "../asked/settings.js";
import type { Problem } from "../asked/usage-error.js";
import { type GradeReport, reaches } from "./report.js";
import { type Season, seasonResult } from "./season.js";

/** What goes into a report beside the sweeps. */
interface Reporting {
  readonly settings: Pick<Settings, "plan" | "licenceClass" | "bands" | "limits">;
  readonly criteria: readonly GradeCriterion[];
  readonly logged: readonly Finding[];
  readonly minGrade?: Grade | undefined;
}

/** What was graded, and what could not be. */
export interface Graded {
  readonly files: number;
  readonly graded: number;
  readonly points: number;
  readonly unreadable: readonly Problem[];
  readonly sweeps: readonly SweepGrade[];
}

/** Sweeps that were graded one by one, and what could not be read. */
export const gradedAll = (sweeps: readonly SweepGrade[], unreadable: readonly Problem[]): Graded => ({
  sweeps,
  graded: sweeps.length,
  points: sweeps.reduce((sum, { sweep }) => sum + sweep.points, 0),
  unreadable,
  files: sweeps.length + unreadable.length,
});

/** All that a run over many sweeps tells, in the order that was asked for. */
export function gradeReport(
  { sweeps, graded, points, unreadable, files }: Graded,
  season: Season,
  { settings, criteria, logged, minGrade }: Reporting,
): GradeReport {
  const { order } = season;
  const result = seasonResult(sweeps, season);
  const shown = minGrade === undefined ? sweeps : sweeps.filter(({ grade }) => reaches(grade, minGrade));
  return {
    schema: "feedpoint/grade@1",
    plan: planInfo(settings),
    limits: settings.limits,
    criteria,
    sweeps: order === null ? shown : shown.toSorted(order),
    unreadable,
    ...result,
    findings: [
      ...logged,
      ...(season.groupBy === null ? [] : groupFindings(sweeps, season.groupBy)),
      ...lossFindings(result.losses, result.changes),
      ...changeFindings(result.changes),
      ...driftFindings(result.drifts),
    ],
    cautions: CAUTIONS,
    totals: { files, graded, unreadable: unreadable.length, points },
  };
}
