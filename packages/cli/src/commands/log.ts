import { join, relative } from "node:path";
import { LOG_FILE, type Sweep } from "@feedpoint/core";
import { Command } from "commander";
import { UsageError } from "../exit.js";
import { findSweepFiles, isFolder, readFile, writeWhole } from "../files.js";
import { csvTable } from "../present/csv.js";

/** Columns to begin with; a log may have any others. */
const EMPTY_ROW = { deployment: "", shape: "", height: "", counterpoise: "", feedline: "", weather: "", note: "" };

export function logCommand(): Command {
  return new Command("log")
    .description("The deployment log: what you know of each sweep, kept in a table beside them.")
    .addCommand(
      new Command("init")
        .description(`Writes ${LOG_FILE} into a folder of sweeps, a row for each, to fill in.`)
        .argument("<folder>", "folder of sweeps, searched to the bottom")
        .option("--force", "write over a log that is there")
        .action(runInit),
    );
}

function runInit(folder: string, { force = false }: { force?: boolean }): void {
  if (!isFolder(folder)) throw new UsageError(`${folder}: this is no folder.`);
  const files = findSweepFiles([folder]);
  if (files.length === 0) throw new UsageError(`There are no sweep files in ${folder}.`);
  const rows = files.map((file) => ({ file: relative(folder, file), date: dateIn(file), ...EMPTY_ROW }));
  const target = join(folder, LOG_FILE);
  writeWhole(target, `${csvTable(rows)}\n`, force);
  process.stderr.write(`feedpoint: wrote ${target} with ${rows.length} rows. Fill it in; grade reads it.\n`);
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
