import { existsSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { type DeploymentLog, LOG_FILE, readDeploymentLog } from "@feedpoint/core";
import { UsageError } from "../exit.js";
import { folderOf, reasonOf } from "../files.js";

/**
 * Where the deployment log is: where it was said to be, or deployments.csv in the first of the paths' folders that has one.
 *
 * @param wanted undefined: looked for; false: none
 */
export function findLog(wanted: string | false | undefined, paths: readonly string[]): string | null {
  if (wanted === false) return null;
  const folders = new Set(paths.filter((path) => path !== "-").map(folderOf));
  const candidates = [...folders].map((folder) => join(folder, LOG_FILE));
  return wanted ?? candidates.find((path) => existsSync(path) && statSync(path).isFile()) ?? null;
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
