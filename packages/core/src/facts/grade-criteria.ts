/** How well a deployment serves a band, A the best. */
export type Grade = "A" | "B" | "C" | "D" | "F";

/** Least shares of a band that a grade asks for, by what is needed to transmit there. */
export interface GradeCriterion {
  readonly grade: Grade;
  /** Least share of the band within the limit, 0 to 1 */
  readonly withoutTuner: number;
  /** Least share that a built-in tuner, or none, brings within reach */
  readonly withBuiltInTuner: number;
  /** Least share that a wide-range tuner, or less, brings within reach */
  readonly withWideRangeTuner: number;
  /** For a person, with the default limits */
  readonly meaning: string;
}

/** Shares of a band that a grade asks for, 0 to 1; those that are left out stay as they are. */
export type GradeShares = Partial<Pick<GradeCriterion, "withoutTuner" | "withBuiltInTuner" | "withWideRangeTuner">>;

/**
 * The criteria with the operator's own shares in their place, and with a meaning that states them.
 *
 * @param own by grade; what is left out stays as in {@link GRADE_CRITERIA}
 * @example
 * ```ts
 * import { criteriaWith } from "@feedpoint/core";
 *
 * const [a] = criteriaWith({ A: { withoutTuner: 0.95 } });
 * a?.withoutTuner; // → 0.95
 * ```
 */
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
