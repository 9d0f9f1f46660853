import { fileGroups, type Grouping, type ReadDeployments, readGroups } from "@feedpoint/answers/asked/deployments";
import type { ReadingSettings } from "@feedpoint/answers/asked/referred";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import type { Deployment } from "@feedpoint/core";
import { readReferred } from "./files.js";
import { findSweepFilesIn } from "./find-files.js";
import { findLogs, readLog } from "./options/log-file.js";

/** What is said of how the files of a command belong together. */
export interface Belonging {
  readonly together?: boolean | undefined;
  readonly each?: boolean | undefined;
  readonly log?: string | false | undefined;
}

/** The deployments of files and folders; a log beside them tells which files are one. */
export async function deploymentsFrom(
  paths: readonly string[],
  settings: ReadingSettings,
  { together = false, each = false, log }: Belonging,
): Promise<ReadDeployments> {
  if (together && each) throw new UsageError("Say --together or --each, not both.");
  const found = await findSweepFilesIn(paths, "kept");
  const [logFile = null] = findLogs(log, paths);
  const said: Grouping["said"] = together ? "together" : each ? "each" : null;
  const groups = fileGroups(found, { said, log: logFile === null ? null : readLog(logFile) });
  const { deployments, unreadable } = readGroups(groups, (path) => readReferred(path, settings));
  return { deployments, unreadable: [...found.problems, ...unreadable] };
}

/** The one deployment that files or a folder are. @throws UsageError where they are several, or none */
export async function onlyDeploymentFrom(
  paths: readonly string[],
  settings: ReadingSettings,
  belonging: Belonging = {},
): Promise<Deployment> {
  const { deployments, unreadable } = await deploymentsFrom(paths, settings, belonging);
  const [only, ...others] = deployments;
  if (unreadable[0] !== undefined) throw new UsageError(unreadable[0].reason);
  if (only !== undefined && others.length === 0) return only;
  const named = paths.join(", ");
  throw new UsageError(
    only === undefined
      ? `There are no sweep files in ${named}.`
      : `${named} holds ${deployments.length} sweeps of the same range; put the wanted one into a file of its own, or say --together where they are one deployment.`,
  );
}
