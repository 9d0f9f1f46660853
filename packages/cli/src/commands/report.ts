import { checkJudged, compare, criteriaWith, driftFindings, gradeJudged, judge } from "@feedpoint/core";
import { Command } from "commander";
import { EXIT, UsageError } from "../exit.js";
import { onlySweepIn, type Problem, readAllForJudging, writeOutput } from "../files.js";
import { findSweepFiles } from "../find-files.js";
import { logRowFinder, missingRows, type RawSeason, seasonFrom, seasonResult } from "../grading/season.js";
import type { Place } from "../options/arguments.js";
import {
  addDialOptions,
  addFeedlineOptions,
  addOutputOptions,
  addPowerOptions,
  addSeasonOptions,
  addSettingOptions,
} from "../options/declare.js";
import { dialsAt } from "../options/dials.js";
import { findLogs, readLog } from "../options/log-file.js";
import type { RawOptions } from "../options/raw-options.js";
import { type Settings, settingsFrom } from "../options/settings.js";
import { printable } from "../present/escape.js";
import { seasonTables } from "../present/season.js";

interface RawReportOptions extends RawOptions, RawSeason {
  readonly before?: string;
  readonly after?: string;
  readonly samePlane?: boolean;
  readonly at?: readonly Place[];
  readonly output?: string;
  readonly force?: boolean;
}

/** A page, and why what was asked for is not all in it. */
interface Report {
  readonly page: string;
  readonly unreadable: readonly Problem[];
}

export function reportCommand(): Command {
  const command = new Command("report")
    .description("Writes one HTML page with charts and tables: of a sweep, of a change, or of a folder.")
    .argument("[path...]", "sweeps and folders (searched to the bottom)")
    .option("--before <file>", "report a change: the sweep before it")
    .option("--after <file>", "and the sweep after it")
    .option("--same-plane", "take a change of the line out of the second sweep");
  addOutputOptions(command, "the page, such as report.html (- is standard output)");
  return addSeasonOptions(addDialOptions(addPowerOptions(addFeedlineOptions(addSettingOptions(command))))).action(
    runReport,
  );
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

async function reportChange(
  paths: readonly string[],
  { before, after, samePlane = false }: RawReportOptions,
  settings: Settings,
): Promise<Report> {
  if (paths.length > 0 || before === undefined || after === undefined)
    throw new UsageError(
      "A report compares one sweep with one, and nothing else: report --before a.s1p --after b.s1p (diff takes repeats)",
    );
  const read = (file: string) => onlySweepIn(file, settings.reading, settings.systemOhms);
  // Drawing is loaded where it is needed; the other commands start without it.
  const { diffReport } = await import("../present/html/report.js");
  const comparison = compare(read(before), read(after), { ...settings, isSamePlane: samePlane });
  return { page: diffReport(comparison), unreadable: [] };
}

async function reportSweeps(paths: readonly string[], raw: RawReportOptions, settings: Settings): Promise<Report> {
  const [logFile = null] = findLogs(raw.log, paths);
  const season = seasonFrom(raw, logFile === null ? null : readLog(logFile), settings);
  const rowOf = logRowFinder(season);
  const { sweeps, unreadable } = readAllForJudging(findSweepFiles(paths), settings.reading, settings.systemOhms);
  const criteria = criteriaWith(settings.station.criteria ?? {});
  const judged = sweeps.map((sweep) => {
    const judgement = judge(sweep, settings.limits);
    const log = rowOf(sweep.source.file);
    const result = checkJudged(judgement, { ...settings, dials: dialsAt(raw.at ?? [], settings, sweep.frequencyHz) });
    return { judgement, result, log, grade: { ...gradeJudged(judgement, { ...settings, criteria }), log } };
  });
  const [only] = judged;
  if (only === undefined)
    throw new UsageError(
      [
        "There is no sweep to report. Name one, or a folder: feedpoint report sweep.s1p -o report.html",
        ...unreadable.map(({ reason }) => reason),
      ].join(" "),
    );
  const { collectionReport, sweepReport } = await import("../present/html/report.js");
  if (judged.length === 1 && unreadable.length === 0) return { page: sweepReport(only), unreadable };
  const { order } = season;
  const ordered = order === null ? judged : judged.toSorted((a, b) => order(a.grade, b.grade));
  const grades = ordered.map(({ grade }) => grade);
  const result = seasonResult(grades, season);
  return {
    page: collectionReport({
      sweeps: ordered,
      criteria,
      tables: seasonTables({ ...result, sweeps: grades }, season),
      findings: [
        ...missingRows(
          season,
          sweeps.map(({ source }) => source.file),
        ),
        ...driftFindings(result.drifts),
      ],
      unreadable,
    }),
    unreadable,
  };
}
