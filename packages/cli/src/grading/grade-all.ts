import { availableParallelism } from "node:os";
import type { FileGroup } from "@feedpoint/answers/asked/deployments";
import type { Problem } from "@feedpoint/answers/asked/usage-error";
import type { SweepGrade } from "@feedpoint/core";
import { type Batch, countsTogether, NO_COUNTS } from "./batch.js";
import { gradeFiles } from "./grade-files.js";
import type { GradingSettings } from "./grading-settings.js";
import { progressOf } from "./progress.js";

/** What came of a run; its files are those that were to be graded, and other places that could not be looked into. */
export interface Outcome extends Omit<Batch, "lines"> {
  readonly isInterrupted: boolean;
}

/**
 * Grades all files. An interrupt ends it between two files.
 *
 * @param jobs threads to use; one for each processor where it is absent
 */
export async function gradeAll(
  { groups, problems }: { readonly groups: readonly FileGroup[]; readonly problems: readonly Problem[] },
  settings: GradingSettings,
  jobs?: number,
): Promise<Outcome> {
  const total = groups.reduce((sum, { files }) => sum + files.length, 0);
  const sweeps: SweepGrade[] = [];
  const unreadable = [...problems];
  let counts = NO_COUNTS;
  let isInterrupted = false;
  const interrupt = () => {
    isInterrupted = true;
  };
  process.once("SIGINT", interrupt);
  const progress = progressOf(total);
  for await (const batch of gradeFiles(groups, settings, jobs ?? availableParallelism())) {
    progress.advance(batch.files);
    sweeps.push(...batch.sweeps);
    unreadable.push(...batch.unreadable);
    counts = countsTogether(counts, batch);
    if (batch.lines !== "") await write(batch.lines);
    if (isInterrupted) break;
  }
  progress.stop();
  process.removeListener("SIGINT", interrupt);
  if (isInterrupted) {
    process.stderr.write(`feedpoint: interrupted after ${counts.files} of ${total} files.\n`);
  }
  return { ...counts, files: total + problems.length, sweeps, unreadable, isInterrupted };
}

/** Writes to standard output, waiting where its reader is slower. */
async function write(text: string): Promise<void> {
  if (!process.stdout.write(text)) await new Promise<void>((resolve) => process.stdout.once("drain", resolve));
}
