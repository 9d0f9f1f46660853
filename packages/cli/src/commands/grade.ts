import { GRADE_CRITERIA, type Grade, gradeSweep, type Sweep, type SweepGrade } from "@feedpoint/core";
import { Command, Option } from "commander";
import { EXIT, UsageError } from "../exit.js";
import { findSweepFiles, readForJudging } from "../files.js";
import { addJudgingOptions } from "../options/declare.js";
import type { RawOptions } from "../options/raw-options.js";
import { type Settings, settingsFrom } from "../options/settings.js";
import { printable } from "../present/escape.js";
import { criteriaText, gradeCsv, gradeMarkdown, gradeText } from "../present/grade.js";
import { jsonText, ndjsonText } from "../present/json.js";

const GRADES = GRADE_CRITERIA.map(({ grade }) => grade);

/** What the command prints as JSON. */
export interface GradeReport {
  readonly schema: "feedpoint/grade@1";
  readonly criteria: typeof GRADE_CRITERIA;
  readonly sweeps: readonly SweepGrade[];
  readonly unreadable: readonly { readonly file: string; readonly reason: string }[];
  readonly totals: {
    readonly files: number;
    readonly graded: number;
    readonly unreadable: number;
    readonly points: number;
  };
}

export function gradeCommand(): Command {
  const command = new Command("grade")
    .description("Grades every sweep in folders, band by band, by what you need to transmit.")
    .argument("[path...]", "folders (searched to the bottom) and files");
  addJudgingOptions(command)
    .option("--criteria", "print what each grade stands for, and stop")
    .addOption(new Option("--require <grade>", "exit with 1 unless every sweep reaches this grade").choices(GRADES));
  return command.action(runGrade);
}

async function runGrade(
  paths: readonly string[],
  raw: RawOptions & { criteria?: boolean; require?: Grade },
): Promise<void> {
  const settings = await settingsFrom(raw);
  if (raw.criteria) {
    process.stdout.write(`${criteriaText(settings)}\n`);
    return;
  }
  if (paths.length === 0) throw new UsageError("Name a folder or files to grade, such as feedpoint grade sweeps/");
  const report = gradeFiles(findSweepFiles(paths), settings);
  if (report.totals.files === 0)
    throw new UsageError(`There are no sweep files (.s1p, .csv, .tsv, .txt, .dat) in ${paths.join(", ")}.`);
  process.stdout.write(`${render(report, settings)}\n`);
  for (const { reason } of report.unreadable) process.stderr.write(`feedpoint: ${printable(reason)}\n`);
  if (report.unreadable.length > 0) process.exitCode = EXIT.input;
  else if (raw.require !== undefined && !report.sweeps.every(({ grade }) => reaches(grade, raw.require as Grade))) {
    process.exitCode = EXIT.required;
  }
}

function gradeFiles(files: readonly string[], settings: Settings): GradeReport {
  const sweeps: SweepGrade[] = [];
  const unreadable: { file: string; reason: string }[] = [];
  for (const file of files) {
    let read: Sweep[];
    try {
      read = readForJudging(file, settings.reading, settings.systemOhms);
    } catch (error) {
      unreadable.push({ file, reason: (error as Error).message });
      continue;
    }
    for (const sweep of read) sweeps.push(gradeSweep(sweep, settings));
  }
  const points = sweeps.reduce((sum, { sweep }) => sum + sweep.points, 0);
  return {
    schema: "feedpoint/grade@1",
    criteria: GRADE_CRITERIA,
    sweeps,
    unreadable,
    totals: { files: files.length, graded: sweeps.length, unreadable: unreadable.length, points },
  };
}

const reaches = (grade: Grade | null, wanted: Grade) =>
  grade !== null && GRADES.indexOf(grade) <= GRADES.indexOf(wanted);

function render(report: GradeReport, settings: Settings): string {
  switch (settings.format) {
    case "json":
      return jsonText([report]);
    case "ndjson":
      return ndjsonText(report.sweeps);
    case "csv":
      return gradeCsv(report.sweeps);
    case "markdown":
      return gradeMarkdown(report.sweeps);
    case "table":
      return gradeText(report, settings);
  }
}
