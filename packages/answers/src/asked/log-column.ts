import type { DeploymentLog } from "@feedpoint/core";
import { UsageError } from "./usage-error.js";

/** A column of the log by its name in any case. @throws UsageError where there is none, or no log */
export function logColumn(log: DeploymentLog | null, name: string): string {
  if (log === null)
    throw new UsageError("There is no deployment log. feedpoint log init <folder> writes one to fill in.");
  const found = log.columns.find((column) => column.toLowerCase() === name.toLowerCase());
  if (found === undefined) throw new UsageError(`The log has no column "${name}". Columns: ${log.columns.join(", ")}.`);
  return found;
}
