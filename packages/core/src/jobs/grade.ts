import { type BandAtAntenna, bandAtAntenna } from "../bands/at-antenna.js";
import { dipNear } from "../bands/dip.js";
import { referenceFindings } from "../bands/doubts.js";
import { lossBoundOf } from "../bands/loss-bound.js";
import { checkScope } from "../bands/option-checks.js";
import { type Answering, answeringOn, partsOf } from "../bands/parts.js";
import type { Equipment } from "../bands/power.js";
import { type PointOfPart, reachOf, type UsableShares } from "../bands/reach.js";
import { type ReturnLossPoint, returnLosses } from "../bands/return-losses.js";
import { type Scope, selectBands } from "../bands/scope.js";
import { type BandSummary, isDip } from "../bands/summary.js";
import type { Wish } from "../bands/wish.js";
import { gradeWish, type WishGrade } from "../bands/wish-grade.js";
import type { Piece } from "../curve/pieces.js";
import { isBeyondScale } from "../curve/trace.js";
import type { UsableBand } from "../facts/band-plan/band-plan.js";
import { type Feedline, matchedLossDb } from "../facts/feedline/feedline.js";
import { GRADE_CRITERIA, type Grade, type GradeCriterion } from "../facts/grade-criteria.js";
import { type Limits, limitsWith, type Need } from "../facts/limits.js";
import { demand } from "../input/argument.js";
import { swrFromReflectionMagnitude } from "../reflection/swr.js";
import { asDeployment, type Deployment, deploymentInfo } from "../sweep/deployment.js";
import type { Finding } from "../sweep/finding.js";
import type { Sweep } from "../sweep/sweep.js";
import type { SweepInfo } from "../sweep/sweep-info.js";

/** Whether nothing told of a graded sweep is to be believed before something is settled. */
export const hasProblem = ({ sweep, findings }: Pick<SweepGrade, "sweep" | "findings">): boolean =>
  [...sweep.findings, ...findings].some(({ severity }) => severity === "problem");

/** A band of which a smaller share than this was swept gets no grade (our own choice). */
export const LEAST_SWEPT_FRACTION = 0.9;

const GRADE_POINTS: Readonly<Record<Grade, number>> = { A: 4, B: 3, C: 2, D: 1, F: 0 };
const GRADES_BY_POINTS: readonly Grade[] = ["F", "D", "C", "B", "A"];

/** A dip further from the middle of a band than this is that of another band (our own choice). */
const FARTHEST_BESIDE = 0.08;

/** The grade of a sweep on one band, and the numbers behind it. */
export interface BandGrade {
  readonly band: string;
  /** null where too little of the band was swept, or the instrument's scale ended too low to tell */
  readonly grade: Grade | null;
  /** Least SWR within the swept part; null where nothing was swept, like its frequency */
  readonly bestSwr: number | null;
  readonly bestHz: number | null;
  /** Whether the instrument's scale ended there, so that the SWR is at least this; null where nothing was swept */
  readonly isBestAtLeast: boolean | null;
  /** `bestHz` where it is a dip within the band and not just its edge; else the lowest one beside it, as far as 8 % from its middle; else null */
  readonly dipHz: number | null;
  /** Share of the whole usable band within the limit, swept or not, 0 to 1 */
  readonly withinLimitFraction: number;
  /** Share of the usable band that was swept, 0 to 1 */
  readonly sweptFraction: number;
  /** What the worst swept point needs */
  readonly need: Need;
  /** Greatest SWR that was noted by hand for the band; null where it does not rest on such a reading */
  readonly notedUpToSwr: number | null;
  /** What it rests on, as in {@link BandSummary} */
  readonly restsOn: BandSummary["restsOn"];
}

/** The grades of a sweep. A season is a list of these: see {@link groupGrades}, {@link driftsOf} and {@link rankFor}. */
export interface SweepGrade {
  readonly sweep: SweepInfo;
  /** Mean of the graded bands' grades, rounded to the nearest (a half to the better); null where no band has one */
  readonly grade: Grade | null;
  /** Of those asked for the ones where something may be sent, in the order of the plan */
  readonly bands: readonly BandGrade[];
  /** The most that can be lost one way on the line, by the sweep alone; null where it bounds nothing */
  readonly lossBoundDb: number | null;
  /** Where the sweep says so; at higher frequencies more may be lost */
  readonly lossBoundHz: number | null;
  /** What came back, on frequencies that are the same for all: two sweeps that differ far from any match differ by loss */
  readonly returnLosses: readonly ReturnLossPoint[];
  /** What the line that was stated loses one way at 10 MHz with a matched end, dB; null where none was */
  readonly lineLossAt10MHzDb: number | null;
  /** What makes its numbers others than they seem: another reference than the radio's */
  readonly findings: readonly Finding[];
  /** Dip and share of each band at the antenna's end of the line; null where that was not asked for, or no line is known */
  readonly atAntenna: readonly BandAtAntenna[] | null;
  /** What it does for what is wanted, in that order; empty where nothing was asked for */
  readonly wishes: readonly WishGrade[];
  /** The deployment log's row for this sweep: null as {@link gradeSweep} gives it, for the caller to fill in */
  readonly log: Readonly<Record<string, string>> | null;
}

/** What a sweep is graded against. */
export interface GradeOptions extends Scope {
  /** Impedance that the radio is made for, Ω; 50 where it is not stated */
  readonly radioOhms?: number | null;
  /** What is wanted beside the bands; nothing where absent */
  readonly wishes?: readonly Wish[];
  /** Radio, tuner and antenna, and the line, for what is wanted; not known where absent */
  readonly equipment?: Equipment;
  readonly feedline?: Feedline | null;
  /** Whether dips and shares are told at the antenna's end of the line as well; they are not where absent */
  readonly withAntennaEnd?: boolean;
  /** What each grade asks for, the best first; {@link GRADE_CRITERIA} where absent */
  readonly criteria?: readonly GradeCriterion[];
}

/**
 * Grades a sweep, or all that is known of a deployment, on every band, and over all, by what the operator needs to transmit there.
 *
 * @throws TypeError for an argument that is not what it must be, which it names
 * @throws RangeError for a band or a licence class that the plan does not know
 * @example
 * ```ts
 * import { gradeSweep, planById, readSweeps } from "@feedpoint/core";
 *
 * const [sweep] = readSweeps("Frequency (MHz),SWR\n6.9,2.4\n7.0,2.2\n7.1,1.7\n7.2,1.9\n7.3,2.3\n");
 * const { grade, bands } = gradeSweep(sweep, { plan: planById("itu-r1"), bands: ["40m"] });
 * grade; // → "B"
 * bands[0]?.need; // → "built-in-tuner"
 * ```
 */
export function gradeSweep(given: Sweep | Deployment, options: GradeOptions): SweepGrade {
  const deployment = asDeployment(given);
  checkScope(options);
  const { criteria = GRADE_CRITERIA } = options;
  demand(Array.isArray(criteria), "criteria", "a list of criteria, as criteriaWith gives one", criteria);
  const limits = limitsWith(options.limits);
  const parts = partsOf(deployment, limits, options.plan);
  const { wishes = [], equipment = {}, feedline = null } = options;
  const bands = selectBands(options).map((band): BandGrade => {
    const answering = answeringOn(parts, band.pieces);
    const { usable, sweptFraction, extremes, pieces, need } = reachOf(answering, band);
    const best = extremes?.best ?? null;
    const gradeOf = (shares: UsableShares) => gradeFor(shares, criteria);
    const grade = gradeOf(usable);
    const isSure = grade === gradeOf(atTheMost(answering, limits, usable, sweptFraction));
    return {
      band: band.band,
      grade: sweptFraction >= LEAST_SWEPT_FRACTION && isSure ? grade : null,
      bestSwr: best && swrFromReflectionMagnitude(best.reflectionMagnitude),
      bestHz: best?.frequencyHz ?? null,
      isBestAtLeast: best && isBeyondScale(best.part.analysis.curve, best.reflectionMagnitude),
      dipHz: best?.part.knows === "curve" ? dipOf(best, pieces, band) : null,
      withinLimitFraction: usable.withoutTuner,
      sweptFraction,
      need,
      notedUpToSwr:
        best?.part.knows === "stretch" ? swrFromReflectionMagnitude(extremes?.worst.reflectionMagnitude ?? 1) : null,
      restsOn: best?.part.knows ?? null,
    };
  });
  const curves = parts.map(({ analysis }) => analysis.curve);
  const bound = lossBoundOf(curves);
  return {
    sweep: deploymentInfo(deployment),
    grade: overall(bands),
    bands,
    lossBoundDb: bound?.lossDb ?? null,
    lossBoundHz: bound?.frequencyHz ?? null,
    returnLosses: returnLosses(curves),
    lineLossAt10MHzDb: feedline && matchedLossDb(feedline, 10e6),
    findings: referenceFindings(deployment.parts, options.radioOhms ?? undefined),
    atAntenna:
      options.withAntennaEnd === true && feedline !== null
        ? selectBands(options).flatMap((band) => bandAtAntenna(parts, band, feedline, limits.swr) ?? [])
        : null,
    wishes: wishes.map((wish) => gradeWish(parts, wish, options, limits, { equipment, feedline })),
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
function atTheMost(
  answering: readonly Answering[],
  limits: Limits,
  usable: UsableShares,
  sweptFraction: number,
): UsableShares {
  const ceilings = answering.flatMap(({ part }) => {
    const { sweep } = part.analysis.curve;
    return sweep.kind === "scalar" && sweep.ceilingMagnitude !== null ? [sweep.ceilingMagnitude] : [];
  });
  if (ceilings.length === 0) return usable;
  const swr = swrFromReflectionMagnitude(Math.min(...ceilings));
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

/** Where the dip of a band lies: within it, or beside it, where it is the same one as in other sweeps. */
function dipOf(best: PointOfPart, pieces: readonly Piece[], { lowHz, highHz }: UsableBand): number | null {
  const { knows, analysis } = best.part;
  if (knows === "stretch") return null;
  if (isDip({ best, pieces })) return best.frequencyHz;
  const middleHz = (lowHz + highHz) / 2;
  const besideHz = knows === "curve" ? (dipNear(analysis, middleHz).dip?.frequencyHz ?? null) : null;
  return besideHz !== null && Math.abs(besideHz / middleHz - 1) <= FARTHEST_BESIDE ? besideHz : null;
}
