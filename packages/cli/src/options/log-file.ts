import { existsSync, readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { type DeploymentLog, LOG_FILE, readDeploymentLog } from "@feedpoint/core";
import { UsageError } from "../exit.js";
import { isFolder, reasonOf } from "../files.js";

/**
 * The deployment log: the one that was named, or deployments.csv in the first of the paths' folders that has one.
 *
 * @param wanted undefined: looked for; false: none
 * @throws UsageError or ReadError where it cannot be read
 */
export function findLog(wanted: string | false | undefined, paths: readonly string[]): DeploymentLog | null {
  if (wanted === false) return null;
  const file =
    wanted ??
    paths
      .filter((path) => path !== "-" && existsSync(path))
      .map((path) => join(isFolder(path) ? path : dirname(path), LOG_FILE))
      .find((candidate) => existsSync(candidate) && statSync(candidate).isFile());
  if (file === undefined) return null;
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    throw new UsageError(`${file}: ${reasonOf(error)}.`);
  }
  return readDeploymentLog(bytes, file);
}
