import { deploymentRowFinder } from "@feedpoint/answers/asked/deployments";
import { loggedLines } from "@feedpoint/answers/asked/known-lines";
import type { Settings } from "@feedpoint/answers/asked/settings";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { wishesFrom } from "@feedpoint/answers/asked/wishes";
import { adviceSection } from "@feedpoint/answers/html/advice-section";
import { diffSection } from "@feedpoint/answers/html/diff-section";
import { overview } from "@feedpoint/answers/html/overview";
import { closing, collectionReport, diffReport, sweepReport } from "@feedpoint/answers/html/report";
import { type CheckedSweep, sweepSection } from "@feedpoint/answers/html/sweep-section";
import { advisedBy } from "@feedpoint/answers/judged/advising";
import { drawnCheck } from "@feedpoint/answers/judged/checking";
import { gradedAll, gradeReport } from "@feedpoint/answers/judged/grade-report";
import type { GradeReport } from "@feedpoint/answers/judged/report";
import { missingRows, type Season, seasonFrom } from "@feedpoint/answers/judged/season";
import { checkCsv } from "@feedpoint/answers/text/check";
import { diffCsv } from "@feedpoint/answers/text/diff";
import { gradeCsv } from "@feedpoint/answers/text/grade";
import { html, type Markup } from "@feedpoint/answers/text/markup";
import { seasonTables } from "@feedpoint/answers/text/season";
import { tryCsv } from "@feedpoint/answers/text/try";
import { criteriaWith, type Deployment, diff, onSameTerms, type SweepGrade } from "@feedpoint/core";
import type { Look } from "../protocol.js";
import { gradesBy } from "./judging.js";
import type { ReadSources } from "./read-sources.js";
import { wantedFrom } from "./wanted.js";

/** What is judged, and by what. */
export interface Judged extends Pick<ReadSources, "deployments" | "log" | "unread"> {
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
  /** Whose sweeps can be written out clean */
  readonly deployments: readonly Deployment[];
}

const VOICE = "page";

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
  }
}

function checked({ deployment: at }: { readonly deployment: number }, judged: Judged): Answer {
  const { settings, wanted, log } = judged;
  const deployment = deploymentAt(at, judged);
  const { places, wishes } = wantedFrom(wanted);
  // A wish that means nothing is told here as it is everywhere else.
  wishesFrom(wishes, settings);
  const whole: CheckedSweep = {
    ...drawnCheck(settings, deployment, places),
    log: deploymentRowFinder(log)(deployment),
    advised: null,
  };
  return {
    shown: () => [sweepSection(whole, 0, VOICE), closing(whole.result)],
    report: () => sweepReport(whole, VOICE),
    csv: () => checkCsv([whole.result]),
    label: deployment.label,
    deployments: [deployment],
  };
}

function advised({ deployment: at }: { readonly deployment: number }, judged: Judged): Answer {
  const { settings, wanted, log } = judged;
  const deployment = deploymentAt(at, judged);
  const { wishes, places } = wantedFrom(wanted);
  const result = advisedBy(settings, deployment, { wishes: wishes.length === 0 ? undefined : wishes });
  const whole = (): CheckedSweep => ({
    ...drawnCheck(settings, deployment, places),
    log: deploymentRowFinder(log)(deployment),
    advised: result,
  });
  return {
    shown: () => [
      html`<article><p class="label">${deployment.label}</p>${adviceSection(result, VOICE)}</article>`,
      closing(result),
    ],
    report: () => sweepReport(whole(), VOICE),
    csv: () => tryCsv(result),
    label: deployment.label,
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
    report: () => diffReport(result, terms, settings.plan, VOICE),
    csv: () => diffCsv([result]),
    label: `${before.label} and ${after.label}`,
    deployments: [before, after],
  };
}

function graded(look: Look & { readonly what: "grade" }, judged: Judged): Answer {
  const { settings, deployments, wanted } = judged;
  const season = seasonAsked(look, judged);
  const { places } = wantedFrom(wanted);
  const gradeOne = gradesBy(settings, season);
  const sweeps = deployments.map(gradeOne);
  const report = reportOn(sweeps, season, judged);
  return {
    shown: () => [
      html`<article>${overview(report, seasonTables(report, season), VOICE)}</article>`,
      ...(report.sweeps.length === 0 ? [] : [closing(report)]),
    ],
    report: () => {
      const whole = deployments.map((deployment, i) => {
        // Each deployment has its grade.
        const grade = sweeps[i] as SweepGrade;
        return { ...drawnCheck(settings, deployment, places), log: grade.log, grade, advised: null };
      });
      return collectionReport(whole, report, seasonTables(report, season), VOICE);
    },
    csv: () => gradeCsv(report),
    label: `${deployments.length} sweeps`,
    deployments,
  };
}

function seasonAsked({ best, groupBy, isOverTime }: Look & { readonly what: "grade" }, judged: Judged): Season {
  const { settings, log, wanted } = judged;
  const { wishes } = wantedFrom(wanted);
  return seasonFrom(
    {
      ...(best === "" ? {} : { best }),
      ...(groupBy === "" ? {} : { groupBy }),
      ...(isOverTime ? { overTime: true as const } : {}),
      ...(wishes.length === 0 ? {} : { for: wishes }),
    },
    log,
    settings,
  );
}

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

function deploymentAt(at: number, { deployments }: Judged): Deployment {
  const deployment = deployments[at];
  if (deployment === undefined) throw new UsageError("That deployment is no longer in the list.");
  return deployment;
}
