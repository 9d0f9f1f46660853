import { check, criteriaWith, diff, gradeSweep } from "@feedpoint/core";
import { Command } from "commander";
import { EXIT, UsageError } from "../exit.js";
import { findSweepFiles, onlySweepIn, type Problem, readAllForJudging, writeWhole } from "../files.js";
import { addFeedlineOptions, addOutputOptions, addPowerOptions, addSettingOptions } from "../options/declare.js";
import type { RawOptions } from "../options/raw-options.js";
import { type Settings, settingsFrom } from "../options/settings.js";
import { printable } from "../present/escape.js";

interface RawReportOptions extends RawOptions {
  readonly before?: string;
  readonly after?: string;
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
    .option("--after <file>", "and the sweep after it");
  addOutputOptions(command, "the page, such as report.html");
  return addPowerOptions(addFeedlineOptions(addSettingOptions(command))).action(runReport);
}

async function runReport(paths: readonly string[], raw: RawReportOptions): Promise<void> {
  const { output } = raw;
  if (output === undefined) throw new UsageError("Say where to write the page: -o report.html");
  const settings = await settingsFrom(raw);
  const { page, unreadable } =
    raw.before === undefined && raw.after === undefined
      ? await reportSweeps(paths, settings)
      : await reportChange(paths, raw, settings);
  writeWhole(output, page, raw.force === true);
  process.stderr.write(`feedpoint: wrote ${printable(output)}\n`);
  for (const { reason } of unreadable) process.stderr.write(`feedpoint: ${printable(reason)}\n`);
  if (unreadable.length > 0) process.exitCode = EXIT.input;
}

async function reportChange(
  paths: readonly string[],
  { before, after }: RawReportOptions,
  settings: Settings,
): Promise<Report> {
  if (paths.length > 0 || before === undefined || after === undefined)
    throw new UsageError("Say both --before and --after, and nothing else: report --before a.s1p --after b.s1p");
  const read = (file: string) => onlySweepIn(file, settings.reading, settings.systemOhms);
  const [first, second] = [read(before), read(after)];
  // Drawing is loaded where it is needed; the other commands start without it.
  const { diffReport } = await import("../present/html/report.js");
  const result = diff(first, second, settings);
  return { page: diffReport({ before: first, after: second, result }), unreadable: [] };
}

async function reportSweeps(paths: readonly string[], settings: Settings): Promise<Report> {
  const { sweeps, unreadable } = readAllForJudging(findSweepFiles(paths), settings.reading, settings.systemOhms);
  const [only] = sweeps;
  if (only === undefined)
    throw new UsageError(
      [
        "There is no sweep to report. Name one, or a folder: feedpoint report sweep.s1p -o report.html",
        ...unreadable.map(({ reason }) => reason),
      ].join(" "),
    );
  const { collectionReport, sweepReport } = await import("../present/html/report.js");
  if (sweeps.length === 1 && unreadable.length === 0)
    return { page: sweepReport({ sweep: only, result: check(only, settings) }), unreadable };
  const criteria = criteriaWith(settings.station.criteria ?? {});
  const judged = sweeps.map((sweep) => ({
    sweep,
    result: check(sweep, settings),
    grade: gradeSweep(sweep, { ...settings, criteria }),
  }));
  return { page: collectionReport({ sweeps: judged, criteria, unreadable }), unreadable };
}
