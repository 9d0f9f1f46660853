import {
  type BandGroups,
  type Drift,
  type Finding,
  GRADE_CRITERIA,
  type Grade,
  type GradeCriterion,
  type Ranked,
  type SweepGrade,
} from "@feedpoint/core";

/** What grade prints as JSON. */
export interface GradeReport {
  readonly schema: "feedpoint/grade@1";
  readonly plan: { readonly id: string; readonly title: string; readonly licenceClass: string | null };
  readonly criteria: readonly GradeCriterion[];
  readonly sweeps: readonly SweepGrade[];
  readonly unreadable: readonly { readonly file: string; readonly reason: string }[];
  /** By the column that was asked for; empty where none was */
  readonly groups: readonly BandGroups[];
  readonly drifts: readonly Drift[];
  readonly ranking: readonly Ranked[];
  readonly findings: readonly Finding[];
  readonly totals: {
    readonly files: number;
    readonly graded: number;
    readonly unreadable: number;
    readonly points: number;
  };
}

export const GRADES: readonly Grade[] = GRADE_CRITERIA.map(({ grade }) => grade);

/** Whether a grade is as good as another, or better. */
export const reaches = (grade: Grade | null, wanted: Grade): boolean =>
  grade !== null && GRADES.indexOf(grade) <= GRADES.indexOf(wanted);
