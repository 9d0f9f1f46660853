import { resolve } from "node:path";
import type { Shard } from "@feedpoint/answers/asked/arguments";
import type { FoundFiles } from "@feedpoint/answers/asked/deployments";
import { type FileGroup, fileGroups, placesInLog } from "@feedpoint/answers/asked/deployments";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { gradeReport } from "@feedpoint/answers/judged/grade-report";
import type { GradeReport } from "@feedpoint/answers/judged/report";
import { missingRows, type Season, seasonFrom, unmatchedRows } from "@feedpoint/answers/judged/season";
import { printable } from "@feedpoint/answers/text/escape";
import { criteriaText, gradeCsv, gradeMarkdown, gradeText, problemsOf } from "@feedpoint/answers/text/grade";
import { jsonText } from "@feedpoint/answers/text/json";
import { findingText } from "@feedpoint/answers/words/remedies";
import { talkOf } from "@feedpoint/answers/words/severity";
import { criteriaWith, type Finding, type Grade, logNotRead } from "@feedpoint/core";
import { Command } from "commander";
import { EXIT } from "../exit.js";
import { findSweepFilesIn, isFolder } from "../find-files.js";
import { gradeAll, type Outcome } from "../grading/grade-all.js";
import { gradingSettings } from "../grading/grading-settings.js";
import { withOptions } from "../options/declare.js";
import { findLogs, readLog } from "../options/log-file.js";
import type { RawOptions } from "../options/options.js";
import { type Settings, settingsFrom } from "../options/settings.js";
import { heardFor } from "../read-reports.js";

type RawGradeOptions = RawOptions<"grade">;

export function gradeCommand(): Command {
  const command = new Command("grade")
    .description("Grades every deployment in folders, band by band, by what you need to transmit.")
    .argument("[path...]", "folders (searched to the bottom), files, and patterns such as 'sweeps/**/*.s1p'");
  return withOptions(command, "grade").action(runGrade);
}

async function runGrade(paths: readonly string[], raw: RawGradeOptions): Promise<void> {
  const settings = await settingsFrom(raw);
  const criteria = criteriaWith(settings.station.criteria ?? {});
  if (raw.criteria) {
    process.stdout.write(`${criteriaText(settings, criteria)}\n`);
    return;
  }
  if (paths.length === 0) throw new UsageError(noPathText(raw.overTime));
  refuseWhatCannotBePrinted(settings, raw);
  const [logFile = null, ...otherLogs] = findLogs(raw.log, paths);
  const log = logFile === null ? null : readLog(logFile);
  const season = seasonFrom(raw, log, settings, heardFor(raw.heard, log));
  if (raw.watch === true) {
    const { watchFolders } = await import("../grading/watch.js");
    const run = { criteria, log: season.log, wishes: [], withAntennaEnd: false, isStreamed: false };
    const [missing] = (await findSweepFilesIn(paths)).problems;
    if (missing !== undefined) throw new UsageError(missing.reason);
    await watchFolders(
      async () => withoutFile(await findSweepFilesIn(paths), logFile).files,
      gradingSettings(settings, run),
    );
    return;
  }
  const found = withoutFile(await findSweepFilesIn(paths), logFile);
  if (found.files.length + found.problems.length === 0) {
    throw new UsageError(`There are no sweep files (.s1p, .csv, .tsv, .txt, .dat) in ${paths.join(", ")}.`);
  }
  const isStreamed = settings.format === "ndjson";
  const { require, minGrade, jobs } = raw;
  const run = {
    criteria,
    log: season.log,
    wishes: season.wishes,
    withAntennaEnd: season.factors.length > 0,
    require,
    minGrade,
    isStreamed,
  };
  const groups = fileGroups(found, { said: raw.each === true ? "each" : null, log: season.log });
  const outcome = await gradeAll(
    shardOf({ groups, problems: found.problems }, raw.shard),
    gradingSettings(settings, run),
    jobs,
  );
  // The log is held against all files, so the first shard speaks for the others.
  const unreadable = new Set(outcome.unreadable.map(({ file }) => file));
  const logged =
    (raw.shard?.part ?? 1) > 1
      ? []
      : [...logsNotRead(otherLogs, logFile), ...logFindingsOf(season, groups, unreadable, paths)];
  if (isStreamed) for (const finding of logged) process.stderr.write(`feedpoint: ${printable(findingText(finding))}\n`);
  else {
    const report = gradeReport(outcome, season, { settings, criteria, logged, minGrade });
    process.stdout.write(`${render(report, settings, season)}\n`);
    if (settings.format === "csv")
      process.stderr.write(talkOf(null, [...problemsOf(report.sweeps), ...report.findings]));
  }
  for (const { reason } of outcome.unreadable) process.stderr.write(`feedpoint: ${printable(reason)}\n`);
  process.exitCode = exitOf(outcome, require);
}

const noPathText = (overTime: string | true | undefined) =>
  typeof overTime === "string"
    ? `Name a folder or files to grade before --over-time, which took "${overTime}" for a column of the log.`
    : "Name a folder or files to grade, such as feedpoint grade sweeps/";

function refuseWhatCannotBePrinted({ format }: Settings, raw: RawGradeOptions): void {
  const { groupBy, overTime, best, sort, factors } = raw;
  const hasTables = [groupBy, overTime, best, factors, raw.for].some((option) => option !== undefined);
  if (format === "ndjson" && (hasTables || sort !== undefined)) {
    throw new UsageError(
      "--format ndjson writes each sweep as it is done; --group-by, --over-time, --factors, --best, --for and --sort need them all.",
    );
  }
  if (format === "csv" && hasTables) {
    throw new UsageError(
      "--format csv is one table, of sweeps and bands; --group-by, --over-time, --factors, --best and --for are others.",
    );
  }
  const choosesRows = [sort, raw.minGrade, raw.require, raw.shard].some((option) => option !== undefined);
  if (raw.watch === true && (hasTables || choosesRows || format !== "table")) {
    throw new UsageError(
      "--watch prints a line for each sweep as it appears; it takes no other format, and nothing that needs all sweeps.",
    );
  }
}

/**
 * What of the log and the files does not match. A file that is no sweep needs no row; and of files that were picked by name,
 * that the log has rows for others is nothing to speak of.
 */
function logFindingsOf(
  season: Season,
  groups: readonly FileGroup[],
  unreadable: ReadonlySet<string>,
  paths: readonly string[],
): readonly Finding[] {
  const read = groups
    .map((group) => ({ ...group, files: group.files.filter((file) => !unreadable.has(file)) }))
    .filter(({ files }) => files.length > 0);
  const places = (of: readonly FileGroup[]) => placesInLog(of, season.log);
  return [...missingRows(season, places(read)), ...(paths.some(isFolder) ? unmatchedRows(season, places(groups)) : [])];
}

function logsNotRead(others: readonly string[], read: string | null): readonly Finding[] {
  return others.length === 0 || read === null ? [] : [logNotRead(read, others)];
}

/** A log that is called something else than deployments.csv lies among the sweeps and is none. */
function withoutFile(found: FoundFiles, left: string | null): FoundFiles {
  const place = left === null ? null : resolve(left);
  return { ...found, files: found.files.filter((file) => file === "-" || resolve(file) !== place) };
}

/** What is to be graded, and what of the paths could not be looked into. */
interface ToGrade {
  readonly groups: readonly FileGroup[];
  readonly problems: FoundFiles["problems"];
}

function shardOf({ groups, problems }: ToGrade, shard: Shard | undefined): ToGrade {
  if (shard === undefined) return { groups, problems };
  const { part, of } = shard;
  return { groups: groups.filter((_, i) => i % of === part - 1), problems: part === 1 ? problems : [] };
}

function exitOf({ unreadable, areAllRequired, isInterrupted }: Outcome, require: Grade | undefined): number {
  if (isInterrupted) return EXIT.interrupted;
  if (unreadable.length > 0) return EXIT.input;
  return require !== undefined && !areAllRequired ? EXIT.required : EXIT.done;
}

function render(report: GradeReport, settings: Settings, season: Season): string {
  switch (settings.format) {
    case "json":
    case "ndjson":
      return jsonText([report]);
    case "csv":
      return gradeCsv(report);
    case "markdown":
      return gradeMarkdown(report, season);
    case "table":
      return gradeText(report, settings, season);
  }
}
