import { deploymentRowFinder } from "@feedpoint/answers/asked/deployments";
import { loggedLines } from "@feedpoint/answers/asked/known-lines";
import type { Settings } from "@feedpoint/answers/asked/settings";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import type { TypedWish } from "@feedpoint/answers/asked/wishes";
import { adviceSection } from "@feedpoint/answers/html/advice-section";
import { diffSection } from "@feedpoint/answers/html/diff-section";
import { heardReport, heardSections } from "@feedpoint/answers/html/heard-report";
import { overview } from "@feedpoint/answers/html/overview";
import { closing, collectionReport, diffReport, sweepReport } from "@feedpoint/answers/html/report";
import { type CheckedSweep, sweepSection } from "@feedpoint/answers/html/sweep-section";
import { advisedBy } from "@feedpoint/answers/judged/advising";
import { drawnCheck } from "@feedpoint/answers/judged/checking";
import { gradedAll, gradeReport } from "@feedpoint/answers/judged/grade-report";
import { heardBy } from "@feedpoint/answers/judged/hearing";
import type { GradeReport } from "@feedpoint/answers/judged/report";
import { type AskedOfSeason, missingRows, type Season, seasonFrom } from "@feedpoint/answers/judged/season";
import { checkCsv } from "@feedpoint/answers/text/check";
import { diffCsv } from "@feedpoint/answers/text/diff";
import { gradeCsv } from "@feedpoint/answers/text/grade";
import { heardCsv } from "@feedpoint/answers/text/heard";
import { html, type Markup } from "@feedpoint/answers/text/markup";
import { seasonTables } from "@feedpoint/answers/text/season";
import { wishSentences } from "@feedpoint/answers/text/season-tonight";
import { tryCsv } from "@feedpoint/answers/text/try";
import {
  type AdviseResult,
  criteriaWith,
  type Deployment,
  diff,
  type HeardResult,
  onAirOf,
  onSameTerms,
  type SweepGrade,
} from "@feedpoint/core";
import type { Look } from "../protocol.js";
import { gradesBy } from "./judging.js";
import type { ReadSources } from "./read-sources.js";
import { askedFor } from "./wanted.js";

/** What is judged, and by what. */
export interface Judged extends ReadSources {
  readonly settings: Settings;
  /** What is wanted, as it was typed */
  readonly wanted: string;
}

/** One answer in the forms in which it can be had. */
export interface Answer {
  /** For the page */
  readonly shown: () => readonly Markup[];
  /** A page of its own */
  readonly report: () => string;
  readonly csv: () => string;
  readonly label: string;
  /** What of the question it does not answer, in words; empty where it answers all */
  readonly note: string;
  /** Whose sweeps can be written out clean */
  readonly deployments: readonly Deployment[];
}

const VOICE = "page";
/** A report has no fields to name. */
const SAVED = "saved";

/** What is looked at, judged. @throws UsageError for what cannot be asked */
export function answerTo(look: Look, judged: Judged): Answer {
  switch (look.what) {
    case "check":
      return checked(look, judged);
    case "advise":
      return advised(look, judged);
    case "diff":
      return compared(look, judged);
    case "grade":
      return graded(look, judged);
    case "heard":
      return onAir(judged);
  }
}

function checked({ deployment: at }: { readonly deployment: number }, judged: Judged): Answer {
  const deployment = deploymentAt(at, judged);
  const whole = checkedSweep(deployment, judged, null);
  return {
    shown: () => [sweepSection(whole, 0, VOICE), closing(whole.result)],
    report: () => sweepReport(whole, SAVED),
    csv: () => checkCsv([whole.result]),
    label: deployment.label,
    note: "",
    deployments: [deployment],
  };
}

function checkedSweep(deployment: Deployment, judged: Judged, advised: AdviseResult | null): CheckedSweep {
  const { settings, log } = judged;
  const { places, wishes } = askedFor(judged.wanted, settings);
  // Grading is for what is wanted alone.
  const wished = wishes.length === 0 ? [] : wishSentences(gradesBy(settings, { log, wishes })(deployment).wishes);
  return { ...drawnCheck(settings, deployment, places), log: deploymentRowFinder(log)(deployment), wished, advised };
}

function advised({ deployment: at }: { readonly deployment: number }, judged: Judged): Answer {
  const { settings, wanted } = judged;
  const deployment = deploymentAt(at, judged);
  const { typed, note } = askedFor(wanted, settings);
  const result = advisedBy(settings, deployment, { wishes: typed.length === 0 ? undefined : typed });
  return {
    shown: () => [
      html`<article><header><h1>${deployment.label}</h1></header>${adviceSection(result, VOICE)}</article>`,
      closing(result),
    ],
    report: () => sweepReport(checkedSweep(deployment, judged, result), SAVED),
    csv: () => tryCsv(result),
    label: deployment.label,
    note,
    deployments: [deployment],
  };
}

function compared(look: Look & { readonly what: "diff" }, judged: Judged): Answer {
  const { settings, log } = judged;
  const [before, after] = [deploymentAt(look.before, judged), deploymentAt(look.after, judged)];
  const feedlines = loggedLines(log, { before: [before], after: [after] }, settings.feedline);
  const options = { ...settings, isSamePlane: look.isSamePlane, feedlines };
  const result = diff(before, after, options);
  const terms = onSameTerms(before, after, options);
  return {
    shown: () => [diffSection(result, terms, settings.plan, VOICE), closing(result)],
    report: () => diffReport(result, terms, settings.plan, SAVED),
    csv: () => diffCsv([result]),
    label: `${before.label} and ${after.label}`,
    note: "",
    deployments: [before, after],
  };
}

function graded(look: Look & { readonly what: "grade" }, judged: Judged): Answer {
  const { settings, deployments, log, wanted } = judged;
  const { typed, note } = askedFor(wanted, settings);
  const season = seasonFrom(
    askedOfSeason(look, typed),
    log,
    settings,
    judged.reports.length === 0 ? null : heardOf(judged),
  );
  const sweeps = deployments.map(gradesBy(settings, season));
  const report = reportOn(sweeps, season, judged);
  return {
    shown: () => [
      html`<article>${overview(report, seasonTables(report, season), VOICE)}</article>`,
      ...(report.sweeps.length === 0 ? [] : [closing(report)]),
    ],
    report: () => {
      const whole = deployments.map((deployment, i) => ({
        ...checkedSweep(deployment, judged, null),
        // Each deployment has its grade.
        grade: sweeps[i] as SweepGrade,
      }));
      return collectionReport(whole, report, seasonTables(report, season), SAVED);
    },
    csv: () => gradeCsv(report),
    label: `${deployments.length} sweeps`,
    note,
    deployments,
  };
}

const askedOfSeason = (
  { groupBy, isOverTime }: Look & { readonly what: "grade" },
  typed: readonly TypedWish[],
): AskedOfSeason => ({
  ...(groupBy === "" ? {} : { groupBy }),
  ...(isOverTime ? { overTime: true } : {}),
  ...(typed.length === 0 ? {} : { for: typed }),
});

function reportOn(
  sweeps: readonly SweepGrade[],
  season: Season,
  { settings, unread, deployments }: Judged,
): GradeReport {
  const rowOf = deploymentRowFinder(season.log);
  const withoutRow = deployments.filter((deployment) => rowOf(deployment) === null);
  const files = withoutRow.flatMap(({ parts }) => parts.map(({ source }) => source.file));
  const unreadable = unread.map(({ reason }) => ({ file: "", reason }));
  return gradeReport(gradedAll(sweeps, unreadable), season, {
    settings,
    criteria: criteriaWith(settings.station.criteria ?? {}),
    logged: missingRows(season, files),
  });
}

function onAir(judged: Judged): Answer {
  const result = heardOf(judged);
  return {
    shown: () => heardSections(result, VOICE),
    report: () => heardReport(result, SAVED),
    csv: () => heardCsv(result),
    label: "heard",
    note: "",
    deployments: [],
  };
}

/** @throws UsageError where the log does not say what was up, or the reports leave open whose they are */
function heardOf({ log, reports }: Judged): HeardResult {
  const periods = log === null ? [] : onAirOf(log);
  if (periods.length === 0)
    throw new UsageError(
      "Reception reports need a deployments.csv that says under deployment, up and down what was up when, in UTC.",
    );
  return heardBy(reports, { periods });
}

function deploymentAt(at: number, { deployments }: Judged): Deployment {
  const deployment = deployments[at];
  if (deployment === undefined) throw new UsageError("That deployment is no longer in the list.");
  return deployment;
}
