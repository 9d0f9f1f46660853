import { existsSync, readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Condition } from "@feedpoint/answers/asked/arguments";
import { type FileGroup, fileGroups } from "@feedpoint/answers/asked/deployments";
import { plainName } from "@feedpoint/answers/asked/find-plan";
import { logColumn } from "@feedpoint/answers/asked/log-column";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { type DeploymentLog, readDeploymentLog, rowFinder } from "@feedpoint/core";
import { LOG_FILE, suggestion } from "@feedpoint/core/for-command";
import { reasonOf } from "../files.js";
import { findSweepFilesIn, folderOf } from "../find-files.js";

/**
 * The deployment logs that there are, of which the first is read: the one that was named, or each deployments.csv in one of the
 * paths' folders.
 *
 * @param wanted undefined: looked for; false: none
 */
export function findLogs(wanted: string | false | undefined, paths: readonly string[]): readonly string[] {
  if (wanted !== undefined) return wanted === false ? [] : [wanted];
  const folders = new Set(paths.filter((path) => path !== "-").map(folderOf));
  return [...folders]
    .map((folder) => join(folder, LOG_FILE))
    .filter((path) => existsSync(path) && statSync(path).isFile());
}

/** @throws UsageError or ReadError where it cannot be read */
export function readLog(file: string): DeploymentLog {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    throw new UsageError(`${file}: ${reasonOf(error)}.`);
  }
  return readDeploymentLog(bytes, file);
}

/** The deployments below a folder whose row in the log says something. @throws UsageError where none does */
export async function groupsWhere(
  folder: string,
  log: DeploymentLog,
  { column, value }: Condition,
): Promise<readonly FileGroup[]> {
  const name = logColumn(log, column);
  const rowOf = rowFinder(log);
  const found = await findSweepFilesIn([folder]);
  const rowFor = (file: string) => rowOf(file) ?? rowOf(dirname(file));
  const said = found.files.map((file) => ({ file, text: rowFor(file)?.[name] ?? "" }));
  // As with bands, "8m" is "8 m".
  const files = said.filter(({ text }) => plainName(text) === plainName(value)).map(({ file }) => file);
  if (files.length > 0) return fileGroups({ ...found, files }, { said: null, log });
  const values = [...new Set(said.map(({ text }) => text))].filter((text) => text !== "");
  throw new UsageError(
    `The log has no sweep of ${folder} with "${value}" under ${name}.${suggestion(value, values)} It says there: ${values.join(", ") || "nothing"}.`,
  );
}
