import { type JudgingOptions, selectBands } from "./judging.js";
import { DEFAULT_LIMITS, type Need } from "./limits.js";
import { lossBoundOf } from "./loss-bound.js";
import { swrFromReflectionMagnitude } from "./reflection.js";
import { type BandReach, isDip, type Judgement, judge, reachOf } from "./summary.js";
import type { Sweep } from "./sweep.js";
import { type SweepInfo, sweepInfo } from "./sweep-info.js";

export type Grade = "A" | "B" | "C" | "D" | "F";

/** Least shares of a band that a grade asks for, by what is needed to transmit there. */
export interface GradeCriterion {
  readonly grade: Grade;
  readonly withoutTuner: number;
  readonly withBuiltInTuner: number;
  readonly withWideRangeTuner: number;
  /** For a person, with the default limits */
  readonly meaning: string;
}

/** Shares that a grade asks for, some of them. */
export type GradeShares = Partial<Pick<GradeCriterion, "withoutTuner" | "withBuiltInTuner" | "withWideRangeTuner">>;

/** The criteria with the operator's own shares in their place. */
export function criteriaWith(own: Readonly<Partial<Record<Grade, GradeShares>>>): readonly GradeCriterion[] {
  return GRADE_CRITERIA.map((criterion) => {
    const shares = own[criterion.grade];
    if (shares === undefined) return criterion;
    const changed = { ...criterion, ...shares };
    const percent = (share: number) => `${Math.round(100 * share)} %`;
    const meaning = `no tuner on ${percent(changed.withoutTuner)}, a built-in tuner or none on ${percent(changed.withBuiltInTuner)}, a wide-range tuner or less on ${percent(changed.withWideRangeTuner)} (your own)`;
    return { ...changed, meaning };
  });
}

/**
 * What each grade stands for: what the operator can do, not a bare least SWR. The first whose shares are all reached
 * is given; shares are of the whole band. Our own choice, no source.
 */
export const GRADE_CRITERIA: readonly GradeCriterion[] = [
  {
    grade: "A",
    withoutTuner: 1,
    withBuiltInTuner: 1,
    withWideRangeTuner: 1,
    meaning: "no tuner needed on all of the band",
  },
  {
    grade: "B",
    withoutTuner: 0.5,
    withBuiltInTuner: 0.9,
    withWideRangeTuner: 0.9,
    meaning: "no tuner on at least half of the band, a built-in tuner or none on 90 %",
  },
  {
    grade: "C",
    withoutTuner: 0,
    withBuiltInTuner: 0.9,
    withWideRangeTuner: 0.9,
    meaning: "a built-in tuner or none on 90 % of the band",
  },
  {
    grade: "D",
    withoutTuner: 0,
    withBuiltInTuner: 0,
    withWideRangeTuner: 0.9,
    meaning: "a wide-range tuner, or less, on 90 % of the band",
  },
  {
    grade: "F",
    withoutTuner: 0,
    withBuiltInTuner: 0,
    withWideRangeTuner: 0,
    meaning: "beyond a tuner on more than a tenth of the band",
  },
];

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

export interface GradeOptions extends JudgingOptions {
  readonly criteria?: readonly GradeCriterion[];
}

/** Grades a sweep on every band, and over all. */
export const gradeSweep = (sweep: Sweep, options: GradeOptions): SweepGrade =>
  gradeJudged(judge(sweep, options.limits ?? DEFAULT_LIMITS), options);

/** The same for a sweep whose curve is needed for more than this; the limits are those that it was judged with. */
export function gradeJudged(judgement: Judgement, options: Omit<GradeOptions, "limits">): SweepGrade {
  const { criteria = GRADE_CRITERIA } = options;
  const { sweep } = judgement.curve;
  const bands = selectBands(options).map((band): BandGrade => {
    const { usable, sweptFraction, extremes, pieces, need } = reachOf(judgement, band);
    const best = extremes?.best ?? null;
    const gradeOf = (shares: Shares) => gradeFor(shares, criteria);
    const grade = gradeOf(usable);
    const isSure = grade === gradeOf(atTheMost(judgement, usable, sweptFraction));
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
    lossBoundDb: lossBoundOf(judgement.curve)?.lossDb ?? null,
    log: null,
  };
}

type Shares = BandReach["usable"];

const gradeFor = (shares: Shares, criteria: readonly GradeCriterion[]): Grade | null =>
  criteria.find(
    (wanted) =>
      shares.withoutTuner >= wanted.withoutTuner &&
      shares.withBuiltInTuner >= wanted.withBuiltInTuner &&
      shares.withWideRangeTuner >= wanted.withWideRangeTuner,
  )?.grade ?? null;

/** Shares within reach if all that means "at least" an SWR were within it where that is possible. */
function atTheMost({ curve, limits }: Judgement, usable: Shares, sweptFraction: number): Shares {
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
