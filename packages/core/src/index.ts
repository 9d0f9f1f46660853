/** The public surface of the library, by name, and nothing else. */
export { type AntennaEnd, antennaEndAt, sweepAtAnalyser, sweepAtAntenna } from "./bands/antenna-end.js";
export type { BandAtAntenna } from "./bands/at-antenna.js";
export type { BandFeedline, LossRange } from "./bands/band-feedline.js";
export type { BandResult, SegmentResult, Verdict } from "./bands/band-result.js";
export type { DialResult } from "./bands/dials.js";
export type { Exposure, ExposureByRule, People } from "./bands/exposure.js";
export type { PartInfo } from "./bands/known.js";
export { type LossBound, lossBound } from "./bands/loss-bound.js";
export type { Point } from "./bands/point.js";
export { type Equipment, type PowerLimiter, type PowerResult, reducedPower } from "./bands/power.js";
export { forRadio } from "./bands/radio-reference.js";
export type { TunerSpans, UsableShares } from "./bands/reach.js";
export type { ReturnLossPoint } from "./bands/return-losses.js";
export { DEFAULT_SCATTER } from "./bands/scatter.js";
export { type PlanInfo, planInfo, type Scope } from "./bands/scope.js";
export { type BandSummary, isDip } from "./bands/summary.js";
export type { WattsPath } from "./bands/watts-path.js";
export { type Wish, wishAtActivity, wishBetween, wishesOf, wishInMode } from "./bands/wish.js";
export type { WishGrade } from "./bands/wish-grade.js";
export {
  type Curve,
  curveOf,
  type KnownOfSweep,
  reflectionAt,
  reflectionMagnitudeAt,
  type ScalarCurve,
  type VectorCurve,
} from "./curve/curve.js";
export type { Piece, Span } from "./curve/pieces.js";
export type { Stretch } from "./curve/samples/stretches.js";
export {
  type CurvePoint,
  extremesBetween,
  type LimitSpan,
  spansWithin,
  type Trace,
  traceOf,
  traceOfSweep,
} from "./curve/trace.js";
export type { BandUncertainty, Interval } from "./curve/uncertainty/band-uncertainty.js";
export { type Instrument, instrumentError } from "./curve/uncertainty/instrument.js";
export {
  ACTIVITIES,
  ACTIVITY_SOURCES,
  type Activity,
  type ActivityFilter,
  type ActivityKind,
  type ActivityRegion,
  activitiesFor,
} from "./facts/activity/activity.js";
export { dialOf } from "./facts/activity/activity-modes.js";
export type { Dial } from "./facts/activity/dial.js";
export type {
  BandPlan,
  Emission,
  Grant,
  PlanBand,
  PlanSegment,
  PlanSource,
  PowerLimit,
  Region,
  UsableBand,
} from "./facts/band-plan/band-plan.js";
export { type PlanCertainty, planCertainty } from "./facts/band-plan/certainty.js";
export { COMMON_PLAN_ID, type PlanId, planById, planIdNamed, planIds } from "./facts/band-plan/plans.js";
export {
  emissionsIn,
  greatestPowersIn,
  isPowerUnconfirmed,
  privilegeFor,
  type Signal,
  type Transmission,
  usableBands,
} from "./facts/band-plan/privileges.js";
export { CAUTIONS, cautionsFor, HIGH_VOLTAGE_CAUTIONS } from "./facts/cautions.js";
export { bearingDeg, distanceKm, type Place } from "./facts/earth/great-circle.js";
export { type LocatorArea, locatorArea } from "./facts/earth/locator.js";
export {
  type ExposureDistance,
  exposureDistance,
  greatestPowerAt,
  type RadiatedPower,
  type Radiator,
} from "./facts/exposure/exposure.js";
export {
  EXPOSURE_RULES,
  type ExposureLimits,
  type ExposureRule,
  type ExposureRuleId,
  exposureLimits,
  type Fields,
  isExempt,
} from "./facts/exposure/exposure-rules.js";
export {
  type Feedline,
  type FeedlineDetails,
  feedlineFrom,
  matchedLossDb,
  type StatedLoss,
  sectionAt,
} from "./facts/feedline/feedline.js";
export {
  FEEDLINE_KINDS,
  type FeedlineKind,
  feedlineKindById,
  type LossModel,
} from "./facts/feedline/feedline-kinds.js";
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
} from "./facts/feedline/line.js";
export { FIXED_PARTS, type FixedParts, type FixedWires, type ToldOfFixed } from "./facts/fixed-parts.js";
export {
  criteriaWith,
  GRADE_CRITERIA,
  type Grade,
  type GradeCriterion,
  type GradeShares,
} from "./facts/grade-criteria.js";
export { DEFAULT_LIMITS, type Limits, type Need, needFor } from "./facts/limits.js";
export { greatestBandwidth, leastMagnitude } from "./facts/matching/bode-fano.js";
export {
  type LNetwork,
  lNetworks,
  quarterWaveBandwidth,
  quarterWaveOhms,
  type SeriesSection,
  type StubMatch,
  seriesSections,
  stubsAcross,
  stubsInSeries,
} from "./facts/matching/closed-forms.js";
export {
  type Capacitor,
  type Coil,
  type LinePart,
  type MatchingPart,
  type Placing,
  type Stub,
  type Transformer,
  USUAL_CAPACITOR_Q,
  USUAL_COIL_Q,
} from "./facts/matching/matching-part.js";
export type { PartStress } from "./facts/matching/part-stress.js";
export type { StatedParts } from "./facts/matching/parts-at-hand.js";
export { MODE_NAMES, type ModeName } from "./facts/mode-names.js";
export { type Mode, type ModeSettings, modeOf, occupiedBy } from "./facts/modes.js";
export {
  type AntennaDetails,
  type PowerByMode,
  type PowerReduction,
  RADIO_OHMS,
  type Radio,
  type Station,
  type Tuner,
} from "./facts/station/station.js";
export type { FileContent } from "./input/file-content.js";
export { ReadError, type ReadErrorCode, type ReadProblem } from "./input/read-error.js";
export type { Advice, AdvisedPart, PartPlace, WishOutcome } from "./jobs/advise/advice.js";
export { partText } from "./jobs/advise/advice-words.js";
export { advise } from "./jobs/advise/advise.js";
export { type AdviseOptions, LEAST_ARRIVING } from "./jobs/advise/advise-options.js";
export type { AdviceCurve, AdviseResult, AdviseVerdict, NotForetold, WishNow } from "./jobs/advise/advise-result.js";
export type { CandidateKind } from "./jobs/advise/candidate.js";
export type { Experiment, ExperimentCode } from "./jobs/advise/experiment.js";
export type { MatchLimit } from "./jobs/advise/match-limit.js";
export { type CheckOptions, type CheckResult, check } from "./jobs/check.js";
export type { BandDiff, Change } from "./jobs/diff/band-diff.js";
export { DEFAULT_THRESHOLDS, type Thresholds } from "./jobs/diff/band-signs.js";
export type { Cause, CauseCode } from "./jobs/diff/cause.js";
export { type DiffOptions, type DiffResult, diff } from "./jobs/diff/diff.js";
export { headlineSentences } from "./jobs/diff/headline.js";
export type { KnownLines } from "./jobs/diff/known-lines.js";
export { onSameTerms, type SameTerms, type TermsOptions } from "./jobs/diff/same-terms.js";
export type { Given, Group } from "./jobs/diff/sides.js";
export type { DiffVerdict } from "./jobs/diff/verdict.js";
export {
  type BandGrade,
  type GradeOptions,
  gradeSweep,
  hasProblem,
  LEAST_SWEPT_FRACTION,
  type SweepGrade,
} from "./jobs/grade.js";
export type { HeardComparison, HeardVerdict, SectorDifference } from "./jobs/heard/compare.js";
export { type HeardOptions, heard } from "./jobs/heard/heard.js";
export type { HeardOnBand, HeardResult } from "./jobs/heard/heard-result.js";
export { type OnAir, onAirOf } from "./jobs/heard/on-air.js";
export type { HeardOfOne } from "./jobs/heard/only-one.js";
export { type HeardInSector, type HeardWhere, type Listener, SECTORS, type Sector } from "./jobs/heard/where.js";
export {
  type LineOptions,
  type LineResult,
  type LineVerdict,
  type MeasuredLoss,
  measureLine,
} from "./jobs/line/measure-line.js";
export { dateOf, timeOf } from "./jobs/season/dates.js";
export {
  type DeploymentLog,
  logFindings,
  logNotRead,
  readDeploymentLog,
  rowFinder,
} from "./jobs/season/deployment-log.js";
export { type Drift, driftFindings, driftsOf, FEWEST_FOR_JUMPS } from "./jobs/season/drift.js";
export {
  type ChangeOverTime,
  type Course,
  changeFindings,
  changesOverTime,
  eventsOf,
  type LoggedEvent,
} from "./jobs/season/events.js";
export { type FactorEffect, factorEffects } from "./jobs/season/factors.js";
export { type BandGroups, type GroupOnBand, groupFindings, groupGrades, type Spread } from "./jobs/season/groups.js";
export { type Agreement, type HeardBeside, heardBeside } from "./jobs/season/heard-beside.js";
export type { LogRow } from "./jobs/season/log-row.js";
export { type LossHistory, lossFindings, lossOverTime } from "./jobs/season/loss.js";
export { type LossChange, lossChange } from "./jobs/season/loss-change.js";
export type { Measure } from "./jobs/season/measures.js";
export { type Ranked, rankFor } from "./jobs/season/ranking.js";
export { type ForTonight, rankForTonight, type Standing } from "./jobs/season/tonight.js";
export { type TrimmedBand, type TrimOptions, type TrimResult, trim } from "./jobs/trim.js";
export type { Column } from "./numbers/column.js";
export type { Complex } from "./numbers/complex.js";
export type { ColumnRole, Quantity } from "./reading/options/column-role.js";
export type { DecimalMark, Delimiter, ReadOptions } from "./reading/options/read-options.js";
export type { FrequencyUnit } from "./reading/options/units.js";
export type { LeftOutReason, LineLedger, LineLeftOut } from "./reading/points/line-ledger.js";
export { parseColumnRoles } from "./reading/quantities/column-names.js";
export { lineLedger, readCompanions, readSweeps } from "./reading/read-sweeps.js";
export type { LeftOut, ReportLeftOutReason } from "./reading/reports/left-out.js";
export { type ReadReportsOptions, readReports } from "./reading/reports/read-reports.js";
export type { ReadReports, ReceptionReport } from "./reading/reports/report.js";
export {
  admittanceFromImpedance,
  changeReference,
  impedanceFromReflection,
  reflectionFromAdmittance,
  reflectionFromImpedance,
} from "./reflection/impedance.js";
export {
  mismatchLossDb,
  reflectedPowerFraction,
  reflectionMagnitudeFromReturnLoss,
  reflectionMagnitudeFromSwr,
  returnLossDb,
  swrFromReflectionMagnitude,
} from "./reflection/swr.js";
export { type Deployment, deploymentOf } from "./sweep/deployment.js";
export { type Finding, type FindingPlace, placed, type Severity } from "./sweep/finding.js";
export { FINDING_CODES, type FindingCode, type FindingParams } from "./sweep/finding-words/words.js";
export type { Reading } from "./sweep/reading.js";
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
} from "./sweep/sweep.js";
export { type SweepInfo, sweepInfo } from "./sweep/sweep-info.js";
export { delimitedText, touchstoneText } from "./writing/write-sweep.js";
