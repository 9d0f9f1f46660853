import { availableParallelism } from "node:os";
import {
  criteriaWith,
  type DeploymentLog,
  driftFindings,
  driftsOf,
  type Grade,
  groupGrades,
  logFindings,
  rankFor,
  rowFinder,
  type SweepGrade,
} from "@feedpoint/core";
import { Command, InvalidArgumentError, Option } from "commander";
import { EXIT, UsageError } from "../exit.js";
import { type FoundFiles, findSweepFilesIn } from "../files.js";
import { gradeFiles } from "../grading/grade-files.js";
import { gradingSettings } from "../grading/grading-settings.js";
import { sortedBy } from "../grading/order.js";
import { progressOf } from "../grading/progress.js";
import { GRADES, type GradeReport, reaches } from "../grading/report.js";
import { wholeNumberArgument } from "../options/arguments.js";
import { addJudgingOptions } from "../options/declare.js";
import { bandName } from "../options/find-plan.js";
import { findLog } from "../options/log-file.js";
import type { RawOptions } from "../options/raw-options.js";
import { type Settings, settingsFrom } from "../options/settings.js";
import { printable } from "../present/escape.js";
import { criteriaText, gradeCsv, gradeMarkdown, gradeText } from "../present/grade.js";
import { jsonText } from "../present/json.js";

interface RawGradeOptions extends RawOptions {
  readonly criteria?: boolean;
  readonly require?: Grade;
  readonly minGrade?: Grade;
  readonly sort?: string;
  readonly log?: string | false;
  readonly groupBy?: string;
  readonly overTime?: string | true;
  readonly best?: string;
  readonly jobs?: number;
  readonly shard?: Shard;
}

interface Shard {
  readonly part: number;
  readonly of: number;
}

export function gradeCommand(): Command {
  const command = new Command("grade")
    .description("Grades every sweep in folders, band by band, by what you need to transmit.")
    .argument("[path...]", "folders (searched to the bottom), files, and patterns such as 'sweeps/**/*.s1p'");
  return addJudgingOptions(command)
    .option("--criteria", "print what each grade stands for, and stop")
    .addOption(new Option("--require <grade>", "exit with 1 unless every sweep reaches this grade").choices(GRADES))
    .addOption(new Option("--min-grade <grade>", "print only sweeps that reach this grade").choices(GRADES))
    .option("--sort <key>", "order of the rows: name, date, grade, or a band such as 40m (default: as found)")
    .option("--best <band>", "rank all deployments for one band")
    .option("--log <file>", "deployment log (default: deployments.csv beside the sweeps, if there)")
    .option("--no-log", "leave the deployment log alone")
    .option("--group-by <column>", "compare groups by a column of the log, such as counterpoise")
    .option("--over-time [column]", "follow the dips by date; a column of the log tells deployments apart")
    .option("--jobs <number>", "how many files to grade at once (default: one for each processor)", wholeNumberArgument)
    .option("--shard <part/of>", "grade only each so-manieth file: 3/16 is the third of 16 parts", shardArgument)
    .action(runGrade);
}

function shardArgument(text: string): Shard {
  const [part = 0, of = 0] = text.split("/").map(Number);
  if (!(Number.isInteger(part) && Number.isInteger(of) && part >= 1 && part <= of)) {
    throw new InvalidArgumentError("A part and their number are needed, such as 3/16.");
  }
  return { part, of };
}

async function runGrade(paths: readonly string[], raw: RawGradeOptions): Promise<void> {
  const settings = await settingsFrom(raw);
  const criteria = criteriaWith(settings.station.criteria ?? {});
  if (raw.criteria) {
    process.stdout.write(`${criteriaText(settings, criteria)}\n`);
    return;
  }
  if (paths.length === 0) throw new UsageError("Name a folder or files to grade, such as feedpoint grade sweeps/");
  const found = shardOf(await findSweepFilesIn(paths), raw.shard);
  if (found.files.length + found.problems.length === 0) {
    if (raw.shard !== undefined) return;
    throw new UsageError(`There are no sweep files (.s1p, .csv, .tsv, .txt, .dat) in ${paths.join(", ")}.`);
  }
  const log = findLog(raw.log, paths);
  const wholeSeason = [raw.groupBy, raw.overTime, raw.best, raw.sort].some((option) => option !== undefined);
  if (settings.format === "ndjson" && wholeSeason) {
    throw new UsageError(
      "--format ndjson writes each sweep as it is done; --group-by, --over-time, --best and --sort need them all.",
    );
  }
  const outcome = await gradeAll(found, settings, { log, criteria, raw });
  if (settings.format !== "ndjson") {
    const report = reportOf(outcome, found, settings, { log, criteria, raw });
    process.stdout.write(`${render(report, settings, raw)}\n`);
  }
  for (const { reason } of outcome.unreadable) process.stderr.write(`feedpoint: ${printable(reason)}\n`);
  if (settings.format === "ndjson" && log !== null) {
    for (const { message } of logFindings(log, found.files)) process.stderr.write(`feedpoint: ${printable(message)}\n`);
  }
  process.exitCode = exitOf(outcome, raw.require);
}

interface Grading {
  readonly log: DeploymentLog | null;
  readonly criteria: GradeReport["criteria"];
  readonly raw: RawGradeOptions;
}

interface Outcome {
  /** None in ndjson, where they are written and forgotten */
  readonly sweeps: readonly SweepGrade[];
  readonly graded: number;
  readonly unreadable: readonly { readonly file: string; readonly reason: string }[];
  readonly areAllRequired: boolean;
  readonly isInterrupted: boolean;
}

/** Grades all files; in ndjson each sweep is written when it is done. An interrupt ends it between two files. */
async function gradeAll(found: FoundFiles, settings: Settings, { log, criteria, raw }: Grading): Promise<Outcome> {
  const rowOf = log === null ? () => null : rowFinder(log);
  const sweeps: SweepGrade[] = [];
  const unreadable = [...found.problems];
  let graded = 0;
  let areAllRequired = true;
  let isInterrupted = false;
  const interrupt = () => {
    isInterrupted = true;
  };
  process.once("SIGINT", interrupt);
  const progress = progressOf(found.files.length);
  const jobs = raw.jobs ?? availableParallelism();
  for await (const result of gradeFiles(found.files, gradingSettings(settings, criteria), jobs)) {
    progress.advance();
    if ("reason" in result) unreadable.push(result);
    else {
      for (const each of result.sweeps) {
        const sweep = { ...each, log: rowOf(each.sweep.file) };
        graded++;
        if (raw.require !== undefined && !reaches(sweep.grade, raw.require)) areAllRequired = false;
        if (raw.minGrade !== undefined && !reaches(sweep.grade, raw.minGrade)) continue;
        if (settings.format === "ndjson") await write(`${JSON.stringify(sweep)}\n`);
        else sweeps.push(sweep);
      }
    }
    if (isInterrupted) break;
  }
  progress.stop();
  process.removeListener("SIGINT", interrupt);
  if (isInterrupted) {
    process.stderr.write(`feedpoint: interrupted after ${graded} sweeps of ${found.files.length} files.\n`);
  }
  return { sweeps, graded, unreadable, areAllRequired, isInterrupted };
}

/** Writes to standard output, waiting where its reader is slower. */
async function write(text: string): Promise<void> {
  if (!process.stdout.write(text)) await new Promise<void>((resolve) => process.stdout.once("drain", resolve));
}

function reportOf(
  { sweeps, graded, unreadable }: Outcome,
  found: FoundFiles,
  settings: Settings,
  { log, criteria, raw }: Grading,
): GradeReport {
  const { plan, licenceClass } = settings;
  const bands = plan.bands.map(({ band }) => band);
  const column = (name: string) => logColumn(log, name);
  const drifts =
    raw.overTime === undefined ? [] : driftsOf(sweeps, raw.overTime === true ? null : column(raw.overTime));
  return {
    schema: "feedpoint/grade@1",
    plan: { id: plan.id, title: plan.title, licenceClass },
    criteria,
    sweeps: raw.sort === undefined ? sweeps : sortedBy(sweeps, raw.sort, bands),
    unreadable,
    groups: raw.groupBy === undefined ? [] : groupGrades(sweeps, column(raw.groupBy)),
    drifts,
    ranking: raw.best === undefined ? [] : rankFor(sweeps, bandName(raw.best, plan)),
    findings: [...(log === null ? [] : logFindings(log, found.files)), ...driftFindings(drifts)],
    totals: {
      files: found.files.length + found.problems.length,
      graded,
      unreadable: unreadable.length,
      points: sweeps.reduce((sum, { sweep }) => sum + sweep.points, 0),
    },
  };
}

/** A column of the log by its name in any case. @throws UsageError where there is no log or no such column */
function logColumn(log: DeploymentLog | null, name: string): string {
  if (log === null)
    throw new UsageError("There is no deployment log. feedpoint log init <folder> writes one to fill in.");
  const found = log.columns.find((column) => column.toLowerCase() === name.toLowerCase());
  if (found === undefined) throw new UsageError(`The log has no column "${name}". Columns: ${log.columns.join(", ")}.`);
  return found;
}

const shardOf = ({ files, problems }: FoundFiles, shard: Shard | undefined): FoundFiles =>
  shard === undefined
    ? { files, problems }
    : {
        files: files.filter((_, i) => i % shard.of === shard.part - 1),
        problems: shard.part === 1 ? problems : [],
      };

function exitOf({ unreadable, areAllRequired, isInterrupted }: Outcome, require: Grade | undefined): number {
  if (isInterrupted) return EXIT.interrupted;
  if (unreadable.length > 0) return EXIT.input;
  return require !== undefined && !areAllRequired ? EXIT.required : EXIT.done;
}

function render(report: GradeReport, settings: Settings, { groupBy }: RawGradeOptions): string {
  switch (settings.format) {
    case "json":
    case "ndjson":
      return jsonText([report]);
    case "csv":
      return gradeCsv(report.sweeps);
    case "markdown":
      return gradeMarkdown(report.sweeps);
    case "table":
      return gradeText(report, settings, groupBy ?? null);
  }
}
