/** The public surface of the library, by name, and nothing else. */
export {
  ACTIVITIES,
  ACTIVITY_SOURCES,
  type Activity,
  type ActivityFilter,
  type ActivityKind,
  type ActivityRegion,
  activitiesFor,
} from "./band-plan/activity.js";
export type {
  BandPlan,
  Emission,
  Grant,
  JudgedBand,
  PlanBand,
  PlanSegment,
  PlanSource,
  PowerLimit,
  Region,
} from "./band-plan/band-plan.js";
export { type PlanCertainty, planCertainty } from "./band-plan/certainty.js";
export { COMMON_PLAN_ID, planById, planIds } from "./band-plan/plans.js";
export {
  emissionsIn,
  greatestPowerIn,
  judgedBands,
  privilegeFor,
  type Signal,
  type Transmission,
} from "./band-plan/privileges.js";
export { CAUTIONS } from "./cautions.js";
export {
  type BandResult,
  type CheckOptions,
  type CheckResult,
  check,
  checkJudged,
  type SegmentResult,
  type Verdict,
} from "./check.js";
export type { Column } from "./column.js";
export type { Complex } from "./complex.js";
export {
  type Curve,
  curveOf,
  type KnownOfSweep,
  reflectionAt,
  reflectionMagnitudeAt,
  type ScalarCurve,
  type VectorCurve,
} from "./curve/curve.js";
export type { Stretch } from "./curve/stretches.js";
export { type CurvePoint, extremesBetween, type LimitSpan, spansWithin, type Trace, traceOf } from "./curve/trace.js";
export { type BandDiff, type Change, DEFAULT_THRESHOLDS, type Thresholds } from "./diff/band-diff.js";
export type { Cause, CauseCode } from "./diff/cause.js";
export { type Comparison, compare, type DiffOptions, type DiffResult, diff } from "./diff/diff.js";
export { headlineSentences } from "./diff/headline.js";
export type { DiffVerdict } from "./diff/verdict.js";
export { type AntennaEnd, antennaEndAt, sweepAtAnalyser, sweepAtAntenna } from "./feedline/antenna-end.js";
export type { BandFeedline } from "./feedline/band-feedline.js";
export {
  type Feedline,
  type FeedlineDetails,
  feedlineFrom,
  matchedLossDb,
  type StatedLoss,
  sectionAt,
} from "./feedline/feedline.js";
export { FEEDLINE_KINDS, type FeedlineKind, feedlineKindById, type LossModel } from "./feedline/feedline-kinds.js";
export {
  deliveredFraction,
  greatestStress,
  type LineSection,
  type LineStress,
  magnitudeAtLoad,
  reflectionAtInput,
  reflectionAtLoad,
  throughLine,
  totalLossDb,
} from "./feedline/line.js";
export {
  type LineOptions,
  type LineResult,
  type LineVerdict,
  type MeasuredLoss,
  measureLine,
} from "./feedline/measure-line.js";
export type { Finding, Severity } from "./finding.js";
export { FINDING_CODES, type FindingCode } from "./finding-codes.js";
export {
  type BandGrade,
  criteriaWith,
  GRADE_CRITERIA,
  type Grade,
  type GradeCriterion,
  type GradeOptions,
  type GradeShares,
  gradeJudged,
  gradeSweep,
  LEAST_SWEPT_FRACTION,
  type SweepGrade,
} from "./grade.js";
export { type JudgingOptions, type PlanInfo, planInfo } from "./judging.js";
export { DEFAULT_LIMITS, type Limits, type Need, needFor } from "./limits.js";
export { lookUp } from "./look-up.js";
export { type LossBound, lossBound } from "./loss-bound.js";
export { nearestName, suggestion } from "./nearest.js";
export type { Piece, Span } from "./pieces.js";
export { printableText } from "./printable.js";
export { ReadError, type ReadErrorCode, type ReadProblem } from "./read-error.js";
export { COLUMN_NAMES, type ColumnRole, parseColumnRoles, type Quantity } from "./reading/columns.js";
export type { DecimalMark, Delimiter, FrequencyUnit, ReadOptions } from "./reading/options.js";
export { readCompanions, readSweeps } from "./reading/read-sweeps.js";
export {
  admittanceFromImpedance,
  changeReference,
  impedanceFromReflection,
  mismatchLossDb,
  reflectedPowerFraction,
  reflectionFromAdmittance,
  reflectionFromImpedance,
  reflectionMagnitudeFromReturnLoss,
  reflectionMagnitudeFromSwr,
  returnLossDb,
  swrFromReflectionMagnitude,
} from "./reflection.js";
export { dateOf, timeOf } from "./season/dates.js";
export {
  type DeploymentLog,
  LOG_FILE,
  type LogRow,
  logFindings,
  readDeploymentLog,
  rowFinder,
} from "./season/deployment-log.js";
export { type Drift, driftFindings, driftsOf, FEWEST_FOR_JUMPS } from "./season/drift.js";
export { type BandGroups, type GroupOnBand, groupGrades, type Spread } from "./season/groups.js";
export { type Ranked, rankFor } from "./season/ranking.js";
export { dialOf } from "./station/activity-modes.js";
export type { Dial, DialResult } from "./station/dials.js";
export { MODE_NAMES, type Mode, type ModeName, type ModeSettings, modeOf, occupiedBy } from "./station/modes.js";
export { type Equipment, type PowerLimiter, type PowerResult, reducedPower } from "./station/power.js";
export type { AntennaDetails, PowerReduction, Radio, Station, Tuner } from "./station/station.js";
export { type BandSummary, isDip, type Judgement, judge, type Point } from "./summary.js";
export {
  referredTo,
  type ScalarSweep,
  type Sweep,
  type SweepDetails,
  type SweepSource,
  sampleImpedance,
  sampleReflection,
  scalarSweep,
  type VectorSweep,
  vectorSweep,
  withReference,
} from "./sweep.js";
export { type SweepInfo, sweepInfo } from "./sweep-info.js";
export { type TrimmedBand, type TrimOptions, type TrimResult, trim } from "./trim.js";
export type { BandUncertainty, Interval } from "./uncertainty/band-uncertainty.js";
export { type Instrument, instrumentError } from "./uncertainty/instrument.js";
export { delimitedText, touchstoneText } from "./writing/write-sweep.js";
