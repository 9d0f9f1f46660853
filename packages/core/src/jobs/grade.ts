import { type Analysis, analyse } from "../bands/analysis.js";
import { lossBoundOf } from "../bands/loss-bound.js";
import { checkScope } from "../bands/option-checks.js";
import { reachOf, type UsableShares } from "../bands/reach.js";
import { type Scope, selectBands } from "../bands/scope.js";
import { isDip } from "../bands/summary.js";
import { GRADE_CRITERIA, type Grade, type GradeCriterion } from "../facts/grade-criteria.js";
import { limitsWith, type Need } from "../facts/limits.js";
import { demand } from "../input/argument.js";
import { swrFromReflectionMagnitude } from "../sweep/reflection.js";
import type { Sweep } from "../sweep/sweep.js";
import { checkSweep } from "../sweep/sweep-check.js";
import { type SweepInfo, sweepInfo } from "../sweep/sweep-info.js";

/** A band of which less than this was swept gets no grade. */
export const LEAST_SWEPT_FRACTION = 0.9;

const GRADE_POINTS: Readonly<Record<Grade, number>> = { A: 4, B: 3, C: 2, D: 1, F: 0 };
const GRADES_BY_POINTS: readonly Grade[] = ["F", "D", "C", "B", "A"];

export interface BandGrade {
  readonly band: string;
  /** null where too little of the band was swept, or the instrument's scale ended too low to tell */
  readonly grade: Grade | null;
  readonly bestSwr: number | null;
  readonly bestHz: number | null;
  /** `bestHz` where it is a dip within the band and not just its edge; else null */
  readonly dipHz: number | null;
  readonly withinLimitFraction: number;
  readonly sweptFraction: number;
  readonly need: Need;
}

export interface SweepGrade {
  readonly sweep: SweepInfo;
  /** Mean of the graded bands' grades, rounded to the nearest (a half to the better); null where no band has one */
  readonly grade: Grade | null;
  readonly bands: readonly BandGrade[];
  /** The most that can be lost one way on the line, by the sweep alone; null where it bounds nothing */
  readonly lossBoundDb: number | null;
  /** The deployment log's row for this sweep */
  readonly log: Readonly<Record<string, string>> | null;
}

export interface GradeOptions extends Scope {
  readonly criteria?: readonly GradeCriterion[];
}

/** Grades a sweep on every band, and over all. */
export function gradeSweep(sweep: Sweep, options: GradeOptions): SweepGrade {
  checkSweep(sweep);
  checkScope(options);
  const { criteria = GRADE_CRITERIA } = options;
  demand(Array.isArray(criteria), "criteria", "a list of criteria, as criteriaWith gives one", criteria);
  const analysis = analyse(sweep, limitsWith(options.limits));
  const bands = selectBands(options).map((band): BandGrade => {
    const { usable, sweptFraction, extremes, pieces, need } = reachOf(analysis, band);
    const best = extremes?.best ?? null;
    const gradeOf = (shares: UsableShares) => gradeFor(shares, criteria);
    const grade = gradeOf(usable);
    const isSure = grade === gradeOf(atTheMost(analysis, usable, sweptFraction));
    return {
      band: band.band,
      grade: sweptFraction >= LEAST_SWEPT_FRACTION && isSure ? grade : null,
      bestSwr: best && swrFromReflectionMagnitude(best.reflectionMagnitude),
      bestHz: best?.frequencyHz ?? null,
      dipHz: best && isDip({ best, pieces }) ? best.frequencyHz : null,
      withinLimitFraction: usable.withoutTuner,
      sweptFraction,
      need,
    };
  });
  return {
    sweep: sweepInfo(sweep),
    grade: overall(bands),
    bands,
    lossBoundDb: lossBoundOf(analysis.curve)?.lossDb ?? null,
    log: null,
  };
}

const gradeFor = (shares: UsableShares, criteria: readonly GradeCriterion[]): Grade | null =>
  criteria.find(
    (wanted) =>
      shares.withoutTuner >= wanted.withoutTuner &&
      shares.withBuiltInTuner >= wanted.withBuiltInTuner &&
      shares.withWideRangeTuner >= wanted.withWideRangeTuner,
  )?.grade ?? null;

/** Shares within reach if all that means "at least" an SWR were within it where that is possible. */
function atTheMost({ curve, limits }: Analysis, usable: UsableShares, sweptFraction: number): UsableShares {
  const ceiling = curve.sweep.kind === "scalar" ? curve.sweep.ceilingMagnitude : null;
  if (ceiling === null) return usable;
  const swr = swrFromReflectionMagnitude(ceiling);
  return {
    withoutTuner: limits.swr > swr ? sweptFraction : usable.withoutTuner,
    withBuiltInTuner: limits.builtInTunerSwr > swr ? sweptFraction : usable.withBuiltInTuner,
    withWideRangeTuner: limits.wideRangeTunerSwr > swr ? sweptFraction : usable.withWideRangeTuner,
  };
}

function overall(bands: readonly BandGrade[]): Grade | null {
  const points = bands.flatMap(({ grade }) => (grade === null ? [] : [GRADE_POINTS[grade]]));
  if (points.length === 0) return null;
  const mean = points.reduce((sum, value) => sum + value, 0) / points.length;
  return GRADES_BY_POINTS[Math.round(mean)] ?? null;
}
