import { existsSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { type DeploymentLog, rowFinder, type Sweep } from "@feedpoint/core";
import { LOG_FILE } from "@feedpoint/core/for-command";
import { Command } from "commander";
import { UsageError } from "../exit.js";
import { readFile, writeWhole } from "../files.js";
import { findSweepFiles, isFolder } from "../find-files.js";
import { withOptions } from "../options/declare.js";
import { readLog } from "../options/log-file.js";
import type { RawOptions } from "../options/options.js";
import { csvTable } from "../present/csv.js";
import { csvCell, printable } from "../present/escape.js";

/** Columns to begin with; a log may have any others. */
const EMPTY_COLUMNS = ["deployment", "shape", "height", "counterpoise", "feedline", "weather", "note"];

export function logCommand(): Command {
  return new Command("log")
    .description("The deployment log: what you know of each sweep, kept in a table beside them.")
    .addCommand(
      withOptions(
        new Command("init")
          .description(`Writes ${LOG_FILE} into a folder of sweeps, a row for each, to fill in.`)
          .argument("<folder>", "folder of sweeps, searched to the bottom"),
        "log init",
      ).action(runInit),
    )
    .addCommand(
      new Command("update")
        .description(`Adds a row to ${LOG_FILE} for each sweep of a folder that has none; the rest stays as it is.`)
        .argument("<folder>", "folder of sweeps, searched to the bottom")
        .action(runUpdate),
    );
}

function runInit(folder: string, { force = false }: RawOptions<"log init">): void {
  if (!isFolder(folder)) throw new UsageError(`${folder}: this is no folder.`);
  const files = findSweepFiles([folder]);
  if (files.length === 0) throw new UsageError(`There are no sweep files in ${folder}.`);
  const rows = files.map((file) => [relative(folder, file), dateIn(file), ...EMPTY_COLUMNS.map(() => "")]);
  const target = join(folder, LOG_FILE);
  writeWhole(target, `${csvTable(["file", "date", ...EMPTY_COLUMNS], rows)}\n`, force);
  process.stderr.write(`feedpoint: wrote ${printable(target)} with ${rowCount(rows)}. Fill it in; grade reads it.\n`);
}

function runUpdate(folder: string): void {
  if (!isFolder(folder)) throw new UsageError(`${folder}: this is no folder.`);
  const target = join(folder, LOG_FILE);
  if (!existsSync(target)) throw new UsageError(`There is no ${target}. feedpoint log init ${folder} writes one.`);
  const log = readLog(target);
  if (log.hasOpenQuote)
    throw new UsageError(`${target}: a quote is not closed, so that rows after it would be lost. Close it first.`);
  const rowOf = rowFinder(log);
  const rows = findSweepFiles([folder])
    .filter((file) => rowOf(file) === null)
    .map((file) => emptyRow(log, relative(folder, file), dateIn(file)));
  if (rows.length > 0) writeWhole(target, withRows(target, rows), true);
  process.stderr.write(
    rows.length === 0
      ? `feedpoint: ${printable(target)} has a row for every sweep already.\n`
      : `feedpoint: added ${rowCount(rows)} to ${printable(target)}. Fill in; grade reads it.\n`,
  );
}

const rowCount = ({ length }: readonly unknown[]) => `${length} row${length === 1 ? "" : "s"}`;

/** A row of a log that states a file and its date. */
function emptyRow({ header, fileColumn, delimiter }: DeploymentLog, file: string, date: string): string {
  const cellOf = (column: string) => (column === fileColumn ? file : column.toLowerCase() === "date" ? date : "");
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

/** The date that a sweep's file states; nothing where it states none or cannot be read. */
function dateIn(file: string): string {
  let sweeps: readonly Sweep[];
  try {
    sweeps = readFile(file, {});
  } catch {
    return "";
  }
  return sweeps[0]?.takenAt ?? "";
}
