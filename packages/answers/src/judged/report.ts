import {
  type BandGroups,
  type ChangeOverTime,
  type Drift,
  type FactorEffect,
  type Finding,
  type ForTonight,
  GRADE_CRITERIA,
  type Grade,
  type GradeCriterion,
  type HeardBeside,
  type Limits,
  type LossHistory,
  type PlanInfo,
  type Ranked,
  type SweepGrade,
} from "@feedpoint/core";
import type { Problem } from "../asked/usage-error.js";

/** What grade prints as JSON. */
export interface GradeReport {
  readonly schema: "feedpoint/grade@1";
  readonly plan: PlanInfo;
  readonly limits: Limits;
  readonly criteria: readonly GradeCriterion[];
  /** With --min-grade those that reach it; all the rest counts every sweep */
  readonly sweeps: readonly SweepGrade[];
  readonly unreadable: readonly Problem[];
  /** By the column that was asked for; empty where none was */
  readonly groups: readonly BandGroups[];
  readonly drifts: readonly Drift[];
  readonly ranking: readonly Ranked[];
  /** Loss over time, by deployment; empty where it was not asked for */
  readonly losses: readonly LossHistory[];
  /** How dips, shares and loss went over time; empty where it was not asked for */
  readonly changes: readonly ChangeOverTime[];
  /** What columns of the log do, the others held equal; empty where it was not asked for */
  readonly factors: readonly FactorEffect[];
  /** For what is wanted, the best first; empty where nothing was asked for */
  readonly tonight: readonly ForTonight[];
  /** SWR and the air, side by side; empty where no reports were given */
  readonly onAir: readonly HeardBeside[];
  readonly findings: readonly Finding[];
  readonly cautions: readonly string[];
  readonly totals: {
    readonly files: number;
    readonly graded: number;
    readonly unreadable: number;
    readonly points: number;
  };
}

/** A line of NDJSON: one sweep by itself. */
export interface GradedLine extends SweepGrade {
  readonly schema: "feedpoint/graded-sweep@1";
}

export const GRADES: readonly Grade[] = GRADE_CRITERIA.map(({ grade }) => grade);

/** Whether a grade is as good as another, or better. */
export const reaches = (grade: Grade | null, wanted: Grade): boolean =>
  grade !== null && GRADES.indexOf(grade) <= GRADES.indexOf(wanted);
