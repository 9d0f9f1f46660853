import { existsSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { DEPLOYMENT, type FileGroup, fileGroups, readGroup } from "@feedpoint/answers/asked/deployments";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { csvTable } from "@feedpoint/answers/text/csv";
import { csvCell, printable } from "@feedpoint/answers/text/escape";
import { type DeploymentLog, rowFinder, type Sweep } from "@feedpoint/core";
import { LOG_FILE } from "@feedpoint/core/for-command";
import { Command } from "commander";
import { readReferred, writeWhole } from "../files.js";
import { findSweepFilesIn, isFolder } from "../find-files.js";
import { withOptions } from "../options/declare.js";
import { readLog } from "../options/log-file.js";
import type { RawOptions } from "../options/options.js";

/** Columns to begin with; a log may have any others. */
const EMPTY_COLUMNS = ["deployment", "shape", "height", "counterpoise", "feedline", "weather", "note"];

export function logCommand(): Command {
  return new Command("log")
    .description("The deployment log: what you know of each sweep, kept in a table beside them.")
    .addCommand(
      withOptions(
        new Command("init")
          .description(`Writes ${LOG_FILE} into a folder of sweeps, a row for each deployment, to fill in.`)
          .argument("<folder>", "folder of sweeps, searched to the bottom"),
        "log init",
      ).action(runInit),
    )
    .addCommand(
      new Command("update")
        .description(
          `Adds a row to ${LOG_FILE} for each deployment of a folder that has none; the rest stays as it is.`,
        )
        .argument("<folder>", "folder of sweeps, searched to the bottom")
        .action(runUpdate),
    );
}

async function runInit(folder: string, { force = false }: RawOptions<"log init">): Promise<void> {
  if (!isFolder(folder)) throw new UsageError(`${folder}: this is no folder.`);
  const entries = (await groupsIn(folder, null)).flatMap(entriesOf);
  if (entries.length === 0) throw new UsageError(`There are no sweep files in ${folder}.`);
  const rows = entries.map(({ file, date, deployment }) => [
    relative(folder, file),
    date,
    ...EMPTY_COLUMNS.map((column) => (column === DEPLOYMENT ? deployment : "")),
  ]);
  const target = join(folder, LOG_FILE);
  writeWhole(target, `${csvTable(["file", "date", ...EMPTY_COLUMNS], rows)}\n`, force);
  process.stderr.write(`feedpoint: wrote ${printable(target)} with ${rowCount(rows)}. Fill it in; grade reads it.\n`);
}

async function runUpdate(folder: string): Promise<void> {
  if (!isFolder(folder)) throw new UsageError(`${folder}: this is no folder.`);
  const target = join(folder, LOG_FILE);
  if (!existsSync(target)) throw new UsageError(`There is no ${target}. feedpoint log init ${folder} writes one.`);
  const log = readLog(target);
  if (log.hasOpenQuote)
    throw new UsageError(`${target}: a quote is not closed, so that rows after it would be lost. Close it first.`);
  const rowOf = rowFinder(log);
  const rows = (await groupsIn(folder, log))
    .filter(({ file, files }) => rowOf(file) === null && files.every((each) => rowOf(each) === null))
    .flatMap(entriesOf)
    .map(({ file, date, deployment }) => emptyRow(log, { file: relative(folder, file), date, deployment }));
  if (rows.length > 0) writeWhole(target, withRows(target, rows), true);
  process.stderr.write(
    rows.length === 0
      ? `feedpoint: ${printable(target)} has a row for every deployment already.\n`
      : `feedpoint: added ${rowCount(rows)} to ${printable(target)}. Fill in; grade reads it.\n`,
  );
}

const rowCount = ({ length }: readonly unknown[]) => `${length} row${length === 1 ? "" : "s"}`;

/** The files of a folder as they belong together. */
const groupsIn = async (folder: string, log: DeploymentLog | null): Promise<readonly FileGroup[]> =>
  fileGroups(await findSweepFilesIn([folder]), { said: null, log });

/** What a row begins with. */
interface Entry {
  readonly file: string;
  readonly date: string;
  /** The name that several files share; nothing where one row stands for all of it */
  readonly deployment: string;
}

/**
 * A row for a deployment: its folder, where all of that is one, or its file. Several deployments of one folder have a row for
 * each of their files. Files that hold no sweep have none.
 */
function entriesOf(group: FileGroup): readonly Entry[] {
  const { deployments } = readGroup(group, (path) => readReferred(path, { reading: {} }));
  const [only, ...others] = deployments;
  if (only === undefined) return [];
  const dateOf = ({ takenAt }: { readonly takenAt: string | null }) => takenAt ?? "";
  if (others.length === 0 && only.parts.length > 1) {
    if (existsSync(group.file)) return [{ file: group.file, date: dateOf(only), deployment: "" }];
    return filesOf(only.parts).map((file) => ({ file, date: dateOf(only), deployment: group.label }));
  }
  return filesOf(deployments.flatMap(({ parts }) => parts)).map((file) => ({
    file,
    date: dateOf(deployments.find(({ parts }) => parts[0].source.file === file) ?? only),
    deployment: "",
  }));
}

const filesOf = (sweeps: readonly Sweep[]): readonly string[] => [...new Set(sweeps.map(({ source }) => source.file))];

/** A row of a log that states its file, the date and the deployment, as far as the log has columns for them. */
function emptyRow({ header, fileColumn, delimiter }: DeploymentLog, { file, date, deployment }: Entry): string {
  const stated: Readonly<Record<string, string>> = { date, [DEPLOYMENT]: deployment };
  const cellOf = (column: string) => (column === fileColumn ? file : (stated[column.toLowerCase()] ?? ""));
  return header.map((column) => csvCell(cellOf(column), delimiter)).join(delimiter);
}

/** What a log holds, to the byte, with rows after it. @throws UsageError for a text that is not UTF-8 */
function withRows(target: string, rows: readonly string[]): string {
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(readFileSync(target));
  } catch {
    throw new UsageError(`${target} is not UTF-8. Save it so (CSV UTF-8), and try again.`);
  }
  const lineEnd = text.includes("\r\n") ? "\r\n" : "\n";
  const whole = /[\r\n]$/.test(text) ? text : `${text}${lineEnd}`;
  return `${whole}${rows.join(lineEnd)}${lineEnd}`;
}
