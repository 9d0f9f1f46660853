import {
  type BandPlan,
  changesOverTime,
  type DeploymentLog,
  driftsOf,
  eventsOf,
  type Finding,
  factorEffects,
  groupGrades,
  type HeardResult,
  heardBeside,
  type LoggedEvent,
  logFindings,
  lossOverTime,
  rankFor,
  rankForTonight,
  type SweepGrade,
  type Wish,
} from "@feedpoint/core";
import { suggestion } from "@feedpoint/core/for-command";
import { bandName, type ChosenPlan } from "../asked/find-plan.js";
import { logColumn } from "../asked/log-column.js";
import type { Settings } from "../asked/settings.js";
import { UsageError } from "../asked/usage-error.js";
import { type TypedWish, wishesFrom } from "../asked/wishes.js";
import { type Compare, compareBy, mustBeGraded } from "./order.js";
import type { GradeReport } from "./report.js";

/** What was asked for over all sweeps, with every name checked before the first one is graded. */
export interface Season {
  readonly log: DeploymentLog | null;
  /** Column of the log to group by; null: not asked for, as with all below */
  readonly groupBy: string | null;
  /** Whose column tells deployments apart; null there: all are of one */
  readonly overTime: {
    readonly column: string | null;
    readonly reference: string | null;
    readonly events: readonly LoggedEvent[];
  } | null;
  /** Columns whose effects are told together; empty where that was not asked for */
  readonly factors: readonly string[];
  /** Band to rank for */
  readonly best: string | null;
  /** What is wanted tonight; empty where nothing was asked for */
  readonly wishes: readonly Wish[];
  readonly order: Compare | null;
  /** What was heard of the deployments; null where no reports were given */
  readonly heard: HeardResult | null;
}

/** Sweeps that the log has no row for, and dates that it does not tell, where there is a log. */
export const missingRows = ({ log }: Season, files: readonly string[]): readonly Finding[] =>
  log === null ? [] : logFindings(log, files).filter(({ code }) => code !== "log-row-unmatched");

/** Rows that no file goes by, where there is a log. */
export const unmatchedRows = ({ log }: Season, files: readonly string[]): readonly Finding[] =>
  log === null ? [] : logFindings(log, files).filter(({ code }) => code === "log-row-unmatched");

/** What all sweeps together tell; each empty where it was not asked for. */
export type SeasonResult = Pick<
  GradeReport,
  "groups" | "drifts" | "ranking" | "losses" | "changes" | "factors" | "tonight" | "onAir"
>;

export function seasonResult(
  sweeps: readonly SweepGrade[],
  { log, groupBy, overTime, best, wishes, factors, heard }: Season,
): SeasonResult {
  if (overTime !== null) mustBeAmong(sweeps, overTime.reference);
  const changes = overTime === null ? [] : changesOverTime(sweeps, overTime.column, overTime.events);
  return {
    groups: groupBy === null ? [] : groupGrades(sweeps, groupBy),
    drifts: overTime === null ? [] : driftsOf(sweeps, overTime.column, changes),
    ranking: best === null ? [] : rankFor(sweeps, best),
    losses: overTime === null ? [] : lossOverTime(sweeps, overTime.column, overTime.reference),
    changes,
    factors: factors.length === 0 ? [] : factorEffects(sweeps, factors),
    tonight: wishes.length === 0 ? [] : rankForTonight(sweeps),
    onAir: heard === null || log === null ? [] : heardBeside(sweeps, heard.comparisons, log),
  };
}

/** What is asked over many sweeps, as it is typed. */
export interface AskedOfSeason {
  readonly groupBy?: string;
  /** A column that tells deployments apart; true: all are of one */
  readonly overTime?: string | true;
  readonly against?: string;
  readonly events?: string;
  readonly factors?: readonly string[];
  readonly best?: string;
  readonly for?: readonly TypedWish[];
  readonly sort?: string;
}

/** @throws UsageError for a column that the log does not have, a band that is not judged, or an order that is none */
export function seasonFrom(
  asked: AskedOfSeason,
  log: DeploymentLog | null,
  settings: ChosenPlan & Pick<Settings, "station">,
  heard: HeardResult | null = null,
): Season {
  const { plan, bands } = settings;
  const { groupBy, overTime, best, sort } = asked;
  if (overTime === undefined && (asked.against !== undefined || asked.events !== undefined))
    throw new UsageError("--against and --events go with --over-time.");
  return {
    log,
    groupBy: groupBy === undefined ? null : logColumn(log, groupBy),
    overTime:
      overTime === undefined
        ? null
        : {
            column: overTime === true ? null : logColumn(log, overTime),
            reference: asked.against ?? null,
            events: loggedEvents(log, asked.events),
          },
    factors: (asked.factors ?? []).map((name) => logColumn(log, name)),
    best: best === undefined ? null : usableBand(best, plan, bands),
    wishes: asked.for === undefined ? [] : wishesFrom(asked.for, settings),
    order: sort === undefined ? null : compareBy(sort, plan, bands),
    heard,
  };
}

/** @throws UsageError for a reference that no sweep is called */
function mustBeAmong(sweeps: readonly SweepGrade[], reference: string | null): void {
  const labels = sweeps.map(({ sweep }) => sweep.label);
  if (reference === null || labels.includes(reference)) return;
  throw new UsageError(`--against ${reference}: no sweep here is called that.${suggestion(reference, labels)}`);
}

const EVENT = "event";

/** What the log says happened, under the column that was named, or the usual one where it has that. */
function loggedEvents(log: DeploymentLog | null, named: string | undefined): readonly LoggedEvent[] {
  const usual = log?.columns.find((name) => name.toLowerCase() === EVENT);
  const column = named === undefined ? usual : logColumn(log, named);
  return column === undefined || log === null ? [] : eventsOf(log.rows, column);
}

function usableBand(name: string, plan: BandPlan, bands: ChosenPlan["bands"]): string {
  const band = bandName(name, plan);
  mustBeGraded(band, `--best ${name}`, bands);
  return band;
}
