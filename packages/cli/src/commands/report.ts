import { statedLines } from "@feedpoint/answers/asked/known-lines";
import type { Problem } from "@feedpoint/answers/asked/usage-error";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { advisedBy } from "@feedpoint/answers/judged/advising";
import { drawnCheck } from "@feedpoint/answers/judged/checking";
import { gradedAll, gradeReport } from "@feedpoint/answers/judged/grade-report";
import { graderBy } from "@feedpoint/answers/judged/grading";
import { missingRows, seasonFrom } from "@feedpoint/answers/judged/season";
import { printable } from "@feedpoint/answers/text/escape";
import { seasonTables } from "@feedpoint/answers/text/season";
import { wishSentences } from "@feedpoint/answers/text/season-tonight";
import { criteriaWith, diff, onSameTerms } from "@feedpoint/core";
import { Command } from "commander";
import { EXIT } from "../exit.js";
import { writeOutput } from "../files.js";
import { askedAdvice } from "../options/asked-advice.js";
import { withOptions } from "../options/declare.js";
import { findLogs, readLog } from "../options/log-file.js";
import type { RawOptions } from "../options/options.js";
import { type Settings, settingsFrom } from "../options/settings.js";
import { deploymentsFrom, onlyDeploymentFrom } from "../read-deployments.js";
import { heardFor } from "../read-reports.js";

type RawReportOptions = RawOptions<"report">;

/** A page, and why what was asked for is not all in it. */
interface Report {
  readonly page: string;
  readonly unreadable: readonly Problem[];
}

export function reportCommand(): Command {
  const command = new Command("report")
    .description("Writes one HTML page with charts and tables: of a sweep, of a change, or of a folder.")
    .argument("[path...]", "sweeps and folders (searched to the bottom)");
  return withOptions(command, "report").action(runReport);
}

async function runReport(paths: readonly string[], raw: RawReportOptions): Promise<void> {
  const { output } = raw;
  if (output === undefined) throw new UsageError("Say where to write the page: -o report.html");
  const settings = await settingsFrom(raw);
  const { page, unreadable } =
    raw.before === undefined && raw.after === undefined
      ? await reportSweeps(paths, raw, settings)
      : await reportChange(paths, raw, settings);
  if (writeOutput(output, page, raw.force === true)) process.stderr.write(`feedpoint: wrote ${printable(output)}\n`);
  for (const { reason } of unreadable) process.stderr.write(`feedpoint: ${printable(reason)}\n`);
  if (unreadable.length > 0) process.exitCode = EXIT.input;
}

async function reportChange(paths: readonly string[], raw: RawReportOptions, settings: Settings): Promise<Report> {
  const { before, after, samePlane = false } = raw;
  if (paths.length > 0 || before === undefined || after === undefined)
    throw new UsageError(
      "A report compares one sweep with one, and nothing else: report --before a.s1p --after b.s1p (diff takes repeats)",
    );
  const read = (path: string) => onlyDeploymentFrom([path], settings);
  // Drawing is loaded where it is needed; the other commands start without it.
  const { diffReport } = await import("@feedpoint/answers/html/report");
  const [first, second] = [await read(before), await read(after)];
  const options = { ...settings, isSamePlane: samePlane, feedlines: statedLines(raw) };
  const page = diffReport(diff(first, second, options), onSameTerms(first, second, options), settings.plan, "command");
  return { page, unreadable: [] };
}

async function reportSweeps(paths: readonly string[], raw: RawReportOptions, settings: Settings): Promise<Report> {
  const [logFile = null] = findLogs(raw.log, paths);
  const log = logFile === null ? null : readLog(logFile);
  const season = seasonFrom(raw, log, settings, heardFor(raw.heard, log));
  const { deployments, unreadable } = await deploymentsFrom(paths, settings, raw);
  if (raw.want !== undefined && deployments.length > 1)
    throw new UsageError("--want says what to try next with one deployment; report each by itself.");
  const criteria = criteriaWith(settings.station.criteria ?? {});
  const { wishes, factors } = season;
  const gradeOne = graderBy({ ...settings, criteria, log, wishes, withAntennaEnd: factors.length > 0 });
  const checked = deployments.map((deployment) => {
    const grade = gradeOne(deployment);
    const advised = raw.want === undefined ? null : advisedBy(settings, deployment, askedAdvice(raw));
    return {
      ...drawnCheck(settings, deployment, raw.at),
      log: grade.log,
      grade,
      advised,
      wished: wishSentences(grade.wishes),
    };
  });
  const [only] = checked;
  if (only === undefined)
    throw new UsageError(
      unreadable.length > 0
        ? unreadable.map(({ reason }) => reason).join(" ")
        : "There is no sweep to report. Name one, or a folder: feedpoint report sweep.s1p -o report.html",
    );
  const { collectionReport, sweepReport } = await import("@feedpoint/answers/html/report");
  if (checked.length === 1 && unreadable.length === 0) return { page: sweepReport(only, "command"), unreadable };
  const { order } = season;
  const ordered = order === null ? checked : checked.toSorted((a, b) => order(a.grade, b.grade));
  const report = gradeReport(
    gradedAll(
      ordered.map(({ grade }) => grade),
      unreadable,
    ),
    season,
    {
      settings,
      criteria,
      logged: missingRows(
        season,
        checked.flatMap(({ grade, parts }) => (grade.log === null ? parts.map(({ source }) => source.file) : [])),
      ),
    },
  );
  return { page: collectionReport(ordered, report, seasonTables(report, season), "command"), unreadable };
}
