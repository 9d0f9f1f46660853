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
} from "@feedpoint/core";
import type { Settings } from "../options/settings.js";
import type { Batch } from "./batch.js";
import { type GradeReport, reaches } from "./report.js";
import { type Season, seasonResult } from "./season.js";

/** What goes into a report beside the sweeps. */
interface Reporting {
  readonly settings: Settings;
  readonly criteria: readonly GradeCriterion[];
  readonly logged: readonly Finding[];
  readonly minGrade?: Grade | undefined;
}

/** What was graded, and what could not be. */
export type Graded = Pick<Batch, "sweeps" | "graded" | "points" | "unreadable" | "files">;

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
